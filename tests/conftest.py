"""The whole suite runs on every core: what belongs together stays in one process, and what takes longest begins first."""

from pathlib import Path

import pytest

from brimwork import topics
from brimwork.expression import DeclarationError

TESTS = Path(__file__).parent
LONGEST = ("browser", "test_stored_outputs.py", "test_cli.py", "test_pack.py", "test_pack_pages.py", "test_opening.py", "test_typeset.py", "test_topics.py")


def pytest_configure() -> None:
    """A wrong declaration is one line, not a traceback from every file that imports it."""
    try:
        topics.formulas()
    except DeclarationError as error:
        raise pytest.UsageError(error.told) from None
    except Exception:  # whatever else is wrong, the tests that need it say where
        return


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int | None:
    """None leaves the number to pytest-xdist, one for each core; tests that somebody names run in this process, where they can be looked into."""
    return None if config.args_source is config.ArgsSource.TESTPATHS else 0


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """All tests of a file in one process, for they share what was made once; a test may name another group."""

    def turn(item: pytest.Item) -> int:
        first = item.path.relative_to(TESTS).parts[0]
        return LONGEST.index(first) if first in LONGEST else len(LONGEST)

    items.sort(key=turn)
    for item in items:
        if not item.get_closest_marker("xdist_group"):
            item.add_marker(pytest.mark.xdist_group(str(item.path.relative_to(TESTS))))
