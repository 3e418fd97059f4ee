"""What a kernel does before anybody needs it, so that a page is alive as soon as it opens: it loads what workbooks call, and works one design through."""

from __future__ import annotations


def warm() -> None:
    """Load all that workbooks call, and work, judge and draw an invented design once; nothing is shown or written."""
    from brimwork import notebook
    from brimwork.design.follows.features import chain_of
    from brimwork.design.typed.file import load_design
    from brimwork.notebook.books import shipped
    from brimwork.notebook.results import drawings_shown, findings_shown, found_in

    for name in notebook.__all__:
        getattr(notebook, name)
    chain = chain_of(load_design(shipped() / "designs" / "library-bowl.toml"))
    findings_shown(chain, found_in(chain))
    drawings_shown(chain)
