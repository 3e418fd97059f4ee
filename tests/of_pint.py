"""pint, an outside library of units (https://pint.readthedocs.io), read once for all tests of a process. It has no money of its own: what is here shows only that ours mixes with nothing else."""

import pint

REGISTRY = pint.UnitRegistry()
REGISTRY.define("currency = [money] = cur")
