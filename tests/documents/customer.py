"""The customer's copy of the examples, and how it is read in tests."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import pytest

from specbuilder.documents.blocks import Big, Facts, Items, Paper
from specbuilder.documents.formats.pdf import set_pdf
from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.model.kinds import JobState, Owner
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Choice, OwnPart, Spec

from .cases import NAMES, case, spec_of
from .reading import part, texts

FAMILY = "saturday-family"
EVERY = pytest.mark.parametrize("name", NAMES)
QUOTED = Record(
    kind=RecordKind.QUOTED, at="2031-04-14 11:00", by="the counter", pence=2_441_400, figure=2_441_400, due="2031-05-14"
)
SIGNED = Record(kind=RecordKind.SIGNED, at="2031-04-16 09:30", by="M. Hale", words="the owner", about="home")
NEVER = re.compile(r"\b(approved|certified|legal|legally|crash[- ]tested|non-refundable|unlimited)\b", re.IGNORECASE)


def copy(name: str = FAMILY, **changes: Any) -> Paper:
    return customer_copy(case(name, **changes))


def quoted(name: str = FAMILY, **changes: Any) -> Case:
    return case(name, state=JobState.QUOTED, records=(QUOTED,), **changes)


def said(paper: Paper) -> str:
    """All of it, as it is read."""
    return "\n".join(texts(paper.blocks))


def facts(paper: Paper) -> dict[str, str]:
    return {name: value for block in paper.blocks if isinstance(block, Facts) for name, value in block.rows}


def ticked(paper: Paper) -> list[str]:
    return [row for block in paper.blocks if isinstance(block, Items) and block.boxes for row in block.rows]


def price(paper: Paper) -> Big:
    return next(block for block in paper.blocks if isinstance(block, Big))


def pages(paper: Paper) -> int:
    return len(re.findall(rb"/Type\s*/Page\b", set_pdf(paper)))


def table(paper: Paper, heading: str) -> list[tuple[str, ...]]:
    return [row for block in part(paper, heading).blocks for row in getattr(block, "rows", ())]


def with_own_fridge(sheet: OwnPart) -> tuple[Choice, ...]:
    spec: Spec = spec_of(FAMILY)
    return tuple(
        replace(choice, owner=Owner.CUSTOMER, own_part=sheet) if choice.option == "fridge-front-door" else choice
        for choice in spec.choices
    )
