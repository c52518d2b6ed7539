from __future__ import annotations

import pytest

from specbuilder.tui.ink import COLOURLESS, DARK, LIGHT, SIXTEEN, Ink, Look, look_for, turned


def _light(channel: int) -> float:
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def _luminance(look: Look, ink: Ink, behind: bool) -> float:
    style = look.styles[ink]
    colour = style.bgcolor if behind else style.color
    assert colour is not None
    assert colour.triplet is not None
    red, green, blue = colour.triplet
    return 0.2126 * _light(red) + 0.7152 * _light(green) + 0.0722 * _light(blue)


@pytest.mark.parametrize("look", [DARK, LIGHT], ids=lambda look: look.name)
@pytest.mark.parametrize("ink", Ink)
def test_every_ink_stands_out_seven_to_one(look: Look, ink: Ink) -> None:
    light, dark = sorted((_luminance(look, ink, False), _luminance(look, ink, True)), reverse=True)
    assert (light + 0.05) / (dark + 0.05) >= 7


@pytest.mark.parametrize("ink", [Ink.DOUBT, Ink.HERE, Ink.MINE, Ink.CARE, Ink.CARET])
def test_without_colour_every_ink_still_differs_from_plain(ink: Ink) -> None:
    assert COLOURLESS.styles[ink] != COLOURLESS.styles[Ink.PLAIN]
    assert COLOURLESS.styles[ink].color is None


@pytest.mark.parametrize(
    ("environment", "light", "look"),
    [
        ({"TERM": "xterm-256color"}, False, DARK),
        ({"TERM": "xterm-256color"}, True, LIGHT),
        ({"TERM": "xterm-256color", "NO_COLOR": "1"}, False, COLOURLESS),
        ({"TERM": "xterm-256color", "NO_COLOR": ""}, False, DARK),
        ({"TERM": "linux"}, False, SIXTEEN),
        ({"TERM": "screen"}, True, SIXTEEN),
        ({"TERM": "xterm", "COLORTERM": "truecolor"}, False, DARK),
        ({"TERM": "dumb"}, False, COLOURLESS),
    ],
)
def test_the_look_is_what_the_terminal_can_paint(environment: dict[str, str], light: bool, look: Look) -> None:
    assert look_for(environment, light) is look


def test_the_ground_turns_only_where_it_is_ours() -> None:
    assert turned(DARK) is LIGHT
    assert turned(LIGHT) is DARK
    assert turned(SIXTEEN) is SIXTEEN
