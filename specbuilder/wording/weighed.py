"""The base van on the scales: what is still needed, and what the weighing changed."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.spec import VanData

from .forms import field_value
from .glance import weight_words
from .names import listed
from .plain import raised
from .typed import plain


def other_axle(data: VanData, name: str) -> str:
    """``not counted without the rear axle`` beside the only axle that was weighed; empty beside any other field."""
    lacks = _lacking(data)
    if not lacks or name not in _AXLES or name == lacks:
        return ""
    return f"not counted without the {_AXLES[lacks]} axle"


def weighed_words(catalogue: Catalogue, before: Report, after: Report) -> str:
    """``Now about 198 kg left, was about 223 kg left: front axle 1,420 kg``; empty for other van data."""
    was, now = before.spec.van_data, after.spec.van_data
    told = listed(
        f"{axle} axle {field_value(name, _text(_value(now, name)))}"
        for name, axle in _AXLES.items()
        if _value(was, name) != _value(now, name)
    )
    if not told:
        return ""
    if lacks := _lacking(now):
        return f"{raised(told)}; the {_AXLES[lacks]} axle is needed, too, or the catalogue's figures count"
    return f"Now {_left(catalogue, after)}, was {_left(catalogue, before)}: {told}"


_AXLES = {"weighed-front": "front", "weighed-rear": "rear"}


def _lacking(data: VanData) -> str:
    """The axle that is not weighed where the other one is."""
    missing = [name for name in _AXLES if _value(data, name) is None]
    return missing[0] if len(missing) == 1 else ""


def _value(data: VanData, name: str) -> float | None:
    return data.weighed_front_kg if name == "weighed-front" else data.weighed_rear_kg


def _text(value: float | None) -> str:
    return "" if value is None else plain(value)


def _left(catalogue: Catalogue, report: Report) -> str:
    return weight_words(catalogue, report, tight=True).removeprefix("weight: ")
