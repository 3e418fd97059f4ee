"""How long marking takes, from ten hand-ins to ten thousand: a table, each row beside what reading the same files with `json` alone takes.

python tests/speed/marking.py [10 100 1000 10000]
"""

import json
import os
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
import simulated_class

from brimwork.classroom import classfile, intake, marking, numbers, writing
from brimwork.exercise.personal import seeds

QUESTIONS = '"T04.1" = 2\n"T05.1" = 2\n"flow over a round rim" = { points = 3, on_the_way = "b" }\n'


def drawn(group, secret: bytes) -> numbers.Sets:
    """Numbers for each learner, where some may be alike: no question has ten thousand sets."""
    of = {}
    for learner in group.learners:
        of[learner.code] = {}
        for asked in group.questions:
            seed = next(seeds(secret, learner.code, asked.code))
            of[learner.code][asked.code] = numbers.Issued(asked, seed, asked.posed(seed).numbers)
    return numbers.Sets(of, secret)


def cpu() -> float:
    """Seconds of this process and of those it ended, which other work on the machine does not change."""
    return sum(os.times()[:4])


def measured(count: int, folder: Path) -> tuple[float, float, float, float]:
    """Seconds to read and mark, of which at work; to write all pages and tables; and to load the same files with `json` alone."""
    (folder / "c.toml").write_text(f'format = 1\ntitle = "t"\n[questions]\n{QUESTIONS}')
    (folder / "roster.csv").write_text("code,name\n" + "".join(f"L{number:05d},x\n" for number in range(count)))
    group = classfile.load_class(folder / "c.toml")
    sets = drawn(group, numbers.secret_of(folder, make=True))
    place = folder / "in"
    place.mkdir()
    for learner in group.learners:
        (place / f"{learner.code}.json").write_bytes(simulated_class.whole(group, sets, learner.code))
    numbers.write_record(group, sets)
    sets = numbers.read_record(group, sets.secret)  # as the command does, with nothing worked out yet
    begun, busy = time.perf_counter(), cpu()
    marks = marking.mark(group, sets, intake.take_in(place))
    marked, busy = time.perf_counter(), cpu() - busy
    writing.write_feedback(marks, folder / "out")
    written = time.perf_counter()
    for path in place.iterdir():
        json.loads(path.read_bytes())
    assert all(one.source for one in marks.of.values())
    return marked - begun, busy, written - marked, time.perf_counter() - written


def main() -> None:
    print(f"{'hand-ins':>9} {'marking s':>10} {'at work s':>10} {'each ms':>8} {'writing s':>10} {'each ms':>8} {'over json alone':>16}")
    for count in map(int, sys.argv[1:] or ("10", "100", "1000", "10000")):
        with tempfile.TemporaryDirectory() as folder:
            marking_s, busy, writing_s, bare = measured(count, Path(folder))
        print(f"{count:9d} {marking_s:10.2f} {busy:10.2f} {busy / count * 1e3:8.2f} {writing_s:10.2f} {writing_s / count * 1e3:8.2f} {marking_s / bare:16.0f}")


if __name__ == "__main__":
    main()
