"""The workshop pack: everything the floor builds from, in build order, so that nobody rings the counter."""

from __future__ import annotations

from specbuilder.documents.blocks import Paper
from specbuilder.documents.sheets.running import running
from specbuilder.model.papers import Case

from .changes import changes
from .declared import gas_and_water
from .electrics import electrics
from .head import head
from .holes import holes
from .limits import limits
from .mass import mass
from .material import material
from .parts import parts
from .places import places
from .redo import redo
from .seats import seats
from .sequence import sequence
from .told import told
from .vehicle import vehicle

_PAGES = (
    head,
    changes,
    redo,
    vehicle,
    limits,
    parts,
    places,
    holes,
    seats,
    electrics,
    gas_and_water,
    mass,
    sequence,
    told,
)
"""The parts of the pack in their order."""


def workshop_pack(case: Case) -> Paper:
    """The pack of one revision."""
    found = material(case)
    return Paper(
        name="workshop-pack",
        title="Workshop pack",
        running=running(case, private=True),
        blocks=tuple(block for part in _PAGES for block in part(found)),
    )
