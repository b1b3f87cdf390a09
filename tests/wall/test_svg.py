"""A page on paper: nothing leaves the sheet or lies on something else, and it is plain SVG."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

import pytest
from tests.replay import shipped_rules
from tests.wall.every import printed, written
from tests.wall.faces import HELVETICA, PRINTABLE, widest
from tests.wall.test_page import FULL, PAIRS, hostile

from weldwhy.wall.page import Page, page
from weldwhy.wall.picture import as_svg
from weldwhy.wall.pieces import Piece
from weldwhy.wall.print import COLUMN, EDGE, GAP, HEIGHT, POINTS, WIDTH, Print
from weldwhy.wall.svg import svg_page
from weldwhy.wall.typeface import broken, width

SIZES = list(POINTS)
DEJAVU = Path("/usr/share/fonts/truetype/dejavu")
PLACES = ("x", "y", "width", "height", "cx", "cy", "r")
SVG = "{http://www.w3.org/2000/svg}"


@cache
def made(symptom: str, process: str, points: float) -> tuple[Page, Print]:
    """The page in this size, whatever it then covers."""
    drawn = as_svg(shipped_rules(), symptom, process)
    return page(shipped_rules(), symptom, process, [Print(points, drawn)])


def sheets() -> Iterator[tuple[Page, Print]]:
    """A fixed ninth of the pages, each in one of the sizes in turn; the fullest in the smallest."""
    for place, pair in enumerate([*FULL, *PAIRS[len(FULL) :: 3]]):
        yield made(*pair, 10.0 if pair in FULL else SIZES[place % len(SIZES)])


def tree(each: Page, form: Print) -> ElementTree.Element:
    return ElementTree.fromstring("\n".join(svg_page(each, form)))


def boxes(root: ElementTree.Element) -> Iterator[tuple[float, float, float, float, str]]:
    """Left, top, right and bottom of elements; texts as wide as they may become."""
    for element in root:
        kind = element.tag.removeprefix(SVG)
        at = {k: float(v) for k, v in element.attrib.items() if k in PLACES}
        if kind == "rect":
            x, y = at.get("x", 0.0), at.get("y", 0.0)
            yield x, y, x + at["width"], y + at["height"], kind
        elif kind == "circle":
            cx, cy, r = at["cx"], at["cy"], at["r"]
            yield cx - r, cy - r, cx + r, cy + r, kind
        elif kind == "text" and element.get("font-family") is None:  # the picture has its own
            yield _of_text(element)


def _of_text(element: ElementTree.Element) -> tuple[float, float, float, float, str]:
    size, x, y = (float(element.get(name, "0")) for name in ("font-size", "x", "y"))
    wide = widest(element.text or "", size, bold=False)
    for part in element:
        wide += widest(part.text or "", size, part.get("font-weight") == "bold")
        wide += widest(part.tail or "", size, bold=False)
    left = x - {"end": wide, "middle": wide / 2}.get(element.get("text-anchor", ""), 0.0)
    return left, y - size * 0.75, left + wide, y + size * 0.22, "".join(element.itertext())


def test_nothing_leaves_the_sheet() -> None:
    for each, form in sheets():
        for left, top, right, bottom, what in boxes(tree(each, form)):
            assert min(left, top) >= -1e-6, (each.title, what)
            drawn = what in ("rect", "circle") and right <= WIDTH
            assert right <= WIDTH - EDGE + 1e-6 or drawn, (each.title, what)
            assert bottom <= HEIGHT + 1e-6, (each.title, what)


def test_the_two_columns_of_the_list_keep_apart() -> None:
    middle = EDGE + COLUMN + GAP
    for each, form in sheets():
        found = [b for b in boxes(tree(each, form)) if b[4] not in ("rect", "circle")]
        starts = {mark: b for *b, mark in found if mark in {p.mark for p in each.body if p.mark}}
        listed = [starts[p.mark] for p in each.body if p.role == "item"]
        if len({round(box[0]) for box in listed}) < 2:
            continue
        above, below = min(b[1] for b in listed), max(b[3] for b in listed)
        for left, top, right, _, what in found:
            if above <= top < below and left < middle - 1.0:
                assert right <= EDGE + COLUMN + 1e-6, (each.title, what)


def test_the_title_and_the_process_never_meet() -> None:
    longest = max(PAIRS, key=lambda pair: len(made(*pair, 10.0)[0].title))
    for pair in (*FULL, longest):
        each, form = made(*pair, 10.0)
        title, side = list(boxes(tree(each, form)))[1:3]
        assert title[4] == each.title
        assert title[2] + 3.0 <= side[0]


@pytest.mark.parametrize("name", ["DejaVuSans", "DejaVuSans-Oblique", "DejaVuSans-Bold"])
def test_the_widths_are_those_of_the_face(name: str) -> None:
    fonts = pytest.importorskip("PIL.ImageFont")
    path = DEJAVU / f"{name}.ttf"
    if not path.exists():
        pytest.skip("the face is not here to be measured")
    face = fonts.truetype(str(path), 2048, layout_engine=fonts.Layout.BASIC)
    for mark in PRINTABLE:
        measured = face.getlength(mark) / 2048
        wide = width(mark, 1.0, name.endswith("Bold"))
        least = max(measured, HELVETICA[name.endswith("Bold")][mark] / 1000)
        assert least - 1e-9 <= wide <= least + 0.0011, mark


def test_no_line_lies_on_another() -> None:
    for each, form in sheets():
        texts = [b for b in boxes(tree(each, form)) if b[4] not in ("rect", "circle")]
        for place, (left, top, right, bottom, what) in enumerate(texts):
            for other in texts[place + 1 :]:
                apart = right <= other[0] or other[2] <= left
                apart = apart or bottom <= other[1] + 0.35 or other[3] <= top + 0.35
                assert apart, (each.title, what, other[4])


def test_every_word_of_a_page_is_on_the_sheet() -> None:
    each, form = made("undercut", "smaw", 12.0)
    told = " ".join(" ".join(element.itertext()) for element in tree(each, form))
    words = set(told.split())
    for piece in (*each.looks, *each.body, *each.foot):
        assert set(piece.text.split()) <= words


def test_the_sheet_needs_nothing_else_and_is_black_on_white_but_for_the_picture() -> None:
    each, form = made("undercut", "smaw", 12.0)
    text = "\n".join(svg_page(each, replace(form, picture=())))
    for banned in ("<script", "href", "url(", "<image", "@import", " style="):
        assert banned not in text
    fills = {e.get("fill") for e in tree(each, replace(form, picture=()))}
    assert fills <= {None, "#fff"}


def test_texts_are_escaped() -> None:
    each, form = page(hostile(), "undercut", "smaw", [Print(12.0)])
    text = "\n".join(svg_page(each, form))
    assert "&lt;b&gt;&amp;" in text
    assert "<b>" not in text


def test_a_long_title_is_set_smaller_until_it_fits() -> None:
    each, form = made("undercut", "smaw", 12.0)
    long = replace(each, title="Undercut " * 12)
    for left, _, right, _, what in boxes(tree(long, form)):
        assert left >= 0.0, what
        assert right <= WIDTH - EDGE + 1e-6 or what == "rect", what


def test_small_type_is_taken_only_where_large_type_covers_too_little() -> None:
    rules = shipped_rules()
    found = {}
    for symptom, process in (("porosity", "gmaw"), ("crater-crack", "gtaw-ac")):
        found[symptom] = page(rules, symptom, process, [Print(size) for size in POINTS])[1]
    assert found["porosity"].points < found["crater-crack"].points


@pytest.mark.parametrize("room", [8.0, 20.0, 60.0, 180.0])
def test_lines_are_no_wider_than_their_room_and_lose_no_letter(room: float) -> None:
    runs = (("bold", "Wire feed"), ("", "too high for a contact-tip-of-unheard-of-length here"))
    lines = broken(runs, 4.0, room)
    for line in lines:
        wide = sum(width(s.text, 4.0, s.style == "bold") for s in line)
        assert wide + width(" ", 4.0) * (len(line) - 1) <= room + 1e-9
    said = "".join(span.text for line in lines for span in line).replace(" ", "")
    assert said == "".join(text for _, text in runs).replace(" ", "")


def test_a_foot_stands_at_the_bottom_of_the_sheet() -> None:
    each, form = made("undercut", "smaw", 12.0)
    foot = Piece("foot", (("", "The very last."),))
    found = boxes(tree(replace(each, foot=(foot,)), form))
    lowest = max((bottom, what) for *_, bottom, what in found if what != "rect")
    assert lowest[1] == "The very last."


@pytest.mark.parametrize("process", ["gmaw", "smaw", "gtaw-dc"])
def test_porosity_covers_enough_to_hang_up(process: str) -> None:
    chart = printed("porosity", process)
    assert chart.stands >= 0.8
    gas = {"draught", "gas-flow-low", "gas-leak", "gas-off"}
    led = {cause for rung in chart.rungs for cause in rung.causes}
    assert process == "smaw" or led & gas


def test_the_page_that_covers_least_covers_two_thirds_in_letters_and_more_in_print() -> None:
    for pair in FULL:
        assert printed(*pair).stands >= 0.75, pair
        assert written(*pair).stands >= 0.68, pair
