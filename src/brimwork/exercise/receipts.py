"""A receipt as two words and a number, such as "heron willow 4821": easy to say aloud, to write on paper, and to compare."""

from __future__ import annotations

_WORDS = """acorn alder amber apple arbor aspen badger bark barley basin beech berry birch bloom bough bower bramble brass briar bridge brook bucket burrow
canal candle cedar cherry chestnut clay clover cobble copper coral cotton cove crane cress crocus curlew daisy dale damson dew dove elder elm ember fallow
fern ferry field finch flint forest foxglove frost garden garnet gate ginger glade gorse granite grove harbor hazel heath hedge heron hickory holly honey
ivory ivy jasper juniper kettle kestrel lagoon lantern larch lark laurel lily linen linnet maple marble marsh meadow mint moss oak oat olive orchard osprey
otter peach pear pebble pepper pine plover plum pollen poplar poppy quail quarry quartz quince reed ridge robin rowan saddle sage sedge slate sorrel sparrow
spruce stream swallow thicket thistle timber tulip valley walnut willow wren""".split()


def receipt_in_words(digest: bytes) -> str:
    """The first eight bytes of a digest as two words and a number of four digits."""
    number = int.from_bytes(digest[:8], "big")
    rest, tail = divmod(number, 10_000)
    rest, second = divmod(rest, len(_WORDS))
    return f"{_WORDS[rest % len(_WORDS)]} {_WORDS[second]} {tail:04d}"
