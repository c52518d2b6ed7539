"""Reads a folder of rules into a ``Catalogue``, or says everything that is wrong with it at once."""

from __future__ import annotations

import hashlib
import importlib.resources
import re
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from specbuilder.model.catalogue import Catalogue, Firm
from specbuilder.model.kinds import STEPS

from .faults import Fault, FaultList, Source, hidden_lines, quotable
from .fields import table_of
from .rules_checks import check, check_firm
from .rules_draft import Draft, draft_of, firm_of, with_fitting_parts
from .rules_tables import FIRM_FILE, entries_of, vocabulary_of
from .toml_lines import TomlLines
from .toml_text import LONG_NUMBER, long_number_line, utf8_text
from .vocabulary import Vocabulary

_DEEPEST = 8
"""Folders within folders below which nothing is looked for: a link may lead round in a circle."""
_AT = re.compile(r" \(at (?:line (?P<line>[0-9]+), column (?P<column>[0-9]+)|end of document)\)$")


class RulesFaults(Exception):  # noqa: N818 - it is what it holds: all faults of one folder
    """The folder of rules cannot be used. Its text has one line for each fault."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults


class _File(NamedTuple):
    """A file of the folder; its path has ``/`` on every system."""

    path: str
    content: bytes


def rules_folder() -> Traversable:
    """The rules that came with the program: inside the installed package, or beside it in a checkout.

    Raises:
        RulesFaults: if they are in neither place.
    """
    inside = importlib.resources.files("specbuilder") / "rules"
    if inside.is_dir():
        return inside
    for above in Path(__file__).resolve().parents:
        if (above / "rules").is_dir() and (above / "pyproject.toml").is_file():
            return above / "rules"
    raise RulesFaults((Fault("rules", 0, "", "the rules that belong to the program are gone: install it again."),))


_KNOWN: dict[str, Catalogue] = {}
"""The catalogue last read, by the bytes it was read from: who asks again without a change gets a copy of it."""


def read_rules(folder: Traversable | Path) -> Catalogue:
    """Everything the ``.toml`` files of the folder and its sub-folders say.

    Raises:
        RulesFaults: with every fault of every file, if there is any.
    """
    faults = FaultList()
    files = sorted(_files(folder, faults), key=lambda file: _place_in_walk(file.path))
    if not files and not faults:
        faults.add(
            quotable(folder.name), "there is no rule file in this folder: put the .toml files of the rules there."
        )
    digest = digest_of((file.path, file.content) for file in files)
    if not faults and (known := _KNOWN.get(digest)) is not None:
        return replace(known)
    documents = [(source, document) for file in files for source, document in _document(file, faults)]
    whole = not faults
    entries = entries_of(documents)
    words = vocabulary_of(entries, complete=whole)
    firm = _firm(documents, words, faults) if whole else None
    draft = draft_of(entries, words)
    if files:
        check(draft, words, faults)
    _note_hidden((source for source, _ in documents), faults)
    if faults or firm is None:
        raise RulesFaults(faults.in_order())
    _KNOWN.clear()
    _KNOWN[digest] = _catalogue(firm, draft, digest)
    return replace(_KNOWN[digest])


def _files(folder: Traversable, faults: FaultList, above: str = "", depth: int = 0) -> Iterator[_File]:
    """The rule files below a folder. What does not end in ``.toml`` is no rule file; hidden files are an editor's."""
    try:
        inside = sorted(folder.iterdir(), key=lambda item: item.name)
    except OSError as reason:
        faults.add(
            above.rstrip("/") or quotable(folder.name),
            f"the folder cannot be read ({_told(reason)}): look at its path and rights.",
        )
        return
    for item in inside:
        path = above + item.name
        if item.name.startswith("."):
            continue
        if item.name.endswith(".toml"):
            try:
                if item.is_file():
                    yield _File(path, item.read_bytes())
                else:
                    faults.add(path, _no_file(item))
            except OSError as reason:
                faults.add(path, f"the file cannot be read ({_told(reason)}): look at its rights.")
        elif depth < _DEEPEST and item.is_dir():
            yield from _files(item, faults, f"{path}/", depth + 1)


def _no_file(item: Traversable) -> str:
    """What stands under the name of a rule file. A pipe or a device is never read: it could wait for ever."""
    if item.is_dir():
        return "this is a folder and its name is one of a rule file: rename it, or take it out."
    if isinstance(item, Path) and item.is_symlink() and not item.exists():
        return "this link leads to no file: mend it, or take it out."
    return "this is no regular file: take it out."


def _told(reason: OSError) -> str:
    return reason.strerror or type(reason).__name__


def _place_in_walk(path: str) -> tuple[int, str]:
    """Vans first, then files named for a step in the order of the walk, then the others; by name within each."""
    folder, _, name = path.rpartition("/")
    if folder.rpartition("/")[2] == "vans":
        return 0, path
    stem = name.removesuffix(".toml")
    for number, step in enumerate(STEPS, 1):
        if stem == step.value or stem.startswith(f"{step.value}-"):
            return number, path
    return len(STEPS) + 1, path


def _document(file: _File, faults: FaultList) -> Iterator[tuple[Source, Mapping[str, object]]]:
    """The one document of a file, or none when it is no TOML: then that is its only fault."""
    text = utf8_text(file.content, file.path, faults, "this line is not UTF-8 text: save the file as UTF-8.")
    if text is None:
        return
    try:
        document = tomllib.loads(text)
    except RecursionError:
        faults.add(file.path, "lists or tables lie too deep in one another: write them flatter.")
    except ValueError as reason:
        if line := long_number_line(text, reason):
            faults.add(file.path, LONG_NUMBER, line=line)
            return
        _note_broken(file.path, text, str(reason), faults)
    else:
        yield Source(file.path, TomlLines(text), faults), document


def _note_broken(path: str, text: str, reason: str, faults: FaultList) -> None:
    """What ``tomllib`` says of a text it refuses; the line stands at the end of its sentence."""
    found = _AT.search(reason)
    line = 0
    told = reason
    if found:
        line = int(found["line"]) if found["line"] else text.count("\n") + 1
        told = reason[: found.start()] + (
            f" at column {found['column']}" if found["column"] else " before the file ends"
        )
    faults.add(path, f"this is no TOML: {quotable(told, 120)}. Mend it; the rest of this file was not read.", line=line)


def _firm(
    documents: Iterable[tuple[Source, Mapping[str, object]]], words: Vocabulary, faults: FaultList
) -> Firm | None:
    """The firm; missing is a fault."""
    for source, document in documents:
        if source.file == FIRM_FILE and "firm" in document:
            spot = source.top.at("firm")
            table = table_of(document["firm"], spot)
            firm = None if table is None else firm_of(table, spot, words)
            return None if firm is None else check_firm(firm, spot)
    faults.add(FIRM_FILE, "the firm is missing: add this file with a table [firm] in it.")
    return None


def _note_hidden(sources: Iterable[Source], faults: FaultList) -> None:
    """Characters nobody sees, outside the values that were read: in remarks they turn what an editor shows."""
    told = {(fault.file, fault.line) for fault in faults.in_order()}
    for source in sources:
        for line, hidden in hidden_lines(source.lines.text):
            if (source.file, line) not in told:
                faults.add(source.file, f"this line holds {hidden}: take it out.", line=line)


def digest_of(files: Iterable[tuple[str, bytes]]) -> str:
    """A hash over names and contents of rule files, the same on every system."""
    digest = hashlib.sha256()
    for path, content in sorted(files):
        name = path.encode("utf-8", "surrogateescape")
        digest.update(b"%d %d " % (len(name), len(content)) + name + content)
    return digest.hexdigest()


def _catalogue(firm: Firm, draft: Draft, digest: str) -> Catalogue:
    return Catalogue(
        firm=firm,
        questions=MappingProxyType({found.record.number: found.record for found in draft.questions}),
        brief=MappingProxyType({found.record.key: found.record for found in draft.brief}),
        groups=MappingProxyType({found.record.id: found.record for found in draft.groups}),
        options=MappingProxyType(
            {option.id: option for option in with_fitting_parts(found.record for found in draft.options)}
        ),
        rules=MappingProxyType({found.record.id: found.record for found in draft.rules}),
        ledgers=MappingProxyType({found.record.id: found.record for found in draft.ledgers}),
        work=MappingProxyType({found.record.id: found.record for found in draft.work}),
        cautions=MappingProxyType({found.record.id: found.record for found in draft.cautions}),
        papers=MappingProxyType({found.record.id: found.record for found in draft.papers}),
        collection=MappingProxyType({found.record.id: found.record for found in draft.collection}),
        tables=MappingProxyType({found.record.id: found.record for found in draft.tables}),
        digest=digest,
    )
