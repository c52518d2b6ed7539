"""Specs and edits for laws: everything the program itself can make, with the texts people really type."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import Any, get_args

from hypothesis import strategies as st

from specbuilder.model.brief import Answers
from specbuilder.model.edits import Edit, Together
from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.kinds import JobState, Owner, Place
from specbuilder.model.record import Record, RecordKind, Undone
from specbuilder.model.spec import Acceptance, Choice, Customer, OpenQuestion, OwnPart, Spec, VanData
from specbuilder.storage.faults import hidden_character
from specbuilder.storage.text_limits import (
    CONTACT_LONGEST,
    NAME_LONGEST,
    NOTE_LONGEST,
    VAN_TEXT_LONGEST,
    VIN_TAIL_LONGEST,
)
from tests.storage.scene import CATALOGUE

_SPITEFUL = st.sampled_from(
    (
        '"',
        "'''",
        '"""',
        "\\",
        "\\u0041",
        "[job]",
        "[[choice]]",
        'checksum = "x"',
        "# not a comment",
        "a = 1",
        "[@click=app.quit]x[/]",
        "= ",
        "{}",
        "Zoë Ünal \U0001f690",
        "שלום",
        " ",
        "x" * 10_000,
    )
)


def _seen(text: str) -> bool:
    return hidden_character(text) is None


_CHARACTERS = st.characters(exclude_categories=("Cc", "Cs", "Cf", "Zl", "Zp"))
LINE = st.one_of(st.text(_CHARACTERS, max_size=12).filter(_seen), st.lists(_SPITEFUL, max_size=3).map("".join))
"""One line of anything people can see."""
LINES = st.lists(LINE, max_size=3).map("\n".join)
ANYTHING = st.text(st.characters(codec=None), max_size=20)
"""Control characters, direction marks and halves of characters as well."""

_OPTIONS = st.one_of(st.sampled_from(tuple(CATALOGUE.options)), LINE.filter(bool).map(OptionId))
_WHOLE = st.integers(min_value=-(2**53), max_value=2**53)
_FINITE = st.floats(allow_nan=False, allow_infinity=False)
_FIGURE = st.none() | _FINITE
_OWN_PARTS = st.builds(
    OwnPart,
    mass_kg=_FIGURE,
    watts_w=_FIGURE,
    cut_out_mm=LINE,
    arrives=LINE,
    door_mm=_FIGURE,
    day_wh=_FIGURE,
    continuous_a=_FIGURE,
    capacity_ah=_FIGURE,
    chemistry=LINE,
)
_CHOICES = st.builds(
    Choice,
    option=_OPTIONS,
    count=st.integers(1, 99),
    place=st.none() | st.sampled_from(Place),
    owner=st.sampled_from(Owner),
    own_part=st.none() | _OWN_PARTS,
    note=LINES.map(lambda text: text[:NOTE_LONGEST]),
    came_with=st.lists(_OPTIONS, max_size=2).map(tuple),
    at=LINE,
)


def _at_most(texts: st.SearchStrategy[str], longest: int) -> st.SearchStrategy[str]:
    return texts.map(lambda text: text[:longest])


def _fitting(choices: list[Choice]) -> tuple[Choice, ...]:
    """As many of each as the catalogue lets stand, and none twice at one place."""
    kept: list[Choice] = []
    for choice in choices:
        option = CATALOGUE.options.get(choice.option)
        if option is not None:
            room = option.max_count - sum(other.count for other in kept if other.option == choice.option)
            if room < 1 or any((other.option, other.place) == (choice.option, choice.place) for other in kept):
                continue
            choice = replace(choice, count=min(choice.count, room))
        kept.append(choice)
    return tuple(kept)


def _answers(given: Any) -> Answers:
    return Answers(MappingProxyType(given))


_ANSWERS = st.fixed_dictionaries(
    {},
    optional={
        BriefKey("adults"): st.integers(1, 6),
        BriefKey("ages"): st.lists(st.integers(0, 17), max_size=4).map(tuple),
        BriefKey("drive_h_per_day"): st.floats(0, 6),
        BriefKey("steering"): st.sampled_from(("right", "left")),
        BriefKey("must_run"): st.lists(st.sampled_from(("kettle", "laptop")), max_size=2).map(tuple),
        BriefKey("signing"): st.sampled_from(("yes", "no")),
    },
).map(_answers)
_ANY_ANSWER = st.one_of(
    _WHOLE, _FINITE, LINE, st.lists(LINE, max_size=3).map(tuple), st.lists(_WHOLE, max_size=3).map(tuple)
)
_ANY_ANSWERS = st.dictionaries(LINE.map(BriefKey), _ANY_ANSWER, max_size=4).map(_answers)


_RECORDS = st.builds(
    Record,
    kind=st.sampled_from(RecordKind),
    at=LINE,
    by=LINE,
    about=LINE,
    words=_at_most(LINES, NOTE_LONGEST),
    pence=st.none() | _WHOLE,
    figure=st.none() | _FINITE,
    due=LINE,
    revision=st.integers(1, 99),
)
_LABELS = st.lists(LINE, max_size=2).map(tuple)
_UNDONE = st.builds(Undone, words=LINE, hours=_FINITE, net_pence=_WHOLE, order=st.integers(1, 99), holes=_LABELS)


def specs(*, strange_answers: bool = False) -> st.SearchStrategy[Spec]:
    """Specs as they can be; with ``strange_answers`` to keys and with values that no catalogue asks for."""
    return st.builds(
        Spec,
        number=LINE,
        revision=st.integers(1, 2**31),
        replaces=st.none() | st.integers(1, 99),
        reason=_at_most(LINE, NOTE_LONGEST),
        records=st.lists(_RECORDS, max_size=3).map(tuple),
        undone=st.lists(_UNDONE, max_size=2).map(tuple),
        state=st.sampled_from(JobState),
        customer=st.builds(Customer, name=_at_most(LINE, NAME_LONGEST), contact=_at_most(LINES, CONTACT_LONGEST)),
        answers=_ANY_ANSWERS if strange_answers else _ANSWERS,
        van_data=st.builds(
            VanData,
            registration=_at_most(LINE, VAN_TEXT_LONGEST),
            vin_tail=_at_most(LINE, VIN_TAIL_LONGEST),
            year=st.none() | _WHOLE,
            paint_code=_at_most(LINE, VAN_TEXT_LONGEST),
            mileage_km=st.none() | _WHOLE,
            damage=_at_most(LINES, VAN_TEXT_LONGEST),
            weighed_front_kg=st.none() | _FINITE,
            weighed_rear_kg=st.none() | _FINITE,
        ),
        choices=st.lists(_CHOICES, max_size=5).map(_fitting),
        accepted=st.lists(st.builds(Acceptance, rule=LINE.map(RuleId), words=LINES, by=LINE, at=LINE), max_size=2).map(
            tuple
        ),
        questions=st.lists(
            st.builds(OpenQuestion, text=LINE, owner=LINE, due=LINE, stops=LINE, part=LINE), max_size=2
        ).map(tuple),
        note=_at_most(LINES, NOTE_LONGEST),
    )


def hostile_specs() -> st.SearchStrategy[Spec]:
    """Specs with characters in them that no reader lets through."""
    return st.builds(
        Spec,
        number=ANYTHING,
        customer=st.builds(Customer, name=ANYTHING, contact=ANYTHING),
        choices=st.lists(st.builds(Choice, option=ANYTHING.map(OptionId), note=ANYTHING), max_size=2).map(tuple),
        note=ANYTHING,
    )


_PLAIN_EDITS: tuple[Any, ...] = tuple(kind for kind in get_args(Edit) if kind is not Together)


def edits() -> st.SearchStrategy[Any]:
    """Every class of edit, with any value its annotations allow."""
    plain = st.one_of(*(st.from_type(kind) for kind in _PLAIN_EDITS)).filter(_finite)
    return st.one_of(plain, st.lists(plain, max_size=3).map(lambda some: Together(edits=tuple(some))))


def _finite(edit: object) -> bool:
    return "nan" not in repr(edit)
