"""What the commands that read, list and propose say, as JSON for other programs."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.ledger import Reading
from specbuilder.model.report import Report
from specbuilder.model.spec import Choice, OpenQuestion
from specbuilder.model.stand import Stand
from specbuilder.model.standing import Standing
from specbuilder.wording.customer_view import without_page
from specbuilder.wording.names import choice_name, group_name, option_name
from specbuilder.wording.spoken import option_words
from specbuilder.wording.standing import point_words, standing_lines

from .asjson import FORMAT, json_text, price_value, reading_value

if TYPE_CHECKING:  # the sheets are loaded by the command that shows them
    from specbuilder.documents.sheets.customer.shown import Shown


def show_json(catalogue: Catalogue, report: Report) -> str:
    """What was said in a spec, as ``show --json`` prints it."""
    spec = report.spec
    return json_text(
        {
            **_head(catalogue, report),
            "replaces": spec.replaces,
            "customer": {"name": spec.customer.name, "contact": spec.customer.contact},
            "note": spec.note,
            "van": report.van,
            "van_data": asdict(spec.van_data),
            "price": price_value(report.price),
            "verdict": report.verdict.value,
            "answers": dict(spec.answers.given),
            "choices": [_choice(catalogue, choice) for choice in spec.choices],
            "undecided": list(report.undecided),
            "unknown": list(report.unknown),
            "accepted": [asdict(accepted) for accepted in spec.accepted],
            "questions": [_question(question) for question in spec.questions],
        }
    )


def groups_json(catalogue: Catalogue, report: Report, groups: Iterable[GroupId]) -> str:
    """Groups with every option, as ``show FILE STEP --json`` prints them."""
    return json_text(
        {
            **_head(catalogue, report),
            "groups": [
                {
                    "id": group,
                    "name": group_name(catalogue, group),
                    "step": catalogue.groups[group].step.value,
                    "pick": catalogue.groups[group].pick.value,
                    "decided": report.groups[group].decided,
                    "clashes": list(report.groups[group].clashes),
                    "options": [_option(catalogue, report, option.id) for option in catalogue.options_of(group)],
                }
                for group in groups
            ],
        }
    )


def details_json(catalogue: Catalogue, report: Report, option: OptionId, words: Iterable[str]) -> str:
    """One option with all that is known of it, as ``details --json`` prints it."""
    known, chosen = catalogue.options[option], report.spec.chosen(option)
    return json_text(
        {
            **_head(catalogue, report),
            "option": _option(catalogue, report, option),
            "places": [
                {"place": place.value, "taken": any(choice.place is place for choice in chosen)}
                for place in known.places
            ],
            "choices": [_choice(catalogue, choice) for choice in chosen],
            "circuits": [line.id for line in report.circuits if line.option == option],
            "words": list(words),
        }
    )


def customer_json(stand: Stand, state: JobState, content: Shown, words: Iterable[str]) -> str:
    """What the customer reads, as ``customer --json`` prints it."""
    report = stand.report
    return json_text(
        {
            **_head(stand.catalogue, report),
            "state": state.value,
            "price": price_value(report.price),
            "counts": list(content.counts),
            "facts": [{"name": name, "words": text} for name, text in content.facts],
            "away_from_a_plug": [{"answer": answer, "names": list(names)} for answer, names in content.away],
            "told": without_page(content.told),
            "warns": content.warns,
            "open": without_page(content.open),
            "open_points": content.open_points,
            "words": list(words),
        }
    )


def ledgers_json(catalogue: Catalogue, report: Report, readings: Iterable[Reading]) -> str:
    """Every sum, worst first, as ``ledgers --json`` prints them."""
    return json_text(
        {**_head(catalogue, report), "ledgers": [reading_value(catalogue, reading) for reading in readings]}
    )


def listed_json(catalogue: Catalogue, report: Report, name: str, rows: list[dict[str, Any]]) -> str:
    """A list of things about a spec under its name."""
    return json_text({**_head(catalogue, report), name: rows})


def usual_json(catalogue: Catalogue, report: Report, step: str, options: tuple[OptionId, ...]) -> str:
    """What the house would take, as ``usual --json`` prints it."""
    effects = [report.options[option].effect for option in options]
    return json_text(
        {
            **_head(catalogue, report),
            "step": step,
            "takes": [_option(catalogue, report, option) for option in options],
            "price_gross_pence": sum(effect.gross_pence for effect in effects),
            "mass_kg": round(sum(effect.mass_kg for effect in effects), 3),
        }
    )


def standing_json(standing: Standing) -> str:
    """Whether a spec is whole, current and unaltered, as ``verify --json`` prints it."""
    return json_text(
        {
            "format": FORMAT,
            "number": standing.number,
            "revision": standing.revision,
            "state": standing.state,
            "good": standing.good,
            "points": [
                {"code": point.code.value, "fault": point.fault, "words": point_words(point)}
                for point in standing.points
            ],
            "words": standing_lines(standing)[0],
        }
    )


def question_value(question: OpenQuestion | None) -> dict[str, Any]:
    """Who finds it out, by when, and what it stops; null where nobody said."""
    if question is None:
        return {"who": None, "due": None, "stops": None}
    return {"who": question.owner or None, "due": question.due or None, "stops": question.stops or None}


def _question(question: OpenQuestion) -> dict[str, Any]:
    return {"words": question.text, **question_value(question), "part": question.part or None}


def _head(catalogue: Catalogue, report: Report) -> dict[str, Any]:
    spec = report.spec
    return {
        "format": FORMAT,
        "number": spec.number,
        "revision": spec.revision,
        "state": spec.state.value,
        "catalogue": catalogue.firm.catalogue_version,
    }


def _option(catalogue: Catalogue, report: Report, option: OptionId) -> dict[str, Any]:
    status = report.options[option]
    return {
        "id": option,
        "name": option_name(catalogue, option),
        "group": catalogue.options[option].group,
        "state": status.state.value,
        "place": status.place.value if status.place else None,
        "count": sum(choice.count for choice in report.spec.chosen(option)),
        "price_gross_pence": status.effect.gross_pence,
        "mass_kg": round(status.effect.mass_kg, 3),
        "usual": status.usual,
        "brings": list(status.brings),
        "clashes": list(status.clashes),
        "words": option_words(catalogue, report, option),
    }


def _choice(catalogue: Catalogue, choice: Choice) -> dict[str, Any]:
    known = catalogue.options.get(choice.option)
    return {
        "option": choice.option,
        "name": choice_name(catalogue, choice),
        "group": known.group if known else None,
        "count": choice.count,
        "place": choice.place.value if choice.place else None,
        "whose": choice.owner.value,
        "own_part": asdict(choice.own_part) if choice.own_part else None,
        "note": choice.note,
        "came_with": list(choice.came_with),
        "at": choice.at,
    }
