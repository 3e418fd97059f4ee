"""A Jupyter server extension: a workbook that is opened without its kernel shows words where its boxes and sliders were, not errors about them.

What a kernel made lives as long as the kernel; the file keeps only its name. While a kernel runs the workbook, nothing is changed.
"""

from __future__ import annotations

WIDGET = "application/vnd.jupyter.widget-view+json"


def _jupyter_server_extension_points() -> list[dict[str, str]]:
    return [{"module": "brimwork.notebook.reopened"}]


def _load_jupyter_server_extension(serverapp) -> None:
    from jupyter_core.utils import ensure_async

    contents, read = serverapp.contents_manager, serverapp.contents_manager.get

    async def get(path, *arguments, **named):
        model = await ensure_async(read(path, *arguments, **named))
        if model["type"] == "notebook" and model["content"]:
            sessions = await ensure_async(serverapp.session_manager.list_sessions())
            if path.strip("/") not in {session["path"].strip("/") for session in sessions}:
                say_instead(model["content"])
        return model

    contents.get = get


def say_instead(book: dict) -> None:
    """Take the names of widgets out of a notebook's outputs where words stand beside them."""
    for cell in book["cells"]:
        for output in cell.get("outputs", ()):
            if "text/plain" in output.get("data", ()):
                output["data"].pop(WIDGET, None)
