"""What Find found, in words."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.report import Report

from .brief import line_words
from .names import group_name, key_name, ledger_name, option_name
from .plain import raised
from .states import UNDECIDED, state_word, to_be_said, verdict_word

IF_BROKEN = "said if broken"
"""Before the sentence of a rule that says nothing now."""


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
            because = catalogue.rules[RuleId(id_)].because
            return _rule_words(finding, because) if finding is not None else ("rule", f'{IF_BROKEN}: "{because}"')


def _rule_words(finding: Finding, because: str) -> tuple[str, str]:
    """The sentence of a rule that is kept is said only if it were broken, and so it must read."""
    match finding.verdict:
        case Verdict.HOLDS:
            return "holds", f'kept; {IF_BROKEN}: "{because}"'
        case Verdict.CANNOT_TELL:
            return "cannot tell", f'at stake: "{because}"'
        case Verdict.BROKEN:
            noted = finding.level is Level.NOTE and not finding.accepted
            return to_be_said() if noted else verdict_word(finding.verdict, finding.accepted), because


def open_ledger(catalogue: Catalogue, ledger: LedgerId) -> str:
    """``ledger: Weight on the roof``."""
    return f"ledger: {ledger_name(catalogue, ledger)}"
