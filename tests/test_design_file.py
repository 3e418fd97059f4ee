"""The design file: bad input is told in plain words, comments survive, a killed program leaves the old file or the new one."""

import dataclasses
import os
import signal
import subprocess
import sys
import time
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from brimwork import files
from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.judged.findings import FINDING_GRADES
from brimwork.design.typed import file
from brimwork.design.typed.fields import SECTIONS, sections
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.reading import Field, Several
from brimwork.design.typed.renamed import RENAMED
from brimwork.expression import DeclarationError
from brimwork.units import InputError

BOWL = (Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (("void_fraction = 0.95", "void_fraction = 1.2"), "over 1"),
        (("rim_diameter", "rim_diametre"), "Nearest: rim_diameter"),
        (("[pump]", "[pmp]"), "Nearest: pump"),
        (('"780 mm"', '"780 kg"'), "is a mass, but a length is wanted"),
        (('height = "420 mm"', "height = 420"), 'write vessel.height = "420 mm"'),
        (('"2.4 m"', '"nan m"'), "not a number that can be used"),
        (('"2.4 m"', '"-2.4 m"'), "cannot be below zero"),
        (('maximum_flow = "60 L/min"', 'maximum_flow = "16 gal/min"'), "US or imperial"),
        (("format = 1", "format = 2"), "this edition reads format = 1"),
        (("format = 1", ""), "write 'format = 1'"),
        (('kind = "overflowing vessel"', ""), "'kind' is missing"),
        (('region = "UK"', 'region = "FR"'), "write one of 'UK', 'US'"),
        (('basis = "read"', 'basis = "rumour"'), "basis 'rumour' is not known"),
        (('check_valve = "no"', 'check_valve = "maybe"'), "write one of 'yes', 'no'"),
        (('rolls = ["2 m"', 'rolls = ["2 kg"'), "is a mass, but a length is wanted"),
        (("[site]", "colour = 3\n[site]"), "there is no key 'colour'"),
        (("[site]", "[site"), "this is not TOML"),
    ],
)
def test_bad_input_says_what_was_given_and_what_to_write(change, told):
    assert change[0] in BOWL
    with pytest.raises(InputError, match=told.replace("[", r"\[")):
        file.parse_design(BOWL.replace(*change, 1))


def test_an_unreadable_file_is_named(tmp_path):
    for name, content in (("absent.toml", None), ("binary.toml", b"\xff\xfe\x00"), ("folder.toml", "folder")):
        path = tmp_path / name
        path.mkdir() if content == "folder" else path.write_bytes(content) if content else None
        with pytest.raises(InputError, match=name):
            file.load_design(path)


def test_a_design_with_nothing_but_a_kind_loads_and_says_what_every_check_needs():
    bare = file.parse_design('format = 1\nkind = "overflowing vessel"')
    found = checks.findings(chain_of(bare))
    assert {finding.grade for finding in found} == {"not shown", "does not apply"}
    assert all(finding.value.startswith("needs ") and finding.needs for finding in found if finding.grade == "not shown")


def test_saving_keeps_comments_order_and_everything_that_was_not_changed(tmp_path):
    path = tmp_path / "bowl.toml"
    path.write_text(BOWL.replace("[pump]", "[pump] # bought second-hand"), encoding="utf-8")
    file.save_design(file.load_design(path).having("pump.power", "50 W", "measured"), path)
    text = path.read_text(encoding="utf-8")
    assert "# bought second-hand" in text and 'power = {value = "50 W", basis = "measured"}' in text
    before, after = BOWL.splitlines(), [line.replace(" # bought second-hand", "") for line in text.splitlines()]
    assert [b for a, b in zip(after, before, strict=True) if a != b] == ['power = "45 W"']


def test_a_value_taken_out_is_unknown_and_the_checks_that_need_it_are_not_shown():
    design = file.parse_design(BOWL).having("pump.power", None)
    grades = {finding.id: finding.grade for finding in checks.findings(chain_of(design))}
    assert grades["C03"] == "not shown" and grades["C42"] == "not shown" and grades["C01"] == "pass"
    assert "power" not in file.dump_design(design, BOWL).split("[pump]")[1].split("[")[0]


_KEYS = [(f"{section}.{key}", field) for section, fields in SECTIONS.items() for key, field in fields.items() if isinstance(field, Field)]


@settings(max_examples=150)
@given(st.lists(st.tuples(st.sampled_from(_KEYS), st.floats(0, 1e6) | st.none()), min_size=1, max_size=6))
def test_no_value_makes_the_chain_crash_or_say_nan(changes):
    design = file.parse_design(BOWL)
    for (key, field), value in changes:
        try:
            design = design.having(key, None if value is None else f"{value:.6g} {field.unit}".strip())
        except InputError:
            continue
    for finding in checks.findings(chain_of(design)):
        assert finding.grade in FINDING_GRADES and "nan" not in finding.value.lower().split()


@given(st.integers(0, 2**32))
@settings(max_examples=30)
def test_what_is_written_is_read_back_the_same(seed):
    import random

    design = file.parse_design(BOWL)
    for key in random.Random(seed).sample(sorted(design.values), 12):
        design = design.having(key, None)
    assert file.parse_design(file.dump_design(design)) == design
    assert file.parse_design(file.dump_design(design, BOWL)) == design


@given(st.text(st.characters(exclude_categories=["Cs"])), st.text(st.characters(exclude_categories=["Cs"])))
@settings(max_examples=100)
def test_any_text_is_written_as_toml_that_another_reader_reads_the_same(title, note):
    """Python's own tomllib; a new file and one whose comments are kept say the same."""
    design = dataclasses.replace(file.parse_design(BOWL), title=title, note=note)
    afresh, kept = (tomllib.loads(written) for written in (file.dump_design(design), file.dump_design(design, BOWL)))
    assert all((read.get("title", ""), read.get("note", "")) == (title, note) for read in (afresh, kept))
    assert afresh["vessel"] == kept["vessel"]


SAVER = """
import sys
from brimwork.design.typed import file
path = sys.argv[1]
design = file.load_design(path)
print("ready", flush=True)
for n in range(100000):
    file.save_design(design.having("pump.power", f"{45 + n % 50} W"), path)
"""


@pytest.mark.skipif(os.name != "posix", reason="needs signals")
def test_a_program_killed_while_saving_leaves_a_whole_file(tmp_path):
    path = tmp_path / "bowl.toml"
    path.write_text(BOWL, encoding="utf-8")
    for wait in (0.03, 0.08, 0.13, 0.21, 0.34):
        process = subprocess.Popen([sys.executable, "-c", SAVER, str(path)], stdout=subprocess.PIPE, text=True)
        assert process.stdout.readline() == "ready\n"
        time.sleep(wait)
        process.send_signal(signal.SIGKILL)
        process.wait()
        process.stdout.close()
        power = file.load_design(path)["pump.power"]
        assert 45 <= power < 95
    assert len(file.load_design(path).values) == len(file.parse_design(BOWL).values)


def test_a_folder_that_refuses_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "bowl.toml"
    path.write_text(BOWL, encoding="utf-8")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files.os, "fsync", full)
    with pytest.raises(InputError, match="your old file is as it was"):
        file.save_design(file.load_design(path).having("pump.power", "50 W"), path)
    assert path.read_text(encoding="utf-8") == BOWL
    assert [p.name for p in tmp_path.iterdir()] == ["bowl.toml"]


def test_a_file_that_is_something_else_is_never_written_over(tmp_path):
    design = file.parse_design(BOWL)
    for name, content in (("notes.txt", b"remember the milk"), ("picture.png", b"\x89PNG\xff\xfe")):
        (tmp_path / name).write_bytes(content)
        with pytest.raises(InputError, match="save under another name"):
            file.save_design(design, tmp_path / name)
        assert (tmp_path / name).read_bytes() == content
    deep = 'format = 1\nkind = "blade"\n[lining]\nrolls = ' + "[" * 3000 + "]" * 3000
    with pytest.raises(InputError):
        file.parse_design(deep)


def test_a_file_from_an_editor_that_marks_its_encoding_is_read(tmp_path):
    (tmp_path / "bowl.toml").write_text("\ufeff" + BOWL, encoding="utf-8")
    assert file.load_design(tmp_path / "bowl.toml").title == "Library bowl"


@pytest.mark.parametrize(
    ("title", "told"),
    (
        ("", "must be words"),
        ("  ", "must be words"),
        ("bell\\u0001", r"U\+0001 after 'bell'"),
        ("a\tb", "a tab after 'a'"),
        ("\\nb", "a line break at its beginning"),
    ),
)
def test_a_title_must_be_words_that_can_be_printed_and_what_is_in_the_way_is_named(title, told):
    with pytest.raises(InputError, match=told):
        file.parse_design(BOWL.replace('title = "Library bowl"', f'title = "{title}"'))


def test_a_space_that_does_not_break_is_a_space():
    """A browser and a word processor put them in unasked."""
    for space in "\u00a0\u202f\u2009":
        title = f"Bowl{space}by the door"
        design = file.parse_design(BOWL).headed("title", title)
        assert file.parse_design(file.dump_design(design)).title == title


@pytest.mark.parametrize(
    ("text", "told"),
    (
        (BOWL + "\n[supply]\n", "a key or a section stands in it twice: Cannot declare"),
        (BOWL.replace("format = 1", "format = 1\nformat = 1"), "a key or a section stands in it twice: Cannot overwrite a value"),
        (
            'format = 1\nkind = "blade"\n[reservoir]\nvoid_fraction = nan',
            r"void_fraction = nan is not a number that can be used: write reservoir.void_fraction = 0.95",
        ),
        ('format = 1\nkind = "blade"\n[flow]\nwater_temperature = inf', r'inf is not a number that can be used: write flow.water_temperature = "'),
        ('format = 1\nkind = "blade"\n[reservoir]\nvoid_fraction = true', "void_fraction = true is not a quantity"),
        ('format = 1\nkind = "blade"\n[reservoir]\nvoid_fraction = [1, "a"]', r'void_fraction = \[1, "a"\] is not a quantity'),
        ('format = 1\nkind = "blade"\n[reservoir]\nvoid_fraction = {a = 1}', "void_fraction has the key a: write"),
        ('format = 1\nkind = "blade"\n[site]\nuse = 2027-03-01', "site.use = 2027-03-01 is none of the words"),
        (BOWL.replace("[vessel]", "[[vessel]]"), r"\[vessel\] stands once in a design"),
        ("format = 1\nkind = {a = 1}", r"kind = \{a = 1\} is not known"),
    ),
)
def test_a_file_is_told_of_in_its_own_words(text, told):
    """As TOML writes it, with what to type; nothing of how a program writes it."""
    with pytest.raises(InputError, match=told):
        file.parse_design(text)


def test_a_file_in_another_code_says_how_to_save_it(tmp_path):
    for code in ("utf-16", "latin-1"):
        (tmp_path / "bowl.toml").write_bytes(BOWL.replace("Library", "Bücherei").encode(code))
        with pytest.raises(InputError, match="save it again with the encoding UTF-8"):
            file.load_design(tmp_path / "bowl.toml")


def typed_as(key, text):
    """A size, or a list with that size in it."""
    section, _, name = key.partition(".")
    return ["500 mm", text] if isinstance(SECTIONS[section][name], Several) else text


def test_the_size_of_a_thing_that_is_there_is_never_nothing():
    sizes = [f"{section}.{key}" for section, fields in SECTIONS.items() for key, one in fields.items() if getattr(one, "size", False)]
    assert {
        "cascade.width",
        "slab.thickness",
        "reservoir.block_height",
        "pipe.bore",
        "site.bed_length",
        "stones.diameters",
        "stones.branch_bore",
        "lining.rolls",
    } <= set(sizes)
    for key in sizes:
        section, _, name = key.partition(".")
        for text in ("0 mm", "0.0001 mm"):
            with pytest.raises(InputError, match="is smaller than the .* of anything can be"):
                SECTIONS[section][name].read(typed_as(key, text), key)
        assert SECTIONS[section][name].read(typed_as(key, "1 mm"), key) in (0.001, (0.5, 0.001))


def test_what_is_far_too_large_is_told_in_the_units_of_the_reader():
    tread = SECTIONS["cascade"]["tread"]
    for region, text, told in (("UK", "200 m", "over 100000 mm"), ("US", "700 ft", "over 3940 in")):  # 100 m by 39.37 in to the metre
        with pytest.raises(InputError, match=told):
            tread.read(text, "cascade.tread", region)


def test_counts_are_whole():
    for key, bad in (("reservoir.blocks_along", "0"), ("reservoir.blocks_along", "1.5"), ("reservoir.blocks_along", "1000"), ("site.sling_legs", "2.4")):
        with pytest.raises(InputError, match="whole number|over 50|over 4"):
            file.parse_design(BOWL).having(key, bad)


def test_a_field_in_a_unit_without_a_bound_is_refused_where_it_is_declared():
    with pytest.raises(DeclarationError, match="shown in s\\^-1: give that unit a row in _FAR"):
        Field("how often a lamp flickers", "s^-1")


def test_an_old_key_is_read_told_and_saved_under_its_new_name(tmp_path):
    old = BOWL.replace("[overflow_pipe]\n", '[overflow_pipe]\nfeed = "12 L/min"\n')
    path = tmp_path / "old.toml"
    path.write_text(old, encoding="utf-8")
    design = file.load_design(path)
    assert design["overflow_pipe.stuck_flow"] == pytest.approx(12e-3 / 60) and design.renamed == ("overflow_pipe.feed",)
    told = [one for one in checks.findings(chain_of(design)) if one.id == "C98"]
    assert len(told) == 1 and "overflow_pipe.feed in the file is overflow_pipe.stuck_flow now" in told[0].value
    assert path.read_text(encoding="utf-8") == old, "reading repairs nothing"
    saved = file.save_design(design, path)
    assert not saved.renamed and "stuck_flow" in path.read_text(encoding="utf-8") and "feed =" not in path.read_text(encoding="utf-8")


def test_a_key_that_is_asked_for_no_more_is_read_told_and_leaves_with_the_next_save(tmp_path):
    old = BOWL.replace("[buying]", '[buying]\nslab_bed = "20 mm"')
    path = tmp_path / "old.toml"
    path.write_text(old, encoding="utf-8")
    design = file.load_design(path)
    told = [one for one in checks.findings(chain_of(design)) if one.id == "C98"]
    assert len(told) == 1 and told[0].title == "Asked for no more: buying.slab_bed" and path.read_text(encoding="utf-8") == old
    file.save_design(design, path)
    assert "slab_bed" not in path.read_text(encoding="utf-8") and not file.load_design(path).renamed


def test_a_file_with_the_old_and_the_new_name_of_a_key_is_refused():
    text = BOWL.replace("[overflow_pipe]\n", '[overflow_pipe]\nfeed = "12 L/min"\nstuck_flow = "9 L/min"\n')
    with pytest.raises(InputError, match="the file has both: take one of them out"):
        file.parse_design(text)


@pytest.mark.parametrize(("old", "now"), RENAMED.items())
def test_every_key_that_was_called_otherwise_is_read_as_it_was(old, now):
    """A value that any file may hold under the old name gives the same number, word or price as under the new one."""
    section, _, key = old.partition(".")
    known = SECTIONS[section][now.partition(".")[2]]
    assert key not in SECTIONS[section], "the old name is free"
    value = getattr(known, "such", "") or getattr(known, "usual", "") or known.options[0]
    kind = next(kind for kind in KINDS if now.partition(".")[2] in sections(kind).get(section, ()))
    design = file.parse_design(f'format = 1\nkind = "{kind}"\ntitle = "an old one"\n[{section}]\n{key} = "{value}"\n')
    assert design[now] == known.read(value, now) and design.renamed == (old,)


def test_whoever_writes_an_old_key_in_python_is_told_the_new_one():
    with pytest.raises(InputError, match="vessel.rim_error is called vessel.rim_out_of_level now"):
        file.parse_design(BOWL).having("vessel.rim_error", "1 mm")
