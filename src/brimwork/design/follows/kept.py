"""What is worked once and kept; and, while some values of a design are watched, which of them went into it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, Self, TypeVar, overload

_Value = TypeVar("_Value")


class Watched(dict[str, Any]):
    """The values of a design, some of which are watched: `log` has the key of each look at one of them; going through all counts as a look at each."""

    def __init__(self, values: dict[str, Any], keys: tuple[str, ...]):
        super().__init__(values)
        self.keys_watched, self.log = dict.fromkeys(keys), list[str]()

    def _look(self, key: object) -> None:
        if key in self.keys_watched:
            self.log.append(str(key))

    def __getitem__(self, key: str) -> Any:
        self._look(key)
        return super().__getitem__(key)

    def get(self, key: str, default: Any = None) -> Any:
        self._look(key)
        return super().get(key, default)

    def __contains__(self, key: object) -> bool:
        self._look(key)
        return super().__contains__(key)

    def __iter__(self):
        self.log.extend(self.keys_watched)
        return super().__iter__()

    def items(self):
        self.log.extend(self.keys_watched)
        return super().items()


class Store:
    """Keeps what a chain works. Where keys are logged while something is worked, they are logged again whenever it is read."""

    def __init__(self, design: Any):
        self.logs: list[list[str]] = [log for log in (getattr(design, "log", None), getattr(design.values, "log", None)) if log is not None]
        self.logged: dict[tuple[int, Any], tuple[Any, list[tuple[str, ...]]]] = {}

    def once(self, kept: dict[Any, Any], name: Any, work: Callable[[], _Value]) -> _Value:
        """What stands in `kept` under that name, or else is worked now and kept."""
        if name in kept:
            return kept[name]
        if not self.logs:
            value = kept[name] = work()
            return value
        if (at := (id(kept), name)) not in self.logged:
            before = [len(log) for log in self.logs]
            value = work()
            keys = [tuple(dict.fromkeys(log[start:])) for log, start in zip(self.logs, before, strict=True)]
            if not any(keys):
                kept[name] = value
                return value
            self.logged[at] = value, keys
            return value
        value, keys = self.logged[at]
        for log, these in zip(self.logs, keys, strict=True):
            log.extend(these)
        return value


class kept(Generic[_Value]):  # noqa: N801 - reads as a decorator
    """An attribute of a chain, or of what belongs to one, that is worked once."""

    def __init__(self, method: Callable[[Any], _Value]):
        self.method, self.__doc__ = method, method.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, holder: None, owner: type) -> Self: ...
    @overload
    def __get__(self, holder: object, owner: type) -> _Value: ...
    def __get__(self, holder: Any, owner: type) -> Self | _Value:
        return self if holder is None else holder.store.once(holder.__dict__, self.name, lambda: self.method(holder))
