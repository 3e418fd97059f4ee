"""A stray key loses nothing: every letter and digit, alone and twice, in and around the form of a design, in real JupyterLab."""

import string

import lab

CELLS = "() => window.jupyterapp.shell.currentWidget.content.widgets.map(cell => [cell.model.type, cell.model.sharedModel.getSource()])"


def test_no_letter_key_deletes_moves_or_retypes_a_cell(page, address):
    lab.open_workbook(page, address, "design.ipynb")
    before = page.evaluate(CELLS)
    assert len(before) > 1
    for at in (0, len(before) - 1):
        page.evaluate(
            "at => { const book = window.jupyterapp.shell.currentWidget.content; book.activeCellIndex = at; book.mode = 'command'; book.activeCell.node.focus(); }",
            at,
        )
        for key in string.ascii_lowercase + string.digits:
            page.keyboard.press(key)
            page.keyboard.press(key)
        for key in ("Shift+M", "Shift+A", "Shift+B", "Control+Shift+ArrowUp", "Delete", "Backspace"):
            page.keyboard.press(key)
        page.keyboard.press("Escape")
    assert page.evaluate(CELLS) == before
