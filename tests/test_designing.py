"""The design workbook without a browser: another design file is not replaced before the user was asked."""

from pathlib import Path

from brimwork.design import inputs
from brimwork.notebook.designing import DesignView

DESIGNS = Path(__file__).parents[1] / "workbooks" / "designs"


def test_save_asks_before_it_replaces_another_file(tmp_path):
    for name in ("library-bowl", "quick-check"):
        (tmp_path / f"{name}.toml").write_bytes((DESIGNS / f"{name}.toml").read_bytes())
    view = DesignView(tmp_path / "library-bowl.toml")
    view.redraw = lambda: None  # nothing is displayed here
    view.file.value = str(tmp_path / "quick-check.toml")
    view.save()
    assert "press Save again" in view.told.value and inputs.load(tmp_path / "quick-check.toml").title == "Quick check"
    view.save()
    assert "Saved" in view.told.value and inputs.load(tmp_path / "quick-check.toml").title == "Library bowl"
    view.file.value = str(tmp_path / "library-bowl.toml")
    view.load()
    view.save()
    assert "Saved" in view.told.value, "its own file needs no question"
