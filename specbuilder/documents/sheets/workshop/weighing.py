"""The state in which the finished van is weighed: what is on board, what is added, what the scales should show.

Workshop pack and hand-over pack say the same, for a band holds for one state only.
"""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Items
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry, Reading
from specbuilder.wording.names import listed, option_name
from specbuilder.wording.plain import lowered, raised
from specbuilder.wording.quantities import quantity
from specbuilder.wording.workshop import told

from .material import Material

_PARTS = ("front", "rear", "total")
BAND = tuple(LedgerId(f"weighbridge-{part}") for part in _PARTS)
"""Between which masses the scales should show: front axle, rear axle, the whole van."""
PLANNED = tuple(LedgerId(f"running-order-{part}") for part in _PARTS)
"""What is planned in the state that is weighed."""
_LOADED = LedgerId("total-mass")
HOW = (
    "Weigh the total and one axle on level ground, in the state that stands here; the other axle is what is left. "
    "Write down what was otherwise."
)
_TANK, _CHARGED = "the tank of the van nine tenths full", "the driving battery charged"


def reading(material: Material, ledger: LedgerId) -> Reading | None:
    """A figure of the weighed van; None where there is nothing to weigh."""
    found = next((one for one in material.case.beside if one.id == ledger), None)
    return found if found is not None and found.applies else None


def is_on_board(material: Material, entry: Entry) -> bool:
    """Whether a line of the loaded van stands on the scales: the van, its parts, and the loads of running order."""
    running = reading(material, PLANNED[-1])
    weighed = running.entries if running is not None else ()
    return not _is_load(entry) or any(_is_load(one) and one.label == entry.label for one in weighed)


def on_board(material: Material) -> Items:
    """What is in the van while it is weighed, and what is added to the reading afterwards."""
    return Items(rows=tuple(_rows(material)))


def _rows(material: Material) -> Iterator[str]:
    van = material.view.van_option
    energy = _CHARGED if van is not None and van.van is not None and not van.van.tank_l else _TANK
    yield f"On board: one person of about 75 kg in the driver's seat, nobody else; {energy}."
    loaded = material.view.report.readings.get(_LOADED)
    loads = [entry for entry in loaded.entries if _is_load(entry)] if loaded is not None else []
    for entry in loads:
        if is_on_board(material, entry):
            yield f"On board: {entry.label}, {told(entry.amount, 'kg', estimate=True)}."
    yield from (f"On board: {water}." for water in _water_in_parts(material))
    yield f"On board: every part of the list of parts{_carried(material)}. What is not there is weighed by itself."
    after = [entry.label for entry in loads if not is_on_board(material, entry)]
    if after:
        yield f"{raised(listed(after))}: not on board, added to what was read."


def _water_in_parts(material: Material) -> Iterator[str]:
    """``8 L of water in the portable toilet``: what the mass of a part holds beside its own."""
    for one, option in material.known:
        water_l = option.water.extra_water_l * one.choice.count
        if water_l:
            yield f"{quantity(water_l, 'L', '')} of water in: {lowered(option_name(material.catalogue, option.id))}"


def _carried(material: Material) -> str:
    """What the customer brings along and nobody orders."""
    names = [
        lowered(option_name(material.catalogue, option.id, count=one.choice.count))
        for one, option in material.known
        if option.carried and option.mass_kg
    ]
    return f", also what the customer brings along: {listed(names)}" if names else ""


def _is_load(entry: Entry) -> bool:
    """What is neither the van nor a part nor a group that is still open."""
    return entry.option is None and entry.group is None
