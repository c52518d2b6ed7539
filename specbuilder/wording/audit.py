"""What an audit of the rules found, in sentences."""

from __future__ import annotations

from specbuilder.model.audit import Lint
from specbuilder.model.catalogue import Catalogue


def lint_line(catalogue: Catalogue, lint: Lint) -> str:
    """``zero-without-note  options/roof.toml:12  Ladder: mass_kg is 0 and zero_note does not say why``."""
    raise NotImplementedError
