"""What stands in the JSON of each command, for its help. A key keeps its meaning as long as ``format`` stays."""

from __future__ import annotations

from types import MappingProxyType

_HEAD = "With --json, behind format, number, revision, state and catalogue: "
_BARE = "With --json, behind format: "
_SUM = (
    "a sum has id, unit, least, most (neither where it cannot be told; no_end where it has none), bound, sense, level, "
    "verdict, applies, value, estimate, basis, confidence, source, part_of, lacks, absurd and words"
)
_DOES = "price_gross_pence, mass_kg, hours and weeks say what it adds"

_COMPARE = (
    "With --json, behind format: a and b say what was held against which catalogue, with price and verdict; "
    "difference is b less a, rest what of it no line does alone. changes has a line for each choice that differs: "
    "kind, mark, group, before and after (nothing where none stands; option, name, place, count, whose, own_part, "
    "note), price_gross_pence, mass_kg, hours, weeks of the line alone. answers, van_data, figures (unit; "
    "bound_before and bound_after) and pieces (holes and circuits) have before and after as well: a hole surface, "
    "x_mm, y_mm, z_mm, width_mm, height_mm, diameter_mm, corner_radius_mm, cut_from, count and measured_on_the_van;"
    " a circuit mark, from, to, load_a, run_one_way_m, area_mm2, side_by_side, insulation_c, fuse_a, fuse_kind and "
    "fuse_place. away_from_a_plug says what of both works there otherwise: what, before and after. findings_came and "
    "findings_went are rules broken in b or in a alone, doubts_came and doubts_went "
    "those that cannot be told there: id, level, accepted, subjects, because. same counts the choices that stand "
    "alike, empty says whether nothing differs. words has the lines that are printed without --json."
)

SHAPES = MappingProxyType(
    {
        "jobs": _BARE
        + "jobs, each with number, revision, state, customer, van, changed, open_at (the counter that has "
        "it), faults and words; price with --prices.",
        "revisions": _BARE
        + "number, revisions (revision, state, replaces, valid_until, signed_on, newest) and variants "
        "(number, state).",
        "show": _HEAD
        + "replaces, customer, note, van, van_data, price, verdict, answers by their keys, choices (option, "
        "name, group, count, place, whose, own_part, note, came_with, at), undecided, unknown, accepted and questions "
        "(words, who, due, stops). With STEP or GROUP: groups with id, name, step, pick, decided, clashes and options, "
        "each with state, place, count, price_gross_pence, mass_kg, usual, brings, clashes and words; "
        "of the step check what check says.",
        "check": _HEAD
        + "verdict, van, findings (id, level, verdict, accepted, step, subjects, keys, reading, lacks, words, "
        f"because, rests_on, fixes, source), ledgers and figures ({_SUM}), states of the options, cannot_run_together, "
        "price, undecided, unknown, assumed, not_in_catalogue and silent.",
        "open": _HEAD + "open, each with kind (answer, group, finding, question or van), id, step, question, who, due, "
        "stops and words.",
        "find": _HEAD
        + "found, each with kind (option, group, question, ledger, rule or field), id, step, state and name.",
        "details": _HEAD
        + "option as in show, its places (place, taken), choices as in show, circuits by their ids, and words, the "
        "lines that are printed without --json.",
        "customer": _HEAD
        + "price, counts (who travels, who sleeps, which van), facts (name, words), away_from_a_plug (answer, names), "
        "told and whether it warns, open and open_points, and words, the lines that are printed without --json.",
        "why": _BARE
        + "kind, id, words and reasons; of an option state, cause as a tree, all_reasons and complete; of a "
        f"ledger what a sum has, and entries: {_SUM}.",
        "ledgers": _HEAD + f"ledgers: {_SUM}. With LEDGER the same with kind, entries and reasons.",
        "circuits": "With --json, behind format, number, revision and catalogue: circuits, with every figure of a "
        "cable, and mains_protection.",
        "compare": _COMPARE,
        "usual": _HEAD + "step, takes (options as in show) and together price_gross_pence and mass_kg.",
        "fix": _BARE
        + f"goal, rank, ways (number, words, edits, clears, breaks, brings, loses; {_DOES}), within so many "
        "changes, complete and words. With --take: taken, the way.",
        "finish": _BARE
        + f"open, by, edits, takes, {_DOES}; price_then, verdict_then, proven, still_broken, unanswered "
        "and words.",
        "switch": _BARE + f"option, edits, {_DOES}; price_now, price_then, verdict_then, stays, does_not_fit, breaks, "
        "clears, cannot_tell, ask_again, complete and words.",
        "build": _HEAD + "deposit_asked_pence, deposit_received_pence, next_hold_point, hold_points (id, step, what, "
        "passed, by, must_be, read), parts (option, fitted, supply, due, words), promises and calls (due, about).",
        "verify": _BARE + "number, revision, state, good, points (code, fault, words) and words.",
    }
)
"""By the name of the command."""
