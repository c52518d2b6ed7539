"""Names of catalogue things as people read them: never an id."""

from __future__ import annotations

import re
from collections.abc import Iterable

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId, Tag, Zone
from specbuilder.model.kinds import Place
from specbuilder.model.ledger import Lack
from specbuilder.model.rules import FigureAbove, MarginBelow, WithinBound
from specbuilder.model.spec import Choice, Spec

from .brief_terms import key_words
from .plain import fitted, lowered

_PLACES = {"left": "on the left", "right": "on the right", "rear": "at the rear", "same": "on that side"}
_LONGEST_QUOTE = 60


def option_name(catalogue: Catalogue, option: OptionId, place: Place | None = None, count: int = 1) -> str:
    """``Side galley, right``, ``2 x USB pair``; one that left the catalogue is named as it stands in the file."""
    known = catalogue.options.get(option)
    name = known.name if known else f'"{option}" (not in this catalogue)'
    sided = f"{name}, {place.value}" if place else name
    return f"{count} x {sided}" if count > 1 else sided


def part_name(catalogue: Catalogue, option: OptionId, place: Place | None = None, count: int = 1) -> str:
    """For the floor: ``Air heater, exhaust right`` where the side is that of the exhaust and not of the part."""
    known = catalogue.options.get(option)
    if place is None or known is None or known.exhaust_outlet is None:
        return option_name(catalogue, option, place, count)
    return f"{option_name(catalogue, option, None, count)}, exhaust {place.value}"


def short_name(catalogue: Catalogue, option: OptionId, room: int) -> str:
    """The name in at most so many characters: whole, up to its first comma or colon, or the name of its question."""
    known = catalogue.options.get(option)
    if known is None:
        return fitted(option, room)
    main = re.split("[,:]", known.name)[0]
    fits = (name for name in (known.name, main, lowered(group_name(catalogue, known.group))) if len(name) <= room)
    return next(fits, fitted(main, room))


def choice_name(catalogue: Catalogue, choice: Choice) -> str:
    """The name of a choice with its place and count."""
    return option_name(catalogue, choice.option, choice.place, choice.count)


def chosen_name(catalogue: Catalogue, spec: Spec, option: OptionId) -> str:
    """The name of an option as it stands in this spec, with the places and counts it was taken at."""
    choices = spec.chosen(option)
    if not choices:
        return option_name(catalogue, option)
    return listed(choice_name(catalogue, choice) for choice in choices)


def group_name(catalogue: Catalogue, group: GroupId) -> str:
    """``Cooking``; a group that left the catalogue is named as it stands in the file."""
    known = catalogue.groups.get(group)
    return known.name if known else f'"{group}" (not in this catalogue)'


def key_name(catalogue: Catalogue, key: BriefKey) -> str:
    """Short name of a line of the brief: ``barrier height``."""
    return key_words(key)


def ledger_name(catalogue: Catalogue, ledger: LedgerId) -> str:
    """``Weight of the loaded van``."""
    known = catalogue.ledgers.get(ledger)
    return known.name if known else f'"{ledger}" (not in this catalogue)'


def tag_name(tag: Tag) -> str:
    """A capability in words: ``exhaust on the right``, ``elevating roof``."""
    return _place_words(tag)


def zone_name(zone: Zone | Tag) -> str:
    """A place in the van in words: ``wall floor on the right``."""
    return _place_words(zone)


def place_name(place: Place) -> str:
    """A side in a sentence: ``on the left``, ``at the rear``."""
    return _PLACES[place.value]


def rule_name(catalogue: Catalogue, rule: RuleId) -> str:
    """A rule in a list of rules: the ledger or figure it is about, else the beginning of what the customer hears."""
    known = catalogue.rules.get(rule)
    if known is None:
        return f'"{rule}" (not in this catalogue)'
    atoms = (atom for half in (known.then, known.when) for term in half.terms for atom in term.atoms)
    about = (atom.ledger for atom in atoms if isinstance(atom, WithinBound | MarginBelow | FigureAbove))
    ledger = catalogue.ledgers.get(next(about, LedgerId("")))
    return lowered(ledger.short) if ledger else f'"{fitted(known.because, _LONGEST_QUOTE)}"'


def lack_name(catalogue: Catalogue, lack: Lack) -> str:
    """What is missing, in a few words: ``barrier height``, ``cooking``, ``the base van``."""
    if lack.key is not None:
        return key_name(catalogue, lack.key)
    if lack.group is not None:
        return lowered(group_name(catalogue, lack.group))
    return "the data of the base van"


def listed(names: Iterable[str], last: str = "and", most: int = 0) -> str:
    """``a``, ``a and b``, ``a, b and c``; with ``most`` the rest is counted: ``a, b and 3 more``."""
    items = list(dict.fromkeys(names))
    if most and len(items) > most:
        items = [*items[:most], f"{len(items) - most} more"]
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def _place_words(text: str) -> str:
    name, _, place = text.partition("@")
    words = name.replace("-", " ")
    return f"{words} {_PLACES.get(place, place)}" if place else words
