"""What is read and said all the same: a spec's file changed by hand, from elsewhere, or of another catalogue."""

from __future__ import annotations

from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.spec import Acceptance, Choice, Spec
from specbuilder.storage.spec_files import WarningKind, read_spec
from tests.storage.scene import CATALOGUE, written


def warnings(text: str) -> list[tuple[WarningKind, str]]:
    return [(w.kind, w.words) for w in read_spec(text, "0147-r1.toml", CATALOGUE).warnings]


def test_a_file_as_it_was_written_gives_no_warning_whatever_its_line_ends() -> None:
    text = written(Spec(number="0147"))
    assert warnings(text) == []
    assert warnings(text.replace("\n", "\r\n")) == []


def test_a_file_changed_by_hand_is_read_and_said() -> None:
    text = written(Spec(number="0147")).replace('number = "0147"', 'number = "0148"')
    read = read_spec(text, "0147-r1.toml", CATALOGUE)
    assert read.spec == Spec(number="0148")
    assert warnings(text) == [
        (
            WarningKind.EDITED_BY_HAND,
            "0147-r1.toml was changed by hand after it was written: what is computed in it may be out of date.",
        )
    ]


def test_a_file_from_elsewhere_is_said() -> None:
    assert warnings("format = 1") == [
        (WarningKind.NO_CHECKSUM, "0147-r1.toml has no checksum: it was not written by this program.")
    ]


def with_catalogue(version: str, digest: str) -> list[tuple[WarningKind, str]]:
    text = written(Spec()).replace('version = "2031-04"', f'version = "{version}"').replace('"d1"', f'"{digest}"')
    return [warning for warning in warnings(text) if warning[0] is WarningKind.OTHER_CATALOGUE]


def test_another_catalogue_is_said() -> None:
    kind = WarningKind.OTHER_CATALOGUE
    assert with_catalogue("2030-03", "d0") == [
        (kind, "0147-r1.toml was written with catalogue 2030-03 and is now held against catalogue 2031-04.")
    ]
    assert with_catalogue("2031-04", "d0") == [
        (
            kind,
            "0147-r1.toml was written with an earlier state of catalogue 2031-04 and is now held against catalogue "
            "2031-04.",
        )
    ]
    assert with_catalogue("2031-04", "d1") == []


def test_what_left_the_catalogue_is_kept_and_said() -> None:
    spec = Spec(
        choices=(Choice(option=OptionId("old-stove")), Choice(option=OptionId("old-stove"))),
        accepted=(Acceptance(rule=RuleId("old-rule"), words="", by="", at=""),),
    )
    read = read_spec(written(spec), "0147-r1.toml", CATALOGUE)
    assert read.spec == spec
    assert [warning.words for warning in read.warnings] == [
        '0147-r1.toml: the choice "old-stove" is not in this catalogue any more. It is kept: take another or leave it '
        "out.",
        '0147-r1.toml: the accepted caution "old-rule" is not in this catalogue any more. It is kept, and asks '
        "nothing.",
    ]
    assert [(warning.option, warning.rule) for warning in read.warnings] == [("old-stove", None), (None, "old-rule")]
