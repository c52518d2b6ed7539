"""Whoever holds one page knows the job, the revision and whether he may build from it."""

from __future__ import annotations

import pytest

from specbuilder.documents.sheets.running import running
from specbuilder.model.kinds import JobState
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Customer

from .cases import CHECKSUM, case, plain_case, the_catalogue
from .scenes import SIGNED, changed_pair, ordered_family

_FAMILY = "saturday-family"
_QUOTED = Record(kind=RecordKind.QUOTED, at="2031-03-20 16:00", by="M. Joiner", due="2031-04-19")
_BUILT = Record(kind=RecordKind.BUILT, at="2031-06-20 10:00", by="A. Saturday", words="M. Joiner")


@pytest.mark.parametrize(
    ("state", "words"),
    [
        (JobState.DRAFT, "NOT TO BE BUILT: this is a draft"),
        (JobState.QUOTED, "NOT TO BE BUILT: this is quoted and not ordered"),
        (JobState.EXPIRED, "NOT TO BE BUILT: this has expired"),
        (JobState.ORDERED, ""),
        (JobState.CHANGED, ""),
        (JobState.AS_BUILT, ""),
    ],
)
def test_the_banner_says_why_a_paper_may_not_be_built_from(state: JobState, words: str) -> None:
    assert running(case(_FAMILY, state=state), private=True).banner == words


@pytest.mark.parametrize("state", list(JobState))
def test_a_revision_that_was_replaced_is_not_built_in_whatever_state_it_is(state: JobState) -> None:
    found = running(case(_FAMILY, state=state, replaced_by=2), private=True)
    assert found.banner == "REPLACED BY REVISION 2: NOT TO BE BUILT"


@pytest.mark.parametrize(
    ("state", "words"),
    [
        (JobState.DRAFT, "draft, 18 April 2031"),
        (JobState.QUOTED, "quoted 20 March 2031, valid until 19 April 2031"),
        (JobState.ORDERED, "ordered 2 April 2031"),
        (JobState.AS_BUILT, "as built 20 June 2031"),
        (JobState.EXPIRED, "expired 19 April 2031"),
    ],
)
def test_the_state_stands_with_the_day_on_which_it_came_to_be(state: JobState, words: str) -> None:
    found = case(_FAMILY, state=state, records=(_QUOTED, SIGNED, _BUILT))
    assert running(found, private=True).state == words


def test_a_changed_revision_has_the_day_of_its_own_signature_and_names_the_one_it_replaces() -> None:
    found = running(changed_pair(), private=True)
    assert found.state == "changed 16 April 2031"
    assert found.revision == "revision 2, replaces revision 1"


def test_a_state_without_its_record_is_told_without_a_day() -> None:
    assert running(case(_FAMILY, state=JobState.ORDERED), private=True).state == "ordered"


def test_only_a_paper_of_the_house_names_the_customer() -> None:
    assert running(ordered_family(), private=True).job == "0101, The Saturday family"
    assert running(ordered_family(), private=False).job == "0101"


def test_a_job_without_a_number_says_so() -> None:
    assert running(case(_FAMILY, number=""), private=False).job == "not numbered yet"


def test_a_name_of_five_hundred_signs_does_not_push_the_rest_off_the_page() -> None:
    found = running(case(_FAMILY, customer=Customer(name="x\n" * 250)), private=True)
    assert len(found.job) < 60
    assert "\n" not in found.job


def test_the_foot_says_what_the_firm_says_and_which_data_it_was_made_from() -> None:
    firm = the_catalogue().firm
    foot = running(plain_case(_FAMILY), private=True).foot
    assert foot.startswith(firm.paper_foot)
    assert firm.catalogue_version in foot
    assert CHECKSUM in foot
