"""Accepting something in writing: the words, who gives theirs, and a second key."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import Accept
from specbuilder.model.ids import RuleId
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, OnField, OnWord
from specbuilder.tui.keys import Where
from specbuilder.tui.line import EMPTY, Bit, Line, line, wrapped
from specbuilder.wording.acceptance import accept_hint, accept_words, default_by
from specbuilder.wording.forms import field_words, form_title

from .fields import field_line
from .page import Host, Page

TAKE = OnWord("accept")


class AcceptPage(Page):
    """The sentence that is accepted, and by whom."""

    where: ClassVar[Where] = Where.ACCEPT

    def __init__(self, host: Host, rule: RuleId) -> None:
        super().__init__(host)
        self.rule = rule
        self.by = default_by(host.report)
        self.at = TAKE

    def head(self, cells: int) -> Sequence[Line]:
        """What is asked."""
        return [line(" ", Bit(form_title("accept"), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The words, the name, and the line that takes it."""
        words = accept_words(self.host.catalogue, self.host.report, self.rule)
        item = OnField(Field.BY, self.rule)
        typing = self.entry if self.at == item else None
        return [
            *(line(f"   {text}") for text in wrapped(words, cells - 5)),
            EMPTY,
            field_line(item, " ", self.by, typing, self.host.drafts.get(item, ""), cells),
            line(f"   {accept_hint()}", item=TAKE),
        ]

    def foot(self, cells: int) -> Sequence[Line]:
        """How to fill the name in."""
        return [line(f" {field_words(Field.BY).hint}")] if isinstance(self.at, OnField) else []

    def enter(self) -> None:
        """Type the name, or give the word."""
        if isinstance(self.at, OnField):
            self.start_typing("" if self.host.drafts.get(self.at) else self.by)
            return
        words = accept_words(self.host.catalogue, self.host.report, self.rule)
        if self.host.edit(Accept(rule=self.rule, words=words, by=self.by, at=self.host.now())):
            self.host.close()

    def take_text(self, text: str) -> bool:
        """The name of who gives their word."""
        if not text:
            return False
        self.by = text
        self.at = TAKE
        return True
