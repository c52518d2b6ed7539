"""One thing that happened, written down: a hold point, a part, the deposit, a promise, a call, the hand-over."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import ClassVar

from specbuilder.model.life import Hindrance, LifeStep
from specbuilder.model.record import Record
from specbuilder.storage.disk import DiskError
from specbuilder.tui.items import Field, Item, OnField
from specbuilder.tui.keys import Where
from specbuilder.tui.line import Line, line, wrapped
from specbuilder.tui.sealing import seal
from specbuilder.wording import build as words
from specbuilder.wording.life import hindrance_lines, not_yet
from specbuilder.wording.records import record_name

from .form import FormField, FormPage
from .hindered import hindrance_rows
from .page import Host


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordForm:
    """What one form asks, and what it writes down."""

    title: str
    fields: tuple[FormField, ...]
    take: str
    records: Callable[[RecordPage], tuple[Record, ...]]
    """What is written down; nothing: that is said."""
    sentences: tuple[str, ...] = ()
    step: LifeStep | None = None
    """Set where something may be in the way."""
    hold: str = ""
    hints: tuple[tuple[Item, str], ...] = ()
    """What stands below a field, where its own hint does not say enough."""
    start: Item | None = None
    """Where the cursor begins, when not on the first gap."""


class RecordPage(FormPage):
    """A form over the build page."""

    where: ClassVar[Where] = Where.RECORD

    def __init__(self, host: Host, form: RecordForm) -> None:
        super().__init__(host, form.fields)
        self.form = form
        self._found = host.deeds.in_the_way(form.step, hold=form.hold) if form.step is not None else ()
        if form.start is not None:
            self.at = form.start

    def title(self) -> str:
        """What is written down."""
        return self.form.title

    def sentences(self) -> Sequence[str]:
        """What is to be known of it."""
        return self.form.sentences

    def take_line(self) -> str:
        """What Enter does."""
        return self.form.take

    def below(self, cells: int) -> Sequence[Line]:
        """What is in the way; it is told and leads nowhere."""
        rows = hindrance_rows(self.host, self.form.step, self._found, cells) if self.form.step is not None else []
        return [Line(row.bits) for row in rows]

    def foot(self, cells: int) -> Sequence[Line]:
        """What must be read, or how to fill the field in."""
        told = dict(self.form.hints).get(self.at) if self.at is not None else None
        return super().foot(cells) if told is None else [line(f" {part}") for part in wrapped(told, cells - 2)]

    def typed(self, field: Field, about: str = "") -> str:
        """What stands in a field."""
        return next((one.value for one in self.fields if one.item == OnField(field, about)), "").strip()

    def put(self) -> None:
        """Write it down; trouble with the disk is said, and what was done holds all the same."""
        if self._found and self.form.step is not None:
            self.host.say(self._first(self._found, self.form.step))
            return
        records = self.form.records(self)
        if not records:
            self.host.say(words.nothing_read())
            return
        self.host.close()
        told = words.written_down(record_name(self.host.catalogue, records[-1]))
        try:
            for record in records:
                self.host.deeds.record(record)
        except DiskError as error:
            told = str(error)
        self.host.say(told)
        seal(self.host)

    def _first(self, found: tuple[Hindrance, ...], step: LifeStep) -> str:
        lines = hindrance_lines(self.host.catalogue, step, found)
        return f"{not_yet(step, len(lines))} {lines[0]}"
