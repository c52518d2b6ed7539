"""The next step of the job: a quote goes out, or both sign; and what stands in the way of it."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import GiveReason, NameCustomer
from specbuilder.model.life import Hindrance, HindranceCode, LifeStep
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Spec
from specbuilder.office.steps import Signature
from specbuilder.session.life import PLACES
from specbuilder.storage.disk import DiskError
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.tui.items import Field, OnField, OnHindrance, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Line
from specbuilder.tui.sealing import seal
from specbuilder.wording import signing as words
from specbuilder.wording.hints import go_there
from specbuilder.wording.life import not_yet, quoted_short, signed_short

from .form import TAKE, FormField, FormPage
from .hindered import hindrance_rows, in_order, settle
from .open_things import open_points
from .page import Host


class _StepPage(FormPage):
    """A step of the job. The cursor begins on what is in the way, or on what is not known, or on the step itself."""

    where: ClassVar[Where] = Where.SIGN
    step: ClassVar[LifeStep]

    def __init__(self, host: Host, fields: Sequence[FormField]) -> None:
        super().__init__(host, fields)
        self._found: tuple[tuple[Spec, str], tuple[Hindrance, ...]] | None = None
        if found := self.hindrances():
            self.at = OnHindrance(found[0])

    def hindrances(self) -> tuple[Hindrance, ...]:
        """What is in the way now; looked for once for every spec and place."""
        asked = self.host.report.spec, self.value(Field.SIGN_PLACE)
        if self._found is None or self._found[0] != asked:
            place = asked[1] or PLACES[0]  # where nothing is said yet the form asks for it, not the list
            signature = Signature(customer="", firm="", place=place)
            found = in_order(self.host.deeds.in_the_way(self.step, signature=signature))
            named = any(one.field is Field.NAME for one in self.fields)  # the form asks for it, not the list
            self._found = asked, tuple(one for one in found if not (named and one.code is HindranceCode.NAMELESS))
        return self._found[1]

    def below(self, cells: int) -> Sequence[Line]:
        """What is in the way."""
        return hindrance_rows(self.host, self.step, self.hindrances(), cells)

    def enter(self) -> None:
        """Go to what is in the way, or do it."""
        found = self.hindrances()
        if isinstance(self.at, OnHindrance):
            settle(self.host, self.at.hindrance)
        elif self.at == TAKE and found:
            self.at = OnHindrance(found[0])
            self.host.say(not_yet(self.step, len(found)))
        else:
            super().enter()

    def hint_of(self, act: Act) -> str | None:
        """Enter leads to what is in the way."""
        if act is Act.ENTER and isinstance(self.at, OnHindrance):
            return go_there()
        return words.step_word(self.step) if act is Act.ENTER and isinstance(self.at, OnWord) else super().hint_of(act)

    def put(self) -> None:
        """Write it down; trouble with the disk is said, and what was done holds all the same."""
        self.host.close()
        try:
            told = self.write()
        except (DiskError, RulesFaults) as error:
            told = str(error)
        self.host.say(told)
        seal(self.host)

    @abstractmethod
    def write(self) -> str:
        """Do it and say what was done.

        Raises:
            DiskError: it could not be written to the file yet.
            RulesFaults: it was not done, for the rules it rests on are no longer at hand.
        """


class QuotePage(_StepPage):
    """A quote goes out."""

    step: ClassVar[LifeStep] = LifeStep.QUOTE

    def __init__(self, host: Host) -> None:
        by = last_by(host, RecordKind.QUOTED) or host.catalogue.firm.ask_for or words.COUNTER
        asks = not host.report.spec.customer.name
        name = (FormField(field=Field.NAME),) if asks else ()
        super().__init__(host, (*name, FormField(field=Field.QUOTES, value=by)))

    def title(self) -> str:
        """Which revision is quoted."""
        return words.quote_title(self.host.report.spec)

    def sentences(self) -> Sequence[str]:
        """The price, until when it will hold, and what is open in it."""
        return words.quote_words(self.host.catalogue, self.host.report, self.host.now(), open_points(self.host))

    def take_line(self) -> str:
        """What Enter does."""
        return words.quote_take()

    def take_text(self, text: str) -> bool:
        """The customer's name belongs to the job, quoted or not: it is kept at once."""
        about, customer = self.at, self.host.report.spec.customer
        taken = super().take_text(text)
        if taken and about == OnField(Field.NAME):
            self.host.edit(NameCustomer(name=text, contact=customer.contact))
        return taken

    def write(self) -> str:
        """The quote goes out."""
        self.host.deeds.quote(self.value(Field.QUOTES))
        return quoted_short(self.host.report.spec, self.host.catalogue.firm.currency)


class OrderPage(_StepPage):
    """Both sign the order, or the change order."""

    step: ClassVar[LifeStep] = LifeStep.ORDER

    def __init__(self, host: Host) -> None:
        spec = host.report.spec
        firm = next((r.words for r in reversed(spec.recorded(RecordKind.SIGNED)) if r.words), words.COUNTER)
        customer = last_by(host, RecordKind.SIGNED) or spec.customer.name
        change = host.deeds.desk.session.base is not None
        reason = (FormField(field=Field.REASON, value=spec.reason, needed=False),) if change else ()
        super().__init__(
            host,
            (
                *reason,
                FormField(field=Field.CUSTOMER_SIGNS, value=customer),
                FormField(field=Field.FIRM_SIGNS, value=firm),
                FormField(field=Field.SIGN_PLACE, value=host.deeds.place, numbered=PLACES),
            ),
        )

    def title(self) -> str:
        """What is signed."""
        return words.order_title(self.host.report.spec, self.host.deeds.change_number)

    def sentences(self) -> Sequence[str]:
        """The price, and of a change what it was and what is built until it is signed."""
        base, currency = self.host.deeds.desk.session.base, self.host.catalogue.firm.currency
        if base is None:
            return words.order_words(self.host.report, currency)
        return words.change_words(base, self.host.report, self.host.deeds.change_number, currency)

    def take_text(self, text: str) -> bool:
        """A reason belongs to the change, signed or not: it is kept at once."""
        about = self.at
        taken = super().take_text(text)
        if taken and about == OnField(Field.REASON) and text != self.host.report.spec.reason:
            self.host.edit(GiveReason(reason=text))
        return taken

    def take_line(self) -> str:
        """What Enter does."""
        return words.order_take()

    def write(self) -> str:
        """Both have signed."""
        signature = Signature(
            customer=self.value(Field.CUSTOMER_SIGNS),
            firm=self.value(Field.FIRM_SIGNS),
            place=self.value(Field.SIGN_PLACE),
        )
        self.host.deeds.sign(signature)
        return signed_short(self.host.report.spec)


def last_by(host: Host, kind: RecordKind) -> str:
    """Who did this the last time; empty when nobody did."""
    found = host.report.spec.recorded(kind)
    return found[-1].by if found else ""
