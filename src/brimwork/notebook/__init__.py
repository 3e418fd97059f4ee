"""What workbooks call, each imported on first use, so that other modules here stay light."""

from __future__ import annotations

_WHERE = {
    "work": "pages",
    "derive": "pages",
    "parts_of": "pages",
    "said_here": "pages",
    "label": "pages",
    "start": "pages",
    "so_far": "progress",
    "glossary": "word_list",
    "explore": "live",
    "practise": "practising",
    "recall": "lesson",
    "puzzle": "lesson",
    "predict": "lesson",
    "look_back": "lesson",
    "explain": "lesson",
    "find_slip": "lesson",
    "exit_check": "lesson",
    "more_questions": "further",
    "course_map": "course_so_far",
    "outcomes": "course_so_far",
    "my_units": "settings",
    "brief_met": "briefed",
    "class_exercise": "class_sheet",
    "choose_questions": "teaching",
    "set_exercise": "teaching",
    "mark_hand_ins": "teaching",
    "write_course": "teaching",
    "ledger": "fading",
    "fade": "fading",
    "your_numbers": "own_numbers",
    "on_site": "carrying",
    "start_and_stop": "following",
    "follow_days": "following",
    "level_sheet": "surveying",
    "design": "designing",
    "compare": "comparing",
    "quick_check": "designing",
    "buying": "shopping",
}
__all__ = sorted(_WHERE)


def __getattr__(name: str):
    if name not in _WHERE:
        raise AttributeError(f"brimwork.notebook has no '{name}'; it has {', '.join(__all__)}")
    from importlib import import_module

    _beside_the_workbook()
    return getattr(import_module(f"{__name__}.{_WHERE[name]}"), name)


def load_all() -> None:
    """Import all of it, without what stands beside any workbook."""
    from importlib import import_module

    for name in sorted({*_WHERE.values()}):
        import_module(f"{__name__}.{name}")


def _beside_the_workbook() -> None:
    """Use the settings and the questions of one's own that stand beside the workbook."""
    from pathlib import Path

    if any(Path(name).exists() for name in ("settings.toml", "questions.toml")):
        from brimwork.notebook.settings import take_settings

        take_settings()
