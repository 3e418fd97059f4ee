"""A course of twelve weeks on one page: what each week is about, its workbook, what is measured in the yard, a sheet to print, slides from the figures."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from brimwork import system, topics
from brimwork.classroom import pages, printed
from brimwork.classroom.numbers import Issued
from brimwork.classroom.qti import exchangeable
from brimwork.classroom.questions import SetQuestion
from brimwork.drawing import svg
from brimwork.drawing.pictures import picture
from brimwork.exercise import bank
from brimwork.exercise.bank import puzzles
from brimwork.exercise.question import ask
from brimwork.files import begin
from brimwork.shown import Markup, attribute, escape
from brimwork.units import InputError


@dataclass(frozen=True)
class Topic:
    """A topic of the bank by its code: what somebody can do afterwards, its workbooks, formulas whose figures make its slides."""

    code: str
    name: str
    outcomes: tuple[str, ...]
    workbooks: tuple[str, ...]
    figures: tuple[str, ...]

    def serves(self, code: str) -> int:
        """Which of the outcomes, counted from 0, a question of the topic serves."""
        return int(code.partition(".")[2] in _SECOND[self.code].split())


TOPICS = {
    topic.code: topic
    for topic in (
        Topic("T01", "Brief, siting and survey", ("turn a wish into numbers that can be measured", "test a place against roots, services, splash and noise"), ("siting",), ("height that a sill hides", "root protection radius")),
        Topic("T02", "Units, geometry and quantities", ("change between gallons, litres and cubic feet without a slip", "work out net volumes and round up to what is sold"), ("volume",), ("volume of a straight pit", "volume of a battered pit", "water in a round bowl")),
        Topic("T03", "Levels and tolerances", ("book levels and reduce them to a datum", "say what a rim out of level does to the flow"), ("siting", "overflow"), ("level of a point", "diagonal for squaring", "flow ratio of a rim out of level")),
        Topic("T04", "Overflow", ("choose a flow for each metre of edge for a wanted look", "go from flow to head and back"), ("overflow",), ("flow over a level lip", "flow over a round rim", "flow over a broad crest")),
        Topic("T05", "Pipes and pumps", ("find the head that a pump must give, and where pump and pipe agree", "spot a label that cannot be true"), ("pipes",), ("speed in a pipe", "head lost to friction", "total dynamic head", "duty flow")),
        Topic("T06", "Reservoir and water balance", ("keep gross, usable and dead water apart", "say how far the level drops, and for how many days the water lasts"), ("reservoir", "water-balance"), ("water in blocks and stone", "usable water above the pump limit", "drop of the level on start", "days without top-up")),
        Topic("T07", "Loads, blocks and stability", ("find the patch that really carries and the pressure under it", "check what an offset, a push or a lift by water does"), ("loads",), ("contact patch of a ring foot", "pressure on the block tops", "tipping factor", "uplift of foam")),
        Topic("T08", "Ground", ("judge soil by hand and choose a bearing value to ask about", "test an empty reservoir against rising water"), ("ground", "lining"), ("depth still to dig", "loose volume of spoil")),
        Topic("T09", "Lining and formwork", ("list the cuts of a box", "work out the liner and where its folds lie"), ("lining",), ("inside length of the box", "length of the liner", "liner folded away in a corner")),
        Topic("T10", "Electrical supply", ("say what only an electrician may do", "work out voltage drop and the cost of a year"), ("supply",), ("voltage drop in per cent by resistance", "running cost in a year")),
        Topic("T11", "Safety and handling", ("write down the risks of a dig and a lift", "work out sling tension and vibration"), ("supply",), ("pull in each leg of a sling",)),
        Topic("T12", "Cost and programme", ("count what is bought, and keep mark-up and margin apart", "draw a programme with hold points"), ("cost",), ("price from margin", "cost of a whole life")),
        Topic("T13", "Commissioning and faults", ("run and record the tests of a first filling", "tell a leak from drying up, and find faults in a fixed order"), ("commissioning", "water-balance"), ("flow by a bucket", "leak through a narrow gap round a pipe")),
        Topic("T14", "Other features on the same reservoir", ("say which sums stay and which change", "size a blade, a drilled stone, a stepped cascade"), ("variants",), ("throw of a free sheet or jet", "apron that the water wants", "flow down a rill")),
    )
}  # fmt: skip


# The questions of each topic, by what stands after the point of their codes, that serve its second outcome; all others serve the first.
_SECOND = {
    "T01": "1 2 4 5 6 8 9 11 12", "T02": "3 4 5 20 21 22 23", "T03": "4 5", "T04": "1 6 7 8 9 10", "T05": "5", "T06": "2 3 4 5 6 7 8 9 10 11 12 13 24",
    "T07": "4 5", "T08": "2 20 21 23", "T09": "2 4 6 7 20 21 23", "T10": "1 2 3 4 6 20 21 22 23", "T11": "2 3", "T12": "3 6", "T13": "2 6 20 21 22 23",
    "T14": "2 4 5 20 22 23",
}  # fmt: skip


@dataclass(frozen=True)
class Week:
    """A week, or two together: its topics, and the measurement in the yard that goes into each learner's own design."""

    number: str
    topics: tuple[str, ...]
    yard: str


WEEKS = (
    Week("1", ("T02",), "Mark out the pit and check its diagonals."),
    Week("2", ("T01",), "Fill in a survey sheet: levels, services, roots, and what was not looked at."),
    Week("3", ("T03",), "Level round a bowl at eight points of its rim."),
    Week("4", ("T04",), "Judge the film by eye at three flows over a tray with a lip."),
    Week("5 and 6", ("T05",), "Time a bucket at three heights of the hose, and check the pump's label."),
    Week("7", ("T06",), "Predict the drop at the start, then measure it."),
    Week("8", ("T07",), "Trace the patch on which a foot really stands."),
    Week("9", ("T08", "T09"), "Roll the soil between the fingers; chalk the liner at full size on the paving."),
    Week("10", ("T10", "T11"), "Pace the cable's way, unplugged; write a plan for a lift, and lift nothing."),
    Week("11", ("T12", "T14"), "Price a shopping list from two shops."),
    Week("12", ("T13",), "Test for leaks beside a control bucket; hand in the pack."),
)
KIT = "For the yard: a bucket with marks, a stop-watch, a 1 m level, an automatic level with staff, a tray with a lip, 10 m of hose, pebbles, a block of foam, a spring balance."
CARE = (
    "Nobody goes into a pit whose sides nobody competent has judged; services are located before anyone digs; mains wiring is for an electrician; heavy things are lifted by"
    " a plan; open water is fenced or covered when nobody is there. Local codes and licensed practice come first."
)


def questions_of_course(topic: str) -> list[Issued]:
    """The questions of a topic that can be worked on paper, on numbers that no workbook prints where they vary; not those about a picture that moves."""
    found, moving = [], {puzzle.code for puzzle in puzzles.QUESTIONS}
    for code in bank.questions():
        if code.partition(".")[0] == topic and code not in moving and exchangeable(bank.pose(code, 1)):
            seed = 12 if bank.pose(code, 1).varies else 1
            found.append(Issued(SetQuestion(code, 1), seed, getattr(bank.pose(code, seed), "numbers", {})))
    return found


def write_course_pages(folder: Path, region: str = "UK") -> list[str]:
    """Write the page of the course, a sheet and a key for each topic, and slides. Returns their names. Raises InputError."""
    made: dict[str, bytes] = {}
    with system.working_in(system.FEET if region == "US" else system.METRES):
        made |= {"course.html": course_page(), "slides.html": slides()}
        for code, topic in TOPICS.items():
            issued, title = questions_of_course(code), f"{code} {topic.name}"
            made[f"{code}-sheet.pdf"] = printed.worksheet(title, region, issued)
            made[f"{code}-key.pdf"] = printed.worksheet(title, region, issued, keyed=True)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in made.items():
            try:
                begin(folder / name, content)
            except FileExistsError:
                if (folder / name).read_bytes() != content:
                    raise InputError(f"{folder / name} is there already and differs: name another folder with --to") from None
    except OSError as error:
        raise InputError(f"{folder} cannot be written ({error.strerror}): name another folder with --to") from None
    return [*made]


def course_page() -> bytes:
    """Twelve weeks in one table, with links to sheets, keys and slides beside it."""
    head = Markup("").join(
        Markup(f"<th scope='col'>{escape(name)}</th>") for name in ("week", "topic", "afterwards somebody can", "workbook", "in the yard", "to print", "slides")
    )
    rows = Markup("\n").join(_row(week, code, first=code == week.topics[0]) for week in WEEKS for code in week.topics)
    return pages.page(
        "A course of twelve weeks",
        Markup(
            f"<h1>A course of twelve weeks</h1>\n<p>{escape('Each week: half an hour of a workbook, half an hour in the yard, a sheet without computers. What is measured goes into each own design; its pack is handed in at the end.')}</p>\n"
            f"<div class='wide'><table><thead><tr>{head}</tr></thead><tbody>\n{rows}\n</tbody></table></div>\n<p>{escape(KIT)}</p>\n<p><strong>Take care.</strong> {escape(CARE)}</p>"
        ),
        wide=True,
    )


def _row(week: Week, code: str, first: bool) -> Markup:
    topic = TOPICS[code]
    outcomes = "; ".join(topic.outcomes)
    links = Markup(f"<a href='{attribute(code)}-sheet.pdf'>sheet</a>, <a href='{attribute(code)}-key.pdf'>key</a>")
    shown = Markup(f"<a href='slides.html#{attribute(code)}'>{escape(len(topic.figures))}</a>") if topic.figures else Markup("")
    span, apart = attribute(len(week.topics)), (Markup(""), Markup(""))
    if first:
        head = Markup(f"<th scope='rowgroup' rowspan='{span}'>{escape(week.number)}</th>")
        apart = head, Markup(f"<td rowspan='{span}'>{escape(week.yard)}</td>")
    return Markup(
        f"<tr>{apart[0]}<td>{escape(code)} {escape(topic.name)}</td><td>{escape(outcomes)}</td><td>{escape(', '.join(topic.workbooks))}</td>{apart[1]}<td>{links}</td><td>{shown}</td></tr>"
    )


def slides() -> bytes:
    """The figures at projector size, one a slide: each fills the page, and the next one is a screen further down."""
    parts = []
    for code, topic in TOPICS.items():
        for number, name in enumerate(topic.figures):
            formula = topics.find(name)
            shown = picture(formula, ask(formula, 3).letters, formula.inputs[-1])
            drawn = svg.write_svg(shown.sheet, f"s{code}{number}")
            place = attribute(code) if number == 0 else attribute(f"{code}-{number + 1}")
            parts.append(
                Markup(
                    f"<section class='slide' id='{place}'><h1>{escape(code)} {escape(topic.name)}</h1><figure>{drawn}<figcaption>{escape(shown.sentence)}</figcaption></figure></section>"
                )
            )
    return pages.page("Slides", Markup("\n".join(parts)), wide=True)
