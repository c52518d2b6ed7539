"""Written rules to values and back."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, Tag, Zone
from specbuilder.model.kinds import Compare
from specbuilder.model.rules import (
    ALWAYS,
    NEVER,
    AllOf,
    Always,
    AnyOf,
    Atom,
    BriefIs,
    Chosen,
    FigureAbove,
    FitsVan,
    Given,
    GroupAnswered,
    MarginBelow,
    NeedsMet,
    Not,
    PlacesLegal,
    WithinBound,
    ZonesFree,
)
from specbuilder.storage.expressions import RESERVED_WORDS, parse_expression
from tests.storage.expression_text import expression_text

JOB = frozenset({BriefKey("signing")})


def one(atom: Atom) -> AnyOf:
    return AnyOf((AllOf((atom,)),))


@pytest.mark.parametrize(
    ("text", "atom"),
    [
        ("larchlid-short", Chosen(OptionId("larchlid-short"))),
        ("#awning", Given(Tag("awning"))),
        ("#awning@left", Given(Tag("awning"), "left")),
        ("#awning@same", Given(Tag("awning"), "same")),
        ("group:roof-type", GroupAnswered(GroupId("roof-type"))),
        ("brief.season=winter", BriefIs(BriefKey("season"), Compare.EQUAL, "winter")),
        ("brief.must_run!=none", BriefIs(BriefKey("must_run"), Compare.UNEQUAL, "none")),
        ("brief.altitude_m>1500", BriefIs(BriefKey("altitude_m"), Compare.ABOVE, 1500)),
        ("brief.design_temp_c<-5.5", BriefIs(BriefKey("design_temp_c"), Compare.BELOW, -5.5)),
        ("job.signing=yes", BriefIs(BriefKey("signing"), Compare.EQUAL, "yes")),
        ("margin(total-mass)<150", MarginBelow(LedgerId("total-mass"), 150)),
        ("figure(berths)>0", FigureAbove(LedgerId("berths"), 0)),
        ("always", Always()),
        ("fits-van", FitsVan()),
        ("needs-met", NeedsMet()),
        ("places-legal", PlacesLegal()),
        ("total-mass <= bound", WithinBound(LedgerId("total-mass"))),
        ("front-share >= bound", WithinBound(LedgerId("front-share"), within=False)),
        ("battery-current <= 0.8 bound", WithinBound(LedgerId("battery-current"), factor=0.8)),
        ("closed-height <= bound - 20", WithinBound(LedgerId("closed-height"), minus=20)),
        ("zone-use(pod-place,sill@left) <= bound", ZonesFree((Zone("pod-place"), Zone("sill@left")))),
        ("!tail-galley", Not(Chosen(OptionId("tail-galley")))),
    ],
)
def test_each_atom_both_ways(text: str, atom: Atom) -> None:
    parsed = parse_expression(text)
    assert parsed.faults == ()
    assert parsed.expression == one(atom)
    assert expression_text(one(atom), JOB) == text


def test_either_or_lists_of_and_lists() -> None:
    a, b, c, d = (Chosen(OptionId(word)) for word in "abcd")
    assert parse_expression("a + b | c + !d").expression == AnyOf((AllOf((a, b)), AllOf((c, Not(d)))))


def test_blanks_do_not_matter() -> None:
    tight, wide = "a+!#b@left|margin(c)<3", "  a  + ! # b @ left |  margin ( c ) < 3 "
    assert parse_expression(tight) == parse_expression(wide)


def test_nothing_is_never_and_always_is_always() -> None:
    assert parse_expression(" ").expression == NEVER
    assert expression_text(NEVER) == ""
    assert parse_expression("always").expression == ALWAYS


@pytest.mark.parametrize(
    ("text", "column", "words"),
    [
        ("a + ", 5, "expected an option, a #tag, group:ID, brief.KEY=V, job.KEY=V or the like, but the text ends."),
        ("a b", 3, 'expected +, | or the end, but found "b".'),
        ("!!a", 2, 'expected an option, a #tag, group:ID, brief.KEY=V, job.KEY=V or the like, but found "!".'),
        ("(a)", 1, 'expected an option, a #tag, group:ID, brief.KEY=V, job.KEY=V or the like, but found "(".'),
        ("a\x1bb", 2, 'expected +, | or the end, but found "U+001B".'),
        ("group", 1, '"group" does not stand alone: see how the other rules write it.'),
        ("gruop:roof", 1, '"gruop:" opens nothing known; did you mean "group:"?'),
        ("margn(a)<3", 1, '"margn(" opens nothing known; did you mean "margin("?'),
        ("brie.a=3", 1, '"brie." opens nothing known; did you mean "brief."?'),
        ("brief.=3", 1, "expected a key of the brief after the dot: write brief.KEY=V."),
        ("brief.a<=3", 8, 'expected =, !=, > or < after brief.a, but found "<=".'),
        ("brief.a=", 9, "expected a word or a number, but the text ends."),
        ("#a@lefft", 4, '"lefft" is no place; did you mean "left"?'),
        ("#", 2, "expected a tag after #, but the text ends."),
        ("margin(a)>3", 10, 'expected <, but found ">".'),
        ("margin(a)<b", 11, 'expected a number, but found "b".'),
        ("figure(a)>" + "9" * 400, 11, "the number is larger than anything counted here: check it."),
        ("a <= 3", 7, 'expected the word "bound", but the text ends.'),
        ("a <= bund", 6, 'expected the word "bound", but found "bund": write bound.'),
        ("a <= bound-20", 6, 'expected the word "bound", but found "bound-20": put blanks around the minus.'),
        ("zone-use() <= bound", 10, 'expected a zone, but found ")".'),
        ("zone-use(a) >= bound", 13, 'expected <=, but found ">=".'),
    ],
)
def test_broken_grammar_names_the_column_and_what_was_expected(text: str, column: int, words: str) -> None:
    (fault,) = parse_expression(text).faults
    assert (fault.column, fault.words) == (column, words)


_NAMES = st.from_regex(r"[a-z][a-z0-9]{0,5}(-[a-z0-9]{1,5}){0,2}", fullmatch=True).filter(
    lambda name: name not in RESERVED_WORDS
)
_SIDES = st.sampled_from(["left", "right", "rear"])
_NUMBERS = st.floats(-1e12, 1e12, allow_nan=False) | st.integers(-(10**6), 10**6).map(float)
_PLAIN_ATOMS: st.SearchStrategy[Atom] = st.one_of(
    st.builds(Chosen, _NAMES),
    st.builds(Given, _NAMES, st.none() | _SIDES | st.just("same")),
    st.builds(GroupAnswered, _NAMES),
    st.builds(
        BriefIs, _NAMES, st.sampled_from(Compare), _NUMBERS | st.from_regex("[A-Za-z][A-Za-z0-9-]{0,5}", fullmatch=True)
    ),
    st.builds(MarginBelow, _NAMES, _NUMBERS),
    st.builds(FigureAbove, _NAMES, _NUMBERS),
    st.sampled_from([Always(), FitsVan(), NeedsMet(), PlacesLegal()]),
    st.builds(WithinBound, _NAMES, st.booleans(), _NUMBERS.map(abs), _NUMBERS.map(abs)),
    st.builds(
        ZonesFree, st.lists(_NAMES | st.builds("{}@{}".format, _NAMES, _SIDES), min_size=1, max_size=3).map(tuple)
    ),
)
_TERMS = st.lists(_PLAIN_ATOMS | st.builds(Not, _PLAIN_ATOMS), min_size=1, max_size=3).map(lambda a: AllOf(tuple(a)))
_EXPRESSIONS = st.lists(_TERMS, max_size=3).map(lambda terms: AnyOf(tuple(terms)))


@settings(max_examples=300, deadline=None)
@given(expression=_EXPRESSIONS)
def test_every_expression_survives_being_written(expression: AnyOf) -> None:
    parsed = parse_expression(expression_text(expression))
    assert parsed.faults == ()
    assert parsed.expression == expression


@settings(max_examples=300, deadline=None)
@given(text=st.text("ab-_.@#:+|!()<>=,0159 \x1b\u202eé", max_size=30) | st.text(max_size=20))
def test_any_text_is_an_expression_or_has_a_fault(text: str) -> None:
    parsed = parse_expression(text)
    assert all(1 <= fault.column <= len(text) + 1 and fault.words.isprintable() for fault in parsed.faults)
    if not parsed.faults:
        assert parse_expression(expression_text(parsed.expression)).expression == parsed.expression


def test_numbers_are_written_without_exponent() -> None:
    tiny = one(MarginBelow(LedgerId("a"), 1e-7))
    assert expression_text(tiny) == "margin(a)<0.0000001"
    assert math.isclose(parse_expression("margin(a)<0.0000001").expression.terms[0].atoms[0].amount, 1e-7)  # type: ignore[union-attr]
