"""Builds that came about by edits one after the other, as at a counter, and the way to lay two of them side by side."""

from __future__ import annotations

from pathlib import Path

from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit, LeaveOut, Move, SetCount, SetNote, SetOwner, Take
from specbuilder.model.kinds import AnswerType, Owner, Pick
from specbuilder.model.spec import OwnPart, Spec
from specbuilder.model.stand import Stand
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
SHEETS = (None, OwnPart(mass_kg=5), OwnPart(mass_kg=7.5, watts_w=40, cut_out_mm="300 x 200", arrives="2031-04-02"))
FEW_RUNS = settings(
    max_examples=25,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),  # a failing run is told as it is
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def stand(catalogue: Catalogue, spec: Spec) -> Stand:
    """With findings and sums; of the states of options only what propagation tells, which nothing here looks at."""
    return Stand(catalogue=catalogue, spec=spec, report=evaluate(catalogue, spec, exact=False))


def example(catalogue: Catalogue, name: str) -> Stand:
    """One of the examples."""
    return stand(catalogue, read_spec_file(EXAMPLES / f"{name}.toml", catalogue).spec)


def done(catalogue: Catalogue, spec: Spec, *edits: Edit) -> Spec:
    """The spec after edits of which none is refused."""
    for edit in edits:
        outcome = apply(catalogue, spec, edit)
        assert outcome.refused is None, (edit, outcome.refused)
        spec = outcome.spec
    return spec


@st.composite
def runs(draw: st.DrawFn, catalogue: Catalogue, start: Spec, most: int) -> Spec:
    """What a few edits make of a spec; those that are refused do nothing."""
    spec = start
    for _ in range(draw(st.integers(0, most))):
        spec = apply(catalogue, spec, draw(_edits(catalogue, spec))).spec
    return spec


@st.composite
def _edits(draw: st.DrawFn, catalogue: Catalogue, spec: Spec) -> Edit:
    what = draw(st.sampled_from(["take", "take", "take", "answer", "count", "move", "owner", "note", "leave"]))
    if what == "answer":
        lines = [line for line in catalogue.brief.values() if line.type is AnswerType.ONE_OF and line.question]
        line = draw(st.sampled_from(lines))
        return AnswerLine(key=line.key, value=draw(st.sampled_from([*line.values, None])))
    if what == "take" or not spec.choices:
        option = draw(st.sampled_from(list(catalogue.options.values())))
        place = draw(st.sampled_from([*option.places, None]))
        count = draw(st.integers(1, 3)) if catalogue.groups[option.group].pick is Pick.ANY else None
        return Take(option=option.id, place=place, count=count)
    choice = draw(st.sampled_from(spec.choices))
    option, place, places = choice.option, choice.place, catalogue.options[choice.option].places
    match what:
        case "count":
            return SetCount(option=option, count=draw(st.integers(1, 3)), place=place)
        case "move" if places:
            return Move(option=option, to=draw(st.sampled_from(places)), place=place)
        case "owner":
            owner, sheet = draw(st.sampled_from(Owner)), draw(st.sampled_from(SHEETS))
            return SetOwner(option=option, owner=owner, own_part=sheet, place=draw(st.sampled_from([place, None])))
        case "note":
            note = draw(st.sampled_from(["", "hinge at the rear", "as shown"]))
            return SetNote(option=option, note=note, place=draw(st.sampled_from([place, None])))
        case _:
            return LeaveOut(option=option, place=place)
