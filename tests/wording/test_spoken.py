"""The spec line by line, states, jobs, audit lines, and the last gate before a terminal."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.audit import Lint, LintCode
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId, RuleId
from specbuilder.model.kinds import JobState, OptionState, Owner, Place, Step, Verdict
from specbuilder.model.origin import NOWHERE, Origin
from specbuilder.model.report import Pence, StepStatus
from specbuilder.model.span import Span, point
from specbuilder.wording import job_lines, jobs, states
from specbuilder.wording.audit import audit_summary, lint_line
from specbuilder.wording.plain import ended, fitted, lowered, printable, raised
from specbuilder.wording.spoken import group_lines, spec_lines
from tests.wording.scene import CATALOGUE, choice, group_status, reading, report, spec, status

GALLEY = choice("side-galley", place=Place.RIGHT, owner=Owner.CUSTOMER, note="oak edge")
ALARM = choice("co-alarm", came_with=(OptionId("gas-bundle"),))
UNDECIDED = group_status("cooking", decided=False, gross_added=Pence(least=0, most=196_800), mass_added_kg=Span(0, 21))
REPORT = report(
    spec(GALLEY, ALARM, country="GB"),
    options=(
        status("side-galley", OptionState.CHOSEN, pence=280_800, kg=92),
        status(
            "pod-galley",
            OptionState.BLOCKED,
            cause=Cause(kind=CauseKind.RULE, rule=RuleId("flame-needs-alarm")),
        ),
        status("gas-bundle", OptionState.OPEN, pence=93_600, kg=21, usual=True, brings=(OptionId("co-alarm"),)),
        status("fuel-hob", OptionState.OPEN, pence=-30_000, kg=1),
        status("no-cooking", OptionState.OPEN, pence=-30_000, kg=-2),
    ),
    groups=(group_status("galley", GALLEY), UNDECIDED, group_status("extras", ALARM)),
    readings=(reading("total-mass", point(2752), point(3000), Verdict.HOLDS),),
    gross=Pence(least=2_071_200, most=2_268_000),
)


def test_the_whole_spec() -> None:
    assert spec_lines(CATALOGUE, REPORT) == (
        "Job 0147, revision 1, draft, not quoted.",
        "Customer: The Saturday family.",
        "Van: Fenwain Short, diesel, door left.",
        "Price: £20,712 to £22,680 VAT in, van not included.",
        "Weight: about 248 kg left.",
        "Kitchen and water: where do you cook, what keeps cold, how much water?",
        "Galley: Side galley, right, theirs, its sheet is not known yet, note: oak edge.",
        "Cooking: undecided, adds 0 to 1,968 pounds and 0 to 21 kilograms.",
        "Extras: CO alarm, came with Gas bundle.",
        "Handed: Side galley, right.",
    )


def test_a_group_with_its_options() -> None:
    assert group_lines(CATALOGUE, REPORT, GroupId("cooking")) == (
        "Cooking: undecided, 3 answers.",
        "1 Gas bundle, open, adds 936 pounds, 21 kilograms, usual, brings CO alarm.",
        "2 Fuel hob bundle, open, takes off 300 pounds, adds 1 kilogram.",
        "3 None built in, open, takes off 300 pounds, 2 kilograms.",
    )
    assert group_lines(CATALOGUE, REPORT, GroupId("galley")) == (
        "Galley: decided, 2 answers.",
        "1 Side galley, right, chosen, 2,808 pounds, 92 kilograms, theirs.",
        '2 Pod galley, blocked, because "You cannot smell it."',
    )
    assert group_lines(CATALOGUE, REPORT, GroupId("extras"))[0] == "Extras: 1 chosen, 2 answers, up to 6."


def test_groups_and_steps() -> None:
    assert states.group_kind(CATALOGUE, UNDECIDED) == "one of 3"
    assert states.group_state(CATALOGUE, UNDECIDED) == "undecided: adds £0 to £1,968 and 0 to 21 kg"
    clash = group_status("galley", GALLEY, clashes=(RuleId("nights-short"),))
    assert states.group_state(CATALOGUE, clash) == "decided, 1 clash"
    assert states.group_kind(CATALOGUE, group_status("extras")) == "up to 6"
    assert states.group_state(CATALOGUE, group_status("extras")) == "none chosen"
    assert states.step_tab(StepStatus(step=Step.POWER, undecided=2, unknown=0, broken=1)) == "power?2!1"
    assert states.step_tab(StepStatus(step=Step.BASE_VAN, undecided=0, unknown=0, broken=0)) == "van"


def test_sides_are_explained() -> None:
    assert states.place_explained(Place.LEFT, "GB", (Place.LEFT,)) == "left (kerb side in the UK, sliding-door side)"
    assert states.place_explained(Place.RIGHT, "FR", (Place.LEFT,)) == "right (kerb side on the mainland)"
    assert states.place_explained(Place.RIGHT, "GB", (Place.LEFT,)) == "right"
    assert states.place_explained(Place.LEFT, None, ()) == "left"


def test_jobs_and_troubles() -> None:
    told = job_lines.job_line("0152", "", JobState.DRAFT, 1, "", "")
    assert told == "0152 no name yet: draft, van not known."
    assert jobs.read_only("counter 1", "10:02") == "Read only: counter 1 has this job since 10:02"
    assert jobs.rules_unreadable(("a", "b")) == (
        "Rules: 2 faults. The program starts when they are mended.",
        "a",
        "b",
    )
    assert jobs.unreadable(("line 14 of 0147.toml, mass_kg is text",), copy_kept=True) == (
        "This job cannot be read:",
        "line 14 of 0147.toml, mass_kg is text.",
        "Nothing was changed. Yesterday's copy: Enter",
    )
    assert len(jobs.unreadable(tuple(map(str, range(100))), copy_kept=False)) == 23
    assert jobs.window_too_small(52, 16, "0147") == (
        "This window is 52 by 16. The screens need 60 by 18. "
        "Your job is saved; make it larger or use: specbuilder show 0147"
    )
    assert jobs.disk_trouble("full") == (
        "Could not write to the disk (full). What you typed is still here. Enter tries again"
    )


def test_audit_lines() -> None:
    zero = Lint(
        code=LintCode.ZERO_WITHOUT_NOTE,
        subject="pod-galley",
        field="mass_kg",
        origin=Origin("options/kitchen.toml", 12),
    )
    assert lint_line(CATALOGUE, zero) == (
        "zero-without-note options/kitchen.toml:12 pod-galley (Pod galley): mass_kg is 0 and no zero_note says why"
    )
    odd = Lint(code=LintCode.IMPLAUSIBLE, subject="x", field="mass_kg", value=9200, least=-80, most=400, origin=NOWHERE)
    assert lint_line(CATALOGUE, odd) == "implausible x: mass_kg is 9200, expected -80 to 400"
    assert audit_summary(CATALOGUE, (zero, odd))[2] == "To look at again: 1 zero-without-note and 1 implausible."
    assert audit_summary(CATALOGUE, ())[2] == "Nothing to look at again."


def test_parts_of_sentences() -> None:
    assert (lowered("Cooking"), lowered("USB pair"), lowered("CO alarm"), lowered("")) == (
        "cooking",
        "USB pair",
        "CO alarm",
        "",
    )
    assert (raised("light panel"), ended("Take one"), ended("Why?"), ended('He said "no."')) == (
        "Light panel",
        "Take one.",
        "Why?",
        'He said "no."',
    )
    assert [fitted("Side galley", width) for width in (20, 11, 8, 2, 1, 0)] == [
        "Side galley",
        "Side galley",
        "Side..",
        "..",
        ".",
        "",
    ]


def test_nothing_moves_the_cursor() -> None:
    assert printable("a\x1b[2Jb\nc\u202edc\u200bd\ud800") == "a\ufffd[2Jb c\ufffddc\ufffdd\ufffd"
    assert printable("Grün, £5, 6 m²") == "Grün, £5, 6 m²"


@given(st.text())
def test_printable_text_is_one_quiet_line(text: str) -> None:
    shown = printable(text)
    assert len(shown.splitlines()) < 2
    assert not set(shown) & {chr(c) for c in (*range(32), *range(127, 160), *range(0x202A, 0x202F))}
    assert len(shown) == len(text)


@given(st.text(), st.integers(0, 30))
def test_cut_text_fits(text: str, width: int) -> None:
    assert len(fitted(text, width)) <= width
