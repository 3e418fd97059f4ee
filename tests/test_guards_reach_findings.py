"""What a procedure of a topic refuses, or says about its law, stands in a finding of the design; numbers by hand, in the test."""

from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.typed.file import load_design
from brimwork.units import InputError

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
BOWL, COLUMNS, BLADE = (load_design(DESIGNS / f"{name}.toml") for name in ("library-bowl", "school-columns", "terrace-blade"))


def note(design, check: str) -> str:
    return next(one.note for one in findings(chain_of(design)) if one.id == check and one.grade != "does not apply")


def test_the_days_without_topping_up_say_for_how_many_blocks_the_bed_has_room():
    """3 m less twice 600 + 10 + 8 mm leaves 1764 mm, and 2.5 m leaves 1264: of 600 x 400 mm 2 x 3 one way, and 4 x 2 turned."""
    bed = BOWL.having("site.bed_length", "3 m").having("site.bed_width", "2.5 m")
    assert "room for 8 blocks, 4 x 2 turned (2 x 3 the other way)" in note(bed, "C12")
    assert note(BOWL, "C12") == ""  # nobody said how large the bed is
    assert note(bed.having("site.bed_width", "1.4 m"), "C12") == ""


def test_a_hole_says_by_which_law_the_water_stands_over_it():
    """3.4034 gpm out of 2.5 in: (3.4034/(6.17 x 2.5^1.25))^(1/1.35) = 0.2755 in, under 0.37 x 2.5; out of 1.25 in 0.52 and 0.21 in, between the two laws."""
    assert "over the hole the water stands 0.276 in (7.00 mm) by the law of a rim" in note(COLUMNS.having("stones.hole", "2.5 in"), "C06")
    assert "between 0.37 and 1.4 bores neither that of a rim nor that of a jet holds" in note(COLUMNS, "C06")


def test_a_blade_says_what_the_table_gives_for_a_thin_edge():
    """4.6686 L/s over a metre, 0.2 m deep trough as wide as the lip: C_d = 0.602 + 0.075 H/P with H = 19.6 mm is 0.6094; (q/(2/3 x 0.6094 x 4.4287))^(2/3) = 18.9 mm."""
    assert "over a thin edge the water would stand 18.9 mm high, by Kindsvater and Carter; 19.6 mm is counted" in note(BLADE, "C79")
    narrow = BLADE.having("blade.trough_length", "6 m")
    assert "0.2 to 1" in note(narrow, "C79")


def test_fittings_may_be_named_in_place_of_their_sum():
    """EPANET's manual: square entrance 0.5, short elbow 0.9, exit 1; this kit's table: ball valve 0.1; tee straight through 0.6."""
    assert BOWL.having("pipe.fittings", "square entrance + 2 short elbow + exit")["pipe.fittings"] == pytest.approx(0.5 + 2 * 0.9 + 1.0)
    assert BOWL.having("pipe.fittings", "tee, straight through + 2 x ball valve, open")["pipe.fittings"] == pytest.approx(0.8)
    assert COLUMNS.having("stones.branch_fittings", "3 short elbows + exit")["stones.branch_fittings"] == pytest.approx(3.7)
    with pytest.raises(InputError, match="Nearest: .*short elbow"):
        BOWL.having("pipe.fittings", "2 elbo + exit")


def test_the_loss_of_a_branch_is_continuous_as_its_hole_becomes_as_wide_as_its_hose():
    """Of a hole as wide as the hose the friction counts: 30 in more of the same hose, which with 5 ft of it is half as much friction again."""
    lost = {hole: chain_of(COLUMNS.having("stones.hole", hole)).branch_losses[0] for hole in ("0.7499 in", "0.75 in", "0.7501 in", "1.25 in")}
    assert lost["0.7499 in"] == pytest.approx(lost["0.75 in"], rel=1e-3) and lost["0.7501 in"] == pytest.approx(lost["0.75 in"], rel=1e-3)
    longer = COLUMNS.having("stones.branch_lengths", ["7.5 ft", "6 ft", "7.5 ft"])
    assert lost["0.75 in"] == pytest.approx(chain_of(longer).branch_losses[0], rel=1e-9)  # in 1.25 in hole the widening gives back more than the friction
    assert lost["1.25 in"] < lost["0.75 in"]
