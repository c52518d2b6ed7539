"""The jobs of the house, each with the rules it is held against: those of today, or those it was written with."""

from __future__ import annotations

from datetime import date
from importlib.resources.abc import Traversable
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.session.evaluate import evaluate
from specbuilder.session.life import SIGNED_STATES
from specbuilder.session.papers import case_of
from specbuilder.session.ready import gaps
from specbuilder.session.state import Session, replay
from specbuilder.storage.faults import Fault
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_recovery import Found, Instead, find
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.kept_rules import are_kept, changed_since, keep_rules, kept_path, kept_rules
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.storage.rules_stamp import is_changed, stamp_of
from specbuilder.storage.spec_files import spec_text
from specbuilder.storage.spec_format import checksum_of
from specbuilder.wording.ready import gap_lines


class House:
    """Jobs folder, rules of today and rules kept from before."""

    def __init__(self, jobs: JobsFolder, catalogue: Catalogue, rules: Traversable | Path) -> None:
        self.jobs = jobs
        self.catalogue = catalogue
        """The rules of today."""
        self.rules = rules
        """Where they were read from."""
        self._kept: dict[str, Catalogue] = {catalogue.digest: catalogue}
        self._stamp = stamp_of(rules)

    @property
    def rules_changed(self) -> bool:
        """True when the folder of rules was edited since: what was read from it still holds in this program."""
        return stamp_of(self.rules) != self._stamp and is_changed(self.rules, self.catalogue.digest)

    def catalogue_of(self, digest: str) -> Catalogue | None:
        """The catalogue of this digest: that of today, or one kept; None when it is neither.

        Raises:
            RulesFaults: the kept rules are not what they were, or lack what this program's sums ask for.
            DiskError: they cannot be read.
        """
        if digest not in self._kept:
            found = kept_rules(self.jobs.path, digest)
            if found is None:
                return None
            if missing := gaps(found):
                kept = kept_path(self.jobs.path, digest).name
                raise RulesFaults(tuple(Fault(kept, 0, "", words) for words in gap_lines(missing)))
            self._kept[digest] = found
        return self._kept[digest]

    def keep_rules(self, catalogue: Catalogue) -> None:
        """Keeps the rules of today beside the jobs, where something rests on them.

        Raises:
            DiskError: they could not be written.
            RulesFaults: the folder holds other rules by now.
        """
        if catalogue.digest == self.catalogue.digest:
            keep_rules(self.jobs.path, self.rules, catalogue.digest)

    def hold_rules(self, catalogue: Catalogue) -> None:
        """Before anything leaves the house that rests on the rules of today: they are kept, or can still be.

        Raises:
            RulesFaults: the folder holds other rules by now, and those of today are kept nowhere.
        """
        today = catalogue.digest == self.catalogue.digest
        if today and self.rules_changed and not are_kept(self.jobs.path, catalogue.digest):
            raise RulesFaults((changed_since(self.rules.name),))

    def catalogue_for(self, spec: Spec, digest: str, *, as_it_was: bool = False) -> Catalogue:
        """The catalogue a spec is held against.

        What left the house, and what changes it, by the rules and prices it was agreed on, where they are kept;
        a draft by those of today, unless it is to be looked at ``as_it_was``.

        Raises:
            RulesFaults, DiskError: as ``catalogue_of``.
        """
        agreed = as_it_was or spec.state is not JobState.DRAFT or spec.changes_signed
        own = self.catalogue_of(digest) if digest and agreed else None
        return own or self.catalogue

    def found(
        self, files: JobFiles, instead: Instead | None = None, *, as_it_was: bool = False
    ) -> tuple[Found, Catalogue]:
        """A revision as it was last left, and the catalogue it is held against.

        Raises:
            JobUnreadableError: it cannot be read.
            RulesFaults, DiskError: as ``catalogue_of``.
        """
        found = find(files, self.catalogue, instead)
        catalogue = self.catalogue_for(found.saved or found.start, found.catalogue_digest, as_it_was=as_it_was)
        return (found if catalogue is self.catalogue else find(files, catalogue, instead)), catalogue

    def stand_of(self, files: JobFiles) -> Stand:
        """A revision as it was last left, with all that follows.

        Raises:
            JobUnreadableError: it cannot be read.
            RulesFaults, DiskError: as ``catalogue_of``.
        """
        found, catalogue = self.found(files)
        return stand_of(catalogue, self.session(found, catalogue).spec)

    def session(self, found: Found, catalogue: Catalogue) -> Session:
        """The session of a job that was found, with all that was done in this revision.

        Raises:
            JobUnreadableError, RulesFaults, DiskError: the signed revision it changes cannot be read.
        """
        begun = Session(catalogue=catalogue, spec=found.start, base=self.base_of(found.start))
        return replay(begun, found.entries)

    def base_of(self, spec: Spec) -> Stand | None:
        """The signed revision that a later one changes; None where none was signed."""
        for revision in reversed(self._earlier(spec)):
            stand = self.stand_of(self.jobs.files(spec.number, revision))
            if stand.spec.state in SIGNED_STATES:
                return stand
        return None

    def before(self, spec: Spec) -> Stand | None:
        """The revision that this one replaces: the signed one it changes, else the one before it that went out."""
        earlier = self._earlier(spec)
        if (base := self.base_of(spec)) is not None:
            return base
        if spec.replaces is None or spec.replaces not in earlier:
            return None
        return self.stand_of(self.jobs.files(spec.number, spec.replaces))

    def _signed_before(self, spec: Spec) -> tuple[Spec, ...]:
        """The signed revisions before this one, oldest first: each is the one that the next of them changes."""
        found: list[Spec] = []
        while (base := self.base_of(found[0] if found else spec)) is not None:
            found.insert(0, base.spec)
        return tuple(found)

    def _earlier(self, spec: Spec) -> tuple[int, ...]:
        if not spec.number or spec.revision == 1:
            return ()
        return tuple(revision for revision in self.jobs.revisions(spec.number) if revision < spec.revision)

    def replaced_by(self, spec: Spec) -> int | None:
        """The revision that has replaced this one; None when it is current, or no job of this house.

        Raises:
            DiskError: nobody can tell.
        """
        if not spec.number:
            return None
        return self.jobs.replaced_by(spec.number, spec.revision, signed=spec.state in SIGNED_STATES)

    def case(self, stand: Stand, today: date) -> Case:
        """All that papers tell of a revision.

        Raises:
            JobUnreadableError, RulesFaults, DiskError: a revision it is held against cannot be read.
        """
        text = spec_text(stand.catalogue, stand.spec, stand.report)
        before = self.before(stand.spec)
        return case_of(
            stand,
            today,
            before=before,
            signed=self._signed_before(before.spec) if before is not None else (),
            replaced_by=self.replaced_by(stand.spec),
            checksum=checksum_of(text),
        )


def stand_of(catalogue: Catalogue, spec: Spec) -> Stand:
    """A spec with all that follows from it."""
    return Stand(catalogue=catalogue, spec=spec, report=evaluate(catalogue, spec))
