"""What may be typed for each word in capitals of the usage: jobs, options, steps, ledgers and the like."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, fields
from pathlib import Path
from types import MappingProxyType

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Owner, Step
from specbuilder.model.own_parts import SheetLine
from specbuilder.model.spec import VanData
from specbuilder.model.ways import Aim, RankBy
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_files import job_files
from specbuilder.storage.places import default_jobs_path
from specbuilder.storage.rules_files import RulesFaults, read_rules, rules_folder
from specbuilder.tui.acts import Where
from specbuilder.wording.states import step_name


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where somebody types: in which folders, and what stands there already."""

    jobs: str | None
    rules: str | None
    typed: str

    def catalogue(self) -> Catalogue | None:
        """The rules; None when they cannot be read, which is said by what is typed in the end, not here."""
        try:
            return read_rules(Path(self.rules) if self.rules else rules_folder())
        except (RulesFaults, DiskError):
            return None


def offered_for(name: str, place: Place) -> tuple[str, ...]:
    """The words for a word in capitals; none where only the one who types knows, or a file is meant."""
    offers = OFFERS.get(name)
    return tuple(offers(place)) if offers is not None else ()


def _jobs(place: Place) -> Iterator[str]:
    """Every job by its number, and behind an @ its revisions."""
    folder = Path(place.jobs) if place.jobs else default_jobs_path()
    try:
        names = [path.name for path in folder.iterdir()]
    except OSError:
        return
    found = job_files(folder, names)
    for files in found:
        yield f"{files.number}@{files.revision}" if "@" in place.typed else files.number


def _options(place: Place) -> Iterator[str]:
    catalogue = place.catalogue()
    yield from catalogue.options if catalogue is not None else ()


def _groups(place: Place) -> Iterator[str]:
    catalogue = place.catalogue()
    yield from catalogue.groups if catalogue is not None else ()


def _ledgers(place: Place) -> Iterator[str]:
    catalogue = place.catalogue()
    yield from catalogue.ledgers if catalogue is not None else ()


def _rules(place: Place) -> Iterator[str]:
    catalogue = place.catalogue()
    yield from catalogue.rules if catalogue is not None else ()


def _things(place: Place) -> Iterator[str]:
    """Whatever can be asked about."""
    catalogue = place.catalogue()
    if catalogue is not None:
        yield from (*catalogue.options, *catalogue.groups, *catalogue.brief, *catalogue.ledgers, *catalogue.rules)


def _settable(place: Place) -> Iterator[str]:
    """Whatever can be set: with its ``=`` where a value must follow, with its values where ``=`` stands already."""
    catalogue = place.catalogue()
    if catalogue is None:
        return
    name, equals, _ = place.typed.partition("=")
    option, at, _ = name.partition("@")
    if equals:
        yield from (f"{name}={value}" for value in _values(catalogue, name))
    elif at and option in catalogue.options:
        yield from (f"{option}@{one.value}" for one in catalogue.options[option].places)  # type: ignore[index]
    elif "." in name:
        before = name.rpartition(".")[0]
        yield from (f"{before}.{one}=" for one in ("note", *(line.value for line in SheetLine)))
    else:
        yield from catalogue.options
        van = (one.name for one in fields(VanData))
        yield from (f"{key}=" for key in (*catalogue.brief, *van, "customer", "contact", "note"))


def _values(catalogue: Catalogue, name: str) -> Iterable[str]:
    if name in catalogue.options:
        places = (place.value for place in catalogue.options[name].places)  # type: ignore[index]
        return (*places, *(owner.value for owner in Owner))
    line = catalogue.brief.get(name)  # type: ignore[call-overload]
    return line.values if line is not None else ()


def _steps(_: Place) -> Iterator[str]:
    return (step_name(step) for step in Step)


def _sheets(_: Place) -> Iterator[str]:
    from specbuilder.documents.sheets import SHEETS

    return (sheet.name for sheet in SHEETS)


def _formats(_: Place) -> Iterator[str]:
    from specbuilder.documents.formats import FORMATS

    return (form.name.lower() for form in FORMATS)


def _stops(place: Place) -> Iterator[str]:
    catalogue = place.catalogue()
    return iter(("signing", *(catalogue.work if catalogue is not None else ())))


def _words(*words: str) -> Callable[[Place], Iterable[str]]:
    return lambda _: words


OFFERS: MappingProxyType[str, Callable[[Place], Iterable[str]]] = MappingProxyType(
    {
        **dict.fromkeys(("FILE", "JOB", "A", "B", "FROM"), _jobs),
        "THING[=VALUE]": _settable,
        "THING": _things,
        "OPTION": _options,
        "STEP": _steps,
        "STEP|GROUP": lambda place: (*_steps(place), *_groups(place)),
        "LEDGER": _ledgers,
        "LEDGER|FORMULA": _ledgers,
        "RULE": _rules,
        "PAPER": _sheets,
        "FORMATS": _formats,
        "STOPS": _stops,
        "KIND": _words("deposit", "supply", "passed", "reading", "promised", "call", "built"),
        "BY": _words(*(rank.value for rank in RankBy)),
        "AIM": _words(*(aim.value for aim in Aim)),
        "PLACE": _words("premises", "home", "distance"),
        "COPY": _words("journal", "yesterday"),
        "SCREEN": _words(*(where.value for where in Where)),
        "SHELL": _words("bash", "zsh", "fish"),
    }
)
"""By the word in capitals."""
LEFT_TO_THE_SHELL = frozenset({"DIR", "OUT"})
"""Files and folders, which every shell completes by itself."""
ONLY_TYPED = frozenset({"WORDS", "NAME", "DATE", "N", "TYPED", "COMMAND"})
"""What nobody can know beforehand."""
