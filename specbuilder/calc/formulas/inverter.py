"""What an inverter asks of a battery, and what runs on it."""

from __future__ import annotations

from .validity import above, at_least, within


def input_current_a(ac_w: float, loaded_v: float, efficiency: float) -> float:
    """Current an inverter draws from the battery. Result in A.

    Equation: ``ac_w / (loaded_v * efficiency)``, with the volts under load: 12.0 lithium, 11.0 to 11.5 lead.
    Valid for: 0 W or more, a voltage above 0, an efficiency above 0 up to 1; never 13.8 V, never watts over 230.
    Source: notes on sizing inverters.
    Confidence: verified.

    Raises:
        OutsideValidity: watts below 0, no voltage, an efficiency that is none.

    >>> round(input_current_a(3000, 12, 0.88))
    284
    """
    share = above("efficiency", within("efficiency", efficiency, 0, 1))
    return at_least("mains watts W", ac_w) / (above("volts under load V", loaded_v) * share)


def battery_limit_a(pack_a: float, packs: float, several_share: float = 0.9) -> float:
    """Current a bank may give without switching itself off. Result in A.

    Equation: ``pack_a * packs``, times ``several_share`` for more than one pack, since packs do not share evenly.
    Valid for: one pack or more side by side, a share above 0 up to 1.
    Source: notes on sizing inverters: continuous battery amps decide, not amp-hours; the share is a house setting.
    Confidence: verified; estimate for the share.

    Raises:
        OutsideValidity: amps below 0, less than one pack, a share that is none.

    >>> battery_limit_a(200, 1), battery_limit_a(200, 2)
    (200, 360.0)
    """
    together_a = at_least("amps of a pack A", pack_a) * at_least("packs", packs, 1)
    if packs <= 1:
        return together_a
    return together_a * above("share of several packs", within("share of several packs", several_share, 0, 1))


def used_share(current_a: float, limit_a: float) -> float:
    """How much of its limit a current uses; above 1 the battery switches itself off. Result as a part of one.

    Equation: ``current_a / limit_a``.
    Valid for: 0 A or more, a limit above 0; up to 0.8 passes, a house setting.
    Source: notes on sizing inverters.
    Confidence: verified; estimate for the 0.8.

    Raises:
        OutsideValidity: a current below 0, no limit.

    >>> round(used_share(284, 360), 3)
    0.789
    """
    return at_least("current A", current_a) / above("limit A", limit_a)


def mains_allowed_w(limit_a: float, loaded_v: float, efficiency: float, share: float = 1) -> float:
    """Mains watts a battery can carry through an inverter. Result in W.

    Equation: ``share * limit_a * loaded_v * efficiency``; ``share`` 0.8 leaves a fifth in hand.
    Valid for: 0 A or more, a voltage above 0, efficiency and share from 0 to 1.
    Source: notes on sizing inverters.
    Confidence: verified.

    Raises:
        OutsideValidity: amps below 0, no voltage, efficiency or share outside 0 to 1.

    >>> round(mains_allowed_w(200, 12, 0.88)), round(mains_allowed_w(200, 12, 0.88, 0.8))
    (2112, 1690)
    """
    given_w = at_least("limit A", limit_a) * above("volts under load V", loaded_v)
    return given_w * within("efficiency", efficiency, 0, 1) * within("share", share, 0, 1)


def start_w(running_w: float, start_times: float, beside_w: float = 0) -> float:
    """Watts an inverter must give for a moment while something starts beside the rest. Result in W.

    Equation: ``running_w * start_times + beside_w``; a motor or compressor starts at 3 to 7 times what it runs on.
    Valid for: 0 W or more, 1 to 25 times (1 for what only heats). An inverter gives 1.5 to 2 times its watts for
    seconds.
    Source: notes on sizing inverters.
    Confidence: verified; the part's data goes first.

    Raises:
        OutsideValidity: watts below 0, a start outside 1 to 25 times.

    >>> start_w(150, 5, 200)
    950
    """
    start = at_least("running watts W", running_w) * within("times the running watts", start_times, 1, 25)
    return start + at_least("watts beside it W", beside_w)


def microwave_input_w(cooking_w: float, share: float = 0.6) -> float:
    """What a microwave draws for the cooking watts on its door. Result in W.

    Equation: ``cooking_w / share``; lower settings switch it on and off and draw the same while on.
    Valid for: a share from 0.4 to 0.8; measured 0.50 to 0.64.
    Source: trade article on inverters for microwave ovens and measured ones.
    Confidence: verified.

    Raises:
        OutsideValidity: watts below 0, a share outside the range.

    >>> round(microwave_input_w(800))
    1333
    """
    return at_least("cooking watts W", cooking_w) / within("share that cooks", share, 0.4, 0.8)


def rate_per_h(current_a: float, capacity_ah: float) -> float:
    """Current as a part of the capacity; lead loses much above 0.25. Result in 1/h.

    Equation: ``current_a / capacity_ah``.
    Valid for: 0 A or more, a capacity above 0.
    Source: page on the exponent of lead batteries; the quarter is a house setting.
    Confidence: verified; estimate for the limit.

    Raises:
        OutsideValidity: a current below 0, no capacity.

    >>> round(rate_per_h(118.58, 200), 3)
    0.593
    """
    return at_least("current A", current_a) / above("capacity Ah", capacity_ah)


def lead_limit_a(capacity_ah: float, capacity_share: float = 0.25) -> float:
    """Most amps a lead battery should give. Result in A.

    Equation: ``capacity_ah * capacity_share``.
    Valid for: a capacity of 0 Ah or more, a share from 0 to 1.
    Source: page on the exponent of lead batteries; the quarter is a house setting.
    Confidence: estimate.

    Raises:
        OutsideValidity: a capacity below 0, a share outside 0 to 1.

    >>> lead_limit_a(200)
    50.0
    """
    return at_least("capacity Ah", capacity_ah) * within("share of the capacity", capacity_share, 0, 1)
