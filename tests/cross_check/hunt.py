"""Searches for designs that the product grades kinder than they are. Run by hand: python tests/cross_check/hunt.py --designs 5000 --seed 1

First the results of drawn designs, realistic and odd, are compared. Then, from realistic designs, one or two values or words are changed at a time
(also to values that a design seldom gives), and every check that passes or is left out is held against the cross-check. What is found is brought back
to the fewest changes that show it.
"""

import argparse
import sys
from collections import Counter, defaultdict

from against import HIDDEN, SOFTER, Apart, results_apart, verdicts_apart
from conflicts import conflicts
from invented import BEST, EXTRA, KINDS, Draw, changed, file, odd, realistic
from plain_design import Plain
from product import InputError, Told
from truth import work
from verdicts import SAFETY


def told(text: str, only=None) -> Told | None:
    """What the product says; nothing where it refuses the file in words."""
    try:
        return Told(text, only)
    except InputError:
        return None


def compared(kind: str, count: int, seed: int) -> tuple[list[Apart], int, int]:
    """Differences of results, designs and numbers compared: half of the designs realistic, half odd."""
    apart, designs, numbers = [], 0, 0
    for i in range(count):
        drawn = (realistic if i % 2 else odd)(kind, f"{seed} {kind} {i}")
        said = told(text := file(drawn[0], kind, drawn[1]))
        if said is None:
            continue
        more, n = results_apart(text, said)
        apart, designs, numbers = apart + more, designs + 1, numbers + n
    return apart, designs, numbers


def mutated(v: dict, draw: Draw) -> tuple[dict, list[str]]:
    """One or two values changed, or given that were not."""
    keys = []
    for _ in range(draw.whole(1, 2)):
        if draw.random.random() < 0.25:
            key, make = draw.random.choice(sorted(EXTRA.items()))
            v = v | make(draw)
            keys.append(key)
        else:
            key = draw.random.choice(sorted(key for key in v if not key.startswith("answers.")))
            v = changed(v, key, draw)
            keys.append(key)
    return v, keys


def hidden(kind: str, count: int, seed: int, ids=None, which=HIDDEN, bases: int | None = None) -> list[tuple[Apart, dict]]:
    """Kinder grades found among `count` changed designs, each with the changes that are left of it once those that play no part are taken back."""
    found, every = [], max(1, count // (bases or max(count // 12, 1)))
    for i in range(count):
        seeded = f"{seed} {kind} {i // every}"
        base, region = realistic(kind, seeded)
        v, _ = mutated(base, Draw(f"change {seed} {kind} {i}"))
        text = file(v, kind, region)
        said = told(text, set())
        if said is None:
            continue
        for apart in verdicts_apart(text, said, which, ids):
            found.append(smallest(apart, base, v, kind, region, which))
    return found


def smallest(apart: Apart, base: dict, v: dict, kind: str, region: str, which) -> tuple[Apart, dict]:
    """The same difference with as few changes as show it."""
    for key in [key for key in {**base, **v} if base.get(key) != v.get(key)]:
        less = {k: t for k, t in {**v, key: base.get(key)}.items() if t is not None}
        said = told(text := file(less, kind, region), set())
        again = [one for one in verdicts_apart(text, said, which, {apart.what}) if one.what == apart.what] if said else []
        if again:
            v, apart = less, again[0]
    return apart, {key: (base.get(key), v.get(key)) for key in {**base, **v} if base.get(key) != v.get(key)}


RANK = {"pass": 0, "does not apply": 0, "not shown": 1, "marginal": 2, "fail": 3}


def unsaid(kind: str, count: int, seed: int) -> list[tuple[Apart, dict]]:
    """What a drawing of a changed design shows and no finding says: a conflict that the realistic design had not, and no finding that became worse."""
    found, every = [], 12
    for i in range(count):
        base, region = realistic(kind, f"{seed} {kind} {i // every}")
        before = conflicts(work(Plain(file(base, kind, region))))
        v, _ = mutated(base, Draw(f"draw {seed} {kind} {i}"))
        new = conflicts(work(Plain(text := file(v, kind, region)))) - before
        if not new:
            continue
        for name in sorted(new):
            less = _fewest(name, base, v, kind, region)
            if silent(base, less, kind, region):
                found.append(
                    (
                        Apart(name, kind, "no finding is worse than before", "shown", text),
                        {k: (base.get(k), less.get(k)) for k in {**base, **less} if base.get(k) != less.get(k)},
                    )
                )
    return found


def _fewest(name: str, base: dict, v: dict, kind: str, region: str) -> dict:
    for key in [key for key in {**base, **v} if base.get(key) != v.get(key)]:
        less = {k: t for k, t in {**v, key: base.get(key)}.items() if t is not None}
        if name in conflicts(work(Plain(file(less, kind, region)))):
            v = less
    return v


def silent(base: dict, v: dict, kind: str, region: str) -> bool:
    """Whether the product takes the changed design without a word: it is read, and no finding is worse than before."""
    was, now = told(file(base, kind, region), set()), told(file(v, kind, region), set())
    if was is None or now is None:
        return False
    before, after = was.findings, now.findings
    return not any(RANK[one.grade] > RANK[before[name].grade] if name in before else RANK[one.grade] for name, one in after.items())


def main() -> int:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--designs", type=int, default=2000, help="designs of each kind for results, and as many changed ones")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--kind", choices=KINDS)
    asked.add_argument("--check", help="one check only")
    asked.add_argument("--softer", action="store_true", help="a marginal that is a fail, and a pass that is marginal or not known, as well")
    asked.add_argument("--all", action="store_true", help="checks of water besides those of safety")
    asked.add_argument("--show", type=int, default=2, help="examples of each difference")
    given = asked.parse_args()
    ids = {given.check} if given.check else None if given.all else set(SAFETY)
    any_found = False
    for kind in [given.kind] if given.kind else KINDS:
        apart, designs, numbers = compared(kind, given.designs, given.seed)
        print(f"{kind}: {designs} designs, {numbers} results compared, {len(apart)} apart")
        any_found |= _told(Counter(one.what for one in apart), [(one, {}) for one in apart], given.show)
        more = hidden(kind, given.designs, given.seed, ids, HIDDEN | SOFTER if given.softer else HIDDEN)
        print(f"{kind}: {given.designs} changed designs, {len(more)} graded kinder than they are")
        any_found |= _told(Counter(one.what for one, _ in more), more, given.show)
        drawn = [] if given.check else unsaid(kind, given.designs, given.seed)
        print(f"{kind}: {given.designs} changed designs, {len(drawn)} conflicts that a drawing shows and no finding says")
        any_found |= _told(Counter(one.what for one, _ in drawn), drawn, given.show)
    return int(any_found)


def _told(counts: Counter, found: list[tuple[Apart, dict]], show: int) -> bool:
    groups = defaultdict(list)
    for one, changes in found:
        groups[one.what, tuple(sorted(changes))].append((one, changes))
    for what, count in sorted(counts.items()):
        print(f"  {what}: {count}")
        for (name, _), cases in sorted(groups.items(), key=lambda group: len(group[0][1])):
            if name == what and (shown := cases[:1]):
                for one, changes in shown[:show]:
                    told_changes = "; ".join(f"{key}: {was} -> {now}" for key, (was, now) in changes.items()) or "as drawn"
                    print(f"    {len(cases)} x {told_changes}\n      product {one.product}; cross-check {one.truth} {one.why}")
    return bool(counts)


if __name__ == "__main__":
    sys.exit(main())
__all__ = ["BEST", "compared", "hidden", "mutated"]
