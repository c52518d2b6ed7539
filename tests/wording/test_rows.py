"""Rows of the walk, their notes, the sentences below, and chains of reasons."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.catalogue import Caution
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import BriefKey, CautionId, GroupId, LedgerId, OptionId, RuleId, Tag
from specbuilder.model.kinds import OptionState, Owner, Place, Verdict
from specbuilder.model.ledger import Entry
from specbuilder.model.span import point
from specbuilder.wording.reasons import first_taken, reason_head, reasons
from specbuilder.wording.rows import NOTE_WIDTH, RowWords, row_note, row_sentence, row_words
from tests.wording.scene import CATALOGUE, choice, finding, reading, report, spec, status

SPEC = spec(
    choice("side-galley", place=Place.RIGHT, at="2031-04-14 10:31"),
    choice("solar", at="2031-04-14 10:42", owner=Owner.CUSTOMER),
    choice("co-alarm", came_with=(OptionId("gas-bundle"),)),
    gas="any",
)
TOOK_GALLEY = Cause(kind=CauseKind.CHOICE, option=OptionId("side-galley"), place=Place.RIGHT)
TOOK_SOLAR = Cause(kind=CauseKind.CHOICE, option=OptionId("solar"))


def _cause(kind: CauseKind, *below: Cause, **more: object) -> Cause:
    return Cause(kind=kind, because=below, **more)  # type: ignore[arg-type]


def _row(option: str, state: OptionState, **more: object) -> RowWords:
    told = report(SPEC, options=(status(option, state, **more),), findings=(CLASH,), readings=(ROOF,))  # type: ignore[arg-type]
    return row_words(CATALOGUE, told, OptionId(option))


CLASH = finding("roof-not-too-heavy", Verdict.BROKEN, subjects=(OptionId("solar"),), reading=LedgerId("roof-load"))
ROOF = reading(
    "roof-load", point(13), point(8), Verdict.BROKEN, entries=(Entry("", point(13), option=OptionId("solar")),)
)


def test_chosen() -> None:
    assert _row("side-galley", OptionState.CHOSEN, pence=280_800, kg=92) == RowWords(
        state="chosen", name="Side galley, right", money="£2,808", mass="92 kg", note="taken 10:31"
    )
    assert _row("co-alarm", OptionState.CHOSEN).note == "from Gas bundle"
    assert _row("solar", OptionState.CHOSEN).note == "theirs, sheet not known"


def test_a_clash_comes_first() -> None:
    row = _row("solar", OptionState.CHOSEN, clashes=(RuleId("roof-not-too-heavy"),))
    assert row.note == "clash: roof load"


def test_open() -> None:
    assert _row(
        "gas-bundle", OptionState.OPEN, pence=93_600, kg=21, usual=True, brings=(OptionId("co-alarm"),)
    ) == RowWords(state="open", name="Gas bundle", money="+936", mass="+21 kg", note="usual; brings CO alarm")
    assert _row("fuel-hob", OptionState.OPEN).note == "parts take 5 weeks"
    assert _row("fuel-hob", OptionState.OPEN, asks=(GroupId("extras"),)).note == "asks for extras"
    own = CATALOGUE.options[OptionId("fuel-hob")].group
    assert _row("fuel-hob", OptionState.OPEN, asks=(own,)).note == "asks for another"
    assert _row("fuel-hob", OptionState.OPEN, asks=(own, GroupId("extras"))).note == "asks for extras"
    assert _row("pod-galley", OptionState.OPEN, would_clear=(RuleId("roof-not-too-heavy"),)).note == (
        "would clear the clash"
    )
    assert _row("no-cooking", OptionState.OPEN).note == ""


@pytest.mark.parametrize(
    ("cause", "note"),
    [
        (_cause(CauseKind.RULE, TOOK_GALLEY, rule=RuleId("flame-needs-alarm")), "not with Side galley"),
        (_cause(CauseKind.FITS, option=OptionId("long-roof")), "made for another van"),
        (_cause(CauseKind.LEDGER, ledger=LedgerId("roof-load")), "clash: roof load"),
        (_cause(CauseKind.ZONE, TOOK_GALLEY, tag=Tag("wall@right")), "place: Side galley"),
        (_cause(CauseKind.ZONE, tag=Tag("wall@right")), "its place is taken"),
        (_cause(CauseKind.RULE, _cause(CauseKind.ANSWER, key=BriefKey("parking_limit_mm"))), "brief: barrier height"),
        (_cause(CauseKind.NOTHING_GIVES, tag=Tag("high-cap")), "needs high cap"),
        (_cause(CauseKind.VAN, option=OptionId("fenwain-short")), "not in this van"),
        (_cause(CauseKind.RULE), "no way to finish"),
    ],
)
def test_blocked_names_the_main_culprit(cause: Cause, note: str) -> None:
    row = _row("pod-galley", OptionState.BLOCKED, cause=cause)
    assert row == RowWords(state="blocked", name="Pod galley", money="-", mass="-", note=note)


def test_follows_says_from_what() -> None:
    assert _row("usb-pair", OptionState.FOLLOWS, cause=_cause(CauseKind.RULE, TOOK_GALLEY)).note == "from Side galley"
    assert _row("usb-pair", OptionState.FOLLOWS).note == "in every finished build"


@pytest.mark.parametrize(
    ("name", "note"),
    [
        ("Side galley", "not with Side galley"),
        ("Side galley, oak, with sink", "not with Side galley"),
        ("A kitchen whose name no column can hold", "not with galley"),
    ],
)
def test_a_long_name_is_shortened_to_what_is_known_of_it(name: str, note: str) -> None:
    long = replace(CATALOGUE.options[OptionId("side-galley")], name=name)
    catalogue = replace(CATALOGUE, options={**CATALOGUE.options, long.id: long})
    blocked = status("pod-galley", OptionState.BLOCKED, cause=_cause(CauseKind.RULE, TOOK_GALLEY))
    assert row_note(catalogue, report(SPEC, options=(blocked,)), OptionId("pod-galley")) == note
    assert len(note) <= NOTE_WIDTH


def test_sentences_below() -> None:
    caution = Caution(
        id=CautionId("flame"), text="Never burn with all windows shut", shown_where="", who_must_do_or_sign=""
    )
    gas = replace(
        CATALOGUE.options[OptionId("gas-bundle")], cautions=(caution.id,), description="Hob, locker and vents."
    )
    catalogue = replace(CATALOGUE, options={**CATALOGUE.options, gas.id: gas}, cautions={caution.id: caution})
    told = report(
        SPEC,
        options=(
            status(
                "gas-bundle",
                OptionState.OPEN,
                brings=(OptionId("co-alarm"), OptionId("usb-pair")),
                asks=(GroupId("galley"),),
                would_clear=(RuleId("nights-short"), RuleId("roof-not-too-heavy")),
            ),
            status(
                "pod-galley",
                OptionState.BLOCKED,
                cause=_cause(CauseKind.RULE, TOOK_GALLEY, rule=RuleId("flame-needs-alarm")),
            ),
            status("solar", OptionState.CHOSEN, clashes=(RuleId("roof-not-too-heavy"),)),
            status("usb-pair", OptionState.FOLLOWS, cause=TOOK_GALLEY),
            status("co-alarm", OptionState.CHOSEN),
        ),
    )

    def says(option: str) -> str:
        return row_sentence(catalogue, told, OptionId(option))

    assert says("gas-bundle") == (
        "Would clear 2 clashes (STOP). Hob, locker and vents. Brings CO alarm and USB pair. "
        "Then galley must be decided. Parts take 2 weeks. Caution: Never burn with all windows shut. "
        "ESTIMATE: price, mass and weeks."
    )
    assert says("pod-galley") == ("Blocked: You cannot smell it. Enter shows why. ESTIMATE: price, mass and weeks.")
    assert says("solar") == (
        "STOP: Too heavy and you could not pull the roof shut. Enter shows why and what we can do. "
        "The customer's own part: we fit it, we do not warrant it. ESTIMATE: price, mass and weeks."
    )
    assert says("usb-pair") == "Follows: from Side galley. ESTIMATE: price, mass and weeks."
    assert says("co-alarm") == "Came with Gas bundle and leaves with it. ESTIMATE: price, mass and weeks."


def test_a_chain_of_reasons() -> None:
    cause = _cause(
        CauseKind.RULE,
        TOOK_GALLEY,
        _cause(CauseKind.CHOICE, option=OptionId("co-alarm")),
        _cause(CauseKind.ANSWER, key=BriefKey("gas")),
        _cause(CauseKind.NEEDS, option=OptionId("solar")),
        _cause(CauseKind.LEDGER, ledger=LedgerId("roof-load"), option=OptionId("long-roof")),
        _cause(CauseKind.ONE_ANSWER, TOOK_GALLEY, group=GroupId("cooking")),
        _cause(CauseKind.NOTHING_GIVES, tag=Tag("exhaust@left")),
        _cause(CauseKind.FITS, option=OptionId("long-roof")),
        _cause(CauseKind.ZONE, tag=Tag("wall-floor@right")),
        _cause(CauseKind.VAN, option=OptionId("fenwain-short"), tag=Tag("sliding-door@left")),
        _cause(CauseKind.GIVES, option=OptionId("gas-bundle"), tag=Tag("flame")),
        _cause(CauseKind.RULE, rule=RuleId("nights-short")),
        rule=RuleId("flame-needs-alarm"),
    )
    told = report(SPEC, readings=(ROOF,))
    assert reason_head(CATALOGUE, told, cause) == "You cannot smell it."
    assert reasons(CATALOGUE, told, cause) == (
        "1. you took Side galley, right, 10:31",
        "2. CO alarm came with Gas bundle",
        "3. gas: do not mind",
        '4. Solar 160 W, framed needs high cap or elevating roof: "It has to be bolted to something."',
        "5. Weight on the lifting roof: broken: 13 of 8 kg, over by 5 kg",
        "6. of it, Solar 160 W, framed: 13 kg",
        "7. Larchlid tilting roof, long would go past what may be",
        "8. Cooking has one answer only",
        "9. nothing else is left that gives exhaust on the left",
        "10. Larchlid tilting roof, long is not made for Fenwain Short",
        "11. one place for one thing: wall floor on the right",
        "12. the van is Fenwain Short: sliding door on the left",
        "13. Gas bundle gives flame",
        '14. "By the second evening the fridge is off."',
    )
    assert first_taken(CATALOGUE, told, cause) == "First taken: Side galley, right."
    assert first_taken(CATALOGUE, told, TOOK_SOLAR) == ""
