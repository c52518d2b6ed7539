"""What is known of a sheet before it is made."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from specbuilder.documents.blocks import Paper
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet."""

    name: str
    """For commands and files: small letters and hyphens."""
    title: str
    """For people."""
    about: str
    """What it is for, in a few words."""
    make: Callable[[Case], Paper]
    states: frozenset[JobState]
    """In these states of the job it is called for."""
    private: bool
    """For the house only: never given to a customer."""
    needs_change: bool = False
    """It tells of a change order, and there is none without one."""

    def possible(self, case: Case) -> bool:
        """Whether it can be made at all."""
        return case.change_order is not None or not self.needs_change

    def called_for(self, case: Case) -> bool:
        """Whether the state of the job calls for it."""
        return self.possible(case) and case.stand.spec.state in self.states
