"""What an audit of the rules found, in sentences."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.audit import Lint, LintCode
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, LedgerId, OptionId

from .names import listed
from .quantities import as_written


def lint_line(catalogue: Catalogue, lint: Lint) -> str:
    """``zero-without-note options/roof.toml:12 Ladder: mass_kg is 0 and no zero_note says why``."""
    place = f"{lint.origin} " if lint.origin.file else ""
    return f"{lint.code.value} {place}{_subject(catalogue, lint)}: {_what(lint)}"


def audit_summary(catalogue: Catalogue, lints: tuple[Lint, ...]) -> tuple[str, ...]:
    """What the rules hold, counted, and how many places are odd."""
    vans, options = len(catalogue.vans), len(catalogue.options) - len(catalogue.vans)
    lines = [
        f"Base vans {vans}, groups {len(catalogue.groups)}, options {options}, rules {len(catalogue.rules)}, "
        f"ledgers and figures {len(catalogue.ledgers)}, lines of the brief and the job {len(catalogue.brief)}, "
        f"work steps {len(catalogue.work)}, cautions {len(catalogue.cautions)}, papers {len(catalogue.papers)}, "
        f"tables {len(catalogue.tables)}.",
        "No faults: the program starts with these rules.",
    ]
    if serious := sum(lint.serious for lint in lints):
        lines.append(f"To mend before anything is sold from it: {serious}.")
    counts = {code: sum(lint.code is code for lint in lints) for code in LintCode}
    odd = listed(f"{count} {code.value}" for code, count in counts.items() if count)
    lines.append(f"To look at again: {odd}." if odd else "Nothing to look at again.")
    return tuple(lines)


def _subject(catalogue: Catalogue, lint: Lint) -> str:
    """The name beside the id: whoever mends the file has to find the table."""
    option = catalogue.options.get(OptionId(lint.subject))
    group = catalogue.groups.get(GroupId(lint.subject))
    ledger = catalogue.ledgers.get(LedgerId(lint.subject))
    name = option.name if option else group.name if group else ledger.name if ledger else ""
    return f"{lint.subject} ({name})" if name else lint.subject


def _because(others: str) -> str:
    return f", because of {others}" if others else ""


def _what(lint: Lint) -> str:
    others = listed(lint.others)
    match lint.code:
        case LintCode.CONTRADICTION:
            beside = f"cannot be kept together with {others}" if others else "cannot be kept by any build"
            return f"{beside}: no build stands while it does"
        case LintCode.EMPTY_GROUP:
            return "has no answer: give it one, and one that means none"
        case LintCode.VAN_WITHOUT_BUILD:
            return f"no build without a STOP has this van{_because(others)}"
        case LintCode.DEAD_OPTION:
            return f"no build without a STOP has it{_because(others)}; if it is kept to be refused, say refused = true"
        case LintCode.REFUSED_LIVES:
            return "says refused = true, and some build without a STOP has it"
        case LintCode.NEVER_FIRES:
            return "no build meets its condition"
        case LintCode.ALWAYS_FIRES:
            return "every build meets its condition: say always"
        case LintCode.REDUNDANT:
            return f"says nothing that {others or 'what the options need and give'} does not say already"
        case LintCode.NEEDS_LOOP:
            return f"needs in a circle with {others}: each can only be taken with all of them"
        case LintCode.NO_CASE:
            return "has no case that breaks and mends it"
        case LintCode.UNSETTLED:
            return "was not settled in the time: at the counter such a question is slow too"
        case LintCode.SETTING_MISSING:
            return f"settings lack {lint.field}: its sum cannot be made without it"
        case LintCode.ZERO_WITHOUT_NOTE:
            return f"{lint.field} is 0 and no zero_note says why"
        case LintCode.IMPLAUSIBLE:
            least = as_written(lint.least)
            expected = f"{f'above {least} and up' if lint.above else least} to {as_written(lint.most)}"
            return f"{lint.field} is {as_written(lint.value)}, expected {expected}"
        case LintCode.FIGURE_MISSING:
            return f"lacks {lint.field}: its sums cannot be made without it"
        case LintCode.NO_REASON:
            return f"{lint.field} is empty: it is the sentence the customer hears"
        case LintCode.NO_SOURCE:
            return "source is empty: say where the figures come from"
        case LintCode.NO_FIX:
            return "fixes is empty: say what the seller offers"
        case LintCode.NO_USUAL:
            return "usual is empty: name what the house usually takes"
        case LintCode.TAG_UNUSED:
            return "is given, and nothing asks for it"
        case LintCode.SILENT:
            return "is not summed yet: nothing is known about it"
        case _:
            assert_never(lint.code)
