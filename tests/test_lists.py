"""The lists of a design as CSV: what is printed, ready to be bought from; the programme and the sums as they are in the pack."""

import csv
import io
from pathlib import Path

import pytest

from brimwork.cli import main
from brimwork.design.done.cost import CostSheet
from brimwork.design.done.quantities import quantities
from brimwork.design.follows.features import chain_of
from brimwork.design.typed import file
from brimwork.pack.lists import LISTS, lists
from brimwork.units import InputError

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"
NAMES = ("library-bowl", "school-columns", "terrace-blade", "garden-cascade")


def read(content):
    return list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"))))


@pytest.mark.parametrize("name", NAMES)
def test_every_line_of_the_list_is_in_the_table_and_everything_bought_has_its_stage(name):
    chain = chain_of(file.load_design(DESIGNS / f"{name}.toml"))
    rows, found = read(lists(chain)["shopping.csv"]), quantities(chain)
    assert [row["item"] for row in rows] == [line.item for line in found]
    assert [row["item"] for row, line in zip(rows, found, strict=True) if line.key not in ("", "delivery") and not row["first used at"]] == []


def test_the_cost_in_the_table_is_that_of_the_sheet_to_the_last_hundredth():
    """By hand in test_buying: total 9167.92."""
    chain = chain_of(file.load_design(DESIGNS / "library-bowl.toml"))
    rows = read(lists(chain)["cost.csv"])
    assert float(next(row["cost"] for row in rows if row["item"] == "total")) == pytest.approx(9167.92)
    assert sum(float(row["cost"]) for row in rows[: len(CostSheet(chain).priced)]) == pytest.approx(2667.05)


def test_an_enquiry_leaves_blanks_for_what_a_supplier_offers():
    rows = read(lists(chain_of(file.load_design(DESIGNS / "school-columns.toml")))["enquiry.csv"])
    assert rows and all(row["price of one"] == "" and row["supplier"] == "" and row["quantity"] for row in rows)
    assert any(row["needed on site"] for row in rows)


def test_lists_are_written_once_and_never_over_something(tmp_path, capsys):
    path = DESIGNS / "library-bowl.toml"
    assert main(["pack", str(path), "--to", str(tmp_path / "a.pdf"), "--lists", str(tmp_path / "lists")]) == 1, "a check of this bowl fails"
    assert sorted(part.name for part in (tmp_path / "lists").iterdir()) == sorted(LISTS)
    assert main(["pack", str(path), "--to", str(tmp_path / "b.pdf"), "--lists", str(tmp_path / "lists")]) == 2
    assert "is there already" in capsys.readouterr().err and not (tmp_path / "b.pdf").exists()


def test_a_design_without_a_programme_says_so_in_place_of_lists():
    with pytest.raises(InputError):
        lists(chain_of(file.load_design(DESIGNS / "library-bowl.toml").having("costing.margin", 1)))
