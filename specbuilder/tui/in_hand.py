"""What lies on the desk: a session with its report, the what-if over it, and what an edit would make of it."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Session, do
from specbuilder.session.trial import trial_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Aside:
    """The job as it stands while a what-if is on the screens."""

    session: Session
    report: Report


class InHand:
    """One session. Nothing of it is written here."""

    def __init__(self, catalogue: Catalogue) -> None:
        self.catalogue = catalogue
        """What the open job is held against: the rules of today, or those it was agreed on."""
        self.session = Session(catalogue=catalogue, spec=Spec())
        self.report: Report = evaluate(catalogue, self.session.spec)
        self.aside: Aside | None = None
        """Set while a what-if is on."""
        self.tried: tuple[Edit, ...] = ()
        """What was tried in the last what-if over this job, and not kept."""
        self._begun: tuple[Session, Session, Report] | None = None
        self._foreseen: tuple[Spec, Edit, Report] | None = None

    @property
    def stand(self) -> Stand:
        """The spec as it is on the desk, with all that follows."""
        return Stand(catalogue=self.catalogue, spec=self.session.spec, report=self.report)

    def swap(self, session: Session) -> None:
        """Have this session on the desk, with its report."""
        self.session = session
        self.report = evaluate(self.catalogue, session.spec)

    # -- what an edit would do -------------------------------------------------------------------------------------

    @property
    def editable(self) -> Report:
        """Everything about what an edit is done to: the spec, or of what has left the house its next revision."""
        return self._start()[1]

    def would_be(self, edit: Edit) -> Report:
        """What would follow from an edit; nothing is changed. The last answer is remembered."""
        spec = self.session.spec
        if self._foreseen is None or self._foreseen[:2] != (spec, edit):
            session, _ = do(self._start()[0], edit)
            self._foreseen = spec, edit, evaluate(self.catalogue, session.spec)
        return self._foreseen[2]

    def _start(self) -> tuple[Session, Report]:
        """The session an edit is done in; remembered as long as the one on the desk stays."""
        if self._begun is None or self._begun[0] is not self.session:
            begun = trial_of(self.stand, self.session.base)
            same = begun.spec == self.session.spec
            self._begun = self.session, begun, self.report if same else evaluate(self.catalogue, begun.spec)
        return self._begun[1:]

    # -- what if ---------------------------------------------------------------------------------------------------

    @property
    def trying(self) -> bool:
        """True while a what-if is on."""
        return self.aside is not None

    def try_out(self) -> bool:
        """Turn the what-if on: what was tried before, done again over the job as it stands now.

        Returns:
            True when there was something tried before.
        """
        session = self._start()[0]
        self.aside = Aside(session=self.session, report=self.report)
        for edit in self.tried:
            session, _ = do(session, edit)
        self.swap(session)
        return bool(session.past)

    def back_to_job(self) -> None:
        """Turn it off. What was tried is kept until another job is opened; the job is as it was."""
        if self.aside is None:
            return
        self.tried = tuple(done.edit for done in self.session.past)
        self.session, self.report = self.aside.session, self.aside.report
        self.aside = None

    def forget_trial(self) -> None:
        """Nothing is tried, and nothing was."""
        self.aside, self.tried = None, ()
