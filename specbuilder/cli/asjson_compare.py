"""A comparison as JSON for other programs; the help of the command says what stands where."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from specbuilder.model.circuits import CircuitLine
from specbuilder.model.comparison import AnswerChange, Change, Comparison, FigureChange, Piece, PieceChange
from specbuilder.model.findings import Finding
from specbuilder.model.holes import HoleLine
from specbuilder.model.kinds import Owner
from specbuilder.model.span import Span
from specbuilder.model.spec import Choice, OwnPart
from specbuilder.model.stand import Stand
from specbuilder.model.ways import Difference
from specbuilder.wording.compare import (
    answer_line,
    change_line,
    change_mark,
    comparison_lines,
    figure_line,
    piece_line,
    van_data_line,
)
from specbuilder.wording.side_by_side import SideRow, works_line

from .asjson import FORMAT, json_text, number, price_value


def comparison_json(before: Stand, after: Stand, comparison: Comparison, works: Sequence[SideRow]) -> str:
    """All of it, as ``compare --json`` prints it."""
    return json_text(
        {
            "format": FORMAT,
            "a": _stand(before),
            "b": _stand(after),
            "empty": comparison.empty,
            "same": comparison.same,
            "difference": _difference(comparison.difference),
            "rest": _difference(comparison.rest),
            "changes": [_change(after, change) for change in comparison.changes],
            "answers": [_answer(before, after, change) for change in comparison.answers],
            "van_data": [
                {"field": c.field, "before": c.before, "after": c.after, "words": van_data_line(c)}
                for c in comparison.van_data
            ],
            "figures": [_figure(before, after, change) for change in comparison.figures],
            "away_from_a_plug": [
                {"what": row.label, "before": row.a.text, "after": row.b.text, "words": works_line(row)}
                for row in works
            ],
            "pieces": [_piece_change(change) for change in comparison.pieces],
            "findings_came": [_finding(after, finding) for finding in comparison.came],
            "findings_went": [_finding(before, finding) for finding in comparison.went],
            "doubts_came": [_finding(after, finding) for finding in comparison.doubts_came],
            "doubts_went": [_finding(before, finding) for finding in comparison.doubts_went],
            "words": list(comparison_lines(before, after, comparison, list(map(works_line, works)))),
        }
    )


def _stand(stand: Stand) -> dict[str, Any]:
    spec = stand.spec
    return {
        "number": spec.number,
        "revision": spec.revision,
        "state": spec.state.value,
        "catalogue": stand.catalogue.firm.catalogue_version,
        "catalogue_digest": stand.catalogue.digest,
        "verdict": stand.report.verdict.value,
        "price": price_value(stand.report.price),
    }


def _difference(difference: Difference) -> dict[str, Any]:
    return {
        "price_gross_pence": difference.gross_pence,
        "mass_kg": number(difference.mass_kg),
        "hours": number(difference.hours),
        "weeks": number(difference.weeks),
    }


def _change(after: Stand, change: Change) -> dict[str, Any]:
    return {
        "kind": change.kind.value,
        "mark": change_mark(change),
        "group": change.group,
        "before": _choice(change.before, change.name_before),
        "after": _choice(change.after, change.name_after),
        **_difference(change.difference),
        "words": change_line(change, after.catalogue.firm.currency),
    }


def _choice(choice: Choice | None, name: str) -> dict[str, Any] | None:
    if choice is None:
        return None
    return {
        "option": choice.option,
        "name": name,
        "place": choice.place.value if choice.place else None,
        "count": choice.count,
        "whose": choice.owner.value,
        "own_part": _sheet(choice.own_part) if choice.owner is Owner.CUSTOMER or choice.own_part else None,
        "note": choice.note,
    }


def _sheet(sheet: OwnPart | None) -> dict[str, Any]:
    part = sheet or OwnPart()
    return {
        "mass_kg": part.mass_kg,
        "watts_w": part.watts_w,
        "cut_out_mm": part.cut_out_mm or None,
        "arrives": part.arrives or None,
        "door_mm": part.door_mm,
        "day_wh": part.day_wh,
        "continuous_a": part.continuous_a,
        "capacity_ah": part.capacity_ah,
        "chemistry": part.chemistry or None,
    }


def _answer(before: Stand, after: Stand, change: AnswerChange) -> dict[str, Any]:
    sides = {name: _said(value) for name, value in (("before", change.before), ("after", change.after))}
    return {"key": change.key, **sides, "words": answer_line(before, after, change)}


def _said(value: object) -> object:
    return list(value) if isinstance(value, tuple) else value


def _figure(before: Stand, after: Stand, change: FigureChange) -> dict[str, Any]:
    """``words`` is empty where both sides read the same."""
    known = after.catalogue.ledgers.get(change.ledger) or before.catalogue.ledgers.get(change.ledger)
    return {
        "id": change.ledger,
        "unit": known.unit if known else "",
        "before": _span(change.before),
        "after": _span(change.after),
        "bound_before": _span(change.bound_before),
        "bound_after": _span(change.bound_after),
        "words": figure_line(before, after, change),
    }


def _span(value: Span | None) -> dict[str, Any] | None:
    """``most`` null: without end."""
    return None if value is None else {"least": number(value.least), "most": number(value.most)}


def _piece_change(change: PieceChange) -> dict[str, Any]:
    return {
        "kind": change.kind.value,
        "change": change.change.value,
        "id": change.id,
        "before": _piece(change.before),
        "after": _piece(change.after),
        "words": piece_line(change),
    }


def _piece(piece: Piece | None) -> dict[str, Any] | None:
    match piece:
        case None:
            return None
        case HoleLine():
            return {
                "option": piece.option,
                "what": piece.what,
                "surface": piece.surface,
                "measured_on_the_van": piece.measured,
                **{key: _length(getattr(piece, key)) for key in _HOLE_MM},
                "cut_from": piece.cut_from,
                "count": piece.count,
            }
        case CircuitLine():
            return {
                "option": piece.option,
                "mark": piece.label,
                "circuit": piece.circuit,
                "from": piece.from_point,
                "to": piece.to_point,
                **{key: _length(getattr(piece, key)) for key in _CIRCUIT_FIGURES},
                "side_by_side": piece.side_by_side,
                "fuse_kind": piece.fuse_kind,
                "fuse_place": piece.fuse_place,
            }


_HOLE_MM = ("x_mm", "y_mm", "z_mm", "width_mm", "height_mm", "diameter_mm", "corner_radius_mm")
_CIRCUIT_FIGURES = ("load_a", "run_one_way_m", "area_mm2", "insulation_c", "fuse_a")


def _length(value: float | None) -> float | int | None:
    return None if value is None else number(value)


def _finding(stand: Stand, finding: Finding) -> dict[str, Any]:
    return {
        "id": finding.rule,
        "level": finding.level.value,
        "accepted": finding.accepted,
        "subjects": list(finding.subjects),
        "because": stand.catalogue.rules[finding.rule].because,
    }
