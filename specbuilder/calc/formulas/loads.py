"""What a loaded van weighs beyond its parts."""


def people_kg(grown_ups: float, children: float, grown_up_kg: float, child_kg: float) -> float:
    """Mass of everybody aboard but the driver, who is already in the running-order mass. Result in kg.

    Equation: ``grown_up_kg * max(grown_ups - 1, 0) + child_kg * children``.
    Valid for: any number of travellers; a van without a grown-up still has its driver in the running-order mass.
    Source: Regulation (EU) 1230/2012 Art. 2: 75 kg for the driver in running order and for each further person.
    Confidence: verified for the driver, second hand for passengers.

    >>> people_kg(2, 2, 75, 30)
    135
    """
    return grown_up_kg * max(grown_ups - 1, 0) + child_kg * children


def luggage_kg(travellers: float, length_m: float, per_traveller_kg: float, per_metre_kg: float) -> float:
    """Mass of personal things to allow for. Result in kg.

    Equation: ``per_traveller_kg * travellers + per_metre_kg * length_m``, with the van's overall length in metres.
    Valid for: motor caravans; both allowances are house settings.
    Source: Regulation (EU) 1230/2012 Annex I Part A 2.6.4.1.2: 10 kg a person and 10 kg a metre.
    Confidence: verified second hand.

    >>> round(luggage_kg(4, 4.93, 10, 10), 1)
    89.3
    """
    return per_traveller_kg * travellers + per_metre_kg * length_m


def last_fuel_kg(tank_l: float, density_kg_per_l: float, share: float) -> float:
    """Mass of the fuel that is not yet in the running-order mass. Result in kg.

    Equation: ``share * tank_l * density_kg_per_l``.
    Valid for: running-order mass with the tank at ``1 - share``; 0.1 with the usual 90 % fuel. An electric van has 0 L.
    Source: Regulation (EU) 1230/2012 Art. 2: fuel tank 90 % full in running order.
    Confidence: verified; densities 0.84 diesel and 0.745 petrol are known.

    >>> round(last_fuel_kg(80, 0.84, 0.1), 2)
    6.72
    """
    return share * tank_l * density_kg_per_l


def travel_water_kg(travel_l: float, cap_l: float) -> float:
    """Mass of fresh water carried on the road; a litre counts one kilogram. Result in kg.

    Equation: ``min(travel_l, cap_l)``; without a travel fill stop the cap is infinite.
    Valid for: fresh water at the amount declared for travel; waste tanks count as empty.
    Source: Regulation (EU) 2021/535: liquid systems at the capacity declared for travel.
    Confidence: verified second hand.

    >>> travel_water_kg(40, 20)
    20
    """
    return min(travel_l, cap_l)


def seated(
    grown_ups: float, children: float, cab_belts: float, bench_belts: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Who sits where: grown-ups and children on the bench, and grown-ups and children in front. Result in people.

    Equation: the driver has a cab seat; other grown-ups fill the cab, then the bench; children fill the bench, then the
        cab; whoever finds no belt counts in front, where it weighs on the front axle.
    Valid for: benches behind the cab; the driver, already in the running-order mass, is in neither answer.
    Source: house rule for the sum; the belts themselves are checked apart.
    Confidence: estimate; people sit where they like, so weigh the loaded van.

    >>> seated(2, 2, 2, 2)
    ((0, 2), (1, 0))
    >>> seated(3, 0, 2, 2)
    ((1, 0), (1, 0))
    """
    others = max(grown_ups - 1, 0)
    cab = max(cab_belts - 1, 0)
    on_bench = min(max(others - cab, 0), bench_belts)
    children_on_bench = min(children, bench_belts - on_bench)
    return (on_bench, children_on_bench), (others - on_bench, children - children_on_bench)
