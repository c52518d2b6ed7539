"""The circuit schedule in words: a plain table, where the fuses stand, and a sentence for every problem."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from specbuilder.model.circuits import CircuitCode, CircuitLine, CircuitProblem

from .names import listed
from .plain import ended, raised
from .quantities import as_written, number_text, unit_text

CAUTION = (
    "Proposals for these loads, runs and bundles (ESTIMATE). The part's own paper goes first, the installer confirms "
    "on the van, and a competent electrician inspects and tests 230 V and signs for it before first use."
)
_HEAD = ("Mark", "Circuit", "Load", "Run", "Cable", "Fuse", "Drop", "From and to")
_NOTHING = "-"
_DATA = (
    CircuitCode.RUN_MISSING,
    CircuitCode.LOAD_MISSING,
    CircuitCode.DROP_LIMIT_MISSING,
    CircuitCode.STATED_FIGURE_ABSURD,
    CircuitCode.EARTH_SECTION_MISSING,
)
"""What is mended in the file of the circuit."""


def circuit_lines(lines: tuple[CircuitLine, ...], mains: tuple[str, ...] = ()) -> tuple[str, ...]:
    """All of the schedule: 12 V before mains, then the places of the fuses, what to settle, what to mind.

    ``mains`` is what is said of the protection of the 230 V side.
    """
    if not lines:
        return ("No cable is run by what is chosen.", *mains)
    low, high = sides(lines)
    told = [*_table("12 V", low), *_table("230 V", high), *_places(lines)]
    told += (f"To settle: {ended(sentence)}" for sentence in problem_sentences(lines, serious=True))
    told += (f"Mind: {ended(sentence)}" for sentence in problem_sentences(lines, serious=False))
    return (*told, *mains, CAUTION)


def sides(lines: tuple[CircuitLine, ...]) -> tuple[tuple[CircuitLine, ...], tuple[CircuitLine, ...]]:
    """Those of 12 V and those of mains."""
    return tuple(line for line in lines if not line.is_mains), tuple(line for line in lines if line.is_mains)


def circuit_name(line: CircuitLine) -> str:
    """``fridge (fridge-drawer-c1)``."""
    return f"{line.circuit} ({line.label})"


def problem_line(line: CircuitLine, problem: CircuitProblem) -> str:
    """One problem of one circuit, with the file where its figures stand when those are to be mended."""
    return ended(f"{_subject(line, problem)}: {said_of(problem)}")


def _table(name: str, lines: tuple[CircuitLine, ...]) -> Iterator[str]:
    if not lines:
        return
    rows = [_HEAD, *(_row(line) for line in lines)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEAD))]
    yield f"{name}: {len(lines)} runs" if len(lines) != 1 else f"{name}: 1 run"
    for row in rows:
        yield "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()


def _row(line: CircuitLine) -> tuple[str, ...]:
    return (
        line.label,
        line.circuit,
        amount(line.load_a, "A", 1),
        amount(line.run_one_way_m, "m"),
        cable_words(line),
        fuse_words(line),
        drop_words(line),
        f"{line.from_point} > {line.to_point}",
    )


def cable_words(line: CircuitLine) -> str:
    """``2.5 mm²``, ``2 x 95 mm²``; the warmth its insulation must bear where common cable would not do."""
    if line.area_mm2 is None:
        return "not known"
    area = amount(line.area_mm2, "mm2", 2)
    if line.side_by_side > 1:
        area = f"{line.side_by_side} x {area}"
    hot = [problem for problem in line.problems if problem.code is CircuitCode.HOT_CABLE_TAKEN]
    return f"{area}, {amount(hot[0].has, 'C')}" if hot else area


def drum_words(line: CircuitLine) -> str:
    """``2 x 95 mm², 70 °C``: section and what the insulation bears, whatever cable is common."""
    section = cable_words(line).partition(", ")[0]
    return section if line.insulation_c is None else f"{section}, {amount(line.insulation_c, 'C')}"


def fuse_words(line: CircuitLine) -> str:
    """``7.5 A blade``; ``-`` where it has none of its own."""
    if line.fuse_a is None:
        return "not known" if line.area_mm2 is None and line.load_a else _NOTHING
    return f"{amount(line.fuse_a, 'A', 1)} {line.fuse_kind}".rstrip()


def drop_words(line: CircuitLine) -> str:
    """``0.24 V (2 %)``."""
    if line.drop_v is None or line.drop_pct is None:
        return _NOTHING
    return f"{amount(line.drop_v, 'V', 1)} ({amount(line.drop_pct, '%')})"


def _places(lines: tuple[CircuitLine, ...]) -> Iterator[str]:
    """Where fuses stand, each place once."""
    places: dict[str, list[str]] = {}
    for line in lines:
        place = f"Fuse {line.fuse_place}" if line.fuse_a is not None else f"No fuse worked out, {line.fuse_place}"
        if line.fuse_place:
            places.setdefault(place, []).append(line.label)
    for place, labels in places.items():
        yield f"{place}: {listed(labels)}."


def problem_sentences(lines: tuple[CircuitLine, ...], *, serious: bool) -> Iterator[str]:
    """Each sentence once, with all circuits it is true of."""
    subjects: dict[str, list[str]] = {}
    for line in lines:
        for problem in line.problems:
            if problem.serious is serious:
                subjects.setdefault(said_of(problem), []).append(_subject(line, problem))
    for sentence, found in subjects.items():
        yield f"{raised(listed(found))}: {sentence}"


def _subject(line: CircuitLine, problem: CircuitProblem) -> str:
    at_fault = problem.code in _DATA and line.origin.file
    return f"{circuit_name(line)} in {line.origin}" if at_fault else circuit_name(line)


def said_of(problem: CircuitProblem) -> str:
    """The sentence of one problem, without its circuit."""
    has, needs, what = problem.has, problem.needs, problem.what
    match problem.code:
        case CircuitCode.TABLE_MISSING:
            return f"nothing can be worked out, because the rules lack a usable table for it ({what})"
        case CircuitCode.RUN_MISSING:
            return f"a one-way run of {as_written(has)} m is no length of a cable in a van: correct it"
        case CircuitCode.LOAD_MISSING:
            return f"a load of {as_written(has)} A is no load that can be sized for: correct it"
        case CircuitCode.DROP_LIMIT_MISSING:
            return f"the share of the voltage it may lose is {as_written(has)}: name one in percent"
        case CircuitCode.STATED_FIGURE_ABSURD:
            return f"the section or fuse stated for it is {as_written(has)}: correct it, or leave it out"
        case CircuitCode.EARTH_SECTION_MISSING:
            return "a bonding conductor needs its section stated; it is never computed"
        case CircuitCode.NO_CABLE_FITS:
            return (
                f"no cable up to {amount(has, 'mm2', 2)} keeps load, fuse and drop, nor do two side by side where "
                "such may be run: a busbar or a higher voltage, by the electrician and the part's own paper"
            )
        case CircuitCode.CABLES_SIDE_BY_SIDE:
            return (
                "no single cable keeps load, fuse and drop, so equal cables side by side are proposed (ESTIMATE): same "
                "section and length, same lugs, each end together on one bolt, laid their own thickness apart; each "
                f"carries {amount(has, 'A', 1)} and must carry {amount(needs, 'A', 1)}, its share of the fuses. The "
                "electrician decides, and looks at every lug: one that comes off leaves all of it to the other"
            )
        case CircuitCode.OWN_CABLE_NOT_IN_TABLE:
            return f"nothing is known of the {amount(has, 'mm2', 2)} its paper asks for: it is thinner than any listed"
        case CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED:
            return (
                f"its paper asks for {amount(has, 'mm2', 2)} and the sum for {amount(needs, 'mm2', 2)}: read that "
                "paper again for load, length and bundle"
            )
        case CircuitCode.OWN_FUSE_ABOVE_CABLE:
            return f"a fuse of {amount(has, 'A', 1)} does not protect a cable that carries {amount(needs, 'A', 1)}"
        case CircuitCode.OWN_FUSE_BELOW_LOAD:
            return f"the stated {amount(has, 'A', 1)} may blow at a steady load, which asks for {amount(needs, 'A', 1)}"
        case CircuitCode.NO_FUSE_IN_WINDOW:
            return (
                f"no rating lies between the {amount(needs, 'A', 1)} the load asks for and the {amount(has, 'A', 1)} "
                "the stated cable carries: take a thicker one"
            )
        case CircuitCode.DROP_ABOVE_LIMIT:
            return f"the stated cable loses {amount(has, 'V', 1)}, and only {amount(needs, 'V', 1)} may be lost"
        case CircuitCode.FUSE_WINDOW_EMPTY_UNTIL:
            return (
                f"{amount(has, 'mm2', 2)} would carry the load and have no fuse that protects it: "
                f"{amount(needs, 'mm2', 2)} was taken"
            )
        case CircuitCode.HOT_CABLE_TAKEN:
            return f"cable whose insulation bears {amount(has, 'C')}, and no other, carries this"
        case CircuitCode.BREAKING_CAPACITY_TOO_SMALL:
            return (
                f"the fuse breaks {amount(has, 'kA')}, and {amount(needs, 'kA')} can flow there: "
                "feed it from behind a fuse that breaks more"
            )
        case CircuitCode.BREAKING_BACKED_UP:
            return (
                f"the fuse breaks {amount(has, 'kA')} of the {amount(needs, 'kA')} that can flow there; that of "
                f"{what} before it breaks the rest, if the electrician confirms that the two go together"
            )
        case CircuitCode.FUSE_KIND_MISSING:
            return f"no kind of fuse in the tables goes up to {amount(has, 'A', 1)}"
        case CircuitCode.SHORT_CIRCUIT_UNKNOWN:
            return "what the fuse must break is not known, because no leisure battery with that figure is chosen"
        case CircuitCode.HEATER_START_VOLTAGE_LOW:
            left = "too little" if has is None else f"only {amount(has, 'V', 1)}"
            return f"while it lights {left} reaches it, and it should have {amount(needs, 'V', 1)}"
        case CircuitCode.OWN_PART_FIGURES:
            return "sized for the catalogue's load, since the customer's part has no sheet: hold it against its plate"
        case CircuitCode.RUN_BELOW_STRAIGHT_LINE:
            return _too_short(problem)
        case CircuitCode.BREAKER_ABOVE_FEED:
            return (
                f"its breaker of {amount(has, 'A', 1)} stands behind one of {amount(needs, 'A', 1)} ({what}), which "
                "trips first: which ratings go in is to be settled by the electrician"
            )
        case CircuitCode.FUSE_FROM_PART:
            return "whether it has a fuse of its own says the paper of the part"
        case _:
            assert_never(problem.code)


def _too_short(problem: CircuitProblem) -> str:
    """A run, or several one behind the other, that cannot reach."""
    measure = "measure before it is cut, and the electrician sizes it anew for the length that is measured"
    if not problem.what:
        run = f"its run of {amount(problem.has, 'm')} is shorter than the straight line between its ends"
        return f"{run}, {amount(problem.needs, 'm')}: {measure}"
    runs = f"its run and those before it, {listed(problem.what.split(', '))}, are {amount(problem.has, 'm')} in all"
    return f"{runs}, shorter than the straight line between the ends, {amount(problem.needs, 'm')}: {measure}"


def amount(value: float | None, unit: str, extra_decimals: int = 0) -> str:
    """The number with its unit, as fine as cables are bought; 2.5 mm² never becomes 3."""
    if value is None:
        return _NOTHING
    number = number_text(value, unit, extra_decimals)
    return f"{number} {unit_text(unit, number)}"
