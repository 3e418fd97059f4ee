"""JupyterLab in a real browser: starts the server as `brimwork open` does, opens workbooks, runs them, waits for the kernel to be truly ready."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import time
import urllib.request
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from brimwork.exercise import answers
from brimwork.notebook import opening

FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"]
OFTEN = 250  # ms between two looks at a page, where a look costs more than the wait
VIEW = {"width": 1300, "height": 1000}
# Within some seconds: a server that has stopped in the midst of a question answers it never.
_TIDY = """() => Promise.race([new Promise((_, late) => setTimeout(() => late(new Error('JupyterLab does not answer')), 30_000)), (async () => { const app = window.jupyterapp, held = app.serviceManager;
  for (const area of ['main', 'down']) [...app.shell.widgets(area)].forEach(widget => widget.dispose());
  if (document.body.dataset.jpThemeLight === 'false') await app.commands.execute('apputils:change-theme', {theme: 'JupyterLab Light'});
  await Promise.all([held.sessions.shutdownAll(), held.terminals.shutdownAll()]); })()])"""
_STAYS = {".config", ".data", ".ipython", "server.log"}
TOKEN = "a-token-of-the-tests"
AUTHORIZED = {"Authorization": f"token {TOKEN}"}
_OPEN = """async path => { const shell = window.jupyterapp.shell, book = await window.jupyterapp.commands.execute('docmanager:open', {path});
  if (shell.currentWidget?.id !== book.id) shell.activateById(book.id); }"""
_READY = """async () => {
  const app = window.jupyterapp, panel = app.shell.currentWidget;
  await panel.context.ready; await panel.sessionContext.ready; await panel.sessionContext.session.kernel.info;
}"""

_ALL_RAN = """() => window.jupyterapp.shell.currentWidget.content.widgets
  .every(cell => cell.model.type !== 'code' || !cell.model.sharedModel.source.trim() || cell.model.executionCount !== null)"""


def chromium() -> str | None:
    """The browser to drive: BRIMWORK_CHROMIUM, or one on the path, first that of Debian without windows around its pages, which cost a fifth of the time."""
    names = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
    return os.environ.get("BRIMWORK_CHROMIUM") or next(filter(None, map(shutil.which, names)), None)


@contextmanager
def server(folder: Path, ours: bool = True, port: int = 0) -> Iterator[str]:
    """The server of `brimwork open` over `folder`, or a JupyterLab without what is ours, to compare with; yields its address. Pages carry the TOKEN."""
    opening.lay_out(folder)
    _all_cells_at_once(folder)
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        probe.bind(("127.0.0.1", port))
        port = probe.getsockname()[1]
    extra = ["--LabApp.expose_app_in_browser=True", "--allow-root", "--ServerApp.port_retries=0"]
    line = [word if ours else word.replace("brimwork.notebook.serving", "jupyterlab") for word in opening.command(folder, False, port)]
    environment = {
        **opening.environment(),
        "JUPYTER_CONFIG_DIR": str(folder / ".config"),
        "JUPYTER_DATA_DIR": str(folder / ".data"),
        "JUPYTER_TOKEN": TOKEN,
        "IPYTHONDIR": str(folder / ".ipython"),
    }
    with open(folder / "server.log", "wb") as log:
        process = subprocess.Popen([*line, *extra], env=environment, cwd=folder, stdout=log, stderr=log)
    try:
        address = f"http://127.0.0.1:{port}/lab"
        _await(address, process, folder / "server.log")
        yield address
    finally:
        process.terminate()
        try:
            process.wait(20)
        except subprocess.TimeoutExpired:  # a JupyterLab without what is ours may wait for ever for a thread
            process.kill()
            process.wait()
            if ours:
                raise


def _await(address: str, process: subprocess.Popen, log: Path) -> None:
    for _ in range(240):
        if process.poll() is not None:
            break
        try:
            urllib.request.urlopen(urllib.request.Request(address, headers=AUTHORIZED), timeout=2).close()
            return
        except OSError:
            time.sleep(0.25)
    raise RuntimeError(f"JupyterLab did not start:\n{log.read_text()[-2000:]}")


def lay_out_afresh(folder: Path) -> None:
    """The folder of a server as it is when Brimwork is opened for the first time: no answers, no designs of one's own, no settings."""
    until = time.monotonic() + 20
    while left := [path for path in folder.iterdir() if path.name not in _STAYS]:
        for path in left:
            try:  # a kernel that the test before has left may still be keeping what was typed
                shutil.rmtree(path) if path.is_dir() else path.unlink()
            except OSError:
                if time.monotonic() > until:
                    raise
                time.sleep(0.05)
    shutil.rmtree(folder / ".config" / "lab" / "user-settings", ignore_errors=True)
    opening.lay_out(folder)
    _all_cells_at_once(folder)


def _all_cells_at_once(folder: Path) -> None:
    """JupyterLab draws what is out of sight when the browser is idle, which without a graphics card comes after seconds for each few cells: here it draws all at once."""
    settings = folder / ".config" / "lab" / "user-settings" / "@jupyterlab" / "notebook-extension" / "tracker.jupyterlab-settings"
    settings.parent.mkdir(parents=True, exist_ok=True)
    settings.write_text('{"windowingMode": "none"}', encoding="utf-8")


def tidy(page) -> None:
    """Close whatever is open in JupyterLab, and end its kernels and terminals."""
    page.evaluate(_TIDY)
    _hear_out(page)


def _hear_out(page) -> None:
    """Close what JupyterLab has said in a dialog, such as that a busy machine dropped one of the questions it asks every ten seconds: until then nothing else takes the focus."""
    while (dialog := page.locator(".jp-Dialog").first).count():
        warnings.warn(f"JupyterLab said: {dialog.inner_text()}", stacklevel=2)
        stood = dialog.element_handle()
        page.keyboard.press("Escape")
        page.wait_for_function("dialog => !dialog.isConnected", arg=stood)


_ATTENDED = "() => !window._JUPYTERLAB?.brimwork || ['ours', 'theirs'].includes(window.jupyterapp.shell.currentWidget.node.dataset.brimwork)"


def open_workbook(page, address: str, name: str, run: bool = True) -> None:
    """Open a workbook alone in JupyterLab, which may have been loaded before, with a kernel that answers; and run all its cells, where it does not do so itself."""
    if page.evaluate("address => location.href.startsWith(address) && !!window.jupyterapp", address):
        tidy(page)
    else:
        page.goto(f"{address}?reset")
        page.wait_for_function("() => window.jupyterapp?.serviceManager")
        page.evaluate("() => window.jupyterapp.restored.then(() => true)")
    page.evaluate(_OPEN, name)
    page.wait_for_function("path => window.jupyterapp.shell.currentWidget?.context?.path === path", arg=name, polling=50)
    page.evaluate(_READY)
    page.wait_for_function(_ATTENDED, polling=50)
    if run and page.evaluate(_ALL_RAN):
        return
    for _ in range(3 if run else 0):  # a kernel that has only just answered may drop the first request
        page.evaluate("() => window.jupyterapp.commands.execute('notebook:run-all-cells').then(() => true)")
        if page.evaluate(_ALL_RAN):
            return
    if run:
        raise RuntimeError(f"{name}: not every cell ran")


def open_overflow(page, address: str, folder: Path) -> None:
    """The workbook on overflow with its prediction kept, since its pictures wait for one: 16 mm over a lip of 400 mm."""
    answers.note(folder / "answers.json", "T04.8", "about twice as much", "prediction")
    open_workbook(page, address, "overflow.ipynb")


def save(page) -> None:
    page.evaluate("() => window.jupyterapp.commands.execute('docmanager:save')")


def drawn_ahead(slider, steps: int) -> None:
    """Wait until the page keeps the pictures of so many steps to the right of where a slider stands."""
    slider.page.wait_for_function(
        """([slider, steps]) => { const at = Math.round((slider.value - slider.min) / slider.step), kept = (slider.dataset.kept ?? '').split(' ').map(Number);
          return Array.from({length: steps}, (_, one) => at + one + 1).every(step => kept.includes(step)); }""",
        arg=[slider.element_handle(), steps],
        polling=OFTEN,
    )
