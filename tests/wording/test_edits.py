"""What was done, what undo names, and why something was not done."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.edits import (
    Accept,
    AnswerLine,
    CloseQuestion,
    Edit,
    FillVanData,
    LeaveOut,
    Move,
    NameCustomer,
    PutQuestion,
    SetCount,
    SetNote,
    SetOwner,
    Take,
    TakeUsual,
    Together,
    Withdraw,
    WriteNote,
)
from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.kinds import Owner, Place, Step
from specbuilder.model.outcome import Outcome, Refusal
from specbuilder.model.spec import OpenQuestion, Spec, VanData
from specbuilder.wording.edits import done, nothing_to_redo, nothing_to_undo, redone, undone
from specbuilder.wording.refusals import refused
from tests.wording.scene import CATALOGUE, choice, spec

EMPTY = spec()
GAS, ALARM, GALLEY, USB = (OptionId(o) for o in ("gas-bundle", "co-alarm", "side-galley", "usb-pair"))
RIGHT = spec(choice("side-galley", place=Place.RIGHT))
LEFT = spec(choice("side-galley", place=Place.LEFT))
QUESTION = OpenQuestion(text="Which cloth?")


def _case(edit: Edit, before: Spec, after: Spec, did: str, undo: str) -> tuple[Edit, Spec, Spec, str, str]:
    return edit, before, after, did, undo


@pytest.mark.parametrize(
    ("edit", "before", "after", "did", "undo"),
    [
        _case(Take(option=GALLEY), EMPTY, RIGHT, "Took Side galley, right", "Undone: Side galley, right"),
        _case(
            LeaveOut(option=GALLEY), RIGHT, EMPTY, "Left out Side galley, right", "Undone: Side galley, right is back"
        ),
        _case(
            SetCount(option=USB, count=3),
            spec(choice("usb-pair", count=2)),
            spec(choice("usb-pair", count=3)),
            "USB pair: now 3",
            "Undone: 2 x USB pair again",
        ),
        _case(
            Move(option=GALLEY, to=Place.LEFT),
            RIGHT,
            LEFT,
            "Moved Side galley to left",
            "Undone: Side galley back to right",
        ),
        _case(
            SetOwner(option=GALLEY, owner=Owner.CUSTOMER),
            RIGHT,
            RIGHT,
            "Side galley is theirs: its sheet is asked for",
            "Undone: whose part Side galley is",
        ),
        _case(SetOwner(option=GALLEY, owner=Owner.HOUSE), RIGHT, RIGHT, "Side galley is ours",
              "Undone: whose part Side galley is"),
        _case(SetNote(option=GALLEY, note="oak edge"), RIGHT, RIGHT, "Noted on Side galley",
              "Undone: note on Side galley"),
        _case(AnswerLine(key=BriefKey("adults"), value=2), EMPTY, spec(adults=2), "Answered: 2 grown-ups",
              "Undone: grown-ups back to not known yet"),
        _case(NameCustomer(name="The lake couple", contact=""), EMPTY, EMPTY, "Customer: The lake couple",
              "Undone: customer"),
        _case(
            FillVanData(van_data=VanData(vin_tail="AB1234", year=2029)),
            EMPTY,
            replace(EMPTY, van_data=VanData(vin_tail="AB1234", year=2029)),
            "Van data: end of the chassis number and year",
            "Undone: van data (end of the chassis number and year)",
        ),
        _case(
            Accept(rule=RuleId("nights-short"), words="", by="", at=""),
            EMPTY,
            EMPTY,
            'Accepted in writing: "By the second evening the fridge is off."',
            "Undone: acceptance in writing",
        ),
        _case(Withdraw(rule=RuleId("gone")), EMPTY, EMPTY,
              'Acceptance taken back: "a rule that left the catalogue"', "Undone: acceptance in writing"),
        _case(PutQuestion(question=QUESTION), EMPTY, EMPTY, 'Open question: "Which cloth?"',
              'Undone: open question "Which cloth?"'),
        _case(CloseQuestion(text="Which cloth?"), EMPTY, EMPTY, 'Answered: "Which cloth?"',
              'Undone: open question "Which cloth?" is back'),
        _case(WriteNote(note="rings on Fridays"), EMPTY, EMPTY, "Note of the job written", "Undone: note of the job"),
        _case(
            TakeUsual(step=Step.KITCHEN),
            EMPTY,
            spec(choice("gas-bundle"), choice("co-alarm", came_with=(GAS,))),
            "Took the house usual of step kitchen: Gas bundle",
            "Undone: house usual of step kitchen",
        ),
        _case(
            Together(edits=(Take(option=GALLEY), AnswerLine(key=BriefKey("adults"), value=1))),
            EMPTY,
            spec(choice("side-galley", place=Place.RIGHT), adults=1),
            "Took Side galley, right; answered: 1 grown-up",
            "Undone: Side galley, right and grown-ups back to not known yet",
        ),
    ],
)  # fmt: skip
def test_each_edit(edit: Edit, before: Spec, after: Spec, did: str, undo: str) -> None:
    assert done(CATALOGUE, edit, before, after) == did
    assert undone(CATALOGUE, edit, before, after) == undo


def test_what_came_and_went_with_it() -> None:
    took = spec(choice("gas-bundle"), choice("co-alarm", came_with=(GAS,)))
    assert done(CATALOGUE, Take(option=GAS), EMPTY, took, (ALARM,), (OptionId("fuel-hob"),)) == (
        "Took Gas bundle, with CO alarm, instead of Fuel hob bundle"
    )
    assert done(CATALOGUE, LeaveOut(option=GAS), took, EMPTY, (), (GAS, ALARM)) == (
        "Left out Gas bundle, and CO alarm left with it"
    )
    assert redone(CATALOGUE, Take(option=GALLEY), EMPTY, RIGHT) == "Again: took Side galley, right"
    assert nothing_to_undo() == "Nothing left to undo in this revision"
    assert nothing_to_redo() == "Nothing left to put back"


@pytest.mark.parametrize(
    ("edit", "why", "words"),
    [
        (Take(option=GALLEY), Refusal.IN_ALREADY, "In already; n goes on, - leaves it out"),
        (Take(option=OptionId("old")), Refusal.UNKNOWN_OPTION,
         '"old" (not in this catalogue): take one that this catalogue has'),
        (LeaveOut(option=ALARM), Refusal.COMES_WITH,
         "CO alarm comes with Gas bundle: leave that out first"),
        (LeaveOut(option=USB), Refusal.NOT_CHOSEN, "USB pair is not in, so nothing was changed"),
        (Move(option=GALLEY, to=Place.REAR), Refusal.PLACE_NOT_ALLOWED,
         "Side galley, right may stand right or left only"),
        (Move(option=USB, to=Place.REAR), Refusal.PLACE_NOT_ALLOWED, "USB pair has no side to choose"),
        (Take(option=USB, count=9), Refusal.TOO_MANY, "USB pair: no more than 4 of it in one van"),
        (AnswerLine(key=BriefKey("adults"), value=9), Refusal.NOT_AN_ANSWER,
         "A whole number from 1 to 6 is needed here."),
        (AnswerLine(key=BriefKey("gone"), value=9), Refusal.NOT_AN_ANSWER, "The brief has no such line"),
        (WriteNote(note=""), Refusal.NOTHING_TO_DO, "Nothing to change: it is so already"),
    ],
)  # fmt: skip
def test_each_refusal(edit: Edit, why: Refusal, words: str) -> None:
    assert refused(CATALOGUE, edit, Outcome(spec=RIGHT, refused=why, refused_by=(GAS,))) == words


def test_what_was_done_is_no_refusal() -> None:
    with pytest.raises(ValueError, match="was done"):
        refused(CATALOGUE, WriteNote(note=""), Outcome(spec=EMPTY))


WIDE = Together(edits=(LeaveOut(option=ALARM), Take(option=GALLEY), AnswerLine(key=BriefKey("adults"), value=1)))
TRIED = Together(edits=(Together(edits=(Take(option=GAS), WIDE)), SetNote(option=GALLEY, note="oak")))
"""A what-if that was kept: edits that stand together inside others."""


@pytest.mark.parametrize(
    ("room", "told"),
    [
        (0, "Undone: Gas bundle, Side galley, right, grown-ups back to not known yet and 2 more"),
        (60, "Undone: Gas bundle, Side galley, right and 3 more"),
        (44, "Undone: Gas bundle, Side galley and 3 more"),
        (34, "Undone: Gas bundle and 4 more"),
        (10, "Undone: Gas bundle and 4 more"),
    ],
)
def test_undo_names_what_was_taken_before_what_had_to_go_and_counts_what_has_no_room(room: int, told: str) -> None:
    before, after = spec(choice("co-alarm")), spec(choice("gas-bundle"), choice("side-galley", place=Place.RIGHT))
    assert undone(CATALOGUE, TRIED, before, after, room) == told
