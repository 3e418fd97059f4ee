"""The command `brimwork`: open, work, pack, handout, mark, prove. Results go to standard output, messages to standard error; exit 0,
1 (a check failed, or the design could not be read), 2 (usage)."""

from __future__ import annotations

import argparse
import datetime
import itertools
import json
import os
import platform
import shutil
import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from brimwork import class_verbs, telling
from brimwork.design.judged.findings import tally
from brimwork.edition import __version__
from brimwork.expression import DeclarationError
from brimwork.formula import Formula
from brimwork.nomenclature import read_values, units_typed
from brimwork.shown import clipped
from brimwork.spellings import nearest
from brimwork.units import InputError

if TYPE_CHECKING:
    from brimwork.design.typed.design import Design

MOST_ARGUMENTS, LONGEST_ARGUMENT = 300, 10_000
_LONGEST_SAID = 200  # characters of an error's own words
TRACED = "BRIMWORK_TRACEBACK"  # a variable of the environment, for contributors: set, an error keeps its traceback
PORTS = range(1024, 65536)
_FIRST = """\
brimwork: a verb is wanted. To begin, type one of these:

  brimwork open                    design, learn or teach, in the browser
  brimwork work                    the list of all formulas, each with its meaning
  brimwork work weir               the formulas that have to do with a word
  brimwork work "flow over a level lip" b=600mm H=12mm C_d=0.62
                                   one formula worked with your numbers, metric or US
  brimwork pack MY-DESIGN.toml     the design pack of a design file, as a PDF
  brimwork handout CLASS.toml      an exercise for a class, with other numbers for each learner
  brimwork mark FOLDER             marks, a page for each learner, and what the class got wrong
  brimwork prove                   every derivation and every printed value verified again

'brimwork --help' says more, and 'brimwork work --help' says more about one verb.
"""


class _Parser(argparse.ArgumentParser):
    """Tells what is wrong with the command line as it is told of everything else."""

    def error(self, message: str) -> NoReturn:
        raise InputError(f"{message} ('{self.prog} --help' says what it takes)")


def main(arguments: list[str] | None = None) -> int:
    arguments = sys.argv[1:] if arguments is None else arguments
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a root sign where only ASCII can be written
    try:
        _must_be_bounded(arguments)
        options = _parser(arguments).parse_args(_switches_first(arguments))
        return options.run(options)
    except InputError as error:
        return _refused(error, "--json" in arguments)
    except DeclarationError as error:  # of whoever adds to the source
        print(f"brimwork: {error.told}", file=sys.stderr)
        return 2
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except KeyboardInterrupt:
        return 130
    except Exception as error:  # the edge of the program: whatever was not foreseen is told in one line
        if os.environ.get(TRACED):
            raise
        return _refused(InputError(_unforeseen(error)), "--json" in arguments)


def _must_be_bounded(arguments: list[str]) -> None:
    if len(arguments) > MOST_ARGUMENTS:
        raise InputError(f"{len(arguments)} words were typed, and no command takes more than {MOST_ARGUMENTS}: see 'brimwork --help'")
    if longest := max((argument for argument in arguments if len(argument) > LONGEST_ARGUMENT), key=len, default=""):
        raise InputError(f"'{clipped(longest)}' has {len(longest)} characters, and no value, word or name has more than {LONGEST_ARGUMENT}")


def _unforeseen(error: Exception) -> str:
    """One line about what should not have happened: what it was, where, and what to report."""
    if isinstance(error, ModuleNotFoundError) and not (error.name or "").startswith("brimwork"):
        return f"this needs the library {error.name}, which is not installed here: type pip install {error.name}"
    if isinstance(error, OSError) and error.strerror:
        named = f"{error.filename}: " if error.filename else ""
        return f"{named}{error.strerror}: see that there is room, that the folder is there, and that you may write in it"
    frames = [frame for frame in traceback.extract_tb(error.__traceback__) if "brimwork" in Path(frame.filename).parts]
    place = f"{Path(frames[-1].filename).name}, line {frames[-1].lineno}" if frames else "an unknown place"
    said = " ".join(str(error).split())[:_LONGEST_SAID]
    return (
        f"something went wrong that should not, and it stopped there. Please report this line, what you typed and the file that you gave: "
        f"{type(error).__name__} ({said}) in {place}, Brimwork {__version__}, Python {platform.python_version()}"
    )


def _refused(error: InputError, as_json: bool) -> int:
    if as_json:
        print(json.dumps({"error": str(error)}, ensure_ascii=False))
    print(f"brimwork: {error}", file=sys.stderr)
    return 2


def _home() -> Path:
    """The folder of whoever is at work; the one where the command was typed, where the machine knows of none."""
    try:
        return Path.home()
    except RuntimeError:
        return Path()


def _parser(arguments: list[str]) -> argparse.ArgumentParser:
    """The parser of the command line. Raises InputError for a verb that does not exist."""
    parser = _Parser(prog="brimwork", description="Design and learn small recirculating water features, one derived number at a time.")
    parser.add_argument("--version", action="version", version=f"brimwork {__version__}")
    parser.set_defaults(run=_nothing)
    verbs = parser.add_subparsers(dest="verb", metavar="VERB")

    verb = verbs.add_parser("open", help="design, learn or teach in the browser, in a folder of your own")
    verb.add_argument("folder", nargs="?", type=Path, default=_home() / "brimwork", help="where your workbooks live (default: %(default)s)")
    verb.add_argument("--no-browser", action="store_true", help="start the server and print its address only")
    verb.add_argument("--port", type=_port, default=8888, help="first port to try (default: %(default)s)")
    verb.add_argument(
        "--yard", nargs="?", const="", metavar="ADDRESS", help="let a phone or tablet of your own network open the pages, too; off unless asked for"
    )
    verb.set_defaults(run=_open)

    verb = verbs.add_parser(
        "work",
        help="work one formula with your numbers; with a word, list the formulas about it; alone, list all of them",
        epilog='example: brimwork work "flow over a level lip" b=4m H=0.2m C_d=0.62',
    )
    verb.add_argument("formula", nargs="?", help="its name, or a word to search for")
    verb.add_argument("values", nargs="*", metavar="letter=value", help='a value with its unit, such as H=25mm or Q="20 US gal/min"')
    verb.add_argument("--json", action="store_true", help="print one JSON object")
    verb.set_defaults(run=_work)

    verb = verbs.add_parser("pack", help="write the design pack of a design file as a PDF", epilog="example: brimwork pack designs/library-bowl.toml")
    verb.add_argument("design", type=Path, help="the design file")
    verb.add_argument("--to", type=Path, help="the PDF to write (default: beside the design file)")
    verb.add_argument("--replace", action="store_true", help="replace a PDF that is there and that this command did not write as it is now")
    verb.add_argument("--date", type=_day, help="the date printed on it, as 2026-05-31 (default: today)")
    verb.add_argument("--json", action="store_true", help="write no pack; print the design's results and findings as one JSON object")
    verb.add_argument("--lists", type=Path, metavar="FOLDER", help="write shopping list, cost sheet, programme and enquiry as CSV into a folder too")
    verb.set_defaults(run=_pack)

    class_verbs.add(verbs)

    verb = verbs.add_parser("prove", help="verify every derivation and every published value again")
    verb.add_argument("formula", nargs="?", help="one formula, with its steps (default: all)")
    verb.add_argument("--json", action="store_true", help="print one JSON object")
    verb.set_defaults(run=_prove)

    first = next((argument for argument in arguments if not argument.startswith("-")), None)
    if first is not None and first not in verbs.choices:
        raise _no_verb(first, tuple(verbs.choices))
    return parser


def _no_verb(word: str, verbs: tuple[str, ...]) -> InputError:
    if _is_formula(word):
        return InputError(f"'{word}' is a formula: type brimwork work {telling.quoted(word)}")
    return InputError(f"there is no verb '{word}'.{nearest(word.lower(), verbs)} Type one of {', '.join(verbs)}, as in 'brimwork open', or 'brimwork --help'")


def _switches_first(arguments: list[str]) -> list[str]:
    """ "work NAME --json b=4m" in the order that the parser can take."""
    if arguments[:1] != ["work"]:
        return arguments
    return ["work", *sorted(arguments[1:], key=lambda argument: not argument.startswith("-"))]


def _nothing(options: argparse.Namespace) -> int:
    print(_FIRST, end="", file=sys.stderr)
    return 2


def _port(text: str) -> int:
    if text.isascii() and text.isdigit() and len(text) < 7 and int(text) in PORTS:
        return int(text)
    raise argparse.ArgumentTypeError(f"'{text}' is not a port that can be used: type a whole number from {PORTS[0]} to {PORTS[-1]}, such as --port 8888")


def _open(options: argparse.Namespace) -> int:
    from brimwork.notebook import opening

    return opening.open_workbooks(options.folder, browser=not options.no_browser, port=options.port, yard=options.yard)


def _day(text: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is not a date: type one such as 2026-05-31") from None


def _pack(options: argparse.Namespace) -> int:
    from brimwork.design.follows.features import chain_of
    from brimwork.design.judged import checks
    from brimwork.design.typed import file
    from brimwork.pack.document import write_pack
    from brimwork.pack.letters import foreign_letters, letters_named, letters_without_font

    try:
        design = file.load_design(options.design)
    except InputError as error:
        raise InputError(f"the design could not be read, and no pack was written: {error}") from None
    if options.json:
        return _pack_as_json(design, options)
    if options.lists:
        from brimwork.pack.lists import write_lists

        print(*write_lists(chain_of(design), options.lists), sep="\n")
    path = options.to or options.design.with_suffix(".pdf")
    if path.suffix.lower() != ".pdf":
        raise InputError(f"a pack is a PDF: type a name that ends in .pdf, such as --to {path.with_suffix('.pdf')}")
    write_pack(design, path, options.date, options.replace)
    found = checks.findings(chain_of(design))
    grades = Counter(finding.grade for finding in found)
    if lacking := letters_without_font(foreign_letters(design)):
        print(f"brimwork: {letters_named(lacking)}", file=sys.stderr)
    print(f"{path}: {tally(found)}")
    if not grades["fail"]:
        return 0
    checks_fail = "1 check is outside its limit or not met" if grades["fail"] == 1 else f"{grades['fail']} checks are outside their limits or not met"
    print(f"brimwork: the pack is written, and {checks_fail}: it says what to change", file=sys.stderr)
    return 1


def _pack_as_json(design: Design, options: argparse.Namespace) -> int:
    """Results and findings, with nothing written; the same exit codes."""
    from brimwork.report import design_as_json

    if options.to or options.date or options.lists:
        raise InputError("--json writes no pack: leave --to, --date and --lists out, or leave --json out")
    told = design_as_json(design)
    _tell(told)
    return 1 if told["grades"]["fail"] else 0


# --- work ---------------------------------------------------------------------------------------------------------------------------


def _work(options: argparse.Namespace) -> int:
    from brimwork import search, topics

    if options.formula is None:
        return _list(topics.topics(), options.json, search.about)
    name, texts = _name_and_values(options.formula, options.values)
    if not texts and not _is_formula(name) and (found := search.search(name)):
        return _list(found, options.json, lambda place: f"'{name}' {place}")
    formula = _find(name)
    if not texts:
        return _tell(telling.description_as_json(formula) if options.json else telling.description(formula))
    typed = _typed(formula, texts)
    values = read_values(typed)
    if not {*formula.inputs} <= {*values}:
        raise formula.still_needs(values)
    worked = formula.work(**values)
    tell = telling.worked_as_json if options.json else telling.worked_as_text
    return _tell(tell(worked, units_typed(typed)))


def _tell(told: dict | list[str]) -> int:
    print(json.dumps(told, indent=2, ensure_ascii=False) if isinstance(told, dict) else "\n".join(told))
    return 0


def _name_and_values(name: str, texts: list[str]) -> tuple[str, list[str]]:
    """A name typed without quotes goes on up to the first value."""
    if _is_formula(name):
        return name, texts
    words = next((count for count, text in enumerate(texts) if "=" in text), len(texts))
    return " ".join([name, *texts[:words]]), texts[words:]


def _is_formula(name: str) -> bool:
    from brimwork import topics

    try:
        return bool(topics.find(name))
    except InputError:
        return False


def _find(name: str) -> Formula:
    """The formula of that name. Raises InputError, with those that have to do with its words."""
    from brimwork import search, topics

    if _is_formula(name):
        return topics.find(name)
    found = [formula.name for formulas in search.search(name).values() for formula in formulas]
    if not found and (near := search.near(name)):
        raise InputError(f"there is no formula '{name}'. Nearest words: {', '.join(near)}. 'brimwork work {near[0]}' lists what there is about one")
    if not found:
        return topics.find(name)
    more = f" and {len(found) - 5} more" if len(found) > 5 else ""
    raise InputError(f"there is no formula '{name}'. About that: {', '.join(found[:5])}{more}. 'brimwork work {telling.quoted(name)}' lists them")


def _list(groups: dict[str, tuple[Formula, ...]], as_json: bool, heading: Callable[[str], str]) -> int:
    from brimwork import search

    if as_json:
        return _tell({"formulas": [{"under": group, **telling.naming(formula)} for group, formulas in groups.items() for formula in formulas]})
    lines = []
    for group, formulas in groups.items():
        lines += ["", heading(group), *(_fitted(f"  {formula.name:<48}  {search.meaning(formula)}") for formula in formulas)]
    count = sum(map(len, groups.values()))
    lines += ["", f"{count} formula{'s' * (count != 1)}. 'brimwork work \"NAME\"' says what one takes, 'brimwork work WORD' lists those about a word"]
    return _tell(lines[1:])


def _fitted(line: str) -> str:
    """One line of the screen; whole where no person is watching."""
    width = shutil.get_terminal_size().columns if sys.stdout.isatty() else len(line)
    return line if len(line) <= width else f"{line[: width - 3].rstrip(' ,')}..."


def _typed(formula: Formula, texts: list[str]) -> str:
    """All values as one text, such as "b=4m, H=0.2m". Raises InputError."""
    for place, text in enumerate(texts):
        name = text.partition("=")[0].strip()
        if "=" in text and name not in (*formula.inputs, *formula.constants):
            raise formula.unknown_letter(name)
        if "=" not in text and place and "=" in texts[place - 1].rstrip("="):
            rest = " ".join(itertools.takewhile(lambda piece: "=" not in piece, texts[place:]))
            raise InputError(f"'{rest}' stands alone: a value with a space in it stands in quotes, so type \"{texts[place - 1]} {rest}\"")
    return ", ".join(texts)


# --- prove --------------------------------------------------------------------------------------------------------------------------


def _prove(options: argparse.Namespace) -> int:
    from brimwork import prove, topics
    from brimwork.nomenclature import wrong_row

    if wrong := wrong_row():
        raise DeclarationError(wrong)
    if options.formula:
        return _prove_one(_find(options.formula), options.json)
    total, found, begun = len(topics.formulas()), [], time.monotonic()
    for verdict in prove.verdicts():
        found.append(verdict)
        if sys.stderr.isatty() and time.monotonic() - begun > 1:
            print(f"\r{len(found)} of {total} formulas", end="", file=sys.stderr, flush=True)
    if sys.stderr.isatty():
        print("\r" + " " * 30 + "\r", end="", file=sys.stderr)
    if options.json:
        _tell({"formulas": [prove.verdict_as_json(verdict) for verdict in found], "summary": prove.summary_as_json(found)})
    else:
        for topic, verdicts in itertools.groupby(found, key=lambda verdict: verdict.topic):
            _tell([topic, *(line for verdict in verdicts for line in prove.lines(verdict))])
        _tell(["", *prove.summary(found)])
    return 1 if any(verdict.faults for verdict in found) else 0


def _prove_one(formula: Formula, as_json: bool) -> int:
    from brimwork import prove, topics

    topic = next((name for name, formulas in topics.topics().items() if formula in formulas), "")
    verdict = prove.verdict(topic, formula)
    steps = prove.steps_of(formula) if verdict.status != "failed" else ()
    if as_json:
        _tell({**prove.verdict_as_json(verdict), "steps": [asdict(step) for step in steps]})
    else:
        shown = [f"{number}. {step.reason}\n     {step.relation}\n     [{step.how}]" for number, step in enumerate(steps, start=1)]
        _tell([*shown, *prove.lines(verdict)])
    return 1 if verdict.faults else 0
