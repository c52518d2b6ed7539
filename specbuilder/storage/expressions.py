"""The written form of rules, ``a + b | c + !d``, to values.

``|`` parts the either-or list, ``+`` the and-lists in it, ``!`` denies one atom; there are no brackets. Atoms are those
of ``specbuilder.model.rules``, written as their docstrings say.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import NoReturn

from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, Tag, Zone
from specbuilder.model.kinds import AnswerType, Compare, Place
from specbuilder.model.rules import (
    NEVER,
    SAME,
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

from .expression_scanner import NUMBER, UNSIGNED, VALUE, WORD, ExpressionFault, GrammarError, Scanner
from .faults import meant, nearest, quotable
from .vocabulary import ANY_WORD, Asked, Names, Vocabulary

_FIXED = MappingProxyType[str, Atom](
    {"always": Always(), "fits-van": FitsVan(), "needs-met": NeedsMet(), "places-legal": PlacesLegal()}
)
_OPENINGS = ("group:", "brief.", "job.", "margin(", "figure(", "zone-use(")
_AN_ATOM = "an option, a #tag, group:ID, brief.KEY=V, job.KEY=V or the like"
_PLACES = (*(place.value for place in Place), SAME)

RESERVED_WORDS = frozenset({*_FIXED, "margin", "figure", "zone-use", "group", "bound"})
"""No option may be called so: it could not be told from a word of the expressions."""


@dataclass(frozen=True, slots=True)
class Parsed:
    """An expression as far as it could be read. With faults it must not be used."""

    expression: AnyOf
    faults: tuple[ExpressionFault, ...] = ()


def parse_expression(text: str, vocabulary: Vocabulary = ANY_WORD) -> Parsed:
    """The value of a written expression; an empty text is the empty either-or list, which is never true.

    With a vocabulary every word is held against it. Without one a figure after ``=`` is always a number, because only
    the brief knows which of its words look like one.
    """
    parser = _Parser(text, vocabulary)
    try:
        expression = parser.expression()
    except GrammarError as end:
        return Parsed(NEVER, (*parser.faults, end.fault))
    return Parsed(expression, tuple(parser.faults))


class _Parser:
    """Unknown words are noted and passed over; broken grammar ends the reading."""

    def __init__(self, text: str, vocabulary: Vocabulary) -> None:
        self.faults: list[ExpressionFault] = []
        self._scan = Scanner(text)
        self._words = vocabulary

    def expression(self) -> AnyOf:
        if self._scan.at_end:
            return NEVER
        terms = [self._term()]
        while self._scan.take("|"):
            terms.append(self._term())
        if not self._scan.at_end:
            self._scan.expected("+, | or the end")
        return AnyOf(tuple(terms))

    def _term(self) -> AllOf:
        atoms = [self._atom()]
        while self._scan.take("+"):
            atoms.append(self._atom())
        return AllOf(tuple(atoms))

    def _atom(self) -> Atom:
        return Not(self._plain_atom()) if self._scan.take("!") else self._plain_atom()

    def _plain_atom(self) -> Atom:
        if self._scan.take("#"):
            return self._given()
        column = self._scan.column
        word = self._scan.matched(WORD, _AN_ATOM)
        match word, self._scan.next_sign:
            case "margin", "(":
                return MarginBelow(self._ledger_in_brackets(), self._amount("<"))
            case "figure", "(":
                return FigureAbove(self._ledger_in_brackets(), self._amount(">"))
            case "zone-use", "(":
                return self._zones_free()
            case "group", ":":
                self._scan.need(":")
                return GroupAnswered(GroupId(self._named("a group", self._words.groups)))
            case _, ":" | "(" as sign:
                return self._unknown_opening(word + sign, column)
            case _, "<=" | ">=" if "." not in word:
                return self._within_bound(word, column)
            case _ if "." in word:
                return self._brief_is(word, column)
            case _ if word in _FIXED:
                return _FIXED[word]
            case _ if word in RESERVED_WORDS:
                return self._scan.stop(column, f'"{word}" does not stand alone: see how the other rules write it.')
            case _:
                self._check(word, self._words.options, column)
                return Chosen(OptionId(word))

    def _unknown_opening(self, opening: str, column: int) -> NoReturn:
        near = nearest(opening, _OPENINGS)
        cure = f'did you mean "{near}"?' if near else f"expected {_AN_ATOM}."
        self._scan.stop(column, f'"{quotable(opening)}" opens nothing known; {cure}')

    def _given(self) -> Given:
        column = self._scan.column
        tag = self._scan.matched(WORD, "a tag after #")
        place = self._place() if self._scan.take("@") else None
        self._check_tag(tag, place, self._words.tags, column)
        return Given(Tag(tag), place)

    def _check_tag(self, tag: str, place: str | None, tags: Names, column: int) -> None:
        unknown = tags.unknown(tag)
        if unknown is not None:
            self._note(column, unknown)
        elif place == SAME and tags.complete and not any(f"{tag}@{side.value}" in tags.words for side in Place):
            self._note(column, f'nothing gives the tag "{tag}" with a side, so @same finds none: take @same out.')
        elif place is not None and place != SAME:
            self._check(f"{tag}@{place}", tags, column)

    def _place(self) -> str:
        column = self._scan.column
        place = self._scan.matched(WORD, "left, right, rear or same after @")
        if place not in _PLACES:
            self._scan.stop(column, f'"{quotable(place)}" is no place; {meant(place, _PLACES, "")}')
        return place

    def _brief_is(self, word: str, column: int) -> BriefIs:
        section, _, key = word.partition(".")
        if section not in ("brief", "job"):
            self._unknown_opening(f"{section}.", column)
        if not key:
            self._scan.stop(column, f"expected a key of the {section} after the dot: write {section}.KEY=V.")
        asked = self._asked(section, key, column)
        sign_column, sign = self._scan.column, self._scan.next_sign
        if sign not in tuple(Compare):
            self._scan.expected(f"=, !=, > or < after {section}.{key}")
        self._scan.need(sign)
        compare = Compare(sign)
        if asked and _in_words(asked) and compare in (Compare.ABOVE, Compare.BELOW):
            self._note(sign_column, f"{section}.{key} is answered in words: compare it with = or !=.")
        return BriefIs(BriefKey(key), compare, self._value(asked, f"{section}.{key}"))

    def _asked(self, section: str, key: str, column: int) -> Asked | None:
        """What is known of this key; an unknown one is noted."""
        here, other, better = self._words.brief, self._words.job, "job"
        if section == "job":
            here, other, better = other, here, "brief"
        if key in here or not self._words.complete:
            return here.get(key)
        if key in other:
            self._note(column, f"{section}.{key} stands in the other half: write {better}.{key}.")
        else:
            cure = meant(key, here, f"add [{section}.{key}] or correct the word.")
            self._note(column, f'"{quotable(key)}" is no key of the {section}; {cure}')
        return None

    def _value(self, asked: Asked | None, key: str) -> str | float:
        column = self._scan.column
        text = self._scan.matched(VALUE, "a word or a number")
        number = float(text) if NUMBER.fullmatch(text) else math.inf
        if asked is None:
            return number if math.isfinite(number) else text
        if _in_words(asked):
            if text not in asked.values:
                cure = meant(text, asked.values, "correct the word.")
                self._note(column, f'"{quotable(text)}" is no answer of {key}; {cure}')
            return text
        if not math.isfinite(number):
            self._note(column, f'{key} is answered with a number, not with "{quotable(text)}": write a number.')
        return number

    def _ledger_in_brackets(self) -> LedgerId:
        self._scan.need("(")
        ledger = self._named("a ledger", self._words.ledgers)
        self._scan.need(")")
        return LedgerId(ledger)

    def _amount(self, sign: str) -> float:
        self._scan.need(sign)
        return self._scan.number()

    def _zones_free(self) -> ZonesFree:
        self._scan.need("(")
        zones = [self._zone()]
        while self._scan.take(","):
            zones.append(self._zone())
        self._scan.need(")")
        self._scan.need("<=")
        self._bound()
        return ZonesFree(tuple(zones))

    def _zone(self) -> Zone:
        column = self._scan.column
        zone = self._scan.matched(WORD, "a zone")
        if self._scan.take("@"):
            zone += "@" + self._scan.matched(WORD, "left, right or rear after @")
        self._check(zone, self._words.zones, column)
        return Zone(zone)

    def _within_bound(self, ledger: str, column: int) -> WithinBound:
        self._check(ledger, self._words.ledgers, column)
        within = self._scan.take("<=")
        if not within:
            self._scan.need(">=")
        factor = self._scan.number(UNSIGNED) if self._scan.comes(UNSIGNED) else 1.0
        self._bound()
        minus = self._scan.number(UNSIGNED) if self._scan.take("-") else 0.0
        return WithinBound(LedgerId(ledger), within, factor, minus)

    def _bound(self) -> None:
        column = self._scan.column
        word = self._scan.matched(WORD, 'the word "bound"')
        if word != "bound":
            cure = "put blanks around the minus" if word.startswith("bound-") else "write bound"
            self._scan.stop(column, f'expected the word "bound", but found "{quotable(word)}": {cure}.')

    def _named(self, what: str, names: Names) -> str:
        column = self._scan.column
        word = self._scan.matched(WORD, what)
        self._check(word, names, column)
        return word

    def _check(self, word: str, names: Names, column: int) -> None:
        unknown = names.unknown(word)
        if unknown is not None:
            self._note(column, unknown)

    def _note(self, column: int, words: str) -> None:
        self.faults.append(ExpressionFault(column, words))


def _in_words(asked: Asked) -> bool:
    return asked.type in (AnswerType.ONE_OF, AnswerType.LIST)
