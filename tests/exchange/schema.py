"""Holds the items of the question bank to the published schemas of QTI 2.1 and 3.0 (1EdTech), and the manifests to those of content packaging.

python tests/exchange/schema.py FOLDER

FOLDER holds the schemas as published, in folders of any layout: imsqti_v2p1p1.xsd, imsqti_asiv3p0_v1p0.xsd (or imsqti_itemv3p0_v1p0.xsd), imscp_v1p1.xsd,
imsqtiv3p0_imscpv1p2_v1p0.xsd, and those that they take in; every address in them is looked up by the name of its file. Needs lxml and citolab-qti-convert. Prints a line an edition.
"""

import io
import sys
import zipfile
from pathlib import Path

from lxml import etree

from brimwork.classroom import exchange, qti

SCHEMAS = {"2.1": ("imsqti_v2p1p1.xsd", "imscp_v1p1.xsd"), "3.0": ("imsqti_asiv3p0_v1p0.xsd", "imsqtiv3p0_imscpv1p2_v1p0.xsd")}


class Local(etree.Resolver):
    """Every schema that another one asks for, by the name of its file, from the folder; nothing from outside."""

    def __init__(self, folder: Path):
        self.files = {path.name: path for path in sorted(folder.rglob("*.xsd"), reverse=True)}
        self.missing: set[str] = set()

    def resolve(self, url, identifier, context):
        name = url.rsplit("/", 1)[-1]
        if not url.startswith(("http:", "https:")):
            return None  # beside the schema that asks for it
        if name in self.files:
            return self.resolve_filename(str(self.files[name]), context)
        self.missing.add(url)
        return self.resolve_empty(context)


def schema(name: str, local: Local) -> etree.XMLSchema:
    parser = etree.XMLParser(no_network=True, load_dtd=False)
    parser.resolvers.add(local)
    return etree.XMLSchema(etree.parse(str(local.files[name]), parser))


def main() -> int:
    local, faults = Local(Path(sys.argv[1])), 0
    questions = exchange.chosen([], 2)
    for edition in qti.EDITIONS:
        package = zipfile.ZipFile(io.BytesIO(qti.package(questions, edition)))
        manifests = [name for name in package.namelist() if name == "imsmanifest.xml"]
        items = [name for name in package.namelist() if name.startswith("items/") and name.endswith(".xml")]
        for name, files in zip(SCHEMAS[edition.name], (items, manifests)):
            faults += held(f"QTI {edition.name}", name, {file: package.read(file) for file in files}, local)
        if edition is qti.V30:
            faults += held(
                "QTI 3.0, made 2.1 by a converter that is not ours", SCHEMAS["2.1"][0], {file: converted(package.read(file)) for file in items}, local
            )
    return 1 if faults else 0


def held(what: str, name: str, files: dict[str, bytes], local: Local) -> int:
    """How many of these files do not keep to a schema; says so."""
    if name not in local.files:
        print(f"{what}: {len(files)} files not held to {name}, which is not in the folder")
        return 0
    of, faults = schema(name, local), 0
    for file, content in files.items():
        if not of.validate(etree.fromstring(content)):
            faults += 1
            print(f"{what}, {file}: {of.error_log[0]}")
    print(f"{what}: {len(files)} files held to {name}: {faults or 'no'} fault{'s' * (faults != 1)}")
    return faults


def converted(item: bytes) -> bytes:
    """An item of QTI 3.0 as one of 2.1, by Citolab's converter."""
    from qti_convert import convert_qti3_to_qti21

    return convert_qti3_to_qti21(item.decode()).xml.encode()


if __name__ == "__main__":
    sys.exit(main())
