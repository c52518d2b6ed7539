"""The circuit schedule: every cable run of a spec with its section, its fuse and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .ids import OptionId
from .origin import NOWHERE, Origin


class CircuitCode(StrEnum):
    """What there is to say of one circuit. ``has`` and ``needs`` of the problem are in the unit named here."""

    TABLE_MISSING = "table-missing"
    """The catalogue lacks the table ``what``, or a row or column of it: nothing can be worked out."""
    RUN_MISSING = "run-missing"
    """The one-way run is no length a van can have; ``has`` in m."""
    RUN_BELOW_STRAIGHT_LINE = "run-below-straight-line"
    """The run, with those before it (``what``), is shorter (``has``) than the straight line (``needs``), m."""
    LOAD_MISSING = "load-missing"
    """The load is no current; ``has`` in A."""
    DROP_LIMIT_MISSING = "drop-limit-missing"
    """No share of the voltage is named that it may lose; ``has`` in %."""
    STATED_FIGURE_ABSURD = "stated-figure-absurd"
    """The section or fuse the catalogue states is none; ``has`` as it stands there."""
    EARTH_SECTION_MISSING = "earth-section-missing"
    """A bonding conductor whose part names no section."""
    NO_CABLE_FITS = "no-cable-fits"
    """No section of the tables keeps drop, load and fuse, not even two side by side; ``has`` is the thickest, mm2."""
    CABLES_SIDE_BY_SIDE = "cables-side-by-side"
    """No single cable does, equal ones side by side do: each carries ``has`` and must carry ``needs``, A."""
    OWN_CABLE_NOT_IN_TABLE = "own-cable-not-in-table"
    """The part's own section (``has``, mm2) is thinner than every section of the tables."""
    OWN_CABLE_SMALLER_THAN_COMPUTED = "own-cable-smaller-than-computed"
    """The part's own section (``has``) is thinner than the computed one (``needs``), mm2. It stands all the same."""
    OWN_FUSE_ABOVE_CABLE = "own-fuse-above-cable"
    """The part's own fuse (``has``) is more than its cable carries (``needs``), A."""
    OWN_FUSE_BELOW_LOAD = "own-fuse-below-load"
    """The part's own fuse (``has``) is less than a steady load needs (``needs``), A. It stands all the same."""
    NO_FUSE_IN_WINDOW = "no-fuse-in-window"
    """No rating lies between the load (``needs``) and what the part's own cable carries (``has``), A."""
    DROP_ABOVE_LIMIT = "drop-above-limit"
    """The part's own cable loses more (``has``) than it may (``needs``), V."""
    FUSE_WINDOW_EMPTY_UNTIL = "fuse-window-empty-until"
    """The section that drop and load ask for (``has``) has no fuse in its window: ``needs`` was taken, mm2."""
    HOT_CABLE_TAKEN = "hot-cable-taken"
    """Only cable whose insulation bears ``has`` degrees C carries it."""
    BREAKING_CAPACITY_TOO_SMALL = "breaking-capacity-too-small"
    """The fuse breaks less (``has``) than can flow there (``needs``), and none before it does better; kA."""
    BREAKING_BACKED_UP = "breaking-backed-up"
    """The fuse breaks less (``has``) than can flow there (``needs``), kA; the one of circuit ``what`` breaks it."""
    FUSE_KIND_MISSING = "fuse-kind-missing"
    """No kind of fuse of the tables goes up to this rating; ``has`` in A."""
    SHORT_CIRCUIT_UNKNOWN = "short-circuit-unknown"
    """What a short circuit may draw is not known: no battery, or none with that figure."""
    HEATER_START_VOLTAGE_LOW = "heater-start-voltage-low"
    """While the heater lights it gets less (``has``) than it should (``needs``), V."""
    OWN_PART_FIGURES = "own-part-figures"
    """The customer's own part: its load is the catalogue's, to be held against its plate."""
    BREAKER_ABOVE_FEED = "breaker-above-feed"
    """Its breaker (``has``) is larger than that of circuit ``what`` before it (``needs``), A: that one trips first."""
    FUSE_FROM_PART = "fuse-from-part"
    """Whether it has a fuse says the paper of the part."""


NOTES = frozenset(
    {
        CircuitCode.FUSE_WINDOW_EMPTY_UNTIL,
        CircuitCode.CABLES_SIDE_BY_SIDE,
        CircuitCode.HOT_CABLE_TAKEN,
        CircuitCode.BREAKING_BACKED_UP,
        CircuitCode.OWN_PART_FIGURES,
        CircuitCode.FUSE_FROM_PART,
        CircuitCode.BREAKER_ABOVE_FEED,
    }
)
"""What is said and needs no mending."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitProblem:
    """One thing to say of one circuit."""

    code: CircuitCode
    has: float | None = None
    needs: float | None = None
    what: str = ""

    @property
    def serious(self) -> bool:
        """True when somebody must settle it before the circuit is built."""
        return self.code not in NOTES


class CircuitBasis(StrEnum):
    """Where section and fuse come from: the sums, or what the catalogue states from the part's own paper."""

    COMPUTED = "computed"
    FUSE_STATED = "section computed, fuse as stated"
    SECTION_STATED = "section as stated, fuse computed"
    STATED = "as stated"


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitLine:
    """One cable run. A figure that is None could not be told; ``problems`` say why."""

    id: str
    """The circuit's id in the catalogue."""
    label: str
    """Marked on both ends: the id, and its number where the same run is there more than once. Unique in a schedule."""
    option: OptionId
    circuit: str
    from_point: str
    to_point: str
    bus: str
    """dc, vehicle, solar or 230, as the catalogue has it."""
    load_w: float
    load_a: float
    """What cable and fuse are sized for: the start of a heater, where that is more."""
    run_one_way_m: float
    drop_limit_pct: float | None
    volts_v: float | None = None
    """Of which the drop is a share."""
    area_mm2: float | None = None
    """Of each, where several lie side by side."""
    side_by_side: int = 1
    """So many equal cables, each end together, carry it."""
    insulation_c: float | None = None
    """What the insulation must bear, degrees C: the amps hold for no cooler one."""
    carries_a: float | None = None
    """After bundle, place and warmth; all that lie side by side together."""
    fuse_a: float | None = None
    """None as well where it has no fuse of its own: see ``fuse_place``."""
    fuse_kind: str = ""
    fuse_place: str = ""
    breaking_needed_ka: float | None = None
    """None where nothing is known of it: mains, and what the vehicle's own wiring feeds."""
    breaking_ka: float | None = None
    drop_v: float | None = None
    drop_pct: float | None = None
    start_v: float | None = None
    """At a heater while it lights; None for anything else."""
    basis: CircuitBasis = CircuitBasis.COMPUTED
    estimate: bool = True
    """False only where section and fuse are both stated."""
    problems: tuple[CircuitProblem, ...] = ()
    origin: Origin = NOWHERE

    @property
    def is_mains(self) -> bool:
        """True on the 230 V side."""
        return self.bus == "230"

    @property
    def serious(self) -> tuple[CircuitProblem, ...]:
        """What must be settled before it is built."""
        return tuple(problem for problem in self.problems if problem.serious)
