"""What is told beside a ledger of the electrics besides figures: worked out when somebody looks at it."""

from __future__ import annotations

from specbuilder.calc.power.battery_beside import sun_by_month
from specbuilder.calc.power.battery_cold import charging_in_cold
from specbuilder.calc.power.battery_nights import BATTERY_NIGHTS
from specbuilder.calc.power.energy_day import DAILY_ENERGY
from specbuilder.calc.power.hook_up import HOOK_UP_WATTS
from specbuilder.calc.power.inverter_load import BATTERY_CURRENT, INVERTER_LARGEST_LOAD
from specbuilder.calc.power.together import together_away, together_plugged
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.power import PowerNotes, Together
from specbuilder.model.situation import Situation
from specbuilder.model.spec import Spec

from .machine import lock_of
from .seasons import by_season
from .situate import lay


def power_notes(catalogue: Catalogue, spec: Spec, ledger: LedgerId) -> PowerNotes:
    """Seasons, months, cold, and what cannot run together, as far as they belong to this ledger."""
    if ledger == DAILY_ENERGY.id:
        return PowerNotes(seasons=by_season(catalogue, spec))
    if ledger == BATTERY_NIGHTS.id:
        situation = _situation(catalogue, spec)
        return PowerNotes(
            seasons=by_season(catalogue, spec), months=sun_by_month(situation), in_cold=charging_in_cold(situation)
        )
    if ledger in (BATTERY_CURRENT.id, INVERTER_LARGEST_LOAD.id):
        return PowerNotes(together=together_away(_situation(catalogue, spec)))
    if ledger == HOOK_UP_WATTS.id:
        return PowerNotes(together=together_plugged(_situation(catalogue, spec)))
    return PowerNotes()


def never_together(catalogue: Catalogue, spec: Spec) -> tuple[Together, ...]:
    """What cannot run at the same moment: away from the plug, and on the pitch of the brief."""
    situation = _situation(catalogue, spec)
    found = (together_away(situation), together_plugged(situation))
    return tuple(one for one in found if one is not None)


def _situation(catalogue: Catalogue, spec: Spec) -> Situation:
    with lock_of(catalogue):
        return lay(catalogue, spec, exact=False).situation
