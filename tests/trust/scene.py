"""What all kinds of fault stand on: two catalogues, a clock that stands still, and jobs as they are read back."""

from __future__ import annotations

import hashlib
import json
import re
from datetime import UTC, datetime
from functools import cache
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.json_values import to_json
from specbuilder.storage.rules_files import read_rules
from specbuilder.tui.desk import Desk

HOUSE = Path(__file__).parents[2]
RULES = HOUSE / "rules"
EXAMPLES = HOUSE / "examples"
SMALL_RULES = HOUSE / "tests" / "cli" / "rules"
"""A firm with one van and seven parts: read in two milliseconds."""
NOW = datetime(2031, 4, 14, 10, 0, tzinfo=UTC)
_WHOLE = re.compile(r"(?<=\d)\.0(?=[,}\]])")
_TIME = re.compile(r"20\d\d-\d\d-\d\d \d\d:\d\d")


def clock() -> datetime:
    """It is always the same minute, so that the same keys give the same spec."""
    return NOW


@cache
def catalogue(rules: Path = RULES) -> Catalogue:
    """Read once in a process."""
    return read_rules(rules)


def house_of(jobs: Path, rules: Path = RULES) -> House:
    """A house with this jobs folder."""
    return House(JobsFolder(jobs, clock=clock), catalogue(rules), rules)


def desk_of(jobs: Path, rules: Path = RULES, counter: str = "counter 1") -> Desk:
    """A desk in that house."""
    return Desk(house_of(jobs, rules), clock, counter)


def stands(house: House, files: JobFiles) -> Spec:
    """A revision as it would be opened now. Nothing is written."""
    return house.session(*house.found(files)).spec


def told(spec: Spec) -> str:
    """A short sign for all that a spec says, whatever minute it was said in; 2 and 2.0 are the same."""
    text = json.dumps(to_json(spec), sort_keys=True)
    return hashlib.sha256(_WHOLE.sub("", _TIME.sub("then", text)).encode()).hexdigest()[:16]
