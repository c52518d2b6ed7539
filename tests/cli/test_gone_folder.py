"""The jobs folder goes away in the middle of a command and comes back later: what was said of it holds."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from specbuilder.storage.job_files import job_files
from tests.cli.counter import RULES, Counter, Said
from tests.trust.scene import house_of, stands, told
from tests.trust.steps import Fault, Steps, faulty

BECAUSE = ("change", "1", "--because", "they want more")
PROMISED = ("record", "1", "promised", "a cushion", "--by", "the counter")
DROP = ("change", "1", "--drop")
UNSEEN = (
    "What was asked for may be written or not: look with specbuilder revisions 0001 once the folder {jobs} is there "
    "and sound, before it is done again."
)
NEW = ("new", "adults=2", "gas-bundle", "customer=M. Hale")
QUOTED = (NEW, ("quote", "1"))
CHANGING = (*QUOTED, ("change", "1"))
STATES: dict[str, tuple[tuple[str, ...], ...]] = {
    "draft": (NEW,),
    "quoted": QUOTED,
    "changing": CHANGING,
    "recorded": (*CHANGING, PROMISED),
}
NOTHING = ("Nothing was changed", "There is no new job")
STANDS = "is kept in the journal of job"
UNSURE = ("may be there all the same", "may be written or not", "may be given up or not")


def standing(jobs: Path) -> dict[str, str]:
    """What each revision of each job would be opened as."""
    house = house_of(jobs, RULES)
    found = job_files(jobs, os.listdir(jobs))
    return {f"{files.number}-r{files.revision}": told(stands(house, files)) for files in found}


def gone_at(counter: Counter, step: int, words: tuple[str, ...]) -> tuple[Said, Steps]:
    """What is said when the folder goes at this step; it is back afterwards."""
    with faulty(Steps(Fault.GONE, step, counter.jobs)) as steps:
        said = counter(*words)
    for lock in counter.jobs.glob("*.lock"):  # of a process that has ended
        lock.unlink()
    return said, steps


def is_true(said: Said, left: dict[str, str], before: dict[str, str], after: dict[str, str]) -> bool:
    """Whether what was said is what was left."""
    text = " ".join(said.err)
    if said.code == 0:
        return left == after
    if any(words in text for words in NOTHING):
        return left == before
    if STANDS in text:
        return left == after
    if "is not given up" in text:
        return left == {**before, **{name: left[name] for name in after}}
    if any(words in text for words in UNSURE):
        return "look" in text and str(Path("jobs")) in text
    return left == before


@pytest.mark.parametrize(
    ("state", "words"),
    [
        ("quoted", BECAUSE),
        ("changing", DROP),
        ("draft", ("new", "adults=2")),
        ("draft", ("variant", "1")),
        pytest.param("recorded", DROP, marks=pytest.mark.long),
        pytest.param("draft", ("set", "1", "adults=3"), marks=pytest.mark.long),
        pytest.param("draft", ("quote", "1"), marks=pytest.mark.long),
        pytest.param("quoted", PROMISED, marks=pytest.mark.long),
    ],
    ids=lambda value: value if isinstance(value, str) else " ".join(value[:3]),
)
def test_whenever_the_folder_goes_what_was_said_is_what_is_left(
    counter: Counter, state: str, words: tuple[str, ...]
) -> None:
    for each in STATES[state]:
        assert counter(*each).code == 0
    sound = counter.folder / "sound"
    shutil.copytree(counter.jobs, sound)
    before = standing(counter.jobs)
    assert counter(*words).code == 0
    after = standing(counter.jobs)
    step, hit = 0, True
    while hit:
        shutil.rmtree(counter.jobs)
        shutil.copytree(sound, counter.jobs)
        said, steps = gone_at(counter, step, words)
        hit = steps.hit
        if counter.jobs.with_name("jobs.elsewhere").exists():  # a new folder was made in its place
            shutil.rmtree(counter.jobs.with_name("jobs.elsewhere"))
            step += 1
            continue
        left = standing(counter.jobs)
        assert is_true(said, left, before, after), (step, steps.names[-1:], said, left)
        step += 1
    assert step > 10


def step_of(counter: Counter, words: tuple[str, ...], count: int, name: str) -> int:
    """The number of the so-manieth step of this name, counted on a copy."""
    aside = counter.folder / "aside"
    shutil.copytree(counter.jobs, aside)
    with faulty(Steps(Fault.RENAMED, 10**9, counter.jobs)) as steps:
        counter(*words)
    shutil.rmtree(counter.jobs)
    aside.rename(counter.jobs)
    return [number for number, each in enumerate(steps.names) if each == name][count]


def test_a_draft_that_is_out_of_sight_is_not_said_to_be_given_up(counter: Counter) -> None:
    for each in STATES["changing"]:
        counter(*each)
    said, _ = gone_at(counter, step_of(counter, DROP, 0, "replace"), DROP)
    assert (said.code, said.out) == (2, ())
    assert said.err == (
        f"{counter.jobs}/0001-r2.toml could not be written, it is not there: check the path, and that its drive is "
        "connected.",
        "Revision 2 is not given up: it stands as it was.",
    )
    assert counter("revisions", "1").out[0].startswith("Revision 2: draft")


def test_a_change_that_was_written_before_the_folder_went_is_not_said_to_be_nothing(counter: Counter) -> None:
    for each in STATES["quoted"]:
        counter(*each)
    said, _ = gone_at(counter, step_of(counter, BECAUSE, -1, "fsync"), BECAUSE)
    assert (said.code, said.out) == (2, ())
    assert said.err == (
        f"{counter.jobs}/0001-r2.journal could not be written, it is not there: check the path, and that its drive is "
        "connected.",
        UNSEEN.format(jobs=counter.jobs),
    )
    assert counter("revisions", "1").out[0].startswith("Revision 2: draft")
