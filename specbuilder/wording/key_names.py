"""How sentences call the keys. A house may have chosen its own, so no sentence writes a key out by itself.

Like the language a program speaks this is settled once, before the first sentence is said.
"""

from __future__ import annotations

from collections.abc import Mapping

_SHIPPED = {
    "build": "b",
    "customer-view": "c",
    "details": "d",
    "find": "/",
    "finish": "f",
    "give-up-change": "g",
    "keep": "k",
    "keys": "F1",
    "leave": "q",
    "ledgers": "l",
    "less": "-",
    "new-job": "n",
    "new-variant": "n",
    "next": "n",
    "papers": "p",
    "practise": "g",
    "redo": "r",
    "side-by-side": "v",
    "sign": "s",
    "undo": "u",
    "usual": "h",
    "what-if": "t",
    "why": "w",
}
_names = dict(_SHIPPED)


def pressed(act: str) -> str:
    """The key of an act, as a sentence calls it."""
    return _names[act]


def speak_of(names: Mapping[str, str]) -> None:
    """From now on sentences use these names; an act that is not among them keeps the one it came with."""
    _names.update({act: names.get(act, shipped) for act, shipped in _SHIPPED.items()})


def named_in_sentences() -> Mapping[str, str]:
    """The acts whose keys sentences name, with the keys they came with."""
    return _SHIPPED
