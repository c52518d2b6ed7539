"""What is told beside heat, heater fuel, gas, fresh air and water. OPEN marks where the words leave a choice."""

from __future__ import annotations

from collections.abc import Callable

from tests.independent.build import Build, Reading


def lost_w_per_k(b: Build, roof_up: bool) -> float | None:
    """None: a roof that does not lift is never up."""
    loss = b.van["ua_w_per_k"] + b.all("heat", "heat_loss_down_w_per_k")
    if not roof_up:
        return float(loss)
    return loss + b.all("heat", "heat_loss_up_w_per_k") if "elevating-roof" in b.tags else None


def lost_kw(roof_up: bool, outside_c: float | None) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        loss, cold = lost_w_per_k(b, roof_up), b.brief["design_temp_c"] if outside_c is None else outside_c
        return (None if loss is None else loss * (20 - cold) / 1000), None

    return work_out


def heaters_kw(b: Build) -> float | None:
    """None without a heater; one on the plug gives nothing to whoever has no plug every night."""
    heaters = b.having("heat", "heater_kw")
    plugged = b.brief["plugged_every_night"] == "yes"
    kw = [
        p.one("heat", "heater_kw") * p.count * (plugged or p.option["heat"]["heater_fuel"] != "hook-up")
        for p in heaters
    ]
    return sum(kw) if heaters else None


def of_loss(b: Build) -> Reading:
    given, upstairs = heaters_kw(b), b.brief["sleepers_upstairs"] > 0 and "elevating-roof" in b.tags
    lost, _ = lost_kw(upstairs, None)(b)
    return (None if given is None or lost is None else 100 * given / lost), None


def coldest(roof_up: bool) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        given, loss = heaters_kw(b), lost_w_per_k(b, roof_up)
        return (None if given is None or loss is None else 20 - 1000 * given / loss), None

    return work_out


def missing(roof_up: bool, outside_c: float | None) -> Callable[[Build], Reading]:
    def work_out(b: Build) -> Reading:
        given, (lost, _) = heaters_kw(b), lost_kw(roof_up, outside_c)(b)
        return (None if given is None or lost is None else max(0.0, lost - given)), None

    return work_out


SUMS: dict[str, Callable[[Build], Reading]] = {
    "heat-loss-down": lost_kw(False, None),
    "heat-loss-down-at-nought": lost_kw(False, 0),
    "heat-loss-down-in-frost": lost_kw(False, -15),
    "heat-loss-up": lost_kw(True, None),
    "heat-loss-up-at-nought": lost_kw(True, 0),
    "heat-loss-up-in-frost": lost_kw(True, -15),
    "heat-of-loss": of_loss,
    "coldest-roof-down": coldest(False),
    "coldest-roof-up": coldest(True),
    "heat-missing-down": missing(False, None),
    "heat-missing-up": missing(True, None),
    "heat-missing-in-frost": missing(True, -15),
}
