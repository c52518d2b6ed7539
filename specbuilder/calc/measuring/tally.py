"""A ledger or figure made of measures: one for the value, one for the bound."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.kinds import LedgerKind, Place, Sense, Verdict
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.situation import Situation

from .frame import Asked, Frame
from .measure import Measure, shares, summands
from .outcome import Outcome, outcome, settings_of, standing, van_frames
from .prepared import Prepared, prepared
from .unsaid import nothing_here, unsaid
from .verdicts import verdict_of


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Tally:
    """A ledger or figure: measures for value and bound, and the settings they use."""

    id: LedgerId
    value: Measure
    bound: Measure | None = None
    """None: shown only."""
    named_by: BriefKey | None = None
    """The number of the brief that names the bound; 0 means that none was named."""
    settings: tuple[str, ...] = ()

    def touches(self, option: Option) -> bool:
        """True when the option itself changes value or bound."""
        if option.van is not None:
            return any(m.needs_van for m in self._measures)
        return any(_adds(measure, option) for measure in self._measures)

    def read(self, situation: Situation) -> Reading:
        """Value, bound and verdict for this situation; nothing can be said while the data are outside an equation."""
        try:
            return self._read(situation)
        except OutsideValidity as fault:
            return unsaid(self.id, situation.catalogue.ledgers[self.id].sense, fault)

    def _read(self, situation: Situation) -> Reading:
        prep, asked = prepared(situation), Asked(situation.facts)
        value = outcome(self.value, prep, asked, self.id)
        sense = prep.catalogue.ledgers[self.id].sense
        if value.span is None and value.absent:
            bound = self._bound(prep, Asked(situation.facts))
            settled = bound.span if bound is not None else None
            return nothing_here(self.id, sense, settled)
        if self.unnamed(situation):
            return self._reading(situation, sense, value, None, Verdict.HOLDS, asked, applies=False)
        bound = self._bound(prep, asked)
        if bound is None:
            open_ended = value.span is None or value.absent or not value.span.settled
            return self._reading(
                situation, sense, value, None, Verdict.CANNOT_TELL if open_ended else Verdict.HOLDS, asked
            )
        if bound.span is None and bound.absent:
            return self._reading(situation, sense, value, None, Verdict.HOLDS, asked, applies=False)
        return self._reading(situation, sense, value, bound, self._verdict(sense, value, bound, situation), asked)

    def _bound(self, prep: Prepared, asked: Asked) -> Outcome | None:
        return outcome(self.bound, prep, asked, self.id, listed=False) if self.bound is not None else None

    def unnamed(self, situation: Situation) -> bool:
        """True when the brief says that there is no bound."""
        key = self.named_by
        return key is not None and situation.facts.known(key) and situation.facts.number(key).most <= 0

    def _verdict(self, sense: Sense, value: Outcome, bound: Outcome, situation: Situation) -> Verdict:
        open_ended = value.span is None or bound.span is None or value.absent or bound.absent
        unasked = self.named_by is not None and not situation.facts.known(self.named_by)
        if open_ended or unasked or value.span is None or bound.span is None:
            return Verdict.CANNOT_TELL
        return verdict_of(sense, value.span, bound.span)

    def _reading(
        self,
        situation: Situation,
        sense: Sense,
        value: Outcome,
        bound: Outcome | None,
        verdict: Verdict,
        asked: Asked,
        applies: bool = True,
    ) -> Reading:
        lacks = [*value.lacks, *(bound.lacks if bound else ())]
        lacks += [Lack(key=key) for key in asked.unknown]
        outside = value.outside or (bound.outside if bound else None)
        return Reading(
            id=self.id,
            value=None if outside else value.span,
            bound=None if bound is None or bound.absent else bound.span,
            verdict=verdict,
            lacks=tuple(dict.fromkeys(lacks)) if lacks else (),
            entries=value.entries,
            applies=applies,
            assumed=asked.assumed if asked.facts.assumed else (),
            bound_by=self._bound_by(situation) if bound is not None else (),
            sense=sense,
            outside=outside,
        )

    def _bound_by(self, situation: Situation) -> tuple[OptionId, ...]:
        if self.bound is None:
            return ()
        known = shares(self.bound, situation.catalogue, situation.van).known
        if not known:
            return ()
        return tuple(placed.option.id for placed in situation.placed if placed.option.id in known)

    def amount(self, situation: Situation, option: Option, place: Place | None) -> float | None:
        """What one more of it adds to the value now; None for figures and base vans."""
        prep = prepared(situation)
        if option.van is not None or prep.catalogue.ledgers[self.id].kind is not LedgerKind.LEDGER:
            return None
        asked, settings = Asked(situation.facts), settings_of(prep, self.id)
        frames = van_frames(prep, asked, settings) if self.value.needs_van else (Frame(situation, asked, settings),)
        if not frames:
            return None
        scale = self.value.scale(frames[0]) if self.value.scale else 1.0
        try:
            return sum(_more(one, prep, frames[0], option) for one in summands(self.value, prep.catalogue)) * scale
        except OutsideValidity:
            return None

    @property
    def _measures(self) -> tuple[Measure, ...]:
        return (self.value,) if self.bound is None else (self.value, self.bound)


def _more(measure: Measure, prep: Prepared, frame: Frame, option: Option) -> float:
    """What one more of it adds to a measure now."""
    share = shares(measure, prep.catalogue, frame.option)
    amount, joint = share.get(option)
    if joint is share.neutral:
        return amount
    now = standing(prep, share)[1]
    before, after = (measure.told(j, frame) for j in (now, share.combine(now, joint)))
    return amount + (0.0 if before is None or after is None else after - before)


def _adds(measure: Measure, option: Option) -> bool:
    if any(_adds(one, option) for one in measure.beside):
        return True
    return bool(measure.amount(option)) or any(p.of(option, None) not in (None, p.neutral) for p in measure.parts)
