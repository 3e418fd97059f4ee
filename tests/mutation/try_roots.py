"""A few checks of the root finder, for the planted fault of `test_mutation`: they have to be quick, not complete."""

import pytest

from brimwork.roots import solve
from brimwork.units import InputError


def test_a_root_is_found_and_two_ends_of_one_sign_are_refused():
    assert solve(lambda x: x * x - 2, 0, 2) == pytest.approx(2**0.5)
    with pytest.raises(InputError):
        solve(lambda x: x + 1, 0, 1)
