"""``revisions`` and ``today``: what a job was, and how it stands under the rules and prices of today."""

from __future__ import annotations

from argparse import Namespace
from datetime import datetime

from specbuilder.model.kinds import JobState
from specbuilder.office.house import House, stand_of
from specbuilder.office.older import Past, as_of_today, older, pasts
from specbuilder.session.compare import compare
from specbuilder.session.life import state_on
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.wording import job_lines as line_words
from specbuilder.wording import older as words
from specbuilder.wording.life import begun

from .answers import Answer
from .asjson import FORMAT, json_text
from .opening import held_job, unreadable
from .steps import begun_whole, held, next_held


def revisions(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Every revision of a job, the newest first, and its variants.

    Raises:
        StopError: it is no job, or one of them cannot be read.
        DiskError, RulesFaults: a file could not be read.
    """
    job = held_job(arguments.file, house, line_words.only_a_job_stands())
    found = _pasts(house, job, now)
    variants = [other for other in house.jobs.variants(job.number) if other != job.number]
    states = {other: _state(house, house.jobs.files(other), now) for other in variants}
    if arguments.json:
        return Answer((_json(job.number, found, states),))
    newest = found[0].revision
    told = [words.past_words(past.spec, past.state, past.revision == newest) for past in found]
    lines = [line_words.revision_line(past.revision, *each) for past, each in zip(found, told, strict=True)]
    lines += (line_words.variant_line(other, state) for other, state in states.items())
    if len(found) > 1:
        lines.append(line_words.look_back(job.number, found[1].revision))
    return Answer(tuple(lines))


def today(house: House, arguments: Namespace, now: datetime) -> Answer:
    """What the rules of today make of a job that older ones were used for; with ``--move`` it goes on under them.

    Raises:
        StopError: it is no job, or cannot be had; it says what was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    job = held_job(arguments.file, house, line_words.only_a_job_stands())
    try:
        found = older(house, job, now.date())
    except JobUnreadableError as error:
        raise unreadable(job, error) from error
    if found is None:
        return Answer((line_words.stands_on_today(job.number),))
    if arguments.move:
        return _moved(house, arguments.file)
    then = stand_of(found.catalogue, found.spec)
    current = as_of_today(house, found.spec)
    return Answer(
        (
            line_words.older_line(found.spec, found.catalogue, house.catalogue),
            words.older_words(found.spec, found.catalogue, found.state)[0],
            *words.against_lines(then, current, compare(then, current)),
            line_words.to_move(words.move_line(found.spec, found.state)),
        )
    )


def _moved(house: House, file: str) -> Answer:
    """A draft as it is, what was quoted as the next revision: as on the screens."""
    version = house.catalogue.firm.catalogue_version
    with held(house, file) as changing:
        session = changing.session
        if session.spec.state is JobState.DRAFT:
            changing.keep(session, ())
            return Answer((line_words.moved_to_today(session.spec.number, version),))
        job, session = next_held(house, changing)
        begun_whole(job, session, ())
        return Answer((begun(session.spec), line_words.moved_to_today(session.spec.number, version)))


def _pasts(house: House, job: JobFiles, now: datetime) -> tuple[Past, ...]:
    try:
        return pasts(house, job.number, now.date())
    except JobUnreadableError as error:
        raise unreadable(job, error) from error


def _state(house: House, files: JobFiles, now: datetime) -> JobState:
    try:
        return state_on(house.session(*house.found(files)).spec, now.date())
    except JobUnreadableError as error:
        raise unreadable(files, error) from error


def _json(number: str, found: tuple[Past, ...], variants: dict[str, JobState]) -> str:
    return json_text(
        {
            "format": FORMAT,
            "number": number,
            "revisions": [
                {
                    "revision": past.revision,
                    "state": past.state.value,
                    "replaces": past.spec.replaces,
                    "valid_until": past.spec.valid_until or None,
                    "signed_on": past.spec.signed_on or None,
                    "newest": past.revision == found[0].revision,
                }
                for past in found
            ],
            "variants": [{"number": other, "state": state.value} for other, state in variants.items()],
        }
    )
