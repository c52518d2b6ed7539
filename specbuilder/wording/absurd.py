"""Figures of the catalogue that cannot be right, as one spec meets them."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitCode
from specbuilder.model.report import Report

from .circuits import problem_line
from .ledger_detail import outside_words

_OF_THE_FILE = frozenset(
    {
        CircuitCode.RUN_MISSING,
        CircuitCode.LOAD_MISSING,
        CircuitCode.DROP_LIMIT_MISSING,
        CircuitCode.STATED_FIGURE_ABSURD,
    }
)


def absurd_lines(catalogue: Catalogue, report: Report) -> tuple[str, ...]:
    """Each figure once: ``To mend: ...``, with the ledgers that say nothing because of it.

    A blank on a customer's sheet is an open question, and nothing to be mended in the catalogue.
    """
    silent: dict[str, list[str]] = {}
    for reading in report.readings.values():
        if reading.outside is not None and not reading.outside.sheet:
            words = outside_words(catalogue, reading.outside)
            silent.setdefault(words, []).append(catalogue.ledgers[reading.id].name)
    found = [f"To mend: {words} It concerns: {'; '.join(names)}." for words, names in silent.items()]
    found += (
        f"To mend: {problem_line(line, problem)}"
        for line in report.circuits
        for problem in line.problems
        if problem.code in _OF_THE_FILE
    )
    return tuple(dict.fromkeys(found))
