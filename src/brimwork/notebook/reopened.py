"""A workbook that is opened is a document. Words stand where its boxes and sliders were, until somebody runs it.

What a kernel made lives as long as the kernel; a file may keep it, as saved widget state, and that state may carry script, which a page runs when
the workbook is merely opened. So state leaves the server only if it was saved here, from a kernel that ran here. A save puts back into the file what
was kept from the page.
"""

from __future__ import annotations

import hashlib
import hmac
import json
from contextvars import ContextVar

WIDGET, STATE = "application/vnd.jupyter.widget-view+json", "application/vnd.jupyter.widget-state+json"
_whole = ContextVar("whole", default=False)  # while the server copies a file for itself


def put_reopened_on(serverapp) -> None:
    """Have a Jupyter server open workbooks so."""
    from jupyter_core.utils import ensure_async

    contents, read, write, copied = serverapp.contents_manager, serverapp.contents_manager.get, serverapp.contents_manager.save, serverapp.contents_manager.copy

    async def alive(path: str) -> bool:
        sessions = await ensure_async(serverapp.session_manager.list_sessions())
        return path.strip("/") in {session["path"].strip("/") for session in sessions}

    async def get(path, *arguments, **named):
        model = await ensure_async(read(path, *arguments, **named))
        if model["type"] == "notebook" and model["content"] and not _whole.get():
            if not _signed(contents.notary, _state(model["content"])):
                _metadata(model["content"]).pop("widgets", None)
            if not await alive(path):
                say_instead(model["content"])
        return model

    async def save(model, path="", *arguments, **named):
        if model.get("type") == "notebook" and isinstance(model.get("content"), dict) and not _whole.get():
            before, ours = await on_disk(path), _state(model["content"])
            theirs = _state(before) if before else {}
            if before:
                put_back(model["content"], before)
            if ours and await alive(path) and (not theirs or _signed(contents.notary, theirs)):
                _sign(contents.notary, _state(model["content"]))
        return await ensure_async(write(model, path, *arguments, **named))

    async def on_disk(path: str) -> dict | None:
        try:
            return (await ensure_async(read(path, type="notebook")))["content"]
        except Exception:  # not there, or no notebook: nothing to put back
            return None

    async def copy(*arguments, **named):
        token = _whole.set(True)
        try:
            return await ensure_async(copied(*arguments, **named))
        finally:
            _whole.reset(token)

    contents.get, contents.save, contents.copy = get, save, copy


def _metadata(book: dict) -> dict:
    found = book.get("metadata")
    return found if isinstance(found, dict) else {}


def _state(book: dict) -> dict:
    found = _metadata(book).get("widgets")
    return found if isinstance(found, dict) else {}


def _digest(notary, state: dict) -> str:
    text = json.dumps(["widget state", state], sort_keys=True)
    return hmac.new(notary.secret, text.encode(), hashlib.sha256).hexdigest()


def _signed(notary, state: dict) -> bool:
    return bool(state) and notary.store.check_signature(_digest(notary, state), notary.algorithm)


def _sign(notary, state: dict) -> None:
    notary.store.store_signature(_digest(notary, state), notary.algorithm)


def _outputs(cell: dict) -> list[dict]:
    return [output for output in cell.get("outputs", ()) if isinstance(output.get("data"), dict)]


def say_instead(book: dict) -> None:
    """Take the names of widgets out of a notebook's outputs where words stand beside them."""
    for cell in book["cells"]:
        for output in _outputs(cell):
            if "text/plain" in output["data"]:
                output["data"].pop(WIDGET, None)


def put_back(book: dict, before: dict) -> None:
    """Put into a notebook that comes from a page what the page was never shown: saved state, and the names of widgets in outputs that are as they were."""
    kept = _state(before).get(STATE)
    if isinstance(kept, dict) and isinstance(kept.get("state"), dict):
        mine = _metadata(book).setdefault("widgets", {}).setdefault(STATE, {**kept, "state": {}})
        mine["state"] = {**kept["state"], **mine.get("state", {})}
    elif "widgets" in _metadata(before):
        _metadata(book).setdefault("widgets", _metadata(before)["widgets"])
    earlier = {_name(cell, place): cell for place, cell in enumerate(before["cells"])}
    for place, cell in enumerate(book["cells"]):
        for output, old in zip(_outputs(cell), _outputs(earlier.get(_name(cell, place), {}))):
            data, was = output["data"], old["data"]
            if WIDGET in was and WIDGET not in data and data == {kind: value for kind, value in was.items() if kind != WIDGET}:
                data[WIDGET] = was[WIDGET]


def _name(cell: dict, place: int) -> str:
    """What tells a cell from the others of its notebook, before and after."""
    return repr(cell.get("id") or (place, cell.get("source")))
