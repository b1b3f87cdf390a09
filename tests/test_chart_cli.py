"""`weldwhy chart` from the command line: a page, the book, the tree, and plain refusals."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from weldwhy.cli import main
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode

pytestmark = pytest.mark.usefixtures("quick_rules")

Capture = pytest.CaptureFixture[str]


def run(capsys: Capture, line: str) -> tuple[int, str, str]:
    code = main(line.split())
    out, err = capsys.readouterr()
    return code, out, err


def test_without_depth_one_page_is_printed(capsys: Capture) -> None:
    code, out, err = run(capsys, "chart undercut --process smaw")
    assert (code, err) == (ExitCode.FINE, "")
    assert out.startswith("UNDERCUT")
    assert len(out.splitlines()) <= 66


def test_without_a_process_every_process_gets_its_page(capsys: Capture) -> None:
    out = run(capsys, "chart undercut")[1]
    assert out.count("UNDERCUT  ") == len(load().symptoms["undercut"].processes)
    pages = run(capsys, "chart undercut --format html")[1]
    assert pages.count("<svg ") == out.count("UNDERCUT  ")


def test_with_depth_the_whole_tree_is_printed(capsys: Capture) -> None:
    for form in ("text", "markdown", "html"):
        out = run(capsys, f"chart undercut --process smaw --depth 1 --format {form}")[1]
        assert "Step 1" in out


def test_svg_is_a_drawing_of_one_sheet(capsys: Capture) -> None:
    out = run(capsys, "chart undercut --process smaw --format svg")[1]
    root = ElementTree.fromstring(out)
    assert root.get("viewBox") == "0 0 210 297"


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_the_book_of_a_process_has_all_its_pages(capsys: Capture, form: str) -> None:
    code, out, err = run(capsys, f"chart --all --process gtaw-ac --format {form}")
    assert (code, err) == (ExitCode.FINE, "")
    count = sum("gtaw-ac" in s.processes for s in load().symptoms.values())
    feet = {"text": "Still bad? Stop", "markdown": "Still bad? Stop", "html": "<svg "}
    assert out.count(feet[form]) == count
    if form == "text":
        assert out.count("\f") == 4 + count - 1
        assert max(len(sheet.splitlines()) for sheet in out.split("\f")[5:]) <= 66 + 1


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("chart", "which symptom?"),
        ("chart undercut --all", "not both"),
        ("chart --all --format svg", "not svg"),
        ("chart --all --depth 2", "leave out --all"),
        ("chart undercut --process smaw --depth 2 --format svg", "not svg"),
        ("chart undercut --format svg", "name it with --process"),
        ("chart undercut --depth 2 --format html", "name it with --process"),
        ("chart undrcut", 'did you mean "undercut"?'),
        ("chart --all --process smww", 'did you mean "smaw"?'),
        ("chart birds-nest --process smaw", "not met with"),
        ("chart undercut --process smaw --format pdf", "invalid choice"),
    ],
)
def test_what_cannot_be_printed_is_refused_in_one_plain_line(
    capsys: Capture, line: str, told: str
) -> None:
    code, out, err = run(capsys, line)
    assert code == ExitCode.USAGE
    assert out == ""
    assert told in err
    assert len(err.splitlines()) == 1
