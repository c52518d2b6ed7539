"""Short names and answer words for the lines of the brief and of the job state.

The sentence a customer hears stands in the catalogue. These are the few words a bar, a finding or a list has room for.
A key that is not listed is named after itself without its unit, so a new line of the brief needs nothing here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

_UNIT_ENDS = ("_mm", "_kg", "_c", "_m", "_pence", "_amps", "_days", "_weeks")


@dataclass(frozen=True, slots=True)
class Term:
    """Words of one key."""

    name: str
    one: str = ""
    """For the answer 1, e.g. ``1 grown-up``; empty: number and unit."""
    many: str = ""
    """For other numbers and for lists that stand alone; ``#`` stands for the number or the list."""
    none: str = ""
    """For 0, ``none`` or nothing at all."""
    values: Mapping[str, str] = field(default_factory=dict)


def term(key: str) -> Term:
    """The words of this key."""
    return _TERMS.get(key) or Term(_bare(key))


def key_words(key: str) -> str:
    """Its short name: ``barrier height``."""
    return term(key).name


def _bare(key: str) -> str:
    for end in _UNIT_ENDS:
        key = key.removesuffix(end)
    return key.replace("_", " ")


def _people(name: str, one: str, many: str, none: str) -> Term:
    return Term(name, f"1 {one}", f"# {many}", none)


_TERMS: dict[str, Term] = {
    "adults": _people("grown-ups", "grown-up", "grown-ups", "no grown-ups"),
    "children": _people("children", "child", "children", "no children"),
    "child_ages": Term("ages of the children", none="no ages"),
    "children_ages": Term("ages of the children", none="no ages"),
    "children_under_135cm": Term(
        "children under 135 cm", "1 of them under 135 cm", "# of them under 135 cm", "none of them under 135 cm"
    ),
    "child_mass_kg": Term("weight of a child"),
    "child_seat": Term(
        "kind of child seat",
        values={
            "none": "no child seat",
            "belt": "child seat held by the belt",
            "rigid": "child seat on rigid anchors",
            "strap": "child seat with a top strap",
        },
    ),
    "sleepers": _people("sleepers", "sleeps in it", "sleep in it", "nobody sleeps in it"),
    "sleepers_upstairs": Term("sleepers upstairs", "1 upstairs", "# upstairs", "nobody upstairs"),
    "sleepers_upstairs_kg": Term("weight of the sleepers upstairs"),
    "children_upstairs": Term("children upstairs", "1 child upstairs", "# children upstairs", "no child upstairs"),
    "tallest_sleeper_mm": Term("length of the tallest sleeper"),
    "country": Term(
        "country of registration",
        values={"GB": "United Kingdom", "IE": "Ireland", "FR": "France", "DE": "Germany", "other": "another country"},
    ),
    "steering": Term("steering side", values={"left": "steering on the left", "right": "steering on the right"}),
    "parking_limit_mm": Term("barrier height", none="no barrier"),
    "season": Term(
        "season", values={"summer": "summer only", "three-season": "spring to autumn", "winter": "winter as well"}
    ),
    "region": Term("region", values={"uk": "mostly in the UK", "south": "mostly in the south"}),
    "design_temp_c": Term("coldest night"),
    "altitude_m": Term("height above the sea", none="at sea level"),
    "nights_off_grid": Term(
        "nights without a plug", "1 night without a plug", "# nights without a plug", "no night without a plug"
    ),
    "drive_h_per_day": Term("driving on such days", none="no driving on such days"),
    "plugged_every_night": Term(
        "on a plug every night", values={"yes": "on a plug every night", "no": "not on a plug every night"}
    ),
    "site_amps": Term("amps of the weakest pitch"),
    "gas": Term("gas", values={"yes": "gas", "no": "no gas", "any": "do not mind"}),
    "must_run": Term(
        "what must run away from the plug",
        many="# away from the plug",
        none="nothing special",
        values={
            "hair-dryer": "hair dryer",
            "induction": "induction hob",
            "e-bike": "charging of an e-bike",
            "medical": "medical device",
        },
    ),
    "ceiling_gross_pence": Term("price ceiling", none="no ceiling named"),
    "van_in_ceiling": Term(
        "van inside the ceiling", values={"yes": "van inside that sum", "no": "van not inside that sum"}
    ),
    "pets": _people("pets", "pet", "pets", "no pets"),
    "bikes": _people("bikes", "bike", "bikes", "no bikes"),
    "extra_load_kg": Term("other load", none="no other load"),
    "extra_load_where": Term("place of the other load", values={"inside": "load inside", "rack": "load on the rack"}),
    "wheelchair": Term("wheelchair", values={"yes": "a wheelchair travels", "no": "no wheelchair"}),
    "motor_caravan": Term(
        "to count as a motor caravan",
        values={"yes": "to count as a motor caravan", "no": "need not count as a motor caravan"},
    ),
    "licence": Term("driving licence", values={"b": "licence B", "c1": "licence C1"}),
    "weeks_wanted": Term("weeks wanted", "in 1 week", "in # weeks", "date open"),
    "signing": Term("signing", values={"yes": "about to sign", "no": "not about to sign"}),
    "van_data": Term("van data", values={"complete": "van data complete", "missing": "van data missing"}),
    "age_days": Term("age of the quote"),
    "unknowns": Term(
        "open questions",
        values={
            "owned": "every open question has a person and a date",
            "open": "an open question has nobody or no date",
        },
    ),
    "own_parts": Term(
        "sheets of the customer's own parts",
        values={
            "none": "no own parts",
            "complete": "sheets of own parts complete",
            "missing": "sheets of own parts missing",
        },
    ),
    "child_seats_tried": Term(
        "child seats tried side by side",
        values={"yes": "child seats tried side by side", "no": "child seats not tried yet"},
    ),
    "changed_after_signing": Term(
        "changed after signing", values={"yes": "changed after signing", "no": "not changed after signing"}
    ),
    "change_order": Term(
        "written change",
        values={"none": "no written change", "open": "written change not signed", "signed": "written change signed"},
    ),
    "past_freeze": Term(
        "change after its freeze point",
        values={"yes": "change after its freeze point", "no": "change before its freeze point"},
    ),
    "contract_place": Term(
        "place of signing",
        values={
            "unknown": "place of signing not known yet",
            "premises": "signed at our premises",
            "home": "signed at the customer's home",
            "distance": "signed by telephone or online",
        },
    ),
}
