"""The sayings of a case as edits."""

from __future__ import annotations

import shlex
from dataclasses import replace

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import (
    AnswerLine,
    Edit,
    FillVanData,
    LeaveOut,
    Move,
    PutQuestion,
    SetCount,
    SetOwner,
    Take,
)
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import AnswerType, Owner, Pick, Place
from specbuilder.model.spec import Choice, OpenQuestion, OwnPart, Spec
from specbuilder.session.apply import apply


def said(catalogue: Catalogue, spec: Spec, saying: str) -> Spec:
    """The spec after a saying, as at the counter. A saying that does nothing is a slip of the case."""
    outcome = apply(catalogue, spec, edit_of(catalogue, spec, saying))
    assert outcome.refused is None, f"{saying}: {outcome.refused.value} {outcome.refused_by}"
    return outcome.spec


def written(catalogue: Catalogue, spec: Spec, saying: str) -> Spec:
    """The spec with a saying written straight into it: nothing comes along, nothing is replaced."""
    match edit_of(catalogue, spec, saying):
        case Take(option=option, place=place, count=count):
            places = catalogue.options[option].places
            choice = Choice(option=option, count=count or 1, place=place or (places[0] if places else None))
            return spec.with_choices((*spec.choices, choice))
        case LeaveOut(option=option):
            assert spec.has(option), saying
            return spec.with_choices(tuple(c for c in spec.choices if c.option != option))
        case Move(option=option, to=to):
            assert spec.has(option), saying
            return spec.with_choices(tuple(replace(c, place=to) if c.option == option else c for c in spec.choices))
        case edit:
            raise AssertionError(f"{edit} is not for raw cases")


def edit_of(catalogue: Catalogue, spec: Spec, saying: str) -> Edit:
    """The edit a saying asks for."""
    match shlex.split(saying):
        case ["take", thing]:
            thing, _, count = thing.partition("*")
            option, place = _at_place(thing)
            known = catalogue.options[option]
            assert count or place or catalogue.groups[known.group].pick is Pick.ANY or not spec.has(option), saying
            return Take(option=option, place=place, count=int(count) if count else None)
        case ["leave-out", thing]:
            option, place = _at_place(thing)
            return LeaveOut(option=option, place=place)
        case ["move", option, place]:
            return Move(option=OptionId(option), to=Place(place))
        case ["count", option, count]:
            return SetCount(option=OptionId(option), count=int(count))
        case ["answer", key, value]:
            return AnswerLine(key=BriefKey(key), value=_answer(catalogue, BriefKey(key), value))
        case ["forget", key]:
            return AnswerLine(key=BriefKey(key), value=None)
        case ["van-data", field, value]:
            return FillVanData(van_data=replace(spec.van_data, **{field: int(value) if field == "year" else value}))
        case ["owner", option, owner]:
            return SetOwner(option=OptionId(option), owner=Owner(owner))
        case ["sheet", option, mass, amps, capacity, kind, size, arrives]:
            part = OwnPart(
                mass_kg=float(mass),
                continuous_a=float(amps),
                capacity_ah=float(capacity),
                chemistry=kind,
                cut_out_mm=size,
                arrives=arrives,
            )
            return SetOwner(option=OptionId(option), owner=Owner.CUSTOMER, own_part=part)
        case ["question", *_]:
            text, owner, due = (*(t.strip() for t in saying.removeprefix("question").split("|")), "", "")[:3]
            return PutQuestion(question=OpenQuestion(text=text, owner=owner, due=due))
    raise AssertionError(f"no saying: {saying}")


def _at_place(thing: str) -> tuple[OptionId, Place | None]:
    option, _, place = thing.partition("@")
    return OptionId(option), Place(place) if place else None


def _answer(catalogue: Catalogue, key: BriefKey, value: str) -> Answer:
    match catalogue.brief[key].type:
        case AnswerType.WHOLE:
            return int(value)
        case AnswerType.DECIMAL:
            return float(value)
        case AnswerType.ONE_OF:
            return value
        case AnswerType.LIST:
            return tuple(value.split(","))
        case AnswerType.AGES:
            return tuple(int(age) for age in value.split(","))
