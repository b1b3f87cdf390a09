"""Boxes as text, Markdown and HTML: whole, escaped, and saying the same."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.blocks import ENDINGS, FORMATS, WRITERS, Block, marked, plain_lines
from weldwhy.lines import WIDTH

TABLE = (("setting", "before"), ("volts", "22 V"))
BOX = Block("A box", ("CAUTION: Hot.", "1. Do <it> & *go*.", "- not a list"), table=TABLE)


class Page(HTMLParser):
    """The text of a page; complains of tags that are not closed in order."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.texts: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag not in ("script", "link", "img", "iframe")
        assert not any(name.startswith("on") or name == "src" for name, _ in attrs)
        if tag != "meta":
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if not {"title", "style"} & set(self.open):
            self.texts.append(data)


def words(lines: list[str], form: str) -> str:
    """All that a page says in this form, without blanks and marks."""
    text = "\n".join(lines)
    if form == "html":
        page = Page()
        page.feed(text)
        page.close()
        assert page.open == []
        text = "\n".join(page.texts)
    return "".join(re.findall(r"[^\W_]", text))


TEXTS = st.text(st.characters(exclude_categories=["Cc", "Cf", "Cs", "Cn", "Co", "Zl", "Zp", "Zs"]))


@given(st.lists(TEXTS, min_size=1, max_size=4), st.booleans())
def test_all_forms_say_the_same_whatever_stands_in_the_boxes(
    texts: list[str], listed: bool
) -> None:
    box = Block("A box", tuple(texts), (("found", "A box"),), (("a", "b"), ("c", texts[0])), listed)
    said = {form: words(WRITERS[form](["Title", texts[-1]], [box]), form) for form in FORMATS}
    assert said["text"] == said["markdown"] == said["html"]
    for text in texts:
        assert "".join(re.findall(r"[^\W_]", text)) in said["text"]


@pytest.mark.parametrize(
    "text",
    ["# a", "- a", "+ a", "1. a", "12) a", "=====", "---", "~~~", "> a", "| a |", "<b>", "&amp;",
     "*a*", "_a_", "`a`", "[a](b)", "![a](b)", "\\*"],
)  # fmt: skip
def test_no_text_means_anything_in_markdown(text: str) -> None:
    shown = marked(text)
    assert re.sub(r"\\([!-/:-@[-`{-~])", r"\1", shown) == text
    assert not re.match(r"[-+=#>|~]|\d+[.)] ", shown)
    assert not re.search(r"(?<!\\)(?:\\\\)*[*_`<\[\]&]", shown)


def test_numbers_are_not_marked() -> None:
    assert marked("17.5 V to 19.5 V") == "17.5 V to 19.5 V"


def test_a_table_stands_in_columns_that_fit() -> None:
    lines = WRITERS["text"](["T"], [BOX])
    assert "  setting | before" in lines
    assert "  volts   | 22 V" in lines


def test_a_table_too_wide_for_a_printer_is_wrapped() -> None:
    wide = Block("A box", table=(("setting", "before"), ("volts", "very much " * 20)))
    lines = WRITERS["text"](["T"], [wide])
    assert all(len(line) <= WIDTH for line in lines)


def test_a_bar_in_a_cell_makes_no_cell_in_markdown() -> None:
    lines = WRITERS["markdown"](["T"], [Block("A", table=(("a", "b"), ("c|d", "*e*")))])
    assert "| c\\|d | \\*e\\* |" in lines


def test_warnings_stand_out_in_markdown_and_html() -> None:
    assert "**CAUTION: Hot.**  " in WRITERS["markdown"](["T"], [BOX])
    assert '<p class="care">CAUTION: Hot.</p>' in WRITERS["html"](["T"], [BOX])


def test_html_escapes_everything() -> None:
    nasty = '"><script>alert(1)</script>'
    box = Block(nasty, (nasty,), ((nasty, nasty),), ((nasty,), (nasty,)))
    for listed in (box, Block(nasty, (nasty,), listed=True)):
        words(WRITERS["html"]([nasty, nasty], [listed]), "html")


def test_a_way_is_a_link_only_where_its_box_is_there() -> None:
    box = Block("Step 1", ("Do.",), (("a", "Step 1"), ("b", "done")))
    page = "\n".join(WRITERS["html"](["T"], [box]))
    assert page.count("<a href") == 1
    assert 'href="#step-1"' in page


def test_titles_can_be_ended_for_those_who_listen() -> None:
    assert plain_lines(["T"], [Block("A", ("b",), listed=True)], ":") == ["T", "", "A:", "  - b"]


def test_every_form_has_an_ending() -> None:
    assert tuple(ENDINGS) == FORMATS == tuple(WRITERS)
    assert len(set(ENDINGS.values())) == len(FORMATS)


@pytest.mark.parametrize("line", ["CAUTION: hot metal.", "STOP: call somebody.", "  STOP: wait."])
@pytest.mark.parametrize("listed", [False, True])
def test_a_warning_stands_out_in_every_form_that_can_show_it(line: str, listed: bool) -> None:
    box = [Block("A box", (line, "Go on."), listed=listed)]
    (told,) = [each for each in WRITERS["markdown"](["Title"], box) if line.strip()[:4] in each]
    assert "**" in told
    (told,) = [each for each in WRITERS["html"](["Title"], box) if line.strip()[:4] in each]
    assert 'class="care"' in told
    for form in ("markdown", "html"):
        (plain,) = [each for each in WRITERS[form](["Title"], box) if "Go on" in each]
        assert "**" not in plain
        assert "care" not in plain
