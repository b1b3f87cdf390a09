"""A case as a report: whole, the same in every form, cautions first, and never a danger."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.test_blocks import words

from weldwhy import told
from weldwhy.blocks import FORMATS, Block, is_care
from weldwhy.case import (
    DONT_KNOW,
    REASONS,
    RESULTS,
    SITUATION,
    SKIP,
    Answered,
    Case,
    Entry,
    Measured,
    Passed,
    Reported,
    Resembled,
    Said,
    Situated,
    Supposed,
    Suspected,
    Tried,
)
from weldwhy.casereport import case_blocks, case_report, case_text
from weldwhy.interview import Interview
from weldwhy.lines import WIDTH
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.report import percent, reason_line
from weldwhy.rulebase import read

START = (Situated("process", "gmaw"), Reported("porosity"), Situated("material", "mild-steel"))
LOW = Answered("flow-reading", "low")
CURED = Tried("flow-low", "set-flow", "sound")
CLEANED = Tried("nozzle-clogged", "clean-nozzle", "no change")
NASTY = "\x1b[31mred\x1b[0m \x07</p><script>x</script> | *a* _b_ \u202e # \r\n 1. \x9b2J &lt;"


@cache
def _rules() -> RuleBase:
    """The small sound base; one remedy has a caution, one cause a way to keep it away."""
    rules, problems = read([Path(__file__).parent / "rules" / "sound"])
    assert rules is not None, problems
    low = replace(rules.causes["flow-low"], prevent="Set it each morning.")
    remedy = replace(low.remedies[0], cautions=("hot-metal",))
    low = replace(low, remedies=(remedy, *low.remedies[1:]))
    holes = replace(rules.symptoms["porosity"], iso_6520_1="2011")
    return replace(rules, causes={**rules.causes, "flow-low": low}, symptoms={"porosity": holes})


@cache
def _nasty() -> RuleBase:
    """The same with texts that would drive a terminal or break a page."""
    rules = _rules()
    causes = {
        name: replace(
            each, name=NASTY, what=NASTY, prevent=NASTY, source=NASTY,
            remedies=tuple(replace(r, do=NASTY, call=NASTY, stop=True) for r in each.remedies),
        )
        for name, each in rules.causes.items()
    }  # fmt: skip
    return replace(
        rules,
        causes=causes,
        symptoms={k: replace(v, name=NASTY) for k, v in rules.symptoms.items()},
        checks={k: replace(v, ask=NASTY, settles=NASTY) for k, v in rules.checks.items()},
        cautions={k: replace(v, text=NASTY, call=NASTY) for k, v in rules.cautions.items()},
        settings={k: replace(v, name=NASTY) for k, v in rules.settings.items()},
    )


def _interview(*entries: Entry, system: str | None = None) -> Interview:
    return Interview(_rules(), Case((*START, *entries)), system=system)


def _boxes(interview: Interview) -> dict[str, Block]:
    return {block.title: block for block in case_blocks(interview)}


def _settings(*entries: Entry, system: str | None = None) -> dict[str, tuple[str, ...]]:
    """The rows of the table of settings, by their first cell."""
    table = _boxes(_interview(*entries, system=system))["Settings"].table
    assert table[0] == ("setting", "before", "after", "allowed range")
    return {row[0]: row[1:] for row in table[1:]}


# what stands in it


def test_what_was_seen_has_its_iso_number() -> None:
    assert _boxes(_interview())["What was seen"].lines == ("porosity; ISO 6520-1: 2011",)


def test_the_work_is_told_as_it_was_last_told() -> None:
    boxes = _boxes(_interview(Situated("joint", "lap"), Situated("joint", "butt")))
    assert "joint: butt" in boxes["The work"].lines
    assert not any("lap" in line for line in boxes["The work"].lines)


def test_own_words_stand_beside_what_was_made_of_them_and_what_was_not() -> None:
    case = (
        Said("tiny bubbles, some soot, my cat, rust", ("my cat",), ("rust",)),
        Reported("porosity", words="tiny bubbles"),
        Supposed("nozzle-look", "clogged", words="some soot"),
    )
    look = told.in_short(_rules(), case[2])
    lines = (
        '"tiny bubbles, some soot, my cat, rust"',
        'from "tiny bubbles": porosity',
        f'from "some soot", not certain: {look}',
        'not understood, so not counted: "my cat"',
        'struck out, so not counted: "rust"',
    )
    boxes = _boxes(_interview(*case, LOW))
    assert boxes["In the person's own words"].lines == lines
    assert not any("own words" in line for line in boxes["What was told"].lines)
    undone = _boxes(_interview(*case[:2]))["In the person's own words"].lines
    assert undone == (*lines[:2], *lines[3:])
    assert "In the person's own words" not in _boxes(_interview())


def test_no_text_of_a_person_passes_for_a_caution() -> None:
    care = "CAUTION: all is safe"
    case = (Said(care, (care,), (care,)), Suspected("flow-low", words=care))
    for form, mark in (("markdown", "**CAUTION: all"), ("html", 'class="care">"CAUTION')):
        shown = case_report(_interview(*case), form)
        assert not any(mark in line or line.strip().startswith(care) for line in shown)
    lines = _boxes(_interview(*case))["In the person's own words"].lines
    assert not any(is_care(line) for line in lines)


@given(text=st.text(max_size=60) | st.just(NASTY))
def test_own_words_bring_no_tag_into_a_page(text: str) -> None:
    tags = []
    for each in (text, "x"):
        case = (Said(each, (each,), (each,)), Suspected("flow-low", words=each))
        page = "\n".join(case_report(_interview(*case), "html"))
        tags.append(set(re.findall(r"<[^>]*>", page)))
    assert tags[0] <= tags[1]


def test_answers_taken_from_words_and_guesses_are_told_with_the_rest() -> None:
    entries = (
        LOW,
        Supposed("nozzle-look", _rules().checks["nozzle-look"].answers[1].id),
        Suspected("flow-high"),
        Resembled("porosity"),
    )
    boxes = _boxes(_interview(*entries))
    lines = [told.entry_line(_rules(), entry) for entry in entries]
    assert boxes["What was told"].lines == tuple(map(clean, lines[:3]))
    assert any(lines[3] in line for line in boxes["What was seen"].lines)


def test_a_setting_told_again_after_the_remedy_stands_before_and_after() -> None:
    rows = _settings(Measured("gas_flow", "10 cfh"), CURED, Measured("gas_flow", "25 cfh"))
    assert rows["gas flow"][:2] == ("10 cfh", "25 cfh")
    assert " to " in rows["gas flow"][2]


@pytest.mark.parametrize(
    ("entries", "row"),
    [
        ((Measured("gas_flow", "10 cfh"),), ("10 cfh", "as before")),
        ((Measured("gas_flow", "10 cfh"), CLEANED), ("10 cfh", "as before")),
        ((CLEANED, Measured("gas_flow", "25 cfh")), ("not told", "25 cfh")),
        ((CLEANED, Measured("gas_flow", "25 cfh"), CURED), ("25 cfh", "as before")),
        (
            (Measured("gas_flow", "25 cfh"), CURED, Measured("gas_flow", "25 cfh")),
            ("25 cfh", "25 cfh"),
        ),
        ((Measured("gas_flow", "25 cfh"), Measured("gas_flow", "")), ("25 cfh", "withdrawn")),
    ],
)
def test_before_and_after_of_a_setting(entries: tuple[Entry, ...], row: tuple[str, str]) -> None:
    assert _settings(*entries)["gas flow"][:2] == row


def test_settings_are_in_the_units_of_the_person_unless_others_are_asked_for() -> None:
    told_in_cfh = Measured("gas_flow", "25 cfh")
    own, asked = _settings(told_in_cfh), _settings(told_in_cfh, system="mm")
    assert own["gas flow"][0] == "25 cfh"
    assert own["gas flow"][2].endswith("cfh")
    assert asked["gas flow"][0] == "12 L/min"
    assert asked["gas flow"][2].endswith("L/min")


def test_a_setting_without_a_window_has_no_range() -> None:
    assert _settings(Measured("wire", "0.035 in"))["wire size"][2] == "not known"


# not done


def test_an_open_case_ends_with_the_likely_causes_and_the_next_step() -> None:
    interview = _interview(LOW)
    boxes = _boxes(interview)
    assert boxes["Most likely"].lines[0].startswith("1. ")
    assert "Next step" in boxes
    assert any(interview.step.text in line for line in boxes["Next step"].lines)
    assert "What put it right" not in boxes
    why = boxes["Why"].lines
    assert [reason_line(each) for each in interview.why("flow-low")] == list(why[:-1])
    assert "+3 doubles the odds" in why[-1]


def test_a_case_that_must_stop_says_so_first_and_advises_nothing() -> None:
    interview = _interview(LOW, Situated("job", "pressure"))
    titles = list(_boxes(interview))
    assert titles[0] == "Stop"
    assert not {"Most likely", "What to do", "Next step", "What put it right"} & set(titles)
    assert not any(remedy.do in line for line in case_text(interview)
                   for remedy in _rules().causes["flow-low"].remedies)  # fmt: skip
    done = _interview(LOW, CURED, Situated("job", "pressure"))
    assert "What put it right" not in _boxes(done)


def test_before_anything_is_told_it_asks_for_the_process() -> None:
    boxes = _boxes(Interview(_rules(), Case()))
    assert set(boxes) == {"Next step", "Before you rely on this"}
    assert any("Which process" in line for line in boxes["Next step"].lines)


# done


def test_a_finished_case_gives_the_reasons_held_before_the_last_remedy() -> None:
    before, done = _interview(LOW), _interview(LOW, CURED, Measured("gas_flow", "25 cfh"))
    boxes = _boxes(done)
    reasons = [reason_line(each) for each in before.why("flow-low")]
    assert reasons
    assert list(boxes["Why"].lines[:-1]) == reasons
    held = next(r.probability for r in before.ranked if r.cause.id == "flow-low")
    assert any(percent(held) in line for line in boxes["What it was"].lines)
    assert held > 0.1 > next(r.probability for r in done.ranked if r.cause.id == "flow-low")
    assert "Next step" not in boxes
    assert boxes["To keep it from coming back"].lines == ("Set it each morning.",)


def test_what_else_was_considered_leaves_out_what_it_was() -> None:
    lines = _boxes(_interview(LOW, CURED))["What else was considered"].lines
    assert 2 <= len(lines) <= 4
    assert all("%" in line for line in lines)
    name = _rules().causes["flow-low"].name
    assert not any(name in line for line in lines)


def test_remedies_are_told_in_order_with_their_test_beads() -> None:
    rules = _rules()
    lines = _boxes(_interview(LOW, CLEANED, CURED))["What was tried"].lines
    tried = [line for line in lines if line[:2] in ("1.", "2.")]
    assert tried[0].endswith(
        f"{rules.causes['nozzle-clogged'].remedies[0].do} Test bead: no change."
    )
    assert rules.causes["flow-low"].name in tried[1]
    assert tried[1].endswith("Test bead: sound.")


@pytest.mark.parametrize(
    "entries",
    [
        (LOW, CURED),
        (LOW, CLEANED),
        (LOW, Passed("clean-nozzle", SKIP)),
        (LOW, Passed("set-flow", SKIP), CURED),
    ],
)
def test_no_remedy_stands_without_its_caution_before_it(entries: tuple[Entry, ...]) -> None:
    rules = _rules()
    cautioned = [r for c in rules.causes.values() for r in c.remedies if r.cautions]
    assert len(cautioned) == 2
    for block in case_blocks(_interview(*entries)):
        for place, line in enumerate(block.lines):
            for remedy in cautioned:
                if remedy.do in line:
                    text = rules.cautions[remedy.cautions[0]].text
                    assert any(text in above for above in block.lines[:place]), block.title


def test_no_check_to_be_done_stands_without_its_caution_before_it() -> None:
    rules = _rules()
    checks = {k: replace(v, cautions=("hot-metal",)) for k, v in rules.checks.items()}
    caution = rules.cautions["hot-metal"].text
    found = set()
    for told_so_far in (
        (),
        (LOW,),
        (Answered("nozzle-look", checks["nozzle-look"].answers[1].id),),
    ):
        interview = Interview(replace(rules, checks=checks), Case((*START, *told_so_far)))
        for title, block in _boxes(interview).items():
            for place, line in enumerate(block.lines):
                told_only = title in ("What was told", "Why")
                if not told_only and any(check.ask in line for check in checks.values()):
                    found.add(title)
                    assert any(caution in above for above in block.lines[:place]), title
    assert found == {"To confirm it", "What would change this", "Next step"}


def test_a_cause_that_was_put_right_on_the_way_is_kept_away_too() -> None:
    better = replace(CURED, result="better")
    done = _interview(LOW, better, Tried("nozzle-clogged", "clean-nozzle", "sound"))
    assert "Set it each morning." in _boxes(done)["To keep it from coming back"].lines


def test_what_changed_nothing_on_the_way_is_not_kept_away() -> None:
    useless = replace(CURED, result="no change")
    done = _interview(LOW, useless, Tried("nozzle-clogged", "clean-nozzle", "sound"))
    lines = [line for block in case_blocks(done) for line in block.lines]
    assert "Set it each morning." not in lines


def test_what_put_it_right_is_told_once_with_the_settings_as_they_were_then() -> None:
    low, high = Measured("gas_flow", "10 cfh"), Measured("gas_flow", "25 cfh")
    boxes = _boxes(_interview(low, CURED, high))
    remedy = _rules().causes["flow-low"].remedies[0]
    cure = " ".join(boxes["What put it right"].lines)
    assert remedy.do in cure
    assert "yours 10 cfh" in cure
    assert remedy.do not in " ".join(boxes["What was tried"].lines)


def test_the_sources_of_the_checks_answered_are_told() -> None:
    look = Answered("nozzle-look", "clean")
    assert _rules().checks["nozzle-look"].source.endswith("chapter 2")
    assert any("chapter 2" in line for line in _boxes(_interview(LOW, look))["Sources"].lines)
    assert not any("chapter 2" in line for line in _boxes(_interview(LOW))["Sources"].lines)


def test_a_case_cured_by_something_unknown_is_no_fault() -> None:
    text = "\n".join(case_text(_interview(LOW, Tried("never heard of", "x", "sound"))))
    assert "It came right, by something that is not in these rules." in text


def test_every_report_ends_with_who_decides_and_when_to_call_someone() -> None:
    for interview in (_interview(), _interview(LOW, CURED), Interview(_rules(), Case())):
        *_, last = case_blocks(interview)
        told_last = " ".join(last.lines)
        assert "The weld itself decides" in told_last
        assert "certified welder" in told_last
        assert "Call somebody" in told_last


def test_every_source_is_told_once() -> None:
    lines = _boxes(_interview(LOW, CURED))["Sources"].lines
    assert lines
    assert len(set(lines)) == len(lines)


# any case


def _entries(rules: RuleBase) -> st.SearchStrategy[Entry]:
    """Any entry, also with texts that nobody should believe."""
    free = st.one_of(st.text(max_size=30), st.just(NASTY), st.sampled_from(["3 mm", "1/8 in"]))
    answer = st.sampled_from([(c.id, a.id) for c in rules.checks.values() for a in c.answers])
    remedy = st.sampled_from([(c.id, r.id) for c in rules.causes.values() for r in c.remedies])
    known = {
        "process": [*rules.processes], "material": [*rules.materials], "job": [*rules.jobs],
        "group": [*rules.groups], "grade": [*rules.grades],
    }  # fmt: skip
    work = st.sampled_from(SITUATION).flatmap(
        lambda name: st.builds(
            Situated, st.just(name), st.sampled_from(["", *known[name]]) if name in known else free
        )
    )
    passable = [*rules.checks, *(r.id for c in rules.causes.values() for r in c.remedies)]
    return st.one_of(
        work,
        st.builds(Reported, st.sampled_from([*rules.symptoms])),
        st.builds(Resembled, st.sampled_from([*rules.symptoms])),
        answer.map(lambda pair: Answered(*pair)),
        answer.map(lambda pair: Supposed(*pair)),
        st.builds(Suspected, st.sampled_from([*rules.causes]), words=free),
        st.builds(Said, free, st.lists(free, max_size=2), st.lists(free, max_size=2)),
        st.builds(Passed, st.sampled_from([*passable, "gone"]), st.sampled_from(REASONS)),
        st.builds(Measured, st.sampled_from([*rules.settings]), free),
        st.builds(
            lambda pair, result: Tried(pair[0], pair[1], result),
            st.one_of(remedy, st.just(("gone", NASTY))), st.sampled_from(RESULTS),
        ),
    )  # fmt: skip


def _cases(rules: RuleBase, most: int) -> st.SearchStrategy[tuple[Entry, ...]]:
    """Any entries; after a sound test bead no other remedy is tried, for the case is done."""

    def ended(entries: list[Entry]) -> tuple[Entry, ...]:
        sound = [n for n, e in enumerate(entries) if isinstance(e, Tried) and e.result == "sound"]
        first = sound[0] if sound else len(entries)
        return tuple(e for n, e in enumerate(entries) if n <= first or not isinstance(e, Tried))

    return st.lists(_entries(rules), max_size=most).map(ended)


@settings(deadline=None, max_examples=120)
@given(data=st.data(), nasty=st.booleans(), begun=st.booleans())
def test_any_case_in_any_form_is_whole_and_says_the_same(
    data: st.DataObject, nasty: bool, begun: bool
) -> None:
    rules = _nasty() if nasty else _rules()
    told_so_far = data.draw(_cases(rules, 10))
    case = Case((*(START if begun else ()), *told_so_far))
    interview = Interview(rules, case)
    pages = {form: case_report(interview, form) for form in FORMATS}
    for lines in pages.values():
        assert all(line.isprintable() for line in lines)
    assert all(len(line) <= WIDTH for line in pages["text"])
    facts = {form: words(lines, form) for form, lines in pages.items()}
    assert facts["text"] == facts["markdown"] == facts["html"]
    for block in case_blocks(interview):
        for fact in (block.title, *block.lines, *(cell for row in block.table for cell in row)):
            assert words([fact], "text") in facts["text"]


@settings(deadline=None, max_examples=60)
@given(data=st.data())
def test_nothing_told_is_left_out(data: st.DataObject) -> None:
    rules = _rules()
    told_so_far = data.draw(_cases(rules, 8))
    interview = Interview(rules, Case((*START, *told_so_far)))
    stopped = any(caution.stop for caution in interview.standing_cautions)
    facts = words(case_report(interview, "text"), "text")
    for entry in told_so_far:
        if isinstance(entry, Tried) and entry.cause in rules.causes:
            wanted = rules.causes[entry.cause].name
        elif isinstance(entry, Measured):
            wanted = rules.settings[entry.setting].name
        elif isinstance(entry, Said):
            for text in (entry.text, *entry.not_understood, *entry.struck):
                assert words([text], "text") in facts
            continue
        elif isinstance(entry, Situated):
            continue  # the last one told stands; see the test of the work
        elif isinstance(entry, Passed) and entry.check not in rules.checks and stopped:
            continue  # where one must stop, no remedy is put into words
        else:
            wanted = clean(told.entry_line(rules, entry))
        assert words([wanted], "text") in facts


def test_a_check_left_open_is_told_as_left_open() -> None:
    lines = _boxes(_interview(Passed("flow-reading", DONT_KNOW)))["What was told"].lines
    assert lines[0].endswith("(don't know)")
