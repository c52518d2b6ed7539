"""What another base van or roof would do: what stays, what does not fit, what has to be asked again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import BASE_VAN_GROUP, OptionId, RuleId
from specbuilder.model.report import Report
from specbuilder.model.ways import Switch, Unfit

from . import quantities, reasons
from .differences import difference_short, difference_spoken
from .glance import WEIGHT, price_words, room_of, weight_words
from .names import choice_name, group_name, listed, option_name, rule_name
from .plain import ended, fitted, lowered, raised
from .way_parts import main_name

_NOW = 19
_THEN = 19
_CHANGE = 10


@dataclass(frozen=True, slots=True, kw_only=True)
class SwitchRow:
    """One line of the table *now, then, change*."""

    name: str
    now: str
    then: str
    change: str

    def in_columns(self, width: int) -> str:
        """The three figures at the right, the name in what room is left."""
        room = max(width - _NOW - _THEN - _CHANGE - 1, 8)
        return f"{fitted(self.name, room):<{room}} {self.now:>{_NOW}}{self.then:>{_THEN}}{self.change:>{_CHANGE}}"


@dataclass(frozen=True, slots=True, kw_only=True)
class UnfitWords:
    """A choice that cannot stay."""

    name: str
    why: str
    """``made for Fenwain Short``; empty where nobody can say."""
    instead: str
    """``Larchlid tilting roof, long, instead``, ``left out``."""


def switch_title(catalogue: Catalogue, before: Report, switch: Switch) -> str:
    """``CHANGE VAN  Fenwain Short to Fenwain Long``; with nothing there before, ``CHANGE VAN  to Fenwain Long``."""
    to = option_name(catalogue, switch.take.option)
    was = _was(catalogue, before, switch)
    return f"CHANGE {_asked(catalogue, switch).upper()}  {f'{was} to {to}' if was else f'to {to}'}"


def switch_heads() -> SwitchRow:
    """What stands over the table."""
    return SwitchRow(name="", now="now", then="then", change="change")


def switch_rows(catalogue: Catalogue, before: Report, after: Report, switch: Switch) -> tuple[SwitchRow, ...]:
    """Price and weight left, now, then and their change; ``after`` is the report of the switch's spec."""
    currency = catalogue.firm.currency
    return (
        SwitchRow(
            name="price, VAT in",
            now=quantities.money_range_tight(before.price.gross, currency),
            then=quantities.money_range_tight(after.price.gross, currency),
            change=quantities.delta(switch.difference.gross_pence, quantities.PENCE, currency),
        ),
        SwitchRow(
            name="weight left",
            now=_left(catalogue, before),
            then=_left(catalogue, after),
            change=_left_change(before, after),
        ),
    )


def stays_head(switch: Switch) -> str:
    """``STAYS  14 of 15 others``: of all choices but the one that is switched, as a what-if counts them."""
    stays = len(switch.stays)
    return f"STAYS  {stays} of {stays + len(switch.unfit)} others"


def unfit_head(switch: Switch) -> str:
    """``DOES NOT FIT  1``."""
    return f"DOES NOT FIT  {len(switch.unfit)}"


def ask_again_head(switch: Switch) -> str:
    """``ASK AGAIN  4``."""
    return f"ASK AGAIN  {len(switch.undecided)}"


def cannot_tell_head(switch: Switch) -> str:
    """``CANNOT TELL  1``."""
    return f"CANNOT TELL  {len(switch.cannot_tell)}"


def stays_lines(catalogue: Catalogue, switch: Switch) -> tuple[str, ...]:
    """The choices that stay, by name."""
    return tuple(choice_name(catalogue, choice) for choice in switch.stays)


def unfit_words(catalogue: Catalogue, unfit: Unfit, switched: OptionId | None = None) -> UnfitWords:
    """Name, reason and what takes its place. ``switched`` is the base van, when it is one that is switched."""
    instead = listed(option_name(catalogue, option) for option in unfit.instead)
    comma = "," if "," in instead else ""
    return UnfitWords(
        name=choice_name(catalogue, unfit.choice),
        why=_why(catalogue, unfit, switched),
        instead=f"{instead}{comma} instead" if instead else "left out",
    )


def ask_again_line(catalogue: Catalogue, switch: Switch) -> str:
    """The questions to be asked again, in one line; empty when there are none."""
    return listed(lowered(group_name(catalogue, group)) for group in switch.undecided)


def cannot_tell_line(catalogue: Catalogue, switch: Switch) -> str:
    """What could be told before and cannot after, in one line; empty when there is nothing."""
    return listed(rule_name(catalogue, rule) for rule in switch.cannot_tell)


def came_lines(catalogue: Catalogue, switch: Switch) -> tuple[str, ...]:
    """``STOP now broken: Too heavy to drive.``: what breaks with it, one sentence each."""
    return tuple(_broken(catalogue, rule, "now broken") for rule in switch.came)


def went_lines(catalogue: Catalogue, switch: Switch) -> tuple[str, ...]:
    """``STOP no longer broken: ...``: what it mends, one sentence each."""
    return tuple(_broken(catalogue, rule, "no longer broken") for rule in switch.went)


def switch_not_complete(switch: Switch) -> str:
    """Said when a smaller change may exist; empty else."""
    return "" if switch.complete else "The search stopped before it knew whether a smaller change would do."


def switch_hint(catalogue: Catalogue, before: Report, switch: Switch) -> str:
    """``Enter takes it with what is proposed; Esc keeps Fenwain Short.``"""
    was = _was(catalogue, before, switch)
    return f"Enter takes it with what is proposed; Esc keeps {was or 'it as it is'}."


def switch_taken(catalogue: Catalogue, switch: Switch) -> str:
    """What the last line says once it is taken; no full stop, so that a hint may follow."""
    told = [f"Took {option_name(catalogue, switch.take.option, switch.take.place)}"]
    if took := listed(option_name(catalogue, option) for unfit in switch.unfit for option in unfit.instead):
        told.append(f"with {took}")
    if left := listed(choice_name(catalogue, u.choice) for u in switch.unfit if not u.instead):
        told.append(f"left out {left}")
    return "; ".join(told)


def switch_spoken(catalogue: Catalogue, before: Report, after: Report, switch: Switch) -> tuple[str, ...]:
    """The whole of it one fact a line, for line commands."""
    return tuple(_spoken(catalogue, before, after, switch))


def _spoken(catalogue: Catalogue, before: Report, after: Report, switch: Switch) -> Iterator[str]:
    to, was = option_name(catalogue, switch.take.option), _was(catalogue, before, switch)
    yield (
        f"{raised(_asked(catalogue, switch))}: {to} instead of {was}."
        if was
        else f"{raised(_asked(catalogue, switch))}: {to}."
    )
    yield ended(raised(difference_spoken(catalogue, switch.difference)))
    yield f"Price now: {price_words(catalogue, before.price)}."
    yield f"Price then: {price_words(catalogue, after.price)}."
    yield f"Weight now: {weight_words(catalogue, before).removeprefix('weight: ')}."
    yield f"Weight then: {weight_words(catalogue, after).removeprefix('weight: ')}."
    yield f"Stays: {len(switch.stays)} of {len(switch.stays) + len(switch.unfit)} choices."
    for unfit in switch.unfit:
        words = unfit_words(catalogue, unfit, switch.take.option)
        name = f"{words.name}, {words.why}" if words.why else words.name
        yield f"Does not fit: {name}: {ended(words.instead)}"
    for group in switch.undecided:
        yield f"Ask again: {ended(group_name(catalogue, group))}"
    for rule in switch.cannot_tell:
        yield f"Cannot tell after it: {ended(rule_name(catalogue, rule))}"
    yield from came_lines(catalogue, switch)
    yield from went_lines(catalogue, switch)
    if words_ := switch_not_complete(switch):
        yield words_


def switch_short(catalogue: Catalogue, switch: Switch) -> str:
    """``stays 14 of 15, +£396, +13 kg``: the whole in a few words."""
    stays = len(switch.stays)
    return f"stays {stays} of {stays + len(switch.unfit)}, {difference_short(catalogue, switch.difference)}"


def _was(catalogue: Catalogue, before: Report, switch: Switch) -> str:
    """What stands in that group now; empty when nothing does."""
    known = catalogue.options[switch.take.option]
    return listed(choice_name(catalogue, c) for c in before.groups[known.group].choices)


def _asked(catalogue: Catalogue, switch: Switch) -> str:
    group = catalogue.options[switch.take.option].group
    return "van" if group == BASE_VAN_GROUP else lowered(group_name(catalogue, group))


def _left(catalogue: Catalogue, report: Report) -> str:
    return weight_words(catalogue, report, tight=True).removesuffix(" left").removeprefix("weight: ")


def _left_change(before: Report, after: Report) -> str:
    """Change of what is left at its low end, as prices are told; a word where either cannot be told."""
    was, then = room_of(before.readings.get(WEIGHT)), room_of(after.readings.get(WEIGHT))
    if was is None or then is None:
        return "cannot tell"
    return quantities.kilograms_delta(then.least - was.least)


def _why(catalogue: Catalogue, unfit: Unfit, switched: OptionId | None) -> str:
    """Why it cannot stay, in a few words; for one made for other vans, which."""
    option = catalogue.options.get(unfit.choice.option)
    cause = unfit.cause
    if option is None:
        return ""
    van = catalogue.options.get(switched) if switched else None
    elsewhere = van is not None and van.van is not None and van.id not in option.fits_vans
    if option.fits_vans and (elsewhere or (cause is not None and cause.kind is CauseKind.FITS)):
        return f"made for {_vans(catalogue, option.fits_vans)}"
    if cause is None:
        return ""
    if cause.kind is CauseKind.NEEDS:
        return "what it needs is gone"
    told = reasons.culprit(catalogue, cause, option.id)
    if told == reasons.NO_WAY:
        return "not in this van" if van is not None and van.van is not None else "not with it"
    return told


def _vans(catalogue: Catalogue, vans: tuple[OptionId, ...]) -> str:
    return listed((main_name(catalogue, van) for van in vans), "or", most=2)


def _broken(catalogue: Catalogue, rule: RuleId, words: str) -> str:
    known = catalogue.rules.get(rule)
    if known is None:
        return f"{raised(words)}: {ended(rule_name(catalogue, rule))}"
    return f"{known.level.value} {words}: {ended(known.because)}"
