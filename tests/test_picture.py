"""The pictures of README are those of the program, stand alone and are linked."""

from __future__ import annotations

import re

import pytest

from tests.picture import GALLERY, PICTURES, README, SHOWN, WALK, Picture, drawn, gallery

ALL = (WALK, *SHOWN)
_REFERENCE = re.compile(r"""(?:href|src)\s*=|url\((?!#)|@import|https?://(?!www\.w3\.org/)""")
"""What would have a reader's browser ask somebody else."""


def test_the_gallery_of_readme_is_that_of_the_pictures() -> None:
    text = README.read_text("utf-8")
    assert GALLERY.findall(text) == [gallery()]
    assert f"(examples/pictures/{WALK.name}.svg)" in text
    assert {path.stem for path in PICTURES.iterdir()} == {picture.name for picture in ALL}


@pytest.mark.parametrize("picture", ALL, ids=lambda picture: picture.name)
def test_a_picture_refers_to_nothing_outside_itself(picture: Picture) -> None:
    assert _REFERENCE.findall((PICTURES / f"{picture.name}.svg").read_text("utf-8")) == []


@pytest.mark.parametrize(
    "picture",
    [
        pytest.param(picture, id=picture.name, marks=() if picture.name == "brief" else pytest.mark.long)
        for picture in ALL
    ],
)
async def test_the_program_makes_the_same_picture_again(picture: Picture) -> None:
    kept = (PICTURES / f"{picture.name}.svg").read_text("utf-8")
    assert kept == await drawn(picture), "python -m tests.picture makes the pictures anew"
