"""A signed build that is changed when holes are cut already, for the papers that tell of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache

from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import JobState, Place
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Acceptance, Choice, Customer, OpenQuestion, Spec
from specbuilder.session.change_order import settled
from specbuilder.session.life import next_revision, written
from specbuilder.session.papers import case_of

from .cases import CHECKSUM, spec_of, stand_of, the_catalogue

LATER = date(2031, 6, 6)
OUT = ("gas-bundle", "gas-one-small")
INSTEAD = {"battery-small": "battery-kettle", "inverter-600": "inverter-2000"}


def _record(kind: RecordKind, at: str, **fields: object) -> Record:
    return Record(kind=kind, at=at, **{"by": "the counter", **fields})  # type: ignore[arg-type]


HAPPENED = (
    _record(RecordKind.QUOTED, "2031-04-14 11:00", pence=2_441_400, figure=2_441_400, due="2031-05-14"),
    _record(RecordKind.PROMISED, "2031-04-14 11:05", words="The heater's exhaust stays on the right"),
    _record(RecordKind.CALL, "2031-04-14 11:06", words="which cloth", due="2031-04-20"),
    _record(RecordKind.SIGNED, "2031-04-18 09:30", by="M. Hale", words="the owner", about="premises", pence=2_441_400),
    _record(RecordKind.DEPOSIT, "2031-04-19 09:30", pence=244_100),
    _record(RecordKind.SUPPLY, "2031-04-22 10:00", about="larchlid-short", words="ordered", due="2031-05-28"),
    _record(RecordKind.SUPPLY, "2031-04-22 10:00", about="air-heater-diesel-2", words="in store"),
    _record(RecordKind.SUPPLY, "2031-04-22 10:00", about="fabric-moss-weave", words="ordered", due="2031-07-28"),
    _record(RecordKind.CALL, "2031-04-25 11:06", words="the barrier height", due="2031-06-10"),
    *(
        _record(RecordKind.PASSED, f"{day} 16:00", about=hold, by="the foreman")
        for hold, day in (("H0", "2031-05-02"), ("H1", "2031-05-06"), ("H2", "2031-06-02"), ("H3", "2031-06-05"))
    ),
)


@cache
def signed() -> Spec:
    """Revision 1: ordered, paid on, cut."""
    spec = spec_of("saturday-family")
    choices = tuple(
        replace(choice, at=f"2031-04-{10 + number % 4:02} 10:{number:02}", note="PLANTEDCHOICE" if not number else "")
        for number, choice in enumerate(spec.choices)
    )
    return replace(
        spec,
        state=JobState.ORDERED,
        customer=Customer(name="M. and J. Hale", contact="PLANTEDCONTACT 0123"),
        note="PLANTEDNOTE",
        choices=choices,
        records=HAPPENED,
        accepted=(
            Acceptance(
                rule=RuleId("tell-the-insurer"),
                words="They will ring the insurer",
                by="M. Hale",
                at="2031-04-18 09:20",
            ),
        ),
        questions=(OpenQuestion(text="Is the barrier really 2.10 m?", owner="customer", due="2031-06-20", stops="B2"),),
    )


@cache
def proposed() -> Spec:
    """Revision 2: induction for gas, a stronger battery, the awning on the other side; nobody has signed it yet."""
    catalogue, old = the_catalogue(), signed()
    new = next_revision(catalogue, old)
    kept = [choice for choice in new.choices if choice.option not in OUT]
    kept = [replace(choice, option=OptionId(INSTEAD.get(choice.option, choice.option))) for choice in kept]
    kept = [replace(each, place=Place.RIGHT) if each.option == "awning-body-rail" else each for each in kept]
    come = [Choice(option=OptionId(option)) for option in ("induction-single", "gas-none")]
    return settled(stand_of(old), replace(new, choices=(*kept, *come)))


@cache
def proposed_case() -> Case:
    """The change order while it is open."""
    return case_of(stand_of(proposed()), LATER, before=stand_of(signed()), checksum=CHECKSUM)


@cache
def signed_change_case() -> Case:
    """The same, signed at home the day after."""
    signature = _record(
        RecordKind.SIGNED, "2031-06-07 09:30", by="M. Hale", words="the owner", about="home", revision=2
    )
    new = written(the_catalogue(), proposed(), signature)
    return case_of(stand_of(new), date(2031, 6, 7), before=stand_of(signed()), checksum=CHECKSUM)


@cache
def signed_case() -> Case:
    """Revision 1 as it stands on the day of the change."""
    return case_of(stand_of(signed()), LATER, checksum=CHECKSUM)
