"""The pages as shipped: every one fits, and everything on it is from the rules."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache

import pytest
from tests.replay import shipped_rules
from tests.wall.every import every_pair

from weldwhy.model import RuleBase
from weldwhy.wall import pieces
from weldwhy.wall.page import Page, letter, page
from weldwhy.wall.picture import as_letters
from weldwhy.wall.pieces import Piece
from weldwhy.wall.text import COLUMNS, LINES, Letters, forms_of, markdown_page, text_page

FULL = [
    ("porosity", "gmaw"), ("porosity", "smaw"), ("porosity", "gtaw-dc"), ("spatter", "gmaw"),
    ("arc-stutters", "gmaw"), ("shock", "gmaw"), ("cold-crack", "smaw"),
]  # fmt: skip
"""Pages with most causes, or most cautions."""
PAIRS = [*dict.fromkeys([*FULL, *every_pair()[::3]])]
"""A fixed third of all; `python -m tests.wall.every` goes through them all."""


@cache
def made(symptom: str, process: str) -> tuple[Page, Letters]:
    rules = shipped_rules()
    return page(rules, symptom, process, forms_of(as_letters(rules, symptom, process)))


def pages() -> Iterator[Page]:
    return (made(*pair)[0] for pair in PAIRS)


def test_every_page_fits_a_sheet_of_66_lines_and_80_columns() -> None:
    for pair in PAIRS:
        lines = text_page(*made(*pair))
        assert len(lines) <= LINES == 66, pair
        assert max(map(len, lines)) <= COLUMNS == 80, pair
        assert all(line.isascii() for line in lines), pair


def test_every_page_has_a_head_a_ladder_or_a_list_and_the_way_to_help() -> None:
    for each in pages():
        roles = [piece.role for piece in each.body]
        assert each.title
        assert each.subtitle
        assert each.looks
        assert {"check", "item"} & set(roles)
        assert roles[-1] == "call"
        assert re.search(r"\d+ times in 100, the rungs lead to it \d+", each.foot[0].text)
        assert each.foot[1].text.startswith("Sources: ")


def called(text: str) -> set[str]:
    """The cautions that a step names, such as "!2,5", each as its mark."""
    return {f"!{n}" for m in re.findall(r"!([\d,]+)", text) for n in m.split(",")}


def marks(each: Page) -> dict[str, str]:
    """What each caution of a page is called."""
    short = {c.short: c.id for c in shipped_rules().cautions.values()}
    numbered = [p for p in each.body if p.role == "caution" and p.mark != "!"]
    said = {p.mark: p.runs[1][1] if p.runs[0][1] == "STOP." else p.runs[0][1] for p in numbered}
    return {short[text]: mark for mark, text in said.items()}


def test_every_caution_that_a_step_names_stands_above_it() -> None:
    for each in pages():
        above: set[str] = set()
        for piece in each.body:
            if piece.role == "caution":
                above.add(piece.mark)
            else:
                assert called(piece.text) <= above, piece.text
        numbered = [p.mark for p in each.body if p.role == "caution" and p.mark != "!"]
        assert numbered == [f"!{number}" for number in range(1, len(numbered) + 1)]


def test_a_step_that_needs_a_caution_names_it() -> None:
    rules = shipped_rules()
    checks = {c.ask: c for c in rules.checks.values()}
    for each in pages():
        names = marks(each)
        for piece in (p for p in each.body if p.role == "check"):
            asked = re.sub(r"^![\d,]+ ", "", piece.text)
            (check,) = [c for ask, c in checks.items() if ask.startswith(asked)]
            assert {names[c] for c in check.cautions} == called(piece.text)


def test_a_remedy_names_its_cautions_and_a_stop_says_whom_to_call() -> None:
    rules = shipped_rules()
    causes = {pieces.without_asides(c.name).casefold(): c for c in rules.causes.values()}
    stops = 0
    for each in pages():
        names = marks(each)
        for piece in (p for p in each.body if p.role == "item"):
            name = re.sub(r" \([^)]* only\)", "", piece.runs[0][1].rstrip("."))
            remedy = causes[name.casefold()].remedies[0]
            assert called(piece.text) == {names[c] for c in remedy.cautions}, piece.text
            if remedy.stop:
                stops += 1
                assert " STOP. " in piece.text
                assert remedy.call in piece.text
    assert stops


def test_every_caution_that_stops_says_stop_and_whom_to_call_and_comes_first() -> None:
    stops = 0
    for each in pages():
        found = [p for p in each.body if p.role == "caution" and p.mark != "!"]
        stopping = [p.text.startswith("STOP. ") and "Call " in p.text for p in found]
        assert stopping == sorted(stopping, reverse=True)
        stops += sum(stopping)
    assert stops


def test_a_danger_that_no_rung_names_is_named_at_the_top_with_where_its_remedy_is() -> None:
    names = {pieces.without_asides(c.name) for c in shipped_rules().causes.values() if c.hazard}
    found = 0
    for each in pages():
        letters = {p.mark: p.runs[0][1] for p in each.body if p.role == "item"}
        for piece in (p for p in each.body if p.runs[0][1] == "Stop if it may be"):
            found += 1
            told, _, then = piece.runs[1][1].partition(";")
            name = told.partition(" (")[0]
            assert name in names
            place = then.removeprefix(" then ").rstrip(".")
            if place != " ask the live guide":
                assert letters[place].casefold().startswith(name)
    assert found


def test_every_caution_has_a_short_form_and_it_is_shorter() -> None:
    for caution in shipped_rules().cautions.values():
        assert 0 < len(caution.short) <= 60
        assert len(caution.short) < len(caution.text)


FORBIDS = re.compile(r"\b(never|not|no|nobody|nothing|only|stop|mend no)\b", re.IGNORECASE)


def test_what_forbids_in_full_forbids_in_short() -> None:
    rules = shipped_rules()
    for caution in rules.cautions.values():
        if re.search(r"\b(never|do not)\b", caution.text, re.IGNORECASE):
            assert FORBIDS.search(caution.short), caution.id
    for cause in rules.causes.values():
        remedy = cause.remedies[0]
        if remedy.short and re.search(r"\b(never|(?<!you )do not)\b", remedy.do, re.IGNORECASE):
            assert FORBIDS.search(remedy.short), cause.id
        if remedy.stop and remedy.short:
            assert FORBIDS.search(remedy.short), cause.id


def _sentences(text: str) -> set[str]:
    """Whole sentences; the page tells remedies in short, but changes none."""
    return {each.strip(" .") for each in re.split(r"(?<=[.!?:]) +", text)}


def test_the_steps_are_in_the_words_of_the_rules() -> None:
    rules = shipped_rules()
    asked = [c.ask for c in rules.checks.values()]
    answers = {a.text for c in rules.checks.values() for a in c.answers}
    does = {pieces.does(c.remedies[0]) for c in rules.causes.values()}
    texts = {re.sub(r"^Stop( here)?[.:] *", "", text) for text in does} | does
    known = {f"{text[0].upper()}{text[1:]}" for text in texts if text}
    for each in pages():
        for piece in each.body:
            if piece.role == "check":
                told = re.sub(r"^![\d,]+ ", "", piece.text)
                assert any(text.startswith(told) for text in asked), told
            if piece.role == "way":
                assert set(piece.runs[0][1].rstrip(":").split("; or: ")) <= answers
            if piece.role == "item":
                assert any(text in known for style, text in piece.runs if not style), piece.text


def test_what_a_rung_points_at_stands_where_it_says() -> None:
    for each in pages():
        where = {p.mark: p.runs[0][1].casefold() for p in each.body if p.role == "item"}
        rungs: dict[str, str] = {}
        for piece in each.body:
            rung = piece.mark if piece.role == "check" else rungs.get("now", "")
            rungs["now"] = rung
            rungs[rung] = f"{rungs.get(rung, '')} {piece.text.casefold()}"
        for piece in (p for p in each.body if p.role == "way"):
            for _, text in (run for run in piece.runs if run[0] == "slanted"):
                for name, place in re.findall(r"([^;(]+) \((rung \d+|[A-Z]+)\)", text):
                    if place.startswith("rung"):
                        assert place.removeprefix("rung ") in rungs, piece.text
                    else:
                        assert where[place].startswith(name.strip().casefold()), piece.text


def test_the_same_stands_in_markdown() -> None:
    each = made("undercut", "smaw")[0]
    text = " ".join(markdown_page(each)).replace("*", "").replace("\\", "")
    for piece in (*each.looks, *each.body, *each.foot):
        assert piece.text in text


def test_marks_in_the_rules_mean_nothing_in_markdown() -> None:
    each = replace(made("undercut", "smaw")[0], body=(Piece("item", (("", "*a* <b>"),), "A"),))
    assert r"\*a\* \<b\>" in "\n".join(markdown_page(each))


def hostile() -> RuleBase:
    rules = shipped_rules()
    symptom = replace(rules.symptoms["undercut"], name="bad \x1b[31m<b>&", looks="word " * 80)
    return replace(rules, symptoms={**rules.symptoms, "undercut": symptom})


def test_what_drives_a_terminal_never_comes_onto_a_page_and_long_texts_still_fit() -> None:
    lines = text_page(*page(hostile(), "undercut", "smaw", [Letters()]))
    assert all(line.isprintable() for line in lines)
    assert len(lines) <= LINES


@pytest.mark.parametrize(
    ("text", "short"),
    [
        ("Clean it.", "Clean it."),
        ("Stop welding. Take another part.", "Stop welding. Take another part."),
        ("Dry " + "well " * 30 + "now. Then weld.", "Dry " + "well " * 30 + "now."),
    ],
)
def test_a_text_in_short_is_its_first_sentences(text: str, short: str) -> None:
    assert pieces.in_short(text, 40) == short


def test_what_a_remedy_forbids_is_never_left_out() -> None:
    rules = shipped_rules()
    for cause in rules.causes.values():
        told = pieces.does(replace(cause.remedies[0], short=""))
        for sentence in re.split(r"(?<=[.!?]) +(?=[A-Z])", cause.remedies[0].do):
            if re.search(r"\b(never|not|no|only|stop)\b", sentence, re.IGNORECASE):
                assert sentence in told


def test_the_list_is_lettered_past_z() -> None:
    assert [letter(n) for n in (0, 25, 26)] == ["A", "Z", "AA"]
