"""Two stands made by hand, and what differs between them."""

from __future__ import annotations

from specbuilder.model.comparison import AnswerChange, Change, ChangeKind, Comparison, FigureChange, VanDataChange
from specbuilder.model.ids import BriefKey, GroupId, LedgerId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.report import Pence, Report
from specbuilder.model.span import Span, point
from specbuilder.model.spec import Choice
from specbuilder.model.stand import Stand
from specbuilder.model.ways import Difference
from tests.wording.scene import CATALOGUE, choice, finding, reading, report, spec

GALLEY, POD = choice("side-galley", place=Place.RIGHT), choice("pod-galley")
USB = choice("usb-pair", count=2)


def difference(pence: int = 0, kg: float = 0, hours: float = 0, weeks: float = 0) -> Difference:
    return Difference(gross_pence=pence, mass_kg=kg, hours=hours, weeks=weeks)


NOTHING = difference()


def change(
    kind: ChangeKind,
    before: Choice | None,
    after: Choice | None,
    does: Difference = NOTHING,
    *,
    group: str | None = "galley",
    names: tuple[str, str] | None = None,
) -> Change:
    was, now = names or (CATALOGUE.options[c.option].name if c else "" for c in (before, after))
    return Change(
        kind=kind,
        group=GroupId(group) if group else None,
        before=before,
        after=after,
        name_before=was,
        name_after=now,
        difference=does,
    )


REPLACED = change(ChangeKind.REPLACED, GALLEY, POD, difference(-139_200, -51, -14, -1))


def stand(of: Report) -> Stand:
    return Stand(catalogue=CATALOGUE, spec=of.spec, report=of)


WANTED = stand(
    report(
        spec(GALLEY, USB, parking_limit_mm=2100),
        readings=(
            reading("total-mass", point(2752), point(3000), Verdict.HOLDS),
            reading("belts", point(4), point(4), Verdict.HOLDS),
            reading("price-gross", point(2_071_200), point(1_800_000), Verdict.BROKEN),
            reading("nights", point(1.7), point(2), Verdict.BROKEN),
        ),
        findings=(finding("nights-short", Verdict.BROKEN),),
        gross=Pence(least=2_071_200, most=2_071_200),
    )
)
CHEAP = stand(
    report(
        spec(POD, USB),
        readings=(
            reading("total-mass", point(2659), point(3000), Verdict.HOLDS),
            reading("belts", point(4), point(4), Verdict.HOLDS),
            reading("price-gross", point(1_752_000), point(1_800_000), Verdict.HOLDS),
            reading("nights", Span(2, 2.5), point(2), Verdict.HOLDS),
        ),
        gross=Pence(least=1_752_000, most=1_752_000),
    )
)
FOUND = Comparison(
    changes=(REPLACED,),
    answers=(AnswerChange(key=BriefKey("parking_limit_mm"), before=2100, after=None),),
    figures=(
        FigureChange(ledger=LedgerId("total-mass"), before=point(2752), after=point(2659)),
        FigureChange(ledger=LedgerId("energy"), before=None, after=None),
    ),
    pieces=(),
    came=(),
    went=WANTED.report.findings,
    gross_before=WANTED.report.price.gross,
    gross_after=CHEAP.report.price.gross,
    difference=difference(-319_200, -93, -20),
    same=1,
    van_data=(VanDataChange(field="year", before=None, after=2029),),
)
