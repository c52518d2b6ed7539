"""Every sheet of three jobs reads as it was last read by a person, and nothing is kept that no sheet makes."""

from __future__ import annotations

import pytest

from specbuilder.documents.sheets.sheet import Sheet

from .goldens import GOLDENS, pairs, path_of, text_of

_AGAIN = "read it, then: python -m tests.documents.goldens --write"


@pytest.mark.parametrize(("name", "sheet"), [pytest.param(n, s, id=f"{n}-{s.name}") for n, s in pairs()])
def test_a_sheet_reads_as_it_was_last_read(name: str, sheet: Sheet) -> None:
    path = path_of(name, sheet)
    assert path.is_file(), f"{path.name} is not kept yet: {_AGAIN}"
    assert text_of(name, sheet).splitlines() == path.read_text("utf-8").splitlines(), _AGAIN


def test_no_golden_is_kept_of_a_paper_that_is_not_made() -> None:
    assert {path.name for path in GOLDENS.glob("*.txt")} <= {path_of(name, sheet).name for name, sheet in pairs()}
