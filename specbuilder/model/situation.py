"""A spec resolved against a catalogue: what rules are judged on and ledgers are summed over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from .catalogue import Catalogue, Option
from .facts import Facts
from .ids import GroupId
from .kinds import Owner, Place
from .spec import OwnPart
from .vans import Van


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A choice with its option at hand."""

    option: Option
    count: int = 1
    place: Place | None = None
    owner: Owner = Owner.HOUSE
    own_part: OwnPart | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """Everything a rule or a ledger may look at."""

    catalogue: Catalogue
    facts: Facts
    van: Option | None
    """The chosen base van (``van.van`` holds its data); None while undecided."""
    placed: tuple[Placed, ...]
    """The choices whose options are in the catalogue, base van included."""
    undecided: Mapping[GroupId, tuple[Option, ...]]
    """Each pick-one group without a choice, with its answers that are not blocked."""
    free: tuple[Option, ...]
    """Options of pick-any groups that are neither chosen nor blocked: extras that may still come."""

    @property
    def van_data(self) -> Van | None:
        """The data of the chosen base van."""
        return self.van.van if self.van else None
