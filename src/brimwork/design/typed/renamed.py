"""Keys of a design file that are called otherwise now, or asked for no more: an old file is read, and told so."""

from __future__ import annotations

from brimwork.units import InputError

# the name that was, and the one that is: of two keys with one name for two things, the rarer one gave way
RENAMED = {"overflow_pipe.feed": "overflow_pipe.stuck_flow"}
# what no list or check asks for any more, and why
DROPPED = {"buying.slab_bed": "no loose sand lies under a slab over hollow blocks, where it would run away"}


def now_called(key: str, table: dict) -> str:
    """The name under which a key of the file is read. Raises InputError where the file has both names."""
    now = RENAMED.get(key, key)
    section, _, name = now.partition(".")
    if now != key and name in table.get(section, {}):
        raise InputError(f"{key} is called {now} now, and the file has both: take one of them out")
    return now
