"""Whatever stands in a rule file: it is read, or refused with faults and nothing else."""

from __future__ import annotations

from pathlib import Path

import tomli_w
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from specbuilder.storage.rules_files import RulesFaults, read_rules
from specbuilder.storage.rules_tables import SECTIONS
from tests.storage.rules_scene import GOOD

FEW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@FEW
@given(content=st.binary(max_size=300))
@example(content=b"[option.a]\nx = [[[[1]]]]\n")
@example(content=b'"\\u0000" = 1\n')
def test_any_bytes_are_refused_with_faults_and_nothing_else(content: bytes, folder: Path) -> None:
    (folder / "more.toml").write_bytes(content)
    _reads_or_refuses(folder)


@FEW
@given(
    start=st.integers(0, 3200),
    length=st.integers(0, 60),
    put=st.text("[]{}=.,\"'#\n\\ab1-_@|+!<>\x00\u202e", max_size=5),
)
def test_a_catalogue_with_a_piece_torn_out(start: int, length: int, put: str, folder: Path) -> None:
    text = (GOOD / "catalogue.toml").read_text()
    (folder / "catalogue.toml").write_text(text[:start] + put + text[start + length :], "utf-8")
    _reads_or_refuses(folder)


_SCALARS = st.one_of(
    st.text(max_size=12),
    st.integers(),
    st.floats(),
    st.booleans(),
    st.dates(),
    st.sampled_from(["#awning@same", "brief.adults>2 | larchlid", "total-mass <= bound", "a | b", "one of", "list"]),
)
_FIRST_KEYS = ["group", "name", "when", "then", "kind", "type", "values", "assumed", "asked_when", "gives", "needs"]
_OTHER_KEYS = ["zones", "places", "columns", "rows", "circuit", "hole", "space", "settings", "question", "predecessors"]
_KEYS = st.text(max_size=5) | st.sampled_from([*_FIRST_KEYS, *_OTHER_KEYS])
_VALUES = st.recursive(
    _SCALARS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_KEYS, inner, max_size=3),
    max_leaves=8,
)


@FEW
@given(
    document=st.dictionaries(
        st.sampled_from([*SECTIONS, "firm"]),
        st.dictionaries(st.text("abc-_1", max_size=4), st.dictionaries(_KEYS, _VALUES, max_size=6), max_size=3),
        max_size=4,
    )
)
def test_any_toml_is_refused_with_faults_and_nothing_else(document: dict[str, object], folder: Path) -> None:
    (folder / "more.toml").write_bytes(tomli_w.dumps(document).encode("utf-8", "ignore"))
    _reads_or_refuses(folder)


def _reads_or_refuses(folder: Path) -> None:
    refused: RulesFaults | None = None
    try:
        read_rules(folder)
    except RulesFaults as faults:
        refused = faults
    if refused is not None:
        assert refused.faults
        assert str(refused).replace("\n", "").isprintable()
