"""Papers to set in trials: one with every kind of block, and any paper whatever."""

from __future__ import annotations

from hypothesis import strategies as st

from specbuilder.documents.blocks import (
    Big,
    Block,
    Column,
    Diagram,
    Facts,
    Heading,
    Items,
    Node,
    Paper,
    Paragraph,
    Running,
    Signatures,
    Table,
    Weight,
)

RUNNING = Running(
    firm="Harrowden Campers, Ossenthwick",
    job="0147, the Saturday family",
    revision="revision 2, replaces revision 1",
    state="ordered 18 April 2031",
    foot="Planning figures, no certificate. Local codes go first.",
)
DRAFT = Running(
    firm=RUNNING.firm,
    job=RUNNING.job,
    revision="revision 1",
    state="draft, 12 April 2031",
    banner="NOT TO BE BUILT: this is a draft",
    foot=RUNNING.foot,
)
TREE = Node(
    title="Leisure battery",
    note="100 Ah",
    below=(
        Node(
            title="Fuse board",
            wire="16 mm², 1.8 m",
            below=(Node(title="Fridge", note="5.5 A", wire="6 mm², 10 A"), Node(title="Heater", wire="4 mm², 15 A")),
        ),
        Node(title="Inverter", note="1,000 W", wire="35 mm², 125 A"),
    ),
)
EVERY_KIND: tuple[Block, ...] = (
    Big(label="Price, VAT in", figure="£24,816", note="of that VAT £4,136"),
    Heading(text="Holes", level=1),
    Heading(text="Positions"),
    Heading(text="By the door", level=3),
    Paragraph(text="All measures are in millimetres from the datum."),
    Paragraph(text="Sliding door right. Kitchen left.", weight=Weight.STRONG),
    Paragraph(text="Check behind every mark before drilling.", weight=Weight.CAUTION),
    Paragraph(text="Source: the template of the part.", weight=Weight.SMALL),
    Facts(rows=(("Base van", "Fenwain Long"), ("VIN tail", ""))),
    Items(rows=("Removed: awning", "Added: window")),
    Items(rows=("Plate seen", "Photos taken"), boxes=True),
    Items(rows=("First", "Then"), numbered=True),
    Table(
        columns=(Column(head="Hole", share=2), Column(head="From axle mm", right=True), Column(head="As built")),
        rows=(("Window, left", "1,420", ""), ("Hook-up inlet", "3,020", ""), ("In all", "2", "-")),
        strong=frozenset({2}),
        blank=frozenset({2}),
    ),
    Table(columns=(Column(head="Open question"),), rows=(), empty="None."),
    Diagram(roots=(TREE,), alt="From the battery to fridge, heater and inverter."),
    Signatures(roles=("Foreman", "Customer")),
)
SAMPLE = Paper(name="workshop-sheet", title="Workshop sheet", running=DRAFT, blocks=EVERY_KIND)


def paper(*blocks: Block, running: Running = RUNNING, title: str = "Trial") -> Paper:
    return Paper(name="trial", title=title, running=running, blocks=blocks)


LONG_NAME = ("Ferdinandina of the long name and of all the houses beside the water " * 8)[:500]
LONG_WORD = ("Zahnradbahnwagenschrankdeckelknopf" * 9)[:300]
TYPED = st.one_of(
    st.text(max_size=40),
    st.text(alphabet=st.characters(), max_size=12),
    st.text(alphabet="ab \t\n\x00\x1b\u200b\u202e\ufffd", max_size=12),
    st.sampled_from(
        ["", " ", LONG_NAME, LONG_WORD, "12.5 mm²", "900 x 450", "\ud800", "مرحبا", "漢字" * 20, "é́̂" * 9, "| * _ # < `"]
    ),
)
"""What somebody may have typed, and worse."""


def nodes() -> st.SearchStrategy[Node]:
    leaf = st.builds(Node, title=TYPED, note=TYPED, wire=TYPED)
    return st.recursive(
        leaf,
        lambda below: st.builds(
            Node, title=TYPED, note=TYPED, wire=TYPED, below=st.lists(below, max_size=3).map(tuple)
        ),
        max_leaves=12,
    )


@st.composite
def tables(draw: st.DrawFn) -> Table:
    width = draw(st.integers(1, 14))
    cell = draw(st.sampled_from([TYPED, st.sampled_from(["1,420", "yes", "to be ordered by May", "", "0.4 e"])]))
    columns = [Column(head=draw(TYPED), share=draw(st.floats(0.1, 5)), right=draw(st.booleans())) for _ in range(width)]
    rows = draw(st.lists(st.tuples(*[cell] * width), max_size=5))
    some = st.frozensets(st.integers(0, width - 1), max_size=3)
    return Table(columns=tuple(columns), rows=tuple(rows), strong=draw(some), blank=draw(some), empty=draw(TYPED))


PAIRS = st.lists(st.tuples(TYPED, TYPED), max_size=4).map(tuple)
TEXTS = st.lists(TYPED, max_size=4).map(tuple)
BLOCKS: st.SearchStrategy[Block] = st.one_of(
    st.builds(Heading, text=TYPED, level=st.integers(1, 3), new_page=st.booleans()),
    st.builds(Paragraph, text=TYPED, weight=st.sampled_from(Weight)),
    st.builds(Big, label=TYPED, figure=TYPED, note=TYPED),
    st.builds(Facts, rows=PAIRS),
    st.builds(Items, rows=TEXTS, boxes=st.booleans(), numbered=st.booleans()),
    tables(),
    st.builds(Signatures, roles=TEXTS),
    st.builds(Diagram, roots=st.lists(nodes(), max_size=2).map(tuple), alt=TYPED),
)
RUNNINGS = st.builds(Running, firm=TYPED, job=TYPED, revision=TYPED, state=TYPED, banner=TYPED, foot=TYPED)
PAPERS = st.builds(
    Paper, name=st.just("any"), title=TYPED, running=RUNNINGS, blocks=st.lists(BLOCKS, max_size=6).map(tuple)
)
"""Any paper whatever."""
