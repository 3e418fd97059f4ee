"""Files from strangers: none hangs, crashes, runs, escapes or is lost; each that cannot be read is listed with its reason."""

import os
import re
import subprocess
import sys
import time
from html.parser import HTMLParser
from pathlib import Path

import hostile_hand_ins as hostile
import pytest

from brimwork.classroom import classfile, intake, marking, numbers, writing

HOOK = """
import os, sys
_out, _log = os.environ["HOOK_OUT"], os.environ["HOOK_LOG"]
_quiet = []
def _hook(event, arguments):
    if _quiet:
        return
    bad = event.startswith(("socket.", "os.exec", "os.spawn", "os.fork", "os.posix_spawn", "pty.", "urllib", "ftplib", "smtplib", "webbrowser", "winreg"))
    bad = bad or event in ("os.system", "pickle.find_class", "marshal.loads" if False else "-", "os.symlink", "os.link" if False else "-")
    if event == "subprocess.Popen":
        line = [str(one) for one in arguments[1]]
        bad = line[1:] != ["-P", "-m", "brimwork.classroom.reading"]
    if event in ("exec", "compile"):
        source = arguments[0]
        name = getattr(source, "co_filename", None) or (str(arguments[1]) if len(arguments) > 1 else "")
        text = source if isinstance(source, (str, bytes)) else b""
        bad = (b"the-code-of-a-hand-in" in text if isinstance(text, bytes) else "the-code-of-a-hand-in" in text) or "handed-in" in name
    if event == "open" and isinstance(arguments[0], (str, bytes)) and arguments[1] and set(str(arguments[1])) & set("wax+"):
        path = os.path.abspath(os.fsdecode(arguments[0]))
        bad = not path.startswith(_out) and not path.endswith((".pyc", "null")) and "__pycache__" not in path
    if event == "import" and str(arguments[0]).partition(".")[0] in ("pickle_", "nbformat", "IPython", "ipykernel", "jupyter_client", "socketserver", "http"):
        bad = True
    if bad:
        _quiet.append(1)
        try:
            with open(_log, "a") as log:
                log.write(f"{event} {arguments!r}"[:400] + chr(10))
        finally:
            _quiet.pop()
sys.addaudithook(_hook)
"""


def school(folder, questions='"T04.1" = 2\n"T04.2" = 1\n'):
    (folder / "c.toml").write_text(f'format = 1\ntitle = "Overflow"\n[questions]\n{questions}')
    (folder / "roster.csv").write_text("code,name\n" + "".join(f"A{i:02d},Ann {i}\n" for i in range(1, 31)))
    group = classfile.load_class(folder / "c.toml")
    sets = numbers.draw(group, numbers.secret_of(folder, make=True))
    numbers.write_record(group, sets)
    return group, sets


@pytest.fixture(scope="module")
def planted(tmp_path_factory):
    """The corpus, marked once; the seconds it took; the folder."""
    folder = tmp_path_factory.mktemp("hostile")
    group, sets = school(folder)
    place = folder / "handed-in"
    place.mkdir()
    hostile.plant(place)
    before = snapshot(place)
    begun = time.monotonic()
    marks = marking.mark(group, sets, intake.take_in(place))
    took = time.monotonic() - begun
    writing.write_feedback(marks, folder / "marks")
    assert snapshot(place) == before, "originals are untouched"
    return marks, took, folder


def snapshot(place):
    return {str(path): (path.lstat().st_mtime_ns, path.lstat().st_size) for path in place.rglob("*") if not path.is_symlink()}


@pytest.mark.parametrize("name", [name for name, (_, reason) in hostile.FILES.items() if reason])
def test_each_is_listed_with_its_reason(planted, name):
    reasons = [reason for file, reason in planted[0].unread if file == name or file.startswith(f"{name}: ")]
    assert reasons and all(hostile.FILES[name][1] in reason for reason in reasons), reasons
    assert not any("Error" in reason and "archive" not in reason for reason in reasons), "in words, not as an exception"


@pytest.mark.parametrize("name", [name for name, (_, reason) in hostile.FILES.items() if not reason])
def test_each_that_can_be_read_is_marked(planted, name):
    marked = planted[0].of[re.search(r"A\d\d", name)[0]]
    assert marked.source == name and marked.marks["T04.1"].tries, marked


def test_nothing_hangs_and_no_answer_of_the_corpus_is_taken_for_right(planted):
    marks, took, _ = planted
    assert took < 60
    said = marks.of["A15"].marks["T04.1"]
    assert said.tries == len([one for one in hostile.SAID if one.strip()]) and said.points == 0
    assert not any(row[4] == "right" for row in said.log)


def test_links_pipes_and_depth_are_passed_over_with_a_reason(planted):
    unread = dict(planted[0].unread)
    assert any("folders deep" in reason for reason in unread.values())
    if os.name == "posix":
        assert "link" in unread["link.json"] and "link" in unread["loop"] and "pipe" in unread["pipe.json"]


def test_pages_hold_no_element_that_is_not_ours(planted):
    allowed = set("html head meta title style body main h1 h2 p span code em strong section ol li table thead tbody tr th td div br".split())

    class Elements(HTMLParser):
        def handle_starttag(self, tag, attributes):
            assert tag in allowed, tag
            assert not any(name.startswith("on") or name in ("src", "href") for name, _ in attributes), attributes

    pages = [*planted[2].joinpath("marks", "pages").glob("*.html"), planted[2] / "marks" / "slips.html"]
    assert len(pages) == 31
    for path in pages:
        text = path.read_text(encoding="utf-8")
        Elements().feed(text)
        assert (
            "default-src 'none'; img-src data:; style-src 'unsafe-inline'" in text
            and "<script" not in text
            and "http://" not in text
            and "https://" not in text
        )
        assert not re.search("[\u202a-\u202e\u2066-\u2069\x00-\x08\x0b-\x1f]", text)


def test_tables_hold_no_formula(planted):
    import csv

    for path in planted[2].joinpath("marks").glob("*.csv"):
        for row in csv.reader(path.read_text(encoding="utf-8-sig").splitlines()):
            for cell in row:
                assert not cell.startswith(("=", "+", "@", "\t", "\r")) and not (cell.startswith("-") and not re.fullmatch(r"-[\d.]+", cell)), (path.name, cell)


def test_nothing_is_written_outside(planted):
    folder = planted[2]
    assert sorted(path.name for path in folder.iterdir()) == ["c-handed-out.json", "c.toml", "class-secret.txt", "handed-in", "marks", "roster.csv"]
    assert not list(folder.parent.glob("outside*")) and not Path(hostile.CANARY).exists()


def test_an_audit_hook_sees_no_code_of_a_file_run_and_no_socket(planted, tmp_path):
    """Both processes carry the hook; it is shown to bite first."""
    folder, log, out = planted[2], tmp_path / "log", tmp_path / "out"
    (tmp_path / "hook").mkdir()
    (tmp_path / "hook" / "sitecustomize.py").write_text(HOOK)
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join([str(tmp_path / "hook"), *filter(None, sys.path)]), "HOOK_OUT": str(out), "HOOK_LOG": str(log)}
    bites = "import socket, subprocess, sys; socket.socket().close(); exec('\"the-code-of-a-hand-in\"'); open('/dev/shm/x' if sys.platform == 'linux' else 'x', 'w').close()"
    subprocess.run([sys.executable, "-c", bites], env=environment, cwd=tmp_path, check=True)
    seen = log.read_text()
    assert "socket." in seen and "exec" in seen and "open" in seen
    log.unlink()
    line = [sys.executable, "-m", "brimwork", "mark", str(folder / "handed-in"), "--of", str(folder / "c.toml"), "--to", str(out)]
    ran = subprocess.run(line, env=environment, cwd=tmp_path, capture_output=True, text=True, timeout=120)
    assert ran.returncode == 1 and "could not be read" in ran.stderr and "Traceback" not in ran.stderr
    assert not log.exists(), log.read_text()
    assert not list(tmp_path.rglob(hostile.CANARY)) and (out / "marks.csv").read_bytes() == (folder / "marks" / "marks.csv").read_bytes()


def test_a_reader_that_hangs_or_ends_does_not_stop_the_others(tmp_path, monkeypatch):
    group, sets = school(tmp_path)
    place = tmp_path / "in"
    place.mkdir()
    for code, name in (("A01", "1.json"), ("A02", "2.json"), ("A03", "3.json")):
        (place / name).write_bytes(hostile._answers(hostile.entry(), learner=code))
    stuck = tmp_path / "stuck.py"
    stuck.write_text(
        "import sys, json, time, os\nfrom brimwork.classroom import reading\n"
        "for line in sys.stdin:\n    job = json.loads(line)\n"
        "    if job['name'] == '1.json': time.sleep(60)\n    if job['name'] == '2.json': os._exit(1)\n    print(json.dumps(reading.answer(job)), flush=True)\n"
    )
    begin = subprocess.Popen
    monkeypatch.setattr(intake.subprocess, "Popen", lambda line, **named: begin([line[0], str(stuck)], **named))
    monkeypatch.setattr(intake, "SECONDS", 2.0)
    marks = marking.mark(group, sets, intake.take_in(place))
    assert dict(marks.unread) == {"1.json": "reading it took longer than 2 seconds", "2.json": "the reader broke off at this file"}
    assert marks.of["A03"].source == "3.json"


def test_damaged_files_among_good_ones_stop_nothing(tmp_path):
    """A planted sample; `python tests/hostile_hand_ins.py 1000` is the whole."""
    assert hostile.campaign(60, tmp_path) == 0
