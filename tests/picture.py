"""The picture in README, made by the program itself: ``python -m tests.picture`` writes ``examples/walk.svg``."""

from __future__ import annotations

import asyncio
import re
import shutil
import tempfile
from pathlib import Path

from tests.journeys.stage import on_stage

EXAMPLES = Path(__file__).parent.parent / "examples"
WINDOW = (120, 34)
KEYS = ("enter", "right", "right", "right", "right", "down", "down", "down")
"""Into the half-finished job, over to the kitchen, down to the first open question."""


async def picture() -> str:
    """The walk at the step kitchen, as SVG."""
    with tempfile.TemporaryDirectory() as folder:
        jobs = Path(folder)
        shutil.copy(EXAMPLES / "half-done-family.toml", jobs / "0151-r1.toml")
        async with on_stage(jobs, WINDOW) as stage:
            await stage.press(*KEYS)
            return _bare(stage.app.export_screenshot(title="specbuilder"))


def _bare(svg: str) -> str:
    """Without fonts from elsewhere and without notes of the library: the picture stands alone."""
    svg = re.sub(r"@font-face\s*{[^}]*}", "", svg)
    svg = re.sub(r"<!--.*?-->", "", svg, flags=re.DOTALL)
    return re.sub(r"font-family:\s*Fira Code", "font-family: DejaVu Sans Mono, Menlo, Consolas", svg)


if __name__ == "__main__":
    (EXAMPLES / "walk.svg").write_text(asyncio.run(picture()), encoding="utf-8")
