"""Everything has a page that a person can read: safe, within its width, cautions before steps."""

from __future__ import annotations

from dataclasses import replace

import pytest

from weldwhy.lines import WIDTH, wrapped
from weldwhy.lookup.leaf import Leaf
from weldwhy.lookup.page import leaf
from weldwhy.lookup.text import page_lines
from weldwhy.lookup.things import Ref
from weldwhy.lookup.wordings import how_common, how_often

from .rules import KINDS, every, shipped


def _words(page: Leaf) -> str:
    return "\n".join(line.text for part in page.parts for line in part.lines)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("system", [None, "in", "mm"])
def test_every_page_has_words_and_prints_within_its_width(kind: str, system: str | None) -> None:
    for ref in every():
        if ref.kind == kind:
            page = leaf(shipped(), ref, system=system)
            assert page.title
            assert any(part.lines for part in page.parts), ref
            lines = list(wrapped(page_lines(shipped(), page)))
            assert all(line.isascii() and line.isprintable() for line in lines), ref
            assert all(len(line) <= WIDTH for line in lines), ref


def test_a_page_has_no_empty_part_and_no_link_twice_in_one_part() -> None:
    for ref in every():
        for part in leaf(shipped(), ref).parts:
            assert part.lines
            told = [line.to for line in part.lines if line.to]
            assert len(set(told)) == len(told), (ref, part.title)


def test_the_page_of_a_cause_says_each_caution_before_the_step_it_belongs_to() -> None:
    rules = shipped()
    for cause in rules.causes.values():
        page = leaf(rules, Ref("cause", cause.id))
        for remedy in cause.remedies:
            lines = next(
                part.lines
                for part in page.parts
                if any(line.to == Ref("remedy", remedy.id) for line in part.lines)
            )
            at = next(n for n, line in enumerate(lines) if line.to == Ref("remedy", remedy.id))
            before = " ".join(line.text for line in lines[:at] if line.role == "caution")
            for caution in remedy.cautions:
                assert rules.cautions[caution].text in before, (cause.id, remedy.id, caution)


@pytest.mark.parametrize("kind", ["check", "remedy", "symptom"])
def test_the_cautions_of_a_page_come_before_all_else(kind: str) -> None:
    rules = shipped()
    for ref in every():
        if ref.kind == kind:
            roles = [line.role for line in leaf(rules, ref).parts[0].lines]
            held = roles.count("caution")
            assert roles[:held] == ["caution"] * held, ref


def test_a_cause_to_stop_at_says_whom_to_call() -> None:
    rules = shipped()
    stops = [c for c in rules.causes.values() if any(r.stop for r in c.remedies)]
    assert stops
    for cause in stops:
        page = leaf(rules, Ref("cause", cause.id))
        told = [line for part in page.parts for line in part.lines]
        for remedy in cause.remedies:
            if remedy.stop:
                (line,) = [line for line in told if line.to == Ref("remedy", remedy.id)]
                assert line.text.startswith("STOP: ")
                assert remedy.call.rstrip(".") in line.note


def test_causes_come_likeliest_first_and_the_process_told_leads() -> None:
    rules = shipped()
    usual = leaf(rules, Ref("symptom", "porosity"))
    told = leaf(rules, Ref("symptom", "porosity"), process="gtaw-ac")
    titles = [part.title for part in told.parts if part.title.startswith("Likeliest causes")]
    assert "TIG on AC" in titles[0]
    assert set(told.links) == set(usual.links)
    for part in told.parts[:]:
        if part.title == titles[0]:
            rates = [
                rules.causes[line.to.id].rate("gtaw-ac")
                * rules.causes[line.to.id].symptoms["porosity"]
                for line in part.lines
                if line.to
            ]
            assert rates == sorted(rates, reverse=True)
            best = max(
                c.rate("gtaw-ac") * c.symptoms["porosity"]
                for c in rules.causes.values()
                if "porosity" in c.symptoms and "gtaw-ac" in c.processes
            )
            assert rates[0] == best


def test_the_answers_of_a_check_say_what_they_speak_for_strongest_first() -> None:
    page = leaf(shipped(), Ref("check", "gas-flow-reading"))
    (low,) = [part for part in page.parts if part.title == '"Below that range"']
    assert low.lines[0].to == Ref("cause", "gas-flow-low")
    assert low.lines[0].note == "speaks for it; almost always seen when it is"


def test_a_word_of_the_trade_says_what_it_means() -> None:
    page = leaf(shipped(), Ref("term", "dcen"))
    assert page.title == "DCEN"
    assert shipped().terms["dcen"].means in _words(page)
    assert Ref("process", "gtaw-dc") in page.links


def test_a_window_is_told_in_the_units_asked_for() -> None:
    ref = Ref("window", "mig-steel-short-c25")
    inches, metric = (_words(leaf(shipped(), ref, system=s)) for s in ("in", "mm"))
    assert "ipm" in inches
    assert "m/min" not in inches
    assert "m/min" in metric
    assert "ipm" not in metric


def test_each_line_of_a_set_up_says_where_it_holds() -> None:
    told = _words(leaf(shipped(), Ref("setup", "gmaw"), system="mm"))
    assert "Liner (aluminium): " in told
    assert "Take the zinc off" in told
    assert "(galvanised steel)" in told.partition("Take the zinc off")[2].partition("\n")[0]


def test_a_symptom_and_a_hook_up_are_drawn_in_letters() -> None:
    for ref, signs in ((Ref("symptom", "undercut"), "#"), (Ref("process", "gmaw"), "=")):
        lines = page_lines(shipped(), leaf(shipped(), ref))
        assert sum(signs * 3 in line for line in lines[1:13]) > 2


def test_how_common_a_cause_is_follows_its_base_and_how_often_its_word() -> None:
    rules = shipped()
    bases = sorted({cause.base for cause in rules.causes.values()})
    words = [how_common(rules, base) for base in bases]
    assert words == ["seldom met", "met now and then", "often met", "very often met"]
    for word, grade in rules.likelihoods.items():
        assert how_often(rules, grade) == word


def test_what_rules_write_never_drives_the_terminal() -> None:
    base = shipped()
    bad = "\x1b[31mred\x1b[0m\x07 [b]bold[/b]\u202e"
    symptom = replace(base.symptoms["undercut"], name=bad, looks=bad, also=(bad,))
    term = replace(base.terms["toe"], name=bad, means=bad)
    rules = replace(
        base,
        symptoms={**base.symptoms, "undercut": symptom},
        terms={**base.terms, "toe": term},
    )
    for ref in (Ref("symptom", "undercut"), Ref("term", "toe"), Ref("symptom", "overlap")):
        page = leaf(rules, ref)
        assert page.title.isprintable()
        for part in page.parts:
            assert part.title.isprintable()
            assert all(line.text.isprintable() and line.note.isprintable() for line in part.lines)
        assert all(line.isprintable() for line in page_lines(rules, page))
