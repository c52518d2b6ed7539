"""What left the house is kept beside the screens, spec and papers as they were: nobody waits for it."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.storage.disk import DiskError
from specbuilder.wording.life import not_kept

from .deeds import TROUBLES
from .errands import Errand, Stop
from .screens.page import Host


def seal(host: Host) -> None:
    """Keep what is not kept yet; say it when that cannot be. The next opening of the job tries again."""
    deeds = host.deeds
    stand = deeds.desk.stand
    if not deeds.unkept:
        return

    def work(stop: Stop) -> Iterator[str]:
        try:
            deeds.keep_what_left(stand)
        except DiskError as error:
            yield not_kept(error.reason.value)
        except TROUBLES as error:
            yield str(error)

    host.send(Errand(spec=stand.spec, work=work, take=host.say))
