"""Line commands about a job as a whole, by name."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Mapping
from datetime import datetime
from types import MappingProxyType

from specbuilder.office.house import House

from .answers import Answer
from .build import build
from .papers import paper, verified
from .revisions import revisions, today
from .steps import change, order, quote, record

COMMANDS: Mapping[str, Callable[[House, Namespace, datetime], Answer]] = MappingProxyType(
    {
        "quote": quote,
        "order": order,
        "change": change,
        "record": record,
        "paper": paper,
        "verify": verified,
        "build": build,
        "revisions": revisions,
        "today": today,
    }
)
