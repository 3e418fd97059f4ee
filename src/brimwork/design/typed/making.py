"""Short ways to declare the values of a design, by what they are."""

from __future__ import annotations

from brimwork.design.typed.reading import Field

CP, J = "common practice", "judgement"
YES_NO = ("yes", "no")


def length_field(name: str, such: str, such_us: str, signed: bool = False) -> Field:
    return Field(name, "mm", "in", signed, such=such, such_us=such_us)


def size_field(name: str, such: str, such_us: str) -> Field:
    """A length of a thing that is there, which is never nothing."""
    return Field(name, "mm", "in", such=such, such_us=such_us, size=True)


def share(name: str, such: str, span: str = "") -> Field:
    return Field(name, "", most=1.0, such=such, span=span)


def assumed(name: str, usual: str, basis: str, us: str = "", most: float = float("inf")) -> Field:
    """What the model assumes until the design says something else."""
    return Field(name, usual.partition(" ")[2], us, most=most, usual=usual, basis=basis)


def sold(name: str, usual: str, usual_us: str, basis: str = CP) -> Field:
    """A size in which something is sold, here and in the US."""
    return Field(name, usual.partition(" ")[2], usual_us.partition(" ")[2], usual=usual, basis=basis, usual_us=usual_us)
