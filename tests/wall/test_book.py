"""The book of all pages: every page is in it, found from its contents, and starts a sheet."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser

from tests.replay import shipped_rules

from weldwhy.wall.book import PAGE_END, Book, book, markdown_front, text_front
from weldwhy.wall.html import html_book, html_pages
from weldwhy.wall.page import Page, page
from weldwhy.wall.print import Print

RULES = shipped_rules()


def test_the_book_has_one_page_for_each_symptom_of_each_process_in_order() -> None:
    entries = list(book(RULES).entries)
    assert [entry.number for entry in entries] == list(range(1, len(entries) + 1))
    wanted = {(s.id, process) for s in RULES.symptoms.values() for process in s.processes}
    assert {(entry.symptom, entry.process) for entry in entries} == wanted
    assert len(entries) == len(wanted)
    for text in (text_front(book(RULES)), markdown_front(book(RULES))):
        told = " ".join(text)
        assert all(f" {entry.number}" in told for entry in entries)


def test_the_book_of_one_process_has_its_pages_only() -> None:
    made = book(RULES, "gtaw-ac")
    assert {entry.process for entry in made.entries} == {"gtaw-ac"}
    assert next(entry.number for entry in made.entries) == 1


def test_every_caution_of_the_rules_stands_in_the_front_whole_and_stops_come_first() -> None:
    (safety,) = [part for part in book(RULES).parts if part.title == "Safety first"]
    for caution in RULES.cautions.values():
        assert any(caution.text in line and caution.call in line for line in safety.lines)
    stops = [line.startswith("STOP") for line in safety.lines]
    assert stops == sorted(stops, reverse=True)


def test_in_letters_the_front_is_narrow_and_each_part_ends_a_sheet() -> None:
    lines = list(text_front(book(RULES)))
    assert max(map(len, lines)) <= 80
    assert lines.count(PAGE_END) == 4
    assert lines[-1] == PAGE_END


class _Links(HTMLParser):
    """Collects ids and links, and complains of tags that are not closed in order."""

    VOID = ("meta", "rect", "circle", "path")

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.ids: list[str] = []
        self.links: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = dict(attrs)
        self.ids += [str(found["id"])] if "id" in found else []
        self.links += [str(found["href"])] if "href" in found else []
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag not in self.VOID:
            assert self.open.pop() == tag


@cache
def few() -> tuple[Book, list[tuple[Page, Print]]]:
    """A book of three pages."""
    whole = book(RULES, "smaw")
    process, entries = next(iter(whole.contents.items()))
    short = replace(whole, contents={process: entries[:3]})
    form = [Print(12.0)]
    return short, [page(RULES, e.symptom, e.process, form, e.number) for e in entries[:3]]


def test_the_html_book_is_whole_leads_to_every_page_and_needs_nothing_else() -> None:
    text = "\n".join(html_book(*few()))
    found = _Links()
    found.feed(text)
    assert found.open == []
    assert found.links == ["#page-1", "#page-2", "#page-3"]
    assert [each for each in found.ids if each.startswith("page-")] == [
        link.removeprefix("#") for link in found.links
    ]
    assert "break-after:page" in text
    assert not re.search(r"<script|<link|<img|@import|url\(|src=", text)
    addresses = set(re.findall(r"https?://[^\"' ]+", text))
    assert addresses <= {"http://www.w3.org/2000/svg"}


def test_titles_are_escaped() -> None:
    made, pages = few()
    text = "\n".join(html_book(replace(made, title="<b>", about=("<i>",)), pages))
    assert "<b>" not in text
    assert "<i>" not in text
    assert "<b>" not in "\n".join(html_pages("<b>", pages))
