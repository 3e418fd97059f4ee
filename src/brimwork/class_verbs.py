"""The verbs of a class: handout, mark, bank, course."""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Iterable, Iterator
from pathlib import Path

from brimwork.units import InputError


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

    verb = verbs.add_parser(
        "mark",
        help="mark what a class handed in: marks, a page for each learner, slips by question",
        epilog="example: brimwork mark handed-in --of week4.toml",
    )
    verb.add_argument("folder", type=Path, help="the folder or zip archive with the files that were handed in, under any names")
    verb.add_argument("--of", type=Path, metavar="CLASS.toml", help="the class file (default: the only one beside the folder)")
    verb.add_argument("--to", type=Path, help="the folder to write into (default: beside the folder, with -marks at the end of its name)")
    verb.add_argument("--columns", default="", help="columns of marks.csv, such as code,question,points")
    verb.set_defaults(run=_mark)

    verb = verbs.add_parser(
        "bank",
        help="write questions for other programs (QTI 2.1 and 3.0) and for reading (CSV, Markdown)",
        epilog="example: brimwork bank T04.1 T04.2 --variants 5 --to questions",
    )
    verb.add_argument("codes", nargs="*", metavar="question", help="codes, or names of formulas in quotes (default: the whole bank of written questions)")
    verb.add_argument("--variants", type=int, default=1, help="how many sets of numbers of each (default: %(default)s)")
    verb.add_argument("--to", type=Path, default=Path("questions"), help="the folder to write into (default: %(default)s)")
    verb.set_defaults(run=exchange)

    verb = verbs.add_parser(
        "course",
        help="write the page of a course of twelve weeks, with sheets, keys and slides",
        epilog="example: brimwork course --to my-course --region US",
    )
    verb.add_argument("--to", type=Path, default=Path("course"), help="the folder to write into (default: %(default)s)")
    verb.add_argument("--region", choices=("UK", "US"), default="UK", help="A4 or Letter (default: %(default)s)")
    verb.set_defaults(run=_course)


def handout(options: argparse.Namespace) -> int:
    from brimwork.classroom import handout as setting
    from brimwork.classroom.classfile import load_class
    from brimwork.notebook.opening import shipped

    if options.begin:
        for made in setting.begin_class(options.of):
            print(made)
        print(f"brimwork: edit both, then type: brimwork handout {options.of}", file=sys.stderr)
        return 0
    group = load_class(options.of)
    for note in group.notes:
        print(f"brimwork: note: {note}", file=sys.stderr)
    with _Progress("learners") as progress:
        out = setting.hand_out(group, shipped(), progress)
    print(f"{out.learners}: workbook and sheet for {len(group.learners)} learner{'s' * (len(group.learners) != 1)}")
    print(f"{out.instructor}: key, overview, all sheets in one file, and a table for answers on paper")
    return 0


def _mark(options: argparse.Namespace) -> int:
    from brimwork.classroom import designs, intake, marking, numbers, writing
    from brimwork.classroom.classfile import load_class

    wanted = writing.columns(options.columns)
    group = load_class(options.of or _only_class_file(options.folder))
    to = options.to or options.folder.absolute().with_name(f"{options.folder.absolute().stem}-marks")
    if to.resolve().is_relative_to(options.folder.resolve()):
        raise InputError(f"{to} lies in the folder of what was handed in, where nothing is written: name another with --to")
    secret = numbers.secret_of(group.folder)
    sets = numbers.draw(group, secret, numbers.read_record(group, secret))
    brief = designs.brief(group.folder / group.brief) if group.brief else None
    with _Progress("files") as progress:
        marks = marking.mark(group, sets, _counted(intake.take_in(options.folder, brief), progress))
    with _Progress("pages") as progress:
        writing.write_feedback(marks, to, wanted, progress)
    return _told(marks, to)


def _only_class_file(folder: Path) -> Path:
    """The one class file that lies beside the folder or where the command was typed. Raises InputError."""
    places = {Path.cwd(), folder.absolute().parent}
    found = sorted({path.resolve() for place in places if place.is_dir() for path in place.glob("*.toml") if b"[questions]" in path.read_bytes()[:100_000]})
    if len(found) == 1:
        return found[0]
    said = f"there are {len(found)} class files beside it" if found else "there is no class file beside it"
    raise InputError(f"which class is this? {said[0].upper()}{said[1:]}: type brimwork mark {folder} --of CLASS.toml")


def _counted(taken: Iterable, progress: _Progress) -> Iterator:
    for done, one in enumerate(taken, start=1):
        progress.so_far(done)
        yield one


def _told(marks, to: Path) -> int:
    """Say what was written; 1 when a file could not be read."""
    handed = sum(bool(one.source) for one in marks.of.values())
    look = sum(bool(one.notes) for one in marks.of.values())
    print(f"{to}: {handed} of {len(marks.of)} learners marked; marks.csv, totals.csv, pages, slips.html")
    if look:
        print(f"look-at.csv: something to look at for {look} learner{'s' * (look != 1)}")
    if not marks.unread:
        return 0
    print(f"brimwork: {len(marks.unread)} file{'s' * (len(marks.unread) != 1)} could not be read: could-not-be-read.csv says why", file=sys.stderr)
    return 1


def exchange(options: argparse.Namespace) -> int:
    from brimwork.classroom import exchange as exchanging

    print("\n".join(str(options.to / name) for name in exchanging.write_bank(options.to, options.codes, options.variants)))
    return 0


def _course(options: argparse.Namespace) -> int:
    from brimwork.classroom import course as planned

    print("\n".join(str(options.to / name) for name in planned.write_course_pages(options.to, options.region)))
    return 0


class _Progress:
    """Says how far the work is, once it takes over a second and a person is watching."""

    def __init__(self, what: str):
        self.what, self.begun, self.shown = what, time.monotonic(), False

    def __enter__(self) -> _Progress:
        return self

    def __call__(self, done: int, of: int) -> None:
        if sys.stderr.isatty() and time.monotonic() - self.begun > 1:
            self.shown = True
            print(f"\r{done} of {of} {self.what}", end="", file=sys.stderr, flush=True)

    def so_far(self, done: int) -> None:
        """How many are done, where nobody knows yet of how many."""
        if sys.stderr.isatty() and time.monotonic() - self.begun > 1:
            self.shown = True
            print(f"\r{done} {self.what}", end="", file=sys.stderr, flush=True)

    def __exit__(self, *_) -> None:
        if self.shown:
            print("\r" + " " * 50 + "\r", end="", file=sys.stderr)
