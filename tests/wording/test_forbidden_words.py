"""Words that are never shown, and no exclamation: looked for in every text of the floors that talk to people."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import specbuilder

FORBIDDEN = (
    r"ok(ay)?|invalid|valid(?! until)|error code|exception|constraint|dependency|solver|null|n/a|tbc|are you sure|oops|"
    r"success\w*|"
    r"approved|certified|legal\w*|crash tested|nearside|offside|unlimited|all season|maintenance free|non-refundable"
)
NEVER = re.compile(rf"\b({FORBIDDEN})\b", re.IGNORECASE)
ROOT = Path(specbuilder.__file__).parent
FILES = sorted(path for floor in ("wording", "cli", "documents") for path in (ROOT / floor).rglob("*.py"))


def _texts(path: Path) -> Iterator[str]:
    """Every text of a file but its docstrings, markers and format strings of other programs."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    remarks = {
        id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in remarks:
            yield node.value


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_no_text_says_what_must_not_be_said(path: Path) -> None:
    for text in _texts(path):
        assert not NEVER.search(text), text
        assert not re.search(r"\w!(\s|$)", text), text
