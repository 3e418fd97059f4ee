"""A chain that is no more than the few numbers that a row or a check asks for, beside a real design with the few values that bear on it."""

from types import SimpleNamespace

from brimwork.design.follows.agreeing import counted
from brimwork.design.typed.design import Design, blank_design
from brimwork.design.typed.known import Unknown


class FewNumbers(SimpleNamespace):
    """The numbers by name; any other is not known."""

    really = property(lambda self: self)

    def __init__(self, **numbers):
        super().__init__(**numbers)
        self.supposed = {}

    def __getattr__(self, name):
        raise Unknown("pump.power")

    def level(self, name):
        if name not in self.levels:
            raise Unknown("levels.block_top")
        return self.levels[name]

    def following(self, row):
        return row.found(self)

    def counted(self, key):
        return counted(self, key)

    def supposing(self, design):
        return FewNumbers(**{**{name: number for name, number in vars(self).items() if name != "supposed"}, "design": design})


def design(kind: str, changes: str = "", region: str = "UK", measured: tuple[str, ...] = ()) -> Design:
    """A design of a kind of which only these values are known: "key text; key text"."""
    made = blank_design(kind, "A test").headed("region", region)
    for change in filter(None, changes.split("; ")):
        key, _, text = change.partition(" ")
        several = key in ("measured.rim_levels", "stones.diameters")
        made = made.having(key, text.split(", ") if several else text, "measured" if key in measured else "yours")
    return made
