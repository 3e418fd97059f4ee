"""Drawings as plain records in metres, laid out on a sheet in millimetres, written as SVG or by matplotlib."""
