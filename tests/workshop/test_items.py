"""The number on a box: over any chain of signed revisions it stays with its part and with nothing else."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.spec import Choice, Spec
from specbuilder.workshop.items import item_numbers, items_gone, thing_of

_OPTIONS = ("roof", "bench", "fridge", "window", "battery")


def _choice(option: str, place: Place | None = None) -> Choice:
    return Choice(option=OptionId(option), place=place)


def _revision(number: int, *choices: Choice) -> Spec:
    return Spec(revision=number, choices=choices)


_chains = st.lists(
    st.lists(
        st.builds(_choice, st.sampled_from(_OPTIONS), st.sampled_from((None, Place.LEFT, Place.RIGHT))),
        unique_by=thing_of,
        max_size=6,
    ),
    min_size=1,
    max_size=5,
).map(lambda chain: tuple(_revision(number, *choices) for number, choices in enumerate(chain, 1)))


@given(_chains)
def test_no_number_is_ever_on_two_kinds_of_part_or_twice_in_one_revision(chain: tuple[Spec, ...]) -> None:
    seen: dict[int, tuple[OptionId, Owner]] = {}
    for number, spec in enumerate(chain):
        items = item_numbers(chain[:number], spec)
        assert len(set(items)) == len(items) == len(spec.choices)
        for item, choice in zip(items, spec.choices, strict=True):
            assert seen.setdefault(item, (choice.option, choice.owner)) == (choice.option, choice.owner)


@given(_chains)
def test_every_number_ever_given_is_on_a_part_or_listed_as_gone(chain: tuple[Spec, ...]) -> None:
    *signed, spec = chain
    given_before = {item for number, old in enumerate(signed) for item in item_numbers(signed[:number], old)}
    here, gone = set(item_numbers(signed, spec)), {one.item for one in items_gone(signed, spec)}
    assert not here & gone
    assert given_before <= here | gone


@given(_chains)
def test_the_order_of_the_new_choices_moves_no_number_of_what_stays(chain: tuple[Spec, ...]) -> None:
    *signed, spec = chain
    turned = replace(spec, choices=spec.choices[::-1])
    if signed:
        kept = {thing_of(choice) for choice in signed[-1].choices}
        there = dict(zip(map(thing_of, turned.choices), item_numbers(signed, turned), strict=True))
        for choice, item in zip(spec.choices, item_numbers(signed, spec), strict=True):
            assert thing_of(choice) not in kept or there[thing_of(choice)] == item


def test_what_is_new_gets_the_next_free_number_and_what_left_leaves_a_gap() -> None:
    first = _revision(1, _choice("roof"), _choice("fridge"), _choice("battery"))
    second = _revision(2, _choice("roof"), _choice("battery"), _choice("bench"))
    assert item_numbers((first,), second) == (1, 3, 4)
    assert [(one.item, one.choice.option, one.revision) for one in items_gone((first,), second)] == [(2, "fridge", 1)]


def test_a_number_that_was_the_highest_is_not_given_again_when_its_part_left() -> None:
    first = _revision(1, _choice("roof"), _choice("fridge"))
    second = _revision(2, _choice("roof"))
    third = _revision(3, _choice("roof"), _choice("battery"))
    assert item_numbers((first, second), third) == (1, 3)


def test_a_part_that_moved_keeps_its_number_and_one_that_comes_back_gets_its_own_again() -> None:
    first = _revision(1, _choice("roof"), _choice("window", Place.LEFT))
    second = _revision(2, _choice("window", Place.RIGHT), _choice("bench"))
    assert item_numbers((first,), second) == (2, 3)
    assert item_numbers((first, second), _revision(3, _choice("roof"), _choice("bench"))) == (1, 3)


def test_the_customers_own_part_in_place_of_the_houses_is_another_box() -> None:
    ours, theirs = _choice("fridge"), replace(_choice("fridge"), owner=Owner.CUSTOMER)
    assert item_numbers((_revision(1, _choice("roof"), ours),), _revision(2, _choice("roof"), theirs)) == (1, 3)
