"""What is typed for each act of the screens: everything that can be done there can be done line by line.

An act without a line here, and not among those that only move about on a screen, fails a test.
"""

from __future__ import annotations

from types import MappingProxyType

from specbuilder.tui.acts import Act, Where

TYPED = MappingProxyType(
    {
        Act.MORE: "set FILE OPTION*2",
        Act.LESS: "drop FILE THING",
        Act.NEXT: "open FILE",
        Act.WHY: "why FILE THING",
        Act.ANYWAY: "set FILE OPTION",
        Act.RANK: "fix FILE THING --rank mass",
        Act.FINISH: "finish FILE",
        Act.WHAT_IF: "set FILE THING --try",
        Act.KEEP: "set FILE THING",
        Act.LEDGERS: "ledgers FILE",
        Act.CIRCUITS: "circuits FILE",
        Act.UNDO: "undo JOB",
        Act.REDO: "redo JOB",
        Act.USUAL: "usual FILE STEP",
        Act.DETAILS: "details FILE OPTION",
        Act.THEIRS: "set FILE OPTION=theirs",
        Act.FIND: "find FILE WORDS",
        Act.OPEN_THINGS: "open FILE",
        Act.ACCEPT: "accept FILE RULE --by NAME",
        Act.HAND_OVER: "export FILE --to DIR",
        Act.PAPERS: "paper FILE",
        Act.SIGN: "order JOB --customer NAME --firm NAME --place premises",
        Act.PRINT: "paper FILE --to DIR",
        Act.BUILD: "build JOB",
        Act.EARLIER: "revisions JOB",
        Act.GIVE_UP: "change JOB --drop",
        Act.CUSTOMER: "customer FILE",
        Act.SIDE_BY_SIDE: "compare A B",
        Act.VARIANT: "variant JOB",
        Act.KEYS: "keys SCREEN",
        Act.NEW: "new THING",
    }
)
"""By the act, wherever it is asked for."""
TYPED_THERE = MappingProxyType(
    {
        (Act.ENTER, Where.JOBS): "show JOB",
        (Act.ENTER, Where.BRIEF): "set FILE KEY=VALUE",
        (Act.ENTER, Where.WALK): "set FILE OPTION",
        (Act.ENTER, Where.CHECK): "ask FILE THING --who NAME --due 2031-04-28",
        (Act.ENTER, Where.OPEN): "ask FILE THING --who NAME --due 2031-04-28",
        (Act.ENTER, Where.WHO): "ask FILE THING --who NAME --due 2031-04-28",
        (Act.ENTER, Where.LEDGERS): "ledgers FILE LEDGER",
        (Act.ENTER, Where.LEDGER): "why FILE THING",
        (Act.ENTER, Where.CIRCUITS): "circuits FILE",
        (Act.ENTER, Where.CIRCUIT): "details FILE OPTION",
        (Act.ENTER, Where.FIND): "find FILE WORDS",
        (Act.ENTER, Where.DETAILS): "set FILE OPTION@left OPTION.note=WORDS OPTION.mass_kg=7,5",
        (Act.ENTER, Where.USUAL): "usual FILE STEP --take",
        (Act.ENTER, Where.ACCEPT): "accept FILE RULE --by NAME",
        (Act.ENTER, Where.SWITCH): "switch FILE OPTION --take",
        (Act.ENTER, Where.FINISH): "finish FILE --take",
        (Act.ENTER, Where.WHY): "fix FILE THING --take 1",
        (Act.ENTER, Where.NOTICE): "restore JOB",
        (Act.ENTER, Where.PAPERS): "paper FILE PAPER",
        (Act.ENTER, Where.SIGN): "quote JOB --by NAME",
        (Act.ENTER, Where.CONFIRM): "change JOB --drop",
        (Act.ENTER, Where.BUILD): "record JOB passed H3 --by NAME",
        (Act.ENTER, Where.RECORD): "record JOB promised WORDS --by NAME",
        (Act.ENTER, Where.REVISIONS): "show JOB@1",
        (Act.ENTER, Where.OLDER_RULES): "today JOB --move",
        (Act.ENTER, Where.SIDE_BY_SIDE): "merge FROM FILE THING",
        (Act.ENTER, Where.CUSTOMER): "paper FILE customer --to DIR",
        (Act.PAPERS, Where.CUSTOMER): "paper FILE customer --to DIR",
        (Act.MORE, Where.CUSTOMER): "customer FILE --prices",
        (Act.LESS, Where.CHECK): "accept FILE RULE --back",
        (Act.LESS, Where.OPEN): "ask FILE THING --answered",
        (Act.BEFORE, Where.SIDE_BY_SIDE): "merge FROM FILE THING",
        (Act.AFTER, Where.SIDE_BY_SIDE): "merge FROM FILE THING",
        (Act.FIND, Where.JOBS): "jobs WORDS",
    }
)
"""By the act and the screen, where it means something of its own there."""
ONLY_ON_SCREEN = frozenset(
    {
        *(Act.UP, Act.DOWN, Act.PAGE_UP, Act.PAGE_DOWN, Act.FIRST, Act.LAST, Act.BEFORE, Act.AFTER, Act.BACK),
        Act.ACTIONS,  # the list of acts: --help is that of the commands
        Act.GROUND,
        Act.LEAVE,
        Act.PRACTISE,  # lessons about the keys
    }
)
"""Moves about, or changes how the screen looks."""
ONLY_THERE = frozenset(
    {
        (Act.ENTER, Where.ACTIONS),
        (Act.ENTER, Where.KEYS),
        (Act.ENTER, Where.PAPER),
        (Act.NEXT, Where.PAPER),
        (Act.FIND, Where.PAPER),
        (Act.ENTER, Where.AGAINST_TODAY),
    }
)
"""The same on one screen: goes back, or from one place of a text to the next."""


def typed_for(act: Act, where: Where) -> str | None:
    """What is typed behind ``specbuilder`` for this act; None where it only moves about on the screen.

    Raises:
        KeyError: nobody has said what is typed for it.
    """
    if (act, where) in TYPED_THERE:
        return TYPED_THERE[act, where]
    if act in ONLY_ON_SCREEN or (act, where) in ONLY_THERE:
        return None
    return TYPED[act]


def acts_of(command: str) -> tuple[Act, ...]:
    """The acts of the screens that this command does, in the order of their table."""
    return tuple(act for act, typed in TYPED.items() if typed.split()[0] == command)
