"""Names of catalogue things as people read them: never an id."""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, Tag
from specbuilder.model.kinds import Place
from specbuilder.model.ledger import Lack
from specbuilder.model.spec import Choice


def option_name(catalogue: Catalogue, option: OptionId, place: Place | None = None, count: int = 1) -> str:
    """``Side galley, right``, ``2 x USB pair``; an option that left the catalogue is said to be unknown."""
    raise NotImplementedError


def choice_name(catalogue: Catalogue, choice: Choice) -> str:
    """The name of a choice with its place and count."""
    raise NotImplementedError


def group_name(catalogue: Catalogue, group: GroupId) -> str:
    """``Cooking``."""
    raise NotImplementedError


def key_name(catalogue: Catalogue, key: BriefKey) -> str:
    """Short name of a line of the brief: ``barrier height``."""
    raise NotImplementedError


def ledger_name(catalogue: Catalogue, ledger: LedgerId) -> str:
    """``Weight of the loaded van``."""
    raise NotImplementedError


def tag_name(catalogue: Catalogue, tag: Tag) -> str:
    """A capability in words: ``exhaust on the right``, ``elevating roof``."""
    raise NotImplementedError


def lack_name(catalogue: Catalogue, lack: Lack) -> str:
    """What is missing, in a few words: ``barrier height``, ``cooking``, ``the base van``."""
    raise NotImplementedError


def listed(names: Iterable[str], last: str = "and") -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    raise NotImplementedError
