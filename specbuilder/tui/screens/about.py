"""What a reason is about: the line of the walk, the brief or the ledgers one goes to from it."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit, LeaveOut, Move, SetCount, SetNote, SetOwner, Take
from specbuilder.model.findings import Cause, Finding
from specbuilder.model.ids import OptionId
from specbuilder.model.ledger import Lack
from specbuilder.tui.items import Item, OnAnswer, OnGroup, OnOption, OnReading
from specbuilder.wording.names import key_name, ledger_name, option_name


def about_cause(catalogue: Catalogue, node: Cause, asked: OptionId | Finding) -> Item | None:
    """Where a node of a chain of reasons leads; None where it is about what was asked, or about nothing to go to."""
    if node.key is not None:
        return OnAnswer(node.key) if node.key in catalogue.brief else None
    if node.ledger is not None:
        return OnReading(node.ledger)
    if node.option is not None:
        return OnOption(node.option) if node.option in catalogue.options and node.option != asked else None
    return OnGroup(node.group) if node.group is not None and node.group in catalogue.groups else None


def about_lack(lack: Lack) -> Item | None:
    """The question that must be answered first."""
    if lack.key is not None:
        return OnAnswer(lack.key)
    return OnGroup(lack.group) if lack.group is not None else None


def about_edit(catalogue: Catalogue, edit: Edit) -> Item | None:
    """The row an edit changed; None where it is about no single row."""
    match edit:
        case Take() | LeaveOut() | SetCount() | Move() | SetOwner() | SetNote():
            return OnOption(edit.option) if edit.option in catalogue.options else None
        case AnswerLine():
            return OnAnswer(edit.key) if edit.key in catalogue.brief else None
        case _:
            return None


def about_line(catalogue: Catalogue, finding: Finding, text: str) -> Item | None:
    """What a line that a finding rests on names: its ledger, one of its choices, or an answer."""
    if finding.reading is not None and text.startswith(ledger_name(catalogue, finding.reading)):
        return OnReading(finding.reading)
    named = [o for o in finding.subjects if o in catalogue.options and option_name(catalogue, o) in text]
    if named:
        return OnOption(max(named, key=lambda option: len(option_name(catalogue, option))))
    return next((OnAnswer(key) for key in finding.keys if text.startswith(f"{key_name(catalogue, key)}:")), None)
