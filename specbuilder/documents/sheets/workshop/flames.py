"""Windows beside an open flame: no curtain, blind or towel belongs there, and the paper names them."""

from __future__ import annotations

from specbuilder.wording.names import listed, option_name
from specbuilder.wording.plain import lowered
from specbuilder.workshop.flames import at_flame, flames, hangs_cloth

from .material import Material


def no_cloth(material: Material, step: str = "") -> list[str]:
    """One sentence, at the steps that hang cloth or fit the flame; for no step (empty) wherever there is a flame."""
    view = material.view
    if not flames(view):
        return []
    at = {view.build_step(one.option) for one in (*flames(view), *hangs_cloth(view)) if one.option is not None}
    if step and step not in at:
        return []
    beside = [lowered(option_name(view.catalogue, one.choice.option, one.choice.place)) for one in at_flame(view)]
    named = f", so none at: {listed(beside)}" if beside else ""
    return [f"No curtain, blind or towel within reach of the flame of the hob{named}."]
