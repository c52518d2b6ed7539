"""``audit``: what is faulty or odd in the rules."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from specbuilder.session.audit import lints
from specbuilder.storage.rules_cases import cased_rules
from specbuilder.storage.rules_files import read_rules
from specbuilder.wording.audit import audit_summary, lint_line

from .answers import Answer
from .asked import rules_of
from .output import Exit


def audit(arguments: Namespace) -> Answer:
    """Reads the rules as they are, whatever the sums ask for."""
    catalogue = read_rules(Path(arguments.dir) if arguments.dir else rules_of(arguments))
    found = lints(catalogue, cased_rules(Path(arguments.cases)) if arguments.cases else None)
    code = Exit.BROKEN if any(lint.serious for lint in found) else Exit.FINE
    return Answer((*audit_summary(catalogue, found), *(lint_line(catalogue, lint) for lint in found)), code)
