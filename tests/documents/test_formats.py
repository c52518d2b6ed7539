"""What holds for every format, and what loading them costs."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings

from specbuilder.documents.blocks import Paper
from specbuilder.documents.formats import FORMATS, Format

from .trial_papers import PAPERS, SAMPLE

ROOT = Path(__file__).parents[2]
BY_NAME = [pytest.param(each, id=each.name) for each in FORMATS]


def in_a_fresh_process(code: str, seed: str = "0") -> str:
    ran = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        cwd=ROOT,
        env=os.environ | {"PYTHONHASHSEED": seed},
    )
    return ran.stdout


def test_papers_are_set_as_text_to_be_read_aloud_as_markdown_and_as_pdf() -> None:
    assert [(each.name, each.suffix) for each in FORMATS] == [
        ("text", ".txt"),
        ("spoken", ".spoken.txt"),
        ("Markdown", ".md"),
        ("PDF", ".pdf"),
    ]


def test_the_pdf_library_waits_for_the_first_pdf() -> None:
    code = """
import sys
from specbuilder.documents.formats import FORMATS
from tests.documents.trial_papers import SAMPLE
for each in FORMATS:
    each.set(SAMPLE)
    print("reportlab" in sys.modules)
"""
    assert in_a_fresh_process(code).split() == ["False", "False", "False", "True"]


@pytest.mark.parametrize("form", BY_NAME)
@settings(max_examples=60, deadline=None)
@given(paper=PAPERS)
def test_any_text_whatever_is_set(form: Format, paper: Paper) -> None:
    assert form.set(paper)


@pytest.mark.parametrize("form", BY_NAME)
def test_a_paper_set_twice_gives_the_same_bytes(form: Format) -> None:
    assert form.set(SAMPLE) == form.set(SAMPLE)


@pytest.mark.parametrize("form", BY_NAME)
def test_another_process_gives_the_same_bytes(form: Format) -> None:
    """Neither the order of sets, which the seed changes, nor the time nor an address leaves a trace."""
    code = f"""
import hashlib
from specbuilder.documents.formats import FORMATS
from tests.documents.trial_papers import SAMPLE
form = next(each for each in FORMATS if each.suffix == {form.suffix!r})
print(hashlib.sha256(form.set(SAMPLE)).hexdigest())
"""
    here = hashlib.sha256(form.set(SAMPLE)).hexdigest()
    assert [in_a_fresh_process(code, seed).strip() for seed in ("1", "2")] == [here, here]


@pytest.mark.parametrize("form", BY_NAME)
def test_what_was_set_before_leaves_no_trace(form: Format) -> None:
    before = form.set(SAMPLE)
    form.set(Paper(name="other", title="Ωμέγα Жук", running=SAMPLE.running, blocks=SAMPLE.blocks[:4]))
    assert form.set(SAMPLE) == before
