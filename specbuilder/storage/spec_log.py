"""What happened to a job, in a spec's file: the records, and the work that signed changes made useless."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.plain_text import lines, one_line
from specbuilder.model.record import Record, RecordKind, Undone
from specbuilder.model.spec import Spec

from .fields import Fields
from .text_limits import NOTE_LONGEST, cut
from .toml_out import comment, exact, item

_RECORDS = "RECORDS of the job, as they were written down. What is recorded stays; corrections are recorded as well."
_UNDONE = "UNDONE: work that a signed change made useless; it is in the price and in the hours."


def log(spec: Spec) -> Iterator[str]:
    """The records, oldest first, and what was undone."""
    if spec.undone:
        yield "\n" + comment(_UNDONE)
    for work in spec.undone:
        said = {"what": one_line(work.words), "hours": exact(work.hours), "net_pence": work.net_pence}
        holes = [one_line(label) for label in work.holes] or None
        yield item("undone", {**said, "change_order": work.order, "holes": holes}, always=("what",))
    yield "\n" + comment(_RECORDS if spec.records else f"{_RECORDS} None.")
    for record in spec.records:
        yield _record(record)


def _record(record: Record) -> str:
    return item(
        "record",
        {
            "kind": record.kind.value,
            "at": one_line(record.at),
            "by": one_line(record.by),
            "about": one_line(record.about),
            "words": cut(lines(record.words), NOTE_LONGEST),
            "pence": record.pence,
            "figure": exact(record.figure),
            "due": one_line(record.due),
            "revision": record.revision,
        },
        always=("kind",),
    )


def read_records(top: Fields) -> tuple[Record, ...]:
    """The records of a file."""
    return tuple(_read_record(fields) for fields in top.tables("record"))


def read_undone(top: Fields) -> tuple[Undone, ...]:
    """The work that was undone."""
    return tuple(_read_undone(fields) for fields in top.tables("undone"))


def _read_record(fields: Fields) -> Record:
    record = Record(
        kind=fields.word("kind", RecordKind),
        at=fields.text("at", ""),
        by=fields.text("by", ""),
        about=fields.text("about", ""),
        words=fields.text("words", "", lines=True, longest=NOTE_LONGEST),
        pence=fields.whole("pence") if fields.has("pence") else None,
        figure=fields.number("figure") if fields.has("figure") else None,
        due=fields.text("due", ""),
        revision=fields.whole("revision", 1),
    )
    fields.close()
    return record


def _read_undone(fields: Fields) -> Undone:
    work = Undone(
        words=fields.text("what"),
        hours=fields.number("hours"),
        net_pence=fields.whole("net_pence"),
        order=fields.whole("change_order"),
        holes=fields.texts("holes", ()),
    )
    fields.close()
    return work
