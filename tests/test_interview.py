"""What the guide makes of a case: the way in, the loop, stops, reasons, undo."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from tests.engine import small
from tests.replay import shipped_rules

from weldwhy.case import (
    DONT_KNOW,
    SKIP,
    Answered,
    Case,
    Entry,
    Measured,
    Passed,
    Reported,
    Situated,
    Tried,
    entry_for,
)
from weldwhy.engine.explain import weights_of_evidence
from weldwhy.interview import Interview
from weldwhy.model import Material

RULES = shipped_rules()
MIG: tuple[Entry, ...] = (
    Reported("porosity"),
    Situated("process", "gmaw"),
    Situated("material", "mild-steel"),
)


def view(*entries: Entry, patience: str = "normal") -> Interview:
    return Interview(RULES, Case(tuple(entries)), patience)


def test_the_way_in_asks_process_group_symptom_and_metal() -> None:
    case = Case()
    for wanted, answer in (
        ("process", "gmaw"), ("group", "holes"), ("symptom", "porosity"), ("material", "aluminium"),
    ):  # fmt: skip
        step = Interview(RULES, case).step
        assert (step.kind, step.id) == ("ask", wanted)
        assert answer in {a.id for a in step.answers}
        assert len(step.answers) <= 9, "each answer has a digit"
        case = case.with_(entry_for(wanted, answer))
    assert Interview(RULES, case).step.id in RULES.checks


@pytest.mark.parametrize("process", RULES.processes)
def test_every_symptom_is_reached_by_digits_through_its_group(process: str) -> None:
    case = Case().with_(Situated("process", process))
    reached = set()
    for group in Interview(RULES, case).step.answers:
        step = Interview(RULES, case.with_(Situated("group", group.id))).step
        assert step.id == "symptom"
        assert 1 <= len(step.answers) <= 9
        reached |= {answer.id for answer in step.answers}
    assert reached == {s.id for s in RULES.symptoms.values() if process in s.processes}


def test_in_a_group_the_symptom_met_most_often_comes_first() -> None:
    told = Case().with_(Situated("process", "gmaw"), Situated("group", "holes"))
    assert Interview(RULES, told).step.answers[0].id == "porosity"


def test_who_reports_a_symptom_first_is_asked_for_the_process_alone() -> None:
    case = Case().with_(Reported("porosity"))
    assert Interview(RULES, case).step.id == "process"
    assert Interview(RULES, case.with_(Situated("process", "gmaw"))).step.id == "material"


def test_a_metal_that_the_symptom_tells_is_not_asked() -> None:
    told = view(Situated("process", "smaw"), Reported("cast-iron-crack"))
    assert told.material == "cast-iron"
    assert told.step.id in RULES.checks
    assert all(not r.cause.materials or "cast-iron" in r.cause.materials for r in told.ranked)
    asked = view(Situated("process", "smaw"), Reported("cold-crack"))
    assert (asked.material, asked.step.id) == ("", "material")


def test_a_metal_that_the_symptom_tells_has_its_operating_window() -> None:
    told = (Situated("process", "gmaw"), Reported("aluminium-crack"), Situated("thickness", "3 mm"))
    implied, said = view(*told).window, view(*told, Situated("material", "aluminium")).window
    assert implied is not None
    assert said is not None
    assert implied.window.id == said.window.id


@pytest.mark.parametrize("symptom", ["no-output", "breaker-trips", "gas-leaks"])
def test_the_metal_is_not_asked_where_it_does_not_matter(symptom: str) -> None:
    assert view(Situated("process", "gmaw"), Reported(symptom)).step.id != "material"


def test_the_metal_is_asked_before_a_check_that_is_for_some_metals_only() -> None:
    causes = [
        small.cause("one", shows={"steel-look": {"yes": 0.985}}, minutes=30.0),
        small.cause("other", minutes=30.0),
    ]
    asked = replace(small.check("steel-look", off=0.02, minutes=0.1), materials=("steel",))
    rules = replace(
        small.base(causes, [asked]),
        materials={"steel": Material("steel", "steel"), "alu": Material("alu", "aluminium")},
    )
    told = Case().with_(Situated("process", "p"), Reported("bad"))
    assert Interview(rules, told).step.id == "material"
    assert Interview(rules, told.with_(Situated("material", "steel"))).step.id == "steel-look"
    assert Interview(rules, told.with_(Situated("material", "alu"))).step.id != "steel-look"


def test_the_warnings_of_a_symptom_come_before_every_step() -> None:
    case = Case().with_(Reported("shock"), Situated("process", "smaw"), Situated("material", ""))
    interview = Interview(RULES, case)
    cause = interview.ranked[0].cause
    steps = [interview.step, interview.ask("gloves-and-floor"), interview.remedy(cause.id)]
    for step in steps:
        assert step.cautions[0].id == "plug-out-first"
        assert len({caution.id for caution in step.cautions}) == len(step.cautions)
    assert interview.remedies(cause.id)[0].cautions[0].id == "plug-out-first"


def test_only_processes_that_can_show_the_symptom_are_offered() -> None:
    offered = {a.id for a in view(Reported("birds-nest")).step.answers}
    assert offered == {"gmaw", "fcaw-s", "fcaw-g"}


def test_every_fact_may_be_unknown() -> None:
    unknown = view(Reported("porosity"), Situated("process", ""), Passed("material", DONT_KNOW))
    assert unknown.step.id in RULES.checks
    processes = {p for r in unknown.ranked for p in r.cause.processes}
    assert len(processes) == 6


@pytest.mark.parametrize("job", ["structural", "pressure", "lifting", "vehicle", "closed-vessel"])
def test_a_job_that_must_not_be_mended_by_guide_stops_and_says_whom_to_call(job: str) -> None:
    step = view(*MIG, Situated("job", job)).step
    assert step.kind == "stop"
    assert step.call
    assert step.cautions[0].stop
    assert view(*MIG, Situated("job", job), Situated("job", "practice")).step.kind != "stop"


def test_a_sound_bead_ends_the_case() -> None:
    done = view(*MIG, Tried("draught", "screen-the-work", "sound"))
    assert done.step.kind == "done"
    assert done.expected_minutes == 0.0


def test_shares_and_probabilities_are_shares_and_probabilities() -> None:
    found = view(*MIG, Answered("metal-surface", "clean"))
    assert sum(found.shares.values()) == pytest.approx(1.0)
    assert all(0.0 < r.probability < 1.0 for r in found.ranked)
    order = [r.probability for r in found.ranked]
    assert order == sorted(order, reverse=True)


def test_an_answered_skipped_or_unknown_check_is_not_open() -> None:
    entries = (
        Answered("metal-surface", "clean"), Passed("what-changed", DONT_KNOW),
        Passed("air-movement", SKIP),
    )  # fmt: skip
    still = {check.id for check in view(*MIG, *entries).open_checks}
    assert not still & {"metal-surface", "what-changed", "air-movement"}


def test_dont_know_changes_no_belief_but_a_later_answer_counts() -> None:
    plain = view(*MIG)
    unsure = view(*MIG, Passed("air-movement", DONT_KNOW))
    assert unsure.belief.weights == plain.belief.weights
    told = view(*MIG, Passed("air-movement", DONT_KNOW), Answered("air-movement", "wind"))
    assert told.belief.weights == view(*MIG, Answered("air-movement", "wind")).belief.weights


def test_dont_know_after_an_answer_withdraws_it() -> None:
    taken = view(*MIG, Answered("air-movement", "wind"), Passed("air-movement", DONT_KNOW))
    assert taken.belief.weights == view(*MIG).belief.weights


def test_undo_takes_back_the_last_entry_and_nothing_else() -> None:
    rng = random.Random(4)
    case = Case(MIG)
    seen = [Interview(RULES, case).belief.weights]
    for _ in range(6):
        step = Interview(RULES, case).step
        if step.kind == "remedy":
            case = case.with_(Tried(step.cause, step.id, "no change"))
        else:
            case = case.with_(entry_for(step.id, rng.choice(step.answers).id))
        seen.append(Interview(RULES, case).belief.weights)
    for weights in reversed(seen[:-1]):
        case = case.undo()
        assert Interview(RULES, case).belief.weights == weights


def test_cautions_of_a_step_come_with_it() -> None:
    step = view(*MIG).remedy("zinc-coating")
    assert {"zinc", "grinding"} <= {caution.id for caution in step.cautions}
    for check in RULES.checks.values():
        assert [c.id for c in view(*MIG).ask(check.id).cautions] == list(check.cautions)


def test_a_machine_fault_stops_and_calls() -> None:
    step = view(*MIG).remedy("machine-output-fault")
    assert step.kind == "stop"
    assert "service" in step.call


def test_what_would_change_its_mind_does_change_it() -> None:
    found = view(*MIG, Answered("metal-surface", "clean"), Answered("air-movement", "wind"))
    leader = found.ranked[0].cause
    assert found.mind_changers
    turned = 0
    for check in found.open_checks:
        for answer in check.answers:
            line = next((x for x in found.mind_changers
                         if x.startswith(check.ask) and f'"{answer.text}"' in x), None)  # fmt: skip
            if line:
                after = Interview(RULES, found.case.with_(Answered(check.id, answer.id)))
                assert after.ranked[0].cause.name in line
                assert after.ranked[0].cause.id != leader.id
                turned += 1
    assert turned == len(found.mind_changers)


def test_reasons_for_and_against_are_signed_and_strongest_first() -> None:
    found = view(*MIG, Answered("air-movement", "wind"), Answered("gas-flow-reading", "right"))
    reasons = found.why("draught")
    assert reasons[0].check_id == "air-movement"
    assert reasons[0].decibans > 3
    assert found.why("gas-flow-low")[0].decibans < 0
    sizes = [abs(reason.decibans) for reason in reasons]
    assert sizes == sorted(sizes, reverse=True)


def test_answers_that_contradict_each_other_are_remarked() -> None:
    """No gas on the gauge, yet as much as the gauge shows at the nozzle, and the valve clicks."""
    odd = (
        Answered("gas-flow-reading", "none"), Answered("gas-at-nozzle", "right"),
        Answered("trigger-click", "clicks"),
    )  # fmt: skip
    assert view(*MIG, *odd).notice
    assert not view(*MIG, Answered("air-movement", "wind")).notice


def test_two_symptoms_at_once_favour_a_cause_of_both() -> None:
    both = view(Reported("porosity"), Reported("spatter"), *MIG[1:])
    one = view(*MIG)
    polarity = {r.cause.id: r.probability for r in both.ranked}["polarity-wrong"]
    assert polarity > {r.cause.id: r.probability for r in one.ranked}["polarity-wrong"]


def test_brisk_asks_less_than_thorough() -> None:
    def asked(patience: str) -> int:
        case, count = Case(MIG), 0
        for _ in range(30):
            step = Interview(RULES, case, patience).step
            if step.kind not in ("ask", "check"):
                break
            count += 1
            case = case.with_(Answered(step.id, step.answers[0].id))
        return count

    assert asked("brisk") < asked("thorough")


def test_every_entry_is_told_back_in_words() -> None:
    later = (
        Measured("volts", "18 V"), Answered("air-movement", "wind"), Passed("what-changed", SKIP),
        Tried("draught", "screen-the-work", "better"),
    )  # fmt: skip
    told = view(*MIG, *later).told
    assert len(told) == 7
    assert told[1] == "process: MIG with gas and solid wire"
    assert "18 V" in told[3]
    assert told[-1] == f"tried: {RULES.causes['draught'].name}: better"


def test_a_dial_is_asked_about_with_its_range_in_sight() -> None:
    known = (*MIG, Situated("thickness", "3 mm"), Measured("wire", "0.035 in"))
    assert view(*known).ask("volts-set").text.endswith("Here: 19 V (17.5-20.5).")
    assert "25 cfh (20-30)" in view(*MIG).ask("gas-flow-reading").text
    assert "Here" not in view(*MIG).ask("volts-set").text


def test_a_remedy_that_cannot_be_done_now_is_left_out_and_undo_brings_it_back() -> None:
    told = (*MIG, Answered("metal-surface", "clean"), Answered("gas-flow-reading", "low"))
    case = Case(told)
    step = Interview(RULES, case).step
    while step.kind != "remedy":
        case = case.with_(Answered(step.id, step.answers[0].id))
        step = Interview(RULES, case).step
    skipped = Interview(RULES, case.with_(Passed(step.id, SKIP)))
    assert (skipped.step.id, skipped.step.cause) != (step.id, step.cause)
    assert skipped.belief.weights == Interview(RULES, case).belief.weights
    assert step.text in skipped.told[-1]
    assert Interview(RULES, skipped.case.undo()).step.id == step.id


def test_no_remedy_has_the_id_of_a_check_or_of_another_remedy() -> None:
    remedies = [r.id for c in RULES.causes.values() for r in c.remedies]
    assert len(set(remedies)) == len(remedies)
    assert not set(remedies) & set(RULES.checks)


def test_what_hardly_weighs_is_no_reason() -> None:
    """Below one deciban nobody would notice it."""
    seen = view(
        Reported("porosity"), Situated("process", "gmaw"), Answered("arc-sound", "steady-crackle")
    )
    for ranked in seen.ranked:
        weighed = weights_of_evidence(seen.network, seen.log, ranked.cause.id)
        strong = [weight for weight in weighed if abs(weight.decibans) >= 1.0]
        assert len(seen.why(ranked.cause.id)) == len(strong)
    leader = weights_of_evidence(seen.network, seen.log, seen.ranked[0].cause.id)
    assert any(0 < abs(weight.decibans) < 1.0 for weight in leader)


def test_the_strongest_reason_comes_first_whether_for_or_against() -> None:
    seen = view(
        *MIG,
        Answered("arc-sound", "steady-crackle"),
        Measured("gas_flow", "5 cfh"),
        Measured("volts", "30 V"),
    )
    several = [seen.why(ranked.cause.id) for ranked in seen.ranked[:40]]
    weights = [[abs(reason.decibans) for reason in reasons] for reasons in several]
    assert weights == [sorted(each, reverse=True) for each in weights]
    assert any(r.decibans < 0 for reasons in several for r in reasons[:-1])
