"""Brimwork: a design workbook and teaching kit for small recirculating water features."""

__version__ = "0.1.0"
