"""What a formula may look at besides the choices: the brief, the base van, the firm and the house settings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from specbuilder.model.catalogue import Firm, Option
from specbuilder.model.facts import Facts
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, LedgerId
from specbuilder.model.ledger import Entry
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, as_span
from specbuilder.model.vans import Van

from .weighed import as_weighed

_REAR_AXLE, _SEAT = LedgerId("rear-axle"), "front_seat_x_mm"


@dataclass(slots=True)
class Asked:
    """The brief as one reading asks it. It remembers what was asked, so that a reading knows what it rests on."""

    facts: Facts
    keys: dict[BriefKey, None] = field(default_factory=dict)

    def number(self, key: BriefKey) -> Span:
        """The number, or its whole range while unknown."""
        self.keys[key] = None
        return self.facts.number(key)

    def word(self, key: BriefKey) -> str | None:
        """The word, or None while unknown."""
        self.keys[key] = None
        answer = self.facts.get(key)
        return answer if isinstance(answer, str) else None

    def words(self, key: BriefKey) -> tuple[str, ...] | None:
        """The words of a list, or None while unknown."""
        self.keys[key] = None
        answer = self.facts.get(key)
        return tuple(map(str, answer)) if isinstance(answer, tuple) else None

    @property
    def unknown(self) -> tuple[BriefKey, ...]:
        """What was asked and is not known yet."""
        return tuple(key for key in self.keys if not self.facts.known(key))

    @property
    def assumed(self) -> tuple[BriefKey, ...]:
        """What was asked and stands on an assumption."""
        return tuple(key for key in self.keys if key in self.facts.assumed)


@dataclass(slots=True)
class Frame:
    """One base van under one brief. While the van is undecided there is one frame for each that may still be chosen."""

    situation: Situation
    asked: Asked
    settings: Mapping[str, float]
    option: Option | None = None
    """The base van's option; None when the formula needs no van."""
    _weighed: Van | None = None

    @property
    def van(self) -> Van:
        """The data of the base van; its running order as weighed, once it was on the scales.

        Raises:
            OutsideValidity: when what was weighed cannot be this van.
            AssertionError: if the measure did not say that it needs one.
        """
        assert self.option is not None, "a measure that looks at the van says needs_van"
        assert self.option.van is not None, "an option of the base vans holds a van"
        weighed = self.asked.facts.weighed
        if weighed is None or weighed.van != self.option.id:
            return self.option.van
        if self._weighed is None:
            axle = self.situation.catalogue.ledgers.get(_REAR_AXLE)
            seat_x_mm = axle.settings.get(_SEAT, 0) if axle is not None else 0
            self._weighed = as_weighed(self.option.van, weighed, seat_x_mm)
        return self._weighed

    @property
    def firm(self) -> Firm:
        """The house."""
        return self.situation.catalogue.firm

    def entry(self, label: str, amount: Span | float, *keys: BriefKey) -> Entry:
        """A labelled line; ``keys`` are the answers it rests on."""
        assumed = bool(keys) and not self.asked.facts.assumed.isdisjoint(keys)
        return Entry(label, as_span(amount), assumed=assumed)

    def van_entry(self, label: str, amount: float) -> Entry:
        """The base van's own line; while it is undecided the line belongs to its group."""
        if self.situation.van is None:
            return Entry(label, as_span(amount), group=BASE_VAN_GROUP)
        return Entry(label, as_span(amount), option=self.situation.van.id)
