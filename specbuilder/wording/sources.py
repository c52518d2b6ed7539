"""Where the numbers come from: the page of all sums and formulas, and one formula by itself."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import LedgerKind, Sense
from specbuilder.model.ledger import LedgerSpec
from specbuilder.model.sources import FormulaText

from .names import listed
from .plain import ended, raised

_SENSE = {Sense.AT_MOST: "at most ", Sense.AT_LEAST: "at least ", Sense.SHOWN: ""}
_SCHEDULE = "the circuit schedule"


def sources_page(catalogue: Catalogue, formulas: tuple[FormulaText, ...]) -> tuple[str, ...]:
    """The whole page as Markdown, line by line."""
    return (
        "# Sources",
        "",
        "Written by the program from its own formulas and the tables of the catalogue; do not edit it by hand.",
        "",
        "Every number is a planning figure. *Verified* was read in its source or in a faithful copy of it (*second "
        "hand* where it was quoted there), *known* is ordinary physics or trade practice, *estimate* is the house's "
        "own. The part's own papers, the law in force and the standard as bought go before every line here.",
        "",
        "## Ledgers and figures",
        "",
        *_ledger_table(catalogue),
        "",
        "## To be checked",
        "",
        *_checks(formulas),
        "",
        *_formula_sections(formulas),
    )


def how_to_ask() -> str:
    """The line above the page on a screen."""
    return "One of them by itself: specbuilder sources NAME, the id of a ledger or figure or the name of a formula."


def ledger_lines(catalogue: Catalogue, spec: LedgerSpec, formulas: tuple[FormulaText, ...]) -> tuple[str, ...]:
    """One ledger or figure part by part, one line each; then the formulas it uses."""
    of = catalogue.ledgers[spec.part_of] if spec.part_of is not None else None
    used = tuple(one for one in formulas if spec.id in one.used_by)
    return (
        f"{spec.name} ({spec.id}){f', in {spec.unit}' if spec.unit else ''}",
        *((f"Told beside: {of.name} ({of.id})",) if of is not None else ()),
        f"Formula: {ended(spec.formula)}",
        f"Bound: {ended(_bound(spec))}",
        f"Source: {ended(spec.source)}",
        f"Confidence: {spec.confidence.value}.",
        f"Uses: {ended(listed(one.name for one in used) or 'no equation of its own, it adds what the choices bring')}",
        *(f"{one.name} ({one.module}): {one.says} Equation: {ended(one.equation)}" for one in used),
    )


def formula_lines(formula: FormulaText) -> tuple[str, ...]:
    """One formula part by part, one line each."""
    return (
        f"{formula.name} ({formula.module})",
        formula.says,
        f"Result: {ended(formula.result or 'a word, or nothing')}",
        f"Numbers in: {ended(listed(formula.parameters) or 'none')}",
        f"Equation: {ended(formula.equation)}",
        f"Holds for: {ended(formula.valid)}",
        f"Source: {ended(formula.source)}",
        f"Confidence: {ended(formula.confidence)}",
        *((f"Check: {ended(raised(formula.check))}",) if formula.check else ()),
        f"Used by: {ended(_used(formula))}",
    )


def _ledger_table(catalogue: Catalogue) -> Iterator[str]:
    yield "| id | name | formula | bound | source | confidence |"
    yield "|---|---|---|---|---|---|"
    for kind in (LedgerKind.LEDGER, LedgerKind.FIGURE):
        for spec in catalogue.ledgers.values():
            if spec.kind is kind:
                yield _ledger_row(spec)


def _ledger_row(spec: LedgerSpec) -> str:
    name = f"{spec.name}, {spec.unit}" if spec.unit else spec.name
    told = f"beside `{spec.part_of}`: {spec.formula}" if spec.part_of else spec.formula
    return _row(f"`{spec.id}`", name, told, _bound(spec), spec.source, spec.confidence.value)


def _bound(spec: LedgerSpec) -> str:
    return f"{_SENSE[spec.sense]}{spec.bound}" if spec.bound else "none, it is shown"


def _row(*cells: str) -> str:
    return f"| {' | '.join(cell.replace('|', '/').replace('*', '×') for cell in cells)} |"


def _checks(formulas: tuple[FormulaText, ...]) -> Iterator[str]:
    yield "Against the bought standard, the regulation or the authority:"
    yield ""
    yield from (_check(one) for one in formulas if one.check and one.against_standard)
    yield ""
    yield "Against the part's or the van's own papers, or on the finished van:"
    yield ""
    yield from (_check(one) for one in formulas if one.check and not one.against_standard)


def _check(formula: FormulaText) -> str:
    return f"- `{formula.name}` ({formula.source}): {ended(formula.check)}"


def _formula_sections(formulas: tuple[FormulaText, ...]) -> Iterator[str]:
    yield "## Formulas"
    module = ""
    for formula in formulas:
        if formula.module != module:
            module = formula.module
            yield ""
            yield f"### {module}.py"
        yield ""
        yield from _section(formula)


def _section(formula: FormulaText) -> Iterator[str]:
    yield f"#### {formula.name}"
    yield ""
    yield formula.says
    yield ""
    for line in formula_lines(formula)[2:]:
        label, _, words = line.partition(": ")
        yield f"- *{label}*: {words}"


def _used(formula: FormulaText) -> str:
    users = [*formula.used_by, *((_SCHEDULE,) if formula.schedule else ())]
    if users:
        return listed(users)
    if formula.kept:
        return f"nothing yet; kept for the {formula.kept}"
    return f"formulas {listed(formula.used_in)}" if formula.used_in else "nothing"
