"""The price on a row is what Enter does to the price, with all that comes along."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.edits import Take
from specbuilder.model.kinds import OptionState
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from tests.journeys.bench import catalogue


def test_every_open_row_of_a_finished_build_tells_the_price_that_will_stand_there() -> None:
    spec = read_spec_file(Path(__file__).parents[2] / "examples" / "saturday-family.toml", catalogue()).spec
    report = evaluate(catalogue(), spec)
    asked = [o for o, status in report.options.items() if status.state is OptionState.OPEN]
    with_more = [o for o in asked if report.options[o].brings]
    assert with_more
    for option in (*with_more, *asked[::7]):
        after = evaluate(catalogue(), apply(catalogue(), spec, Take(option=option)).spec)
        told = report.taking(option).gross_pence
        assert after.price.gross.least - report.price.gross.least == told, option
