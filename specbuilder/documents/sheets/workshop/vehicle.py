"""Which side everything is on, the van itself, and how it stood when it came."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Items, Paragraph, Table, Weight
from specbuilder.model.plain_text import one_line
from specbuilder.model.vans import Van
from specbuilder.wording.names import group_name, listed
from specbuilder.wording.plain import raised
from specbuilder.wording.quantities import quantity
from specbuilder.wording.workshop import kg, mm
from specbuilder.workshop.handed import handed_line

from .material import Material

_PHOTOS = (
    "Type plate and chassis number",
    "All four sides, roof, underside",
    "Every dent, scratch and rust spot",
    "Cab, load space, old wiring, ceiling before the lining comes out",
)


def vehicle(material: Material) -> tuple[Block, ...]:
    """Handedness line, van, mass as received."""
    return (
        Heading(text="Sides, as seen facing forward"),
        Paragraph(text=handed_line(material.view), weight=Weight.STRONG),
        Heading(text="The van"),
        Facts(rows=tuple(_facts(material))),
        Heading(text="Mass as received", level=3),
        _scales(material),
        Paragraph(
            text="By the papers: ready to drive, with a driver of 75 kg and the tank nine tenths full. "
            "Write down who was aboard and how full the tank was. Weigh the total and one axle; the other is what is "
            "left.",
            weight=Weight.SMALL,
        ),
        Heading(text="Photos to take", level=3),
        Items(rows=_PHOTOS, boxes=True),
    )


def _facts(material: Material) -> Iterator[tuple[str, str]]:
    data, option = material.spec.van_data, material.view.van_option
    yield "Base van", option.name if option else "NOT DECIDED"
    yield "Chassis number, last six", one_line(data.vin_tail)
    yield "Registration", one_line(data.registration)
    yield "Year", "" if data.year is None else f"{data.year}"
    if option is not None and option.van is not None:
        yield from _body(material, option.van)
    yield "Paint code", one_line(data.paint_code)
    yield "Mileage in", "" if data.mileage_km is None else quantity(data.mileage_km, "km", "")
    yield "Damage as received", one_line(data.damage)
    yield "Keys, how many", ""
    undecided = listed(group_name(material.catalogue, group) for group in material.view.report.undecided)
    if undecided:
        yield "Not chosen yet", f"{undecided}: nothing of it may be ordered or built"


def _body(material: Material, van: Van) -> Iterator[tuple[str, str]]:
    yield "Wheelbase", mm(van.wheelbase_mm)
    yield "Length, width, roof height", f"{mm(van.length_mm)}, {mm(van.width_mm)}, {mm(van.height_mm)}"
    yield "Load length", mm(van.load_length_mm)
    yield "Sliding door", raised(listed(door.value for door in van.sliding_doors)) or "None"
    yield "Rear doors", van.rear_doors
    yield "Steering wheel", raised(material.view.steering) or "NOT KNOWN"
    yield "Fuel, driven axle", f"{van.fuel}, {van.driven_axle}"
    yield (
        "Plates",
        f"{kg(van.m_max_kg)} kg in all, {kg(van.f_max_kg)} kg front axle, {kg(van.r_max_kg)} kg rear axle",
    )
    if van.remark:
        yield "Mind", van.remark


def _scales(material: Material) -> Table:
    """Papers beside the scales, with a blank where nobody has weighed yet."""
    data, option = material.spec.van_data, material.view.van_option
    van = option.van if option else None
    front, rear = data.weighed_front_kg, data.weighed_rear_kg
    both = front + rear if front is not None and rear is not None else None
    papers = (van.mro_front_kg, van.mro_rear_kg, van.mro_kg) if van else (None, None, None)
    plates = (van.f_max_kg, van.r_max_kg, van.m_max_kg) if van else (None, None, None)
    names = ("Front axle", "Rear axle", "Total")
    rows = tuple(
        (name, kg(by_papers), kg(plate), "" if seen is None else kg(seen), "")
        for name, by_papers, plate, seen in zip(names, papers, plates, (front, rear, both), strict=True)
    )
    columns = (
        Column(head="Axle"),
        Column(head="By the papers, kg", right=True),
        Column(head="Plate, kg", right=True),
        Column(head="On the scales, kg", share=1.3),
        Column(head="Aboard, fuel, ticket", share=2),
    )
    return Table(columns=columns, rows=rows, strong=frozenset({2}), blank=frozenset({3, 4}))
