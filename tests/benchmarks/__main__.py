"""Print every measured bound of the program beside its floor, in one run."""

import shutil
import tempfile
from pathlib import Path

from . import answers, counter, evaluation, papers, sums


def main() -> None:
    """Measure."""
    evaluation.run()
    sums.run()
    answers.run()
    papers.run()
    counter.first_paint()
    counter.jobs_list()
    with tempfile.TemporaryDirectory() as folder:
        jobs = Path(folder)
        shutil.copy(Path(__file__).parents[2] / "examples" / "saturday-family.toml", jobs / "0147-r1.toml")
        counter.keys(jobs)
        counter.memory(jobs)


if __name__ == "__main__":
    main()
