"""One function for each line command: opens what it needs, prints the answer, gives the exit code."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Mapping
from datetime import datetime
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.session.audit import lints
from specbuilder.session.evaluate import evaluate
from specbuilder.session.life import fresh
from specbuilder.session.ready import gaps
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_list import JobLine
from specbuilder.storage.jobs import JobsFolder, default_jobs_path
from specbuilder.storage.rules_cases import cased_rules
from specbuilder.storage.rules_files import RulesFaults, read_rules, rules_folder
from specbuilder.storage.spec_files import SpecFaultsError
from specbuilder.wording.audit import audit_summary, lint_line
from specbuilder.wording.glance import price_words
from specbuilder.wording.jobs import job_words, no_jobs, read_only, rules_unreadable
from specbuilder.wording.life import not_current
from specbuilder.wording.plain import ended
from specbuilder.wording.ready import gap_lines

from . import answers, output
from .answers import Answer
from .change import Target, changed, dropping, made_new, setting
from .opening import opened, refuse_altered, same_place, write_spec
from .output import AnswerLostError, Exit, StopError
from .why import why


def run(arguments: Namespace) -> Exit:
    """Run the command that was typed.

    Raises:
        StopError: if a file, the rules or the command line cannot be used.
        AnswerLostError: if standard output did not take the answer.
    """
    try:
        answer = _COMMANDS[arguments.command](arguments)
    except RulesFaults as faults:
        raise StopError(Exit.UNUSABLE, *rules_unreadable(tuple(str(f) for f in faults.faults))) from faults
    except SpecFaultsError as faults:
        lines = (str(fault) for fault in faults.faults)
        raise StopError(Exit.UNUSABLE, "This file cannot be used. Nothing was changed.", *lines) from faults
    except DiskError as trouble:
        raise StopError(Exit.UNUSABLE, str(trouble)) from trouble
    try:
        output.answer(answer.lines)
    except AnswerLostError as lost:
        raise AnswerLostError(f"{lost} {answer.stands}".rstrip()) from lost
    return answer.code


def _check(arguments: Namespace) -> Answer:
    return answers.check(*_report(arguments), json=arguments.json)


def _show(arguments: Namespace) -> Answer:
    return answers.show(*_report(arguments), arguments.what)


def _brief(arguments: Namespace) -> Answer:
    return answers.brief(*_report(arguments))


def _why(arguments: Namespace) -> Answer:
    return why(*_report(arguments), arguments.thing, json=arguments.json)


def _circuits(arguments: Namespace) -> Answer:
    """The circuit schedule."""
    from .circuits import circuits

    return circuits(*_report(arguments), json=arguments.json)


def _fix(arguments: Namespace) -> Answer:
    """Lists the ways out, or takes one. The search is loaded only by what searches."""
    from .fix import fix, fix_taking, rank_of

    rank_by, thing = rank_of(arguments.rank), arguments.thing
    if arguments.take is None:
        if arguments.to:
            raise StopError(Exit.UNUSABLE, "--to says where to write what --take takes: name the way with --take N.")
        return fix(*_report(arguments), thing, rank_by, json=arguments.json)
    return fix_taking(_target(arguments), thing, rank_by, arguments.take, json=arguments.json)


def _finish(arguments: Namespace) -> Answer:
    """Shows the proposal, or takes it; ``--to`` alone takes it as well, and leaves FILE as it is."""
    from .finish import aim_of, finish, finish_taking

    aim = aim_of(arguments.by)
    if not arguments.take and not arguments.to:
        return finish(*_report(arguments), aim, json=arguments.json)
    return finish_taking(_target(arguments), aim, json=arguments.json)


def _switch(arguments: Namespace) -> Answer:
    """Shows what it would do, or takes it; ``--to`` alone takes it as well, and leaves FILE as it is."""
    from .switch import switch, switch_taking

    if not arguments.take and not arguments.to:
        return switch(*_report(arguments), arguments.option, json=arguments.json)
    return switch_taking(_target(arguments), arguments.option, json=arguments.json)


def _compare(arguments: Namespace) -> Answer:
    """Two specs side by side."""
    from .compare import compared

    return compared(_house(arguments), arguments)


def _set(arguments: Namespace) -> Answer:
    now = datetime.now()
    return changed(_target(arguments), arguments.things, lambda catalogue: setting(catalogue, now))


def _drop(arguments: Namespace) -> Answer:
    return changed(_target(arguments), arguments.things, dropping)


def _accept(arguments: Namespace) -> Answer:
    from .said import accept

    return accept(_target(arguments), arguments, datetime.now())


def _ask(arguments: Namespace) -> Answer:
    from .said import ask

    return ask(_target(arguments), arguments, datetime.now())


def _new(arguments: Namespace) -> Answer:
    house = _house(arguments)
    start = fresh(opened(arguments.source, house).spec) if arguments.source else Spec()
    if not arguments.source and not arguments.things:
        raise StopError(Exit.UNUSABLE, "Say what the job begins with: THING, or --from FILE.")
    return made_new(house, start, arguments.things, setting(house.catalogue, datetime.now()))


def _export(arguments: Namespace) -> Answer:
    """Writes ``0147-r1.toml`` into the folder; a spec without a number keeps the name of its file."""
    house = _house(arguments)
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


def _office(arguments: Namespace) -> Answer:
    """What happens to a job as a whole. Papers and their formats are loaded only for it."""
    from .office import COMMANDS

    return COMMANDS[arguments.command](_house(arguments), arguments, datetime.now().astimezone())


def _jobs(arguments: Namespace) -> Answer:
    """One line a job. The price needs the whole spec, so a job that cannot be read shows none."""
    house = _house(arguments)
    lines = tuple(text for line in house.jobs.list() for text in _job_lines(house, line))
    if not lines:
        output.message((no_jobs().replace("Press n", "Use specbuilder new"),))
    return Answer(lines)


def _audit(arguments: Namespace) -> Answer:
    folder = Path(arguments.dir) if arguments.dir else None
    catalogue = read_rules(folder or _rules(arguments))
    found = lints(catalogue, cased_rules(Path(arguments.cases)) if arguments.cases else None)
    code = Exit.BROKEN if any(lint.serious for lint in found) else Exit.FINE
    return Answer((*audit_summary(catalogue, found), *(lint_line(catalogue, lint) for lint in found)), code)


def _sources(arguments: Namespace) -> Answer:
    """Where the numbers come from. The files of the formulas are read only by it."""
    from .sources import sources

    return sources(_catalogue(arguments), arguments.formula)


_COMMANDS: Mapping[str, Callable[[Namespace], Answer]] = MappingProxyType(
    {
        "check": _check,
        "show": _show,
        "brief": _brief,
        "why": _why,
        "circuits": _circuits,
        "compare": _compare,
        "fix": _fix,
        "finish": _finish,
        "switch": _switch,
        "set": _set,
        "drop": _drop,
        "accept": _accept,
        "ask": _ask,
        "new": _new,
        "export": _export,
        "jobs": _jobs,
        **dict.fromkeys(("quote", "order", "change", "record", "paper", "verify"), _office),
        "audit": _audit,
        "sources": _sources,
    }
)


def _report(arguments: Namespace) -> tuple[Catalogue, Report]:
    was = opened(arguments.file, _house(arguments))
    return was.catalogue, evaluate(was.catalogue, was.spec)


def _target(arguments: Namespace) -> Target:
    to = Path(arguments.to) if arguments.to else None
    return Target(house=_house(arguments), file=arguments.file, to=to)


def _house(arguments: Namespace) -> House:
    return House(_jobs_folder(arguments), _catalogue(arguments), _rules(arguments))


def _catalogue(arguments: Namespace) -> Catalogue:
    return _usable(_rules(arguments))


def _usable(folder: Traversable | Path) -> Catalogue:
    catalogue = read_rules(folder)
    if missing := gaps(catalogue):
        raise StopError(Exit.UNUSABLE, *rules_unreadable(gap_lines(missing)))
    return catalogue


def _rules(arguments: Namespace) -> Traversable | Path:
    return Path(arguments.rules) if arguments.rules else rules_folder()


def _jobs_folder(arguments: Namespace) -> JobsFolder:
    return JobsFolder(Path(arguments.jobs) if arguments.jobs else default_jobs_path())


def _refuse_replaced(house: House, spec: Spec) -> None:
    """What another revision has replaced leaves the house no more.

    Raises:
        StopError: it was replaced.
    """
    if (revision := house.replaced_by(spec)) is not None:
        raise StopError(Exit.BROKEN, *not_current(spec.number, spec.revision, revision))


def _job_lines(house: House, line: JobLine) -> tuple[str, ...]:
    if line.state is None:
        return (f"{line.number} cannot be read: {ended(str(line.faults[0]))}" if line.faults else line.number,)
    try:
        was = opened(line.number, house)
        price = price_words(was.catalogue, evaluate(was.catalogue, was.spec).price)
    except (StopError, SpecFaultsError, DiskError, RulesFaults):
        price = ""
    words = job_words(number=line.number, customer=line.customer, state=line.state, price=price, van=line.van)
    return (words.line, *_holder_line(line))


def _holder_line(line: JobLine) -> tuple[str, ...]:
    if line.holder is None:
        return ()
    since = line.holder.since_words(datetime.now().astimezone())
    return (f"{line.number} {ended(read_only(line.holder.counter, since))}",)
