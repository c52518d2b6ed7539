"""The text of a spec's file to the spec: only what was said is taken, and all faults are told at once."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import JobState, Owner, Place
from specbuilder.model.plain_text import hidden_character
from specbuilder.model.spec import Acceptance, Choice, Customer, OpenQuestion, OwnPart, Spec, VanData

from .faults import Fault, FaultList, Source, quotable
from .fields import Fields
from .spec_answers import answers
from .spec_counts import PlacedChoice, note_counts
from .spec_format import CHECKSUM, COMPUTED_KEYS, COMPUTED_TABLES, FORMAT, checksum_of
from .spec_log import read_records, read_undone
from .text_limits import CONTACT_LONGEST, NAME_LONGEST, NOTE_LONGEST, VAN_TEXT_LONGEST, VIN_TAIL_LONGEST
from .toml_lines import TomlLines
from .toml_text import toml_table


class WarningKind(StrEnum):
    """What should be known of a spec that was read without faults."""

    EDITED_BY_HAND = "edited by hand"
    NO_CHECKSUM = "no checksum"
    OTHER_CATALOGUE = "other catalogue"
    LEFT_CATALOGUE = "left the catalogue"


@dataclass(frozen=True, slots=True, kw_only=True)
class SpecWarning:
    """One of these things, as a sentence with its cure where one is needed."""

    kind: WarningKind
    words: str
    option: OptionId | None = None
    """The choice that has left the catalogue; it is kept."""
    rule: RuleId | None = None
    """The accepted rule that has left the catalogue; it is kept."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadSpec:
    """A spec as it was read."""

    spec: Spec
    warnings: tuple[SpecWarning, ...]
    catalogue_version: str
    """What it was written with; empty when the file does not say."""
    catalogue_digest: str


class SpecFaultsError(Exception):
    """A spec's file cannot be used. ``str()`` has one line for each fault."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        self.faults = faults
        super().__init__("\n".join(str(fault) for fault in faults))


def read_spec(text: str, name: str, catalogue: Catalogue | None) -> ReadSpec:
    """The spec in this text. ``name`` is that of the file, for the faults.

    With a catalogue the brief is held against it; choices it does not know are kept, and warned of.

    Raises:
        SpecFaultsError: with every fault that was found.
    """
    text = text.replace("\r\n", "\n")
    faults = FaultList()
    source = Source(name, TomlLines(text), faults)
    table = toml_table(text, source)
    _refuse(faults)
    top = Fields(table or {}, source.top)
    _format(top)
    _refuse(faults)
    spec = _spec(top, catalogue)
    for computed in COMPUTED_TABLES:
        top.has(computed)
    top.close()
    _refuse(faults)
    job = top.table("job", optional=True)
    version, digest = _told(job, "catalogue_version"), _told(job, "catalogue_digest")
    warnings = [*_checksum_warnings(text, name, _told(job, CHECKSUM))]
    if catalogue is not None:
        warnings += _catalogue_warnings(name, version, digest, catalogue)
        warnings += _stranger_warnings(name, spec, catalogue)
    return ReadSpec(spec=spec, warnings=tuple(warnings), catalogue_version=version, catalogue_digest=digest)


def _refuse(faults: FaultList) -> None:
    if len(faults):
        raise SpecFaultsError(faults.in_order())


def _format(top: Fields) -> None:
    """Notes a fault when this is no spec, or one of a later program."""
    number = top.whole("format")
    if number > FORMAT:
        words = f"this is format {number} and this program reads format {FORMAT}: open it with a newer program."
        top.spot.at("format").fault(words)
    elif top.has("format") and number != FORMAT:
        top.spot.at("format").fault(f"needs the number {FORMAT}: no spec was ever written with another.")


def _spec(top: Fields, catalogue: Catalogue | None) -> Spec:
    job = _table(top, "job")
    number, revision = job.text("number", ""), _counted(job, "revision")
    replaces = job.whole("replaces") if job.has("replaces") else None
    reason = job.text("reason", "", longest=NOTE_LONGEST)
    state, note = job.word("state", JobState, JobState.DRAFT), job.text("note", "", lines=True, longest=NOTE_LONGEST)
    job.close()
    customer = top.table("customer", optional=True)
    said = Customer(
        name=customer.text("name", "", longest=NAME_LONGEST),
        contact=customer.text("contact", "", lines=True, longest=CONTACT_LONGEST),
    )
    customer.close()
    return Spec(
        number=number,
        revision=revision,
        replaces=replaces,
        state=state,
        customer=said,
        answers=answers(top, catalogue),
        van_data=_van_data(_table(top, "vehicle")),
        choices=_choices(top, catalogue),
        accepted=tuple(_acceptance(_mixed(fields, "accepted")) for fields in top.tables("accepted")),
        questions=tuple(_question(fields) for fields in top.tables("open")),
        note=note,
        reason=reason,
        records=read_records(top),
        undone=read_undone(top),
    )


def _table(top: Fields, head: str) -> Fields:
    return _mixed(top.table(head, optional=True), head)


def _mixed(fields: Fields, head: str) -> Fields:
    """The table, with its computed keys passed over."""
    for key in COMPUTED_KEYS[head]:
        fields.has(key)
    return fields


def _counted(fields: Fields, key: str) -> int:
    """A number counted from 1; 1 when it is missing."""
    number = fields.whole(key, 1)
    if number < 1 and fields.has(key):
        fields.spot.at(key).fault("needs 1 or more: correct the number.")
    return number


def _van_data(fields: Fields) -> VanData:
    data = VanData(
        registration=fields.text("registration", "", longest=VAN_TEXT_LONGEST),
        vin_tail=fields.text("vin_tail", "", longest=VIN_TAIL_LONGEST),
        year=_whole(fields, "year"),
        paint_code=fields.text("paint_code", "", longest=VAN_TEXT_LONGEST),
        mileage_km=_whole(fields, "mileage_km"),
        damage=fields.text("damage", "", lines=True, longest=VAN_TEXT_LONGEST),
        weighed_front_kg=_number(fields, "front_as_received_kg"),
        weighed_rear_kg=_number(fields, "rear_as_received_kg"),
    )
    fields.close()
    return data


def _choices(top: Fields, catalogue: Catalogue | None) -> tuple[Choice, ...]:
    """In the order they were taken; those that do not say come last, as they stand in the file."""
    found: list[tuple[bool, int, Choice]] = []
    placed: list[PlacedChoice] = []
    for fields in top.tables("choice"):
        taken = _whole(_mixed(fields, "choice"), "taken")
        placed.append(PlacedChoice(_choice(fields), fields.spot))
        found.append((taken is None, taken or 0, placed[-1].choice))
    if catalogue is not None:
        note_counts(placed, catalogue)
    return tuple(choice for _, _, choice in sorted(found, key=lambda one: one[:2]))


def _choice(fields: Fields) -> Choice:
    choice = Choice(
        option=OptionId(fields.text("option")),
        count=_counted(fields, "count"),
        place=fields.word("place", Place) if fields.has("place") else None,
        owner=fields.word("whose", Owner, Owner.HOUSE),
        own_part=_own_part(_table(fields, "own_part")) if fields.has("own_part") else None,
        note=fields.text("note", "", lines=True, longest=NOTE_LONGEST),
        came_with=tuple(OptionId(cause) for cause in fields.texts("came_with", ())),
        at=fields.text("at", ""),
    )
    fields.close()
    return choice


def _own_part(fields: Fields) -> OwnPart:
    part = OwnPart(
        mass_kg=_number(fields, "mass_kg"),
        watts_w=_number(fields, "watts_w"),
        cut_out_mm=fields.text("cut_out_mm", ""),
        arrives=fields.text("arrives", ""),
        door_mm=_number(fields, "door_mm"),
        day_wh=_number(fields, "day_wh"),
        continuous_a=_number(fields, "continuous_a"),
        capacity_ah=_number(fields, "capacity_ah"),
        chemistry=fields.text("chemistry", ""),
    )
    fields.close()
    return part


def _acceptance(fields: Fields) -> Acceptance:
    accepted = Acceptance(
        rule=RuleId(fields.text("rule")),
        words=fields.text("words", "", lines=True),
        by=fields.text("by", ""),
        at=fields.text("at", ""),
    )
    fields.close()
    return accepted


def _question(fields: Fields) -> OpenQuestion:
    question = OpenQuestion(
        text=fields.text("text"),
        owner=fields.text("owner", ""),
        due=fields.text("due", ""),
        stops=fields.text("stops", ""),
        part=fields.text("part", ""),
    )
    fields.close()
    return question


def _whole(fields: Fields, key: str) -> int | None:
    return fields.whole(key) if fields.has(key) else None


def _number(fields: Fields, key: str) -> float | None:
    return fields.number(key) if fields.has(key) else None


def _told(fields: Fields, key: str) -> str:
    """A computed text, as far as it can be shown."""
    value = fields.value(key)
    return value if isinstance(value, str) and hidden_character(value) is None else ""


def _checksum_warnings(text: str, name: str, checksum: str) -> tuple[SpecWarning, ...]:
    if not checksum:
        words = f"{quotable(name, 200)} has no checksum: it was not written by this program."
        return (SpecWarning(kind=WarningKind.NO_CHECKSUM, words=words),)
    if checksum == checksum_of(text):
        return ()
    words = (
        f"{quotable(name, 200)} was changed by hand after it was written: what is computed in it may be out of date."
    )
    return (SpecWarning(kind=WarningKind.EDITED_BY_HAND, words=words),)


def _catalogue_warnings(name: str, version: str, digest: str, catalogue: Catalogue) -> tuple[SpecWarning, ...]:
    if digest in ("", catalogue.digest):
        return ()
    now = catalogue.firm.catalogue_version
    other = f"catalogue {quotable(version)}" if version != now else f"an earlier state of catalogue {now}"
    words = f"{quotable(name, 200)} was written with {other} and is now held against catalogue {now}."
    return (SpecWarning(kind=WarningKind.OTHER_CATALOGUE, words=words),)


def _stranger_warnings(name: str, spec: Spec, catalogue: Catalogue) -> list[SpecWarning]:
    told = quotable(name, 200)
    options = dict.fromkeys(c.option for c in spec.choices if c.option not in catalogue.options)
    rules = dict.fromkeys(a.rule for a in spec.accepted if a.rule not in catalogue.rules)
    kind = WarningKind.LEFT_CATALOGUE
    left = "is not in this catalogue any more. It is kept"
    return [
        *(
            SpecWarning(
                kind=kind, words=f'{told}: the choice "{quotable(o)}" {left}: take another or leave it out.', option=o
            )
            for o in options
        ),
        *(
            SpecWarning(
                kind=kind, words=f'{told}: the accepted caution "{quotable(r)}" {left}, and asks nothing.', rule=r
            )
            for r in rules
        ),
    ]
