"""The printed chart: every way leads to a box that is there, and cautions come first."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from tests.engine.small import random_base

from weldwhy.blocks import FORMATS
from weldwhy.chart import Leaf, Node, build
from weldwhy.model import Caution, RuleBase
from weldwhy.sheet import sheet


def _rules(seed: int) -> RuleBase:
    """A random base whose checks and remedies carry a caution and whose texts carry marks."""
    made = random_base(seed)
    causes = {}
    for name, cause in made.causes.items():
        remedy = replace(cause.remedies[0], cautions=("hot",), do=f"Mend <{name}> & *go*.")
        causes[name] = replace(cause, remedies=(remedy,))
    checks = {name: replace(each, cautions=("hot",)) for name, each in made.checks.items()}
    cautions = {"hot": Caution("hot", "Hot metal.", "invented")}
    return replace(made, causes=causes, checks=checks, cautions=cautions)


SEEDS = range(4)


def _joined(lines: list[str]) -> str:
    return " ".join(" ".join(lines).split())


@pytest.mark.parametrize("seed", SEEDS)
def test_every_way_leads_to_a_box_and_every_box_is_led_to(seed: int) -> None:
    rules = _rules(seed)
    chart = build(rules, "bad", "p", 3)
    lines = sheet(rules, chart, "text")
    titles = {line for line in lines if re.fullmatch(r"(Step|List) \d+", line)}
    text = "\n".join(lines)
    led_to = set(re.findall(r"->\s+((?:Step|List) \d+)", text))
    assert led_to == titles - {"Step 1", *(titles if len(titles) == 1 else ())}
    boxes = [n for n in chart.nodes if isinstance(n, Node) or not n.done]
    assert len(titles) == len(boxes)


@pytest.mark.parametrize("seed", SEEDS)
def test_all_formats_say_the_same(seed: int) -> None:
    rules = _rules(seed)
    chart = build(rules, "bad", "p", 3)
    words = [
        set(re.findall(r"(?:Step|List) \d+|Mend|call for help", _joined(sheet(rules, chart, form))))
        for form in FORMATS
    ]
    assert words[0] == words[1] == words[2]


@pytest.mark.parametrize("form", FORMATS)
def test_a_caution_stands_before_what_it_belongs_to(form: str) -> None:
    rules = _rules(1)
    lines = sheet(rules, build(rules, "bad", "p", 2), form)
    places = [p for p, line in enumerate(lines) if re.search("Mend|If it is not", line)]
    assert places
    for place in places:
        box = max(p for p in range(place) if re.search(r"(Step|Cause) \d+(<|$)", lines[p]))
        assert "Hot metal" in " ".join(lines[box:place])


def test_text_fits_a_small_printer_and_is_plain() -> None:
    rules = _rules(2)
    for line in sheet(rules, build(rules, "bad", "p", 3), "text"):
        assert len(line) <= 76
        assert line.isascii()
        assert not line or line.isprintable()


@pytest.mark.parametrize("seed", SEEDS)
def test_every_cause_of_a_list_has_its_box_and_is_told_once(seed: int) -> None:
    rules = _rules(seed)
    chart = build(rules, "bad", "p", 3)
    text = " ".join("\n".join(sheet(rules, chart, "text")).split())
    named = {item.cause for n in chart.nodes if isinstance(n, Leaf) for item in n.items}
    for cause in named:
        assert text.partition(" Cause 1 ")[2].count(f"Mend <{cause}>") == 1
    boxes = {int(number) for number in re.findall(r" Cause (\d+) ", text)}
    assert boxes == set(range(1, len(named) + 1))
    for told in re.findall(r"Causes: (.+?)\. Still", text):
        assert {int(number) for number in re.findall(r"\d+(?=[,)]|$)", told)} <= boxes


class _Balanced(HTMLParser):
    """Collects anchors and links, and complains of tags that are not closed in order."""

    VOID = ("meta",)

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.ids: set[str] = set()
        self.links: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = dict(attrs)
        self.ids |= {str(found["id"])} if "id" in found else set()
        self.links |= {str(found["href"])} if "href" in found else set()
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_the_html_is_whole_links_to_itself_and_runs_nothing() -> None:
    rules = _rules(3)
    text = "\n".join(sheet(rules, build(rules, "bad", "p", 3), "html"))
    page = _Balanced()
    page.feed(text)
    assert page.open == []
    assert {link.removeprefix("#") for link in page.links} <= page.ids
    assert all(link.startswith("#") for link in page.links)
    assert "Mend &lt;" in text
    assert "<script" not in text


def test_markdown_marks_in_texts_mean_nothing() -> None:
    rules = _rules(0)
    text = "\n".join(sheet(rules, build(rules, "bad", "p", 2), "markdown"))
    assert r"Mend \<" in text
    assert r"\*go\*" in text


def test_a_list_covers_what_the_sheet_promises() -> None:
    rules = _rules(1)
    chart = build(rules, "bad", "p", 3)
    leaves = [node for node in chart.nodes if isinstance(node, Leaf)]
    least = min(leaf.covered for leaf in leaves)
    assert leaves
    (promised,) = re.findall(r"hold (?:over )?(\d+) %", " ".join(sheet(rules, chart, "text")[:5]))
    assert int(promised) >= round(100 * least) - 1
