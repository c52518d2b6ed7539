"""The one table of keys. Bindings, hints, help, the list of actions and README's table are all read from here."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from .acts import Act, Where

__all__ = ["DIGITS", "TABLE", "WALKED", "Act", "Clash", "KeyLine", "Where", "clashes_of", "faults_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """One line of the table: an act, its keys, its words, and where it works."""

    act: Act
    keys: tuple[str, ...] = ()
    """As the toolkit names them; they are text while something is typed."""
    always: tuple[str, ...] = ()
    """Keys that work while something is typed, too."""
    shown: str = ""
    """The keys as people read them, the first ones first."""
    hint: str = ""
    """One or two words for the hint line; empty: not shown there."""
    words: str
    """What it does, for the help and the list of actions."""
    where: frozenset[Where]


WALKED = frozenset({Where.BRIEF, Where.WALK, Where.CHECK})
"""The pages of the walk itself."""
_SIDES = frozenset(
    {
        Where.WHY,
        Where.LEDGERS,
        Where.LEDGER,
        Where.CIRCUITS,
        Where.CIRCUIT,
        Where.OPEN,
        Where.DETAILS,
        Where.USUAL,
        Where.SWITCH,
        Where.FINISH,
    }
)
_TYPED = frozenset({Where.FIND, Where.ACTIONS})
_FORMS = frozenset({Where.WHO, Where.ACCEPT, Where.SIGN, Where.RECORD})
_LIFE = frozenset({Where.PAPERS, Where.PAPER, Where.BUILD, Where.CONFIRM})
_OLDER = frozenset({Where.REVISIONS, Where.OLDER_RULES, Where.AGAINST_TODAY})
_JOB = WALKED | _SIDES
_IN_JOB = _JOB | _TYPED | _FORMS | _LIFE | _OLDER | {Where.KEYS, Where.SIDE_BY_SIDE}
_ALL = frozenset(Where)


def _in(*where: Where) -> frozenset[Where]:
    return frozenset(where)


TABLE: tuple[KeyLine, ...] = (
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="open", words="open the job", where=_in(Where.JOBS)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="answer", words="take the answer and go on",
            where=_in(Where.BRIEF)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="take", words="take; never removes",
            where=_in(Where.WALK)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="who and when", words="who finds out, by when; why",
            where=_in(Where.CHECK, Where.OPEN)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="go there", words="go to the line under the cursor",
            where=_in(Where.LEDGER, Where.CIRCUIT, Where.FIND)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="open", words="open the line under the cursor",
            where=_in(Where.LEDGERS, Where.CIRCUITS)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="take", words="take what stands there",
            where=_in(Where.DETAILS, Where.USUAL, Where.WHO, Where.ACCEPT)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="take all of it",
            words="take it with all that is proposed, as one step of undo", where=_in(Where.SWITCH, Where.FINISH)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="do it", words="do the action",
            where=_in(Where.ACTIONS)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="go back",
            words="take this way out; go to what a reason is about; else go back", where=_in(Where.WHY)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="go back", words="go back; go on from a notice",
            where=_in(Where.KEYS, Where.NOTICE)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="show", words="show the paper; do what the line says",
            where=_in(Where.PAPERS)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="next place",
            words="next place with the words that were looked for", where=_in(Where.PAPER)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="sign", words="sign; go to what stands in the way",
            where=_in(Where.SIGN)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="do it", words="do what stands there; it stays done",
            where=_in(Where.CONFIRM)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="write down", words="write down what happened",
            where=_in(Where.BUILD, Where.RECORD)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="look at it", words="look at it as it was",
            where=_in(Where.REVISIONS)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="open", words="open it as the line says",
            where=_in(Where.OLDER_RULES)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="go back", words="go back to the job as it was",
            where=_in(Where.AGAINST_TODAY)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", hint="take the line",
            words="take the line where its arrow points; open what stands there", where=_in(Where.SIDE_BY_SIDE)),
    KeyLine(act=Act.ENTER, always=("enter",), shown="Enter", words="behind Esc: back; behind p: write your copy",
            where=_in(Where.CUSTOMER)),
    KeyLine(act=Act.MORE, keys=("plus",), shown="+", words="one more", where=_in(Where.WALK, Where.DETAILS)),
    KeyLine(act=Act.MORE, keys=("plus",), shown="+", words="prices of the parts, or without them",
            where=_in(Where.CUSTOMER)),
    KeyLine(act=Act.LESS, keys=("minus",), shown="-", hint="leave out", words="one fewer, leave out",
            where=_in(Where.WALK, Where.DETAILS)),
    KeyLine(act=Act.LESS, keys=("minus",), shown="-", hint="not known", words="make it not known yet again",
            where=_in(Where.BRIEF)),
    KeyLine(act=Act.LESS, keys=("minus",), shown="-", words="take an acceptance back, close an open question",
            where=_in(Where.CHECK, Where.OPEN)),
    KeyLine(act=Act.UP, always=("up",), shown="Up", words="line above", where=_ALL),
    KeyLine(act=Act.DOWN, always=("down",), shown="Down", words="line below; leaves a question for now", where=_ALL),
    KeyLine(act=Act.PAGE_UP, always=("pageup",), shown="PgUp", words="page above", where=_ALL),
    KeyLine(act=Act.PAGE_DOWN, always=("pagedown",), shown="PgDn", words="page below", where=_ALL),
    KeyLine(act=Act.FIRST, keys=("home",), shown="Home", words="first line", where=_ALL),
    KeyLine(act=Act.LAST, keys=("end",), shown="End", words="last line", where=_ALL),
    KeyLine(act=Act.BEFORE, keys=("left",), shown="Left", words="step before", where=WALKED),
    KeyLine(act=Act.AFTER, keys=("right",), shown="Right", hint="step", words="step after", where=WALKED),
    KeyLine(act=Act.BEFORE, keys=("left",), shown="Left", hint="into A", words="take the line into A",
            where=_in(Where.SIDE_BY_SIDE)),
    KeyLine(act=Act.AFTER, keys=("right",), shown="Right", hint="into B", words="take the line into B",
            where=_in(Where.SIDE_BY_SIDE)),
    KeyLine(act=Act.BEFORE, keys=("left",), shown="Left", words="page before", where=_in(Where.CUSTOMER)),
    KeyLine(act=Act.AFTER, keys=("right",), shown="Right", words="page after", where=_in(Where.CUSTOMER)),
    KeyLine(act=Act.WHY, keys=("w",), always=("f2",), shown="w F2", hint="all reasons",
            words="all of the reasons, or the first of them", where=_in(Where.WHY)),
    KeyLine(act=Act.ANYWAY, keys=("e",), shown="e", hint="take it anyway",
            words="take it anyway, leave the clash open", where=_in(Where.WHY)),
    KeyLine(act=Act.ANYWAY, keys=("e",), shown="e", hint="take only this",
            words="take only this, leave open what does not fit", where=_in(Where.SWITCH)),
    KeyLine(act=Act.RANK, keys=("b",), shown="b", hint="rank",
            words="rank ways out by price, kg, hours or weeks", where=_in(Where.WHY)),
    KeyLine(act=Act.BACK, keys=("backspace",), always=("escape",), shown="Esc", hint="back",
            words="one step back; keeps everything", where=_IN_JOB - WALKED | _in(Where.NOTICE)),
    KeyLine(act=Act.NEXT, keys=("n",), always=("f6",), shown="n F6", hint="next", words="next open thing",
            where=_JOB),
    KeyLine(act=Act.NEXT, keys=("n",), always=("f6",), shown="n F6", hint="next place",
            words="next place with the words that were looked for", where=_in(Where.PAPER)),
    KeyLine(act=Act.PAPERS, keys=("p",), shown="p", hint="papers", words="papers, and where the job stands",
            where=_in(Where.CHECK, Where.JOBS)),
    KeyLine(act=Act.PAPERS, keys=("p",), shown="p", words="papers, and where the job stands",
            where=_in(Where.BRIEF, Where.WALK, Where.OPEN)),
    KeyLine(act=Act.PAPERS, keys=("p",), shown="p", words="take a copy", where=_in(Where.CUSTOMER)),
    KeyLine(act=Act.SIGN, keys=("s",), shown="s", hint="sign", words="quote, sign: the next step of the job",
            where=_in(Where.CHECK, Where.PAPERS, Where.PAPER)),
    KeyLine(act=Act.BUILD, keys=("b",), shown="b", hint="build",
            words="build: hold points, parts, deposit, promises, next call", where=_in(Where.CHECK, Where.PAPERS)),
    KeyLine(act=Act.PRINT, keys=("x",), shown="x", hint="write all", words="write every paper that is called for",
            where=_in(Where.PAPERS, Where.PAPER)),
    KeyLine(act=Act.GIVE_UP, keys=("g",), shown="g", hint="give up", words="give up the revision that is drawn up",
            where=_in(Where.PAPERS)),
    KeyLine(act=Act.EARLIER, keys=("e",), shown="e", hint="earlier", words="earlier revisions, to look at",
            where=_in(Where.PAPERS, Where.JOBS)),
    KeyLine(act=Act.WHY, keys=("w",), always=("f2",), shown="w F2", hint="why", words="why it is so",
            where=WALKED | _in(Where.OPEN, Where.LEDGERS, Where.LEDGER, Where.SIDE_BY_SIDE)),
    KeyLine(act=Act.LEDGERS, keys=("l",), always=("f3",), shown="l F3", hint="ledgers", words="ledgers",
            where=WALKED | _in(Where.WHY, Where.OPEN, Where.CIRCUITS, Where.CIRCUIT)),
    KeyLine(act=Act.CIRCUITS, keys=("i",), shown="i", hint="circuits",
            words="circuits: every cable with section, fuse and drop", where=_in(Where.CHECK, Where.LEDGERS)),
    KeyLine(act=Act.CIRCUITS, keys=("i",), shown="i", words="circuits: every cable with section, fuse and drop",
            where=_in(Where.BRIEF, Where.WALK, Where.LEDGER, Where.OPEN, Where.DETAILS)),
    KeyLine(act=Act.UNDO, keys=("u",), always=("f4",), shown="u F4", hint="undo", words="undo", where=_JOB),
    KeyLine(act=Act.UNDO, keys=("u",), always=("f4",), shown="u F4", words="undo",
            where=_in(Where.PAPERS, Where.BUILD)),
    KeyLine(act=Act.REDO, keys=("r",), always=("f5",), shown="r F5", words="redo", where=_JOB),
    KeyLine(act=Act.USUAL, keys=("h",), shown="h", hint="usual", words="house usual for this step",
            where=_in(Where.WALK)),
    KeyLine(act=Act.KEEP, keys=("k",), shown="k", hint="keep", words="keep the what-if: it becomes the job",
            where=WALKED),
    KeyLine(act=Act.WHAT_IF, keys=("t",), always=("f7",), shown="t F7", hint="what if",
            words="what if: try it and leave the job as it is; back to the job",
            where=WALKED | _in(Where.WHY, Where.SWITCH, Where.FINISH)),
    KeyLine(act=Act.SIDE_BY_SIDE, keys=("v",), shown="v", hint="side by side",
            words="side by side: another variant, an earlier revision, the what-if", where=WALKED | _in(Where.WHY)),
    KeyLine(act=Act.VARIANT, keys=("n",), shown="n", hint="new variant", words="new variant: a copy of the job",
            where=_in(Where.SIDE_BY_SIDE)),
    KeyLine(act=Act.CUSTOMER, keys=("c",), always=("f8",), shown="c F8", hint="customer",
            words="customer view: the screen turned round", where=_IN_JOB - _FORMS),
    KeyLine(act=Act.CUSTOMER, always=("f8",), shown="F8", words="customer view: the screen turned round",
            where=_FORMS),
    KeyLine(act=Act.FINISH, keys=("f",), shown="f", hint="finish",
            words="finish it for me: an answer to every open question", where=WALKED),
    KeyLine(act=Act.DETAILS, keys=("d",), shown="d", hint="details", words="details: place, count, whose, note",
            where=_in(Where.WALK)),
    KeyLine(act=Act.THEIRS, keys=("y",), shown="y", words="their own part, or ours again",
            where=_in(Where.WALK, Where.DETAILS)),
    KeyLine(act=Act.OPEN_THINGS, keys=("o",), shown="o", hint="open things", words="open things",
            where=WALKED | _in(Where.WHY, Where.LEDGERS, Where.LEDGER)),
    KeyLine(act=Act.ACCEPT, keys=("a",), shown="a", hint="accept", words="accept in writing",
            where=_in(Where.CHECK, Where.WHY, Where.OPEN)),
    KeyLine(act=Act.HAND_OVER, keys=("x",), shown="x", hint="write the spec", words="write the spec for the workshop",
            where=_in(Where.CHECK)),
    KeyLine(act=Act.FIND, keys=("slash",), shown="/", hint="find", words="find",
            where=WALKED | _SIDES | _in(Where.JOBS)),
    KeyLine(act=Act.FIND, keys=("slash",), shown="/", hint="find words", words="find words in the paper",
            where=_in(Where.PAPER)),
    KeyLine(act=Act.NEW, keys=("n",), shown="n", hint="new job", words="new job", where=_in(Where.JOBS)),
    KeyLine(act=Act.PRACTISE, keys=("g",), shown="g", hint="guided job",
            words="a guided first job to practise on; once more: ends it", where=_in(Where.JOBS)),
    KeyLine(act=Act.KEYS, keys=("question_mark",), always=("f1",), shown="F1 ?", hint="keys", words="keys",
            where=_ALL - _in(Where.NOTICE) - _FORMS),
    KeyLine(act=Act.KEYS, always=("f1",), shown="F1", hint="keys", words="keys", where=_FORMS),
    KeyLine(act=Act.ACTIONS, always=("f9",), shown="F9", hint="actions", words="actions",
            where=_ALL - _in(Where.NOTICE)),
    KeyLine(act=Act.BACK, always=("escape",), shown="Esc", words="with Enter behind it: back",
            where=_in(Where.CUSTOMER)),
    KeyLine(act=Act.BACK, keys=("backspace",), always=("escape",), shown="Esc", hint="jobs",
            words="back to the list of jobs; all is saved", where=WALKED),
    KeyLine(act=Act.BACK, keys=("backspace",), always=("escape",), shown="Esc", words="stays; all is saved",
            where=_in(Where.JOBS)),
    KeyLine(act=Act.LEAVE, keys=("q",), shown="q", hint="leave", words="leave the program",
            where=_in(Where.JOBS, Where.NOTICE)),
    KeyLine(act=Act.GROUND, words="light or dark ground", where=_ALL - _in(Where.NOTICE)),
)  # fmt: skip

DIGITS = "0 to 9"
"""Digits are never commands: they are amounts and numbers of lines."""


@dataclass(frozen=True, slots=True)
class Clash:
    """A key that would mean two acts in one place."""

    key: str
    one: Act
    other: Act
    where: Where


def clashes_of(table: Iterable[KeyLine]) -> tuple[Clash, ...]:
    """Every key that would mean two acts in one place."""
    seen: dict[tuple[Where, str], Act] = {}
    return tuple(
        Clash(key, seen[where, key], entry.act, where)
        for entry in table
        for where in sorted(entry.where)
        for key in (*entry.keys, *entry.always)
        if seen.setdefault((where, key), entry.act) is not entry.act
    )


def faults_of(table: Iterable[KeyLine]) -> tuple[str, ...]:
    """Every key that would mean two acts in one place, and every line nobody could read."""
    lines = tuple(table)
    unread = (entry.act for entry in lines if (entry.keys or entry.always) and not entry.shown)
    return (
        *(f"{act} has a key that is not shown" for act in unread),
        *(f"{clash.key} means {clash.one} and {clash.other} on {clash.where}" for clash in clashes_of(lines)),
    )
