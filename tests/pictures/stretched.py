"""A catalogue in which every name is as long as nobody wants it."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from specbuilder.model.catalogue import Catalogue

LONG = ("Wandelholzverbindungsbeschlag of the long kind with all that belongs to it, " * 7)[:500]
"""Five hundred characters, one word of them longer than a narrow column."""


def stretched(known: Catalogue) -> Catalogue:
    """The house catalogue with a long name and a long sentence everywhere; prices and masses are long as well."""
    return replace(
        known,
        firm=replace(known.firm, name=LONG, town=LONG),
        questions=MappingProxyType({k: replace(q, asks=LONG) for k, q in known.questions.items()}),
        brief=MappingProxyType({k: replace(x, ask=LONG) for k, x in known.brief.items()}),
        groups=MappingProxyType({k: replace(g, name=LONG, question=LONG) for k, g in known.groups.items()}),
        options=MappingProxyType(
            {
                k: replace(o, name=f"{o.name} {LONG}", description=LONG, price_net_pence=o.price_net_pence * 100_000)
                for k, o in known.options.items()
            }
        ),
        rules=MappingProxyType({k: replace(r, because=LONG, fixes=(LONG,)) for k, r in known.rules.items()}),
        ledgers=MappingProxyType({k: replace(x, name=LONG) for k, x in known.ledgers.items()}),
    )
