"""The compiled rules of a catalogue, made once for each catalogue in use."""

from functools import lru_cache

from specbuilder.model.catalogue import Catalogue
from specbuilder.rulegraph.rulebook import Rulebook, make_rulebook


@lru_cache(maxsize=4)
def rulebook_of(catalogue: Catalogue) -> Rulebook:
    """The rulebook of this catalogue: a memo of a pure function, keyed by the catalogue's identity."""
    return make_rulebook(catalogue)
