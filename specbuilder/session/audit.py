"""Second look at a catalogue that reads without faults: what is odd, unexplained, unused or not summed.

Every lint is a place to look at again, never a reason not to start.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from types import MappingProxyType

from specbuilder.calc import missing_settings
from specbuilder.calc.order.supply import HOUSE_SUPPLIES
from specbuilder.calc.room.beds import FROM_BENCH
from specbuilder.calc.weights.roof import LIFTS
from specbuilder.model.audit import Lint, LintCode
from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BASE_VAN_GROUP, CUSTOMER_PART, LedgerId, RuleId, Tag
from specbuilder.model.kinds import Level, Pick
from specbuilder.model.origin import Origin
from specbuilder.model.own_parts import FRONT_DOOR
from specbuilder.model.rules import Atom, Given, Not, Rule
from specbuilder.model.vans import Van
from specbuilder.rulegraph.judge import hearing

from .audit_figures import figure_lints
from .audit_reach import reach_lints
from .evaluate import MADE

_ASKED_BY_SUMS = (CUSTOMER_PART, FROM_BENCH, FRONT_DOOR, HOUSE_SUPPLIES, LIFTS)
"""Capabilities the calculations look for themselves."""

_USUAL_RANGE: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "_net_pence": (0, 3_000_000),
        "_above_roof_mm": (0, 1_500),
        "_x_mm": (-3_000, 6_000),
        "_y_mm": (-1_200, 1_200),
        "_z_mm": (-800, 3_200),
        "_mm": (0, 6_500),
        "_mm2": (0, 400_000),
        "_cm2": (0, 2_500),
        "_kg": (0, 400),
        "_weeks": (0, 30),
        "_w_per_k": (-60, 60),
        "_w": (0, 5_000),
        "_kw": (0, 10),
        "_ah": (0, 600),
        "_v": (0, 150),
        "_ka": (0, 20),
        "_wh": (0, 500),
        "_l": (0, 150),
        "_kg_per_l": (0.5, 1.2),
        "_l_per_h": (0, 2),
        "_share": (0, 1),
        "_h": (0, 120),
        "_a": (0, 400),
        "_m": (0, 30),
        "_pct": (0, 10),
        "_m2": (1, 40),
    }
)
"""Least and most that a figure can sensibly be, by the unit at the end of its key; the longest ending counts."""

_OWN_RANGE: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "x_mm": (-3_000, 6_000),
        "y_mm": (-1_200, 1_200),
        "z_mm": (-800, 3_200),
        "mass_kg": (-80, 400),
        "bench_shift_mm": (-500, 500),
        "plate_raise_kg": (0, 1_500),
        "rear_axle_raise_kg": (0, 1_000),
        "inverter_surge_w": (0, 10_000),
        "bms_peak_a": (0, 1_200),
        "hours_summer": (0, 24),
        "hours_winter": (0, 24),
        "duty_summer": (0, 1),
        "duty_winter": (0, 1),
        "depth_of_discharge": (0.3, 1),
        "inverter_efficiency": (0.7, 1),
        "belts": (0, 4),
        "berths_down": (0, 4),
        "berths_up": (0, 4),
        "max_count": (1, 20),
        "heat_loss_down_w_per_k": (-60, 60),
        "heat_loss_up_w_per_k": (-60, 60),
    }
)
"""Ranges of keys whose unit alone says too little."""

_VAN_RANGE: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "m_max_kg": (1_500, 7_500),
        "f_max_kg": (700, 3_500),
        "r_max_kg": (700, 5_000),
        "mro_kg": (1_000, 5_000),
        "mro_front_kg": (500, 3_000),
        "mro_rear_kg": (400, 3_000),
        "wheelbase_mm": (2_000, 5_000),
        "length_mm": (3_500, 8_000),
        "width_mm": (1_500, 2_300),
        "height_mm": (1_600, 3_200),
        "price_net_supplied_pence": (500_000, 15_000_000),
        "rear_axle_x_mm": (0, 5_000),
        "rear_sill_x_mm": (1_000, 6_500),
        "track_mm": (1_200, 2_000),
        "tank_l": (0, 200),
        "fuel_density_kg_per_l": (0, 1),
        "lead_weeks": (0, 60),
        "ua_w_per_k": (10, 150),
    }
)


def lints(catalogue: Catalogue, cased: frozenset[RuleId] | None = None) -> tuple[Lint, ...]:
    """Everything worth a second look, by kind and then in the order of the files.

    ``cased``: the rules that have a case; None: nobody looked.
    """
    impossible = tuple(figure_lints(catalogue))
    found = (
        *reach_lints(catalogue),
        *_without_case(catalogue, cased),
        *_lacking(catalogue),
        *_zeros(catalogue),
        *impossible,
        *_implausible(catalogue, frozenset((one.subject, one.field.rpartition(".")[2]) for one in impossible)),
        *_unexplained(catalogue),
        *_without_fix(catalogue),
        *_without_usual(catalogue),
        *_unused_tags(catalogue),
        *_silent(catalogue),
    )
    kinds = tuple(LintCode)
    return tuple(sorted(found, key=lambda lint: kinds.index(lint.code)))


def _without_case(catalogue: Catalogue, cased: frozenset[RuleId] | None) -> Iterator[Lint]:
    """Rules that are heard and that no case breaks and mends."""
    for rule in catalogue.rules.values():
        if cased is not None and rule.id not in cased and hearing(rule).heard(MADE):
            yield _lint(LintCode.NO_CASE, rule.id, rule.origin)


def _lacking(catalogue: Catalogue) -> Iterator[Lint]:
    for ledger, setting in missing_settings(catalogue):
        yield _lint(LintCode.SETTING_MISSING, ledger, catalogue.ledgers[ledger].origin, setting)


def _zeros(catalogue: Catalogue) -> Iterator[Lint]:
    for option in catalogue.options.values():
        if option.van is not None or option.is_none or option.refused or option.zero_note:
            continue
        if option.price_net_pence == 0:
            yield _lint(LintCode.ZERO_WITHOUT_NOTE, option.id, option.origin, "price_net_pence")
        if option.mass_kg == 0:
            yield _lint(LintCode.ZERO_WITHOUT_NOTE, option.id, option.origin, "mass_kg")


def _implausible(catalogue: Catalogue, told: frozenset[tuple[str, str]]) -> Iterator[Lint]:
    """Figures that are unusual; what cannot be right is ``told`` already, by option and key."""
    for option in catalogue.options.values():
        if option.refused:
            continue
        own = {**_OWN_RANGE, **_VAN_RANGE} if option.van is not None else _OWN_RANGE
        for key, value, origin in _numbers(option, option.origin):
            bounds = _range(key, own)
            if (option.id, key) in told:
                continue
            if bounds is not None and not bounds[0] <= value <= bounds[1]:
                yield Lint(
                    code=LintCode.IMPLAUSIBLE,
                    subject=option.id,
                    field=key,
                    value=value,
                    least=bounds[0],
                    most=bounds[1],
                    origin=origin,
                )


def _numbers(record: object, origin: Origin) -> Iterator[tuple[str, float, Origin]]:
    """Every number of a record and of the records in it, by its key; what is left out of the file is skipped."""
    if not is_dataclass(record):
        return
    for field in fields(record):
        value = getattr(record, field.name)
        if isinstance(value, bool) or value == field.default:
            continue
        if isinstance(value, int | float):
            yield field.name, value, origin
        for inner in value if isinstance(value, tuple) else (value,):
            place = getattr(inner, "origin", origin)
            yield from _numbers(inner, place if isinstance(place, Origin) and place.file else origin)


def _range(key: str, own: Mapping[str, tuple[float, float]]) -> tuple[float, float] | None:
    if key in own:
        return own[key]
    ends = [end for end in _USUAL_RANGE if key.endswith(end)]
    return _USUAL_RANGE[max(ends, key=len)] if ends else None


def _unexplained(catalogue: Catalogue) -> Iterator[Lint]:
    for rule in catalogue.rules.values():
        if not rule.because.strip():
            yield _lint(LintCode.NO_REASON, rule.id, rule.origin, "because")
        if not rule.source.strip():
            yield _lint(LintCode.NO_SOURCE, rule.id, rule.origin, "source")
    for option in catalogue.options.values():
        if option.needs and not option.needs_because.strip():
            yield _lint(LintCode.NO_REASON, option.id, option.origin, "needs_because")
        source = option.van.source if option.van is not None else option.source
        if not source.strip():
            yield _lint(LintCode.NO_SOURCE, option.id, option.origin, "source")
    for ledger in catalogue.ledgers.values():
        if not ledger.source.strip():
            yield _lint(LintCode.NO_SOURCE, ledger.id, ledger.origin, "source")


def _without_fix(catalogue: Catalogue) -> Iterator[Lint]:
    for rule in catalogue.rules.values():
        if not rule.fixes and rule.level is not Level.NOTE and not rule.refused:
            yield _lint(LintCode.NO_FIX, rule.id, rule.origin, "fixes")


def _without_usual(catalogue: Catalogue) -> Iterator[Lint]:
    for group in catalogue.groups.values():
        if group.pick is Pick.ONE and not group.usual and group.id != BASE_VAN_GROUP:
            yield _lint(LintCode.NO_USUAL, group.id, group.origin, "usual")


def _unused_tags(catalogue: Catalogue) -> Iterator[Lint]:
    """A tag named after nothing that asks: dead weight, or a slip of the pen."""
    asked = frozenset((*_asked(catalogue), *_ASKED_BY_SUMS))
    told: set[Tag] = set()
    for option in catalogue.options.values():
        van: Van | None = option.van
        for tag in (*option.gives, *(van.gives if van is not None else ())):
            bare = Tag(tag.partition("@")[0])
            if bare not in asked and bare not in told:
                told.add(bare)
                yield _lint(LintCode.TAG_UNUSED, bare, option.origin, "gives")


def _asked(catalogue: Catalogue) -> Iterator[Tag]:
    for rule in catalogue.rules.values():
        yield from _given(rule)
    for option in catalogue.options.values():
        yield from _bare(tag for need in option.needs for tag in need.any_of)
        yield from (tag for one in option.circuits for start in one.other_starts for tag in start.beside)
    for step in catalogue.work.values():
        yield from (tag for figure in step.pass_figures for tag in figure.only_with)
    for line in catalogue.brief.values():
        yield from _given(line)


def _given(asker: Rule | BriefLine) -> Iterator[Tag]:
    sides = (asker.asked_when, asker.assumed_unless) if isinstance(asker, BriefLine) else (asker.when, asker.then)
    for side in sides:
        for term in side.terms:
            yield from _bare(tag for atom in term.atoms for tag in _tags(atom))


def _tags(atom: Atom) -> Iterator[Tag]:
    match atom:
        case Not(inner):
            yield from _tags(inner)
        case Given(tag):
            yield tag
        case _:
            pass


def _bare(tags: Iterable[Tag]) -> Iterator[Tag]:
    return (Tag(tag.partition("@")[0]) for tag in tags)


def _silent(catalogue: Catalogue) -> Iterator[Lint]:
    for ledger in catalogue.ledgers.values():
        if LedgerId(ledger.id) not in MADE:
            yield _lint(LintCode.SILENT, ledger.id, ledger.origin)
    for rule in catalogue.rules.values():
        if not hearing(rule).heard(MADE):
            yield _lint(LintCode.SILENT, rule.id, rule.origin)


def _lint(code: LintCode, subject: str, origin: Origin, field: str = "") -> Lint:
    return Lint(code=code, subject=subject, field=field, origin=origin)
