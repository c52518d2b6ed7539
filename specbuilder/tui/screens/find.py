"""Find by a few letters and go there."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.session.find import Hit, HitKind, find
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, Item, OnAnswer, OnField, OnFinding, OnGroup, OnOption, OnReading
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Bit, Line, cut, left, line, wrapped
from specbuilder.wording.finding_things import hit_words
from specbuilder.wording.forms import field_value, field_words, form_title
from specbuilder.wording.last_line import nothing_found, type_letters
from specbuilder.wording.names import key_name
from specbuilder.wording.states import step_name

from .fields import FIELDS, value_of
from .ledgers import LedgerPage
from .page import Host, Page
from .why import WhyPage

MOST = 60


class FindPage(Page):
    """What was typed, and what it found."""

    where: ClassVar[Where] = Where.FIND
    tall: ClassVar[bool] = True
    searches: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.start_typing()
        self.hits: dict[Item, Hit] = {}

    def head(self, cells: int) -> Sequence[Line]:
        """The text to look for."""
        typed = self.entry.bits(cells - 10) if self.entry is not None else ()
        return [line(" ", Bit(f"{form_title('find')}: ", Ink.HEAD), *typed)]

    def lines(self, cells: int) -> Sequence[Line]:
        """One line a hit, best first."""
        if not self.hits:
            typed = self.entry is not None and self.entry.text.strip()
            told = nothing_found() if typed else type_letters()
            return [line(f"   {text}") for text in wrapped(told, cells - 4)]
        rows: list[Line] = []
        for item, hit in self.hits.items():
            kind, name = self._words(item, hit)
            room = cells - 3 - 9 - 14
            rows.append(line("   ", left(step_name(hit.step), 9), left(kind, 12), "  ", cut(name, room), item=item))
        return rows

    def _words(self, item: Item, hit: Hit) -> tuple[str, str]:
        if isinstance(item, OnField):
            value = field_value(item.field, value_of(self.host.report.spec, item.field))
            return hit.kind.value, f"{field_words(item.field).label}: {value}"
        return hit_words(self.host.catalogue, self.host.report, hit.kind.value, hit.id)

    def hint_of(self, act: Act) -> str | None:
        """Enter only where something is found."""
        return "" if act is Act.ENTER and not self.hits else None

    def searched(self) -> None:
        """Look again; the best stands first."""
        text = self.entry.text if self.entry is not None else ""
        catalogue = self.host.catalogue
        called = {key: key_name(catalogue, key) for key in catalogue.brief}
        self.hits = {_item(hit): hit for hit in find(catalogue, text, called, _typed())[:MOST]}
        self.at = next(iter(self.hits), None)

    def enter(self) -> None:
        """Go there."""
        hit = self.hits.get(self.at) if self.at is not None else None
        match self.at:
            case OnReading(ledger):
                self.host.close()
                self.host.show(LedgerPage(self.host, ledger))
            case OnFinding(rule):
                found = next((f for f in self.host.report.findings if f.rule == rule), None)
                self.host.close()
                if found is not None:
                    self.host.show(WhyPage(self.host, found))
            case _ if hit is not None:
                self.host.walk_to(hit.step, self.at)
            case _:
                self.host.say(nothing_found())


def _typed() -> tuple[tuple[Hit, str], ...]:
    return tuple((Hit(kind=HitKind.FIELD, id=f.value, step=step), field_words(f).label) for step, f in FIELDS)


def _item(hit: Hit) -> Item:
    match hit.kind:
        case HitKind.OPTION:
            return OnOption(OptionId(hit.id))
        case HitKind.GROUP:
            return OnGroup(GroupId(hit.id))
        case HitKind.QUESTION:
            return OnAnswer(BriefKey(hit.id))
        case HitKind.LEDGER:
            return OnReading(LedgerId(hit.id))
        case HitKind.RULE:
            return OnFinding(RuleId(hit.id))
        case HitKind.FIELD:
            return OnField(Field(hit.id))
