"""A save never undoes another: what one side changed is merged, what both changed is asked about, and nothing is written before."""

import os
import random
from pathlib import Path

import pytest

from brimwork.design.typed.file import dump_design, load_design, parse_design, save_design
from brimwork.design.typed.merging import Conflict, merged

BOWL = (Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml").read_text(encoding="utf-8")
BASE = parse_design(BOWL)


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "bowl.toml"
    path.write_text(BOWL, encoding="utf-8")
    return path


def test_what_only_one_side_changed_is_merged_and_comments_of_both_stay(path):
    path.write_text(BOWL.replace('power = "45 W"', 'power = "60 W" # a stronger one'), encoding="utf-8")
    mine = BASE.having("vessel.mass", "80 kg").having("prices.pump", "120 cur").having("pipe.length", None).headed("title", "Mine")
    written = save_design(mine, path, BASE)
    assert written == load_design(path) and "# a stronger one" in path.read_text(encoding="utf-8")
    assert (written["pump.power"], written["vessel.mass"], written["prices.pump"], written.title) == (
        60,
        80,
        120,
        "Mine",
    ) and "pipe.length" not in written.values


def test_the_same_clock_hides_no_change(path):
    times = path.stat()
    path.write_text(BOWL.replace('"45 W"', '"46 W"'), encoding="utf-8")
    os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
    assert save_design(BASE.having("vessel.mass", "80 kg"), path, BASE)["pump.power"] == 46


def test_what_both_changed_is_asked_about_with_both_shown_and_nothing_is_written(path):
    path.write_text(BOWL.replace('"45 W"', '"60 W"').replace('title = "Library bowl"', 'title = "Theirs"'), encoding="utf-8")
    mine, before = BASE.having("pump.power", "50 W", "measured").headed("title", "Mine").having("vessel.mass", "80 kg"), path.read_bytes()
    with pytest.raises(Conflict, match="title is Mine here and Theirs there; pump.power is 50 W .measured. here and 60 W there") as asked:
        save_design(mine, path, BASE)
    assert [one.key for one in asked.value.both] == ["title", "pump.power"] and path.read_bytes() == before
    decided, both = merged(BASE, mine, asked.value.file, {"title": True})
    assert [one.key for one in both] == ["pump.power"]
    decided, both = merged(BASE, mine, asked.value.file, {"title": True, "pump.power": False})
    written = save_design(decided, path, asked.value.file)
    assert both == ()
    assert (written.title, written["pump.power"], written["vessel.mass"]) == ("Mine", 60, 80)


def test_the_same_change_on_both_sides_is_no_question(path):
    path.write_text(BOWL.replace('"45 W"', '"60 W"'), encoding="utf-8")
    assert save_design(BASE.having("pump.power", "60 W"), path, BASE)["pump.power"] == 60


def test_a_value_taken_out_there_and_changed_here_is_asked_about(path):
    path.write_text(BOWL.replace('power = "45 W"\n', ""), encoding="utf-8")
    with pytest.raises(Conflict, match="pump.power is 50 W here and nothing there"):
        save_design(BASE.having("pump.power", "50 W"), path, BASE)


def test_another_kind_takes_along_what_it_has_a_place_for(path):
    path.write_text(BOWL.replace('"45 W"', '"60 W"'), encoding="utf-8")
    written = save_design(BASE.turned("cascade"), path, BASE)
    assert written.kind == "cascade" and written["pump.power"] == 60 and not any(key.startswith("vessel.") for key in written.values)


def test_no_order_of_many_savers_loses_a_value(path):
    """Views read at once; each changes values that no other changes, and saves in its turn."""
    keys = [key for key, given in BASE.values.items() if isinstance(given.text, str) and given.text.endswith(" mm")]
    for seed in range(6):
        draw = random.Random(seed)
        path.write_text(BOWL, encoding="utf-8")
        shuffled = draw.sample(keys, len(keys))
        saved = {}
        for key in shuffled:
            try:
                view = BASE.having(key, f"{draw.randint(100, 900)} mm")
            except ValueError:
                continue
            saved[key] = view[key]
            save_design(view, path, BASE)
        now = load_design(path)
        assert all(now[key] == value for key, value in saved.items()) and len(saved) > 10


def test_merging_is_the_same_from_both_sides_where_nobody_contradicts():
    draw, keys = random.Random(1), sorted(BASE.values)
    for _ in range(100):
        some = draw.sample(keys, 8)
        one, other = BASE, BASE
        for key in some[:4]:
            one = one.having(key, None)
        for key in some[4:]:
            other = other.having(key, None)
        here, there = merged(BASE, one, other), merged(BASE, other, one)
        assert here[1] == there[1] == () and parse_design(dump_design(here[0])) == parse_design(dump_design(there[0]))
        assert here[0].values.keys() == BASE.values.keys() - set(some)
