"""``switch``: what another base van or roof would do, before it is taken; and taking it."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Take
from specbuilder.model.kinds import Pick
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Switch
from specbuilder.session.evaluate import evaluate
from specbuilder.session.switch import switch as switched
from specbuilder.wording.names import option_name
from specbuilder.wording.switch import switch_short, switch_spoken
from specbuilder.wording.ways import nothing_changed_yet

from . import asjson_ways
from .answers import Answer
from .change import Target
from .output import Exit, StopError
from .proposing import Offer, refuse, take_offer
from .things import OptionThing, Unclear, settable


def switch(catalogue: Catalogue, report: Report, text: str, *, json: bool) -> Answer:
    """What stays, what does not fit and what takes its place; nothing is changed.

    Raises:
        StopError: if it is no option that stands in for another.
    """
    found = switched(catalogue, report.spec, _take(catalogue, text))
    after = evaluate(catalogue, found.spec)
    if json:
        return Answer((_json(catalogue, report, after, found),))
    hint = f"{nothing_changed_yet()} To take it with what is proposed, add --take."
    return Answer((*switch_spoken(catalogue, report, after, found), hint))


def switch_taking(target: Target, text: str, *, json: bool) -> Answer:
    """Takes it with what is proposed for what does not fit, as one step of undo.

    Raises:
        StopError: it is no such option, it stands there already, or the job cannot be had; nothing was changed.
        SpecFaultsError: the file cannot be used.
        DiskError: a file could not be read or written.
    """

    def choose(catalogue: Catalogue, spec: Spec) -> Offer:
        take = _take(catalogue, text)
        if spec.has(take.option):
            raise refuse(target.file, f"{option_name(catalogue, take.option)} is in already")
        found = switched(catalogue, spec, take)
        before, after = evaluate(catalogue, spec), evaluate(catalogue, found.spec)
        told = _json(catalogue, before, after, found) if json else ""
        return Offer(edits=found.edits, lines=switch_spoken(catalogue, before, after, found), json=told)

    return take_offer(target, choose)


def _take(catalogue: Catalogue, text: str) -> Take:
    """The option that is meant.

    Raises:
        StopError: it is no option of a question that has one answer.
    """
    meant = settable(catalogue, text)
    match meant:
        case Unclear(words):
            raise StopError(Exit.UNUSABLE, words)
        case OptionThing(option=option, place=place):
            if catalogue.groups[catalogue.options[option].group].pick is Pick.ONE:
                return Take(option=option, place=place)
            words = f"{option_name(catalogue, option)} stands in for nothing: take it with set."
            raise StopError(Exit.UNUSABLE, words)
        case _:
            raise StopError(Exit.UNUSABLE, f"{text} is no option: name a base van, a roof, or another answer.")


def _json(catalogue: Catalogue, before: Report, after: Report, found: Switch) -> str:
    return asjson_ways.switch_json(catalogue, before, after, found, switch_short(catalogue, found))
