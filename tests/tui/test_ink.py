from __future__ import annotations

import pytest
from rich.color import Color, ColorSystem

from specbuilder.tui.ink import COLOURLESS, DARK, LIGHT, SIXTEEN, Ink, Look, look_for, turned


def _light(channel: int) -> float:
    share = channel / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def _luminance(colour: Color | None) -> float:
    assert colour is not None
    red, green, blue = colour.get_truecolor()
    return 0.2126 * _light(red) + 0.7152 * _light(green) + 0.0722 * _light(blue)


def _contrast(one: Color | None, other: Color | None) -> float:
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("look", [DARK, LIGHT], ids=lambda look: look.name)
@pytest.mark.parametrize("ink", Ink)
def test_every_ink_stands_out_seven_to_one(look: Look, ink: Ink) -> None:
    style = look.styles[ink]
    assert _contrast(style.color, style.bgcolor) >= 7


@pytest.mark.parametrize("look", [DARK, LIGHT], ids=lambda look: look.name)
@pytest.mark.parametrize("ink", Ink)
def test_every_ink_stands_out_seven_to_one_among_256_colours(look: Look, ink: Ink) -> None:
    style = look.styles[ink]
    assert style.color is not None
    assert style.bgcolor is not None
    found = (colour.downgrade(ColorSystem.EIGHT_BIT) for colour in (style.color, style.bgcolor))
    assert _contrast(*found) >= 7


def test_among_sixteen_colours_an_ink_has_both_colours_or_is_painted_on_the_ground_of_the_terminal() -> None:
    for ink, style in SIXTEEN.styles.items():
        assert style.bgcolor is None or style.color is not None, ink
        assert style.color is None or style.color != style.bgcolor, ink


@pytest.mark.parametrize("look", [DARK, LIGHT, SIXTEEN, COLOURLESS], ids=lambda look: look.name)
def test_no_ink_is_dim_or_blinks(look: Look) -> None:
    assert not [ink for ink, style in look.styles.items() if style.dim or style.blink or style.conceal]


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
