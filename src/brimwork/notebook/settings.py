"""What stands beside the workbooks and holds for all of them: the units in which pages ask, draw and write, and questions of one's own."""

from __future__ import annotations

import tomllib
from contextlib import suppress
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import files, system
from brimwork.exercise import own_questions
from brimwork.notebook.part import Part
from brimwork.notebook.practising import QUIET, alert, status
from brimwork.shown import escape
from brimwork.units import InputError

_LARGEST = 10_000


def read_settings(folder: Path) -> str:
    """The units that a folder is set to; metric where nothing is. Raises InputError."""
    path = folder / system.SETTINGS
    try:
        held = tomllib.loads(files.read_bounded(path, _LARGEST).decode("utf-8-sig"))
    except FileNotFoundError:
        return system.METRES
    except (OSError, ValueError, RecursionError) as error:
        raise InputError(f'{path.name} cannot be read ({error}): write format = 1 and units = "metric" or units = "US" into it, or delete it') from None
    if held.get("units") not in system.SYSTEMS:
        raise InputError(f'{path.name} names no units: write units = "metric" or units = "US"')
    return held["units"]


def take_settings(folder: Path = Path()) -> None:
    """Use what stands in a folder; what cannot be read is told by `my_units` and by the lists of questions."""
    system.use_none()
    if (folder / system.SETTINGS).exists():
        with suppress(InputError):
            system.use(read_settings(folder))
    own_questions.take_from(folder)


class Units:
    """A choice of units, kept beside the workbooks."""

    def __init__(self, folder: Path):
        self.folder, self.said = folder, widgets.HTML()
        options = [("metric: mm, litres, kilograms", system.METRES), ("US: inches, US gallons, pounds", system.FEET)]
        self.chosen = widgets.Dropdown(options=options, value=system.current(), description="My units", style=QUIET, layout={"width": "26em"})
        self.chosen.observe(lambda change: self.keep(change["new"]), "value")
        try:
            read_settings(folder)
        except InputError as error:
            self.said.value = alert(f"{error}.")
        self.widget = Part([self.chosen, self.said], "My units: metric, or US.")

    def keep(self, units: str) -> None:
        try:
            files.write_whole(self.folder / system.SETTINGS, system.settings(units))
        except OSError as error:
            self.said.value = alert(f"{system.SETTINGS} cannot be written ({error.strerror}): open the workbooks in a folder of your own.")
            return
        system.use(units)
        self.said.value = status(
            escape(f"✓ Kept in {system.SETTINGS}. Run a workbook afresh, and it asks, draws and works in these units. You may type any unit all the same.")
        )


def my_units() -> None:
    """A choice of units, metric or US, that holds for every workbook in this folder."""
    display(Units(Path()).widget)
