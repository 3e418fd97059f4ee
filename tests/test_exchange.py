"""The bank for other programs: one fixed item for each variant, tolerance as interval, a sentence for each slip, and packages that hold together."""

import csv
import io
import zipfile
from xml.etree import ElementTree as Tree

import pytest

from brimwork.classroom import exchange, qti
from brimwork.cli import main
from brimwork.exercise import bank
from brimwork.exercise.question import Question
from brimwork.units import InputError, convert

EDITIONS = pytest.mark.parametrize("edition", qti.EDITIONS, ids=lambda edition: edition.name)


def read(question, edition):
    root = Tree.fromstring(qti.item(question, edition))
    return root, lambda name: f"{{{edition.items}}}{edition.tag(name)}"


@EDITIONS
def test_the_right_number_is_an_interval_as_wide_as_the_tolerance(edition):
    """0.55 % either side of 2.433 mm, worked by hand: 1800 L/h over pi x 0.78 m with 1.7."""
    import math

    head = (1800 / 3.6e6 / (1.7 * math.pi * 0.78)) ** (2 / 3) * 1e3
    root, tag = read(bank.pose("T04.1", 1), edition)
    case = root.find(f".//{tag('responseIf')}")
    low, high = (float(value.text) for value in case.find(tag("and")).iter(tag("baseValue")))
    assert low == pytest.approx(head * 0.9945) and high == pytest.approx(head * 1.0055)
    assert [value.text for value in root.find(tag("responseDeclaration")).iter(tag("value"))] == [f"{head:.4g}"]


@EDITIONS
def test_each_slip_has_an_interval_and_a_sentence_of_its_own(edition):
    question = bank.pose("T04.1", 1)
    root, tag = read(question, edition)
    name = edition.attribute("baseType")
    cases = root.findall(f".//{tag('responseElseIf')}")
    assert len(cases) == len(question.slips)
    told = {one.get("identifier"): "".join(one.itertext()).strip() for one in root.findall(tag("modalFeedback"))}
    for case, slip in zip(cases, question.slips):
        low, high = (float(value.text) for value in case.find(tag("and")).iter(tag("baseValue")))
        assert low < convert(slip.number, question.unit) < high
        key = next(value.text for value in case.iter(tag("baseValue")) if value.get(name) == "identifier")
        assert slip.feedback in told[key]


@EDITIONS
def test_every_question_of_the_bank_that_a_machine_can_mark_is_an_item(edition):
    questions = exchange.chosen([], 1)
    assert {question.code for question in questions} == {code for code in bank.questions() if qti.exchangeable(bank.pose(code, 1))}
    package = zipfile.ZipFile(io.BytesIO(qti.package(questions, edition)))
    manifest = Tree.fromstring(package.read("imsmanifest.xml"))
    listed = [file.get("href") for file in manifest.iter(f"{{{edition.package}}}file")]
    assert sorted(listed) == sorted(name for name in package.namelist() if name != "imsmanifest.xml") and len({*listed}) == len(listed)
    for question in questions:
        root = Tree.fromstring(package.read(f"items/{qti.identifier(question)}.xml"))
        tag = lambda name: f"{{{edition.items}}}{edition.tag(name)}"  # noqa: E731
        outcomes = {value.text for value in root.iter(tag("baseValue")) if value.get(edition.attribute("baseType")) == "identifier"}
        told = {one.get("identifier") for one in root.findall(tag("modalFeedback"))}
        assert told <= outcomes, question.code
        if getattr(question, "sheet", None):
            assert root.find(f".//{{{edition.items}}}img").get("alt")


def test_variants_are_different_and_packages_the_same_every_time():
    found = exchange.variants("T04.1", 5)
    assert len({tuple(question.numbers.values()) for question in found}) == 5 and isinstance(found[0], Question)
    assert qti.package(found, qti.V30) == qti.package(exchange.variants("T04.1", 5), qti.V30)
    assert len(exchange.variants("T04.8", 5)) == 1
    with pytest.raises(InputError):
        exchange.chosen(["T04.1"], 0)


def test_the_bank_as_csv_and_markdown(tmp_path, capsys):
    assert main(["bank", "T04.1", "T04.8", "flow over a round rim", "--variants", "3", "--to", str(tmp_path / "q")]) == 0
    rows = list(csv.DictReader(io.StringIO((tmp_path / "q" / "questions.csv").read_text(encoding="utf-8-sig"))))
    assert [row["question"] for row in rows] == ["T04.1"] * 3 + ["T04.8"] + ["flow over a round rim"] * 3
    assert "You used the diameter as the edge" in rows[0]["known slips"] and rows[0]["right"] == "2.433 mm"
    text = (tmp_path / "q" / "questions.md").read_text()
    assert text.count("## ") == 7 and "**Key:**" in text
    assert main(["bank", "T04.1", "T04.8", "flow over a round rim", "--variants", "3", "--to", str(tmp_path / "q")]) == 0, "the same again is no harm"
    assert main(["bank", "T04.1", "--to", str(tmp_path / "q")]) == 2 and "there already" in capsys.readouterr().err
    assert main(["bank", "T99", "--to", str(tmp_path / "n")]) == 2


def test_words_with_signs_stand_as_they_are():
    from dataclasses import replace

    question = replace(bank.pose("T04.1", 1), text='a < b & "c" ]]> \x00\u202e')
    for edition in qti.EDITIONS:
        root, tag = read(question, edition)
        assert next(root.find(tag("itemBody")).iter(f"{{{edition.items}}}p")).text.startswith('a < b & "c" ]]>')
