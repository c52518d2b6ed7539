"""``usual``: what the house would take for everything undecided in a step, shown with its sum, and taken."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import TakeUsual
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Step
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.session.walk import usual_takes
from specbuilder.wording.lines import to_take_all, usual_spoken
from specbuilder.wording.ways import nothing_changed_yet

from .answers import Answer, step_of
from .asjson_reading import usual_json
from .change import Target
from .output import Exit, StopError
from .proposing import Offer, take_offer


def usual(catalogue: Catalogue, report: Report, text: str, *, json: bool) -> Answer:
    """Each option with what it adds, and all together; nothing is changed.

    Raises:
        StopError: it is no step.
    """
    step = _step(text)
    options = _options(catalogue, report.spec, step)
    if json:
        return Answer((usual_json(catalogue, report, step.value, options),))
    hint = (f"{nothing_changed_yet()} {to_take_all()}",) if options else ()
    return Answer((*usual_spoken(catalogue, report, options), *hint))


def usual_taking(target: Target, text: str, *, json: bool) -> Answer:
    """Takes it as one step of undo; where nothing is undecided all stays as it is.

    Raises:
        StopError: it is no step, it was refused, or the job cannot be had; nothing was changed.
        SpecFaultsError, DiskError: a file cannot be used, read or written.
    """
    step = _step(text)

    def choose(catalogue: Catalogue, spec: Spec) -> Offer:
        report, options = evaluate(catalogue, spec), _options(catalogue, spec, step)
        told = usual_json(catalogue, report, step.value, options) if json else ""
        edits = (TakeUsual(step=step),) if options else ()
        return Offer(edits=edits, lines=tuple(usual_spoken(catalogue, report, options)), json=told)

    return take_offer(target, choose)


def _options(catalogue: Catalogue, spec: Spec, step: Step) -> tuple[OptionId, ...]:
    return tuple(take.option for take in usual_takes(catalogue, spec, step))


def _step(text: str) -> Step:
    step = step_of(text)
    if step is None:
        raise StopError(Exit.UNUSABLE, f'"{text[:60]}" is no step: use van, roof, seating, kitchen, heating or power.')
    return step
