"""``jobs``, ``new``, ``variant`` and ``export``: the list of jobs, what is added to it and what leaves it."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from types import MappingProxyType
from typing import Any

from specbuilder.model.report import Price
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.office.variants import begin_variant
from specbuilder.session.evaluate import evaluate
from specbuilder.session.life import fresh
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_list import JobLine
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.storage.spec_files import SpecFaultsError
from specbuilder.wording.glance import price_words
from specbuilder.wording.job_lines import job_line, new_command, no_such_job, only_a_job_stands, variant_copied
from specbuilder.wording.jobs import no_jobs, read_only
from specbuilder.wording.life import not_current
from specbuilder.wording.plain import ended

from . import output
from .answers import Answer
from .asjson import FORMAT, json_text, price_value
from .change import made_new, setting
from .holding import COUNTER, keep_new
from .opening import held_job, opened, refuse_altered, same_place, write_spec
from .output import Exit, StopError
from .restore import restore


def jobs(house: House, arguments: Namespace) -> Answer:
    """One line a job; those that have all the words."""
    lines = tuple(_Line(house, line) for line in house.jobs.list())
    wanted = " ".join(arguments.words).casefold().split()
    shown = tuple(line for line in lines if all(word in line.words.casefold() for word in wanted))
    if arguments.prices:
        for line in shown:
            line.work_price_out()
    if arguments.json:
        return Answer((json_text({"format": FORMAT, "jobs": [line.json() for line in shown]}),))
    if not shown:
        output.message((no_such_job() if lines else new_command(no_jobs()),))
    return Answer(tuple(text for line in shown for text in line.lines()))


def new(house: House, arguments: Namespace) -> Answer:
    """A new job; its number first."""
    start = fresh(opened(arguments.source, house).spec) if arguments.source else Spec()
    if not arguments.source and not arguments.things:
        raise StopError(Exit.UNUSABLE, "Say what the job begins with: THING, or --from FILE.")
    return made_new(house, start, arguments.things, setting(house.catalogue, datetime.now()))


def variant(house: House, arguments: Namespace) -> Answer:
    """A copy of a job beside it, as it stands; its number first."""
    job = held_job(arguments.file, house, only_a_job_stands())
    spec = house.session(*house.found(job)).spec
    begun = begin_variant(house, spec, COUNTER)
    keep_new(begun, house.catalogue, begun.start, ())
    return Answer((begun.number, variant_copied(begun.number, spec.number)), stands=f"Variant {begun.number} was made.")


def export(house: House, arguments: Namespace) -> Answer:
    """Writes ``0147-r1.toml`` into the folder; a spec without a number keeps the name of its file."""
    was = opened(arguments.file, house)
    _refuse_replaced(house, was.spec)
    refuse_altered(house, was.spec, was.catalogue)
    name = f"{was.spec.number}-r{was.spec.revision}.toml" if was.spec.number else was.path.name
    folder = Path(arguments.to)
    path = folder / name
    if was.job is None and same_place(path, was.path):
        raise StopError(Exit.UNUSABLE, f"{path} is the file itself: name another folder with --to.")
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise StopError(Exit.UNUSABLE, f"The folder {folder} cannot be made ({reason}): name another one.") from error
    write_spec(path, was.catalogue, was.spec)
    return Answer((str(path),), stands=f"{path} was written all the same.")


COMMANDS: Mapping[str, Callable[[House, Namespace], Answer]] = MappingProxyType(
    {"jobs": jobs, "new": new, "variant": variant, "export": export, "restore": restore}
)


def _refuse_replaced(house: House, spec: Spec) -> None:
    """What another revision has replaced leaves the house no more.

    Raises:
        StopError: it was replaced.
    """
    if (revision := house.replaced_by(spec)) is not None:
        raise StopError(Exit.BROKEN, *not_current(spec.number, spec.revision, revision))


class _Line:
    """A job of the list, from the head of its file; its price needs the whole spec, and is worked out when asked."""

    def __init__(self, house: House, line: JobLine) -> None:
        self.house, self.line = house, line
        self.price: Price | None = None
        self.price_words = ""

    def work_price_out(self) -> None:
        """A job that cannot be read says less; asked for by its number it says why."""
        try:
            was = opened(self.line.number, self.house)
        except (StopError, SpecFaultsError, DiskError, RulesFaults):
            return
        self.price = evaluate(was.catalogue, was.spec).price
        self.price_words = price_words(was.catalogue, self.price)

    @property
    def words(self) -> str:
        """All of it in one line."""
        line = self.line
        if line.state is None:
            return f"{line.number} cannot be read: {ended(str(line.faults[0]))}" if line.faults else line.number
        changed = f"{line.changed:%Y-%m-%d %H:%M}" if line.changed is not None else ""
        return job_line(line.number, line.customer, line.state, line.revision, line.van, changed, self.price_words)

    def lines(self) -> Iterator[str]:
        """What it says, and who has it open."""
        yield self.words
        if self.line.holder is not None:
            since = self.line.holder.since_words(datetime.now().astimezone())
            yield f"{self.line.number} {ended(read_only(self.line.holder.counter, since))}"

    def json(self) -> dict[str, Any]:
        """The same for other programs; without a price that was not asked for."""
        line = self.line
        told = {
            "number": line.number,
            "revision": line.revision,
            "state": line.state.value if line.state is not None else None,
            "customer": line.customer,
            "van": line.van,
            "changed": line.changed.isoformat(timespec="minutes") if line.changed is not None else None,
            "open_at": line.holder.counter if line.holder is not None else None,
            "faults": [str(fault) for fault in line.faults],
            "words": self.words,
        }
        return told if self.price is None else {**told, "price": price_value(self.price)}
