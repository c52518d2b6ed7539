"""Which page an act about the life of the job opens."""

from __future__ import annotations

from specbuilder.model.kinds import JobState
from specbuilder.model.life import LifeStep
from specbuilder.tui.keys import Act
from specbuilder.wording.papers import nothing_to_sign, papers_later, papers_of_job_only

from .build import BuildPage
from .confirm import quoting_again
from .page import Host, Page
from .papers import PapersPage
from .sign import OrderPage, QuotePage


def life_page(host: Host, act: Act) -> Page | None:
    """The page; None, with the reason said, where there is none."""
    if host.trying:
        host.say(papers_of_job_only())
    elif not host.report.spec.number:
        host.say(papers_later())
    elif act is Act.PAPERS:
        return PapersPage(host)
    elif act is Act.BUILD:
        return BuildPage(host)
    elif host.may_write_down():
        return _next_step(host)
    return None


def _next_step(host: Host) -> Page | None:
    """The form of what comes next in the life of the job."""
    match host.deeds.next_step:
        case LifeStep.QUOTE:
            return QuotePage(host)
        case LifeStep.ORDER if host.deeds.state is JobState.EXPIRED:
            return quoting_again(host)
        case LifeStep.ORDER:
            return OrderPage(host)
        case _:
            host.say(nothing_to_sign(host.report.spec))
            return None
