"""The keyboard a house chose, read and held against the table before anything is drawn."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from specbuilder.storage.faults import Fault, meant, quotable
from specbuilder.storage.keys_file import KeysFaultsError, OwnKeys, read_own_keys
from specbuilder.wording import own_keys as words
from specbuilder.wording.key_names import speak_of

from .acts import Act
from .keyboard import FIXED, Keyboard, Slip, SlipCode, rebound, slips_of


def own_keyboard(path: Path) -> Keyboard:
    """The keyboard with the keys of this file; sentences name them from now on.

    Raises:
        KeysFaultsError: the file or a line of it cannot be used; with every fault.
        DiskError: it cannot be read.
    """
    own = read_own_keys(path)
    if faults := tuple(_faults(own, slips_of(own.chosen))):
        raise KeysFaultsError(faults)
    keyboard = Keyboard(rebound(own.chosen))
    speak_of(keyboard.names())
    return keyboard


def _faults(own: OwnKeys, slips: tuple[Slip, ...]) -> Iterator[Fault]:
    """One for each line and key, whatever the number of pages."""
    pages: dict[Slip, set[str]] = {}
    for slip in slips:
        pages.setdefault(Slip(slip.code, slip.act, slip.key, slip.other), set()).add(slip.where)
    for slip, where in pages.items():
        yield Fault(own.file, own.lines.get(slip.act, 0), f"keys.{quotable(slip.act)}", _told(slip, where))


def _told(slip: Slip, where: set[str]) -> str:
    match slip.code:
        case SlipCode.NO_ACT:
            acts = [act.value for act in Act if act not in FIXED]
            return words.no_such_act(meant(slip.act, acts, words.where_acts_stand()))
        case SlipCode.FIXED_ACT:
            return words.fixed_act()
        case SlipCode.NO_KEY:
            return words.no_such_key(quotable(slip.key))
        case SlipCode.TWO_ACTS:
            return words.two_acts(slip.key, slip.other, where)
