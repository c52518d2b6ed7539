"""Where a path stands in a TOML file."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path as FilePath
from typing import cast

import pytest
import tomli_w
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.storage.rules_files import rules_folder
from specbuilder.storage.toml_lines import Path, TomlLines

SHIPPED = sorted(FilePath(str(rules_folder())).rglob("*.toml"))

TRICKY = r"""# a remark with '''
top = 1
a.b = [ [1, 2], # ]
  ["]", 'y'] ]
"q\u0041" = { x = 1.5, y = { z = "}" } }
long = '''
[no.head]
k = 1
''' # [neither]
after = [
  { k = "one" },

  { k = "two", m = 3 },
]

[[shelf.box]]
x = 1
[shelf.box.lid]
y = 2
[[shelf.box]]
x = 2

[ wide . "w v" ]
k = true
empty = []
"""


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("top",), 2),
        (("a",), 3),
        (("a", "b", 0, 1), 3),
        (("a", "b", 1, 0), 4),
        (("qA", "x"), 5),
        (("qA", "y", "z"), 5),
        (("long",), 6),
        (("after", 0, "k"), 11),
        (("after", 1), 13),
        (("after", 1, "m"), 13),
        (("shelf", "box", 0), 16),
        (("shelf", "box", 0, "lid", "y"), 19),
        (("shelf", "box", 1, "x"), 21),
        (("wide", "w v"), 23),
        (("wide", "w v", "k"), 24),
        (("wide", "w v", "missing"), 23),
        (("nowhere", "at", "all"), 1),
    ],
)
def test_tricky_places(path: Path, line: int) -> None:
    assert TomlLines(TRICKY).line(path) == line


def test_a_head_inside_a_long_text_is_none() -> None:
    assert TomlLines(TRICKY).head_line(("no", "head")) == 1
    assert TomlLines(TRICKY).head_line(("shelf", "box", 1)) == 20


def test_heads_without_long_texts_are_found_the_quick_way_and_the_slow_way_alike() -> None:
    text = "[a.b]\nx = [\n  [1.5],\n]\n  [[a.c]]\n[[a.c]]\n[a.c.d]\n[ e . f ]\n"
    lines = TomlLines(text)
    for path in (("a", "b"), ("a", "c", 0), ("a", "c", 1), ("a", "c", 1, "d"), ("e", "f")):
        assert lines.head_line(path) == lines.line(path) > 0


@pytest.mark.parametrize("file", SHIPPED, ids=lambda file: file.name)
def test_every_leaf_of_every_shipped_file_is_found(file: FilePath) -> None:
    text = file.read_text("utf-8")
    lines = TomlLines(text)
    written = text.split("\n")
    for path in leaves(tomllib.loads(text)):
        assert lines.knows(path)
        last_key = next(key for key in reversed(path) if isinstance(key, str))
        if isinstance(path[-1], str):
            assert last_key in written[lines.line(path) - 1]


_VALUES = st.recursive(
    st.text(max_size=8) | st.integers() | st.booleans() | st.dates(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=12,
)


@settings(max_examples=150, deadline=None)
@given(document=st.dictionaries(st.text(max_size=4), _VALUES, max_size=4), multiline=st.booleans())
def test_every_leaf_of_any_document_is_found(document: dict[str, object], multiline: bool) -> None:
    text = tomli_w.dumps(document, multiline_strings=multiline).replace("\r\n", "\n")
    lines = TomlLines(text)
    order = [lines.line(path) for path in leaves(tomllib.loads(text))]
    assert all(lines.knows(path) for path in leaves(tomllib.loads(text)))
    assert all(1 <= line <= text.count("\n") + 1 for line in order)


def leaves(value: object, path: Path = ()) -> Iterator[Path]:
    """Paths of everything that is neither a table nor a list with something in it."""
    inside: list[tuple[str | int, object]] = []
    if isinstance(value, dict):
        inside = list(cast("Mapping[str, object]", value).items())
    elif isinstance(value, list):
        inside = list(enumerate(cast("list[object]", value)))
    if not inside and path:
        yield path
    for key, item in inside:
        yield from leaves(item, (*path, key))
