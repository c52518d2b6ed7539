"""Whether a spec is whole, current and unaltered, in sentences with their cure."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.standing import Standing, StandingCode, StandingPoint

_FROM_JOB = "take a fresh copy from the job"


def standing_lines(standing: Standing) -> tuple[str, ...]:
    """The verdict first, then every point."""
    if not standing.number and not standing.revision:
        head = "This file is not whole."
    else:
        name = f"Job {standing.number}, revision {standing.revision}, {standing.state}"
        verdict = "whole, current and unaltered" if standing.good else "NOT to be built or signed from"
        head = f"{name}: {verdict}."
    return head, *(point_words(point) for point in standing.points)


def point_words(point: StandingPoint) -> str:
    """One point."""
    match point.code:
        case StandingCode.UNREADABLE:
            return point.text
        case StandingCode.NO_CHECKSUM:
            return f"It has no checksum, so nobody can tell whether it is whole: {_FROM_JOB}."
        case StandingCode.ALTERED:
            return f"Its text was altered after it was written: {_FROM_JOB}."
        case StandingCode.NOT_WHAT_FOLLOWS:
            return (
                "What is computed in it is not what follows from what was said in it: it was altered, or written by "
                f"another version of the program. {_FROM_JOB.capitalize()}."
            )
        case StandingCode.RULES_GONE:
            version = point.text or "unknown"
            return (
                f"The rules it was written with (catalogue {version}) are not kept here, so its sums were not checked."
            )
        case StandingCode.NO_JOB:
            return (
                f"No such job in {point.text}, so nobody can tell whether it is current: name the folder with --jobs."
            )
        case StandingCode.NO_REVISION:
            return f"The job has no revision {point.revision}: it is not of this house, or was given up."
        case StandingCode.REPLACED:
            return (
                f"Revision {point.revision} has replaced it: take that one, and put away what was printed of this one."
            )
        case StandingCode.TWO_CURRENT:
            return (
                f"Revision {point.revision} was signed as well and does not say that it replaces this one: "
                "build neither before the counter has settled which one holds."
            )
        case StandingCode.OTHER_CONTENT:
            return f"The job itself says otherwise in this revision: {_FROM_JOB}."
        case StandingCode.NOT_SEALED:
            return f"Nothing was kept when it was {point.text}: open the job once at the counter, and it is kept then."
        case StandingCode.SEAL_BROKEN:
            return f"The seal in {point.text} was altered or is not of this content: put the folder back from a copy."
        case StandingCode.KEPT_ALTERED:
            return f"{point.text} is not as it left the house: put it back from a copy."
        case StandingCode.EXPIRED:
            return f"The quote was valid until {point.text}: quote again with the prices of today."
        case StandingCode.OLDER_LOG:
            return f"{point.number} records were written since this copy was made; what is built is the same."
        case StandingCode.CHANGE_OPEN:
            return f"Revision {point.revision} is being drawn up and is not signed: until then this one holds."
        case StandingCode.DRAFT:
            return "It is a draft: nothing of it has left the house, and it is not to be built."
        case _:
            assert_never(point.code)
