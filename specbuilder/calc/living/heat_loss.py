"""What the van loses with the roof down and up, by van, lining, windows and screens; and how far its heaters reach."""

from __future__ import annotations

from collections.abc import Callable

from specbuilder.calc.formulas.heat import coldest_held_c, heat_load_w, heat_missing_kw, heater_share
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, Part, summed
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.ledger import Entry, Lack
from specbuilder.model.span import Span

from .heat import (
    GIVEN_PARTS,
    LOSS_PARTS,
    as_slept_w_per_k,
    burner_kw,
    cold_slots,
    given_kw,
    has_lifting_roof,
    loss_w_per_k,
    named_cold_c,
    plug_slots,
)

_INSIDE, _OUTSIDE = "inside_c", "outside_c"
_COLD = BriefKey("design_temp_c")
_W_IN_KW = 1000

# --- what is lost


def _cold_c(joint: Joint, frame: Frame) -> float:
    """The cold of the figure's own table, or the one the customer named."""
    own = frame.settings.get(_OUTSIDE)
    return named_cold_c(joint, frame) if own is None else own


def _named_cold(frame: Frame) -> tuple[Slot, ...]:
    """The cold of the brief while nobody said; asked only where the figure has none of its own."""
    if _OUTSIDE in frame.settings:
        return ()
    cold = frame.asked.number(_COLD)
    if frame.asked.facts.known(_COLD):
        return ()
    return (Slot(_COLD, {(0, 0, 0, 0, end): (0, 0) for end in (cold.least, cold.most)}, Lack(key=_COLD)),)


def _kw_per_w_per_k(frame: Frame) -> float | None:
    """What one W/K comes to, kW; None while nobody named the cold."""
    if _OUTSIDE not in frame.settings and not frame.asked.facts.known(_COLD):
        return None
    cold_c = frame.settings[_OUTSIDE] if _OUTSIDE in frame.settings else frame.asked.facts.number(_COLD).least
    return (frame.settings[_INSIDE] - cold_c) / _W_IN_KW


def _van_line(_amount: Span, frame: Frame) -> Entry | None:
    scale = _kw_per_w_per_k(frame)
    return None if scale is None else frame.van_entry("base van, lined", frame.van.ua_w_per_k * scale)


def _loss(id_: str, roof_up: bool, at_a_cold_of_its_own: bool) -> Tally:
    def rest(joint: Joint, frame: Frame) -> float | None:
        if roof_up and not has_lifting_roof(joint, frame):
            return None
        loss = loss_w_per_k(joint, frame, roof_up)
        return heat_load_w(loss, frame.settings[_INSIDE], _cold_c(joint, frame)) / _W_IN_KW

    def signs(joint: Joint, frame: Frame) -> tuple[int, ...]:
        lines = int(_kw_per_w_per_k(frame) is not None)
        return (lines, lines if roof_up and has_lifting_roof(joint, frame) else 0, 0, 0, 0)

    return Tally(
        id=LedgerId(id_),
        value=Measure(
            parts=LOSS_PARTS,
            rest=rest,
            rest_entry=_van_line,
            signs=signs,
            slots=_named_cold,
            scale=lambda frame: _kw_per_w_per_k(frame) or 1,
            needs_van=True,
        ),
        settings=(_INSIDE, _OUTSIDE) if at_a_cold_of_its_own else (_INSIDE,),
    )


LOSS_DOWN = _loss("heat-loss-down", roof_up=False, at_a_cold_of_its_own=False)
LOSS_DOWN_AT_NOUGHT = _loss("heat-loss-down-at-nought", roof_up=False, at_a_cold_of_its_own=True)
LOSS_DOWN_IN_FROST = _loss("heat-loss-down-in-frost", roof_up=False, at_a_cold_of_its_own=True)
LOSS_UP = _loss("heat-loss-up", roof_up=True, at_a_cold_of_its_own=False)
LOSS_UP_AT_NOUGHT = _loss("heat-loss-up-at-nought", roof_up=True, at_a_cold_of_its_own=True)
LOSS_UP_IN_FROST = _loss("heat-loss-up-in-frost", roof_up=True, at_a_cold_of_its_own=True)

# --- what is given against it

_BALANCE: tuple[Part, ...] = (*GIVEN_PARTS, summed(lambda option, _van: burner_kw(option) or None), *LOSS_PARTS)
_LOSS_AT = len(GIVEN_PARTS) + 1
_NO_GIVEN, _NO_LOSS = tuple(p.neutral for p in _BALANCE[:_LOSS_AT]), tuple(p.neutral for p in LOSS_PARTS)


def _beside(slot: Slot, before: Joint, after: Joint) -> Slot:
    """The slot of one side of the balance, for both sides."""
    return slot._replace(states={(*before, *joint, *after): ends for joint, ends in slot.states.items()})


def _open_answers(frame: Frame) -> tuple[Slot, ...]:
    plugs = (_beside(slot, (), (0, *_NO_LOSS)) for slot in plug_slots(frame))
    return (*plugs, *(_beside(slot, _NO_GIVEN, ()) for slot in cold_slots(frame)))


def _open_plug(frame: Frame) -> tuple[Slot, ...]:
    return tuple(_beside(slot, (), (0, *_NO_LOSS)) for slot in plug_slots(frame))


def _open_plug_and_cold(frame: Frame) -> tuple[Slot, ...]:
    return (*_open_plug(frame), *(_beside(slot, _NO_GIVEN, ()) for slot in _named_cold(frame)))


def _heaters_kw(joint: Joint, frame: Frame) -> float | None:
    """What all heaters give; None without any."""
    on_the_plug_kw = given_kw(joint[: len(GIVEN_PARTS)], frame)
    return None if on_the_plug_kw is None else on_the_plug_kw + joint[len(GIVEN_PARTS)]


def _against(
    id_: str,
    of: Callable[[float, Joint, Frame], float | None],
    slots: Callable[[Frame], tuple[Slot, ...]],
    settings: tuple[str, ...] = (_INSIDE,),
) -> Tally:
    """A figure of what the heaters give and of the parts of the loss; nothing to measure without a heater."""

    def rest(joint: Joint, frame: Frame) -> float | None:
        kw = _heaters_kw(joint, frame)
        return None if kw is None else of(kw, joint[_LOSS_AT:], frame)

    return Tally(
        id=LedgerId(id_),
        value=Measure(parts=_BALANCE, rest=rest, slots=slots, needs_van=True),
        settings=settings,
    )


def _share_pct(kw: float, loss: Joint, frame: Frame) -> float:
    lost_w = heat_load_w(as_slept_w_per_k(loss, frame), frame.settings[_INSIDE], named_cold_c(loss, frame))
    return 100 * heater_share(kw, lost_w)


def _coldest(roof_up: bool) -> Callable[[float, Joint, Frame], float | None]:
    def of(kw: float, loss: Joint, frame: Frame) -> float | None:
        if roof_up and not has_lifting_roof(loss, frame):
            return None
        return coldest_held_c(kw, loss_w_per_k(loss, frame, roof_up), frame.settings[_INSIDE])

    return of


def _missing(roof_up: bool) -> Callable[[float, Joint, Frame], float | None]:
    def of(kw: float, loss: Joint, frame: Frame) -> float | None:
        if roof_up and not has_lifting_roof(loss, frame):
            return None
        lost_w = heat_load_w(loss_w_per_k(loss, frame, roof_up), frame.settings[_INSIDE], _cold_c(loss, frame))
        return heat_missing_kw(kw, lost_w)

    return of


HEATER_SHARE = _against("heat-of-loss", _share_pct, _open_answers)
"""What the heaters give, as a part of what is lost with the roof as people sleep in it."""
COLDEST_DOWN = _against("coldest-roof-down", _coldest(roof_up=False), _open_plug)
COLDEST_UP = _against("coldest-roof-up", _coldest(roof_up=True), _open_plug)
MISSING_DOWN = _against("heat-missing-down", _missing(roof_up=False), _open_plug_and_cold)
MISSING_UP = _against("heat-missing-up", _missing(roof_up=True), _open_plug_and_cold)
MISSING_IN_FROST = _against(
    "heat-missing-in-frost", _missing(roof_up=True), _open_plug_and_cold, settings=(_INSIDE, _OUTSIDE)
)
