"""The catalogue's tables as the circuit schedule needs them, read once for each catalogue."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from specbuilder.model.catalogue import Catalogue

ANY = "any"
"""``any dc`` is the row for every other start on that bus."""


@dataclass(frozen=True, slots=True)
class TableLack:
    """A table that is missing, or that lacks a column or a row the schedule cannot do without."""

    table: str


@dataclass(frozen=True, slots=True)
class Section:
    """One thickness of 12 V cable."""

    area_mm2: float
    r20_mohm_per_m: float
    amps: Mapping[float, float]
    """In free air at 30 degrees, by the warmth the insulation bears (70, 105 degrees C)."""


@dataclass(frozen=True, slots=True)
class Cord:
    """One thickness of mains cable."""

    area_mm2: float
    amps: float
    drop_mv_per_a_m: float
    wall_amps: float | None
    """In conduit in an insulated wall; None where that table does not know it."""


@dataclass(frozen=True, slots=True)
class Start:
    """How a cable that starts at one point is run and protected."""

    feeds: str
    together: float
    place: str
    fuse: str
    fuse_place: str


@dataclass(frozen=True, slots=True)
class FuseKind:
    """One kind of fuse."""

    kind: str
    series: str
    breaking_ka: float
    largest_a: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitTables:
    """All of it."""

    sections: tuple[Section, ...]
    """Thinnest first, none below the least conductor."""
    cords: tuple[Cord, ...]
    bundles: tuple[tuple[float, float], ...]
    places: Mapping[str, float]
    cord_warmth: tuple[tuple[float, float], ...]
    rho: Mapping[float, float]
    starts: Mapping[str, Start]
    ratings_a: Mapping[str, tuple[float, ...]]
    """By series."""
    breakers: tuple[float, ...]
    breaker_kind: str
    kinds: tuple[FuseKind, ...]
    main_kinds: Mapping[str, str]
    """By chemistry."""
    fuse_rules: Mapping[str, float]
    settings: Mapping[str, float]
    loaded_v: Mapping[str, float]
    """Of a battery under a large load, by chemistry."""

    def start(self, from_point: str, bus: str) -> Start | None:
        """How a cable from there is run; None where the table knows neither the point nor the bus."""
        return self.starts.get(from_point) or self.starts.get(f"{ANY} {bus}")


class _LackError(Exception):
    def __init__(self, table: str) -> None:
        super().__init__(table)
        self.table = table


_NEEDED_SETTINGS = (
    "volts of the 12 V side",
    "volts of the mains",
    "open volts of a 12 V battery",
    "warmth of the conductor for the drop in degrees",
    "warmth of the conductor for a short circuit in degrees",
    "least 12 V conductor in mm2",
    "least mains conductor in mm2",
    "warmth around mains cords in degrees",
    "least volts at a heater that lights",
    "short circuit of a starter battery in kA",
)
_NEEDED_RULES = ("least fuse over steady load", "least breaker over steady load")


@lru_cache(maxsize=4)
def circuit_tables(catalogue: Catalogue) -> CircuitTables | TableLack:
    """The tables of this catalogue, or the first that lacks something."""
    try:
        return _read(catalogue)
    except _LackError as lack:
        return TableLack(lack.table)


def _read(catalogue: Catalogue) -> CircuitTables:
    rows = _Rows(catalogue)
    settings = rows.keyed("cable-settings", _NEEDED_SETTINGS)
    rho = {rows.number("copper", row[0]): rows.number("copper", row[1]) for row in rows.of("copper", *_COPPER)}
    for figure in (
        "warmth of the conductor for the drop in degrees",
        "warmth of the conductor for a short circuit in degrees",
    ):
        if settings[figure] not in rho:
            raise _LackError("copper")
    series: dict[str, list[float]] = {}
    for kind, rating in rows.of("fuse-ratings", "kind", "rating_a"):
        series.setdefault(str(kind), []).append(rows.number("fuse-ratings", rating))
    breakers = rows.of("breaker-ratings", "kind", "rating_a")
    return CircuitTables(
        sections=_sections(rows, settings["least 12 V conductor in mm2"]),
        cords=_cords(rows, settings["least mains conductor in mm2"]),
        bundles=rows.pairs("bundle-factors", "cables_from", "share"),
        places={str(p): rows.number("place-factors", s) for p, s in rows.of("place-factors", "place", "share")},
        cord_warmth=rows.pairs("mains-cord-warmth", "temperature_c", "share"),
        rho=rho,
        starts={
            str(row[0]): Start(str(row[1]), rows.number("cable-starts", row[2]), str(row[3]), str(row[4]), str(row[5]))
            for row in rows.of("cable-starts", "start", "feeds", "cables_together", "place", "fuse", "fuse_place")
        },
        ratings_a={kind: tuple(sorted(found)) for kind, found in series.items()},
        breakers=tuple(sorted(rows.number("breaker-ratings", rating) for _, rating in breakers)),
        breaker_kind=str(breakers[0][0]),
        kinds=tuple(
            FuseKind(str(row[0]), str(row[1]), *(rows.number("fuse-breaking", n) for n in row[2:]))
            for row in rows.of("fuse-breaking", "kind", "series", "breaking_ka", "largest_a")
        ),
        main_kinds={str(chemistry): str(kind) for chemistry, kind in rows.of("main-fuses", "chemistry", "kind")},
        fuse_rules=rows.keyed("fuse-rules", _NEEDED_RULES),
        settings=settings,
        loaded_v={
            str(c): rows.number("battery-kinds", v) for c, v in rows.of("battery-kinds", "chemistry", "loaded_v")
        },
    )


_COPPER = ("temperature_c", "rho_ohm_mm2_per_m")


def _sections(rows: _Rows, least_mm2: float) -> tuple[Section, ...]:
    found = [
        Section(numbers[0], numbers[1], {70.0: numbers[2], 105.0: numbers[3]})
        for row in rows.of("conductors", "area_mm2", "r20_mohm_per_m", "amps_70c", "amps_105c")
        if (numbers := [rows.number("conductors", cell) for cell in row])[0] >= least_mm2
    ]
    return tuple(sorted(found, key=lambda section: section.area_mm2))


def _cords(rows: _Rows, least_mm2: float) -> tuple[Cord, ...]:
    walls = dict(rows.pairs("mains-in-walls", "area_mm2", "amps_in_conduit_in_wall"))
    found = [
        Cord(numbers[0], numbers[1], numbers[2], walls.get(numbers[0]))
        for row in rows.of("mains-cords", "area_mm2", "amps", "drop_mv_per_a_m")
        if (numbers := [rows.number("mains-cords", cell) for cell in row])[0] >= least_mm2
    ]
    return tuple(sorted(found, key=lambda cord: cord.area_mm2))


class _Rows:
    """Columns of a table by name."""

    def __init__(self, catalogue: Catalogue) -> None:
        self._tables = catalogue.tables

    def of(self, table: str, *columns: str) -> list[tuple[str | float, ...]]:
        """Every row, these columns of it."""
        found = self._tables.get(table)
        if found is None or not found.rows:
            raise _LackError(table)
        at = {column.key: number for number, column in enumerate(found.columns)}
        if any(column not in at for column in columns):
            raise _LackError(table)
        return [tuple(row[at[column]] for column in columns) for row in found.rows]

    def pairs(self, table: str, *columns: str) -> tuple[tuple[float, float], ...]:
        """Two columns of numbers."""
        return tuple((self.number(table, a), self.number(table, b)) for a, b in self.of(table, *columns))

    def keyed(self, table: str, needed: tuple[str, ...]) -> dict[str, float]:
        """A table of figures by name, with all that are needed."""
        found = {str(figure): self.number(table, value) for figure, value in self.of(table, "figure", "value")}
        if any(figure not in found for figure in needed):
            raise _LackError(table)
        return found

    def number(self, table: str, cell: str | float) -> float:
        """A cell that must hold a number."""
        if isinstance(cell, str):
            raise _LackError(table)
        return float(cell)
