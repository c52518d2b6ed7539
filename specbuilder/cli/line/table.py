"""All line commands, in the groups the help and README show."""

from __future__ import annotations

from types import MappingProxyType

from .changing import CHANGING
from .keeping import JOBS, PROGRAM
from .living import LIVING
from .reading import READING

GROUPS = (JOBS, READING, CHANGING, LIVING, PROGRAM)
COMMANDS = MappingProxyType({command.name: command for group in GROUPS for command in group.commands})
COMPLETION = "completion"
"""Done before anything else is loaded."""
