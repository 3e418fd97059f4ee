"""Head loss by the Hazen-Williams rule, which the US trade and its tables use: water at ordinary temperatures, turbulent, bores not too small."""

from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.sources import EPANET_ENGINE, HAZEN_WILLIAMS
from brimwork.steps import Step, Take

_TESTED = (TestedRange("d_pipe", "50 mm", "", HAZEN_WILLIAMS.at("pipes of 2 in and more; water near 15 degC")),)
_WHO = "Hazen and Williams, to water mains"

head_lost_by_hazen_williams = Formula(
    name="head lost by Hazen-Williams",
    result="h_f",
    equals="k_HW*L_pipe*Q**1.852/(C_HW**1.852*d_pipe**4.871)",
    fitted=_WHO,
    tested=_TESTED,
    published=(
        Published(
            "L_pipe=30 m, Q=10.00006 US gal/min, C_HW=150, d_pipe=25.4 mm",
            "2.0826676 m",
            1e-4,
            EPANET_ENGINE.at("the flow it returned at this head"),
        ),
    ),
    slips=(
        Slip(
            "k_HW*L_pipe*Q**2/(C_HW**1.852*d_pipe**4.871)",
            "You squared the flow. In this rule its power is 1.852, a little less than two. Use the power 1.852.",
        ),
        Slip("k_HW*L_pipe*Q/(C_HW*d_pipe**4.871)", "The power 1.852 on flow and coefficient is missing. Take both to that power."),
        Slip("k_HW*L_pipe*Q**1.852/(C_HW*d_pipe**4.871)", "The coefficient is raised to the power 1.852 as well."),
        Slip(
            "k_HW*L_pipe*Q**1.852/(C_HW**1.852*(1.05*d_pipe)**4.871)",
            "You used the name of the pipe size for its bore. Loss goes with nearly five powers of it: 5 % more bore is a fifth less loss. Put in the bore itself.",
        ),
        Slip(
            "k_HW*0.3048*L_pipe*Q**1.852/(C_HW**1.852*d_pipe**4.871)",
            "You took metres for feet: the pipe came out a third as long. Put in the length in metres as it is given.",
        ),
    ),
    rises=("L_pipe", "Q"),
    falls=("C_HW", "d_pipe"),
    remark="The coefficient C grows with smoothness. Manuals disagree for plastic, from 130 to 150: that alone changes the loss by 30 %.",
)

flow_by_hazen_williams = Formula(
    name="flow by Hazen-Williams",
    result="Q",
    equals="(h_f*C_HW**1.852*d_pipe**4.871/(k_HW*L_pipe))**(1/1.852)",
    inverse_of=head_lost_by_hazen_williams,
    tested=_TESTED,
    published=(
        Published("L_pipe=30 m, h_f=2.0826676 m, C_HW=150, d_pipe=25.4 mm", "10.00006 US gal/min", 5e-5, EPANET_ENGINE.at("the flow it returned at this head")),
    ),
    slips=(
        Slip("(h_f*C_HW**1.852*d_pipe**4.871/(k_HW*L_pipe))**1.852", "To undo 'to the power 1.852' you need the power 1 over 1.852. Take that power."),
        Slip(
            "sqrt(h_f*C_HW**1.852*d_pipe**4.871/(k_HW*L_pipe))",
            "You took the square root. The power in this rule is 1.852, not two. Use one over 1.852 as the power.",
        ),
    ),
    rises=("h_f", "C_HW", "d_pipe"),
    falls=("L_pipe",),
)

head_lost_at_another_flow = Formula(
    name="head lost at another flow",
    result="h_f2",
    equals="h_f1*(Q_2/Q_1)**1.852",
    fitted="Hazen and Williams: the power of the flow",
    steps=(
        Take("by Hazen-Williams, the loss at the flow where it is known", "h_f1 = k_HW*L_pipe*Q_1**1.852/(C_HW**1.852*d_pipe**4.871)"),
        Take("and in the same pipe at the other flow", "h_f2 = k_HW*L_pipe*Q_2**1.852/(C_HW**1.852*d_pipe**4.871)"),
        Step("pipe and coefficient cancel"),
    ),
    unpublished="a ratio of the Hazen-Williams rule, which is checked",
    slips=(
        Slip("h_f1*Q_2/Q_1", "You scaled loss in step with flow. Loss climbs nearly with the square of flow; use the ratio to the power shown in the example."),
        Slip("h_f1*(Q_1/Q_2)**1.852", "The flows have changed places: more flow loses more head."),
        Slip("h_f1", "You left the loss as it was. More flow loses more head, nearly with its square."),
        Slip(
            "h_f1 + 1.852*h_f1*(Q_2 - Q_1)/Q_1",
            "That is the slope at the first flow. It serves for a small change only; for this one take the power. Take the ratio to the power 1.852.",
        ),
        Slip(
            "h_f1*sqrt(Q_2/Q_1)",
            "You took the square root of the ratio. It goes the other way: nearly the square. Take the ratio of the flows to the power 1.852.",
        ),
    ),
    rises=("h_f1", "Q_2"),
    falls=("Q_1",),
)
