"""A paper as it is read aloud: one fact a line, every cell behind its head, nothing drawn."""

from __future__ import annotations

import re

from hypothesis import given, settings

from specbuilder.documents.blocks import (
    Big,
    Column,
    Diagram,
    Facts,
    Heading,
    Items,
    Node,
    Paper,
    Paragraph,
    Signatures,
    Table,
    Weight,
)
from specbuilder.documents.formats import FORMATS, spoken_blocks, spoken_lines

from .trial_papers import PAPERS, SAMPLE


def test_each_kind_of_block_is_told_in_sentences() -> None:
    told = spoken_blocks(
        (
            Heading(text="Circuits:"),
            Paragraph(text="Keep flames away", weight=Weight.CAUTION),
            Big(label="Price", figure="£24,414", note="VAT in"),
            Facts(rows=(("Van", "Fenwain Short"), ("Paint", ""))),
            Items(rows=("read the torque", "sign"), boxes=True, numbered=True),
            Table(
                columns=(Column(head="Circuit"), Column(head="Fuse"), Column(head="Read")),
                rows=(("C1", "15 A", ""), ("C2", "", "")),
                blank=frozenset({2}),
            ),
            Table(columns=(Column(head="Part"),), rows=(), empty="None"),
            Signatures(roles=("customer",)),
            Diagram(
                roots=(Node(title="Battery", below=(Node(title="Fridge", wire="2.5 mm², 15 A"),)),),
                alt="One line from the battery",
            ),
        )
    )
    assert told == (
        "Circuits:",
        "Caution: Keep flames away",
        "Price: £24,414, VAT in.",
        "Van: Fenwain Short.",
        "Paint: to be filled in.",
        "1 To do: read the torque.",
        "2 To do: sign.",
        "Circuit: C1; Fuse: 15 A; Read: to be filled in.",
        "Circuit: C2; Read: to be filled in.",
        "None.",
        "Signature and date of customer: to be filled in.",
        "One line from the battery.",
        "Battery.",
        "Fridge, from Battery, 2.5 mm², 15 A.",
    )


def test_a_paper_says_first_what_stands_on_every_page() -> None:
    lines = spoken_lines(SAMPLE)
    assert lines[0] == f"{SAMPLE.title}."
    assert lines[1] == f"{SAMPLE.running.firm}."
    (form,) = (form for form in FORMATS if form.name == "spoken")
    assert form.set(SAMPLE).decode().splitlines() == list(lines)


@settings(max_examples=60, deadline=None)
@given(paper=PAPERS)
def test_whatever_a_paper_holds_nothing_is_drawn_and_no_line_is_empty(paper: Paper) -> None:
    for line in spoken_lines(paper):
        assert line.strip()
        assert "\n" not in line
        assert not re.search(r"[ \t]{2,}", line)
