"""A learner who makes mistakes that nobody declared: how often is the mistake named, blamed on another, passed over, or taken for right?

Run `python tests/simulated_learner.py [--seeds 4] [--each 24] [--draw 1] [--show 40] [--us] [--part 0 --parts 8]` for the whole campaign
over every question with numbers; the suite runs a small sample of it. Nothing here knows what the diagnosis thinks of: wrong methods are written by hand (`BY_HAND`, from what teachers of the trade see) or made by
changing the text of the right one at random, by rules of this file; an explanation counts as true only where its own formula agrees with the learner's on other
numbers too.
"""

from __future__ import annotations

import argparse
import ast
import collections
import copy
import math
import random
from dataclasses import dataclass

from brimwork import system, topics, units
from brimwork.exercise import arithmetic, bank, twins
from brimwork.exercise.diagnosis import Diagnosis, diagnose
from brimwork.exercise.question import Question, ask
from brimwork.exercise.unit_slips import of_an_input
from brimwork.exercise.written import Numeric
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES

# Wrong methods as teachers of the trade see them every year: judgement, no counts from real classes. A power may leave the kind of quantity: SI numbers count.
BY_HAND = {
    "T02.3": ("a*b*(f+i)", "27*a*b*(f+i)*(1+k)", "a*b*f*(1+k)", "a*b*(f+i)*k", "(a+b)*(f+i)*(1+k)"),
    "volume of a round tank": ("pi/2*d_t**2*h", "pi*d_t*h", "2*pi*d_t*h", "d_t**2*h", "pi/4*d_t*h", "pi*d_t**2/2*h"),
    "volume of a battered pit": ("L*W*h + m_b*(L + W)*h**2", "(L + 2*m_b*h)*(W + 2*m_b*h)*h", "(L + m_b*h)*(W + m_b*h)*h", "L*W*h + m_b*(L + W)*h"),
    "T06.1": ("l*w*(z-d)/n", "l*w*n*d", "l*w*z - d", "(l + w)*n*(z - d)", "l*w*n*(z + d)", "l*w*(1 - n)*(z - d)"),
    "dead water": ("A_b*h_min/n_v", "A_b*h_min", "A_b*(1 - n_v)*h_min"),
    "water up to a level": ("A_b*h/n_v", "A_b*(1 - n_v)*h"),
    "flow over a level lip": ("2/3*C_d*b*sqrt(2*g)*H**(2/3)", "C_d*b*sqrt(2*g)*H**(3/2)", "2/3*C_d*b*sqrt(2*g)*H", "2/3*C_d*b*sqrt(g)*H**(3/2)"),
    "flow over a round rim": ("C_w*pi*d_rim*H**(2/3)", "C_w*pi/4*d_rim**2*H**(3/2)", "2*C_w*pi*d_rim*H**(3/2)", "C_w*pi*d_rim/2*H**(3/2)"),
    "head on a round rim": ("(Q/(C_w*pi/4*d_rim**2))**(2/3)", "(Q/(C_w*2*pi*d_rim))**(2/3)", "(Q*C_w/(pi*d_rim))**(2/3)"),
    "T04.1": ("(2*Q/(pi*D)/C)**(2/3)", "(Q/(2*pi*D)/C)**(2/3)", "(Q/(pi/4*D**2)/C)**(2/3)", "(Q*C/(pi*D))**(2/3)"),
    "T04.2": ("C*pi*D*H**(2/3)", "C*pi/4*D**2*H**1.5", "2*C*pi*D*H**1.5"),
    "T05.1": ("16*Q/(pi*d**2)", "Q/(pi*d**2)", "Q/(pi*d)", "Q*pi/4*d**2"),
    "speed in a pipe": ("16*Q/(pi*d_pipe**2)", "Q/(pi*d_pipe)", "2*Q/(pi*d_pipe**2)", "4*Q*pi/d_pipe**2"),
    "T05.3": ("a + b + f", "a + b + e", "b + f - a", "f + e", "(a + b)*(f + e)"),
    "T05.4": ("sqrt(H/(H/M**2 + h/R**2))", "sqrt((H - S)/(H/M**2))", "sqrt((H - S)/(h/R**2))", "(M + R)/2", "sqrt((H + S)/(H/M**2 + h/R**2))"),
    "T07.1": ("(pi/4*a**2*h - pi/4*b**2*h)*r + pi/4*b**2*h*1000*kg/m**3", "(pi*a**2*h - pi*b**2*(h - c))*r + pi*b**2*(h - c)*1000*kg/m**3"),
    "T07.2": ("M*g/(pi*(a**2 - b**2))", "M*g/(pi*a*(a - b)/2)", "M*g/(pi/4*(a - b)**2)", "M*g/(pi/4*b**2)", "M*g*pi/4*(a**2 - b**2)"),
    "T07.4": ("k*v*(1000*kg/m**3 - F)/(n*(r - 1000*kg/m**3))", "k*v*1000*kg/m**3/((1 - n)*(r - 1000*kg/m**3))", "v*(1000*kg/m**3 - F)/(k*(1 - n)*(r - 1000*kg/m**3))"),
    "T06.2": ("(v - t)/(a*E + s)", "(v + t)/(a*E*k + s)", "(v - t)/(a*E*k - s)", "v/(a*E*k)", "(v - t - s*day)/(a*E*k)"),
    "T06.3": ("a*H + y", "a*(y - H)*2", "a*y/2 + a*H"), "T06.12": ("pi*d**2*l + c*t*r", "pi/4*d**2*l*r + c*t", "(pi/4*d**2*l + c*t)*r"),
    "T03.2": ("s + b + l + a + c", "-(s + b + l + a)", "-(s + b + l + c)", "s - b - l - a - c"),
    "T01.1": ("6*d - (a - l/2)", "12*d - (a + l/2)", "12*d - a + l", "a - l/2"),
    "T01.2": ("(D + f)*s", "(D - f)", "f*s", "D*s - f"),
    "T01.3": ("s - (e - s)/b*a + y", "s - (e - s)/a*b - y", "s - e/a*b + y", "e - (e - s)/a*(a + b)"),
    "time to fill": ("Q/V", "Q*V"),
    "pressure under a foot": ("m_load/A_foot",),
    "hydraulic power": ("rho*Q*H_pump", "rho*g*Q/H_pump"),
    "total dynamic head": ("z_s + v**2/(2*g)*(f*L_pipe/d_pipe + K)",),
    "void fraction from bulk density": ("rho_s/rho_bulk - 1", "rho_bulk/rho_s", "1 - rho_s/rho_bulk"),
    "days without top-up": ("(V_use - V_tr)/(E_0*A_wet + Q_splash)", "(V_use + V_tr)/(K_E*E_0*A_wet + Q_splash)"),
}  # fmt: skip


@dataclass(frozen=True)
class Method:
    """A wrong method: how it was made, and its text."""

    made: str
    text: str


def declared() -> list[Formula | Numeric]:
    return [*topics.formulas().values(), *(question for question in bank.questions().values() if isinstance(question, Numeric))]


def name_of(question: Formula | Numeric) -> str:
    return question.code if isinstance(question, Numeric) else question.name


def pose(question: Formula | Numeric, seed: int) -> Question:
    return question.pose(seed) if isinstance(question, Numeric) else ask(question, seed)


def right_text(question: Formula | Numeric) -> str | None:
    """The right method as one text over the given values, or None where there is none."""
    if isinstance(question, Formula):
        return None if question.implicit else question.equals
    if not isinstance(question.answer, str):
        return None
    text = question.answer
    for name, of in reversed(question.let.items()):
        tree = ast.parse(text, mode="eval")

        class Put(ast.NodeTransformer):
            def visit_Name(self, node, name=name, of=of):
                return ast.parse(f"({of})", mode="eval").body if node.id == name else node

        text = ast.unparse(Put().visit(tree))
    return text


# --- wrong methods made at random ---------------------------------------------------------------------------------------------------

_POWERS = (0.5, 1.0, 1.5, 2.0, 3.0, 2 / 3, 1 / 3, 0.25)


def mutated(text: str, given: list[str], draw: random.Random, alike: dict[str, object]) -> Method | None:
    """The method with one thing changed; now and then with two."""
    made, new = _once(text, given, draw, alike)
    if draw.random() < 0.08:
        second, new = _once(new, given, draw, alike)
        made = f"{made} and {second}"
    return Method(made, new) if new != text else None


def _once(text: str, given: list[str], draw: random.Random, alike: dict[str, object]) -> tuple[str, str]:
    tree = ast.parse(text, mode="eval")
    nodes = [node for node in ast.walk(tree) if isinstance(node, ast.BinOp | ast.Call | ast.Name | ast.Constant | ast.UnaryOp)]
    for _ in range(60):
        node = draw.choice(nodes)
        rule = draw.choice(_RULES)
        new = rule(copy.deepcopy(node), given, draw, alike)
        if new is not None:
            changed = ast.unparse(_Put(node, new).visit(tree))
            if changed != text:
                return rule.__name__.strip("_"), changed
    return "nothing", text


class _Put(ast.NodeTransformer):
    def __init__(self, old, new):
        self.old, self.new = old, new

    def visit(self, node):
        return self.new if node is self.old else super().visit(node)


def _one_side_only(node, given, draw, alike):
    """Half of a sum or a product was never written down."""
    if isinstance(node, ast.BinOp) and not isinstance(node.op, ast.Pow):
        return draw.choice((node.left, node.right))


def _other_sign(node, given, draw, alike):
    other = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult}
    if isinstance(node, ast.BinOp) and type(node.op) in other:
        return ast.BinOp(node.left, other[type(node.op)](), node.right)


def _other_way_about(node, given, draw, alike):
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Sub | ast.Div):
        return ast.BinOp(node.right, node.op, node.left)


def _other_power(node, given, draw, alike):
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow):
        return draw.choice((node.left, ast.BinOp(node.left, ast.Pow(), ast.Constant(draw.choice(_POWERS))), ast.BinOp(ast.Constant(1), ast.Div(), node)))
    if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "sqrt":
        return draw.choice((node.args[0], ast.BinOp(node.args[0], ast.Div(), ast.Constant(2))))


def _no_number(node, given, draw, alike):
    """A plain number that belongs there is forgotten."""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult | ast.Div):
        if isinstance(node.left, ast.Constant):
            return node.right if isinstance(node.op, ast.Mult) else ast.BinOp(ast.Constant(1), ast.Div(), node.right)
        if isinstance(node.right, ast.Constant):
            return node.left


def _other_value(node, given, draw, alike):
    """Another value of the question, mostly one of the same kind."""
    if isinstance(node, ast.Name) and node.id in given:
        same = [name for name in given if name != node.id and alike[name] == alike[node.id]]
        pool = same if same else [name for name in given if name != node.id] if draw.random() < 0.1 else []
        return ast.Name(draw.choice(pool), ast.Load()) if pool else None


def _two_or_half(node, given, draw, alike):
    if isinstance(node, ast.Name) and node.id in given:
        return ast.BinOp(node, draw.choice((ast.Mult(), ast.Div())), ast.Constant(draw.choice((2, 2, 2, 4))))


def _decimal_point(node, given, draw, alike):
    if isinstance(node, ast.Name) and node.id in given:
        return ast.BinOp(node, draw.choice((ast.Mult(), ast.Div())), ast.Constant(draw.choice((10, 100, 1000))))


def _nothing_of_it(node, given, draw, alike):
    """A given value is passed over: as if it were nothing in a sum, or one in a product."""
    if isinstance(node, ast.BinOp):
        for this, other in ((node.left, node.right), (node.right, node.left)):
            if isinstance(this, ast.Name) and this.id in given and draw.random() < 0.5:
                if isinstance(node.op, ast.Mult | ast.Add) or this is node.right and isinstance(node.op, ast.Sub | ast.Div):
                    return other


def _brackets(node, given, draw, alike):
    """a*(b + c) worked as a*b + c, and a/(b*c) as a/b*c."""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult) and isinstance(node.right, ast.BinOp) and isinstance(node.right.op, ast.Add | ast.Sub):
        return ast.BinOp(ast.BinOp(node.left, ast.Mult(), node.right.left), node.right.op, node.right.right)
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div) and isinstance(node.right, ast.BinOp) and isinstance(node.right.op, ast.Mult):
        return ast.BinOp(ast.BinOp(node.left, ast.Div(), node.right.left), ast.Mult(), node.right.right)


def _calculator(node, given, draw, alike):
    other = {"sin": "cos", "cos": "sin", "tan": "sin", "log10": "log", "ceil": "floor", "acos": "asin"}
    if isinstance(node, ast.Call) and getattr(node.func, "id", "") in other:
        return ast.Call(ast.Name(other[node.func.id], ast.Load()), node.args, [])


_RULES = (
    _one_side_only,
    _other_sign,
    _other_way_about,
    _other_power,
    _no_number,
    _other_value,
    _two_or_half,
    _decimal_point,
    _nothing_of_it,
    _brackets,
    _calculator,
)


# --- the campaign -------------------------------------------------------------------------------------------------------------------


class Learner:
    """One question with numbers, and the means to work any method on it."""

    def __init__(self, question: Formula | Numeric, seed: int):
        self.declared, self.posed = question, pose(question, seed)
        self.given = {name: each.value for name, each in self.posed.given.items()}
        self.alike = {name: units.unit(each.unit).dimension for name, each in self.posed.given.items()}
        self.constants = {name: QUANTITIES[name].constant for name in question.constants} if isinstance(question, Formula) else {}
        draw = random.Random(f"elsewhere {name_of(question)} {seed}")
        self.elsewhere = [{name: value * draw.uniform(0.9, 1.1) for name, value in self.given.items()} for _ in range(2)]

    def work(self, text: str, given: dict[str, float] | None = None) -> float | None:
        """The number (SI) of a method on the given values."""
        try:
            value = arithmetic.value_typed(text, {**self.constants, **(given or self.given)})
            return value if math.isfinite(value) else None
        except Exception:
            return None

    def elsewhere_of(self, text: str) -> tuple:
        return tuple(self.work(text, given) for given in self.elsewhere)

    def explained(self, sentence: str) -> list[tuple]:
        """What the formulas behind a sentence come to on other numbers."""
        found = []
        for cause in self.posed.causes:
            if cause.way.sentence(self.posed.working.said) == sentence:
                found += [tuple(self._way(cause, given, size) for given in self.elsewhere) for size in (False, True)]
        slips = self.declared.wrong if isinstance(self.declared, Numeric) else self.declared.slips
        for slip in slips:
            if sentence.startswith(slip.feedback) and isinstance(slip.equals, str):
                let = self.declared.on_the_way if isinstance(self.declared, Numeric) else dict
                found.append(tuple(self.work(slip.equals, let(given)) for given in self.elsewhere))
        return found

    def _way(self, cause, given, as_shown: bool):
        working = self.posed.working
        sizes = {f"unit_of_{name}": units.unit(unit).factor if as_shown else 1.0 for name, unit in working.shown.items()}
        from brimwork.exercise.causes import compile_tree

        return working.number(compile_tree(cause.way.tree), {**working.values, **given, **sizes})


def same(a: tuple, b: tuple) -> bool:
    return None not in a and None not in b and all(math.isclose(x, y, rel_tol=2e-3) for x, y in zip(a, b))


def judged(learner: Learner, method: str, found: Diagnosis) -> str:
    """ "accepted", "silent", or "told"/"asked" with "truly"/"falsely"."""
    if found.right:
        return "accepted"
    if found.kind in ("none", "no unit", "unread", "ask", "rounded") or found.kind == "other unit" and not found.causes:
        return "silent"
    elsewhere = learner.elsewhere_of(method)
    true = any(same(elsewhere, other) for sentence in found.causes for other in learner.explained(sentence))
    right = right_text(learner.declared)
    if right:
        base = learner.elsewhere_of(right)
        if None not in base and None not in elsewhere and all(base):
            ratios = {round(x / y, 4) for x, y in zip(elsewhere, base)}
            steady = len(ratios) == 1
            true = true or steady and found.kind == "unit"
            true = true or steady and (" what it should be" in found.message or "The figures are right" in found.message)
    if found.kind == "input" and right:
        for number, said in of_an_input(learner.posed, (learner.posed.unit, *(each.unit for each in learner.posed.given.values()))):
            if said in found.causes and math.isclose(number, learner.work(method) or 0, rel_tol=1e-6):
                true = true or "decimal" in method
    return f"{'told' if found.sure else 'asked'} {'truly' if true else 'falsely'}"


def shown(value: float, unit: str, figures: int = 3) -> str:
    return f"{units.number(units.convert(value, unit), figures)} {unit}"


def methods(learner: Learner, draw: random.Random, each: int) -> list[Method]:
    """Wrong methods that are neither right nor declared, each once."""
    text = right_text(learner.declared)
    found = [Method("by hand", other) for other in BY_HAND.get(name_of(learner.declared), ())]
    if text:
        found += [method for _ in range(each) if (method := mutated(text, list(learner.given), draw, learner.alike))]
        right = learner.elsewhere_of(text)
    else:
        return []
    slips = [learner.explained(slip.feedback) for slip in (learner.declared.wrong if isinstance(learner.declared, Numeric) else learner.declared.slips)]
    kept, seen = [], set()
    for method in found:
        value, elsewhere = learner.work(method.text), learner.elsewhere_of(method.text)
        if value is None or value == 0 or None in elsewhere or same(elsewhere, right) or any(same(elsewhere, one) for slip in slips for one in slip):
            continue
        if abs(value) > 1e6 * abs(learner.posed.answer) or abs(value) < 1e-6 * abs(learner.posed.answer):
            continue  # nobody hands that in
        key = tuple(f"{number:.6g}" for number in elsewhere)
        if key not in seen:
            seen.add(key)
            kept.append(method)
    return kept


def campaign(seeds, each: int, draw: random.Random, questions=None) -> dict[str, collections.Counter]:
    """Counts of judgements: of undeclared wrong methods, of nonsense, and examples of each kind."""
    counts: dict[str, collections.Counter] = collections.defaultdict(collections.Counter)
    counts["examples"] = collections.defaultdict(list)
    for question in questions or declared():
        for seed in seeds if not isinstance(question, Numeric) or question.varies else list(seeds)[:1]:
            learner = Learner(question, seed)
            for method in methods(learner, draw, each):
                value = learner.work(method.text)
                rounding = draw.uniform(-0.002, 0.002) if draw.random() < 0.15 else 0.0
                text = shown(value * (1 + rounding), learner.posed.unit, 4 if draw.random() < 0.15 else 3)
                found = diagnose(learner.posed, text)
                verdict = judged(learner, method.text, found)
                counts["methods"][verdict] += 1
                counts[f"made: {method.made.partition(' and ')[0]}"][verdict] += 1
                counts["examples"][verdict].append((name_of(question), seed, method.made, method.text, text, found.message))
            for _ in range(3):
                if learner.posed.answer:
                    value = learner.posed.answer * 10 ** draw.uniform(-1, 1)
                    found = diagnose(learner.posed, shown(value, learner.posed.unit))
                    if not found.right:
                        named = "silent" if not found.causes else "told" if found.sure else "asked"
                        counts["nonsense"][named] += 1
    return counts


# What the campaign is held to, as shares of all undeclared wrong methods and of all nonsense: at least, or at most.
HELD = (
    ("named truly", "methods", ("told truly", "asked truly"), 0.6, 1.0), ("told falsely", "methods", ("told falsely",), 0.0, 0.01),
    ("asked falsely", "methods", ("asked falsely",), 0.0, 0.05), ("nonsense told as a fact", "nonsense", ("told",), 0.0, 0.03),
    ("nonsense asked about", "nonsense", ("asked",), 0.0, 0.08),
)  # fmt: skip


def main() -> int:
    options = argparse.ArgumentParser()
    for name, value in (("seeds", 4), ("each", 24), ("draw", 1), ("show", 0), ("part", 0), ("parts", 1)):
        options.add_argument(f"--{name}", type=int, default=value)
    options.add_argument("--us", action="store_true")
    chosen = options.parse_args()
    with system.working_in(system.FEET if chosen.us else system.METRES):
        questions = [twins.here(one) if isinstance(one, Numeric) else one for one in declared()[chosen.part :: chosen.parts]]
        counts = campaign(range(2, 2 + chosen.seeds), chosen.each, random.Random(chosen.draw), questions)
    examples = counts.pop("examples")
    single = [row for row in examples["accepted"] if " and " not in row[2]]
    print(f"accepted with one thing done wrong: {len(single)}; with two at once, which no numbers keep apart: {len(examples['accepted']) - len(single)}")
    for row in examples["accepted"]:
        print("  ", *row[:5], sep=" | ")
    broken = []
    for name, kind, verdicts, low, high in HELD:
        share = sum(counts[kind][verdict] for verdict in verdicts) / max(1, sum(counts[kind].values()))
        broken += [name] if not low <= share <= high else []
        print(f"{name}: {100 * share:.2f} %, wanted {100 * low:g} to {100 * high:g} %")
    for kind, found in counts.items():
        whole = sum(found.values())
        print(f"{kind:28s} {whole:6d}  " + "  ".join(f"{verdict} {100 * count / whole:.2f} %" for verdict, count in sorted(found.items())))
    draw = random.Random(chosen.draw)
    for verdict, rows in examples.items():
        if chosen.show and verdict not in ("told truly", "asked truly"):
            print(f"\n--- {verdict}")
            for row in draw.sample(rows, min(chosen.show, len(rows))):
                print("  ", *row, sep=" | ")
    return 1 if broken or [row for row in single if row[2] != "by hand"] else 0


if __name__ == "__main__":
    raise SystemExit(main())
