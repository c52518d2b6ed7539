"""Runs every kind of fault and prints the table. Exit code 1 when anything was lost or a traceback came."""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor, as_completed
from multiprocessing import get_context
from pathlib import Path

from .kinds import KINDS, tried
from .table import table
from .tally import Tally


def main(argv: list[str] | None = None) -> int:
    """Run what was asked for."""
    asked = _asked(argv)
    names = asked.only or list(KINDS)
    workers = min(len(names), os.cpu_count() or 1)
    total_s = asked.minutes * 60 * workers
    shares = sum(KINDS[name].share for name in names)
    found: list[Tally] = []
    with (
        tempfile.TemporaryDirectory(prefix="trust-") as folder,
        ProcessPoolExecutor(workers, get_context("spawn"), max_tasks_per_child=1) as pool,
    ):
        # The longest first, so that no worker is left alone with it.
        order = sorted(names, key=lambda name: -KINDS[name].share)
        seconds = {name: total_s * KINDS[name].share / shares for name in names}
        waiting = [pool.submit(tried, name, asked.seed, seconds[name], Path(folder) / name) for name in order]
        for one in as_completed(waiting):
            tally = one.result()
            found.append(tally)
            print(f"{tally.kind}: {tally.tried:,} tried in {tally.took_s:.0f} s", file=sys.stderr, flush=True)
    found.sort(key=lambda tally: names.index(tally.kind))
    for line in table(found, asked.seed):
        print(line)
    return 0 if all(tally.good for tally in found) else 1


def _asked(argv: list[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.trust", description=__doc__)
    parser.add_argument("--seed", type=int, default=1, help="another number draws other moments, bytes and keys")
    parser.add_argument("--minutes", type=float, default=9.0, help="about how long it takes in all")
    parser.add_argument("--only", nargs="+", choices=list(KINDS), metavar="KIND", help=", ".join(KINDS))
    return parser.parse_args(argv)


if __name__ == "__main__":
    sys.exit(main())
