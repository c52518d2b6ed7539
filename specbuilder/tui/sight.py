"""What can be seen of the open job from where the pages lie."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from specbuilder.model.catalogue import Catalogue
    from specbuilder.model.edits import Edit
    from specbuilder.model.report import Report

    from .deeds import Deeds
    from .opening import Opening
    from .searches import Searches
    from .walk import Walk


class Sight:
    """The open job, read; ``opening`` is there once the catalogue is."""

    opening: Opening | None

    @property
    def walk(self) -> Walk | None:
        """The walk through the open job; None while the list of jobs is shown."""
        return self.opening.walk if self.opening is not None else None

    @property
    def catalogue(self) -> Catalogue:
        """What can be built."""
        assert self.opening is not None
        return self.opening.desk.catalogue

    @property
    def report(self) -> Report:
        """Everything about the open job."""
        assert self.opening is not None
        return self.opening.desk.report

    @property
    def editable(self) -> Report:
        """Everything about what an edit is done to: the job, or of what has left the house its next revision."""
        assert self.opening is not None
        return self.opening.desk.editable

    @property
    def deeds(self) -> Deeds:
        """What is done to the job as a whole."""
        assert self.opening is not None
        return self.opening.deeds

    @property
    def searches(self) -> Searches:
        """What can be searched."""
        assert self.opening is not None
        return self.opening.searches

    @property
    def trying(self) -> bool:
        """True while a what-if is on."""
        return self.opening is not None and self.opening.desk.trying

    def anew(self) -> None:
        """Another revision lies on the desk: fresh pages for it, with the cursor where it was."""
        if self.opening is not None:
            self.opening.anew()

    def edit_job(self, edit: Edit) -> bool:
        """Do this to the job itself while a what-if lies over it."""
        return self.walk is not None and self.walk.doing.edit_job(edit)

    def begin_variant(self) -> None:
        """A copy of what is on the screens becomes a variant of the job, and is open."""
        if self.opening is not None:
            self.opening.begin_variant()

    def go_over(self, number: str) -> None:
        """Leave this job and open that one."""
        if self.opening is not None:
            self.opening.go_over(number)

    def may_write_down(self) -> bool:
        """True where the job can be quoted, signed and recorded; else it is said why not."""
        return self.walk is not None and self.walk.doing.may_write_down()

    def would_be(self, edit: Edit) -> Report:
        """What would follow from an edit; nothing is changed."""
        assert self.opening is not None
        return self.opening.desk.would_be(edit)

    def now(self) -> str:
        """Date and time, ``YYYY-MM-DD HH:MM``."""
        assert self.opening is not None
        return self.opening.desk.now()
