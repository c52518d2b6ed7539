"""The schedules of a spec's file that the floor works from: holes and circuits of what is chosen, in build order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from specbuilder.model.catalogue import Circuit, Hole, Option
from specbuilder.model.kinds import Owner

from .spec_view import Chosen, SpecView
from .toml_out import Value, figure, item


def holes(view: SpecView, chosen: Iterable[Chosen]) -> Iterator[str]:
    """``[[hole]]``: every cut, on the datum of the job."""
    for one in chosen:
        if one.option is not None:
            for hole in one.option.holes:
                yield _hole(view, one, one.option, hole)


def _hole(view: SpecView, one: Chosen, option: Option, hole: Hole) -> str:
    spot = view.positions.of_hole(hole.position, one.choice, option)
    unsettled = ["the base van is not decided"] if spot.x_mm is None else []
    unsettled += ["its side is not decided"] if option.places and one.choice.place is None else []
    unsettled += ["the customer's own part: measure the part"] if one.choice.owner is Owner.CUSTOMER else []
    unsettled += ["more than one: places of the others are measured"] if one.choice.count > 1 else []
    return item(
        "hole",
        {
            "id": hole.id,
            "for": option.name,
            "place": one.choice.place.value if one.choice.place else None,
            "what": hole.what,
            "surface": hole.surface,
            "x_mm": figure(spot.x_mm),
            "y_mm": figure(spot.y_mm),
            "z_mm": figure(spot.z_mm),
            "tolerance_mm": figure(hole.tolerance_mm),
            "width_mm": figure(hole.width_mm),
            "height_mm": figure(hole.height_mm),
            "diameter_mm": figure(hole.diameter_mm),
            "corner_radius_mm": figure(hole.corner_radius_mm),
            "cut_from": hole.cut_from,
            "edge_treatment": hole.edge_treatment,
            "check_behind": hole.check_behind,
            "freeze_step": hole.freeze_step,
            "do_not_cut_yet": "; ".join(unsettled),
        },
    )


def circuits(chosen: Iterable[Chosen]) -> Iterator[str]:
    """``[[circuit]]``: every cable run; cable and fuse are others' work."""
    for one in chosen:
        if one.option is not None:
            yield from (_circuit(one, one.option, circuit) for circuit in one.option.circuits)


def _circuit(one: Chosen, option: Option, circuit: Circuit) -> str:
    values: dict[str, Value | None] = {
        "id": circuit.id,
        "for": option.name,
        "count": one.choice.count,
        "circuit": circuit.circuit,
        "from": circuit.from_point,
        "to": circuit.to_point,
        "bus": circuit.bus,
        "load_w": figure(circuit.load_w),
        "load_a": figure(circuit.load_a),
        "run_one_way_m": figure(circuit.run_one_way_m),
        "drop_limit_percent": figure(circuit.drop_limit_pct),
        "protection": circuit.protection,
        "cable_and_fuse": "NOT COMPUTED HERE: from the electrician's schedule and the part's own data",
    }
    return item("circuit", values)
