"""The rows of the nomenclature, one file a subject."""
