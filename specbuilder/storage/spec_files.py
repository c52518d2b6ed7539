"""The file of a spec, format 1: TOML, one file for each job and revision, ``0147-r1.toml``.

Said (read back; ``read_spec(spec_text(spec)) == spec``):

    format = 1                  a later number is refused in one sentence
    [job]                       number, revision, replaces, state (draft, quoted, ordered, changed, as built, expired),
                                note (private to the house)
    [customer]                  name, contact (private)
    [vehicle]                   the real van: vin_tail, year, registration, paint_code, mileage_km, damage,
                                front_as_received_kg, rear_as_received_kg
    [brief] [job_state]         key = answer; a key that is missing is not known yet
    [[choice]]                  option (id), taken (its place in the order of taking), count, place (left, right, rear),
                                whose (ours, theirs), note, came_with (ids of the choices it follows from), at;
                                [choice.own_part]: mass_kg, watts_w, cut_out_mm, arrives; of a fridge door_mm, day_wh;
                                of a battery continuous_a, capacity_ah, chemistry
    [[accepted]]                rule (id), words, by, at
    [[open]]                    text, owner, due, stops; part: option and line of the customer's sheet it is about

Computed (written for people, passed over on reading whatever stands there), in the order of the file; all names are in
``spec_format.COMPUTED_TABLES`` and ``COMPUTED_KEYS``:

    first page                  [not_looked_at] sums that are not made, [open_points] counts, [not_known] everything
                                that is not known (brief, not chosen, the real van, own parts), [assumed]
    the van                     its body beside what was said; [handed] all sides in capitals, [datum], [height] real
                                and with its spare, [do_not] drill, cut yet, order, and what cautions forbid
    parts                       beside each choice: description, step, status, mass, price, weeks, place, size, edges
    schedules                   [[hole]], [[seat]], [[circuit]]; [power], [gas_fuel_air], [water]: a line for each part
                                that declares something; a comment says what each schedule does not hold
    sums                        [mass_budget] by part, [ledger] with value, bound, verdict and, for lengths, what it is
                                made of, [price]
    work                        [hours] of each step, [[step]] with parts, holes and hold point, [[paper]] others sign
    notes                       [[finding]], [[caution]], [not_checked] rules that could not be heard

``signed``, ``date``, ``agreed_by`` and ``report_number`` are computed as well, and always empty: the file is written
again with every change, so what is measured, agreed and signed stands on paper. A NOTE is "to be said", never broken. A
number that is not settled has two keys, ``least`` and ``most``; a bound nobody has named yet is "NOT KNOWN".

Order: choices, holes and circuits stand in build order (B0 to B11, then as the catalogue lists them); reading puts the
choices back into the order they were taken. Units end the keys; what a person reads is in words.

Text: control characters, direction marks and other signs nobody sees are refused on reading. Notes, contact, damage and
accepted words may have several lines; elsewhere a line end is written as a blank.

Checksum: SHA-256 of the text without the checksum line. One that does not fit is a warning, never a refusal: the file
may be mended by hand.
"""

from __future__ import annotations

import os
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec

from .atomic import clear_left, write_whole
from .disk import reading
from .faults import Fault
from .spec_read import ReadSpec, SpecFaultsError, SpecWarning, WarningKind, read_spec
from .spec_write import spec_text

LARGEST_BYTES = 4_000_000
"""No spec comes near it; what is larger is something else."""


def read_spec_file(path: Path, catalogue: Catalogue | None) -> ReadSpec:
    """The spec in this file.

    Raises:
        SpecFaultsError: the file cannot be used, with every fault.
        DiskError: it cannot be read at all.
    """
    return read_spec(read_text(path, str(path)), str(path), catalogue)


def read_text(path: Path, name: str = "") -> str:
    """The text of a spec's file. ``name`` is what faults call it; empty: its name without its folder.

    Raises:
        SpecFaultsError: it is no text.
        DiskError: it cannot be read.
    """
    with reading(path) as file:
        data = file.read(LARGEST_BYTES + 1)
        size = os.fstat(file.fileno()).st_size
    if len(data) > LARGEST_BYTES:
        words = f"holds {max(size, len(data)):,} bytes, far more than any spec: this is another file."
        raise SpecFaultsError((Fault(name or path.name, 0, "", words),))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        words = "this is no UTF-8 text: save the file as UTF-8, or take yesterday's copy."
        raise SpecFaultsError((Fault(name or path.name, line, "", words),)) from error


def write_spec_file(path: Path, catalogue: Catalogue, spec: Spec, report: Report) -> None:
    """Writes the file whole: afterwards it holds the old text or the new one, and nothing between.

    Raises:
        DiskError: the old text is still there.
    """
    clear_left(path)
    write_whole(path, spec_text(catalogue, spec, report))


__all__ = [
    "LARGEST_BYTES",
    "ReadSpec",
    "SpecFaultsError",
    "SpecWarning",
    "WarningKind",
    "read_spec",
    "read_spec_file",
    "read_text",
    "spec_text",
    "write_spec_file",
]
