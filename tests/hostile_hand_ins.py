"""Hand-ins as a stranger, a bad disk or a joker would make them: a name, the bytes, and the reason that must be given, or "" where it must still be marked.

Each that can carry code carries some that would leave the file `CANARY` behind. Run as a command it damages a thousand good files in ways of its own:
`python tests/hostile_hand_ins.py 1000`.
"""

import io
import json
import random
import stat
import sys
import zipfile

CANARY = "the-code-of-a-hand-in-ran"
_CODE = f"__import__('pathlib').Path('{CANARY}').write_text('x')"
_PICKLE = f"cos\nsystem\n(S'touch {CANARY}'\ntR.".encode()


def _answers(*entries, **head):
    return json.dumps({"format": 1, "hand_in": {"learner": "A01", **head}, "answers": [*entries]}).encode()


def entry(said="2.4 mm", question="T04.1", **more):
    return {"exercise": question, "seed": 1, "numbers": {}, "answer": said, "middle": "", "at": "", "kind": "right", **more}


def notebook(*sources, learner="A01", **more):
    cells = [{"cell_type": "code", "source": source, "metadata": {}, "outputs": []} for source in (f"learner: {learner}", *sources)]
    return json.dumps({"cells": cells, "metadata": {}, "nbformat": 4, "nbformat_minor": 5, **more}).encode()


def archive(members, links=(), method=zipfile.ZIP_DEFLATED):
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", method) as opened:
        for name, content in members:
            opened.writestr(name, content)
        for name, target in links:
            info = zipfile.ZipInfo(name)
            info.external_attr = (stat.S_IFLNK | 0o777) << 16
            opened.writestr(info, target)
    return made.getvalue()


def _locked():
    raw = bytearray(archive([("A01.json", _answers(entry()))]))
    for sign, place in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        raw[raw.index(sign) + place] |= 1
    return bytes(raw)


SAID = (  # what was typed for an answer: each must be read or refused in its turn, and none may be taken for right
    "9**9**9", "9" * 190, "1e999999999 mm", "1e-999999999", "nan mm", "inf mm", "-inf", "1_000 mm", "٢٫٤ mm", "２．４ mm", "0x10 mm", "1,250 mm", "((((((" * 30, "1" + "/1" * 90,
    _CODE, "os.system('x')", "=cmd|' /C calc'!A0", "+1+1", "@SUM(1)", "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "\u202emm 4.2", "\x1b[2J2.4 mm", "2.4 mm\x00",
    "' OR 1=1 --", "${7*7}", "{{7*7}}", "$(touch x)", "`x`", "a" * 200, "mm" * 100, "1e5 " * 50, "\ud800", "\ufeff2.4", "2.4 mm\r\n=1",
)  # fmt: skip

FILES = {
    "empty.json": (b"", "empty"),
    "blank.json": (b" \n\t ", "empty"),
    "zeros.json": (b"\0" * 5000, "empty"),
    "cut.json": (_answers(entry())[:60], "damaged"),
    "letters.json": (b"I did it all", "damaged"),
    "noise.json": (bytes(range(128, 256)) * 10, "no text"),
    "list.json": (b"[]", "neither"),
    "number.json": (b"5", "neither"),
    "nan.json": (b'{"format": 1, "answers": [NaN]}', "NaN"),
    "infinity.json": (b'{"answers": [-Infinity]}', "Infinity"),
    "long-number.json": (b'{"answers": [' + b"9" * 100_000 + b"]}", "number"),
    "deep-list.json": (b"[" * 200_000, "nested"),
    "deep-object.json": (b'{"a":' * 100_000, "nested"),
    "deep-whole.json": (b'{"answers": ' + b"[" * 5000 + b"]" * 5000 + b"}", "nested"),
    "many-objects.json": (b'{"answers": [' + b"{}," * 1_500_000 + b"{}]}", "no answer"),
    "too-large.json": (b" " * 6_000_000, "larger than 5 MB"),
    "no-answers.json": (b'{"answers": []}', "no answer"),
    "wrong-kinds.json": (b'{"answers": [1, null, "x", [], {"exercise": 5, "answer": {}}]}', "no answer"),
    "code-A02.py": (f"{_CODE}\n".encode(), "damaged"),
    "A02.pickle": (_PICKLE, "damaged"),
    "A02.pdf": (b"%PDF-1.7\n", "picture or a PDF"),
    "A02.png": (b"\x89PNG\r\n", "picture or a PDF"),
    "notebook-empty.ipynb": (notebook("print(1)"), "no answer line"),
    "notebook-cells.ipynb": (b'{"cells": [1, null, {"source": 5}, {"source": [1, {}]}]}', "no answer line"),
    "stranger.json": (_answers(entry(), learner="Z99"), "no learner 'Z99'"),
    "nobody.json": (b'{"answers": [' + json.dumps(entry()).encode() + b"]}", "does not say whose"),
    "table.csv": (b"a,b\n1,2\n", "without the columns"),
    "table-null.csv": (b"code,question,said\n\0\0", "table"),
    "table-empty.csv": (b"code,question,said\nA01,T04.1,\n", "no answer stands yet"),
    "A01-design.toml": (b"format = 1\n", "no brief"),
    "locked.zip": (_locked(), "password"),
    "broken.zip": (archive([("a.json", b"x" * 100)])[:-30], "damaged archive"),
    "no-archive.zip": (b"PK\x03\x04" + b"\0" * 50, "damaged archive"),
    "bomb.zip": (archive([("bomb.json", b" " * 60_000_000)]), "larger than 5 MB"),
    "nested.zip": (archive([("inner.zip", archive([("a", b"a")]))]), "archive inside"),
    "linked.zip": (archive([], [("A01.json", "/etc/passwd")]), "link"),
    "nothing.zip": (archive([]), "without a file"),
    "escape.zip": (archive([("../../outside-A0", b"{"), ("/abs", b"{"), ("C:\\x", b"{")]), "damaged"),
    "A03-many-cells.ipynb": (json.dumps({"cells": [{"source": f"answer T04.1: {place} mm"} for place in range(5000)]}).encode(), ""),
    "A04-outputs.ipynb": (notebook("answer T04.1: 2 mm", learner="A04", metadata={"x": "y" * 3_000_000}), ""),
    "A05-code.ipynb": (notebook(f"answer T04.1: {_CODE}\n{_CODE}", learner="A05"), ""),
    "A06-hidden.json": (_answers(entry("\u202e2.4 mm\u202c"), learner="a06 "), ""),
    "A07-names.json": (_answers(entry(question="x" * 500), entry(), learner="A07"), ""),
    "A08 (copy) (2).json.txt": (_answers(entry(), learner=""), ""),
    "A09-million.json": (_answers(*[entry(str(number)) for number in range(20_000)], learner="A09"), ""),
    "A10-no-keys.json": (b'{"answers": [{"exercise": "T04.1", "answer": "2 mm"}]}', ""),
    "A11-bool.json": (_answers(entry(seed=True, numbers=[1], at=5, middle=None, kind={}), learner="A11"), ""),
    "A12-path.json": (_answers(entry(), learner="../../A12"), ""),
    "A13-formula.csv": (b"code,question,said,on the way\nA13,T04.1,=1+1,'=2\nA13,T04.2,'-5 mm,\n", ""),
    "A14-utf16.csv": ("code;question;said\nA14;T04.1;2 mm\n".encode("cp1252"), ""),
}  # fmt: skip


def plant(folder):
    """Write the corpus, with links, pipes, odd names and folders, into `folder`."""
    import os

    for name, (content, _) in FILES.items():
        (folder / name).write_bytes(content)
    (folder / "A15-said.json").write_bytes(json.dumps({"hand_in": {"learner": "A15"}, "answers": [entry(said) for said in SAID]}).encode())
    deep = folder.joinpath(*["down"] * 25)
    deep.mkdir(parents=True)
    (deep / "A16.json").write_bytes(_answers(entry()))
    (folder / "é‮ A17 <b>&.json").write_bytes(_answers(entry(), learner="A17"))
    if os.name == "posix":
        (folder / "link.json").symlink_to("/etc/passwd")
        (folder / "loop").symlink_to(folder, target_is_directory=True)
        os.mkfifo(folder / "pipe.json")
        (folder / "closed.json").write_bytes(b"{}")


def damaged(raw, draw):
    """A good file with one thing broken, of many kinds; never so that it could still be read."""
    kind = draw.randrange(9)
    place = draw.randrange(20, len(raw) - 20)
    if kind == 0:
        return raw[:place]
    if kind == 1:
        return raw[:place] + b"\xff\xfe\x80" + raw[place:]
    if kind == 2:
        return raw.replace(b'"answers"', b'"answer%d"' % draw.randrange(10**6))
    if kind == 3:
        return raw.replace(b":", b"=", 1 + draw.randrange(4))
    if kind == 4:
        return draw.randbytes(draw.randrange(50, 3000))
    if kind == 5:
        return b"[" * draw.randrange(3000, 90_000)
    if kind == 6:
        return raw[: raw.rindex(b"]")] + b", NaN]}" + b" " * draw.randrange(50)
    if kind == 7:
        return b"PK\x03\x04" + draw.randbytes(draw.randrange(30, 400))
    return raw[::-1]


def campaign(count, folder):
    """Damage `count` files among as many good ones, mark all, and count what was lost: prints a line, and returns how many things went wrong."""
    import time

    import simulated_class

    from brimwork.classroom import classfile, intake, marking, numbers

    (folder / "c.toml").write_text('format = 1\ntitle = "t"\n[questions]\n"T04.1" = 1\n"T05.1" = 1\n')
    (folder / "roster.csv").write_text("code,name\n" + "".join(f"A{i:02d},x\n" for i in range(30)))
    group = classfile.load_class(folder / "c.toml")
    sets = numbers.draw(group, numbers.secret_of(folder, make=True))
    place, draw, reasons = folder / "in", random.Random(7), {}
    place.mkdir()
    for learner in group.learners:
        (place / f"good-{learner.code}.json").write_bytes(simulated_class.whole(group, sets, learner.code, slips={}))
    for number in range(count):
        raw = simulated_class.whole(group, sets, group.learners[number % 30].code, seed=number)
        (place / f"bad-{number:05d}.json").write_bytes(damaged(raw, draw))
    begun = time.monotonic()
    marks = marking.mark(group, sets, intake.take_in(place))
    took = time.monotonic() - begun
    for _, reason in marks.unread:
        reasons[reason.partition(":")[0].partition("(")[0]] = reasons.get(reason.partition(":")[0].partition("(")[0], 0) + 1
    listed = {name for name, _ in marks.unread}
    lost = sum(f"bad-{number:05d}.json" not in listed for number in range(count))
    unmarked = sum(one.points != 2 for one in marks.of.values())
    print(f"{count} damaged among 30 good: {len(listed)} listed with a reason, {lost} not listed, {unmarked} good ones not marked in full, {took:.1f} s")
    print("\n".join(f"  {times:5d} {reason}" for reason, times in sorted(reasons.items(), key=lambda one: -one[1])))
    return lost + unmarked


if __name__ == "__main__":
    import tempfile
    from pathlib import Path

    with tempfile.TemporaryDirectory() as where:
        sys.exit(bool(campaign(int((sys.argv[1:] or ["1000"])[0]), Path(where))))
