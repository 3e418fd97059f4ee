"""The keys that destroy cells are not among those that our server offers; the others are."""

import json
from pathlib import Path

import jupyterlab

from brimwork.notebook.steady import RISKY, without_risky_keys

SCHEMA = Path(jupyterlab.__file__).parent / "schemas" / "@jupyterlab" / "notebook-extension" / "tracker.json"
SCHEMAS = (
    SCHEMA if SCHEMA.exists() else next(Path(jupyterlab.__file__).parents[4].glob("share/jupyter/lab/schemas/@jupyterlab/notebook-extension/tracker.json"))
)


def test_single_keys_of_a_workbook_only_move_about_and_run():
    before = json.loads(SCHEMAS.read_text())
    keys = {
        tuple(one["keys"]): one["command"]
        for one in without_risky_keys(json.loads(SCHEMAS.read_text()))["jupyter.lab.shortcuts"]
        if "jp-Notebook" in one["selector"]
    }
    single = {key[0]: command for key, command in keys.items() if len(key) == 1 and len(key[0]) == 1}
    assert set(single) <= {"J", "K", "O"}, f"letters that are left: {single}"
    assert ("D", "D") not in keys and ("Enter",) in keys and ("Shift Enter",) in keys
    gone = {one["command"] for one in before["jupyter.lab.shortcuts"]} - set(keys.values())
    assert all(any(command.startswith(risky) for risky in RISKY) for command in gone if command.startswith("notebook:") and "cell" in command)
