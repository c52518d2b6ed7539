"""Text of a catalogue or a customer never acts: not on the toolkit, not on the terminal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.record import RecordKind
from specbuilder.office.house import House
from specbuilder.storage.jobs import JobsFolder, local_time
from specbuilder.storage.rules_files import rules_folder
from specbuilder.storage.text_limits import NAME_LONGEST
from specbuilder.tui.desk import Desk
from specbuilder.tui.opening import Floor, Opening
from specbuilder.tui.start import Start

from .bench import catalogue
from .stage import SMALL, WIDE, Stage, on_stage

pytestmark = pytest.mark.long

HOSTILE = "[/] [Fixed] [@click=app.quit]x[/] [$x] \x1b]0;owned\x07\x9b2J\u202e\u2066\\"
SHOWN = "[/] [Fixed] [@click=app.quit]x[/]"


def hostile(known: Catalogue) -> Catalogue:
    """The house catalogue with the same evil text in every name and sentence, as if no reader had looked at it."""
    return replace(
        known,
        firm=replace(known.firm, name=HOSTILE, town=HOSTILE),
        questions=MappingProxyType({k: replace(q, asks=HOSTILE) for k, q in known.questions.items()}),
        brief=MappingProxyType({k: replace(x, ask=HOSTILE) for k, x in known.brief.items()}),
        groups=MappingProxyType(
            {k: replace(g, name=HOSTILE, question=HOSTILE, seller_note=HOSTILE) for k, g in known.groups.items()}
        ),
        options=MappingProxyType(
            {
                k: replace(o, name=HOSTILE, description=HOSTILE, needs_because=HOSTILE, source=HOSTILE)
                for k, o in known.options.items()
            }
        ),
        rules=MappingProxyType(
            {k: replace(r, because=HOSTILE, fixes=(HOSTILE,), source=HOSTILE) for k, r in known.rules.items()}
        ),
        ledgers=MappingProxyType(
            {
                k: replace(x, name=HOSTILE, short=HOSTILE[:12], formula=HOSTILE, source=HOSTILE, bound=HOSTILE)
                for k, x in known.ledgers.items()
            }
        ),
        cautions=MappingProxyType({k: replace(c, text=HOSTILE) for k, c in known.cautions.items()}),
    )


class HostileStart(Start):
    def load(self, floor: Floor) -> Opening | Sequence[str]:
        return Opening(
            floor, Desk(House(JobsFolder(self.jobs), hostile(catalogue()), rules_folder()), local_time, HOSTILE)
        )


def dangerous(stage: Stage) -> list[str]:
    """Characters on the way to the terminal that could steer it."""
    strips = stage.app.screen._compositor.render_strips()
    text = "".join(segment.text for strip in strips for segment in strip)
    return [hex(ord(c)) for c in text if ord(c) < 32 or 0x7F <= ord(c) < 0xA0 or 0x200B <= ord(c) <= 0x206F]


@pytest.mark.parametrize("size", [SMALL, WIDE])
async def test_every_screen_shows_hostile_text_as_it_stands(empty: Path, size: tuple[int, int]) -> None:
    async with on_stage(empty, size, start=HostileStart) as stage:
        assert SHOWN[:20] in stage.screen()
        seen = [await stage.press("n", "2")]
        for keys in (
            ["right"], ["h"], ["enter"], ["d"], ["escape"], ["right"], ["down", "enter"], ["w"], ["escape"], ["l"],
            ["enter"], ["w"], ["escape"], ["escape"], ["escape"], ["o"], ["enter"], ["1", "enter"], ["escape"],
            ["/", *"[/]"], ["down", "enter"], ["f9", *"x"], ["escape"], ["f1"], ["escape"],
            ["t"], ["f"], ["2"], ["escape"], ["b"], ["escape"], *([["right"]] * 6), ["end"], ["home"],
            ["a"], ["escape"],
        ):  # fmt: skip
            seen.append(await stage.press(*keys))
            assert dangerous(stage) == [], keys
            assert stage.app.is_running
        assert sum(SHOWN[:12] in screen for screen in seen) > len(seen) // 2
        await stage.press(*["escape"] * 4)
        assert dangerous(stage) == []


@pytest.mark.parametrize("size", [SMALL, WIDE])
async def test_papers_and_forms_show_hostile_text_as_it_stands(empty: Path, size: tuple[int, int]) -> None:
    async with on_stage(empty, size, start=HostileStart) as stage:
        await stage.press("n", "2", "p", "b", "enter")
        stage.app.counter.paste(HOSTILE)
        await stage.press("enter", "enter")
        for keys in (["escape"], ["1"], ["pagedown"], ["escape"], ["4"], ["escape"], ["s"], ["end"], ["escape"]):
            await stage.press(*keys)
            await stage.found()
            assert dangerous(stage) == [], keys
            assert stage.app.is_running
        promise = stage.spec().recorded(RecordKind.PROMISED)[-1].words
        assert promise.startswith(SHOWN)
        assert "\x1b" not in promise


async def test_what_is_pasted_as_a_customers_name_stays_text(empty: Path) -> None:
    async with on_stage(empty) as stage:
        await stage.press("n", "2", "end", "up", "up", "enter")
        stage.app.counter.paste(HOSTILE)
        screen = await stage.press("enter")
        assert dangerous(stage) == []
        name = stage.spec().customer.name
        assert name.startswith(SHOWN)
        assert len(name) <= NAME_LONGEST
        assert "\x1b" not in name
        assert "[/]" in screen
        await stage.press("escape")
        assert "[/] [Fixed]" in stage.screen()
        assert stage.stored("0001").customer.name == name
