"""Under which name of which file every calculation stands, for whoever follows what it is made of."""

from __future__ import annotations

import sys
from collections.abc import Mapping

from specbuilder import calc
from specbuilder.calc import CALCULATIONS
from specbuilder.model.ids import LedgerId


def calculation_names() -> Mapping[LedgerId, tuple[str, str]]:
    """Module and name of each calculation; of one that has no name of its own, those of the list it stands in."""
    alone: dict[int, tuple[str, str]] = {}
    in_list: dict[int, tuple[str, str]] = {}
    for module, loaded in sorted(sys.modules.items()):
        if not module.startswith(f"{calc.__name__}."):
            continue
        short = module.rpartition(".")[2]
        for name, thing in vars(loaded).items():
            alone.setdefault(id(thing), (short, name))
            for one in thing if isinstance(thing, tuple) else ():
                in_list.setdefault(id(one), (short, name))
    return {c.id: alone.get(id(c)) or in_list[id(c)] for c in CALCULATIONS}
