"""The commissioning record: what must be read at each hold point, with room for the reading."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Facts, Heading, Paragraph, Table, Weight
from specbuilder.documents.sheets.running import banner
from specbuilder.documents.sheets.workshop.material import Material
from specbuilder.model.catalogue import WorkStep
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind
from specbuilder.wording.dates import day_words, written_day_short
from specbuilder.wording.names import group_name, listed
from specbuilder.wording.plain import ended, lowered
from specbuilder.workshop.passing import pass_figures

_COLUMNS = (
    Column(head="What is read", share=3.4),
    Column(head="Must be", share=2.6),
    Column(head="Reading", share=2),
    Column(head="By, on", share=1.8),
)
_BLANK = frozenset({2, 3})
_NOT_WRITTEN, _MAYBE_BELOW = "reading not written down", "below, or reading not written down"
"""In the place of a reading once its hold point is passed: a blank would be filled in after the fact."""
_FIRST = (
    "H0 to H10 are the points at which the work stops until somebody has read and signed. Write what was read, not "
    "that it was right. Figures of the part's own paper and of the current local code go before those printed here. "
    "Whoever tests signs for his own trade, and nobody signs for a reading he has not seen."
)


def record(found: Material) -> Iterator[Block]:
    """Head of the pack, the van, then every hold point."""
    yield Heading(text="Commissioning record", level=1)
    warning = banner(found.case)
    if warning:
        yield Paragraph(text=ended(warning), weight=Weight.STRONG)
    undecided = listed(lowered(group_name(found.catalogue, group)) for group in found.view.report.undecided)
    if undecided:
        yield Paragraph(text=f"Not chosen yet, so nothing of it stands in here: {undecided}.", weight=Weight.STRONG)
    yield Facts(rows=tuple(_van(found)))
    yield Paragraph(text=_FIRST)
    for step in found.steps:
        if step.hold_point:
            yield Heading(text=f"{step.hold_point}. {step.hold_text}", level=3)
            yield _hold_point(found, step)


def _van(found: Material) -> Iterator[tuple[str, str]]:
    option, data = found.view.van_option, found.spec.van_data
    yield "Van", option.name if option else "not decided"
    yield "Registration", one_line(data.registration)
    yield "Chassis number, last six", one_line(data.vin_tail)
    yield "Mileage out", ""
    handed = found.spec.recorded(RecordKind.BUILT)
    yield "Handed over", written_day_short(handed[-1].day) if handed else ""
    yield "Printed", day_words(found.case.today)


def _hold_point(found: Material, step: WorkStep) -> Table:
    """What must be read, what was read and recorded so far, and who passed it."""
    read = [_read(one) for one in _about(found, RecordKind.READING, step)]
    missing = ("", "")
    if _about(found, RecordKind.PASSED, step):
        missing = (_MAYBE_BELOW if read else _NOT_WRITTEN, "-")
    asked = [(figure.what, figure.must_be, *missing) for figure in pass_figures(found.view, step)]
    rows = [*asked, *read, _passed(found, step)]
    return Table(columns=_COLUMNS, rows=tuple(rows), blank=_BLANK, strong=frozenset({len(rows) - 1}))


def _read(one: Record) -> tuple[str, str, str, str]:
    return "Recorded", "", one_line(one.words), _by(one)


def _passed(found: Material, step: WorkStep) -> tuple[str, str, str, str]:
    """The last signature counts."""
    passed = _about(found, RecordKind.PASSED, step)
    if not passed:
        return f"{step.hold_point} passed", "", "", ""
    return f"{step.hold_point} passed", "", one_line(passed[-1].words) or "passed", _by(passed[-1])


def _by(one: Record) -> str:
    return f"{one_line(one.by)}, {written_day_short(one.day)}"


def _about(found: Material, kind: RecordKind, step: WorkStep) -> list[Record]:
    return [one for one in found.spec.recorded(kind) if one.about == step.hold_point]
