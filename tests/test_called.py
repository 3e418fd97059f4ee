"""What workbooks call is there, under the name by which they call it."""

import pytest

import brimwork.notebook


@pytest.mark.parametrize("name", brimwork.notebook.__all__)
def test_every_name_that_workbooks_may_call_is_a_function(name):
    assert callable(getattr(brimwork.notebook, name)) and getattr(brimwork.notebook, name).__name__ == name
