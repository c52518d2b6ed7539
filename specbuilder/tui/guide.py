"""The guided first job: says one thing to do, waits until it is done, and says the next."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import Step
from specbuilder.model.ways import Aim
from specbuilder.wording import guide as words

from .acts import Where
from .items import OnOption
from .keys import WALKED
from .screens.finish import FinishPage

if TYPE_CHECKING:
    from .pile import Pile

Done = Callable[["Pile"], bool]


@dataclass(frozen=True, slots=True)
class Lesson:
    """One thing to do, the keys that do it, and how it shows that it was done."""

    words: Callable[[], str]
    keys: tuple[str, ...]
    """One way to do it, by acts and characters; the tests follow them."""
    done: Done


class Guide:
    """Where the seller stands in the guided job. It never presses a key and never takes one."""

    def __init__(self) -> None:
        self.at = 0

    @property
    def lesson(self) -> Lesson:
        """What is to do now."""
        return LESSONS[self.at]

    def told(self) -> str:
        """What is to do now, in words."""
        return words.lesson(self.at + 1, len(LESSONS), self.lesson.words())

    def look(self, counter: Pile) -> None:
        """Go on when it is done."""
        while self.at < len(LESSONS) - 1 and self._is_done(counter):
            self.at += 1

    def _is_done(self, counter: Pile) -> bool:
        return self.lesson.done(counter)


def _is_undone(counter: Pile) -> bool:
    return counter.opening is not None and counter.walk is not None and bool(counter.opening.desk.session.future)


def _is_chosen_at(step: Step) -> Done:
    """Something of a step was taken."""

    def done(counter: Pile) -> bool:
        catalogue = counter.catalogue
        chosen = counter.report.spec.choices if counter.walk is not None else ()
        groups = (catalogue.options[choice.option].group for choice in chosen if choice.option in catalogue.options)
        return any(catalogue.groups[group].step is step for group in groups)

    return done


def _stands(*where: Where) -> Done:
    return lambda counter: counter.top.where in where


def _stands_elsewhere(where: Where) -> Done:
    return lambda counter: counter.top.where is not where


def _is_open(counter: Pile) -> bool:
    return counter.walk is not None


def _is_left(counter: Pile) -> bool:
    return counter.walk is None


def _is_answered(counter: Pile) -> bool:
    return _is_open(counter) and counter.report.spec.answers.get(BriefKey("adults")) is not None


def _is_on_a_van(counter: Pile) -> bool:
    at = counter.top.at
    on_van = isinstance(at, OnOption) and counter.catalogue.options[at.option].van is not None
    return (on_van and counter.top.where in WALKED) or _has_a_van(counter)


def _has_a_van(counter: Pile) -> bool:
    options = counter.catalogue.options
    chosen = counter.report.spec.choices if counter.walk is not None else ()
    return any(options[choice.option].van is not None for choice in chosen if choice.option in options)


def _is_by_usual(counter: Pile) -> bool:
    top = counter.top
    return not isinstance(top, FinishPage) or top.aim is Aim.USUAL


def _is_at_seating(counter: Pile) -> bool:
    return counter.walk is not None and counter.walk.step is Step.SEATING


LESSONS = (
    Lesson(words.begin, ("new-job",), _is_open),
    Lesson(words.answer, ("2",), _is_answered),
    Lesson(words.find, ("find", *"short", "enter"), _is_on_a_van),
    Lesson(words.take, ("enter",), _has_a_van),
    Lesson(words.roof, ("find", *"lar", "enter", "enter"), _is_chosen_at(Step.ROOF)),
    Lesson(words.step, ("step-after",), _is_at_seating),
    Lesson(words.usual, ("usual", "enter"), _is_chosen_at(Step.SEATING)),
    Lesson(words.clash, ("find", *"fra", "enter", "enter"), _stands(Where.WHY)),
    Lesson(words.way_out, ("1",), _stands_elsewhere(Where.WHY)),
    Lesson(words.undo, ("undo",), _is_undone),
    Lesson(words.finish, ("finish",), _stands(Where.FINISH)),
    Lesson(words.aims, ("4",), _is_by_usual),
    Lesson(words.finished, ("enter",), _stands_elsewhere(Where.FINISH)),
    Lesson(words.sums, ("ledgers", "enter"), _stands(Where.LEDGER)),
    Lesson(words.back, ("back", "back"), _stands(*WALKED)),
    Lesson(words.turn, ("customer-view",), _stands(Where.CUSTOMER)),
    Lesson(words.turn_back, ("back", "enter"), _stands_elsewhere(Where.CUSTOMER)),
    Lesson(words.papers, ("papers",), _stands(Where.PAPERS)),
    Lesson(words.leave, ("back", "back"), _is_left),
    Lesson(words.over, ("practise",), lambda counter: False),
)
"""In the order of a visit."""
