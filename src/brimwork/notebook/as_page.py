"""What a cell has shown, reduced to the one form that a page without code shows: a widget, HTML, an image, or plain words."""

from __future__ import annotations

import re
from typing import cast

from nbconvert.filters.markdown_mistune import markdown2html_mistune

from brimwork.shown import Markup, attribute, escape

_WIDGET = "application/vnd.jupyter.widget-view+json"
_COLOURS = re.compile(r"\x1b\[[0-9;]*m")


def as_html(markdown: str) -> Markup:
    """Markdown of ours as HTML, in which whoever wrote it escaped what came from elsewhere; formulas stay between their dollars, for the page to set."""
    return cast(Markup, markdown2html_mistune(markdown))


def reduced(kind: str, content: dict) -> dict[str, object] | None:
    """What a page shows of a message of the kernel: `kind`, `body`, and by which name it is changed later; None for nothing."""
    if kind == "error":
        said = f"{content.get('ename', 'Error')}: {_COLOURS.sub('', str(content.get('evalue', '')))}"
        return {"kind": "html", "body": Markup(f"<p role='alert'><strong>Something went wrong here:</strong> {escape(said)}</p>")}
    if kind == "stream":
        return {"kind": "text", "body": _COLOURS.sub("", content["text"])} if content.get("name") == "stdout" else None
    if kind not in ("display_data", "execute_result", "update_display_data"):
        return None
    data, name = content["data"], content.get("transient", {}).get("display_id")
    named = {"display": name, "update": kind == "update_display_data"} if name else {}
    if _WIDGET in data:
        return {"kind": "widget", "body": data[_WIDGET]["model_id"], **named}
    if "text/html" in data:
        return {"kind": "html", "body": data["text/html"], **named}
    if "image/svg+xml" in data:
        return {"kind": "html", "body": data["image/svg+xml"], **named}
    if "image/png" in data:
        alt = attribute(data.get("text/plain", ""))
        return {"kind": "html", "body": Markup(f"<img alt='{alt}' src='data:image/png;base64,{attribute(data['image/png'])}'>"), **named}
    if "text/markdown" in data:
        return {"kind": "html", "body": as_html(data["text/markdown"]), **named}
    return {"kind": "text", "body": data.get("text/plain", ""), **named}
