"""Whatever is typed as an answer, `diagnose` answers in bounded time and never raises: 100,000 random and hostile texts."""

import random
import time

import pytest

from brimwork import unit_table
from brimwork.exercise import bank
from brimwork.exercise.answers import record
from brimwork.exercise.diagnosis import KINDS_OF_ANSWER, Diagnosis, diagnose
from brimwork.exercise.question import ask
from brimwork.topics import find

HOSTILE = (
    *("9**9**9", "9**9**9 m", "1e99", "1e999 m", "-1e99 mm", "1e-99", "nan", "NaN mm", "inf", "-inf m", "infinity", "1_000", "0x10", "1e", "1e+", "."),
    *(
        "__import__('os').system('true')",
        "().__class__",
        "lambda: 0",
        "{0.__class__}",
        "%s%n%x",
        "{}",
        "'; drop table",
        "<script>alert(1)</script>",
        "../../etc",
    ),
    *(
        "12,5 m",
        "1,250",
        "1.250,5",
        "1/0",
        "1/0 in",
        "1 1/0 in",
        "2 ft 9 ft",
        "2'9\"",
        "2' 9\" 3",
        "--5",
        "+-5",
        "5 5 5",
        "5 m m m m m m m m",
        "/s",
        "5 /",
        "5 m//s",
    ),
    *(
        "5 m^9.999",
        "5 m^-9.9",
        "5 m^99999999999",
        "5 km^9 km^9 km^9 km^9 km^9",
        "5 km^9.999 km^9.999 km^9.999",
        "1e-300 m",
        "0",
        "-0",
        "0 m",
        "00000000000001 m",
    ),
    *(
        "\u0661\u0662 m",
        "\uff11\uff12",
        "\u202e12 mm",
        "12\x00mm",
        "12\tmm",
        "12\nmm",
        "\ud800",
        "m" * 61,
        "9" * 61,
        "9" * 100_000,
        "1 " * 30,
        "(" * 60,
        "\u00bd",
        "1\u00bd in",
    ),
    *(
        "gal",
        "5 gal",
        "5 ton",
        "5 gph",
        "5 degC",
        "-500 degC",
        "5 degC m",
        "5 %",
        "5 %%",
        "bags",
        "21 bags bags",
        "dB(A)",
        "(a) dB",
        " ",
        "",
        "\u00a0",
        "a",
        "1 2 3 4 5 6 7 8 9",
    ),
)
PIECES = (
    *unit_table.UNITS,
    *unit_table.OFFSET_UNITS,
    *"0123456789.,/*^-+ ()'\"%eE_",
    "per",
    " ",
    "**",
    "gal",
    "ton",
    "bags",
    "dB",
    "nan",
    "inf",
    "\u00b2",
    "\u00b5",
    "\u221e",
    "\x00",
)


def questions():
    codes = ("T04.5", "T12.1", "T01.4", "T10.4", "T10.6", "T09.1", "T02.1", "T03.1", "T04.6", "T12.6", "T04.7", "T13.4", "T03.5")
    formulas = ("flow over a level lip", "head over a level lip", "slope factor of a V-notch")
    return [bank.pose(code) for code in codes] + [ask(find(name), 1) for name in formulas[:2]]


def _random_text(draw: random.Random) -> str:
    kind = draw.random()
    if kind < 0.45:
        return "".join(draw.choice(PIECES) for _ in range(draw.randint(1, 14)))
    if kind < 0.75:
        amount = draw.choice((f"{draw.uniform(-1e4, 1e4):.4g}", f"{10 ** draw.uniform(-40, 40):.3e}", f"{draw.randint(0, 99)}/{draw.randint(0, 99)}"))
        return f"{amount} {draw.choice(tuple(unit_table.UNITS))}{draw.choice(('', '/s', '/h', '^2', ' per m', '**9'))}"
    if kind < 0.9:
        return "".join(chr(draw.randint(0, 0x2FFF)) for _ in range(draw.randint(0, 70)))
    text = draw.choice(HOSTILE)[:80]
    return text[: draw.randint(0, len(text))] + draw.choice(PIECES) + text[draw.randint(0, len(text)) :]


@pytest.mark.parametrize("question", questions(), ids=lambda question: question.code)
def test_a_hostile_text_is_told_something(question):
    for text in HOSTILE:
        for middle in ("", text):
            found = diagnose(question, text, middle)
            assert isinstance(found, Diagnosis) and found.kind in KINDS_OF_ANSWER and found.message, text
            assert len(found.text) < 900, text


def test_a_hundred_thousand_texts_are_each_answered_at_once():
    draw, asked = random.Random(7), questions()
    slowest, kinds = 0.0, set()
    for number in range(100_000):
        text = _random_text(draw)
        start = time.thread_time()
        found = diagnose(asked[number % len(asked)], text, text if number % 3 == 0 else "")
        slowest = max(slowest, time.thread_time() - start)
        kinds.add(found.kind)
    print(f"slowest {slowest * 1e3:.1f} ms")
    assert slowest < 0.5
    assert kinds >= {"unread", "none", "no unit", "other unit", "right"} and kinds <= {*KINDS_OF_ANSWER}


@pytest.mark.parametrize("thing", [None, 5, 5.0, b"5 mm", [], {}, object()])
def test_a_thing_that_is_not_text_is_told_so(thing):
    assert all(diagnose(question, thing).kind in ("unread", "right", "slip") for question in questions())


def test_a_hostile_text_can_be_kept_and_read_back(tmp_path):
    from brimwork.exercise.answers import load_answers

    question = bank.pose("T04.5")
    for text in HOSTILE:
        record(tmp_path / "answers.json", question, text, diagnose(question, text))
    held = load_answers(tmp_path / "answers.json")
    assert len(held) == len(HOSTILE) and all(len(entry["answer"]) <= 200 for entry in held)
