"""Every screen of the program and the keys that lead to it from the list of jobs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from . import houses


@dataclass(frozen=True, slots=True)
class Scene:
    """One screen: in which house, and which keys lead there. Those of one house are taken one after the other."""

    name: str
    house: Callable[[Path], datetime]
    keys: tuple[str, ...] = ()

    @property
    def presses(self) -> list[str]:
        """Every single key."""
        return [key for word in self.keys for key in (word[1:-1] if word[:1] == word[-1:] == "'" else (word,))]


TO_STEP = ("enter", *["left"] * 8)
"""Into the first job, back to the brief."""


def _find(text: str) -> tuple[str, ...]:
    return "/", f"'{text}'", "enter"


SCENES: tuple[Scene, ...] = (
    Scene("jobs-none", houses.empty),
    Scene("brief-new", houses.empty, ("n", "2", "enter", "2", "enter", "'9 6'", "enter")),
    Scene("jobs", houses.demo),
    Scene("circuits-none", houses.empty, ("n", "2", "i")),
    Scene("usual-none", houses.draft, (*TO_STEP, *["right"] * 4, "h")),
    Scene("jobs-long", houses.long_names),
    Scene("walk-long", houses.long_names, ("enter", "right", "right", "right")),
    Scene("jobs-find", houses.demo, ("/", "'01'")),
    Scene("jobs-find-none", houses.demo, ("/", "'zz'")),
    Scene("keys-jobs", houses.demo, ("f1",)),
    Scene("notice-unreadable", houses.unreadable, ("enter",)),
    Scene("brief", houses.half_done, TO_STEP),
    Scene("brief-typing", houses.half_done, (*TO_STEP, *["down"] * 8, "'12'")),
    *(
        Scene(f"walk-{step}", houses.half_done, (*TO_STEP, *["right"] * number))
        for number, step in enumerate(
            ("van", "roof", "seating", "kitchen", "heating", "power", "finish", "check"), start=1
        )
    ),
    Scene("why-blocked", houses.half_done, (*TO_STEP, *_find("pod galley"), "enter")),
    Scene("ways-out", houses.half_done, (*TO_STEP, *_find("bench three"), "enter")),
    Scene("ledgers", houses.half_done, (*TO_STEP, "l")),
    Scene("ledger", houses.half_done, (*TO_STEP, "l", "enter")),
    Scene("circuits", houses.half_done, (*TO_STEP, "i")),
    Scene("circuit", houses.half_done, (*TO_STEP, "i", "down", "enter")),
    Scene("open-things", houses.half_done, (*TO_STEP, "o")),
    Scene("who-and-when", houses.half_done, (*TO_STEP, "o", "enter")),
    Scene("details", houses.half_done, (*TO_STEP, *_find("side galley"), "d")),
    Scene("usual", houses.half_done, (*TO_STEP, "right", "right", "right", "right", "h")),
    Scene("change-of-van", houses.half_done, (*TO_STEP, *_find("fenwain long, tail"), "enter")),
    Scene("finish", houses.half_done, (*TO_STEP, "f")),
    Scene("find", houses.half_done, (*TO_STEP, "/", "'gal'")),
    Scene("find-nothing", houses.half_done, (*TO_STEP, "/", "'zzz'")),
    Scene("find-begun", houses.half_done, (*TO_STEP, "/")),
    Scene("actions", houses.half_done, (*TO_STEP, "right", "f9")),
    Scene("keys", houses.half_done, (*TO_STEP, "right", "f1")),
    Scene("what-if", houses.half_done, (*TO_STEP, *["right"] * 3, "t", "down", "enter")),
    Scene("actions-nothing", houses.half_done, (*TO_STEP, "f9", "'zzz'")),
    Scene("open-none", houses.draft, ("enter", "o")),
    Scene("revisions-none", houses.draft, ("enter", "p", "e")),
    Scene("papers", houses.draft, ("enter", "p")),
    Scene("check-draft", houses.draft, (*TO_STEP, *["right"] * 8)),
    Scene("accept", houses.draft, (*TO_STEP, *["right"] * 8, "a")),
    Scene("paper", houses.draft, ("enter", "p", "1")),
    Scene("sign-quote", houses.draft, ("enter", "p", "s")),
    Scene("customer-1", houses.draft, ("enter", "c")),
    Scene("customer-2", houses.draft, ("enter", "c", "right")),
    Scene("customer-3", houses.draft, ("enter", "c", "right", "right")),
    Scene("customer-leave", houses.draft, ("enter", "c", "escape")),
    Scene("sign-order", houses.quoted, ("enter", "p", "s")),
    Scene("papers-quoted", houses.quoted, ("enter", "p")),
    Scene("papers-ordered", houses.ordered, ("enter", "p")),
    Scene("build", houses.ordered, ("enter", "p", "b")),
    Scene("record", houses.ordered, ("enter", "p", "b", "down", "enter")),
    Scene("record-promise", houses.ordered, ("enter", "p", "b", "end", "up", "up", "enter")),
    Scene("papers-change", houses.changed, ("enter", "p")),
    Scene("paper-change", houses.changed, ("enter", "p", "1")),
    Scene("give-up", houses.changed, ("enter", "p", "g")),
    Scene("revisions", houses.changed, ("enter", "p", "e")),
    Scene("looked-at", houses.changed, ("enter", "p", "e", "down", "enter")),
    Scene("sign-change", houses.changed, ("enter", "p", "s")),
    Scene("older-rules", houses.old, ("enter",)),
    Scene("against-today", houses.old, ("enter", "2")),
    Scene("side-by-side-one", houses.two_variants, ("enter", "v")),
    Scene("side-by-side", houses.two_variants, ("enter", "v", "n", *_find("pod galley"), "enter", "1", "v")),
)
