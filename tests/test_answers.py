"""A learner's answers file: whole or not at all, whatever happens while it is written; never written over when it is damaged."""

import hashlib
import json
import os
import signal
import subprocess
import sys
import time

import pytest

from brimwork.exercise import answers, bank, claims
from brimwork.exercise.diagnosis import ONCE_SHOWN, diagnose
from brimwork.topics import FORMER, formulas
from brimwork.units import InputError

_WRITER = """
import sys
from brimwork.exercise import answers, bank
from brimwork.exercise.diagnosis import diagnose
question = bank.pose("T04.5")
found = diagnose(question, "36.7 mm")
print("ready", flush=True)
while True:
    answers.record(sys.argv[1], question, "36.7 mm" + " " * 150, found)
"""


def answer(path, text="36.7 mm", code="T04.5", seed=1):
    question = bank.pose(code, seed)
    return answers.record(path, question, text, diagnose(question, text))


def test_an_answer_is_kept_with_what_was_asked_and_when(tmp_path):
    path = tmp_path / "answers.json"
    answer(path, "73.5 mm")
    answer(path, "21", "T12.1")
    first, second = json.loads(path.read_text())["answers"]
    assert first["exercise"] == "T04.5" and first["seed"] == 1 and first["numbers"] == {"d": "25 mm", "Q": "1500 L/h"}
    assert first["answer"] == "73.5 mm" and first["kind"] == "slip" and second["kind"] == "right"
    assert abs(time.time() - __import__("datetime").datetime.fromisoformat(first["at"]).timestamp()) < 60
    assert answers.load_answers(path) == [first, second]
    assert "0.0367" not in path.read_text() and "feedback" not in path.read_text(), "the file carries numbers and answers, not the key"


def test_the_receipt_is_the_hash_of_all_answers(tmp_path):
    path = tmp_path / "answers.json"
    kept = answer(path)
    held = answers.load_answers(path)
    running = hashlib.sha256()
    for entry in held:
        running.update(json.dumps(entry, sort_keys=True, separators=(",", ":"), ensure_ascii=True).encode() + b"\n")
    digest = hashlib.sha256(f"\n{running.hexdigest()}".encode()).digest()
    number = int.from_bytes(digest[:8], "big")
    assert kept.receipt.endswith(f" {number % 10_000:04d}") and [word.isalpha() for word in kept.receipt.split()[:2]] == [True, True]
    assert answers.receipt(held) == kept.receipt != answer(path).receipt
    held[0]["answer"] = "another"
    assert answers.receipt(held) != kept.receipt


def test_a_process_killed_while_saving_leaves_a_whole_file(tmp_path):
    path = tmp_path / "answers.json"
    answer(path)
    for delay in (0.02, 0.05, 0.09, 0.13, 0.2, 0.31):
        before = len(answers.load_answers(path))
        writer = subprocess.Popen([sys.executable, "-c", _WRITER, str(path)], stdout=subprocess.PIPE)
        assert writer.stdout.readline() == b"ready\n"
        time.sleep(delay)
        writer.send_signal(signal.SIGKILL)
        writer.wait()
        writer.stdout.close()
        assert len(answers.load_answers(path)) >= before
    assert len(answers.load_answers(path)) > 6
    assert not list(tmp_path.glob("*damaged*"))


@pytest.mark.skipif(os.name != "posix", reason="limits of a process are a Unix thing")
def test_a_full_disk_loses_the_new_answer_and_none_of_the_old(tmp_path):
    """The limit on file size makes every write beyond it fail, as a full disk does."""
    path = tmp_path / "answers.json"
    for _ in range(5):
        answer(path)
    before = path.read_bytes()
    script = f"""
import resource, signal
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
from brimwork.exercise import answers, bank
from brimwork.exercise.diagnosis import diagnose
from brimwork.topics import FORMER, formulas
from brimwork.units import InputError
question = bank.pose("T04.5")
resource.setrlimit(resource.RLIMIT_FSIZE, ({len(before)}, {len(before)}))
try:
    answers.record({str(path)!r}, question, "36.7 mm", diagnose(question, "36.7 mm"))
except InputError as error:
    print(error)
"""
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert "cannot be written" in ran.stdout and "as they were" in ran.stdout
    assert path.read_bytes() == before and [file.name for file in tmp_path.iterdir()] == ["answers.json"]


DAMAGED = {
    "cut": b'{"format": 1, "answers": [{"exercise": "T04',
    "empty": b"",
    "not JSON": b"answers",
    "not text": b"\xff\xfe\x00",
    "another format": b'{"format": 2, "answers": []}',
    "a list": b"[]",
    "nan": b'{"format": 1, "answers": [NaN]}',
    "incomplete": b'{"format": 1, "answers": [{"exercise": "T04.5"}]}',
    "a wrong kind": b'{"format": 1, "answers": [{"exercise": 5, "seed": "x", "numbers": {}, "answer": "", "middle": "", "at": "", "kind": ""}]}',
    "deep": b"[" * 200_000,
}


@pytest.mark.parametrize("content", DAMAGED.values(), ids=DAMAGED)
def test_a_damaged_file_is_set_aside_and_never_written_over(tmp_path, content):
    path = tmp_path / "answers.json"
    path.write_bytes(content)
    with pytest.raises(InputError):
        answers.load_answers(path)
    kept = answer(path)
    assert "kept as answers.damaged-1.json" in kept.said
    assert (tmp_path / "answers.damaged-1.json").read_bytes() == content
    assert len(answers.load_answers(path)) == 1
    path.write_bytes(content + b" ")
    answer(path)
    assert (tmp_path / "answers.damaged-1.json").read_bytes() == content
    assert (tmp_path / "answers.damaged-2.json").read_bytes() == content + b" "


def test_a_file_too_large_is_not_read_whole(tmp_path):
    path = tmp_path / "answers.json"
    with open(path, "wb") as file:
        file.truncate(answers.LARGEST * 100)
    with pytest.raises(InputError, match="larger than 5 MB"):
        answers.load_answers(path)


def test_a_place_that_cannot_be_written_is_told(tmp_path):
    with pytest.raises(InputError, match="cannot be written"):
        answer(tmp_path / "absent" / "answers.json")
    with pytest.raises(InputError, match="cannot be read"):
        answer(tmp_path)


def test_two_writers_lose_nothing(tmp_path):
    """Each writes 100 answers of its own while the other does, and both are all there."""
    path = tmp_path / "answers.json"
    script = """
import sys
from brimwork.exercise import answers, bank
from brimwork.exercise.diagnosis import diagnose
question = bank.pose("T04.5")
for number in range(100):
    text = f"{sys.argv[2]}{number} mm"
    answers.record(sys.argv[1], question, text, diagnose(question, text))
"""
    writers = [subprocess.Popen([sys.executable, "-c", script, str(path), name]) for name in ("1", "2")]
    assert [writer.wait(60) for writer in writers] == [0, 0]
    typed = [entry["answer"] for entry in answers.load_answers(path)]
    assert sorted(typed) == sorted(f"{name}{number} mm" for name in ("1", "2") for number in range(100))
    assert [file.name for file in tmp_path.iterdir()] == ["answers.json"]
    assert [entry["try"] for entry in answers.load_answers(path)] == list(range(1, 201)), "tries are counted across both"


def test_a_file_of_the_first_edition_is_added_to(tmp_path):
    path = tmp_path / "answers.json"
    old = {"exercise": "T04.5", "seed": 1, "numbers": {}, "answer": "1 mm", "middle": "", "at": "2026-01-01T00:00:00+00:00", "kind": "none"}
    path.write_text(json.dumps({"format": 1, "answers": [old, old]}, indent=1) + "\n")
    answer(path, "2 mm")
    answer(path, "3 mm")
    held = json.loads(path.read_text())["answers"]
    assert held[:2] == [old, old] and [entry["answer"] for entry in held[2:]] == ["2 mm", "3 mm"] and held[3]["try"] == 4


def test_answers_that_stand_whole_in_a_cut_file_are_carried_over(tmp_path):
    path = tmp_path / "answers.json"
    for text in ("1 mm", "2 mm", "3 mm"):
        answer(path, text)
    content = path.read_bytes()[:-40]
    path.write_bytes(content)
    kept = answer(path, "4 mm")
    assert "with the 2 whole answers in it" in kept.said and (tmp_path / "answers.damaged-1.json").read_bytes() == content
    assert [entry["answer"] for entry in answers.load_answers(path)] == ["1 mm", "2 mm", "4 mm"]


def test_a_full_file_goes_on_in_a_next_part(tmp_path, monkeypatch):
    monkeypatch.setattr(answers, "LARGEST", 900)
    path = tmp_path / "answers.json"
    for number in range(8):
        kept = answer(path, f"{number} mm")
    assert [entry["answer"] for entry in answers.load_answers(path)] == [f"{number} mm" for number in range(8)]
    assert len(answers.parts(path)) > 1 and all(part.stat().st_size <= 900 for part in answers.parts(path))
    assert kept.receipt == answers.receipt(answers.load_answers(path))


def test_the_receipt_depends_on_the_learner(tmp_path):
    first, second = tmp_path / "a.json", tmp_path / "b.json"
    for path, code in ((first, "A07"), (second, "A08")):
        answers.note(path, answers.LEARNER, code, "learner")
        answer(path)
    assert answers.learner(answers.load_answers(first)) == "A07"
    assert answers.receipt(answers.load_answers(first)) != answers.receipt(answers.load_answers(second))


def test_what_a_file_claims_is_worked_out_again(tmp_path):
    path = tmp_path / "answers.json"
    answer(path, "73.5 mm")
    path.write_text(path.read_text().replace('"kind": "slip"', '"kind": "right"'))
    held = answers.load_answers(path)
    assert held[0]["kind"] == "right" and claims.found(held[0], held) == "slip" and claims.doubtful(held[0], held)
    assert claims.counted_answers(held) == "1 entry, and 0 questions right at the last try"


def test_an_answer_after_the_solution_was_shown_is_known_as_such_after_a_rerun(tmp_path):
    path = tmp_path / "answers.json"
    answers.note(path, "T04.5", "", answers.SHOWN, 1)
    answer(path)
    held = answers.load_answers(path)
    assert claims.found(held[-1], held) == ONCE_SHOWN and not claims.doubtful(held[0], held)
    answer(path, "36.7 mm", seed=2)
    assert not answers.was_shown(answers.load_answers(path), "T04.5", 2)


def test_what_was_read_once_is_read_again_only_where_another_hand_has_changed_it(tmp_path, monkeypatch):
    path = tmp_path / "answers.json"
    answers.note(path, "one", "1", "first")
    assert len(answers.load_answers(path)) == 1
    read = []
    monkeypatch.setattr(answers, "_bytes", lambda part, real=answers._bytes: read.append(part) or real(part))
    answers.note(path, "two", "2", "second")
    assert [entry["answer"] for entry in answers.load_answers(path)] == ["1", "2"] and read == [], "what was added here is known"
    other = json.loads(path.read_text())
    other["answers"][0]["answer"] = "9"
    path.write_text(json.dumps(other))
    assert [entry["answer"] for entry in answers.load_answers(path)] == ["9", "2"] and read == [path]
    path.unlink()
    assert answers.load_answers(path) == []


@pytest.mark.parametrize("was", FORMER)
def test_an_answer_under_a_former_name_counts_for_the_question_and_keeps_its_receipt(tmp_path, was):
    """The receipt was printed once: it is the hash of what stands in the file, whatever the question is called today."""
    path = tmp_path / "answers.json"
    kept = answers.note(path, was, "3 mm", "right", seed=5)
    held = answers.load_answers(path)
    assert answers.tries(held, FORMER[was]) == 1 and answers.tries(held, was) == 0
    assert answers.receipt(held) == kept.receipt
    assert bank.pose(was, 5).text == bank.pose(FORMER[was], 5).text
    again = answers.note(path, FORMER[was], "4 mm", "right", seed=5)
    assert [entry["exercise"] for entry in json.loads(path.read_text())["answers"]] == [was, FORMER[was]]
    assert answers.receipt(answers.load_answers(path)) == again.receipt


def test_no_former_name_is_the_name_of_a_formula():
    assert not FORMER.keys() & formulas().keys() and {*FORMER.values()} <= formulas().keys()
