"""Four builds on the rules that come with the program, each with what it must come to, worked out apart from it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from specbuilder.model.brief import Answer

Pair = tuple[float, float | None] | None


class Build(NamedTuple):
    """A build as it is told, and what it must come to: value and bound, None where there is nothing to measure."""

    van: str
    choices: str
    brief: Mapping[str, Answer]
    comes_to: Mapping[str, Pair]
    gross_pence: int
    broken: str = ""


FAMILY = Build(
    "fenwain-short",
    """van-own-registered layout-left-door bulkhead-remove-full cab-two-singles weighed-on-arrival larchlid-short
    roof-bed-board-net-ladder roof-open-buzzer vents-none-added bench-two swivel-driver swivel-passenger
    child-top-straps child-booster-pair bed-infill-board table-rail side-galley/right fridge-air-kit gas-bundle
    gas-one-small fridge-front-door water-galley-40 travel-fill-stop waste-can-galley toilet-portable
    air-heater-diesel-2/right takeoff-factory-tap vent-and-exhaust-drawing battery-small place-in-galley
    inverter-600 dcdc-30 hook-up-bundle/rear mains-charger-15 battery-monitor socket-plug-only socket-away-only
    socket-usb-pair*2 lights-comfort laptop smoke-alarm fire-kit lining-standard window-mid-opening/left
    window-mid-fixed/right fabric-moss-weave boards-light-oak curtains cab-screens-quilted awning-body-rail/left""",
    {
        "adults": 2,
        "children": 2,
        "sleepers": 4,
        "ceiling_gross_pence": 2_700_000,
        "weeks_wanted": 16,
        "sleepers_upstairs": 2,
        "design_temp_c": 5,
        "nights_off_grid": 2,
    },
    {
        "total-mass": (2776.62, 3000),
        "pay-mass": (229.4, 89.3),
        "unladen-mass": (2382.12, 2950),
        "roof-load-closed": (1, 50),
        "roof-load-raised": (0, 8),
        "roof-bed-load": (60, 150),
        "belts": (4, 4),
        "berths": (4, 4),
        "cross-width": (1540, 1610),
        "way-out": (570, 500),
        "zone-use": (1, 1),
        "gas-bottles": (1, 2),
        "fuel-pickups": (1, 1),
        "price-gross": (2_441_400, 2_700_000),
        "lead-weeks": (6, 16),
        "closed-height": (2065, 2100),
        "swivel-gap": (70, 40),
        "fridge-door-gap": (30, 20),
        "bed-length": (1900, 1880),
        "bed-width": (2300, 2000),
        "battery-box": (100, 400),
        "quote-age": (0, 30),
        "workshop-hours": (231.4, None),
        "berths-over-belts": (0, None),
        "heat": (2, 1.5768),
        "high-vents": (10_000, 10_000),
        "low-vents": (1500, 1500),
        "waste-share": None,
        "fresh-water-days": (1, 2),
        "heater-nights": (20.924691, 2),
        "daily-energy": (868.154545, None),
        "battery-nights": (2.157507, 2),
        "battery-current": (56.818182, 100),
        "inverter-largest-load": (60, 600),
        "lead-draw": None,
        "charge-rate": (30, 50),
        "alternator-input": (38.4, 90),
        "solar-voltage": None,
        "hook-up-watts": (305, 2300),
    },
    2_441_400,
    "fresh-water-days",
)
NURSE = Build(
    "fenwain-short",
    """van-own-registered layout-left-door bulkhead-remove-full cab-double-to-single weighed-on-arrival roof-as-it-is
    no-roof-bed vents-sealed-set bench-two swivel-passenger bench-bed-only table-swing-leg pod-galley/right
    fridge-air-kit fuel-hob-bundle/right gas-none fridge-drawer water-can-20 waste-can-galley no-toilet
    air-heater-diesel-2/right takeoff-tap-and-standpipe exhaust-extension battery-small place-under-bench
    inverter-600 dcdc-30 solar-flush-100 controller-20a-50v hook-up-bundle/rear mains-charger-15 socket-plug-only
    socket-away-only socket-usb-pair lights-basic laptop smoke-alarm fire-kit lining-standard
    window-mid-fixed/left window-mid-opening/right fabric-grey-wool boards-light-oak curtains cab-screens-quilted""",
    {
        "season": "three-season",
        "drive_h_per_day": 0.5,
        "site_amps": "6",
        "adults": 1,
        "children": 0,
        "sleepers": 1,
        "tallest_sleeper_mm": 1700,
        "parking_limit_mm": 2000,
        "ceiling_gross_pence": 1_900_000,
        "sleepers_upstairs": 0,
        "design_temp_c": 0,
        "nights_off_grid": 2,
    },
    {
        "total-mass": (2378.92, 3000),
        "pay-mass": (462.1, 89.3),
        "unladen-mass": (2157.42, 2950),
        "roof-load-closed": (3.5, 120),
        "roof-load-raised": None,
        "roof-bed-load": None,
        "way-out": (600, 500),
        "fuel-pickups": (2, 2),
        "closed-height": (1998, 2000),
        "fridge-door-gap": None,
        "bed-length": (1830, 1800),
        "workshop-hours": (177.4, None),
        "berths-over-belts": (-2, None),
        "heat": (2, 1.1928),
        "high-vents": (1500, 1500),
        "low-vents": (500, 500),
        "waste-share": None,
        "fresh-water-days": (2, 2),
        "heater-nights": (18.590667, 2),
        "daily-energy": (854.554545, None),
        "battery-nights": (2.172608, 2),
        "solar-voltage": (24.3216, 50),
        "hook-up-watts": (305, 1380),
    },
    1_741_800,
)
WALKERS = Build(
    "tormwain-left",
    """van-from-firm layout-left-door bulkhead-none-fitted cab-two-singles roof-as-it-is no-roof-bed roof-fan-fixed
    vents-full-set no-bench swivel-passenger twin-single-beds table-swing-leg grab-handles-set pod-galley/right
    fridge-air-kit induction-single gas-none fridge-front-door water-inside-70 travel-fill-stop waste-can-galley
    frost-drain-kit toilet-portable air-heater-petrol-4/right takeoff-standpipe-petrol heater-thermostat-panel
    battery-twin place-rear-locker crash-tray inverter-2000 inverter-protection-set changeover-automatic
    heavy-current-set battery-monitor dcdc-50 solar-light-120 controller-20a-50v hook-up-bundle/rear
    mains-charger-30 socket-both*2 socket-usb-pair*2 lights-comfort kettle-low-watt co-alarm-extra smoke-alarm
    fire-kit lining-winter window-mid-opening/left window-rear-fixed/right fabric-grey-wool boards-birch-light
    pleated-blinds cab-screens-quilted""",
    {
        "season": "winter",
        "site_amps": "16",
        "must_run": ("kettle",),
        "adults": 2,
        "children": 0,
        "sleepers": 2,
        "tallest_sleeper_mm": 1820,
        "parking_limit_mm": 0,
        "ceiling_gross_pence": 2_900_000,
        "weeks_wanted": 14,
        "sleepers_upstairs": 0,
        "design_temp_c": -5,
        "nights_off_grid": 2,
    },
    {
        "total-mass": (2988.5425, 3500),
        "pay-mass": (595.9, 79.6),
        "unladen-mass": (2682.5175, 2950),
        "roof-load-closed": (10.5, 150),
        "lead-weeks": (9, 14),
        "closed-height": (2620, None),
        "price-gross": (2_359_200, 2_900_000),
        "bed-length": (1950, 1920),
        "bed-width": (1360, 1000),
        "swivel-gap": None,
        "heat": (4, 2.229),
        "high-vents": (12_500, 12_500),
        "low-vents": (2000, 2000),
        "waste-share": None,
        "fresh-water-days": (3.5, 2),
        "heater-nights": (15.237037, 2),
        "workshop-hours": (218.1, None),
        "daily-energy": (2012.3, None),
        "battery-nights": (3.127411, 2),
        "battery-current": (185.185185, 360),
        "inverter-largest-load": (900, 2000),
        "charge-rate": (50, 200),
        "alternator-input": (64, 75),
        "hook-up-watts": (3191, 3680),
    },
    6_703_200,
)
VANLOAD = Build(
    "hushwain",
    """van-own-unregistered layout-left-door bulkhead-none-fitted cab-two-singles larchlid-short roof-bed-board-plain
    roof-open-buzzer roof-cloth-liner vents-none-added bench-two child-top-straps swivel-driver swivel-passenger
    bed-infill-board table-rail side-galley/right fridge-air-kit gas-bundle gas-second-small fridge-large
    water-underslung-60 waste-underslung-35 toilet-portable air-heater-diesel-2/right no-takeoff
    vent-and-exhaust-drawing battery-twin place-in-galley crash-tray heavy-current-set inverter-3000
    inverter-protection-set changeover-automatic dcdc-50 hook-up-bundle/left mains-charger-30 socket-both*2
    socket-usb-pair*2 lights-comfort smoke-alarm fire-kit lining-standard window-mid-opening/left
    window-rear-fixed/right fabric-grey-wool boards-light-oak curtains awning-body-rail/left bike-rack-rear-door""",
    {
        "season": "winter",
        "must_run": ("none",),
        "adults": 3,
        "children": 2,
        "child_mass_kg": 35,
        "sleepers": 5,
        "sleepers_upstairs_kg": 70,
        "tallest_sleeper_mm": 1850,
        "parking_limit_mm": 2000,
        "extra_load_kg": 62,
        "extra_load_where": "rack",
        "ceiling_gross_pence": 0,
        "weeks_wanted": 16,
        "sleepers_upstairs": 2,
        "design_temp_c": -5,
        "nights_off_grid": 2,
    },
    {
        "total-mass": (3476.7, 3150),
        "pay-mass": (-170.3, 89.4),
        "unladen-mass": (2952.3, 2950),
        "rear-axle": (1988.646107, 1720),
        "belts": (4, 5),
        "zone-use": (2, 1),
        "heat": (2, 2.613),
        "high-vents": (10_000, 10_000),
        "low-vents": (1500, 1500),
        "waste-share": (35 / 60, 0.5),
        "fresh-water-days": (1.2, 2),
        "heater-nights": (0, 2),
        "fuel-pickups": (1, 0),
        "closed-height": (2090, 2000),
        "fridge-door-gap": (-40, 20),
        "bed-length": (1900, 1950),
        "price-gross": (3_091_200, None),
        "workshop-hours": (246.7, None),
        "daily-energy": (932.3, None),
        "battery-nights": (14.485505, 2),
        "battery-current": (284.090909, 360),
        "inverter-largest-load": None,
        "alternator-input": (64, 60),
        "hook-up-watts": (491, 2300),
    },
    3_091_200,
    """total-mass rear-axle pay-mass unladen-mass belts berths zone-use fuel-pickups closed-height fridge-door-gap
    bed-length bed-width heat fresh-water-days heater-nights alternator-input""",
)
