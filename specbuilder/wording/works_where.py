"""What works where: each socket and appliance of a build while driving, on a campsite plug, and away from one.

Nothing unknown is told as *yes*: what hangs on an open question says so.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import Tag
from specbuilder.model.kinds import Owner
from specbuilder.model.report import Report
from specbuilder.model.span import Span
from specbuilder.model.spec import Choice

from .plain import lowered
from .quantities import quantity


class Works(StrEnum):
    """Whether a thing works in one of the three places."""

    YES = "yes"
    NO = "no"
    LIMITS = "limits"
    """It works within what stands beside it."""
    UNKNOWN = "not known yet"


@dataclass(frozen=True, slots=True, kw_only=True)
class WorksWhere:
    """One line of the grid."""

    names: tuple[str, ...]
    """The sockets and appliances it is about."""
    driving: Works
    plugged: Works
    """On a campsite plug."""
    away: Works
    """Parked, away from any plug."""
    mind: str = ""
    """What limits it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Supplies:
    """What feeds the things of a build."""

    battery: Works
    plug: Works
    inverter: Works
    pitch_w: Span | None
    """What the weakest pitch gives; None: nobody can tell."""
    inverter_w: Span | None
    """What inverter and battery carry together; None: nobody can tell."""


PARKED = "only while parked"
OUTDOORS = "outdoors only, never inside or under the awning"
FILLING = "Filling the leisure battery"
_INLET = "hook-up-inlet"
"""Given, with its side, by whatever brings the campsite plug."""
_PLUG_SOCKET, _AWAY_SOCKET, _ROUND_SOCKET = Tag("socket-hook-up"), Tag("socket-off-grid"), Tag("dc-socket")
_TAP, _PUMP = Tag("tap"), Tag("pump")
_MOVING = frozenset({"swivel", "side-step"})
"""Tags of parts that swing or slide out of the van."""
_STRONG_W = 500
"""Things on mains from this on heat or cook: nobody uses them in a moving van, whatever feeds them."""
_CHARGER, _LOOSE_STOVE = "charger", "cartridge"
_LONGEST_NAME = 44
_OWN_BATTERY, _BOTH, _PLUG_ONLY = "dc", "shared", "hookup-only"


def supplies(catalogue: Catalogue, report: Report, *, pitch_w: Span | None, carried_w: Span | None) -> Supplies:
    """What feeds this build.

    Args:
        catalogue: the rules.
        report: what follows from the spec.
        pitch_w: watts of the weakest pitch.
        carried_w: mains watts the battery carries for good.
    """
    strongest = max((option.power.inverter_w or 0 for _, option in _chosen(catalogue, report)), default=0)
    carried = carried_w if carried_w and strongest else None
    return Supplies(
        battery=_stands(catalogue, report, _is_battery),
        plug=_stands(catalogue, report, _is_plug),
        inverter=_stands(catalogue, report, _is_inverter),
        pitch_w=pitch_w,
        inverter_w=Span(min(strongest, carried.least), min(strongest, carried.most)) if carried else None,
    )


def works_where(catalogue: Catalogue, report: Report, fed: Supplies) -> tuple[WorksWhere, ...]:
    """The grid of sockets and appliances, in the order of the catalogue; what works alike shares a line."""
    order = {option: number for number, option in enumerate(catalogue.options)}
    chosen = sorted(_chosen(catalogue, report), key=lambda pair: order[pair[1].id])
    lines = [line for choice, option in chosen if (line := _line(choice, option, fed)) is not None]
    if any(_is_battery(option) for _, option in chosen):
        lines.append(_filling([option for _, option in chosen]))
    return _merged(lines)


def _merged(lines: list[WorksWhere]) -> tuple[WorksWhere, ...]:
    """What works alike in one line; each name once."""
    alike: dict[WorksWhere, list[str]] = {}
    for line in lines:
        alike.setdefault(replace(line, names=()), []).extend(line.names)
    return tuple(replace(line, names=tuple(dict.fromkeys(names))) for line, names in alike.items())


def battery_sentence(fed: Supplies) -> str:
    """Said above the grid."""
    if fed.battery is Works.UNKNOWN:
        return "The leisure battery is not chosen yet, so not all of this can be told."
    if fed.battery is Works.NO:
        return "There is no leisure battery in it."
    return (
        "What runs on 12 volts works everywhere, as long as the leisure battery lasts; with mains sockets it depends."
    )


def inverter_sentence(fed: Supplies) -> str:
    """``Away from the plug the sockets give 1,800 W in all: ...``; empty without an inverter or while it is open."""
    if fed.inverter is not Works.YES or fed.inverter_w is None:
        return ""
    return (
        f"Away from the plug the inverter gives about {quantity(fed.inverter_w.least, 'W', '')} in all "
        "(planning figure): use strong things one after the other."
    )


def pitch_sentence(fed: Supplies) -> str:
    """What the weakest pitch gives; empty without a campsite plug."""
    if fed.plug is not Works.YES or fed.pitch_w is None:
        return ""
    return f"The weakest pitch we reckon with gives {quantity(fed.pitch_w.least, 'W', '')} in all."


def _chosen(catalogue: Catalogue, report: Report) -> Iterator[tuple[Choice, Option]]:
    for choice in report.spec.choices:
        option = catalogue.options.get(choice.option)
        if option is not None:
            yield choice, option


def _is_battery(option: Option) -> bool:
    return option.power.battery_ah is not None


def _is_inverter(option: Option) -> bool:
    return option.power.inverter_w is not None


def _is_plug(option: Option) -> bool:
    return any(tag.partition("@")[0] == _INLET for tag in option.gives)


def _stands(catalogue: Catalogue, report: Report, is_one: Callable[[Option], bool]) -> Works:
    """Whether something chosen is one; not known while an open question still may bring it."""
    if any(is_one(option) for _, option in _chosen(catalogue, report)):
        return Works.YES
    may = (option for group in report.undecided for option in catalogue.options_of(group))
    return Works.UNKNOWN if any(is_one(option) for option in may) else Works.NO


def _line(choice: Choice, option: Option, fed: Supplies) -> WorksWhere | None:
    """The line of one choice; None for what is neither socket nor appliance."""
    if option.heat.cooker_fuel == _LOOSE_STOVE:
        return _named(option, Works.NO, Works.LIMITS, Works.LIMITS, OUTDOORS)
    if option.heat.heater_kw and option.power.bus != _PLUG_ONLY:
        return _named(option, Works.NO, fed.battery, fed.battery, f"{PARKED}; needs fuel, and the battery for its fan")
    if option.heat.cooker_fuel and option.power.bus != _BOTH:
        lit = fed.battery if option.power.bus == _OWN_BATTERY else Works.YES
        return _named(option, Works.NO, lit, lit, PARKED)
    if {_PLUG_SOCKET, _AWAY_SOCKET} & set(option.gives):
        return _socket(option, fed)
    if _ROUND_SOCKET in option.gives or (option.power.bus == _OWN_BATTERY and option.power.watts_running):
        moves = any(tag.partition("@")[0] in _MOVING for tag in option.gives)
        driving, mind = (Works.NO, PARKED) if moves else (fed.battery, "")
        return _named(option, driving, fed.battery, fed.battery, mind)
    if option.power.ac_role == _CHARGER:
        return None
    if option.power.bus == _PLUG_ONLY:
        return _named(option, Works.NO, fed.plug, Works.NO, "")
    return _mains(choice, option, fed) if option.power.bus == _BOTH else None


def _named(option: Option, driving: Works, plugged: Works, away: Works, mind: str) -> WorksWhere:
    name = "Tap and water pump" if {_TAP, _PUMP} <= set(option.gives) else _row_name(option.name)
    return WorksWhere(names=(name,), driving=driving, plugged=plugged, away=away, mind=mind)


def _row_name(name: str) -> str:
    """The name whole, or its main part where it is long for a row."""
    return name if len(name) <= _LONGEST_NAME else re.split("[,:]", name)[0]


def _socket(option: Option, fed: Supplies) -> WorksWhere:
    plugged = fed.plug if _PLUG_SOCKET in option.gives else Works.NO
    away, mind = _carried(None, fed) if _AWAY_SOCKET in option.gives else (Works.NO, "")
    line = _named(option, away, plugged, away, mind)
    return replace(line, names=(f"Socket of the {lowered(option.name)}",)) if _is_plug(option) else line


def _mains(choice: Choice, option: Option, fed: Supplies) -> WorksWhere:
    """A thing on mains: from the plug as from the inverter."""
    own = choice.own_part if choice.owner is Owner.CUSTOMER else None
    watts = own.watts_w if own is not None and own.watts_w is not None else option.power.watts_running
    plugged, weak = fed.plug, ""
    if plugged is Works.YES and watts is not None and fed.pitch_w is not None and watts > fed.pitch_w.least:
        plugged, weak = Works.LIMITS, "too strong for the weakest pitch"
    away, mind = _carried(watts, fed)
    hot = watts is None or watts >= _STRONG_W
    told = [words for words in (PARKED if hot else "", weak, mind) if words]
    return _named(option, Works.NO if hot else away, plugged, away, "; ".join(told))


def _carried(watts: float | None, fed: Supplies) -> tuple[Works, str]:
    """Whether the inverter carries it; a socket (no watts) carries what the inverter gives."""
    if fed.inverter is not Works.YES:
        return fed.inverter, ""
    if fed.inverter_w is None:
        return Works.UNKNOWN, ""
    if watts is None:
        return Works.LIMITS, f"up to {quantity(fed.inverter_w.least, 'W', '')} from the battery"
    if watts <= fed.inverter_w.least:
        return Works.YES, ""
    return (Works.NO, "too strong for the inverter") if watts > fed.inverter_w.most else (Works.UNKNOWN, "")


def _filling(options: list[Option]) -> WorksWhere:
    """Where the battery gets its charge."""
    engine = any(option.power.engine_charge_a for option in options)
    plug = any(option.power.mains_charge_a for option in options)
    sun = any(option.power.solar_w for option in options)
    return WorksWhere(
        names=(FILLING,),
        driving=Works.YES if engine else Works.NO,
        plugged=Works.YES if plug else Works.NO,
        away=Works.LIMITS if sun else Works.NO,
        mind="by the sun" if sun else "",
    )
