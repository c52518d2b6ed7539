"""What the customer was told and accepted, what was promised, what others sign, and what is open."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Items, Paragraph, Table
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Verdict
from specbuilder.model.own_parts import blanks_of, is_theirs
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.rules import BriefIs, FigureAbove, MarginBelow, WithinBound
from specbuilder.wording.dates import written_day_short
from specbuilder.wording.findings import silent_words, strangers_words
from specbuilder.wording.findings_plain import plain_line, without_level
from specbuilder.wording.names import key_name, listed, option_name
from specbuilder.wording.open_things import question_text

from .material import Material

_MONEY = "pence"


def told(material: Material) -> tuple[Block, ...]:
    """In the order of the job: said and accepted, promised, papers, open questions, findings."""
    return (
        Heading(text="What the customer was told and accepted"),
        _accepted(material),
        Heading(text="What was promised"),
        _promised(material),
        Heading(text="Papers that others sign"),
        _papers(material),
        Heading(text="Open questions"),
        *_questions(material),
        Heading(text="What does not hold, is not known, or is to be told"),
        *_findings(material),
    )


def _accepted(material: Material) -> Table:
    """In the words used. What is about money is no matter of the floor."""
    columns = (
        Column(head="Words the customer accepted", share=5),
        Column(head="By", share=1.4),
        Column(head="On", share=1.2),
    )
    rows = tuple(
        (
            without_level(one_line(each.words)) or _reason(material, each.rule),
            one_line(each.by),
            written_day_short(one_line(each.at)),
        )
        for each in material.spec.accepted
        if not _is_of_money(material, each.rule)
    )
    return Table(columns=columns, rows=rows)


def _reason(material: Material, rule: RuleId) -> str:
    found = material.catalogue.rules.get(rule)
    return found.because if found is not None else "a rule that is no longer in the catalogue"


def _promised(material: Material) -> Table:
    columns = (Column(head="Promise", share=5), Column(head="By", share=1.4), Column(head="On", share=1.2))
    rows = tuple(
        (one_line(record.words), one_line(record.by), written_day_short(one_line(record.day)))
        for record in material.spec.recorded(RecordKind.PROMISED)
    )
    return Table(columns=columns, rows=rows)


def _papers(material: Material) -> Table:
    """By the hold point at which they must be there, each once with everything it is about."""
    order = {step.hold_point: number for number, step in enumerate(material.steps) if step.hold_point}
    papers = material.catalogue.papers.items()
    columns = (
        Column(head="By", share=0.6),
        Column(head="Paper", share=3),
        Column(head="Signed by", share=1.8),
        Column(head="For", share=3),
        Column(head="There on", share=1.2),
    )
    rows: list[tuple[str, ...]] = []
    for key, paper in sorted(papers, key=lambda found: order.get(found[1].at_hold_point, len(order))):
        concerned = [option.id for _, option in material.known if key in option.papers]
        if concerned:
            rows.append((paper.at_hold_point, paper.name, paper.signed_by, material.view.names(concerned), ""))
    return Table(columns=columns, rows=tuple(rows), blank=frozenset({4}))


def _questions(material: Material) -> Iterator[Block]:
    """Who finds it out, by when, and which step it stops; then what nobody has been asked."""
    columns = (
        Column(head="Question", share=4),
        Column(head="Who finds out", share=1.5),
        Column(head="By", share=1.3),
        Column(head="Stops", share=1),
        Column(head="Answer", share=2),
    )
    rows = tuple(
        (
            one_line(question.text),
            one_line(question.owner) or "NOBODY NAMED",
            written_day_short(one_line(question.due)) or "NO DATE",
            one_line(question.stops) or "-",
            "",
        )
        for question in material.spec.questions
    )
    yield Table(columns=columns, rows=rows, blank=frozenset({4}))
    unasked = tuple(_unasked(material))
    if unasked:
        yield Heading(text="Not known, and nobody asked yet", level=3)
        yield Items(rows=unasked)


def _unasked(material: Material) -> Iterator[str]:
    """Lines of the brief and groups that are open without a question to anybody; what stands on an assumption."""
    catalogue, report = material.catalogue, material.view.report
    asked = {question.text for question in material.spec.questions}
    keys = [key for key in report.unknown if question_text(catalogue, key=key) not in asked]
    if keys:
        yield f"Of the brief: {listed(key_name(catalogue, key) for key in keys)}."
    groups = [group for group in report.undecided if question_text(catalogue, group=group) not in asked]
    if groups:
        yield f"Not chosen: {listed(catalogue.groups[group].name for group in groups)}."
    own = [
        one.choice.option
        for one in material.chosen
        if one.option is not None and is_theirs(one.option, one.choice) and blanks_of(one.option, one.choice.own_part)
    ]
    if own:
        yield f"Blanks on the sheet of the customer's part: {listed(option_name(catalogue, o) for o in own)}."
    if report.assumed:
        yield f"Assumed, and said by nobody: {listed(key_name(catalogue, key) for key in report.assumed)}."


def _findings(material: Material) -> Iterator[Block]:
    """What does not hold, in the order it stops the work; without money."""
    catalogue, report = material.catalogue, material.view.report
    open_ = [f for f in report.findings if f.verdict is not Verdict.HOLDS and not _is_of_money(material, f.rule)]
    said = [plain_line(catalogue, report, finding) for finding in open_]
    said += strangers_words(report)
    silent = silent_words(catalogue, report)
    said += [silent] if silent else []
    yield Items(rows=tuple(one_line(line) for line in said)) if said else Paragraph(text="None")


def _is_of_money(material: Material, rule: RuleId) -> bool:
    """Whether a rule is about a sum of money: its words name it, and the floor sees no prices."""
    found, catalogue = material.catalogue.rules.get(rule), material.catalogue
    for half in (found.when, found.then) if found is not None else ():
        for atom in (atom for term in half.terms for atom in term.atoms):
            match atom:
                case WithinBound(ledger=ledger) | MarginBelow(ledger=ledger) | FigureAbove(ledger=ledger):
                    measured = catalogue.ledgers.get(ledger)
                    unit = measured.unit if measured is not None else ""
                case BriefIs(key=key):
                    line = catalogue.brief.get(key)
                    unit = line.unit if line is not None else ""
                case _:
                    unit = ""
            if unit == _MONEY:
                return True
    return False
