"""The class file, which an instructor writes by hand, and the roster beside it."""

from __future__ import annotations

import csv
import io
import tomllib
from dataclasses import dataclass
from pathlib import Path

from brimwork import files, system, topics
from brimwork.classroom.questions import SetQuestion
from brimwork.exercise import bank, own_questions
from brimwork.exercise.choices import Telling
from brimwork.exercise.personal import learner_code
from brimwork.exercise.pieces import worked
from brimwork.exercise.question import Question
from brimwork.spellings import nearest
from brimwork.units import InputError

_FORMAT = 1
_LARGEST = 1_000_000  # bytes of a class file or a roster
MOST_LEARNERS = 20_000
MOST_QUESTIONS = 60
_LONGEST_NAME = 80
FEEDBACK = ("at once", "after", "none")
_REGIONS = ("UK", "US")
_KEYS = {
    "format": int,
    "title": str,
    "region": str,
    "roster": str,
    "workbook": str,
    "feedback": str,
    "tries": int,
    "due": str,
    "method": float,
    "units": str,
    "brief": str,
}
_OF_A_QUESTION = {"points": float, "on_the_way": str, "alike": bool}
_RESERVED = {"CON", "PRN", "AUX", "NUL", *(f"{port}{number}" for port in ("COM", "LPT") for number in range(10))}

CLASS_EXAMPLE = """\
# A class file: what is set, and to whom. All names and numbers here are invented.
format = 1
title = "Overflow, week 4"
region = "UK"                 # UK prints on A4 and asks in metric units, US on Letter and in US units
roster = "roster.csv"         # beside this file: two columns, code and name
workbook = "overflow"         # the lesson that goes out with the exercise; leave it out for the exercise alone
feedback = "at once"          # "at once": each answer is told; "after": silent until handed in, then all; "none": silent
tries = 0                     # how many answers count for each question; 0 is as many as wanted
due = "Friday 4 December, 16:00"
method = 0.5                  # share of the points for a right way where the answer is not right

[questions]                   # by code or by the name of a formula, with points
"T04.1" = 2
"T04.2" = 2
"flow over a round rim" = { points = 3, on_the_way = "b" }   # also asks for a value on the way
"""
EXAMPLE_ROSTER = 'code,name\nA01,Ada Rowan\nA02,Ben Sorrel\nA03,"Crane, Cleo"\nA04,Délia Birch\n'


@dataclass(frozen=True)
class Learner:
    code: str
    name: str


@dataclass(frozen=True)
class SchoolClass:
    """A class file as read. `path` is the file; `method` the share of points for a right way; `brief` the file that designs are marked against."""

    path: Path
    title: str
    region: str
    feedback: str
    tries: int
    due: str
    method: float
    workbook: str
    brief: str
    questions: tuple[SetQuestion, ...]
    learners: tuple[Learner, ...]
    notes: tuple[str, ...] = ()
    units: str = system.METRES

    @property
    def folder(self) -> Path:
        return self.path.parent

    @property
    def points(self) -> float:
        return sum(asked.points for asked in self.questions)

    def learner(self, code: str) -> Learner | None:
        return self._by_code.get(code)

    @property
    def _by_code(self) -> dict[str, Learner]:
        found = self.__dict__.get("_codes")
        if found is None:
            found = {learner.code: learner for learner in self.learners}
            object.__setattr__(self, "_codes", found)
        return found


def load_class(path: Path) -> SchoolClass:
    """The class of a class file. Raises InputError, with what to type."""
    try:
        held = tomllib.loads(_text(path, "class file")[0])
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise InputError(f"{path}: {files.not_toml(error)}; compare it with the one that 'brimwork handout --begin NAME.toml' writes") from None
    _known("", held, {**_KEYS, "questions": dict})
    if held.get("format") != _FORMAT:
        raise InputError(f"{path} needs the line format = {_FORMAT}")
    title = _one_line(held.get("title", ""), "title")
    if not title:
        raise InputError(f'{path} has no title: write, for example, title = "Overflow, week 4"')
    region, feedback = _choice(held, "region", _REGIONS), _choice(held, "feedback", FEEDBACK)
    chosen = _choice(held, "units", system.SYSTEMS) if "units" in held else system.FEET if region == "US" else system.METRES
    system.use(chosen)  # questions of this class are posed in these units from here on
    tries, method = held.get("tries", 0), held.get("method", 0.5)
    if not 0 <= tries <= 100:
        raise InputError(f"tries = {tries} is no number of tries: write 0 for as many as wanted, or 1 to 100")
    if not 0 <= method <= 1:
        raise InputError(f"method = {method} is no share: write a number from 0 to 1, such as 0.5")
    if faults := own_questions.take_from(path.parent):
        raise InputError("\n".join(faults))
    questions = _questions(held.get("questions", {}), path)
    brief = held.get("brief", "")
    if not questions and not brief:
        raise InputError(f'{path} asks nothing: write at least one question under [questions], such as "T04.1" = 2, or name a brief')
    learners, notes = roster(_beside(path, held.get("roster", "roster.csv"), "roster"))
    return SchoolClass(
        path,
        title,
        region,
        feedback,
        tries,
        _one_line(held.get("due", ""), "due"),
        float(method),
        _workbook(held.get("workbook", "")),
        brief,
        questions,
        learners,
        notes,
        chosen,
    )


def _text(path: Path, what: str) -> tuple[str, str]:
    """The text of a file, and a note where it was not in UTF-8. Raises InputError."""
    try:
        if not path.is_file():
            raise InputError(
                f"there is no {what} {path}: type 'brimwork handout --begin NAME.toml' to begin one" if what == "class file" else f"there is no {what} {path}"
            )
        with open(path, "rb") as file:
            raw = file.read(_LARGEST + 1)
    except OSError as error:
        raise InputError(f"{path} cannot be read ({error.strerror})") from None
    return decoded(raw, str(path))


def decoded(raw: bytes, shown: str) -> tuple[str, str]:
    """Text in UTF-8, with or without its mark, in UTF-16 with one, or else as Windows writes Western letters, with a note. Raises InputError."""
    if len(raw) > _LARGEST:
        raise InputError(f"{shown} is larger than {_LARGEST // 1_000_000} MB")
    if b"\0" in raw and not raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise InputError(f"{shown} is no text file: save it as CSV in UTF-8")
    for marks, encoding in (((b"\xff\xfe", b"\xfe\xff"), "utf-16"), ((b"",), "utf-8-sig")):
        if raw.startswith(marks):
            try:
                return raw.decode(encoding), ""
            except UnicodeDecodeError:
                continue
    try:
        return raw.decode("cp1252"), f"{shown} is not in UTF-8 and was read as Windows writes it: look whether its accents are right"
    except UnicodeDecodeError:
        raise InputError(f"{shown} is in no code that can be read: save it as CSV in UTF-8") from None


def _known(where: str, held: dict, keys: dict[str, type]) -> None:
    for key, value in held.items():
        if key not in keys:
            raise InputError(f"'{key}'{f' of {where}' if where else ''} is not a key of a class file.{nearest(key, keys)} It has {', '.join(keys)}")
        wanted = keys[key]
        if isinstance(value, bool) != (wanted is bool) or not isinstance(value, (int, float) if wanted is float else wanted):
            words = {int: "a whole number", float: "a number", str: 'text in quotes, "like this"', bool: "true or false", dict: "a section of its own"}[wanted]
            raise InputError(f"{key}{f' of {where}' if where else ''} is {words}; {str(value)[:40]!r} is not")


def _choice(held: dict, key: str, choices: tuple[str, ...]) -> str:
    found = held.get(key, choices[0])
    if found not in choices:
        raise InputError(f'{key} = "{found[:40]}" is not one of {", ".join(choices)}')
    return found


def _one_line(text: str, key: str) -> str:
    line = " ".join("".join(character if character.isprintable() else " " for character in text).split())
    if len(line) > _LONGEST_NAME:
        raise InputError(f"{key} is longer than {_LONGEST_NAME} characters: make it shorter")
    return line


def _beside(path: Path, name: str, what: str) -> Path:
    if Path(name).is_absolute() or ".." in Path(name).parts or not name.strip():
        raise InputError(f'{what} = "{name[:60]}" must be a file in the folder of the class file: write its name only')
    return path.parent / name


def _workbook(name: str) -> str:
    if name and not name.replace("-", "").isalnum():
        raise InputError(f'workbook = "{name[:40]}" is no workbook: write its name, such as "overflow"')
    return name


# --- questions ----------------------------------------------------------------------------------------------------------------------


def _questions(held: dict, path: Path) -> tuple[SetQuestion, ...]:
    if len(held) > MOST_QUESTIONS:
        raise InputError(f"{path} asks {len(held)} questions, and {MOST_QUESTIONS} is the most")
    found = tuple(_question(name, value) for name, value in held.items())
    doubles = {asked.code for asked in found if sum(one.code == asked.code for one in found) > 1}
    if doubles:
        raise InputError(f"{', '.join(sorted(doubles))}: this question stands twice under [questions]: take one out")
    return found


def _question(name: str, value: object) -> SetQuestion:
    posed = bank.pose(name, 1)
    if isinstance(posed, Telling):
        raise InputError(f'"{name}" asks for own words, which only a person can mark: take it out, and ask it on paper')
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = {"points": value}
    if not isinstance(value, dict):
        raise InputError(f'"{name}" needs points: write "{name}" = 2, or "{name}" = {{ points = 2 }}')
    _known(f'"{name}"', value, _OF_A_QUESTION)
    points = float(value.get("points", 1))
    if not 0 < points <= 1000:
        raise InputError(f'"{name}": {points:g} is no number of points: write one from 1 to 1000')
    way = value.get("on_the_way", "")
    if way:
        _check_way(posed, name, way)
    return SetQuestion(posed.code, points, way, value.get("alike", False))


def _check_way(posed: object, name: str, way: str) -> None:
    if not isinstance(posed, Question) or posed.code not in topics.formulas():
        raise InputError(f'"{name}" is no formula, and only the working of a formula has values on the way: take on_the_way out')
    formula = topics.find(posed.code)
    try:
        keys = [piece.key for piece in worked(formula, formula.only(posed.letters)).pieces[:-1]]
    except ValueError as error:
        raise InputError(f"{error}: take on_the_way out") from None
    if way not in keys:
        raise InputError(f"the working of '{formula.name}' has no '{way}' on the way.{nearest(way, keys)} It has {', '.join(keys) or 'none'}")


# --- roster -------------------------------------------------------------------------------------------------------------------------


def roster(path: Path) -> tuple[tuple[Learner, ...], tuple[str, ...]]:
    """The learners of a roster CSV, with what is worth saying of it. Raises InputError with the line at fault."""
    text, note = _text(path, "roster")
    rows = [(number, [cell.strip() for cell in row]) for number, row in _rows(text, path)]
    rows = [(number, row) for number, row in rows if any(row)]
    if not rows:
        raise InputError(f"{path} is empty: write a first line code,name and then a line for each learner, such as A01,Ada Rowan")
    head = [cell.casefold() for cell in rows[0][1]]
    if "code" not in head or "name" not in head:
        raise InputError(f"{path}: the first line names the columns, and must have code and name; it says {', '.join(rows[0][1])[:80]}")
    code, name = head.index("code"), head.index("name")
    if len(rows) - 1 > MOST_LEARNERS:
        raise InputError(f"{path} has {len(rows) - 1} learners, and {MOST_LEARNERS} is the most")
    learners, seen = [], dict[str, int]()
    for number, row in rows[1:]:
        if len(row) <= max(code, name):
            raise InputError(f"{path}, line {number}: it has {len(row)} columns and needs code and name")
        learner = Learner(_code(row[code], f"{path}, line {number}"), _one_line(row[name], f"{path}, line {number}: the name"))
        if learner.code in seen:
            raise InputError(f"{path}, line {number}: the code {learner.code} is on line {seen[learner.code]} too: give each learner a code of their own")
        seen[learner.code] = number
        learners.append(learner)
    if not learners:
        raise InputError(f"{path} has no learners: write a line for each, such as A01,Ada Rowan")
    names = [learner.name.casefold() for learner in learners]
    twice = sorted({learner.name for learner in learners if learner.name and names.count(learner.name.casefold()) > 1}) if len(names) < 2000 else []
    notes = [note, f"the same name stands more than once in the roster, under different codes: {', '.join(twice)}" if twice else ""]
    extra = [cell for cell in rows[0][1] if cell.casefold() not in ("code", "name")]
    notes.append(f"columns of the roster that are not used: {', '.join(extra)[:80]}" if extra else "")
    return tuple(learners), tuple(filter(None, notes))


def _rows(text: str, path: Path) -> list[tuple[int, list[str]]]:
    """The rows of a CSV with the number of the line where each ends, whichever of comma, semicolon and tab stands in its first line."""
    first = text.partition("\n")[0]
    mark = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True)
    try:
        return [(reader.line_num, row) for row in reader]
    except csv.Error as error:
        raise InputError(f"{path}, line {reader.line_num}: {error}: look for a quotation mark that is open") from None


def _code(text: str, where: str) -> str:
    try:
        code = learner_code(text)
    except InputError as error:
        raise InputError(f"{where}: {error}") from None
    if code in _RESERVED:
        raise InputError(f"{where}: {code} cannot be the name of a folder on every machine: give another code")
    return code
