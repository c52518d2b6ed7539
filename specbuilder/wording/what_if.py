"""The what-if in words: its banner, what was tried, what is said of it; and small words of pages that propose."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Take
from specbuilder.model.findings import Finding
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Level, Pick, Verdict
from specbuilder.model.report import Report
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import Aim, Goal, LetIn, RankBy, WayOut

from . import quantities
from .edits import single
from .findings import finding_line
from .glance import WEIGHT, counts, price_words, room_of, weight_words
from .key_names import pressed
from .names import choice_name, key_name, listed, option_name, rule_name
from .plain import ended, fitted, raised
from .proposal import aim_word
from .readings import reading_measure
from .way_parts import main_name
from .ways import rank_word, ranked_by, way_title, way_words

_LOUD = (Level.STOP, Level.SIGN)
_NOTHING_KEPT = ("nothing here is kept in the job", "not kept in the job")
_ROOMY = 100


# --- the banner


def trial_head(catalogue: Catalogue, job: Spec, tried: Spec, width: int) -> str:
    """``WHAT IF 0147: Tormwain instead of Fenwain Short      not kept in the job``."""
    start = f"WHAT IF {job.number}: " if job.number else "WHAT IF: "
    end = _NOTHING_KEPT[0] if width >= _ROOMY else _NOTHING_KEPT[1]
    text = start + _short_list(catalogue, job, tried, width - len(start) - len(end) - 3)
    return text + end.rjust(width - len(text))


def trial_glance(catalogue: Catalogue, job: Report, tried: Report, width: int) -> str:
    """``£15,522 (-5,190)   429 kg left (+181)   breaks 3  cannot tell 1  stays 11 of 15``: shortened to fit."""
    styles = ((False, False), (True, False), (True, True))
    lines = [_glance(catalogue, job, tried, tight=tight, bare=bare) for tight, bare in styles]
    lines.append(_narrow_glance(catalogue, job, tried))
    return next((line for line in lines if len(line) <= width), fitted(lines[-1], width))


def _short_list(catalogue: Catalogue, before: Spec, after: Spec, room: int) -> str:
    """As many changes as fit, with what they stand in for or without."""
    ways = [list(_changes(catalogue, before, after, short=True, instead=instead)) for instead in (True, False)]
    if not ways[0]:
        return "nothing tried yet"
    texts = [listed(ways[0]), *(listed(ways[1], most=most) for most in range(len(ways[1]), 0, -1))]
    return next((text for text in texts if len(text) <= room), fitted(texts[-1], room))


def _changes(
    catalogue: Catalogue, before: Spec, after: Spec, *, short: bool = False, instead: bool = True
) -> Iterator[str]:
    name = main_name if short else option_name
    was, now = _asked_for(before), _asked_for(after)
    gone = [c for c in was if c.option not in {x.option for x in now}]
    for choice in now:
        if choice.option not in {x.option for x in was}:
            old = [c for c in gone if _one_answer(catalogue, c) and _group(catalogue, c) == _group(catalogue, choice)]
            gone = [c for c in gone if c not in old]
            was_there = listed(name(catalogue, c.option) for c in old)
            yield name(catalogue, choice.option) + (f" instead of {was_there}" if was_there and instead else "")
        elif choice not in was:
            yield choice_name(catalogue, choice)
    yield from (f"without {name(catalogue, choice.option)}" for choice in gone)
    keys = [key for key in (*before.answers.given, *after.answers.given) if _answered(before, after, key)]
    yield from (key_name(catalogue, key) for key in dict.fromkeys(keys))


def _answered(before: Spec, after: Spec, key: str) -> bool:
    return before.answers.given.get(key) != after.answers.given.get(key)  # type: ignore[call-overload,no-any-return]


def _asked_for(spec: Spec) -> tuple[Choice, ...]:
    return tuple(choice for choice in spec.choices if not choice.came_with)


def _group(catalogue: Catalogue, choice: Choice) -> GroupId | None:
    known = catalogue.options.get(choice.option)
    return known.group if known else None


def _one_answer(catalogue: Catalogue, choice: Choice) -> bool:
    group = _group(catalogue, choice)
    return group is not None and catalogue.groups[group].pick is Pick.ONE


def _glance(catalogue: Catalogue, job: Report, tried: Report, *, tight: bool, bare: bool) -> str:
    price = f"{price_words(catalogue, tried.price, tight=tight).partition(' VAT in')[0]} ({_money(job, tried)})"
    weight = weight_words(catalogue, tried, tight=tight) + _mass(job, tried)
    was = {f.rule for f in job.broken(*_LOUD)}
    breaks = sum(f.rule not in was for f in tried.broken(*_LOUD))
    told = {f.rule for f in job.findings if f.verdict is not Verdict.CANNOT_TELL}
    unsure = sum(f.rule in told for f in tried.cannot_tell(*_LOUD))
    stood = [choice for choice in job.spec.choices if choice.option in catalogue.options]
    stays = sum(tried.spec.keeps(choice) for choice in stood)
    broken = counts(tried)[2]
    all_ = f" of {broken}" if broken != breaks else ""
    parts = [f"breaks {breaks}{all_}", f"cannot tell {unsure}", f"stays {stays} of {len(stood)}"]
    gap = " " * (2 if tight else 3)
    return gap.join((price, weight, "  ".join(parts if not bare else (parts[0], parts[2]))))


def _narrow_glance(catalogue: Catalogue, job: Report, tried: Report) -> str:
    """``breaks 3   £15,522-21,000 (-5,190)   kg (+181)``: what must not be missed stands first."""
    was = {f.rule for f in job.broken(*_LOUD)}
    breaks = sum(f.rule not in was for f in tried.broken(*_LOUD))
    price = price_words(catalogue, tried.price, tight=True).partition(" VAT in")[0]
    mass = f"  kg{told}" if (told := _mass(job, tried)) else ""
    return f"breaks {breaks}  {price} ({_money(job, tried)}){mass}"


def _money(job: Report, tried: Report) -> str:
    return quantities.money_delta(tried.price.gross.least - job.price.gross.least)


def _mass(job: Report, tried: Report) -> str:
    was, now = room_of(job.readings.get(WEIGHT)), room_of(tried.readings.get(WEIGHT))
    if was is None or now is None:
        return ""
    return f" ({quantities.kilograms_delta(now.least - was.least).removesuffix(' kg')})"


# --- the last line


def trial_begun() -> str:
    """A what-if was turned on."""
    return f"What if: Esc goes back to the job as it was, {pressed('keep')} keeps what was tried"


def trial_again() -> str:
    """A what-if that was left is on again."""
    return f"What if again: Esc goes back to the job as it was, {pressed('keep')} keeps what was tried"


def back_in_job() -> str:
    """It was left."""
    return f"Back in the job as it was; {pressed('what-if')} opens the what-if again"


def kept(catalogue: Catalogue, before: Spec, after: Spec, room: int) -> str:
    """What was tried became the job: as much of it as there is room for."""
    start = "Kept: "
    return start + _short_list(catalogue, before, after, room - len(start))


def nothing_tried() -> str:
    """There is nothing to keep."""
    return f"Nothing was tried that could be kept: {pressed('what-if')} begins a what-if."


# --- hints


def what_changes() -> str:
    """Enter on another van or roof that does not go with all that is chosen."""
    return "what changes"


def take_a_way(ways: int) -> str:
    """``1-3 take``: the digits on a page with ways out."""
    return f"1-{ways} take" if ways > 1 else "1 take"


def rank_by(word: RankBy) -> str:
    """``by kg``: what the next press ranks by."""
    return f"by {rank_word(word)}"


def ways_title(word: RankBy) -> str:
    """``WAYS OUT  fewest changes first, then price``."""
    return f"WAYS OUT  {ranked_by(word)}"


def choose_aim() -> str:
    """The digits on the page that finishes a build."""
    return "1-4 aim"


# --- pages


def not_seen_yet() -> str:
    """A key was pressed for something that was not on the screen yet."""
    return "That was not on the screen yet when the key was pressed: nothing was taken."


def would_clash_title(catalogue: Catalogue, option: OptionId, findings: int) -> str:
    """``WHY Solar 160 W, framed does not fit   2 findings``."""
    count = "1 finding" if findings == 1 else f"{findings} findings"
    return f"WHY {fitted(option_name(catalogue, option), 48)} does not fit   {count}"


def more_reasons() -> str:
    """Where the reasons were cut for room."""
    return f"{pressed('why')} shows all of the reasons"


def working_out() -> str:
    """A table or a proposal is being worked out."""
    return "checking what follows; nothing is changed yet"


def aims_line() -> tuple[tuple[int, Aim, str], ...]:
    """Digit, aim and its word, in the order of the digits."""
    return tuple((number, aim, aim_word(aim)) for number, aim in enumerate(Aim, 1))


def finish_title(aim: Aim) -> str:
    """While nothing is proposed yet."""
    return f"FINISH IT, {aim_word(aim)}"


def switch_asked(catalogue: Catalogue, option: OptionId) -> str:
    """``CHANGE to Fenwain Long``: while its table is being worked out."""
    return f"CHANGE to {option_name(catalogue, option)}"


def way_short(
    catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut, width: int, beside: Sequence[WayOut] = ()
) -> str:
    """The way in one line, first what only it does of the ways ``beside`` it.

    What is asked for itself stands over the list; where more is done it is left out, unless its place is chosen by it.
    """
    edits = tuple(single(way.edits))
    if isinstance(goal, LetIn) and len(edits) > 1:
        edits = tuple(e for e in edits if not (isinstance(e, Take) and e.option == goal.option and not e.place))
    shared = [set(single(other.edits)) for other in beside]
    edits = tuple(sorted(edits, key=lambda edit: all(edit in one for one in shared)))
    return raised(way_title(catalogue, before, goal, replace(way, edits=edits), width))


def way_told(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut) -> str:
    """All of the way under the cursor: its names in full, what it clears, breaks, brings and loses."""
    words = way_words(catalogue, before, goal, way)
    return " ".join(ended(raised(text)) for text in (words.title, *words.under))


def would_break_short(catalogue: Catalogue, after: Report, finding: Finding) -> str:
    """``STOP roof load: 13 of 8 kg, over by 5 kg``, or the beginning of what the customer hears; one line."""
    measured = after.readings.get(finding.reading) if finding.reading is not None else None
    if measured is None or measured.verdict is not Verdict.BROKEN:
        return f"{finding.level.value} {catalogue.rules[finding.rule].because}"
    return f"{finding.level.value} {rule_name(catalogue, finding.rule)}: {reading_measure(catalogue, measured)}"


def would_break(catalogue: Catalogue, after: Report, finding: Finding) -> str:
    """The same in full."""
    text = finding_line(catalogue, after, finding)
    return text.replace(f"{finding.level.value}, broken:", f"{finding.level.value}, would be broken:", 1)
