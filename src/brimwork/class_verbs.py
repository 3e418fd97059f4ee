"""The verbs of a class: handout and mark."""

from __future__ import annotations

import argparse
import sys
import time
from pathlib import Path


def add(verbs) -> None:
    """Add both verbs to a parser's."""
    verb = verbs.add_parser(
        "handout",
        help="set an exercise to a class: numbers, workbook and sheet for each learner, and the key",
        epilog="example: brimwork handout --begin week4.toml, then edit week4.toml and roster.csv, then brimwork handout week4.toml",
    )
    verb.add_argument("of", type=Path, metavar="CLASS.toml", help="the class file")
    verb.add_argument("--begin", action="store_true", help="write an example class file of that name, and an example roster, to edit")
    verb.set_defaults(run=handout)


def handout(options: argparse.Namespace) -> int:
    from brimwork.classroom import handout as setting
    from brimwork.classroom.classfile import load
    from brimwork.notebook.opening import shipped

    if options.begin:
        for made in setting.start(options.of):
            print(made)
        print(f"brimwork: edit both, then type: brimwork handout {options.of}", file=sys.stderr)
        return 0
    group = load(options.of)
    for note in group.notes:
        print(f"brimwork: note: {note}", file=sys.stderr)
    with Progress("learners") as progress:
        out = setting.hand_out(group, shipped(), progress)
    print(f"{out.learners}: workbook and sheet for {len(group.learners)} learner{'s' * (len(group.learners) != 1)}")
    print(f"{out.instructor}: key, overview, all sheets in one file, and a table for answers on paper")
    return 0


class Progress:
    """Says how far the work is, once it takes over a second and a person is watching."""

    def __init__(self, what: str):
        self.what, self.begun, self.shown = what, time.monotonic(), False

    def __enter__(self) -> Progress:
        return self

    def __call__(self, done: int, of: int) -> None:
        if sys.stderr.isatty() and time.monotonic() - self.begun > 1:
            self.shown = True
            print(f"\r{done} of {of} {self.what}", end="", file=sys.stderr, flush=True)

    def __exit__(self, *_) -> None:
        if self.shown:
            print("\r" + " " * 50 + "\r", end="", file=sys.stderr)
