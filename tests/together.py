"""Which tests run in one process, and in which order: those of a file together, for they share what was made once; what takes longest begins first.

The groups are our own, for pytest-xdist 3.8 under pytest 9.2 no longer sees the groups that tests are marked with, and sends each test where there is room.
"""

from xdist.scheduler import LoadScopeScheduling

# Groups of more than one file, or of a part of one, by how the address of a test begins. Two browsers at once leave two cores little room.
_TOGETHER = {
    "tests/browser/test_access.py": "first browser",
    "tests/browser/test_walk.py": "first browser",
    "tests/browser/": "second browser",
    "tests/test_pack.py": "packs",
    "tests/test_pack_pages.py": "packs",
    "tests/test_topics.py": "derivations",
    "tests/test_cli.py": "derivations",
}
_FIRST = (
    "first browser",
    "tests/test_mutation.py",  # forks, which is quick while a process is small
    "tests/cross_check/test_cross_check.py",
    "packs",
    "tests/test_every_formula.py",
    "tests/test_diagnosis_quality.py",
    "tests/test_typeset.py",
    "tests/test_design_drawings.py",
    "tests/test_told_truly.py",
    "tests/test_opening.py",
    "tests/test_merging.py",
    "derivations",
    "tests/test_stored_outputs.py",
    "tests/test_hostile_answers.py",
    "tests/test_hostile_requests.py",
    "second browser",
    "tests/test_types.py",
    "tests/test_exercise.py",
    "tests/cross_check/test_softened.py",
    "tests/test_guide.py",
    "tests/test_coming_back.py",
    "tests/test_labels.py",
    "tests/test_pieces.py",
    "tests/test_printed_files.py",
    "tests/test_marking.py",
    "tests/test_yard.py",
    "tests/test_surroundings.py",
)


def group(nodeid: str) -> str:
    """The group of a test, by its address."""
    return next((name for start, name in _TOGETHER.items() if nodeid.startswith(start)), nodeid.partition("::")[0])


def turn(name: str) -> int:
    return _FIRST.index(name) if name in _FIRST else len(_FIRST)


class _Places(list):
    """A list of thousands of tests, asked for the place of each of them."""

    def __init__(self, tests):
        super().__init__(tests)
        self._places = {test: place for place, test in enumerate(self)}

    def index(self, test):
        return self._places[test]


class Scheduling(LoadScopeScheduling):
    def add_node_collection(self, node, collection):
        super().add_node_collection(node, _Places(collection))
        self.registered_collections[node] = _Places(collection)

    def _split_scope(self, nodeid):
        return group(nodeid)

    def remove_node(self, node):
        """A test with which a process broke down, or stood still, is not begun again."""
        units = self.assigned_work[node]
        broken = next((test for unit in units.values() for test, done in unit.items() if not done), None)
        if broken:
            unit = units[group(broken)]
            unit[broken] = True
            if all(unit.values()):
                del units[group(broken)]
        super().remove_node(node)
        return broken

    def mark_test_complete(self, node, item_index, duration=0):
        """A group that is done is forgotten: what waits is counted several times for each test."""
        name = self._split_scope(self.registered_collections[node][item_index])
        unit = self.assigned_work[node][name]
        super().mark_test_complete(node, item_index, duration)
        if all(unit.values()):
            self.assigned_work[node].pop(name, None)
