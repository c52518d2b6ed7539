"""Does a message say which file, where in it, and what to do?"""

from __future__ import annotations

import re

_DO = (
    "add|ask|change|check|choose|close|connect|copy|cut|delete|download|drop|end|enlarge|fill|give|give|go on|install|"
    "keep|leave|let|look|make|mend|move|name|open|pick|press|put|read|remove|rename|rewrite|save|say|shorten|start|"
    "take|tell|try|turn|unlock|use|wait|write|add|enter|correct|split|link|state"
)
CURE = re.compile(
    rf"(?:^|[:;,.?] |\bor |\band |, and |\()(?:then |please |to go on |always |either |so )?(?:{_DO})\b"
    r"|did you mean|the only one is|needs? (?:a|an|one of|the|at least|at most|no|true|two|text|to|from|as|between)\b"
    r"|is needed|expected (?!to)|must (?:be|have|stand|say|name|lie|not)|with --|Enter (?:opens|tries)",
    re.IGNORECASE,
)
"""Something to do: an order at the head of a clause, or what is needed in the place of what stands there."""


def says_cure(text: str) -> bool:
    """Whether the sentence tells what to do."""
    return CURE.search(text) is not None


def lacks(text: str, *, files: tuple[str, ...] = (), line: bool = False) -> str:
    """What the message lacks: file, place or cure; empty when it says all of it."""
    missing = []
    if files and not any(name in text for name in files):
        missing.append("file")
    if line and not re.search(r":\d+: |\bline \d+", text):
        missing.append("place")
    if not says_cure(text):
        missing.append("cure")
    return ", ".join(missing)
