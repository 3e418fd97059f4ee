"""Questions of one's own, from `questions.toml` in the folder of a class or beside the workbooks: data only, bounded, and held to the same rules as the bank.

Nothing in such a file is run: its expressions are arithmetic over the given values, with small powers, and are refused before they are worked otherwise.
"""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from brimwork import files
from brimwork.exercise import arithmetic, bank
from brimwork.exercise.bank import Written
from brimwork.exercise.build import faults as faults_of
from brimwork.exercise.choices import Choose, FindTheSlip, Order, Tell
from brimwork.exercise.written import Numeric, Wrong
from brimwork.expression import DeclarationError, exact
from brimwork.spellings import nearest
from brimwork.units import InputError

OWN_FILE = "questions.toml"
FIRST_OWN = 500  # a number in a topic from here on is one's own
_LARGEST, _MOST = 500_000, 200  # bytes of a file, questions in it
_LONGEST, _POWERS, _HIGHEST = 200, 4, 6  # characters of an expression, powers in it, the highest power
_LONGEST_TEXT, _MOST_PARTS = 1_000, 12
_CODE = re.compile(r"T(0[1-9]|1[0-4])\.(\d{3,4})\Z")
_PLAIN = re.compile(r"[A-Za-z]\w{0,30}\Z", re.ASCII)

EXAMPLE = """\
# Questions of your own. Lay this file beside the workbooks, and beside a class file. All numbers here are invented.
format = 1

[[number]]                            # answered by a number
code = "T13.501"                      # topic, then a number from 500 on
text = "A bucket of {v} fills in {t}. What is the flow?"
given = { v = "15 L", t = "24 s" }    # names that stand in expressions, each with its unit
answer = "v/t"                        # arithmetic over the names; it works in SI
unit = "L/min"
solution = ["Flow: {v}/{t} = {v/t|L/min}"]
wrong = [                             # each known slip with a sentence that says what to do instead
  { equals = "v/t/60", says = "You gave litres a second. A minute has 60 seconds, so multiply by 60." },
]

[[choice]]                            # choose one
code = "T10.501"
text = "The trip switch has gone twice today. What now?"
right = "Leave it off and call an electrician."
because = "It goes because current leaks to earth, and that can kill."
wrong = [
  { option = "Switch it on again.", says = "It would go on leaking. Find the cause first, and let an electrician do so." },
  { option = "Use another socket.", says = "The fault may lie in the pump. Unplug it, and leave it off." },
]
"""


@dataclass(frozen=True)
class _Place:
    """Where in a file something stands, for messages."""

    file: str
    question: str

    def fault(self, said: str) -> InputError:
        return InputError(f"{self.file}, question {self.question}: {said}")


def read_questions(path: Path) -> dict[str, Written]:
    """The questions of a file by code; none where there is no file. Raises InputError, a line for each fault, with file and question."""
    try:
        with open(path, "rb") as file:
            raw = file.read(_LARGEST + 1)
    except FileNotFoundError:
        return {}
    except OSError as error:
        raise InputError(f"{path.name} cannot be read ({error.strerror})") from None
    if len(raw) > _LARGEST:
        raise InputError(f"{path.name} is larger than {_LARGEST // 1000} kB, which no file of questions is")
    try:
        held = tomllib.loads(raw.decode("utf-8-sig"))
    except (ValueError, RecursionError) as error:
        raise InputError(f"{path.name} cannot be read, {files.not_toml(error)}; compare it with the example in README.md") from None
    if held.get("format") != 1:
        raise InputError(f"{path.name} needs the line format = 1")
    return _all_of(held, path.name)


def _all_of(held: dict, name: str) -> dict[str, Written]:
    found: dict[str, Written] = {}
    told = [f"{name}: '{key[:40]}' is no kind of question.{nearest(key, _KINDS)} It has {', '.join(_KINDS)}" for key in held if key not in {"format", *_KINDS}]
    count = 0
    for kind, make in _KINDS.items():
        given = held.get(kind, [])
        if not isinstance(given, list) or not all(isinstance(one, dict) for one in given):
            told.append(f"{name}: write [[{kind}]] with two brackets before each question")
            continue
        for place, one in enumerate(given, start=1):
            count += 1
            try:
                question = _checked(make, one, _Place(name, one["code"][:12] if isinstance(one.get("code"), str) else f"{place} of [[{kind}]]"))
                if question.code in found:
                    raise InputError(f"{name}, question {question.code}: this code stands twice: give one of the two another number")
                found[question.code] = question
            except InputError as error:
                told.append(str(error))
            if count > _MOST:
                raise InputError(f"{name} holds more than {_MOST} questions: make a second class of them")
    if told:
        raise InputError("\n".join(told))
    return found


def _checked(make: Callable, one: dict, place: _Place) -> Written:
    """A question that may be asked. Raises InputError."""
    code = _text(one, "code", place)
    numbered = _CODE.match(code)
    if not numbered or int(numbered[2]) < FIRST_OWN:
        raise place.fault(f"'{code[:20]}' is no code for a question of one's own: write a topic and a number from {FIRST_OWN} on, such as T04.{FIRST_OWN + 1}")
    question = make(code, dict(one), place)
    try:
        found = faults_of(question)
    except (DeclarationError, InputError, ArithmeticError, ValueError) as error:
        found = [str(error)]
    if found:
        raise place.fault("; ".join(found))
    return question


# --- kinds --------------------------------------------------------------------------------------------------------------------------


def _number(code: str, one: dict, place: _Place) -> Numeric:
    _only(one, place, "code", "text", "given", "answer", "unit", "solution", "wrong", "name", "label", "let", "keep", "vary", "where", "close", "middle")
    given, let = _names(one, "given", place), _names(one, "let", place)
    vary = one.get("vary", {})
    if not isinstance(vary, dict) or not all(name in given and _are_texts(ends, 3) for name, ends in vary.items()):
        raise place.fault('vary names a given value with lowest, highest and step: vary = { v = ["10 L", "20 L", "1 L"] }')
    middle = one.get("middle")
    if middle is not None and not _are_texts(middle, 3):
        raise place.fault('middle is name, expression and unit of a value on the way: middle = ["area", "a*b", "m2"]')
    wrong = tuple(
        Wrong(_expression(slip, "equals", place), _text(slip, "says", place), _optional(slip, "middle", place)) for slip in _tables(one, "wrong", place)
    )
    question = Numeric(
        code=code,
        text=_text(one, "text", place),
        given=given,
        answer=_expression(one, "answer", place),
        unit=_optional(one, "unit", place),
        wrong=wrong,
        solution=_texts(one, "solution", place),
        name=_optional(one, "name", place) or "answer",
        label=_optional(one, "label", place),
        let=let,
        keep=_texts(one, "keep", place, none=True),
        vary={name: (ends[0], ends[1], ends[2]) for name, ends in vary.items()},
        where=_texts(one, "where", place, none=True),
        close=_optional(one, "close", place),
        middle=(middle[0], middle[1], middle[2]) if middle else None,
    )
    for text in _expressions(question):
        _bounded(text, place)
    return question


def _choice(code: str, one: dict, place: _Place) -> Choose:
    _only(one, place, "code", "text", "right", "because", "wrong")
    wrong = tuple((_text(option, "option", place), _text(option, "says", place)) for option in _tables(one, "wrong", place))
    return Choose(code, _text(one, "text", place), _text(one, "right", place), _text(one, "because", place), wrong)


def _slip(code: str, one: dict, place: _Place) -> FindTheSlip:
    _only(one, place, "code", "text", "lines", "slip", "because", "mend")
    lines = tuple((_text(line, "line", place), _optional(line, "holds", place)) for line in _tables(one, "lines", place))
    mend, slip = one.get("mend"), one.get("slip")
    if type(slip) is not int:
        raise place.fault("slip is the number of the line that is wrong: slip = 2")
    if mend is not None and not _are_texts(mend, 3):
        raise place.fault('mend is the name, what is right and what came out: mend = ["flow", "40 L/min", "30 L/min"]')
    return FindTheSlip(code, _text(one, "text", place), lines, slip, _text(one, "because", place), (mend[0], mend[1], mend[2]) if mend else None)


def _order(code: str, one: dict, place: _Place) -> Order:
    _only(one, place, "code", "text", "steps", "why")
    return Order(code, _text(one, "text", place), _texts(one, "steps", place), _texts(one, "why", place))


def _sentence(code: str, one: dict, place: _Place) -> Tell:
    _only(one, place, "code", "text", "model", "points")
    return Tell(code, _text(one, "text", place), _text(one, "model", place), _texts(one, "points", place))


_KINDS: dict[str, Callable] = {"number": _number, "choice": _choice, "slip": _slip, "order": _order, "sentence": _sentence}


# --- values of a question -----------------------------------------------------------------------------------------------------------


def _only(one: dict, place: _Place, *keys: str) -> None:
    for key in one:
        if key not in keys:
            raise place.fault(f"'{key[:40]}' is no key of this kind of question.{nearest(key, keys)} It has {', '.join(keys)}")


def _text(one: dict, key: str, place: _Place) -> str:
    text = one.get(key)
    if not isinstance(text, str) or not text.strip():
        raise place.fault(f'{key} is missing: write {key} = "..."' if text is None else f'{key} is text in quotes, {key} = "..."')
    if len(text) > _LONGEST_TEXT or not all(character.isprintable() for character in text):
        raise place.fault(f"{key} is one line of at most {_LONGEST_TEXT} characters")
    return text


def _optional(one: dict, key: str, place: _Place) -> str:
    return _text(one, key, place) if one.get(key) else ""


def _texts(one: dict, key: str, place: _Place, none: bool = False) -> tuple[str, ...]:
    given = one.get(key, [] if none else None)
    if not isinstance(given, list) or len(given) > _MOST_PARTS or not given and not none:
        raise place.fault(f'{key} is a list of at most {_MOST_PARTS} texts: {key} = ["...", "..."]')
    return tuple(_text({key: text}, key, place) for text in given)


def _tables(one: dict, key: str, place: _Place) -> list[dict]:
    given = one.get(key)
    if not isinstance(given, list) or not 0 < len(given) <= _MOST_PARTS or not all(isinstance(each, dict) for each in given):
        raise place.fault(f"{key} is a list of at most {_MOST_PARTS} entries in braces: {key} = [{{ ... }}]")
    return given


def _names(one: dict, key: str, place: _Place) -> dict[str, str]:
    given = one.get(key, {})
    if not isinstance(given, dict) or len(given) > _MOST_PARTS or not all(_PLAIN.match(name) for name in given):
        raise place.fault(f'{key} names values in braces, with plain letters for names: {key} = {{ v = "15 L" }}')
    return {name: _text(given, name, place) for name in given}


def _are_texts(given: object, count: int) -> bool:
    return isinstance(given, list) and len(given) == count and all(isinstance(text, str) and len(text) <= _LONGEST for text in given)


def _expression(one: dict, key: str, place: _Place) -> str | float:
    given = one.get(key)
    if isinstance(given, int | float) and not isinstance(given, bool):
        return float(given)
    text = _text(one, key, place)
    _bounded(text, place)
    return text


def _expressions(question: Numeric) -> Iterator[str]:
    """Every expression of a question, those in the holes of its texts too."""
    yield from question.let.values()
    yield from (part for condition in question.where for part in condition.split("<"))
    yield from (wrong.middle for wrong in question.wrong if wrong.middle)
    yield from [question.middle[1]] if question.middle else []
    for text in (question.text, *question.solution):
        yield from arithmetic.hole_texts(text)


def _bounded(text: str, place: _Place) -> None:
    """Refuse an expression that is not small arithmetic, before it is worked. Raises InputError."""
    if len(text) > _LONGEST:
        raise place.fault(f"'{text[:40]} …' is longer than {_LONGEST} characters")
    try:
        arithmetic.names(text)
        powers = [node for node in ast.walk(ast.parse(text.strip(), mode="eval")) if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow)]
        raised = [exact(node.right) for node in powers]
    except (DeclarationError, SyntaxError, ValueError, RecursionError, MemoryError, ArithmeticError) as error:
        raise place.fault(str(error)) from None
    if len(powers) > _POWERS or any(power is None or abs(power) > _HIGHEST for power in raised):
        raise place.fault(f"'{text}': at most {_POWERS} powers, each a number up to {_HIGHEST}")


# --- the questions in use -----------------------------------------------------------------------------------------------------------

_told: list[str] = []


def take_from(folder: Path) -> list[str]:
    """Use the questions of a folder beside those of the kit, instead of those of another. Returns what is wrong with its file, a line each; such a file is not used."""
    _told[:] = []
    try:
        bank.use_own({})
        bank.use_own(read_questions(folder / OWN_FILE))
    except InputError as error:
        _told[:] = str(error).splitlines()
    return list(_told)


def codes() -> list[str]:
    """The codes of the questions of one's own that are in use."""
    return [code for code in bank.every_question() if code not in bank.questions()]


def own_faults() -> list[str]:
    """What was wrong with the file of the folder in use."""
    return list(_told)
