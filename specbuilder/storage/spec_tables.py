"""The computed tables of a spec's file: everything the workshop reads and no program reads back."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Pick, Truth, Verdict
from specbuilder.model.ledger import LedgerSpec, Reading
from specbuilder.model.span import Span

from .spec_schedules import circuits, holes
from .spec_view import Chosen, SpecView
from .toml_out import Value, figure, item, table

_NONE = "None"
_HOURS = ("h", "hours")
_VAN_WORDS = {
    Truth.YES: "van included",
    Truth.NO: "van not included",
    Truth.MAYBE: "van NOT DECIDED: the range is with and without",
}


def before_brief(view: SpecView) -> Iterator[str]:
    """Sides, datum, what is open, and what changed: the first page."""
    yield table("handed", {"line": handed_line(view)}, remark="Computed. Sides as seen facing forward.")
    datum = {
        "x": "mm back from the rear face of the left door pillar",
        "y": "mm from the centre line of the van, + left",
        "z": "mm up from the bare floor",
        "measure_on_van": "where the body decides, the van is measured and this file corrected before anything is cut",
    }
    yield table("datum", datum, remark="Computed. Every x_mm, y_mm and z_mm below is on it.")
    yield _open_points(view)


def before_choices(view: SpecView) -> Iterator[str]:
    """What the brief leaves open or assumed."""
    report, catalogue = view.report, view.catalogue
    known = {key: catalogue.brief[key] for key in (*report.assumed, *report.unknown) if key in catalogue.brief}
    assumed: dict[str, Value | None] = {str(key): report.facts.get(key) for key in report.assumed if key in known}
    yield table(
        "assumed", assumed, remark=_or_none("Nobody said so: the house assumes it until somebody does.", assumed)
    )
    unknown = {str(key): known[key].ask for key in report.unknown if key in known}
    yield table("not_known", unknown, remark=_or_none("NOT KNOWN YET, and asked so.", unknown))
    groups = catalogue.groups
    undecided = {str(group): groups[group].question for group in report.undecided if group in groups}
    remark = _or_none("Not chosen yet: nothing of it may be ordered or built.", undecided)
    yield table("undecided", undecided, remark=remark)
    yield "\n# Choices in build order. Said: option, taken, count, place, whose, note, came_with, at and own_part.\n"


def after_choices(view: SpecView) -> Iterator[str]:
    """Holes, circuits, sums, price, order of work, findings, cautions, papers."""
    chosen = view.in_build_order()
    yield "\n# All from here to [not_checked] is computed, and so are the lines [[hole]] and [[circuit]].\n"
    yield from holes(view, chosen)
    yield from circuits(chosen)
    yield from _ledgers(view)
    yield _price(view)
    yield _hours(view)
    yield from _steps(view, chosen)
    yield from _findings(view)
    yield from _cautions(view, chosen)
    yield from _papers(view, chosen)
    yield _not_checked(view)
    none = "" if view.spec.accepted else " None."
    yield f"\n# Cautions the customer was told and accepted, in the words used.{none}\n"


def before_questions(view: SpecView) -> Iterator[str]:
    """The line that stands above the open questions, with *None* when there are none."""
    none = "" if view.spec.questions else " None."
    yield f"\n# Open questions: who finds it out, by when, and what it stops.{none}\n"


def handed_line(view: SpecView) -> str:
    """``SLIDING DOOR: LEFT. AWNING: LEFT. GALLEY: RIGHT.``: every side, in capitals, in the order of the catalogue."""
    sides: list[str] = []
    van = view.van_option.van if view.van_option else None
    sides.append(f"sliding door: {' and '.join(van.sliding_doors) if van else 'not decided'}")
    sides.append(f"steering: {view.steering or 'not known'}")
    for group in view.catalogue.groups.values():
        options = view.catalogue.options_of(group.id)
        if not any(option.places for option in options):
            continue
        chosen = [c for c in view.in_taken_order() if c.option and c.option.group == group.id and c.option.places]
        if group.id in view.report.undecided:
            sides.append(f"{group.name}: not decided")
        for one in chosen:
            name = group.name if group.pick is Pick.ONE or one.option is None else one.option.name
            sides.append(f"{name}: {one.choice.place.value if one.choice.place else 'not decided'}")
    return " ".join(f"{side.upper()}." for side in sides)


def _open_points(view: SpecView) -> str:
    report, spec = view.report, view.spec
    counts = {
        "questions": _counted(len(spec.questions)),
        "not_known": _counted(len(report.unknown)),
        "undecided": _counted(len(report.undecided)),
        "broken": _counted(sum(f.verdict is Verdict.BROKEN and not f.accepted for f in report.findings)),
        "cannot_tell": _counted(sum(f.verdict is Verdict.CANNOT_TELL for f in report.findings)),
        "sums_not_made": _counted(len(report.silent_ledgers)),
        "changed_since": f"against revision {spec.replaces}: see [[change]]"
        if spec.replaces
        else "no earlier revision",
        "left_the_catalogue": view.names(report.strangers) or _NONE,
    }
    return table("open_points", dict(counts), remark="Computed. What nobody may take as settled.")


def _or_none(remark: str, values: Mapping[str, object]) -> str:
    return f"Computed. {remark}" if values else f"Computed. {remark} None."


def _counted(number: int) -> Value:
    return number or _NONE


def _ledgers(view: SpecView) -> Iterator[str]:
    for ledger in view.catalogue.ledgers.values():
        reading = view.report.readings.get(ledger.id)
        if reading is not None:
            yield item("ledger", _reading(view, ledger, reading))


def _reading(view: SpecView, ledger: LedgerSpec, reading: Reading) -> dict[str, Value | None]:
    return {
        "id": ledger.id,
        "name": ledger.name,
        "kind": ledger.kind.value,
        "unit": ledger.unit,
        **_ends("", reading.value),
        "sense": ledger.sense.value,
        **_ends("bound_", reading.bound),
        "level": ledger.level.value,
        "verdict": reading.verdict.value if reading.applies else "does not apply",
        "needs": view.lacks(reading.lacks),
        "assumes": "; ".join(view.catalogue.brief[key].ask for key in reading.assumed if key in view.catalogue.brief),
        "estimate": "ESTIMATE" if ledger.estimate else None,
        "source": ledger.source,
    }


def _ends(prefix: str, span: Span | None) -> Mapping[str, Value | None]:
    """Least and most. A bound below which or above which nothing is open-ended is left out."""
    if span is None:
        return {}
    return {f"{prefix}least": figure(span.least), f"{prefix}most": figure(span.most)}


def _price(view: SpecView) -> str:
    price = view.report.price
    values: dict[str, Value | None] = {
        "van": _VAN_WORDS[price.van_included],
        "net_least_pence": price.net.least,
        "net_most_pence": price.net.most,
        "vat_least_pence": price.vat.least,
        "vat_most_pence": price.vat.most,
        "gross_least_pence": price.gross.least,
        "gross_most_pence": price.gross.most,
        "still_open": view.lacks(price.lacks) or _NONE,
    }
    return table("price", values, remark=f"Computed. {view.catalogue.firm.currency}, fitted; gross is with tax.")


def _hours(view: SpecView) -> str:
    """Every reading that is counted in hours, by name."""
    values: dict[str, Value | None] = {}
    for ledger in view.catalogue.ledgers.values():
        reading = view.report.readings.get(ledger.id)
        if reading is not None and ledger.unit in _HOURS and reading.value is not None:
            name = ledger.id.replace("-", "_")
            values |= {f"{name}_least_h": figure(reading.value.least), f"{name}_most_h": figure(reading.value.most)}
    return table("hours", values or {"said": "NOT COMPUTED"}, remark="Computed. An estimate for the workshop's plan.")


def _steps(view: SpecView, chosen: tuple[Chosen, ...]) -> Iterator[str]:
    for step in view.catalogue.work.values():
        parts = view.names(c.choice.option for c in chosen if c.option and view.build_step(c.option) == step.id)
        values: dict[str, Value | None] = {
            "id": step.id,
            "work": step.work,
            "after": ", ".join(step.predecessors),
            "parts": parts,
            "hold_point": step.hold_point,
            "hold": step.hold_text,
            "pass": step.pass_figures,
            "freezes": "; ".join(step.freezes),
        }
        yield item("step", values)


def _findings(view: SpecView) -> Iterator[str]:
    found = [finding for finding in view.report.findings if finding.verdict is not Verdict.HOLDS]
    yield f"\n# What is broken, or cannot be told yet.{'' if found else ' None.'}\n"
    yield from (_finding(view, finding) for finding in found)


def _finding(view: SpecView, finding: Finding) -> str:
    catalogue = view.catalogue
    rule = catalogue.rules.get(finding.rule)
    ledger = catalogue.ledgers.get(finding.reading) if finding.reading else None
    verdict = f"{finding.verdict.value}, accepted" if finding.accepted else finding.verdict.value
    values: dict[str, Value | None] = {
        "rule": finding.rule,
        "level": finding.level.value,
        "verdict": verdict,
        "because": rule.because if rule else None,
        "choices": view.names(finding.subjects),
        "sum": ledger.name if ledger else None,
        "needs": view.lacks(finding.lacks),
    }
    return item("finding", values)


def _cautions(view: SpecView, chosen: Iterable[Chosen]) -> Iterator[str]:
    """The cautions of what is chosen, each once with everything it is about."""
    parts = [one.option for one in chosen if one.option is not None]
    for key, caution in view.catalogue.cautions.items():
        concerned = [option.id for option in parts if key in option.cautions]
        if concerned:
            names = view.names(concerned)
            values = {"text": caution.text, "by_whom": caution.who_must_do_or_sign, "for": names}
            yield item("caution", dict(values))


def _papers(view: SpecView, chosen: Iterable[Chosen]) -> Iterator[str]:
    """The papers others sign, each once with everything it is about."""
    parts = [one.option for one in chosen if one.option is not None]
    for key, paper in view.catalogue.papers.items():
        concerned = [option.id for option in parts if key in option.papers]
        if concerned:
            at = paper.at_hold_point
            values = {"name": paper.name, "signed_by": paper.signed_by, "at": at, "for": view.names(concerned)}
            yield item("paper", dict(values))


def _not_checked(view: SpecView) -> str:
    report, catalogue = view.report, view.catalogue
    sums = [catalogue.ledgers[key].name for key in report.silent_ledgers if key in catalogue.ledgers]
    rules = [catalogue.rules[key].because for key in report.silent_rules if key in catalogue.rules]
    remark = "Computed. Sums that are not made, and rules that therefore could not be heard: nothing is known of them."
    return table("not_checked", {"sums": sums or _NONE, "rules": rules or _NONE}, remark=remark)
