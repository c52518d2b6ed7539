"""One function for each line command: opens what it needs, prints the answer, gives the exit code."""

from __future__ import annotations

from argparse import Namespace
from datetime import datetime
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.session.audit import lints
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.disk import DiskError
from specbuilder.storage.rules_files import RulesFaults, read_rules, rules_folder
from specbuilder.storage.spec_files import SpecFaultsError
from specbuilder.wording.audit import audit_summary, lint_line
from specbuilder.wording.jobs import rules_unreadable

from . import answers, jobs_of, output
from .answers import Answer
from .change import changed, dropped, made_new
from .opening import opened, write_spec
from .output import Exit, StopError


def run(arguments: Namespace) -> Exit:
    """Run the command that was typed.

    Raises:
        StopError: if a file, the rules or the command line cannot be used.
    """
    try:
        return _COMMANDS[arguments.command](arguments)
    except RulesFaults as faults:
        raise StopError(Exit.UNUSABLE, *rules_unreadable(tuple(str(f) for f in faults.faults))) from faults
    except SpecFaultsError as faults:
        lines = (str(fault) for fault in faults.faults)
        raise StopError(Exit.UNUSABLE, "This file cannot be used. Nothing was changed.", *lines) from faults
    except DiskError as trouble:
        raise StopError(Exit.UNUSABLE, str(trouble)) from trouble
