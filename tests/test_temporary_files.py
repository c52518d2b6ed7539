"""Nothing of a run of the tests is left where everybody's temporary files lie."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

WHERE = "import tempfile; print(tempfile.gettempdir())"


def test_what_tests_and_their_programs_make_for_a_while_lies_in_the_folder_of_the_run(
    tmp_path_factory: pytest.TempPathFactory,
) -> None:
    run = tmp_path_factory.getbasetemp()
    assert Path(tempfile.mkdtemp()).is_relative_to(run)
    told = subprocess.run([sys.executable, "-c", WHERE], capture_output=True, text=True, check=True).stdout.strip()
    assert Path(told).is_relative_to(run)
