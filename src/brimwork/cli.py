"""The command `brimwork`: open, work, pack, prove. Results go to standard output, messages to standard error; exit 0, 1 (a check failed), 2 (usage)."""

from __future__ import annotations

import argparse
import datetime
import json
import sys
import time
from collections import Counter
from pathlib import Path

from brimwork import __version__
from brimwork.formula import Formula, Working, origin, read_values
from brimwork.nomenclature import QUANTITIES
from brimwork.units import InputError


def main(arguments: list[str] | None = None) -> int:
    parser = argparse.ArgumentParser(prog="brimwork", description="Design and learn small recirculating water features, one derived number at a time.")
    parser.add_argument("--version", action="version", version=f"brimwork {__version__}")
    verbs = parser.add_subparsers(dest="verb", required=True, metavar="VERB")

    verb = verbs.add_parser("open", help="open the workbooks in JupyterLab, in a folder of your own")
    verb.add_argument("folder", nargs="?", type=Path, default=Path.home() / "brimwork", help="where your workbooks live (default: %(default)s)")
    verb.add_argument("--no-browser", action="store_true", help="start the server and print its address only")
    verb.add_argument("--port", type=int, default=8888, help="first port to try (default: %(default)s)")
    verb.set_defaults(run=_open)

    verb = verbs.add_parser(
        "work",
        help="work one formula with your numbers; without a formula, list all of them",
        epilog='example: brimwork work "flow over a level lip" b=4m H=0.2m C_d=0.62',
    )
    verb.add_argument("formula", nargs="?", help="its name")
    verb.add_argument("values", nargs="*", metavar="letter=value", help="a value with its unit, such as H=25mm")
    verb.add_argument("--json", action="store_true", help="print one JSON object")
    verb.set_defaults(run=_work)

    verb = verbs.add_parser("pack", help="write the design pack of a design file as a PDF", epilog="example: brimwork pack designs/library-bowl.toml")
    verb.add_argument("design", type=Path, help="the design file")
    verb.add_argument("--to", type=Path, help="the PDF to write (default: beside the design file)")
    verb.add_argument("--date", type=_day, help="the date printed on it, as 2026-05-31 (default: today)")
    verb.set_defaults(run=_pack)

    verb = verbs.add_parser("prove", help="verify every derivation and every published value again")
    verb.add_argument("formula", nargs="?", help="one formula, with its steps (default: all)")
    verb.set_defaults(run=_prove)

    options = parser.parse_args(arguments)
    try:
        return options.run(options)
    except InputError as error:
        print(f"brimwork: {error}", file=sys.stderr)
        return 2
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except KeyboardInterrupt:
        return 130


def _open(options: argparse.Namespace) -> int:
    from brimwork.notebook import opening

    return opening.open_workbooks(options.folder, browser=not options.no_browser, port=options.port)


def _day(text: str) -> datetime.date:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is not a date: type one such as 2026-05-31") from None


def _pack(options: argparse.Namespace) -> int:
    from brimwork.design import checks, inputs
    from brimwork.design.features import chain_of
    from brimwork.pack.document import write_pack

    try:
        design = inputs.load(options.design)
    except InputError as error:
        print(f"brimwork: {error}", file=sys.stderr)
        return 1
    path = options.to or options.design.with_suffix(".pdf")
    write_pack(design, path, options.date)
    grades = Counter(finding.grade for finding in checks.findings(chain_of(design)))
    print(f"{path}: " + ", ".join(f"{grades[grade]} {grade}" for grade in checks.GRADES if grades[grade]))
    return 1 if grades["fail"] else 0


# --- work ---------------------------------------------------------------------------------------------------------------------------


def _work(options: argparse.Namespace) -> int:
    from brimwork import topics

    if options.formula is None:
        for topic, formulas in topics.topics().items():
            print(topic)
            for formula in formulas:
                print(f"  {formula.name:<48} {formula.result} from {', '.join(formula.inputs)}")
        return 0
    formula = topics.find(options.formula)
    worked = formula.work(**_values(formula, options.values))
    if options.json:
        print(json.dumps(_as_json(worked), indent=2, ensure_ascii=False))
    else:
        print("\n".join(_as_text(worked)))
    return 0


def _values(formula: Formula, texts: list[str]) -> dict[str, float]:
    for text in texts:
        name = text.partition("=")[0].strip()
        if "=" in text and name not in (*formula.inputs, *formula.constants):
            raise formula.unknown_letter(name)
    return read_values(", ".join(texts))


def _as_text(worked: Working) -> list[str]:
    from brimwork import typeset

    formula = worked.formula
    lines = [formula.name, "", *(f"  {line}" for line in typeset.working(worked, typeset.PLAIN)), ""]
    lines.append(f"  {formula.quantity.short_name}: {formula.quantity.both(worked.result, 4)}")
    lines += ["", "  with"]
    lines += [f"    {name:<8} {QUANTITIES[name].both(value, None):<34} {QUANTITIES[name].name}" for name, value in worked.values.items()]
    lines += [f"  note: {note}" for note in worked.notes]
    lines += [f"  remark: {formula.remark}"] if formula.remark else []
    lines += ["", f"  {origin(formula)}"]
    lines += [f"  tested range: {tested}" for tested in formula.tested]
    lines += [f"  checked against: {p.source}: {p.value} for {p.given}, here {p.check(formula).difference:+.2%}" for p in formula.published]
    lines += [f"  no printed value: {formula.unpublished}"] if formula.unpublished else []
    return lines


def _as_json(worked: Working) -> dict:
    from brimwork import typeset

    formula = worked.formula
    return {
        "formula": formula.name,
        "equation": typeset.relation(formula.left, formula.right, typeset.PLAIN),
        "inputs": {name: _quantity(name, value) for name, value in worked.values.items()},
        "result": {"letter": formula.result, **_quantity(formula.result, worked.result)},
        "working": typeset.working(worked, typeset.PLAIN),
        "notes": worked.notes,
        "origin": origin(formula),
        "tested": [str(tested) for tested in formula.tested],
        "published": [
            {
                "source": str(p.source),
                "grade": p.source.source.grade,
                "given": p.given,
                "value": p.value,
                "tolerance": p.tolerance,
                "difference": p.check(formula).difference,
            }
            for p in formula.published
        ],
        "unpublished": formula.unpublished,
    }


def _quantity(letter: str, value: float) -> dict:
    row = QUANTITIES[letter]
    return {"name": row.name, "value": value, "unit": row.si, "metric": row.metric_text(value, 4), "us": row.us_text(value, 4)}


# --- prove --------------------------------------------------------------------------------------------------------------------------


def _prove(options: argparse.Namespace) -> int:
    from brimwork import prove, topics

    if options.formula:
        return _prove_one(topics.find(options.formula))
    total, found, begun = len(topics.formulas()), [], time.monotonic()
    for verdict in prove.verdicts():
        found.append(verdict)
        if sys.stderr.isatty() and time.monotonic() - begun > 1:
            print(f"\r{len(found)} of {total} formulas", end="", file=sys.stderr, flush=True)
    if sys.stderr.isatty():
        print("\r" + " " * 30 + "\r", end="", file=sys.stderr)
    topic = ""
    for verdict in found:
        if verdict.topic != topic:
            topic = verdict.topic
            print(topic)
        print("\n".join(prove.lines(verdict)))
    print("\n" + "\n".join(prove.summary(found)))
    return 1 if any(verdict.faults for verdict in found) else 0


def _prove_one(formula: Formula) -> int:
    from brimwork import derivation, prove, typeset

    verdict = prove.verdict("", formula)
    if verdict.status != "failed":
        for number, step in enumerate(derivation.derive(formula), start=1):
            how = {"law": "law, not proved here", "take": "taken: a modelling choice", "formula": "proved on its own: another formula"}.get(
                step.kind
            ) or f"follows: {prove.WORDS[step.how].split(', ')[1]}"
            print(f"{number}. {step.reason}\n     {typeset.relation(step.left, step.right, typeset.PLAIN)}\n     [{how}]")
    print("\n".join(prove.lines(verdict)))
    return 1 if verdict.faults else 0
