"""What was written down of a session leads to the same spec again, also where its beginning is no longer at hand."""

from __future__ import annotations

from specbuilder.model.edits import Take
from specbuilder.model.history import Redo, Undo
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Spec
from specbuilder.session.state import Session, do, redo, replay, undo
from tests.session.test_apply import world_


def take(name: str) -> Take:
    return Take(option=OptionId(name))


def test_edits_and_steps_back_and_forward_lead_where_they_led() -> None:
    start = Session(catalogue=world_, spec=Spec())
    one, _ = do(start, take("burner"))
    two, _ = do(one, take("galley"))
    back, _ = undo(two)
    again, _ = redo(back)
    entries = (take("burner"), take("galley"), Undo(back.spec), Redo(again.spec))
    assert replay(start, entries) == again


def test_a_redo_whose_edit_was_made_before_the_start_still_holds() -> None:
    one, _ = do(Session(catalogue=world_, spec=Spec()), take("burner"))
    start = Session(catalogue=world_, spec=Spec())  # the file was written after the undo; only the redo came later
    session = replay(start, (Redo(one.spec), take("galley")))
    assert session.spec.has(OptionId("burner"))
    assert session.spec.has(OptionId("galley"))
    assert undo(undo(session)[0])[0].spec == Spec()


def test_an_undo_past_the_start_still_holds() -> None:
    one, _ = do(Session(catalogue=world_, spec=Spec()), take("burner"))
    session = replay(Session(catalogue=world_, spec=one.spec), (Undo(Spec()),))
    assert session.spec == Spec()
