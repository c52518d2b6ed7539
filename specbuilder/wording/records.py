"""What was written down of a job, in a few words."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind

from .names import option_name
from .quantities import money, money_exact


def record_name(catalogue: Catalogue, record: Record) -> str:
    """``order signed by M. Hale``, ``deposit of £2,430 received``, ``hold point H3 passed``."""
    about, words, by = one_line(record.about), one_line(record.words), one_line(record.by)
    match record.kind:
        case RecordKind.QUOTED:
            return f"quote of {record.day}"
        case RecordKind.SIGNED:
            return f"signature of {by}"
        case RecordKind.DEPOSIT:
            return f"deposit of {_sum(record.pence or 0, catalogue.firm.currency)} received"
        case RecordKind.SUPPLY:
            return f"{option_name(catalogue, OptionId(record.about))}: {words}"
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


def _sum(pence: int, currency: str) -> str:
    """What came in, to the penny where there are any."""
    return money_exact(pence, currency) if pence % 100 else money(pence, currency)


def stays_done(catalogue: Catalogue, record: Record) -> str:
    """What undo does not take back: ``Stays done: signature of M. Hale. Undo reaches back to it and no further``."""
    return f"Stays done: {record_name(catalogue, record)}. Undo reaches back to it and no further"
