"""A change after signing in the words both sign: what goes, what comes, what it costs."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import AnswerChange, Change, ChangeKind
from specbuilder.model.kinds import Owner
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Undone
from specbuilder.model.report import Pence
from specbuilder.model.spec import Choice
from specbuilder.model.ways import Difference

from . import quantities
from .brief import answer_words
from .customer import pounds, pounds_range
from .differences import difference_cells
from .names import key_name, place_name
from .plain import raised

NOTHING = "-"
_HUNDRED = 100
_OTHERWISE = {
    ChangeKind.RESIZED: "with other data",
    ChangeKind.REPRICED: "at another price",
    ChangeKind.REWEIGHED: "with another weight",
    ChangeKind.RETIMED: "with other hours or another wait",
    ChangeKind.GONE: "not in our list any more",
    ChangeKind.BACK: "in our list again",
}
"""What is new where both sides have the same name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeCells:
    """One line of the table of a change."""

    out: str
    """What stood there before."""
    in_: str
    """What stands there after."""
    price: str
    mass: str
    hours: str
    weeks: str

    @property
    def row(self) -> tuple[str, ...]:
        """All of it, in the order of the columns."""
        return self.out, self.in_, self.price, self.mass, self.hours, self.weeks


def is_told(change: Change) -> bool:
    """Whether a customer is told of it: notes for the workshop stay in the house."""
    return change.kind is not ChangeKind.NOTED


def change_cells(change: Change, currency: str) -> ChangeCells:
    """One change: both sides and what it does."""
    out, in_ = _side(change.name_before, change.before), _side(change.name_after, change.after)
    if out == in_:
        in_ = f"{in_}, {_OTHERWISE.get(change.kind, 'otherwise')}"
    return _cells(out, in_, change.difference, currency)


def sum_cells(difference: Difference, currency: str) -> ChangeCells:
    """The last line of the table."""
    return _cells("Together", "", difference, currency)


def price_cells(name: str, gross: Pence, currency: str) -> tuple[str, ...]:
    """A whole price below the sum of what changes."""
    return ChangeCells(out=name, in_="", price=pounds_range(gross, currency), mass="", hours="", weeks="").row


def undoing_cells(gross_pence: int, hours: float, currency: str) -> ChangeCells:
    """The work that is already done and has to be undone."""
    whole = Difference(gross_pence=gross_pence, mass_kg=0, hours=hours, weeks=0)
    return _cells(NOTHING, "Undoing what is done already, as listed below", whole, currency)


def change_line(change: Change, currency: str) -> str:
    """``Induction hob, one ring, instead of Gas kit: -£624``, for a list."""
    cells = change_cells(change, currency)
    if cells.out == NOTHING:
        return f"{cells.in_}: {cells.price}"
    if cells.in_ == NOTHING:
        return f"Without {cells.out}: {cells.price}"
    return f"{cells.in_}, instead of {cells.out}: {cells.price}"


def answer_line(catalogue: Catalogue, change: AnswerChange) -> tuple[str, str, str]:
    """``("Nights without a plug", "2 nights ...", "4 nights ...")``."""
    name = raised(key_name(catalogue, change.key))
    line = catalogue.brief.get(change.key)
    if line is None:
        return name, NOTHING, NOTHING
    return name, answer_words(catalogue, line, change.before), answer_words(catalogue, line, change.after)


def price_change(before: Pence, after: Pence, currency: str) -> str:
    """``£1,356 more than before (£20,712)``."""
    if before == after:
        return "as before"
    was = pounds_range(before, currency)
    if before.least != before.most or after.least != after.most:
        return f"before: {was}"
    more = after.least - before.least
    words = "more" if more > 0 else "less"
    return f"{pounds_range(Pence(least=abs(more), most=abs(more)), currency)} {words} than before ({was})"


def _side(name: str, choice: Choice | None) -> str:
    """As it stands on one side: count, name, place, and whose it is where it is not ours."""
    if choice is None:
        return NOTHING
    counted = f"{choice.count} x {name}" if choice.count > 1 else name
    sided = f"{counted} ({place_name(choice.place)})" if choice.place is not None else counted
    return f"{sided}, yours" if choice.owner is Owner.CUSTOMER else sided


def _cells(out: str, in_: str, difference: Difference, currency: str) -> ChangeCells:
    cells = difference_cells(difference)
    pence = round(difference.gross_pence)
    exact = quantities.money_exact(pence, currency) if pence % 100 else quantities.money(pence, currency)
    price = exact if pence <= 0 else f"+{exact}"
    return ChangeCells(out=out, in_=in_, price=price, mass=cells.mass, hours=cells.hours, weeks=cells.weeks)


def undone_row(work: Undone, vat_percent: float, currency: str) -> tuple[str, str, str]:
    """``("Take out Gas kit, fitted at B7", "4", "£249.60")``."""
    gross = round(work.net_pence * (1 + vat_percent / _HUNDRED))
    return raised(one_line(work.words)), quantities.number_text(work.hours, "hours"), pounds(gross, currency)
