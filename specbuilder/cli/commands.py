"""From the name of a line command to what it does. What a command alone needs is loaded only by it."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Mapping
from datetime import datetime
from types import MappingProxyType

from specbuilder.storage.disk import DiskError
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.storage.spec_files import SpecFaultsError
from specbuilder.wording.jobs import rules_unreadable

from . import answers, output
from .answers import Answer
from .asked import house_of, report_of, stand_of, target_of
from .output import AnswerLostError, Exit, StopError


def run(arguments: Namespace) -> Exit:
    """Run the command that was typed.

    Raises:
        StopError: if a file, the rules or the command line cannot be used.
        AnswerLostError: if standard output did not take the answer.
    """
    try:
        answer = DOES[arguments.command](arguments)
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


# -- read


def _show(arguments: Namespace) -> Answer:
    stand = stand_of(arguments, as_it_was=arguments.as_it_was)
    return answers.show(stand.catalogue, stand.report, arguments.what, json=arguments.json)


def _brief(arguments: Namespace) -> Answer:
    return answers.brief(*report_of(arguments))


def _check(arguments: Namespace) -> Answer:
    return answers.check(*report_of(arguments), json=arguments.json)


def _open(arguments: Namespace) -> Answer:
    from .open_things import open_list

    return open_list(*report_of(arguments), json=arguments.json)


def _find(arguments: Namespace) -> Answer:
    from .find import found

    return found(*report_of(arguments), " ".join(arguments.words), json=arguments.json)


def _details(arguments: Namespace) -> Answer:
    from .details import details

    return details(*report_of(arguments), arguments.option, json=arguments.json)


def _why(arguments: Namespace) -> Answer:
    from .why import why

    return why(*report_of(arguments), arguments.thing, json=arguments.json)


def _ledgers(arguments: Namespace) -> Answer:
    from .ledgers import ledgers

    return ledgers(*report_of(arguments), arguments.ledger, json=arguments.json)


def _circuits(arguments: Namespace) -> Answer:
    from .circuits import circuits

    return circuits(*report_of(arguments), json=arguments.json)


def _compare(arguments: Namespace) -> Answer:
    from .compare import compared

    return compared(house_of(arguments), arguments, datetime.now().date())


def _customer(arguments: Namespace) -> Answer:
    from .customer import customer

    return customer(stand_of(arguments), datetime.now().date(), prices=arguments.prices, json=arguments.json)


# -- change


def _set(arguments: Namespace) -> Answer:
    from .change import changed, setting

    now = datetime.now()
    return changed(target_of(arguments), arguments.things, lambda catalogue: setting(catalogue, now), arguments.trying)


def _drop(arguments: Namespace) -> Answer:
    from .change import changed, dropping

    now = datetime.now()
    return changed(target_of(arguments), arguments.things, lambda catalogue: dropping(catalogue, now), arguments.trying)


def _usual(arguments: Namespace) -> Answer:
    """Shows what the house would take, or takes it; ``--to`` alone takes it as well, and leaves FILE as it is."""
    from .usual import usual, usual_taking

    if not arguments.take and not arguments.to:
        return usual(*report_of(arguments), arguments.step, json=arguments.json)
    return usual_taking(target_of(arguments), arguments.step, json=arguments.json)


def _fix(arguments: Namespace) -> Answer:
    """Lists the ways out, or takes one. The search is loaded only by what searches."""
    from .fix import fix, fix_taking, rank_of

    rank_by, thing = rank_of(arguments.rank), arguments.thing
    if arguments.take is None:
        if arguments.to:
            raise StopError(Exit.UNUSABLE, "--to says where to write what --take takes: name the way with --take N.")
        return fix(*report_of(arguments), thing, rank_by, json=arguments.json)
    return fix_taking(target_of(arguments), thing, rank_by, arguments.take, json=arguments.json)


def _finish(arguments: Namespace) -> Answer:
    """Shows the proposal, or takes it; ``--to`` alone takes it as well, and leaves FILE as it is."""
    from .finish import aim_of, finish, finish_taking

    aim = aim_of(arguments.by)
    if not arguments.take and not arguments.to:
        return finish(*report_of(arguments), aim, json=arguments.json)
    return finish_taking(target_of(arguments), aim, json=arguments.json)


def _switch(arguments: Namespace) -> Answer:
    """Shows what it would do, or takes it; ``--to`` alone takes it as well, and leaves FILE as it is."""
    from .switch import switch, switch_taking

    if not arguments.take and not arguments.to:
        return switch(*report_of(arguments), arguments.option, json=arguments.json)
    return switch_taking(target_of(arguments), arguments.option, json=arguments.json)


def _merge(arguments: Namespace) -> Answer:
    from .merge import merge

    return merge(target_of(arguments), arguments, datetime.now())


def _accept(arguments: Namespace) -> Answer:
    from .said import accept

    return accept(target_of(arguments), arguments, datetime.now())


def _ask(arguments: Namespace) -> Answer:
    from .said import ask

    return ask(target_of(arguments), arguments, datetime.now())


def _undo(arguments: Namespace) -> Answer:
    from .history import undo

    return undo(house_of(arguments), arguments.file)


def _redo(arguments: Namespace) -> Answer:
    from .history import redo

    return redo(house_of(arguments), arguments.file)


# -- jobs, and the house


def _office(arguments: Namespace) -> Answer:
    """What happens to a job as a whole. Papers and their formats are loaded only for it."""
    from .office import COMMANDS

    return COMMANDS[arguments.command](house_of(arguments), arguments, datetime.now().astimezone())


def _keeping(arguments: Namespace) -> Answer:
    """The list of jobs, new ones, and the specs that leave it."""
    from .keeping import COMMANDS

    return COMMANDS[arguments.command](house_of(arguments), arguments)


def _audit(arguments: Namespace) -> Answer:
    from .audit import audit

    return audit(arguments)


def _sources(arguments: Namespace) -> Answer:
    """Where the numbers come from. The files of the formulas are read only by it."""
    from .asked import catalogue_of
    from .sources import sources

    return sources(catalogue_of(arguments), arguments.formula)


def _keys(arguments: Namespace) -> Answer:
    from .keys import keys
    from .own_keys import keys_path

    return keys(arguments.where, keys_path(arguments.keys))


DOES: Mapping[str, Callable[[Namespace], Answer]] = MappingProxyType(
    {
        "show": _show,
        "brief": _brief,
        "check": _check,
        "open": _open,
        "find": _find,
        "details": _details,
        "why": _why,
        "ledgers": _ledgers,
        "circuits": _circuits,
        "compare": _compare,
        "customer": _customer,
        "set": _set,
        "drop": _drop,
        "usual": _usual,
        "fix": _fix,
        "finish": _finish,
        "switch": _switch,
        "merge": _merge,
        "accept": _accept,
        "ask": _ask,
        "undo": _undo,
        "redo": _redo,
        **dict.fromkeys(("jobs", "new", "variant", "export", "restore"), _keeping),
        **dict.fromkeys(("quote", "order", "change", "record", "paper", "verify"), _office),
        **dict.fromkeys(("build", "revisions", "today"), _office),
        "audit": _audit,
        "sources": _sources,
        "keys": _keys,
    }
)
"""What each command does, by its name; ``completion`` never comes so far."""
