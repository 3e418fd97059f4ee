"""The edition of the kit, which printed pages, answers and marks name."""

__version__ = "0.1.0"
