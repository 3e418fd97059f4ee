"""Derivations: each kind of step, once right and once broken on purpose. A broken one is refused by formula and step."""

import dataclasses

import pytest

from brimwork import cli, prove, topics
from brimwork.by_hand import ByHand
from brimwork.derivation import NotProved, derived, status_of_step
from brimwork.formula import Formula, Published
from brimwork.laws import continuity, flow_on_a_crest, free_fall, specific_energy, velocity_head, viscosity
from brimwork.sources import Source
from brimwork.steps import Approach, Eliminate, Law, Ode, Optimum, Rearrange, Solve, Step, Take
from brimwork.topics import find

SOURCE = Source("invented for this test", "memory").at("p. 1")
LIP = "Q = C_d*b*Integral(v, (z, 0, H))"
CREST = (specific_energy, flow_on_a_crest, Eliminate("speed", out=("v",), relation="q = y_c*sqrt(2*g*(E_s - y_c))"))
FILM = (Take("weight", "tau = rho*g*sin(beta)*(delta - y)"), viscosity)
SPEED = "rho*g*sin(beta)/mu*(delta*y - y**2/2)"


def declared(result, equals, *steps, **more) -> Formula:
    return Formula("made for this test", result, equals, steps=steps, unpublished="a test", **more)


def crest(kind="max", at="2/3"):
    return declared("y_c", f"{at}*E_s", *CREST, Optimum("best", of="q", kind=kind, relation=f"y_c = {at}*E_s"), Step("again"))


def film(solution=SPEED, at=(("y = 0", "u = 0"),), equals=SPEED):
    return declared("u", equals, *FILM, Ode("solve", f"u = {solution}", at=at), Step("again"))


def share(equals="n_w*e_H/H", to="0*H"):
    return declared("r_Q", equals, Take("a power", "r_Q = (1 + e_H/H)**n_w - 1"), Approach("small", letter="e_H", to=to))


def hole(*rearranged):
    law = Law("hole", "Q/sqrt(2*g*H) = C_d*A_o", SOURCE)
    return declared("A_o", "Q/(C_d*sqrt(2*g*H))", law, *(Rearrange("turn", text) for text in rearranged), Solve("for the area"))


PIT = find("volume of a straight pit")
RIGHT = {
    "Step": declared("Q", "2/3*C_d*b*sqrt(2*g)*H**(3/2)", free_fall, Take("add", LIP), Step("integrate")),
    "Step, checked at points": declared(
        "Q", "C_d*b*cos(theta)*H*sqrt(g*H)", Take("add", "Q = C_d*b*(cos(theta/2)**4 - sin(theta/2)**4)*H*sqrt(g*H)"), Step("half angles")
    ),
    "Eliminate": declared("h_a", "Q**2/(2*g*A_a**2)", velocity_head, continuity, Eliminate("speed", out=("v",))),
    "Solve": declared("H", "(Q/(C_w*b))**(2/3)", Take("flow", "Q = C_w*b*H**(3/2)"), Solve("for the head", of="Q")),
    "Solve a law": declared("A_o", "Q/(C_d*sqrt(2*g*H))", Law("hole", "Q/(C_d*A_o) = sqrt(2*g*H)", SOURCE), Solve("for the area")),
    "Rearrange": hole("C_d*A_o = Q/sqrt(2*g*H)", "2*Q/sqrt(2*g*H) - C_d*A_o = C_d*A_o"),
    "Optimum, greatest": crest(),
    "Optimum, smallest": declared(
        "y_c",
        "(q**2/g)**(1/3)",
        Take("energy", "E_s = y_c + q**2/(2*g*y_c**2)"),
        Optimum("least", of="E_s", kind="min", relation="y_c = (q**2/g)**(1/3)"),
        Step("again"),
    ),
    "Approach": share(),
    "Ode": film(),
    "starting from a formula": declared("h", "V/(L*W)", PIT, Solve("for the depth", of="V")),
}
BROKEN = {
    "Step, wrong factor": (declared("Q", "1/2*C_d*b*sqrt(2*g)*H**(3/2)", free_fall, Take("add", LIP), Step("integrate")), 3, "does not follow"),
    "Step, wrong exponent": (declared("Q", "2/3*C_d*b*sqrt(2*g*H)*P", free_fall, Take("add", LIP), Step("integrate")), 3, "does not follow"),
    "Step, nearly right": (
        declared("Q", "0.66666666666666667*C_d*b*sqrt(2*g)*H**(3/2)", free_fall, Take("add", LIP), Step("integrate")),
        3,
        "does not follow",
    ),
    "Step, no real value": (declared("Q", "C_w*b*(-H)**(3/2)", Take("flow", "Q = C_w*b*H**(3/2)"), Step("turn")), 2, "no real value"),
    "Step, dimensions": (
        declared("Q", "C_w*b*H**(3/2)", Take("flow", "Q = C_w*b*H**(3/2)"), Step("slow", "Q = C_w*b*H"), Step("again")),
        2,
        "do not balance",
    ),
    "Law, dimensions": (declared("Q", "C_w*b*H**(3/2)", Law("flow", "Q = C_w*H**(3/2)", SOURCE), Step("again")), 1, "do not balance"),
    "Take, an old letter": (declared("Q", "C_w*b*H**(3/2)", Take("flow", "Q = C_w*b*H**(3/2)"), Take("other", "Q = A_a*v"), Step("again")), 2, "is not new"),
    "Take, a letter from itself": (declared("Q", "C_w*b*H**(3/2)", Take("flow", "Q = Q + C_w*b*H**(3/2)"), Step("again")), 1, "is not new"),
    "Take, an expression": (declared("Q", "C_w*b*H**(3/2)", Take("flow", "2*Q = 2*C_w*b*H**(3/2)"), Step("again")), 1, "is not new"),
    "Eliminate, wrong factor": (declared("h_a", "Q**2/(g*A_a**2)", velocity_head, continuity, Eliminate("speed", out=("v",))), 3, "does not follow"),
    "Eliminate, a letter that is not there": (declared("h_a", "Q**2/(2*g*A_a**2)", velocity_head, continuity, Eliminate("width", out=("b",))), 3, "solved out"),
    "Solve, wrong exponent": (declared("H", "(Q/(C_w*b))**(4/3)/b", Take("flow", "Q = C_w*b*H**(3/2)"), Solve("for the head", of="Q")), 2, "does not follow"),
    "Solve, wrong factor": (declared("H", "2*(Q/(C_w*b))**(2/3)", Take("flow", "Q = C_w*b*H**(3/2)"), Solve("for the head", of="Q")), 2, "does not follow"),
    "Solve, nothing to solve": (declared("H", "Q/(C_w*b)*(C_w*b/Q)**(1/3)", Solve("for the head", of="Q")), 1, "no earlier equation"),
    "Solve, a letter that is not there": (
        declared("h", "V/(L*W)", Take("flow", "Q = C_w*b*H**(3/2)"), Solve("for the depth", of="Q")),
        2,
        "does not stand in",
    ),
    "Rearrange, wrong factor": (hole("C_d*A_o = 2*Q/sqrt(2*g*H)"), 2, "in another way"),
    "Rearrange, squared": (hole("Q**2 = 2*g*H*(C_d*A_o)**2"), 2, "in another way"),
    "Rearrange, a term lost": (hole("C_d*A_o = Q/sqrt(2*g*H) + A_a"), 2, "in another way"),
    "Rearrange, true of itself": (hole("C_d*A_o = A_o*C_d"), 2, "says nothing"),
    "Rearrange, nothing before": (declared("Q", "A_a*v", Rearrange("again", "Q = A_a*v"), Step("again")), 1, "no earlier equation"),
    "Optimum, wrong place": (crest(at="1/3"), 4, "does not follow"),
    "Optimum, max declared as min": (crest(kind="min"), 4, "bends the other way"),
    "Optimum, neither": (crest(kind="best"), 4, "max or min"),
    "Approach, wrong factor": (share("2*n_w*e_H/H"), 2, "not 1"),
    "Approach, wrong place": (share(to="oo*H"), 2, "nomenclature"),
    "Ode, wrong solution": (film("rho*g*sin(beta)/mu*(delta*y - y**2)"), 3, "does not follow"),
    "Ode, wrong boundary value": (film(at=(("y = 0", "u = sqrt(2*g*delta)"),)), 3, "does not follow"),
    "Ode, wrong boundary place": (film(at=(("y = delta", "u = 0"),)), 3, "does not follow"),
    "Ode, no boundary value": (film(at=()), 3, "boundary value"),
    "Ode, no equation": (declared("u", SPEED, Ode("solve", f"u = {SPEED}", at=())), 1, "no differential equation"),
    "Formula, wrong inverse": (declared("h", "2*V/(L*W)", PIT, Solve("for the depth", of="V")), 2, "does not follow"),
    "defined by itself": (
        declared("Q", "A_a*v", Take("speed", "v = Q/A_a"), Take("flow", "Q = A_a*v"), Step("again")),
        3,
        "defined by itself",
    ),
}


@pytest.mark.parametrize("kind", RIGHT)
def test_a_right_derivation_is_proved(kind):
    assert derived(RIGHT[kind])[-1].how in ("algebra", "numbers")
    assert status_of_step(RIGHT[kind]) in ("algebra", "numbers")


@pytest.mark.parametrize("kind", BROKEN)
def test_a_broken_derivation_is_refused_by_formula_and_step(kind):
    formula, place, told = BROKEN[kind]
    with pytest.raises(NotProved) as refusal:
        derived(formula)
    message = str(refusal.value)
    assert "formula 'made for this test'" in message and f"step {place} (" in message and told in message


def test_a_last_step_that_is_not_the_formula_is_refused():
    with pytest.raises(NotProved, match="made for this test.*the last step, .*, is not the formula"):
        derived(declared("Q", "C_w*b*H**(3/2)", Take("flow", "Q = C_w*b*H**(3/2)"), Step("in parts", "Q = C_w*b*H*sqrt(H)")))


@pytest.mark.parametrize(
    "steps",
    [(Take("as we like", "Q = C_w*b*H**(3/2)"),), (Law("as we like", "Q = C_w*b*H**(3/2)", SOURCE),), (find("flow by weir coefficient"),)],
    ids=["Take", "Law", "Formula"],
)
def test_a_formula_that_is_only_taken_for_granted_is_not_proved(steps):
    with pytest.raises(NotProved, match="made for this test.*not shown"):
        derived(declared("Q", "C_w*b*H**(3/2)", *steps))


def test_a_derivation_cannot_start_from_a_formula_that_is_not_proved():
    shaky = BROKEN["Step, wrong factor"][0]
    with pytest.raises(NotProved):
        derived(declared("C_w", "1/2*C_d*sqrt(2*g)", shaky, Take("call", "C_w = Q/(b*H**(3/2))"), Step("divide")))


def test_an_inverse_is_proved_by_putting_back():
    def inverse(equals):
        return Formula("made for this test", "h", equals, inverse_of=PIT, unpublished="a test")

    assert status_of_step(inverse("V/(L*W)")) == "algebra"
    with pytest.raises(NotProved, match="does not follow"):
        derived(inverse("V/(2*L*W)"))


def test_a_proof_at_points_says_so():
    points = declared("Q", "C_d*b*(pi/2 - 2*atan(sqrt(r_Q)))*H*sqrt(g*H)", Take("arc", "Q = C_d*b*asin((1 - r_Q)/(1 + r_Q))*H*sqrt(g*H)"), Step("half angles"))
    assert status_of_step(points) == "numbers" and status_of_step(RIGHT["Step"]) == "algebra"


# --- the second guard: a formula may balance, be "derived", and still be wrong ----------------------------------------------------------

WRONG = dataclasses.replace(
    find("flow over a level lip"),
    equals="C_d*b*sqrt(2*g)*H**(3/2)",
    steps=(Take("all the water as fast as the deepest layer", "v = sqrt(2*g*H)"), Take("speed times area", "Q = C_d*b*H*v"), Step("put in")),
)


def test_a_wrong_formula_with_the_right_dimensions_fails_its_published_value():
    verdict = prove.verdict("overflow", WRONG)
    assert verdict.status == "algebra" and not any(check.agrees for check in verdict.checks)
    assert len(verdict.faults) == 2 and "Sarkar" in verdict.faults[0] and "+49.98%" in verdict.faults[0]


def test_prove_ends_with_one_when_a_published_value_disagrees(monkeypatch, capsys):
    monkeypatch.setattr(topics, "formulas", lambda: {WRONG.name: WRONG})
    for place in (prove, topics):
        monkeypatch.setattr(place, "topics", lambda: {"overflow": (WRONG,)})
    assert cli.main(["prove"]) == 1 and cli.main(["prove", WRONG.name]) == 1
    assert "    ! A. K. Sarkar" in capsys.readouterr().out


def test_prove_ends_with_one_when_a_step_does_not_follow(monkeypatch, capsys):
    broken = BROKEN["Optimum, max declared as min"][0]
    monkeypatch.setattr(topics, "formulas", lambda: {broken.name: broken})
    monkeypatch.setattr(prove, "topics", lambda: {"overflow": (broken,)})
    assert cli.main(["prove"]) == 1
    assert "NOT PROVED" in capsys.readouterr().out


def test_a_published_value_whose_inputs_cannot_be_used_is_a_fault():
    bad = dataclasses.replace(PIT, published=(Published("L=1 m, W=1 m", "1 m3", 0.01, SOURCE),))
    assert "still needs h" in prove.verdict("volume", bad).faults[0]


FOOLED = {
    "a limit that keeps more than its leading power": ("Q", "A_o*v*(1 + 100*H/P)", (Take("taken", "Q = A_o*v*(1 + H/P)"), Approach("for a small head", letter="H", to="0*H"))),
    "a boundary value that says nothing of the solution": (
        "u", "rho*g/mu*(delta*y - y**2/2) + g*rho*delta**2/mu",
        (Take("shear carries weight", "tau = rho*g*(delta - y)"), viscosity, Ode("solve", "u = rho*g/mu*(delta*y - y**2/2) + g*rho*delta**2/mu", at=(("y = delta", "g = g"),))),
    ),
    "a constant of nature taken anew": ("v", "sqrt(2*g*z)", (Take("heavier", "g = v**2/z"), Step("so", "v = sqrt(2*g*z)"))),
    "a step that only repeats what was taken": ("Q", "A_o*v", (Take("taken", "Q = A_o*v"), Step("tidied"))),
    "an equation that says nothing new": (
        "b", "5*H", (Law("area", "A_o = b*H", free_fall.source), Law("area again", "A_o = b*H", free_fall.source), Solve("solve")),
    ),
}  # fmt: skip


@pytest.mark.parametrize("why", FOOLED)
def test_what_only_looks_like_a_proof_is_refused(why):
    result, equals, steps = FOOLED[why]
    with pytest.raises(NotProved):
        derived(Formula(name=why, result=result, equals=equals, steps=steps, unpublished="for a test"))


def test_a_formula_is_no_better_proved_than_what_it_rests_on():
    by_hand = (ByHand("C_w=1.8 m^0.5/s, b=1 m, H=0.25 m", "1.8*1*0.25**1.5", "0.225 m3/s"),)
    fitted = Formula(name="fitted", result="Q", equals="C_w*b*H**(3/2)", fitted="somebody", unpublished="for a test", by_hand=by_hand)
    turned = Formula(name="turned", result="H", equals="(Q/(C_w*b))**(2/3)", inverse_of=fitted, unpublished="for a test")
    assert status_of_step(turned) == "fitted"
    wrong = Formula(name="wrong", result="v", equals="sqrt(3*g*z)", steps=(free_fall, Step("wrong")), unpublished="for a test")
    with pytest.raises(NotProved):
        status_of_step(Formula(name="turned wrong", result="z", equals="v**2/(3*g)", inverse_of=wrong, unpublished="for a test"))
