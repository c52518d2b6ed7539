"""A job through its life by keys: quoted with open points, signed, built, and what is kept when it leaves the house."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.edits import NameCustomer
from specbuilder.model.kinds import JobState
from specbuilder.model.record import RecordKind
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.seals import sealed_path
from tests.office.scene import Scene

from .house_scene import THREE_OPEN, opened
from .stage import WINDOWS, on_stage


@WINDOWS
async def test_u7_a_quote_goes_out_with_three_open_points_and_names_them(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.edit(*THREE_OPEN)
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await stage.press("o", *["enter", "1", "enter"] * 3, "escape", "p")
        assert [(q.owner, bool(q.due)) for q in stage.spec().questions] == [("customer", True)] * 3
        await stage.press("1")
        await stage.found()
        told = "\n".join(await stage.read_through())
        assert "OPEN" in told.upper()
        assert all(question.text[:20] in told for question in stage.spec().questions)
        stage.presses = 13
        screen = await stage.press("s")
        assert "3 open points" in screen
        screen = await stage.press("enter")
        assert stage.presses <= 15
        assert "stays done" in screen
        await stage.found()
        assert stage.spec().state is JobState.QUOTED
        assert stage.stored(scene.number).state is JobState.QUOTED
    kept = sealed_path(scene.folder, scene.number, 1, "quoted")
    assert {path.suffix for path in kept.iterdir()} == {".toml", ".txt", ".pdf"}


@WINDOWS
async def test_a_quote_is_signed_by_three_keys_and_asks_for_the_deposit(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.quote()
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        screen = await stage.press("p", "s")
        assert "SIGN THE ORDER" in screen
        assert scene.spec().customer.name in screen
        screen = await stage.press("enter")
        assert stage.presses == 3
        await stage.found()
        signed = stage.spec().recorded(RecordKind.SIGNED)[-1]
        assert (signed.by, signed.words, signed.about) == (scene.spec().customer.name, "the counter", "premises")
        assert "not received yet" in screen
        await stage.press("enter", "enter")
        paid = stage.spec().recorded(RecordKind.DEPOSIT)
        assert [record.pence for record in paid] == [round(signed.pence * 0.1, -2)]  # type: ignore[operator]
    assert scene.spec().state is JobState.ORDERED
    assert sealed_path(scene.folder, scene.number, 1, "signed").is_dir()


async def test_a_quote_asks_for_the_name_that_nobody_gave_and_keeps_it(scene: Scene) -> None:
    scene.edit(NameCustomer(name="", contact=""))
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        screen = await stage.press("p", "s")
        assert "stands in the way" not in screen
        assert "needed" in await stage.press("end", "enter")
        await stage.press("'Hale'", "enter")
        assert stage.spec().customer.name == "Hale"
        await stage.press("enter")
        await stage.found()
        assert (stage.spec().state, stage.spec().customer.name) == (JobState.QUOTED, "Hale")


async def test_what_is_done_to_the_job_as_a_whole_is_never_undone(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await stage.press("p", "s", "enter")
        quoted = stage.spec()
        for key in ("u", "f4"):
            screen = await stage.press(key)
            assert "Stays done: quote" in screen
            assert stage.spec() == quoted
        await stage.press("s", "enter")
        signed = stage.spec()
        assert "Stays done: signature" in await stage.press("u")
        assert stage.spec() == signed


@WINDOWS
async def test_what_stands_in_the_way_of_a_signature_is_listed_and_leads_there(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.edit(*THREE_OPEN)
    scene.quote()
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        before = stage.spec()
        screen = await stage.press("p", "s")
        assert "3 things stand in the way" in screen
        assert "Seat cloth" in screen
        await stage.press("down", "enter", "1", "enter")
        screen = await stage.press("enter", "1", "enter")
        assert len(stage.spec().questions) == 2
        assert "1 thing stands in the way" in screen
        screen = await stage.press("end", "enter")
        assert "Seats" in screen or "Finish" in screen
        assert stage.app.counter.walk is not None
        assert stage.app.counter.walk.step.value == "finish"
        assert stage.spec().records == before.records
        assert stage.spec().choices == before.choices


@WINDOWS
async def test_hold_points_are_passed_with_what_was_read(scene: Scene, size: tuple[int, int], plain: bool) -> None:
    scene.order()
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        screen = await stage.press("p", "b")
        assert "HOLD POINTS" in screen
        await stage.press("down")
        screen = await stage.press("enter")
        assert "Mass as received" in screen
        screen = await stage.press("'2310 kg'", "enter", "end", "enter")
        assert "hold point H0 passed" in screen
        read = stage.spec().recorded(RecordKind.READING)[-1]
        assert (read.about, read.words, read.figure) == ("H0", "Mass as received: 2310 kg", 2310)
        passed = stage.spec().recorded(RecordKind.PASSED)[-1]
        assert (passed.about, passed.by) == ("H0", "the foreman")
        await stage.press("down")
        screen = await stage.press("enter", "end", "enter")
        assert "H1 is not passed yet" in screen
        assert [r.about for r in stage.spec().recorded(RecordKind.PASSED)] == ["H0"]


async def test_parts_promises_and_the_next_call_are_written_down(scene: Scene) -> None:
    scene.order()
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await stage.press("p", "b", "end", "up", "up")
        await stage.press("enter", "'The galley stays right'", "enter", "enter")
        promise = stage.spec().recorded(RecordKind.PROMISED)[-1]
        assert (promise.words, promise.by) == ("The galley stays right", "the counter")
        await stage.press("end", "up", "enter", "'2031-06-09'", "enter", "'the cloth'", "enter", "enter")
        call = stage.spec().recorded(RecordKind.CALL)[-1]
        assert (call.due, call.words) == ("2031-06-09", "the cloth")
        await stage.press("home", *["down"] * 12)
        await stage.press("enter", "3")
        assert "In store" in (await stage.press("end", "enter")).replace("in store", "In store")
        part = stage.spec().recorded(RecordKind.SUPPLY)[-1]
        assert part.words == "in store"
        assert stage.spec().has(part.about)  # type: ignore[arg-type]


async def test_a_day_that_is_none_is_not_taken(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        await stage.press("p", "b", "end", "enter")
        screen = await stage.press("'2031-13-40'", "enter")
        assert "A date is needed here" in screen
        assert not stage.spec().recorded(RecordKind.CALL)


async def test_a_disk_that_takes_no_seal_is_told_and_loses_nothing(
    scene: Scene, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(path: Path, *_: object) -> None:
        raise DiskError(DiskReason.FULL, path, writing=True)

    async with on_stage(scene.folder) as stage:
        await opened(stage)
        with monkeypatch.context() as broken:
            broken.setattr("specbuilder.office.leaving.write_sealed", full)
            await stage.press("p", "s", "enter")
            screen = await stage.found()
        assert "full" in screen
        assert stage.spec().state is JobState.QUOTED
        assert stage.stored(scene.number).state is JobState.QUOTED
        assert not sealed_path(scene.folder, scene.number, 1, "quoted").exists()
        await stage.press("escape", "escape", "enter")
        await stage.found()
        assert sealed_path(scene.folder, scene.number, 1, "quoted").is_dir()
        assert len(stage.spec().recorded(RecordKind.QUOTED)) == 1


@WINDOWS
async def test_a_paper_is_scrolled_and_looked_through(scene: Scene, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await stage.press("p", "4")
        first = await stage.found()
        assert "Colleague's page" in first
        assert "lines 1 to" in first
        assert await stage.press("pagedown") != first
        screen = await stage.press("home", "/", "'heater'", "enter")
        assert '"heater" 1 of 2' in screen
        assert '"heater" 2 of 2' in await stage.press("n")
        assert '"heater" 1 of 2' in await stage.press("enter")
        assert "stands nowhere" in await stage.press("/", "'zeppelin'", "enter")
        assert "PAPERS of job" in await stage.press("escape")
        if plain:
            assert all(ord(sign) < 128 or sign == "£" for sign in first)


@WINDOWS
async def test_all_papers_are_written_and_it_is_said_where(scene: Scene, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await stage.press("p", "x")
        screen = await stage.found()
        assert "4 files written" in screen
        folder = scene.folder / "papers" / f"{scene.number}-r1"
        assert {path.name for path in folder.iterdir()} == {
            f"{scene.number}-r1-{name}{suffix}" for name in ("customer", "colleague") for suffix in (".txt", ".pdf")
        }


async def test_papers_are_of_the_job_and_not_of_a_what_if(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await opened(stage)
        screen = await stage.press("t", "p")
        assert "not of a what-if" in screen
        assert not stage.app.counter.sides


async def test_a_new_job_has_papers_from_its_first_answer_on(empty: Path) -> None:
    async with on_stage(empty) as stage:
        assert "from its first answer on" in await stage.press("n", "p")
        await stage.press("2", "enter", "p")
        assert "PAPERS of job 0001" in stage.screen()


@WINDOWS
async def test_the_check_tells_whether_it_may_be_quoted_and_signed(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.edit(*THREE_OPEN)
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await opened(stage)
        await stage.press(*["right"] * 8)
        screen = " ".join((await stage.found()).split())
        assert "QUOTE yes, with 3 open points" in screen
        assert "SIGN no, 3 things stand in the way" in screen


@WINDOWS
async def test_the_list_of_jobs_tells_state_and_revision_and_leads_to_the_papers(
    scene: Scene, size: tuple[int, int], plain: bool
) -> None:
    scene.order()
    scene.begin_next()
    scene.sign()
    variant = scene.house.jobs.create_variant(scene.spec(), "counter 1")
    variant.close()
    async with on_stage(scene.folder, size, plain=plain) as stage:
        screen = stage.screen()
        assert "changed 2" in screen
        assert f"{scene.number}b" in screen
        assert "REVISIONS of job" in await stage.press("home", "e")
        await stage.press("escape")
        assert f"PAPERS of job {scene.number}, revision 2" in await stage.press("p")


async def test_a_quote_that_has_run_out_says_so_in_the_list_and_over_the_job(scene: Scene) -> None:
    scene.quote()
    scene.days_later(40)
    async with on_stage(scene.folder) as stage:
        assert "expired 1" in stage.screen()
        await opened(stage)
        assert "expired" in stage.screen().splitlines()[0]
        assert "QUOTE AGAIN" in await stage.press("p", "s")
        await stage.press("enter")
        assert (stage.spec().state, stage.spec().revision) == (JobState.DRAFT, 2)
