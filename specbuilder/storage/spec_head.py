"""The first page of a spec's file: what nobody has looked at, what is open, which sides, and what must not be done."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.own_parts import SheetLine, blanks_of, is_theirs
from specbuilder.model.span import point
from specbuilder.model.spec import Choice
from specbuilder.workshop.cautions import cautions_of, forbids
from specbuilder.workshop.cuts import unsettled
from specbuilder.workshop.handed import handed_line
from specbuilder.workshop.view import SpecView

from .spec_sums import bound_is_known, ends
from .toml_out import Value, figure, table

NONE = "None"
_CLOSED_HEIGHT = LedgerId("closed-height")
_SPARE = "spare_mm"


def first_page(view: SpecView) -> Iterator[str]:
    """What stands before anything else."""
    yield _not_looked_at(view)
    yield _open_points(view)
    yield _not_known(view)
    yield _assumed(view)


def sides_and_limits(view: SpecView) -> Iterator[str]:
    """Sides, datum, height, and what must not be done: after the van itself."""
    yield table("handed", {"line": handed_line(view)}, remark="SIDES, as seen facing forward. Computed.")
    datum = {
        "x": "mm back from the rear face of the left door pillar",
        "y": "mm from the centre line of the van, + left",
        "z": "mm up from the bare floor",
        "measure_on_van": "where the body decides, the van is measured and this file corrected before anything is cut",
    }
    yield table("datum", datum, remark="Every x_mm, y_mm and z_mm below is on it. Computed.")
    yield _height(view)
    yield _do_not(view)


def _not_looked_at(view: SpecView) -> str:
    remark = "NOT LOOKED AT: these sums are not made, and nothing below says that any of them is right. Computed."
    return table("not_looked_at", {"sums": [ledger.name for ledger in view.silent()] or NONE}, remark=remark)


def _open_points(view: SpecView) -> str:
    report, spec = view.report, view.spec
    says = sum(f.verdict is Verdict.BROKEN and f.level is Level.NOTE for f in report.findings)
    replaces = f"revision {spec.replaces}: what changed is not listed here, so lay both side by side"
    values: dict[str, Value | None] = {
        "broken_at_stop": len(report.broken(Level.STOP)) or NONE,
        "broken_at_sign": len(report.broken(Level.SIGN)) or NONE,
        "cannot_tell_at_stop": len(report.cannot_tell(Level.STOP)) or NONE,
        "cannot_tell_at_sign": len(report.cannot_tell(Level.SIGN)) or NONE,
        "cannot_tell_at_note": len(report.cannot_tell(Level.NOTE)) or NONE,
        "to_be_said": says or NONE,
        "accepted": len(spec.accepted) or NONE,
        "questions": len(spec.questions) or NONE,
        "left_the_catalogue": view.names(report.strangers) or NONE,
        "replaces": replaces if spec.replaces else "no earlier revision",
    }
    remark = "WHERE IT STANDS, as far as it was looked at. STOP and SIGN can be broken; a NOTE is said. Computed."
    return table("open_points", values, remark=remark)


_SHEET = MappingProxyType(
    {
        SheetLine.MASS: "mass",
        SheetLine.WATTS: "watts",
        SheetLine.CUT_OUT: "size of its hole",
        SheetLine.ARRIVES: "date of arrival",
        SheetLine.DOOR: "length of its door",
        SheetLine.DAY: "watt-hours of a day",
        SheetLine.AMPS: "continuous amps",
        SheetLine.CAPACITY: "amp-hours",
        SheetLine.KIND: "kind of battery",
    }
)


def _not_known(view: SpecView) -> str:
    """Everything that is not known, at one place."""
    report, catalogue, data = view.report, view.catalogue, view.spec.van_data
    own = [f"{view.name(c.option)}: {', '.join(lacks)}" for c in view.spec.choices if (lacks := _own_part(view, c))]
    before = {"last six of the chassis number": data.vin_tail, "year": data.year}
    arrival = {
        "registration": data.registration,
        "paint code": data.paint_code,
        "mileage": data.mileage_km,
        "damage on arrival": data.damage,
        "weight on the front axle as received": data.weighed_front_kg,
        "weight on the rear axle as received": data.weighed_rear_kg,
    }
    values: dict[str, Value | None] = {
        "brief": [catalogue.brief[key].ask for key in report.unknown if key in catalogue.brief] or NONE,
        "not_chosen": [view.group_name(group) for group in report.undecided] or NONE,
        "van_before_signing": _blank(before) or NONE,
        "van_at_arrival": _blank(arrival) or NONE,
        "own_parts": own or NONE,
    }
    remark = "NOT KNOWN YET. What is not chosen may not be ordered or built. Computed."
    return table("not_known", values, remark=remark)


def _own_part(view: SpecView, choice: Choice) -> list[str]:
    """What is open about a part the customer brings."""
    option = view.catalogue.options.get(choice.option)
    if not is_theirs(option, choice):
        return []
    if option is None or choice.own_part is None:
        return ["its sheet"]
    return [_SHEET[line] for line in blanks_of(option, choice.own_part)]


def _blank(values: Mapping[str, str | float | None]) -> list[str]:
    return [words for words, value in values.items() if value in (None, "")]


def _assumed(view: SpecView) -> str:
    report = view.report
    values: dict[str, Value | None] = {str(k): report.facts.get(k) for k in report.assumed if k in view.catalogue.brief}
    none = "" if values else " None."
    return table(
        "assumed", values, remark=f"ASSUMED: nobody said so, and it stands until somebody does.{none} Computed."
    )


def _height(view: SpecView) -> str:
    """The real height apart from the height with its spare."""
    ledger, reading = view.catalogue.ledgers.get(_CLOSED_HEIGHT), view.report.readings.get(_CLOSED_HEIGHT)
    values: dict[str, Value | None] = {"said": "NOT SUMMED"}
    if ledger is not None and reading is not None and reading.value is not None:
        spare = ledger.settings.get(_SPARE, 0)
        values = {
            **ends("closed", reading.value - point(spare), "mm"),
            "spare_mm": figure(spare),
            **ends("with_spare", reading.value, "mm"),
        }
        if reading.bound is None:
            values["barrier"] = "not named"
        else:
            values |= (
                ends("barrier", reading.bound, "mm") if bound_is_known(view, reading) else {"barrier": "NOT KNOWN"}
            )
    remark = (
        "HEIGHT closed, empty, on the kerb. closed_mm is the quoted figure; only the barrier gets the spare. Computed."
    )
    return table("height", values, remark=remark)


def _do_not(view: SpecView) -> str:
    """What must not be drilled, cut yet or ordered, and what cautions forbid."""
    option = view.van_option
    zones = (
        list(option.van.no_drill_zones) or ["no zone is named: the van maker's drawing decides"]
        if option and option.van
        else []
    )
    cuts = [
        f"{hole.id}: {'; '.join(why)}"
        for one in view.in_build_order()
        if one.option is not None
        for hole in one.holes
        if (why := unsettled(view, one, one.option, hole))
    ]
    told = cautions_of(view)
    forbidden = [f"{caution.text} ({view.names(about)})" for caution, about in told if forbids(caution)]
    values: dict[str, Value | None] = {
        "drill": zones or "NOT KNOWN: the base van is not decided",
        "cut_yet": cuts or NONE,
        "order": [f"{view.name(one)}: no longer in the catalogue" for one in view.report.strangers] or NONE,
        "forbidden": forbidden or NONE,
    }
    return table(
        "do_not",
        values,
        remark="DO NOT drill, cut yet, order; what cautions forbid. What is not chosen: see [not_known]. Computed.",
    )
