"""What was written down of a job, in a few words."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind

from .quantities import money


def record_name(record: Record, currency: str) -> str:
    """``order signed by M. Hale``, ``deposit of £2,430 received``, ``hold point H3 passed``."""
    about, words, by = one_line(record.about), one_line(record.words), one_line(record.by)
    match record.kind:
        case RecordKind.QUOTED:
            return f"quote of {record.day}"
        case RecordKind.SIGNED:
            return f"signature of {by}"
        case RecordKind.DEPOSIT:
            return f"deposit of {money(record.pence or 0, currency)} received"
        case RecordKind.SUPPLY:
            return f"{about}: {words}"
        case RecordKind.PASSED:
            return f"hold point {about} passed"
        case RecordKind.READING:
            return f"reading at {about}: {words}"
        case RecordKind.BUILT:
            return f"handed over to {by}"
        case RecordKind.PROMISED:
            return f'promise "{words}"'
        case RecordKind.CALL:
            return f"next call on {record.due}: {words}"
        case _:
            assert_never(record.kind)
