"""A part becomes the customer's, and its sheet is filled in: what screens and line commands do alike."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any, TypeAlias

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, SetOwner
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.own_parts import RANGES, SheetLine, is_brought, is_theirs, kinds_of
from specbuilder.model.spec import Choice, OpenQuestion, OwnPart, Spec
from specbuilder.session.own_parts import bring_edit, own_instead, sheet_edit
from specbuilder.wording.forms import owners
from specbuilder.wording.own_parts import blank_question
from specbuilder.wording.typed import date, days_after, number, whole

DAYS = 7
"""A blank is due so many days from the day it is asked."""
Said: TypeAlias = str | float | None
"""What stands on a line of the sheet."""


def brought(catalogue: Catalogue, spec: Spec, option: OptionId, now: str) -> tuple[OptionId, Edit | None]:
    """The customer brings this part: which option then stands for it, and the edit; None: it is theirs already.

    Args:
        catalogue: what can be built.
        spec: what stands.
        option: the part.
        now: ``YYYY-MM-DD HH:MM``.
    """
    meant = own_instead(catalogue, option) or option
    there = spec.chosen(meant)
    if there and is_theirs(catalogue.options[meant], there[0]) and there[0].own_part is not None:
        return meant, None
    if there or meant != option or is_brought(catalogue.options[option]):
        return meant, bring_edit(catalogue, spec, option, _asked(catalogue, meant, now), now)
    return meant, SetOwner(option=option, owner=Owner.CUSTOMER)


def said_edit(catalogue: Catalogue, choice: Choice, line: SheetLine, value: Said, now: str) -> tuple[OwnPart, Edit]:
    """The sheet with this line filled in, or blank again, and the edit; the sheet may be as it was."""
    before = choice.own_part or OwnPart()
    changed: dict[str, Any] = {line.value: getattr(OwnPart(), line.value) if value in (None, "") else value}
    after = replace(before, **changed)
    return after, sheet_edit(catalogue, choice, after, _asked(catalogue, choice.option, now))


def read_line(catalogue: Catalogue, option: OptionId, line: SheetLine, text: str, now: str) -> Said:
    """What was typed on a line of the sheet; None when it is nothing that may stand there."""
    match line:
        case SheetLine.CUT_OUT:
            return text
        case SheetLine.ARRIVES:
            return date(text, now)
        case SheetLine.KIND:
            kinds = kinds_of(catalogue.options[option])
            at = whole(text)
            if at is None:
                return next((kind for kind in kinds if kind.casefold() == text.casefold()), None)
            return kinds[at - 1] if 0 < at <= len(kinds) else None
        case _:
            amount = number(text)
            return amount if amount is not None and RANGES[line].holds(amount) else None


def _asked(catalogue: Catalogue, option: OptionId, now: str) -> Callable[[SheetLine], OpenQuestion]:
    """The question that a blank of this part is: put to the customer, a week from now, before its step."""
    known, due = catalogue.options[option], days_after(now, DAYS)

    def ask(line: SheetLine) -> OpenQuestion:
        return OpenQuestion(text=blank_question(known, line), owner=owners()[0], due=due, stops=known.build_step)

    return ask
