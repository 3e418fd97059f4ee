"""Questions as items of the open standard for questions and tests, QTI 2.1 and 3.0 (1EdTech): one fixed item for each variant, in a content package.

A number is right within an interval, each known slip has an interval and a sentence of its own, and so has the number that nobody foresaw.
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterable
from dataclasses import dataclass
from xml.etree import ElementTree as Tree

from brimwork.drawing import svg
from brimwork.drawing.records import Sheet
from brimwork.exercise.bank import Posed
from brimwork.exercise.choices import Choice, Sequence
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.question import Question, in_words
from brimwork.shown import clean
from brimwork.units import convert

_MOMENT = (2026, 1, 1, 0, 0, 0)  # of every file in a package: the same questions give the same bytes
_XSI = "http://www.w3.org/2001/XMLSchema-instance"
_HTML = {"p", "div", "img", "em", "strong"}
_ADD = 1e-9  # so that a number on the edge of its interval is inside


@dataclass(frozen=True)
class Edition:
    """One edition of the standard: names of elements and attributes, namespaces, where its schema stands."""

    name: str
    items: str
    schema: str
    package: str
    kind: str
    metadata: tuple[str, str]

    def tag(self, name: str) -> str:
        """An element as this edition spells it: responseIf, or qti-response-if."""
        return name if name in _HTML or self.name == "2.1" else f"qti-{_dashed(name)}"

    def attribute(self, name: str) -> str:
        return name if self.name == "2.1" or ":" in name or name in ("src", "alt") else _dashed(name)


def _dashed(name: str) -> str:
    return re.sub("([A-Z])", lambda found: f"-{found[1].lower()}", name)


V21 = Edition(
    "2.1", "http://www.imsglobal.org/xsd/imsqti_v2p1", "http://www.imsglobal.org/xsd/qti/qtiv2p1/imsqti_v2p1p1.xsd", "http://www.imsglobal.org/xsd/imscp_v1p1",
    "imsqti_item_xmlv2p1", ("QTIv2.1 Package", "1.0.0"),
)  # fmt: skip
V30 = Edition(
    "3.0", "http://www.imsglobal.org/xsd/imsqtiasi_v3p0", "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd",
    "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1", "imsqti_item_xmlv3p0", ("QTI Package", "3.0.0"),
)  # fmt: skip
EDITIONS = (V21, V30)


def identifier(question: Posed) -> str:
    """A name for an item that the standard allows: letters, digits, hyphens."""
    return f"Q-{re.sub('[^A-Za-z0-9]+', '-', question.code).strip('-')}-{question.seed}"


def exchangeable(question: object) -> bool:
    """Whether a question has an answer that a machine can mark."""
    return isinstance(question, Question | Choice | Sequence)


# --- one item -----------------------------------------------------------------------------------------------------------------------


class _Writer:
    def __init__(self, edition: Edition):
        self.edition = edition

    def element(self, parent: Tree.Element | None, name: str, text: str = "", **attributes: str) -> Tree.Element:
        named = {self.edition.attribute(key): value for key, value in attributes.items()}
        made = Tree.Element(self.edition.tag(name), named) if parent is None else Tree.SubElement(parent, self.edition.tag(name), named)
        made.text = clean(text) or None
        return made

    def words(self, parent: Tree.Element, lines: Iterable[str]) -> None:
        for line in lines:
            self.element(parent, "p", line)

    def value(self, parent: Tree.Element, kind: str, value: str) -> None:
        self.element(parent, "baseValue", value, baseType=kind)

    def outcome(self, parent: Tree.Element, name: str, kind: str, value: str) -> None:
        self.value(self.element(parent, "setOutcomeValue", identifier=name), kind, value)

    def verdict(self, parent: Tree.Element, score: str, feedback: str) -> None:
        self.outcome(parent, "SCORE", "float", score)
        self.outcome(parent, "FEEDBACK", "identifier", feedback)

    def within(self, parent: Tree.Element, low: float, high: float) -> None:
        both = self.element(parent, "and")
        for name, limit in (("gte", low), ("lte", high)):
            compared = self.element(both, name)
            self.element(compared, "variable", identifier="RESPONSE")
            self.value(compared, "float", f"{limit:.10g}")


def item(question: Posed, edition: Edition, picture: str = "") -> bytes:
    """One question on its numbers as an item in XML; `picture` names the file of its drawing."""
    writer = _Writer(edition)
    root = writer.element(None, "assessmentItem", identifier=identifier(question), title=question.code, adaptive="false", timeDependent="false")
    root.set("xmlns", edition.items)
    root.set("xmlns:xsi", _XSI)
    root.set("xsi:schemaLocation", f"{edition.items} {edition.schema}")
    root.set("xml:lang", "en")
    feedback = _written(writer, root, question, picture)
    for name, text in feedback.items():
        shown = writer.element(root, "modalFeedback", outcomeIdentifier="FEEDBACK", identifier=name, showHide="show")
        writer.words(writer.element(shown, "contentBody") if edition is V30 else shown, [text])
    Tree.indent(root)
    return b'<?xml version="1.0" encoding="UTF-8"?>\n' + Tree.tostring(root, encoding="unicode").encode() + b"\n"


def _written(writer: _Writer, root: Tree.Element, question: Posed, picture: str) -> dict[str, str]:
    if isinstance(question, Question):
        return _number(writer, root, question, picture)
    if isinstance(question, Choice):
        return _choice(writer, root, question, picture)
    assert isinstance(question, Sequence), "own words are not exchanged"
    return _order(writer, root, question, picture)


def _declared(writer: _Writer, root: Tree.Element, kind: str, cardinality: str, right: Iterable[str]) -> None:
    response = writer.element(root, "responseDeclaration", identifier="RESPONSE", cardinality=cardinality, baseType=kind)
    correct = writer.element(response, "correctResponse")
    for value in right:
        writer.element(correct, "value", value)
    for name, base, first in (("SCORE", "float", "0"), ("MAXSCORE", "float", "1"), ("FEEDBACK", "identifier", "")):
        outcome = writer.element(root, "outcomeDeclaration", identifier=name, cardinality="single", baseType=base)
        if first:
            writer.element(writer.element(outcome, "defaultValue"), "value", first)


def _sheet(question: Posed) -> Sheet:
    """The drawing of a question that has one."""
    assert isinstance(question, Question) and question.sheet, "only such questions come here"
    return question.sheet


def _body(writer: _Writer, root: Tree.Element, text: str, question: Posed, picture: str) -> Tree.Element:
    body = writer.element(root, "itemBody")
    writer.words(body, [text])
    if picture:
        writer.element(writer.element(body, "p"), "img", src=picture, alt=clean(_sheet(question).alt))
    return body


def _number(writer: _Writer, root: Tree.Element, question: Question, picture: str) -> dict[str, str]:
    right = convert(question.answer, question.unit)
    _declared(writer, root, "float", "single", [f"{right:.4g}" if not question.close else f"{right:.10g}"])
    body = _body(writer, root, question.text, question, picture)
    line = writer.element(body, "p", "Your answer: ")
    unit = question.label or in_words(question.unit)
    writer.element(line, "textEntryInteraction", responseIdentifier="RESPONSE", expectedLength="12").tail = f" {unit}" if unit else None
    condition = writer.element(writer.element(root, "responseProcessing"), "responseCondition")
    feedback = {"RIGHT": f"Right: {question.told}."}
    intervals = [("RIGHT", question.answer, "1")]
    for place, slip in enumerate(question.slips, start=1):
        if not any(_meet(question, slip.number, other) for _, other, _ in intervals):
            feedback[f"SLIP-{place}"] = f"Could it be this? {slip.feedback}"
            intervals.append((f"SLIP-{place}", slip.number, "0"))
    for name, number, score in intervals:
        case = writer.element(condition, "responseIf" if name == "RIGHT" else "responseElseIf")
        around = question.band if name == "RIGHT" else question.about
        low, high = sorted(convert(number + side * around(number) * (1 + _ADD), question.unit) for side in (-1, 1))
        writer.within(case, low, high)
        writer.verdict(case, score, name)
    writer.verdict(writer.element(condition, "responseElse"), "0", "NOT-KNOWN")
    feedback["NOT-KNOWN"] = "Not right yet. Go through the working line by line, with the unit written beside each number."
    return feedback


def _meet(question: Question, one: float, other: float) -> bool:
    return abs(one - other) <= question.about(one) + question.about(other)


def _choice(writer: _Writer, root: Tree.Element, question: Choice, picture: str) -> dict[str, str]:
    names = [f"CHOICE-{place}" for place in range(1, len(question.options) + 1)]
    _declared(writer, root, "identifier", "single", [names[question.right]])
    asked = writer.element(
        _body(writer, root, question.text, question, picture), "choiceInteraction", responseIdentifier="RESPONSE", shuffle="false", maxChoices="1"
    )
    for name, option in zip(names, question.options):
        writer.element(asked, "simpleChoice", option, identifier=name)
    condition = writer.element(writer.element(root, "responseProcessing"), "responseCondition")
    order = [question.right, *(place for place in range(len(names)) if place != question.right)]
    for place in order:
        case = writer.element(condition, "responseIf" if place == question.right else "responseElseIf")
        same = writer.element(case, "match")
        writer.element(same, "variable", identifier="RESPONSE")
        writer.value(same, "identifier", names[place])
        writer.verdict(case, "1" if place == question.right else "0", f"TOLD-{place + 1}")
    return {f"TOLD-{place + 1}": diagnose(question, str(place + 1)).message for place in order}


def _order(writer: _Writer, root: Tree.Element, question: Sequence, picture: str) -> dict[str, str]:
    names = [f"STEP-{place}" for place in range(1, len(question.items) + 1)]
    _declared(writer, root, "identifier", "ordered", [names[place] for place in question.right])
    asked = writer.element(_body(writer, root, question.text, question, picture), "orderInteraction", responseIdentifier="RESPONSE", shuffle="false")
    for name, step in zip(names, question.items):
        writer.element(asked, "simpleChoice", step, identifier=name)
    condition = writer.element(writer.element(root, "responseProcessing"), "responseCondition")
    case = writer.element(condition, "responseIf")
    same = writer.element(case, "match")
    writer.element(same, "variable", identifier="RESPONSE")
    writer.element(same, "correct", identifier="RESPONSE")
    writer.verdict(case, "1", "RIGHT")
    writer.verdict(writer.element(condition, "responseElse"), "0", "NOT-YET")
    return {"RIGHT": "Right: that order works.", "NOT-YET": " ".join(("Not yet. Think of these:", *question.why))}


# --- a package ----------------------------------------------------------------------------------------------------------------------


def package(questions: Iterable[Posed], edition: Edition) -> bytes:
    """A content package with an item for each question, and its drawings. The same questions give the same bytes."""
    made, resources = io.BytesIO(), list[tuple[str, list[str]]]()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for question in questions:
            if not exchangeable(question):
                continue
            name, files = identifier(question), []
            picture = f"{name}.svg" if getattr(question, "sheet", None) else ""
            if picture:
                _put(archive, f"items/{picture}", svg.write_svg(_sheet(question), f"p{len(resources)}").encode())
                files.append(f"items/{picture}")
            _put(archive, f"items/{name}.xml", item(question, edition, picture))
            resources.append((name, [f"items/{name}.xml", *files]))
        _put(archive, "imsmanifest.xml", manifest(resources, edition))
    return made.getvalue()


def _put(archive: zipfile.ZipFile, name: str, content: bytes) -> None:
    archive.writestr(zipfile.ZipInfo(name, _MOMENT), content, zipfile.ZIP_DEFLATED)


def manifest(resources: list[tuple[str, list[str]]], edition: Edition) -> bytes:
    """What a package says of itself: each item with its files."""
    root = Tree.Element("manifest", {"xmlns": edition.package, "identifier": "BRIMWORK-QUESTIONS"})
    metadata = Tree.SubElement(root, "metadata")
    for name, text in zip(("schema", "schemaversion"), edition.metadata):
        Tree.SubElement(metadata, name).text = text
    Tree.SubElement(root, "organizations")
    listed = Tree.SubElement(root, "resources")
    for name, files in resources:
        resource = Tree.SubElement(listed, "resource", {"identifier": f"R-{name}", "type": edition.kind, "href": files[0]})
        for file in files:
            Tree.SubElement(resource, "file", {"href": file})
    Tree.indent(root)
    return b'<?xml version="1.0" encoding="UTF-8"?>\n' + Tree.tostring(root, encoding="unicode").encode() + b"\n"
