"""A job whose process was killed opens with everything that was painted."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from datetime import datetime
from pathlib import Path

import pytest

from specbuilder.storage.jobs import JobsFolder
from tests.storage.jobs_scene import ASH, GALLEY, files, left, saved, sentences, with_name
from tests.storage.scene import CATALOGUE


def killed_while_appending(jobs: Path, after_s: float) -> int:
    """Appends in another process until it is killed; how many lines it had painted."""
    program = f"""
import itertools
from pathlib import Path
from specbuilder.model.edits import WriteNote
from specbuilder.storage.jobs import JobsFolder
job = JobsFolder(Path({str(jobs)!r})).create("counter 1")
for number in itertools.count(1):
    job.append(WriteNote(note=str(number)))
    print(number, flush=True)
"""
    running = subprocess.Popen([sys.executable, "-c", program], stdout=subprocess.PIPE, text=True)
    assert running.stdout
    assert running.stdout.readline() == "1\n"
    time.sleep(after_s)
    running.send_signal(signal.SIGKILL)
    painted = running.stdout.read().split("\n")[:-1]
    running.wait()
    return int(painted[-1]) if painted else 1


@pytest.mark.parametrize("after_s", [0.0, 0.005, 0.02])
def test_killed_at_any_moment_nothing_painted_is_lost(tmp_path: Path, after_s: float) -> None:
    painted = killed_while_appending(tmp_path / "jobs", after_s)
    jobs = JobsFolder(tmp_path / "jobs")
    assert [(line.number, line.unsaved, line.holder) for line in jobs.list()] == [("0001", True, None)]
    job = jobs.open("0001", "counter 2", CATALOGUE)
    notes = [getattr(entry, "note", "") for entry in job.entries]
    assert notes[:painted] == [str(number) for number in range(1, painted + 1)]
    assert len(notes) <= painted + 1
    assert job.taken_over_from is not None
    since = job.taken_over_from.since_words(datetime.now().astimezone())
    assert sentences(job) == [f"counter 1 left this job without closing it, open since {since}: it is yours now."]
    job.append(GALLEY)
    job.close()


def test_what_is_done_at_once_is_written_at_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    job = left(tmp_path).open("0001", "counter 1", CATALOGUE)
    writes: list[bytes] = []
    write = os.write
    monkeypatch.setattr(os, "write", lambda file, data: (writes.append(bytes(data)), write(file, data))[1])
    job.append(GALLEY, ASH)
    assert [data.count(b"\n") for data in writes] == [2], "a kill between two writes would leave half of it"
    job.close()


def test_a_torn_last_line_is_said_and_the_job_goes_on(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    journal = jobs.files("0001").journal
    journal.write_bytes(journal.read_bytes() + b'{"edit":{"is":"Ta')
    job = jobs.open("0001", "counter 1", CATALOGUE)
    assert job.entries == (ASH,)
    assert sentences(job) == [
        "0001-r1.journal: the last line was cut off while it was written. Look whether the last thing done is there."
    ]
    job.append(GALLEY)
    job.close()
    again = jobs.open("0001", "counter 1", CATALOGUE)
    assert again.entries == (ASH, GALLEY)
    assert again.notices == ()


def test_killed_between_mark_and_file_the_edits_are_still_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    jobs = left(tmp_path)
    job = jobs.open("0001", "counter 1", CATALOGUE)
    job.append(GALLEY)

    def no_more(*_: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(os, "replace", no_more)
        with pytest.raises(KeyboardInterrupt):
            saved(job, with_name(job.start, "other"))
    job.abandon()
    assert any(name.endswith(".part") for name in files(jobs))
    again = jobs.open("0001", "counter 1", CATALOGUE)
    assert again.entries == (ASH, GALLEY)
    assert again.saved_entries == 1
    assert again.notices == ()
    again.close()
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]
