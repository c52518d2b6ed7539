"""Who has a job: told by a file, whatever became of the one who wrote it."""

from __future__ import annotations

import os
import subprocess
import sys
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest

from specbuilder.storage.disk import DiskError
from specbuilder.storage.lock import JobLock, LockHolder, Process, read_lock, take_lock, this_process

ZONE = timezone(timedelta(hours=1))
NOW = datetime(2031, 4, 14, 10, 2, tzinfo=ZONE)
HERE = this_process()
ELSEWHERE = Process(host="other-machine", pid=17, began="")


def ended_process() -> Process:
    """A process of this machine that has ended."""
    ran = subprocess.Popen([sys.executable, "-c", ""])
    ran.wait()
    return Process(host=HERE.host, pid=ran.pid, began="long ago")


def take(
    path: Path,
    counter: str = "counter 2",
    process: Process = HERE,
    now: datetime = NOW,
    changed: datetime | None = None,
) -> JobLock | LockHolder:
    return take_lock(path, counter, process, now, changed)


def taken(path: Path, counter: str, process: Process = HERE, now: datetime = NOW) -> JobLock:
    lock = take(path, counter, process, now)
    assert isinstance(lock, JobLock)
    return lock


def test_a_free_job_is_taken_and_let_go(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    lock = taken(path, "counter 1")
    assert lock.left_by is None
    assert read_lock(path, NOW) == LockHolder(counter="counter 1", process=HERE, since=NOW)
    assert lock.keep()
    lock.release()
    assert read_lock(path, NOW) is None
    assert list(tmp_path.iterdir()) == []


def test_a_counter_that_has_it_keeps_it(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    taken(path, "counter 1")
    holder = take(path)
    assert holder == LockHolder(counter="counter 1", process=HERE, since=NOW)


def test_the_lock_of_an_ended_process_is_taken_over_and_known(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    ended = ended_process()
    taken(path, "counter 1", ended)
    lock = taken(path, "counter 2")
    assert lock.left_by == LockHolder(counter="counter 1", process=ended, since=NOW)
    assert [p.name for p in tmp_path.iterdir()] == ["0147.lock"]


@pytest.mark.skipif(not HERE.began, reason="the system does not say when a process began")
def test_a_number_used_again_by_another_process_is_not_mistaken(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    taken(path, "counter 1", Process(host=HERE.host, pid=os.getpid(), began="another boot 5"))
    assert isinstance(take(path), JobLock)


@pytest.mark.skipif(not HERE.began, reason="the system does not say when a process began")
def test_a_killed_process_nobody_has_buried_yet_has_ended(tmp_path: Path) -> None:
    ran = subprocess.Popen([sys.executable, "-c", "input()"], stdin=subprocess.PIPE)
    process = Process(host=HERE.host, pid=ran.pid, began="")
    path = tmp_path / "0147.lock"
    taken(path, "counter 1", process)
    assert isinstance(take(path), LockHolder)
    ran.kill()
    os.waitid(os.P_PID, ran.pid, os.WEXITED | os.WNOWAIT)
    assert isinstance(take(path), JobLock)
    ran.communicate()


def test_another_machine_keeps_its_lock_for_a_day_after_the_last_change(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    taken(path, "counter 1", ELSEWHERE)
    later = NOW + timedelta(hours=30)
    assert isinstance(take(path, now=NOW + timedelta(hours=23)), LockHolder)
    assert isinstance(take(path, now=later, changed=NOW + timedelta(hours=8)), LockHolder)
    lock = take(path, now=later, changed=NOW)
    assert isinstance(lock, JobLock)
    assert lock.left_by == LockHolder(counter="counter 1", process=ELSEWHERE, since=NOW)


def test_since_is_a_time_today_and_a_date_before(tmp_path: Path) -> None:
    holder = LockHolder(counter="counter 1", process=HERE, since=NOW)
    assert holder.since_words(NOW + timedelta(hours=3)) == "10:02"
    assert holder.since_words(NOW + timedelta(hours=20)) == "2031-04-14 10:02"
    assert holder.since_words(NOW.astimezone(UTC)) == "09:02"


@pytest.mark.parametrize("text", [b"", b"{", b"[1]", b"\xff\x00", b'{"counter": "counter 1"}', b"[" * 4000])
def test_a_lock_that_names_nobody_holds_ten_seconds(tmp_path: Path, text: bytes) -> None:
    path = tmp_path / "0147.lock"
    path.write_bytes(text)
    os.utime(path, (NOW.timestamp(), NOW.timestamp()))
    held = take(path, now=NOW + timedelta(seconds=5))
    assert isinstance(held, LockHolder)
    assert held.counter == ""
    for seconds in (11, -11):
        assert isinstance(take(path, now=NOW + timedelta(seconds=seconds)), JobLock)
        path.write_bytes(text)
        os.utime(path, (NOW.timestamp(), NOW.timestamp()))


def test_a_time_that_has_not_come_yet_holds_no_longer_than_the_last_change(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    taken(path, "counter 1", ELSEWHERE, NOW + timedelta(days=9000))
    assert isinstance(take(path, changed=NOW - timedelta(hours=3)), LockHolder)
    assert isinstance(take(path, changed=NOW - timedelta(days=2)), JobLock)


def test_a_hostile_name_in_a_lock_is_shown_harmless(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    taken(path, "counter \x1b[2J\u202e1", ELSEWHERE)
    holder = read_lock(path, NOW)
    assert holder is not None
    assert holder.counter == "counter U+001B[2JU+202E1"


def test_a_lock_taken_by_another_is_not_kept_nor_released(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    mine = taken(path, "counter 1", ELSEWHERE)
    other = take(path, "counter 2", now=NOW + timedelta(days=2))
    assert isinstance(other, JobLock)
    assert not mine.keep()
    mine.release()
    assert other.keep()


def test_a_lock_somebody_removed_is_made_again(tmp_path: Path) -> None:
    path = tmp_path / "0147.lock"
    mine = taken(path, "counter 1")
    path.unlink()
    assert mine.keep()
    assert isinstance(take(path), LockHolder)


def test_where_nothing_can_be_written_the_lock_says_so(tmp_path: Path) -> None:
    with pytest.raises(DiskError) as caught:
        take(tmp_path / "none" / "0147.lock")
    assert str(caught.value) == (
        f"{tmp_path}/none/0147.lock could not be written, it is not there: check the path, and that its drive is "
        "connected."
    )


def test_of_many_at_once_one_gets_it(tmp_path: Path) -> None:
    """Even when what they find is the lock of an ended process."""
    path = tmp_path / "0147.lock"
    taken(path, "counter 0", ended_process())
    program = f"""
import sys
from datetime import datetime
from pathlib import Path
from specbuilder.storage.lock import JobLock, take_lock, this_process
sys.stdin.readline()
lock = take_lock(Path({str(path)!r}), "counter", this_process(), datetime.now().astimezone(), None)
print("has" if isinstance(lock, JobLock) and lock.keep() else "has not", flush=True)
sys.stdin.readline()
"""
    running = [
        subprocess.Popen([sys.executable, "-c", program], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        for _ in range(6)
    ]
    for process in running:
        assert process.stdin
        process.stdin.write("go\n")
        process.stdin.flush()
    said = [process.stdout.readline().strip() for process in running if process.stdout]
    for process in running:
        process.communicate("end\n")
    assert said.count("has") == 1, said


def test_a_lock_another_counter_has_aside_for_a_moment_is_ours_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, aside = tmp_path / "0147.lock", tmp_path / "aside"
    close = os.close

    def closed_and_moved(file: int) -> None:
        close(file)
        os.replace(path, aside)  # the other one takes it for what was left, looks at it, and puts it back

    monkeypatch.setattr("specbuilder.storage.lock.os.close", closed_and_moved)
    lock = taken(path, "counter 1")
    monkeypatch.undo()
    os.replace(aside, path)
    assert lock.keep()
    lock.release()
    assert not path.exists()
