"""What was written with other rules than those of today: as it was, and how it would stand today."""

from __future__ import annotations

import contextlib
from dataclasses import dataclass
from datetime import date

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import JobState
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.session.compare import moved
from specbuilder.session.life import SIGNED_STATES, state_on
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_recovery import Instead
from specbuilder.storage.rules_files import RulesFaults

from .house import House, stand_of


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Older:
    """A revision that other rules than those of today were used for, with these rules."""

    spec: Spec
    catalogue: Catalogue
    state: JobState
    """On the day it was asked for: a quote may have run out since."""


def older(house: House, files: JobFiles, today: date, instead: Instead | None = None) -> Older | None:
    """The revision with its own rules, where these are kept and are not those of today.

    None for what was signed, and for a change to it: that holds as it was agreed, whatever the prices of today are.
    None for a draft as long as the firm gives its catalogue the same version: it goes on with what was put right.

    Raises:
        JobUnreadableError: it cannot be read.
        RulesFaults, DiskError: the rules of what left the house cannot be had.
    """
    found, catalogue = house.found(files, instead)
    digest = found.catalogue_digest
    if not digest or digest == house.catalogue.digest:
        return None
    spec = house.session(found, catalogue).spec
    if spec.state in SIGNED_STATES or spec.changes_signed:
        return None
    own = None
    with contextlib.suppress(RulesFaults, DiskError):
        own = house.catalogue_of(digest)
    if own is None or (spec.state is JobState.DRAFT and _version(own) == _version(house.catalogue)):
        return None
    if catalogue is not own:
        found, _ = house.found(files, instead, as_it_was=True)
        spec = house.session(found, own).spec
    return Older(spec=spec, catalogue=own, state=state_on(spec, today))


def _version(catalogue: Catalogue) -> str:
    return catalogue.firm.catalogue_version


def as_of_today(house: House, spec: Spec) -> Stand:
    """The same spec held against the rules of today."""
    return stand_of(house.catalogue, moved(spec, house.catalogue))


@dataclass(frozen=True, slots=True, kw_only=True)
class Past:
    """One revision of a job."""

    revision: int
    state: JobState
    """On the day it was asked for."""
    spec: Spec


def pasts(house: House, number: str, today: date) -> tuple[Past, ...]:
    """Every revision of a job, the newest first.

    Raises:
        JobUnreadableError: one of them cannot be read.
        RulesFaults, DiskError: the rules it was agreed on cannot be had.
    """
    found: list[Past] = []
    for revision in reversed(house.jobs.revisions(number)):
        spec = house.session(*house.found(house.jobs.files(number, revision), as_it_was=True)).spec
        found.append(Past(revision=revision, state=state_on(spec, today), spec=spec))
    return tuple(found)
