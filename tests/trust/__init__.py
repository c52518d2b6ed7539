"""The fault harness: what kills, full disks, spoilt files, nonsense and random keys do to the program, as one table.

    python -m tests.trust [--seed N] [--minutes M] [--only KIND ...]

Each kind of fault is a module with one function that tries for as long as it may and counts what went wrong: edits that
were acknowledged and are gone, mistakes of the program, and messages that name no file, no place or no cure.
"""
