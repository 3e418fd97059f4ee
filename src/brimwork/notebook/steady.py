"""No single key destroys a workbook: our server offers JupyterLab's keys for moving about and running, not those that delete, cut, move, merge or retype cells.

The commands stay in the menus, and a user's own shortcuts count as ever.
"""

from __future__ import annotations

# Commands of JupyterLab that change the cells of a workbook, as its schemas name them.
RISKY = (
    "notebook:cut-cell", "notebook:copy-cell", "notebook:paste-cell-below", "notebook:delete-cell", "notebook:undo-cell-action", "notebook:redo-cell-action",
    "notebook:change-cell-to-", "notebook:insert-", "notebook:merge-", "notebook:move-cell-", "notebook:split-cell-at-cursor", "kernelmenu:restart",
    "notebook:restart", "notebook:run-cell-and-insert-below", "notebook:enable-output-scrolling", "notebook:disable-output-scrolling", "kernelmenu:interrupt",
)  # fmt: skip


def without_risky_keys(schema: dict) -> dict:
    """A settings schema of JupyterLab without the keyboard shortcuts of risky commands in workbooks."""
    shortcuts = schema.get("jupyter.lab.shortcuts")
    if shortcuts:
        schema["jupyter.lab.shortcuts"] = [one for one in shortcuts if not _risky(one)]
    return schema


def _risky(shortcut: dict) -> bool:
    return "jp-Notebook" in shortcut.get("selector", "") and shortcut.get("command", "").startswith(RISKY)


def put_steady_on() -> None:
    """Have the settings that Jupyter servers of this process give leave such keys out."""
    from jupyterlab_server import settings_utils

    schema_of = settings_utils._get_schema

    def steady(*arguments, **named):
        schema, version = schema_of(*arguments, **named)
        return without_risky_keys(schema), version

    settings_utils._get_schema = steady
