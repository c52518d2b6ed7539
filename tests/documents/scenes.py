"""Three jobs as they are in life, for the goldens: one ordered and begun, one half known, one changed after signing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import JobState, Owner, Place
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind, Undone
from specbuilder.model.spec import Acceptance, Choice, OpenQuestion, OwnPart, Spec

from .cases import case, spec_of

SIGNED = Record(
    kind=RecordKind.SIGNED,
    at="2031-04-02 11:20",
    by="A. Saturday",
    about="premises",
    words="M. Joiner",
    pence=2_441_400,
)
"""The order."""
BEGUN = (
    Record(kind=RecordKind.QUOTED, at="2031-03-20 16:00", by="M. Joiner", pence=2_441_400, due="2031-04-19"),
    SIGNED,
    Record(kind=RecordKind.DEPOSIT, at="2031-04-04 09:00", by="the office", pence=244_140),
    Record(
        kind=RecordKind.PROMISED, at="2031-04-02 11:25", by="M. Joiner", words="The heater blows to the bed as well."
    ),
    Record(
        kind=RecordKind.SUPPLY,
        at="2031-04-03 08:00",
        by="the store",
        about="larchlid-short",
        words="ordered",
        due="2031-05-12",
    ),
    Record(kind=RecordKind.SUPPLY, at="2031-04-10 08:00", by="the store", about="window-mid-opening", words="in store"),
    Record(
        kind=RecordKind.PASSED, at="2031-04-15 15:30", by="the foreman", about="H0", words="seller present, ticket 4711"
    ),
    Record(
        kind=RecordKind.READING,
        at="2031-04-15 15:00",
        by="the foreman",
        about="H0",
        words="1,948 kg in all",
        figure=1948,
    ),
    Record(kind=RecordKind.PASSED, at="2031-04-17 12:00", by="the foreman", about="H1"),
    Record(
        kind=RecordKind.READING, at="2031-04-17 11:00", by="the fitter", about="window-mid-opening-hole1", words="X 512"
    ),
)
"""What happened to the family's job until two hold points were passed."""


def ordered_family() -> Case:
    """Ordered and begun; one thing accepted, one asked, the fridge the customer's own."""
    spec = spec_of("saturday-family")
    return case(
        "saturday-family",
        state=JobState.ORDERED,
        records=BEGUN,
        note="PRIVATE: friend of the owner",
        choices=tuple(own_fridge(choice) for choice in spec.choices),
        accepted=(
            Acceptance(
                rule=RuleId("tell-the-insurer"), words="Told, and understood.", by="A. Saturday", at="2031-04-02 11:00"
            ),
        ),
        questions=(
            OpenQuestion(text="Which way does the fridge door open?", owner="M. Joiner", due="2031-05-02", stops="B7"),
        ),
    )


def half_done_family() -> Case:
    """A draft in which much is not known yet."""
    return case("half-done-family")


def changed_pair() -> Case:
    """Revision 2 of a signed build: the buzzer is left out and the rear window goes to the other side."""
    old = signed_pair()
    return case(
        "off-grid-pair",
        before=old,
        revision=2,
        replaces=1,
        state=JobState.CHANGED,
        records=(
            *old.records,
            replace(SIGNED, at="2031-04-16 10:00", by="P. Pair", revision=2),
        ),
        choices=tuple(_turned(choice) for choice in old.choices if choice.option != "roof-open-buzzer"),
        undone=(
            Undone(words="take the roof-open buzzer out and blank its holes", hours=1.5, net_pence=7_800, order=1),
        ),
    )


def signed_pair() -> Spec:
    """The revision that ``changed_pair`` replaces."""
    passed = Record(kind=RecordKind.PASSED, at="2031-04-14 12:00", by="the foreman", about="H0")
    return replace(spec_of("off-grid-pair"), state=JobState.ORDERED, records=(replace(SIGNED, by="P. Pair"), passed))


def _turned(choice: Choice) -> Choice:
    return replace(choice, place=Place.RIGHT) if choice.option == "window-rear-opening" else choice


FRIDGE_SHEET = OwnPart(mass_kg=18, watts_w=45, cut_out_mm="400 x 560", arrives="2031-05-20", door_mm=400, day_wh=430)
"""Of the customer's own fridge."""


def own_fridge(choice: Choice, sheet: OwnPart = FRIDGE_SHEET) -> Choice:
    """The fridge as the customer's own; any other choice as it is."""
    if choice.option != OptionId("fridge-front-door"):
        return choice
    return replace(choice, owner=Owner.CUSTOMER, own_part=sheet)


SCENES: Mapping[str, Callable[[], Case]] = MappingProxyType(
    {"ordered-family": ordered_family, "half-done-family": half_done_family, "changed-pair": changed_pair}
)
