"""The sums of a spec's file: mass budget by part, every ledger and figure with its bound, and the price."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Basis, Level, Sense, Truth, Verdict
from specbuilder.model.ledger import Entry, LedgerSpec, Reading
from specbuilder.model.span import Span, point
from specbuilder.workshop.view import SpecView

from .toml_out import Value, Values, figure, rows, table

_NONE = "None"
_TOTAL_MASS = LedgerId("total-mass")
_LENGTH, _MASS = "mm", "kg"
_VAN_WORDS = {
    Truth.YES: "van included",
    Truth.NO: "van not included",
    Truth.MAYBE: "van NOT DECIDED: the range is with and without",
}


def sums(view: SpecView) -> Iterator[str]:
    """Mass, ledgers and figures, price."""
    yield _mass_budget(view)
    remark = "SUMS AND FIGURES that are made; what is not made stands in [not_looked_at]. Computed."
    yield table("ledger", {}, remark=remark) + rows("line", _ledgers(view))
    yield _price(view)


def ends(name: str, span: Span, unit: str) -> dict[str, Value | None]:
    """``name_unit`` when only one value is left, else ``name_least_unit`` and ``name_most_unit``."""
    unit = f"_{unit}" if unit else ""
    if span.settled:
        return {f"{name}{unit}": figure(span.least)}
    return {f"{name}_least{unit}": figure(span.least), f"{name}_most{unit}": figure(span.most)}


def bound_is_known(view: SpecView, reading: Reading) -> bool:
    """False when the bound is nothing but the whole range of an answer that nobody has given."""
    ranges = view.report.facts.ranges
    return not any(lack.key is not None and ranges.get(lack.key) == reading.bound for lack in reading.lacks)


def verdict_words(level: Level, verdict: Verdict) -> str:
    """The verdict; a NOTE is not broken, it is said."""
    return "to be said" if level is Level.NOTE and verdict is Verdict.BROKEN else verdict.value


def _mass_budget(view: SpecView) -> str:
    remark = "MASS BUDGET. Parts as the catalogue has them; a part the customer brings as its sheet says. Computed."
    reading = view.report.readings.get(_TOTAL_MASS)
    if reading is None or reading.value is None:
        return table("mass_budget", {"said": "NOT SUMMED"}, remark=remark)
    values: dict[str, Value | None] = {**ends("total", reading.value, "kg")}
    if reading.bound is not None and reading.room is not None:
        values |= ends("plate", reading.bound, "kg") | ends("left", reading.room, "kg")
    values |= {"verdict": reading.verdict.value, "basis": "estimate"}
    values["not_in_it"] = [ledger.name for ledger in view.silent() if ledger.unit == _MASS] or _NONE
    return table("mass_budget", values, remark=remark) + rows("line", _mass_lines(view, reading.entries))


def _mass_lines(view: SpecView, entries: tuple[Entry, ...]) -> Iterator[Values]:
    """The van; the parts in build order; water in parts; people, luggage, travel water, fuel and other load."""
    order = {option: n for n, option in enumerate(c.choice.option for c in view.in_build_order())}
    van = [entry for entry in entries if entry.label and entry.option]
    parts = sorted(
        (e for e in entries if not e.label and e.option), key=lambda e: order.get(e.option or OptionId(""), 0)
    )
    yield from ({**ends("mass", e.amount, "kg"), "what": view.line_name(e)} for e in van)
    water: list[Values] = []
    for entry in parts:
        option = view.catalogue.options.get(entry.option or OptionId(""))
        wet = option.water.extra_water_l * entry.count if option else 0
        dry = entry.amount - point(wet)
        if option is not None and dry != point(0):
            yield _part_line(view, entry, option, dry)
        if wet:
            water.append({"mass_kg": figure(wet), "what": f"water in it: {view.line_name(entry)}"})
    yield from water
    for entry in entries:
        if entry.option is None:
            assumed = "ASSUMED" if entry.assumed else None
            yield {**ends("mass", entry.amount, "kg"), "what": view.line_name(entry), "rests_on": assumed}


def _part_line(view: SpecView, entry: Entry, option: Option, dry: Span) -> Values:
    name = view.line_name(entry)
    return {
        **ends("mass", dry, "kg"),
        "what": name if entry.count == 1 else f"{entry.count} x {name}",
        "step": view.build_step(option),
        "basis": option.basis.value if option.basis is Basis.ESTIMATE else None,
    }


def _ledgers(view: SpecView) -> Iterator[Values]:
    for ledger in view.catalogue.ledgers.values():
        reading = view.report.readings.get(ledger.id)
        if reading is not None:
            yield _reading(view, ledger, reading)


def _reading(view: SpecView, ledger: LedgerSpec, reading: Reading) -> dict[str, Value | None]:
    brief = view.catalogue.brief
    values: dict[str, Value | None] = {
        "sum": ledger.name,
        **(ends("value", reading.value, "") if reading.value else {"value": "NOT KNOWN"}),
        "unit": ledger.unit,
        **_bound(view, ledger, reading),
        "level": ledger.level.value,
        "verdict": _verdict(ledger, reading),
        "basis": "estimate" if ledger.estimate else None,
        "needs": view.lacks(reading.lacks),
        "assumes": "; ".join(brief[key].ask for key in reading.assumed if key in brief),
    }
    if ledger.unit == _LENGTH:
        values["made_of"] = "; ".join(_term(view, entry) for entry in reading.entries)
    return values


def _term(view: SpecView, entry: Entry) -> str:
    ends_ = dict.fromkeys(str(figure(end)) for end in (entry.amount.least, entry.amount.most))
    return f"{view.line_name(entry)} {' to '.join(ends_)}"


def _bound(view: SpecView, ledger: LedgerSpec, reading: Reading) -> dict[str, Value | None]:
    if ledger.sense is Sense.SHOWN:
        return {}
    name = ledger.sense.value.replace(" ", "_")
    if reading.bound is None:
        return {name: "not named" if reading.verdict is Verdict.HOLDS else "NOT KNOWN"}
    return ends(name, reading.bound, "") if bound_is_known(view, reading) else {name: "NOT KNOWN"}


def _verdict(ledger: LedgerSpec, reading: Reading) -> str:
    """What may be called holding is what was held against something."""
    if not reading.applies:
        return "does not apply"
    if ledger.sense is Sense.SHOWN or (reading.bound is None and reading.verdict is Verdict.HOLDS):
        return "shown only"
    return verdict_words(ledger.level, reading.verdict)


def _price(view: SpecView) -> str:
    price = view.report.price
    values: dict[str, Value | None] = {"van": _VAN_WORDS[price.van_included]}
    for name, pence in (("net", price.net), ("vat", price.vat), ("gross", price.gross)):
        values |= ends(name, Span(pence.least, pence.most), "pence")
    values["still_open"] = view.lacks(price.lacks) or _NONE
    return table(
        "price", values, remark=f"PRICE in {view.catalogue.firm.currency}, fitted; gross is with tax. Computed."
    )
