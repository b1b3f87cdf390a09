"""What is made of people's words, on the shipped rules."""

from __future__ import annotations

import time

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from weldwhy.case import (
    Answered,
    Case,
    Entry,
    Hinted,
    Measured,
    Reported,
    Situated,
    Supposed,
    Suspected,
    Tried,
)
from weldwhy.entries import still_known
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.rulebase import load
from weldwhy.understanding.heard import SURE, Heard
from weldwhy.understanding.hearing import LIMIT, REST, understand


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    return load()


RULES = load()


NOTHING = Case()


def _sure(text: str, case: Case = NOTHING) -> set[Entry]:
    return {each.entry for each in understand(RULES, text, case).understood if each.sure}


def _all(text: str, case: Case = NOTHING) -> set[Entry]:
    return set(understand(RULES, text, case).entries)


# the work


@pytest.mark.parametrize(
    ("text", "process"),
    [
        ("mig", "gmaw"),
        ("stick welding a gate", "smaw"),
        ("running 7018 at 120 amps", "smaw"),
        ("flux core without gas", "fcaw-s"),
        ("fluxcore w gas", "fcaw-g"),
        ("gasless mig", "fcaw-s"),
        ("tig on stainless", "gtaw-dc"),
        ("tig on aluminium plate", "gtaw-ac"),
        ("tig welding 6061", "gtaw-ac"),
    ],
)
def test_the_process_is_told_by_its_names_its_filler_and_its_metal(text: str, process: str) -> None:
    assert Situated("process", process) in _sure(text)


def test_the_tungsten_stick_is_no_stick_welding() -> None:
    told = _sure("the tungsten stick melts into a big ball, welding stainless")
    assert Situated("process", "smaw") not in told


@pytest.mark.parametrize("text", ["the wire sticks to the tip", "it sticks every time"])
def test_what_sticks_is_no_stick_welding(text: str) -> None:
    assert Situated("process", "smaw") not in _all(text)


def test_the_brush_does_not_tell_the_metal() -> None:
    assert not any(
        isinstance(entry, Situated) and entry.field == "material"
        for entry in _all("mig, cleaned it with a stainless brush")
    )


def test_a_case_is_not_told_again_what_it_knows() -> None:
    case = Case((Situated("process", "gmaw"), Reported("porosity")))
    assert not any(isinstance(e, Situated) for e in _all("stick, porosity", case))


# symptoms


@pytest.mark.parametrize(
    ("text", "symptom"),
    [
        ("porosity", "porosity"),
        ("mig, pinholes all over", "porosity"),
        ("row of pinholes down the middle", "porosity-in-line"),
        ("wire keeps welding itself to the tip", "burnback"),
        ("undercut", "undercut"),
        ("birds nest at the drive rolls", "birds-nest"),
        ("burns through the sheet", "burn-through"),
    ],
)
def test_a_symptom_is_known_by_what_people_call_it(text: str, symptom: str) -> None:
    told = {e.symptom for e in _all(text) if isinstance(e, (Reported, Hinted))}
    assert symptom in told


def _symptoms(text: str) -> list[str]:
    """The symptoms told or to be asked back, the likeliest first."""
    entries = understand(RULES, text).entries
    return [e.symptom for e in entries if isinstance(e, (Reported, Hinted))]


def test_the_more_exact_symptom_takes_the_words() -> None:
    told = {e.symptom for e in _sure("row of pinholes down the middle") if isinstance(e, Reported)}
    assert told == {"porosity-in-line"}


def test_a_denied_symptom_is_dropped_and_not_handed_back() -> None:
    heard = understand(RULES, "no porosity but undercut")
    told = {e.symptom for e in heard.entries if isinstance(e, (Reported, Hinted))}
    assert told == {"undercut"}
    assert heard.not_understood == ()


def test_what_will_not_stop_goes_on() -> None:
    told = _all("it will not stop spattering")
    assert {e.symptom for e in told if isinstance(e, (Reported, Hinted))} == {"spatter"}


@pytest.mark.parametrize(
    "text", ["there is no spatter", "no undercut", "hardly any spatter", "no porosity, no undercut"]
)
def test_a_symptom_that_is_only_denied_is_none(text: str) -> None:
    assert not any(isinstance(e, (Reported, Hinted)) for e in _all(text))


def test_why_it_does_it_denies_nothing() -> None:
    told = _symptoms("I cannot see why I keep getting holes in the weld")
    assert told[0] == "porosity"


def test_praise_tells_no_symptom() -> None:
    told = _all("stick, on clean steel it went on like glass")
    assert not any(isinstance(e, (Reported, Hinted)) for e in told)


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("mig, the bottle is full", "gas-leaks"),
        ("tig, the bottle is empty", "gas-leaks"),
        ("I zapped the rail with the tig", "shock"),
        ("the plastic snake that goes to the gun", "irregular-bead"),
        ("tig on stainless piping", "wormholes"),
        ("stick on a plough leg, no heating", "arc-weak"),
        ("gasless mig, the label says no gas needed", "no-gas"),
        ("tig, the tungsten turned blue", "tungsten-erodes"),
    ],
)
def test_what_is_near_a_symptom_is_not_taken_for_it(text: str, wrong: str) -> None:
    assert wrong not in {e.symptom for e in _sure(text) if isinstance(e, Reported)}


def test_a_crack_in_the_crater_is_one_in_aluminium_too() -> None:
    assert _symptoms("crater cracks ali mig")[0] == "crater-crack"


def test_a_symptom_of_other_processes_is_not_taken() -> None:
    case = Case((Situated("process", "gmaw"),))
    told = {e.symptom for e in _all("tungsten balls up", case) if isinstance(e, Reported)}
    assert all("gmaw" in RULES.symptoms[symptom].processes for symptom in told)


# answers

POROSITY = Case((Situated("process", "gmaw"), Reported("porosity")))


def test_wind_is_an_answer_and_no_wind_another() -> None:
    told = _all("its windy", POROSITY)
    assert told & {Answered("air-movement", "wind"), Supposed("air-movement", "wind")}
    told = _all("its not windy", POROSITY)
    assert told & {Answered("air-movement", "still"), Supposed("air-movement", "still")}
    assert not told & {Answered("air-movement", "wind"), Supposed("air-movement", "wind")}


def test_no_check_is_answered_twice() -> None:
    told = _all("it is windy. there is no wind. it is windy outside. calm day", POROSITY)
    checks = [e.check for e in told if isinstance(e, (Answered, Supposed))]
    assert len(checks) == len(set(checks))


def test_a_check_of_other_processes_is_not_answered() -> None:
    case = Case((Situated("process", "smaw"), Reported("porosity")))
    for entry in _all("gas is low, nozzle is full of spatter, windy", case):
        if isinstance(entry, (Answered, Supposed)):
            limits = RULES.checks[entry.check].processes
            assert not limits or "smaw" in limits


def test_history_is_an_answer() -> None:
    assert Answered("ever-ran-well", "yes") in _all("it ran fine yesterday", POROSITY)
    told = _all("since i changed the wire", POROSITY)
    assert told & {
        Answered("what-changed", "wire-or-rods"), Supposed("what-changed", "wire-or-rods")
    }  # fmt: skip


def test_what_the_person_answered_stays() -> None:
    case = POROSITY.with_(Answered("air-movement", "still"))
    assert not any(
        isinstance(e, (Answered, Supposed)) and e.check == "air-movement"
        for e in _all("its windy", case)
    )


# guesses


@pytest.mark.parametrize(
    "text",
    [
        "i think the liner is clogged",
        "could it be the liner is clogged",
        "liner is clogged, I reckon",
    ],
)
def test_a_guess_is_a_suspicion_and_no_answer(text: str) -> None:
    case = Case((Situated("process", "gmaw"), Reported("feed-surges")))
    told = _all(text, case)
    assert {e.cause for e in told if isinstance(e, Suspected)} == {"liner-clogged"}
    assert not any(isinstance(e, Answered) and e.check.startswith("liner") for e in told)


# what was tried


@pytest.mark.parametrize(
    ("text", "result"),
    [
        ("turned up the gas, no change", "no change"),
        ("Turned the gas up and it got worse!", "worse"),
        ("turned the gas up, that helped a bit", "better"),
        ("turned up the gas, made no odds", "no change"),
        ("turned up the gas but it is still bad", "no change"),
    ],
)
def test_what_was_tried_counts_with_its_result(text: str, result: str) -> None:
    tried = {(e.cause, e.result) for e in _all(text, POROSITY) if isinstance(e, Tried)}
    assert ("gas-flow-low", result) in tried


def test_what_was_tried_without_a_result_is_left_out() -> None:
    assert not any(isinstance(e, Tried) for e in _all("turned up the gas", POROSITY))


def test_a_dial_turned_with_a_result_answers_its_check() -> None:
    case = Case((Situated("process", "smaw"), Reported("undercut")))
    assert Answered("amps-down-try", "better") in _all("150 amps. tried 130 and its better", case)
    case = Case((Situated("process", "gmaw"), Reported("ropy-bead")))
    assert Answered("volts-up-try", "same") in _all("turned it up one, same thing", case)


# numbers


@pytest.mark.parametrize(
    ("text", "setting", "value"),
    [
        ("mig with .035 wire", "wire", "0.035 in"),
        ("mig with 035 wire", "wire", "0.035 in"),
        ("mig with 0.8 wire", "wire", "0.8 mm"),
        ("mig at 18v", "volts", "18 V"),
        ("mig at 18.2 volts", "volts", "18.2 V"),
        ("mig 250 ipm", "wire_feed", "250 ipm"),
        ("mig wire speed 250", "wire_feed", "250 ipm"),
        ("mig 25 cfh", "gas_flow", "25 cfh"),
        ("mig 12 lpm", "gas_flow", "12 L/min"),
        ("3/32 7018", "rod", "3/32 in"),
        ("stick at 90 amps", "amps", "90 A"),
        ("stick welding at 90", "amps", "90 A"),
        ("mig 1/2 inch stick out", "stick_out", "1/2 in"),
        ("17 and a half volts, mig", "volts", "17.5 V"),
        ("mig with C25", "gas", "C25"),
        ("mig on 75/25", "gas", "75/25"),
        ("mig with straight CO2", "gas", "straight CO2"),
        ("tig, my tungstens vanish, I put in a new 2.4 and it is gone", "tungsten", "2.4 mm"),
    ],
)
def test_a_setting_is_read_with_its_unit(text: str, setting: str, value: str) -> None:
    assert Measured(setting, value) in _sure(text)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1/8 plate", "1/8 in"), ("16 ga steel", "16 ga"), ("16 gauge", "16 ga"),
        ("3mm steel", "3 mm"), ("half inch plate", "1/2 in"), ("quarter inch steel", "1/4 in"),
    ],
)  # fmt: skip
def test_a_thickness_is_read(text: str, value: str) -> None:
    assert Situated("thickness", value) in _sure(text)


@pytest.mark.parametrize(
    "text",
    [
        "plugged into 230v mig", "240 volt machine, mig", "mig on 110v", "120v machine mig",
        "20 psi on the gauge", "bought it in 2019", "I am 63 years old", "3 weeks ago, 2 days",
        "200 amp machine", "mig 99999 ipm", "mig 900 volts", "20 amp breaker",
    ],
)  # fmt: skip
def test_what_is_no_setting_is_not_taken_for_one(text: str) -> None:
    assert not any(isinstance(e, Measured) for e in _all(text))


def test_two_thicknesses_tell_none() -> None:
    told = _all("mig, 3mm sheet to 12mm plate")
    assert not any(isinstance(e, Situated) and e.field == "thickness" for e in told)


# spelling


def test_a_slip_of_the_pen_is_read_over() -> None:
    assert {e.symptom for e in _all("porsity") if isinstance(e, (Reported, Hinted))} == {"porosity"}
    assert Situated("material", "stainless") in _all("mig on stainles steel")


# whatever is typed


@pytest.mark.parametrize(
    "text",
    [
        "", "   ", "\x00\x1b[31m\x07", "🔥🔥🔥", "\u202e\u200f", "<b>&amp;</b>", "a" * 5000,
        "Hola, me llamo nadie y quisiera saber a qué hora abren ustedes mañana",
        "Bonjour, je cherche une jolie chambre pour deux personnes près de la mer",
        "Guten Tag, ich möchte gern einen Tisch für vier Personen am Abend haben",
        "Меня зовут никто, когда вы открываетесь", "今日はいい天気ですね",
        "how much do you charge per hour and do you come out at weekends?",
        "Two cups of flour, a stick of butter, pinch of salt. Rub together, rest it an hour, bake.",
        "morning all, hope everybody had a good weekend, ours was lovely",
        "the bus was late again and my sister laughed at my new umbrella",
    ],
)  # fmt: skip
def test_nothing_is_made_of_what_says_nothing(text: str) -> None:
    heard = understand(RULES, text)
    assert heard.understood == ()
    for rest in heard.not_understood:
        assert rest == clean(rest)


def test_a_novel_is_cut_and_says_so() -> None:
    heard = understand(RULES, "mig porosity. " + "the cat sat and the dog ran away. " * 30_000)
    assert Reported("porosity") in heard.entries or Hinted("porosity") in heard.entries
    assert heard.not_understood[-1] == REST
    short = understand(RULES, "x " * (LIMIT // 4))
    assert REST not in short.not_understood


def test_a_long_text_takes_no_long_time() -> None:
    text = (
        "mig, pinholes in the bead and the wire slips, 18 volts, tried more gas, no change. " * 60
    )
    understand(RULES, text)
    begun = time.process_time()
    understand(RULES, text[:5000])
    assert time.process_time() - begun < 2.0  # 0.2 s on the machine this was written on


def _agrees(heard: Heard, case: Case) -> None:
    after = case.with_(*heard.entries)
    assert still_known(RULES, after) == (after, 0)
    checks = [e.check for e in heard.entries if isinstance(e, (Answered, Supposed))]
    assert len(checks) == len(set(checks))
    order = [
        (Situated,), (Reported, Hinted), (Answered, Supposed), (Measured,), (Suspected,),
        (Tried,),
    ]  # fmt: skip
    places = [
        next(n for n, kinds in enumerate(order) if isinstance(e, kinds)) for e in heard.entries
    ]
    assert places == sorted(places)
    for each in heard.understood:
        assert 0 <= each.confidence <= 1
        assert each.text == clean(each.text)
        assert each.sure == (each.confidence >= SURE)
        assert each.sure or not isinstance(each.entry, (Reported, Answered, Situated, Measured))


COMMON = """
not no but and gas wire arc tip holes spatter mig stick tig 18v 3mm liner tried better same I think
' ? . , - 1/0 0/0 99/0in ½ ﬁ İ İv
"""
WORDS = COMMON.split()


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.one_of(st.text(max_size=300), st.lists(st.sampled_from(WORDS), max_size=40).map(" ".join))
)
def test_any_text_gives_entries_that_the_rules_know_in_order(text: str) -> None:
    for case in (Case(), POROSITY):
        _agrees(understand(RULES, text, case), case)
