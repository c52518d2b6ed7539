"""What a THING on the command line means: an option, a line of the brief, a field of the real van, the customer."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from typing import TypeAlias, TypeVar, assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Place
from specbuilder.model.spec import VanData
from specbuilder.wording.edits import VAN_FIELDS as VAN_NAMES
from specbuilder.wording.names import key_name, listed

_FORM = re.compile(r"(?P<name>[^=@*]+)(?:@(?P<place>[^=@*]*))?(?:\*(?P<count>[^=@*]*))?", re.DOTALL)
_MANY = 8
_LONGEST = 60
_SOME = 3
_AS_LIKE = 0.1
"""A word that much less like what was typed than the best one is no longer named."""
_T = TypeVar("_T")


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionThing:
    """An option, perhaps at a place and so many times."""

    option: OptionId
    place: Place | None = None
    count: int | None = None


@dataclass(frozen=True, slots=True)
class LineThing:
    """A line of the brief or of the job state."""

    key: BriefKey


@dataclass(frozen=True, slots=True)
class VanThing:
    """A field of the data of the real van."""

    field: str


@dataclass(frozen=True, slots=True)
class CustomerThing:
    """``customer`` (the name) or ``contact``."""

    field: str


@dataclass(frozen=True, slots=True)
class NoteThing:
    """The private note of the job."""


@dataclass(frozen=True, slots=True)
class GroupThing:
    """A question of the walk."""

    group: GroupId


@dataclass(frozen=True, slots=True)
class RuleThing:
    """A rule, by its id as ``check --json`` gives it."""

    rule: RuleId


@dataclass(frozen=True, slots=True)
class LedgerThing:
    """A ledger or figure."""

    ledger: LedgerId


@dataclass(frozen=True, slots=True)
class Unclear:
    """The word means nothing, or more than one thing; ``words`` says so and what to type instead."""

    words: str
    several: bool = False
    """It means more than one thing."""


Settable: TypeAlias = OptionThing | LineThing | VanThing | CustomerThing | NoteThing
Thing: TypeAlias = Settable | GroupThing | RuleThing | LedgerThing

VAN_FIELDS: tuple[str, ...] = tuple(field.name for field in fields(VanData))


def settable(catalogue: Catalogue, text: str) -> Settable | Unclear:
    """What ``set`` and ``drop`` may change, without its ``=VALUE``."""
    form = _FORM.fullmatch(text.strip())
    if form is None:
        return Unclear(f'"{text}" is no THING: write OPTION, OPTION@left, OPTION*2 or KEY=VALUE.')
    name = form["name"].strip()
    plain = _by_key(catalogue, name)
    if plain is not None:
        return plain
    labels = _labels(catalogue)
    said = [line for line, label in labels.items() if label.casefold() == name.casefold()]
    if len(said) == 1:
        return said[0]
    option = _option(catalogue, name)
    if isinstance(option, Unclear):
        lines = [] if option.several else _by_name(name, labels)
        if len(lines) == 1:
            return lines[0]
        return _unclear(name, {line: f"{labels[line]} ({_id(line)})" for line in lines}, ()) if lines else option
    return _placed(option, form["place"], form["count"])


def thing(catalogue: Catalogue, text: str) -> Thing | Unclear:
    """Anything that can be asked about."""
    name = text.strip()
    exact = _exact(catalogue, name)
    if exact is not None:
        return exact
    named: dict[Thing, str] = {OptionThing(option=o.id): o.name for o in catalogue.options.values()}
    named.update((GroupThing(g.id), g.name) for g in catalogue.groups.values())
    named.update((LedgerThing(x.id), x.name) for x in catalogue.ledgers.values())
    found = _by_short(catalogue, name, named) or _by_name(name, named)
    if len(found) == 1:
        return found[0]
    if not found and (form := _FORM.fullmatch(name)) and (form["place"] or form["count"]):
        return settable(catalogue, name)
    words = (*map(_id, named), *catalogue.rules, *catalogue.brief, *(x.short for x in catalogue.ledgers.values()))
    found.sort(key=lambda one: isinstance(one, LedgerThing) and catalogue.ledgers[one.ledger].part_of is not None)
    return _unclear(name, {k: f"{named[k]} ({_id(k)})" for k in found}, words)


def _by_short(catalogue: Catalogue, name: str, named: Mapping[Thing, str]) -> list[Thing]:
    """The ledgers whose short name it is, as it stands beside their bar; none while something bears it as its name."""
    wanted = name.casefold()
    if wanted in map(str.casefold, named.values()):
        return []
    return [LedgerThing(x.id) for x in catalogue.ledgers.values() if x.short.casefold() == wanted]


def _exact(catalogue: Catalogue, name: str) -> Thing | None:
    if OptionId(name) in catalogue.options:
        return OptionThing(option=OptionId(name))
    if RuleId(name) in catalogue.rules:
        return RuleThing(RuleId(name))
    if LedgerId(name) in catalogue.ledgers:
        return LedgerThing(LedgerId(name))
    if GroupId(name) in catalogue.groups:
        return GroupThing(GroupId(name))
    return _by_key(catalogue, name)


def _by_key(catalogue: Catalogue, name: str) -> LineThing | VanThing | CustomerThing | NoteThing | None:
    if OptionId(name) in catalogue.options:
        return None
    if name in ("customer", "contact"):
        return CustomerThing(name)
    if name == "note":
        return NoteThing()
    key = BriefKey(name.removeprefix("brief.").removeprefix("job."))
    if key in catalogue.brief:
        return LineThing(key)
    field = name.removeprefix("van.")
    return VanThing(field) if field in VAN_FIELDS else None


def _labels(catalogue: Catalogue) -> dict[LineThing | VanThing, str]:
    """Lines of the brief and data of the real van as the screens call them."""
    lines: dict[LineThing | VanThing, str] = {
        LineThing(key): key_name(catalogue, key) for key, line in catalogue.brief.items() if line.question is not None
    }
    return lines | {VanThing(field): VAN_NAMES[field] for field in VAN_FIELDS if field in VAN_NAMES}


def _option(catalogue: Catalogue, name: str) -> OptionId | Unclear:
    if OptionId(name) in catalogue.options:
        return OptionId(name)
    names = {o.id: o.name for o in catalogue.options.values()}
    found = _by_name(name, names)
    if len(found) == 1:
        return found[0]
    keys = (*catalogue.options, *catalogue.brief, *VAN_FIELDS, "customer", "contact", "note")
    return _unclear(name, {option: f"{names[option]} ({option})" for option in found}, keys)


def _placed(option: OptionId, place: str | None, count: str | None) -> OptionThing | Unclear:
    places = {p.value: p for p in Place}
    if place is not None and place not in places:
        return Unclear(f'{option}: "{place}" is no place: use {listed(places, "or")}.')
    if count is not None and not (count.isascii() and count.isdigit() and len(count) < 4):
        return Unclear(f'{option}: "{count}" is no count: use a whole number, as in {option}*2.')
    return OptionThing(
        option=option,
        place=places[place] if place is not None else None,
        count=int(count) if count is not None else None,
    )


def _by_name(name: str, named: Mapping[_T, str]) -> list[_T]:
    """The things of that name; without one, those whose name begins so; without one, those that hold all its words."""
    wanted = " ".join(name.casefold().split())
    if not wanted:
        return []
    texts = {thing_: text.casefold() for thing_, text in named.items()}
    for fits in (
        lambda text: text == wanted,
        lambda text: text.startswith(wanted),
        lambda text: all(word in text for word in wanted.split()),
    ):
        found = [thing_ for thing_, text in texts.items() if fits(text)]
        if found:
            return found
    return []


def _id(thing_: Thing) -> str:
    match thing_:
        case OptionThing(option=option):
            return option
        case GroupThing(group):
            return group
        case LedgerThing(ledger):
            return ledger
        case RuleThing(rule):
            return rule
        case LineThing(key):
            return key
        case VanThing(field) | CustomerThing(field):
            return field
        case NoteThing():
            return "note"
        case _:
            assert_never(thing_)


def _unclear(name: str, found: Mapping[_T, str], words: Iterable[str]) -> Unclear:
    if found:
        some = list(found.values())[:_MANY]
        more = [f"{len(found) - _MANY} more"] if len(found) > _MANY else []
        told = f'"{name}" could be {listed([*some, *more], "or")}: type one of the names in brackets.'
        return Unclear(told, several=True)
    near = _near(name, words) if len(name) < _LONGEST else []
    if near:
        meant = listed((f'"{word}"' for word in near), "or")
        return Unclear(f'Nothing is called "{name[:_LONGEST]}": did you mean {meant}?')
    return Unclear(f'Nothing is called "{name[:_LONGEST]}": specbuilder show FILE STEP lists what there is.')


def _near(name: str, words: Iterable[str]) -> list[str]:
    """The words most like it; those that hold a word like it where none is."""
    every = list(dict.fromkeys(words))
    found = difflib.get_close_matches(name, every, n=_SOME)
    if found:
        likeness = {word: difflib.SequenceMatcher(a=word, b=name).ratio() for word in found}
        return [word for word in found if likeness[word] > likeness[found[0]] - _AS_LIKE]
    parts = list(dict.fromkeys(part for word in every for part in word.split("-")))
    like = difflib.get_close_matches(name.casefold(), parts, n=1)
    return [word for word in every if like and like[0] in word.split("-")][:_SOME]
