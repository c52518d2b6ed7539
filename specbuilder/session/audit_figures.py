"""Figures of the catalogue that cannot be right, and those without which a sum cannot be made."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.calc.limits.doubts import doubts_of
from specbuilder.calc.limits.missing import Gap, missing_of
from specbuilder.model.audit import Lint, LintCode
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.parts import Circuit
from specbuilder.model.plausible import Range

LENGTH_M = Range(0, 30, open=True)
"""One way, of a cable in a van."""
LOAD_A = Range(0, 1_000, open=True)
FUSE_A = Range(0, 1_000, open=True)
AREA_MM2 = Range(0, 500, open=True)
DROP_PCT = Range(0, 20, open=True)


def figure_lints(catalogue: Catalogue) -> Iterator[Lint]:
    """By the order of the files; what is kept to be refused is not looked at."""
    doubts = doubts_of(catalogue)
    for option in catalogue.options.values():
        if option.refused:
            continue
        for doubt in doubts.get(option.id, ()):
            yield _outside(option, doubt.key, doubt.value, doubt.range)
        yield from (_missing(option, keys) for keys in _lacking(option))
        for circuit in option.circuits:
            yield from _circuit(option, circuit)


def _outside(option: Option, key: str, value: float, bounds: Range, circuit: Circuit | None = None) -> Lint:
    return Lint(
        code=LintCode.IMPLAUSIBLE,
        subject=option.id,
        field=key if circuit is None else f"{circuit.id}.{key}",
        value=value,
        least=bounds.least,
        most=bounds.most,
        above=bounds.open,
        origin=option.origin if circuit is None or not circuit.origin.file else circuit.origin,
    )


def _missing(option: Option, keys: str) -> Lint:
    return Lint(code=LintCode.FIGURE_MISSING, subject=option.id, field=keys, origin=option.origin)


def _lacking(option: Option) -> Iterator[str]:
    for at, gap in enumerate(missing_of(option)):
        keys = ", ".join(_not_given(option, gap))
        if keys or at == 0:
            yield keys or gap.keys


def _not_given(option: Option, gap: Gap) -> Iterator[str]:
    """The keys of a gap under which there is nothing, or nought."""
    for key in gap.keys.split(", "):
        table, _, name = key.partition(".")
        if not getattr(getattr(option, table), name):
            yield key


def _circuit(option: Option, circuit: Circuit) -> Iterator[Lint]:
    """A run without length, a load of nought that is to be fused, and what its paper states when that is none."""
    fused = circuit.own_fuse_a is not None or circuit.drop_limit_pct is not None
    figures: tuple[tuple[str, float | None, Range], ...] = (
        ("run_one_way_m", circuit.run_one_way_m, LENGTH_M),
        ("load_a", circuit.load_a if fused else None, LOAD_A),
        ("drop_limit_pct", circuit.drop_limit_pct, DROP_PCT),
        ("own_fuse_a", circuit.own_fuse_a, FUSE_A),
        ("own_area_mm2", circuit.own_area_mm2, AREA_MM2),
    )
    for key, value, bounds in figures:
        if value is not None and not bounds.holds(value):
            yield _outside(option, key, value, bounds, circuit)
