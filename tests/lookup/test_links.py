"""Where two things have to do with each other, the page of each leads to the other."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from weldwhy.lookup.leaf import Leaf
from weldwhy.lookup.links import settings_in, source_id
from weldwhy.lookup.page import leaf
from weldwhy.lookup.telling import MOST, telling_checks
from weldwhy.lookup.things import Ref, things

from .rules import KINDS, every, shipped


@cache
def _pages() -> dict[Ref, Leaf]:
    return {ref: leaf(shipped(), ref) for ref in every()}


def _joined(one: Ref, two: Ref) -> None:
    """Both pages lead to each other."""
    assert two in _pages()[one].links, f"the page of {one} does not lead to {two}"
    assert one in _pages()[two].links, f"the page of {two} does not lead to {one}"


@pytest.mark.parametrize("kind", KINDS)
def test_whatever_a_page_leads_to_leads_back_to_it(kind: str) -> None:
    for ref, page in _pages().items():
        if ref.kind == kind:
            for to in page.links:
                assert ref in _pages()[to].links, f"{ref} leads to {to}, which does not lead back"


def test_every_kind_that_the_rules_hold_can_be_looked_up() -> None:
    assert {ref.kind for ref in every()} == set(KINDS)


def test_symptom_and_cause_cause_and_check_cause_and_remedy_lead_to_each_other() -> None:
    for cause in shipped().causes.values():
        here = Ref("cause", cause.id)
        for kind, names in (
            ("symptom", cause.symptoms),
            ("check", cause.shows),
            ("remedy", [remedy.id for remedy in cause.remedies]),
            ("setting", [cause.setting[0]] if cause.setting else []),
        ):
            for name in names:
                _joined(here, Ref(kind, name))


def test_a_caution_and_what_it_stands_before_lead_to_each_other() -> None:
    rules = shipped()
    for kind, items in (("check", rules.checks), ("symptom", rules.symptoms)):
        for name, item in items.items():
            for caution in item.cautions:
                _joined(Ref(kind, name), Ref("caution", caution))
    for cause in rules.causes.values():
        for remedy in cause.remedies:
            for caution in remedy.cautions:
                _joined(Ref("remedy", remedy.id), Ref("caution", caution))
    for job in rules.jobs.values():
        if job.caution:
            _joined(Ref("job", job.id), Ref("caution", job.caution))


def test_a_word_and_what_it_sees_lead_to_each_other() -> None:
    known = things(shipped())
    for term in shipped().terms.values():
        for name in term.see:
            found = [ref for ref in known.called(name) if ref != Ref("term", term.id)]
            assert found, f"{term.id} sees {name}, which nobody knows"
            for ref in found:
                _joined(Ref("term", term.id), ref)


def test_a_source_and_what_rests_on_it_lead_to_each_other() -> None:
    rules, joined = shipped(), 0
    for kind, items in (
        ("cause", rules.causes), ("check", rules.checks), ("symptom", rules.symptoms),
        ("caution", rules.cautions), ("window", rules.windows), ("filler", rules.fillers),
        ("term", rules.terms), ("grade", rules.grades),
    ):  # fmt: skip
        for name, item in items.items():
            source = source_id(item.source)
            if source in rules.sources and source != "common-practice":
                _joined(Ref(kind, name), Ref("source", source))
                joined += 1
    assert joined > 200


def test_things_of_two_kinds_with_one_id_lead_to_each_other() -> None:
    _joined(Ref("setting", "preheat"), Ref("calculator", "preheat"))
    _joined(Ref("process", "gmaw"), Ref("setup", "gmaw"))


def test_a_symptom_that_another_names_as_its_like_leads_to_it() -> None:
    assert "overlap" in shipped().symptoms["undercut"].confused_with
    _joined(Ref("symptom", "undercut"), Ref("symptom", "overlap"))


def test_pictures_that_look_alike_lead_to_each_other() -> None:
    for name, picture in shipped().pictures.items():
        for other in picture.like:
            _joined(Ref("symptom", name), Ref("symptom", other))


def test_the_checks_that_tell_most_are_shown_by_some_causes_of_the_symptom_and_not_all() -> None:
    rules = shipped()
    for symptom, checks in telling_checks(rules).items():
        causes = [cause for cause in rules.causes.values() if symptom in cause.symptoms]
        assert len(checks) <= MOST
        for check in checks:
            showing = [cause for cause in causes if check in cause.shows]
            assert showing, f"{check} tells nothing of {symptom}"
            alike = {tuple(sorted(cause.shows[check].items())) for cause in showing}
            assert len(showing) < len(causes) or len(alike) > 1
        if causes:
            assert checks or not any(cause.shows for cause in causes)


def test_the_flow_gauge_tells_much_about_porosity_and_nothing_about_distortion() -> None:
    telling = telling_checks(shipped())
    assert "gas-flow-reading" not in telling["distortion"]
    assert set(telling["porosity"]) & {"metal-surface", "gas-flow-reading", "clean-scrap-try"}


def test_the_settings_of_a_window_are_those_of_its_rows_and_of_outdoors_too() -> None:
    window = next(w for w in shipped().windows.values() if w.targets and w.rows)
    in_rows = {name for row in window.rows for name in row.targets}
    assert set(settings_in(window)) == {*window.targets, *window.outdoors, *in_rows}
    outdoors = replace(window, targets={}, rows=(), outdoors=window.targets)
    assert settings_in(outdoors) == list(window.targets)
