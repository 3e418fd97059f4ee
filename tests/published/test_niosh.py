"""A worked example of the NIOSH lifting equation, second-hand: hands 25 cm out, from 55 cm up, moved 95 cm, 0.88 and 0.95, 12 kg: 15.7 kg and 0.76."""

import pytest

from brimwork.topics.handling import lift_limit, lifting_index


def test_the_limit_and_the_index_are_those_printed():
    limit = lift_limit(0.25, 0.55, 0.95, k_freq=0.88, k_grip=0.95)
    assert limit == pytest.approx(15.7, abs=0.05)
    assert lifting_index(m_load=12.0, m_rwl=limit) == pytest.approx(0.76, abs=0.006)
