"""Holds bundles against fhirkit, and their narratives against a reader of XML: `check.py`, a list of files on standard input.

Prints a line of JSON for each: {file, faults}.
"""

import json
import sys
import xml.etree.ElementTree as ElementTree

import fhirkit

XHTML = "{http://www.w3.org/1999/xhtml}"


def narratives(value):
    """Every `div` of the bundle."""
    if isinstance(value, list):
        for inside in value:
            yield from narratives(inside)
    elif isinstance(value, dict):
        for key, inside in value.items():
            if key == "div" and isinstance(inside, str):
                yield inside
            else:
                yield from narratives(inside)


def wrong(div):
    try:
        tree = ElementTree.fromstring(div)
    except ElementTree.ParseError as error:
        return f"narrative: {error}"
    tags = {element.tag.removeprefix(XHTML) for element in tree.iter()}
    return None if tags <= {"div", "p"} else f"narrative: {tags}"


def faults(data):
    found = [f"{issue.path}: {issue.message}" for issue in fhirkit.validate(data) if issue.severity == "error"]
    return found + [fault for fault in map(wrong, narratives(json.loads(data))) if fault]


for name in sys.stdin.read().split("\n"):
    if name:
        with open(name, "rb") as file:
            data = file.read()
        try:
            found = faults(data)
        except ValueError as error:
            found = [str(error)]
        print(json.dumps({"file": name, "faults": found}))
