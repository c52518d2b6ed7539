"""What Find found, in words."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.report import Report

from .brief import line_words
from .names import group_name, key_name, ledger_name, option_name
from .plain import raised
from .states import UNDECIDED, state_word


def hit_words(catalogue: Catalogue, report: Report, kind: str, id_: str) -> tuple[str, str]:
    """State and name of a hit: ``open``, ``Bench Three``. ``kind`` is option, group, question, ledger or rule."""
    match kind:
        case "option":
            status = report.options.get(OptionId(id_))
            return (state_word(status.state) if status else ""), option_name(catalogue, OptionId(id_))
        case "group":
            decided = report.groups[GroupId(id_)].decided
            return ("decided" if decided else UNDECIDED), group_name(catalogue, GroupId(id_))
        case "question":
            words = line_words(catalogue, report, BriefKey(id_))
            return "brief", f"{raised(key_name(catalogue, BriefKey(id_)))}: {words}"
        case "ledger":
            return "ledger", ledger_name(catalogue, LedgerId(id_))
        case _:
            finding = next((f for f in report.findings if f.rule == id_), None)
            return (finding.verdict.value if finding else "rule"), catalogue.rules[RuleId(id_)].because


def open_ledger(catalogue: Catalogue, ledger: LedgerId) -> str:
    """``ledger: Weight on the roof``."""
    return f"ledger: {ledger_name(catalogue, ledger)}"
