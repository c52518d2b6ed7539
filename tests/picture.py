"""The gallery in README, made by the program itself: ``python -m tests.picture`` writes ``examples/pictures/`` and it.

Names after the command make these pictures only. The clock stands still and the fonts are those of the reader, so that
the same program makes the same bytes.
"""

from __future__ import annotations

import asyncio
import os
import re
import sys
import tempfile
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from specbuilder.tui.ink import COLOURLESS, DARK, LIGHT, Look
from tests.journeys.stage import on_stage
from tests.pictures import houses

ROOT = Path(__file__).parent.parent
README, PICTURES = ROOT / "README.md", ROOT / "examples" / "pictures"
GALLERY = re.compile(r"(?<=<!-- gallery -->\n).*?(?=<!-- end of gallery -->)", re.DOTALL)
SMALL, WIDE = (80, 24), (120, 34)


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One picture: in which house, by which keys, in which window and look, and what README says of it."""

    name: str
    house: Callable[[Path], datetime]
    keys: tuple[str, ...]
    says: str
    window: tuple[int, int] = SMALL
    look: Look = DARK
    plain: bool = False
    """With ASCII marks."""


def _steps(number: int) -> tuple[str, ...]:
    return ("enter", *["left"] * 8, *["right"] * number)


WALK = Picture(
    name="walk",
    house=houses.half_done,
    keys=(*_steps(4), "down", "down", "down"),
    window=WIDE,
    says="The walk, kitchen",
)
"""Stands at the head of README."""
SHOWN: tuple[Picture, ...] = (
    Picture(
        name="brief", house=houses.half_done, keys=(*_steps(0), *["down"] * 15), says="Brief: unknown looks unfinished"
    ),
    Picture(
        name="ways-out",
        house=houses.half_done,
        keys=(*_steps(0), "/", *"pod galley", "enter", "enter"),
        says="Why a part is blocked, and ways out",
    ),
    Picture(name="ledgers", house=houses.half_done, keys=(*_steps(0), "l"), says="Every sum, the worst first"),
    Picture(
        name="what-if",
        house=houses.draft,
        keys=(*_steps(0), "t", "/", *"wind-out", "enter", "-"),
        says="What if: nothing is kept until it is wanted",
    ),
    Picture(
        name="side-by-side",
        house=houses.two_variants,
        keys=("enter", "v", "n", "/", *"wind-out", "enter", "-", "/", *"moss", "enter", "-", "v"),
        says="Two variants side by side",
    ),
    Picture(
        name="customer-view", house=houses.draft, keys=("enter", "c"), look=LIGHT, says="Turned round, on light ground"
    ),
    Picture(name="build", house=houses.ordered, keys=("enter", "p", "b"), says="The build, hold point by hold point"),
    Picture(
        name="without-colour",
        house=houses.half_done,
        keys=(*_steps(6), "down"),
        look=COLOURLESS,
        plain=True,
        says="Without colour, in ASCII",
    ),
)


async def drawn(picture: Picture) -> str:
    """The picture, as SVG."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "jobs"
        now = picture.house(folder)
        for path in folder.glob("*"):
            os.utime(path, (now.timestamp(), now.timestamp()))
        with houses.noon(lambda: now):
            async with on_stage(folder, picture.window, plain=picture.plain, look=picture.look) as stage:
                for key in picture.keys:
                    await stage.press(key)
                    await stage.found()
                return _bare(stage.app.export_screenshot(title="specbuilder"))


def _bare(svg: str) -> str:
    """Without fonts from elsewhere and without notes of the library: the picture stands alone."""
    svg = re.sub(r"@font-face\s*{[^}]*}", "", svg)
    svg = re.sub(r"<!--.*?-->", "", svg, flags=re.DOTALL)
    svg = re.sub(r"<circle[^>]*/>", "", svg)  # no desktop's window
    svg = re.sub(r"font-family:\s*Fira Code", "font-family: DejaVu Sans Mono, Menlo, Consolas", svg)
    return re.sub(r"[ \t]+$", "", svg, flags=re.MULTILINE)


def gallery() -> str:
    """The pictures two by two, each a link to itself."""
    cells = [
        f"[![{each.says}](examples/pictures/{each.name}.svg)](examples/pictures/{each.name}.svg)" for each in SHOWN
    ]
    rows = ["", "| | |", "|---|---|"]
    for pair, told in zip(_pairs(cells), _pairs([each.says for each in SHOWN]), strict=True):
        rows += [f"| {pair[0]} | {pair[1]} |", f"| {told[0]} | {told[1]} |"]
    return "\n".join((*rows, "", ""))


def _pairs(texts: list[str]) -> list[tuple[str, str]]:
    return list(zip(texts[::2], [*texts[1::2], ""], strict=False))


def write(names: Iterable[str] = ()) -> None:
    """All of them, or those that are named; and the gallery."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    wanted = set(names)
    for picture in (WALK, *SHOWN):
        if not wanted or picture.name in wanted:
            (PICTURES / f"{picture.name}.svg").write_text(asyncio.run(drawn(picture)), encoding="utf-8")
    text = README.read_text("utf-8")
    README.write_text(GALLERY.sub(lambda _: gallery(), text), "utf-8")


if __name__ == "__main__":
    write(sys.argv[1:])
