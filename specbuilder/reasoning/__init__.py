"""Floor 0: exact reasoning over yes-or-no variables. Pure combinatorics; knows no van, no rule, no ledger."""
