"""Ledgers and figures, on small catalogues that the tests show whole and on the rules that come with the program."""
