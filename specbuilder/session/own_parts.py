"""Parts the customer brings: which option stands for one, and the open questions that its blanks are."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, PutQuestion, SetOwner, Take, Together
from specbuilder.model.ids import CUSTOMER_PART, OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.own_parts import SheetLine, blanks_of, is_brought, is_theirs
from specbuilder.model.spec import Choice, OpenQuestion, OwnPart, Spec


def own_instead(catalogue: Catalogue, option: OptionId) -> OptionId | None:
    """The option with which a part the customer brings stands in this one's place; None where there is none.

    It asks the price of fitting and gives no more than this one does: a drawer is no door, a lead battery no lithium.
    """
    known = catalogue.options[option]
    for other in catalogue.options_of(known.group):
        gives = set(other.gives) - {CUSTOMER_PART}
        if is_brought(other) and not other.refused and gives <= set(known.gives):
            return other.id
    return None


def bring_edit(
    catalogue: Catalogue, spec: Spec, option: OptionId, asked: Callable[[SheetLine], OpenQuestion], at: str
) -> Edit:
    """The customer brings it: its sheet is blank, and every blank an open question.

    Args:
        catalogue: what can be built.
        spec: what stands.
        option: the part; one with ``own_instead`` is replaced by that.
        asked: the question about a blank: its words, who finds it out, by when.
        at: when it was said.
    """
    meant = own_instead(catalogue, option) or option
    take = () if spec.has(meant) else (Take(option=meant, at=at),)
    own = SetOwner(option=meant, owner=Owner.CUSTOMER, own_part=OwnPart())
    return Together(edits=(*take, own, *_questions(catalogue, meant, OwnPart(), asked)))


def sheet_edit(
    catalogue: Catalogue, choice: Choice, sheet: OwnPart, asked: Callable[[SheetLine], OpenQuestion]
) -> Edit:
    """The sheet filled in as it is now; what was filled in closes its question, what was emptied is asked."""
    said = blanks_of(catalogue.options[choice.option], choice.own_part)
    questions = _questions(catalogue, choice.option, sheet, asked, but=said)
    own = SetOwner(option=choice.option, owner=Owner.CUSTOMER, own_part=sheet)
    return Together(edits=(own, *questions)) if questions else own


def part_of(option: OptionId, line: SheetLine) -> str:
    """What a question about a blank is about, as ``OpenQuestion.part`` keeps it."""
    return f"{option} {line.value}"


def without_answered(catalogue: Catalogue, spec: Spec) -> Spec:
    """Without the questions about blanks that are none any more: filled in, or no part of the customer's now."""
    if not any(question.part for question in spec.questions):
        return spec
    blank = {
        part_of(choice.option, line)
        for choice in spec.choices
        if (option := catalogue.options.get(choice.option)) is not None and is_theirs(option, choice)
        for line in blanks_of(option, choice.own_part)
    }
    kept = tuple(question for question in spec.questions if not question.part or question.part in blank)
    return spec if len(kept) == len(spec.questions) else replace(spec, questions=kept)


def _questions(
    catalogue: Catalogue,
    option: OptionId,
    sheet: OwnPart,
    asked: Callable[[SheetLine], OpenQuestion],
    but: tuple[SheetLine, ...] = (),
) -> tuple[PutQuestion, ...]:
    blanks = (line for line in blanks_of(catalogue.options[option], sheet) if line not in but)
    return tuple(PutQuestion(question=replace(asked(line), part=part_of(option, line))) for line in blanks)
