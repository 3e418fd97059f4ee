"""Numbers for each learner: drawn by a keyed hash of class secret, learner and question, screened, and no two learners alike.

The secret is made once, stays in the instructor's folder, and is looked for in everything that is written for a learner. Beside it a record keeps what was
handed out, sealed with the secret, so that a later learner gets other numbers and marks can be explained after the kit has changed.
"""

from __future__ import annotations

import hashlib
import hmac
import json
import os
import secrets
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from brimwork import files
from brimwork.classroom.classfile import SchoolClass
from brimwork.classroom.questions import SetQuestion
from brimwork.edition import __version__
from brimwork.exercise.bank import Posed
from brimwork.exercise.personal import fair, seeds
from brimwork.exercise.question import Question
from brimwork.expression import DeclarationError
from brimwork.units import InputError

SECRET = "class-secret.txt"
_ATTEMPTS = 300  # draws for one learner before a question is said to have too few sets
_ALIKE = "everybody"  # stands in place of the learner where all have the same numbers


@dataclass(frozen=True)
class Issued:
    """A question as one learner got it: `seed`, and the numbers as they were written."""

    asked: SetQuestion
    seed: int
    numbers: dict[str, str]

    @cached_property
    def posed(self) -> Posed:
        return self.asked.posed(self.seed, self.numbers)


@dataclass(frozen=True)
class Sets:
    """What every learner of a class got: by learner code, then by question code."""

    of: dict[str, dict[str, Issued]]
    secret: bytes

    def mark(self, title: str, learner: str) -> str:
        """What ties a sheet and a hand-in to a learner and a set: eight letters and digits that only the secret can make."""
        numbers = [[code, issued.seed, sorted(issued.numbers.items())] for code, issued in self.of[learner].items()]
        return _sealed(self.secret, "mark", title, learner, json.dumps(numbers))[:8].upper()


def secret_of(folder: Path, make: bool = False) -> bytes:
    """The class secret in the instructor's folder; made there if `make`. Raises InputError."""
    path = folder / SECRET
    try:
        if make and not path.exists():
            files.begin(path, f"{secrets.token_hex(32)}\n".encode())
            os.chmod(path, 0o600)
        text = path.read_text(encoding="ascii").strip()
        made = bytes.fromhex(text)
    except FileNotFoundError:
        raise InputError(f"{path} is not there, and no numbers can be worked out again without it: put back the one that 'brimwork handout' made") from None
    except (OSError, ValueError) as error:
        raise InputError(f"{path} cannot be read as a class secret ({error}): put back the one that 'brimwork handout' made") from None
    if len(made) != 32:
        raise InputError(f"{path} is no class secret: it has {len(made)} bytes and not 32")
    return made


def numbers_told(content: bytes, secret: bytes) -> bool:
    """Whether a file would carry the secret."""
    return secret in content or secret.hex().encode() in content.lower()


def record_of(class_file: Path) -> Path:
    """Where it is kept what was handed out to a class."""
    return class_file.with_name(f"{class_file.stem}-handed-out.json")


# --- drawing ------------------------------------------------------------------------------------------------------------------------


def draw(group: SchoolClass, secret: bytes, earlier: Sets | None = None) -> Sets:
    """Numbers for all learners; those who have some keep them. Raises InputError for questions that have too few different sets."""
    found: dict[str, dict[str, Issued]] = {learner.code: {} for learner in group.learners}
    kept = earlier.of if earlier else {}
    for asked in group.questions:
        taken = {_set(issued) for of in kept.values() if (issued := of.get(asked.code)) and not asked.alike}
        for learner in group.learners:
            issued = kept.get(learner.code, {}).get(asked.code)
            if issued is None or issued.asked.way != asked.way:
                issued = _drawn(group, asked, secret, _ALIKE if asked.alike else learner.code, set() if asked.alike else taken)
                taken.add(_set(issued))
            found[learner.code][asked.code] = Issued(asked, issued.seed, issued.numbers)
    return Sets(found, secret)


def _drawn(group: SchoolClass, asked: SetQuestion, secret: bytes, learner: str, taken: set) -> Issued:
    for count, seed in enumerate(seeds(secret, group.title, learner, asked.code)):
        if count == _ATTEMPTS:
            raise TooFew(asked, len(taken), len(group.learners))
        try:
            question = asked.posed(seed)
        except DeclarationError as error:
            raise InputError(f"{asked.code}: {error}") from None
        issued = Issued(asked, seed, getattr(question, "numbers", {}))
        if _set(issued) not in taken and fair(question):
            return issued
        if not isinstance(question, Question) or not question.varies:
            raise TooFew(asked, 1 if isinstance(question, Question) else 0, len(group.learners))
    raise AssertionError


def _set(issued: Issued) -> tuple:
    return tuple(issued.numbers.values()) or (0,)


class TooFew(InputError):
    """A question has fewer different sets of numbers than the class has learners; `code` is the question, `why` says so."""

    def __init__(self, asked: SetQuestion, sets: int, learners: int):
        has = "has no numbers to change" if sets < 2 else f"has only about {sets} different sets of numbers that are fair"
        self.code, self.why = asked.code, f"{has}, and the class has {learners} learners, so that some would have the same"
        ways = f'"{asked.code}" = {{ points = {asked.points:g}, alike = true }} if all may have the same'
        super().__init__(f'"{asked.code}" {self.why}: choose another question, or write {ways}')


# --- the record ---------------------------------------------------------------------------------------------------------------------


def write_record(group: SchoolClass, sets: Sets) -> None:
    """Keep what was handed out, sealed. Raises InputError."""
    held = {
        learner: {code: {"seed": issued.seed, "numbers": issued.numbers, "on_the_way": issued.asked.way} for code, issued in of.items()}
        for learner, of in sets.of.items()
    }
    body = {"format": 1, "title": group.title, "kit": __version__, "sets": held}
    body["seal"] = _sealed(sets.secret, "record", json.dumps(body, sort_keys=True))
    path = record_of(group.path)
    try:
        files.write_whole(path, (json.dumps(body, indent=1, ensure_ascii=False) + "\n").encode())
    except OSError as error:
        raise InputError(f"{path} cannot be written ({error.strerror})") from None


def read_record(group: SchoolClass, secret: bytes) -> Sets | None:
    """What was handed out, or None where nothing was. Raises InputError for a record that was changed or belongs to another class."""
    path = record_of(group.path)
    try:
        held = json.loads(path.read_text(encoding="utf-8"))
        seal = held.pop("seal")
        sealed = hmac.compare_digest(seal, _sealed(secret, "record", json.dumps(held, sort_keys=True)))
        sets = held["sets"]
    except FileNotFoundError:
        return None
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        raise InputError(f"{path} cannot be read: put back the one that 'brimwork handout' wrote") from None
    if not sealed:
        raise InputError(f"{path} was changed by hand, or belongs to another class secret: put back the one that 'brimwork handout' wrote")
    if held["title"] != group.title:
        raise InputError(f'{path} belongs to "{held["title"]}" and the class file says "{group.title}": a new exercise needs a class file of another name')
    asked = {one.code: one for one in group.questions}
    of = {
        learner: {
            code: Issued(
                SetQuestion(code, asked[code].points if code in asked else 0, row["on_the_way"], asked[code].alike if code in asked else False),
                row["seed"],
                row["numbers"],
            )
            for code, row in rows.items()
        }
        for learner, rows in sets.items()
    }
    return Sets(of, secret)


def _sealed(secret: bytes, *parts: str) -> str:
    return hmac.new(secret, "\0".join(parts).encode(), hashlib.sha256).hexdigest()
