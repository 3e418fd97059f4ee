"""A class that is simulated: each learner works the numbers that were handed out, some with a slip that is known beforehand, and hands in a file."""

import json
import random

from brimwork.classroom import hand_in, learner_files
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.question import Question


def exercise(group, sets, code):
    return learner_files.ExerciseInFile(code, group.title, sets.mark(group.title, code), group.feedback, group.tries, tuple(sets.of[code].values()))


def entry(issued, said, at=0, middle="", **more):
    question = issued.posed
    kind = diagnose(question, said, middle).kind
    return {
        "exercise": issued.asked.code, "seed": issued.seed, "numbers": dict(issued.numbers), "answer": said, "middle": middle,
        "at": f"2026-11-28T10:{at // 60 % 60:02d}:{at % 60:02d}+00:00", "kind": kind, "try": 1, "slip": None, "kit": "0.1.0", **more,
    }  # fmt: skip


def answer(issued, slip=None):
    """The right answer as a learner types it, or the number of a known slip."""
    question = issued.posed
    if isinstance(question, Question):
        return question.typed(question.answer if slip is None else question.slips[slip].number)
    wrong = next(place for place in range(len(question.options)) if place != question.right)
    return str((question.right if slip is None else wrong) + 1)


def handed_in(group, sets, code, entries):
    body, _ = hand_in.content(exercise(group, sets, code), entries)
    return (json.dumps(body, indent=1) + "\n").encode()


def whole(group, sets, code, seed=0, slips=None):
    """A file of one learner: right but for the slips given by question, or for slips drawn at random where there are none."""
    draw, entries = random.Random(f"{code} {seed}"), []
    for place, (name, issued) in enumerate(sets.of[code].items()):
        count = len(getattr(issued.posed, "slips", ())) or 1
        slip = slips.get(name) if slips is not None else draw.choice([None, None, *range(count)])
        entries.append(entry(issued, answer(issued, slip), at=seed * 7 + place * 60 + draw.randrange(50)))
    return handed_in(group, sets, code, entries)
