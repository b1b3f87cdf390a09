"""Plain mode: numbered lines in and out, nothing lost, no cursor control."""

from __future__ import annotations

import io
import os
import pty
import signal
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.engine.small import base, cause, check

from weldwhy.case import Answered, Case, Passed, Reported, Said, Situated, Supposed, Tried
from weldwhy.console import Console
from weldwhy.model import Caution, Job, Material, RuleBase, Setting
from weldwhy.plain import run
from weldwhy.store import Preferences, Store
from weldwhy.surroundings import ExitCode
from weldwhy.units import parse


def _rules() -> RuleBase:
    made = base(
        [
            cause("draught", 8.0, {"door": {"yes": 0.9}}),
            cause("rust", 8.0, {"metal": {"yes": 0.9}}),
            cause("machine", 1.0, {"metal": {"no": 0.9}}, stop=True),
        ],
        [check("door", off=0.05), check("metal", off=0.05)],
    )
    possible = (parse("5 V", "voltage"), parse("60 V", "voltage"))
    return replace(
        made,
        settings={"volts": Setting("volts", "volts", "voltage", possible)},
        materials={"mild-steel": Material("mild-steel", "mild steel")},
        cautions={"no": Caution("no", "Not a job for a guide.", "invented", True, "a shop")},
        jobs={"boiler": Job("boiler", "a boiler", "no")},
    )


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(tmp_path)


START = "1\n1\n"
"""Process and symptom by number."""


def _talk(store: Store, typed: str, rules: RuleBase | None = None) -> str:
    sink = io.StringIO()
    assert run(rules or _rules(), store, io.StringIO(typed), sink) == ExitCode.FINE
    return sink.getvalue()


def _kept(store: Store) -> Case:
    return store.resume() or Case()


def _entries_of_asked(text: str) -> str:
    """The last question put, without its answers."""
    return text.rsplit("\n\n", 1)[-1]


def test_a_number_answers_and_every_entry_is_kept_at_once(store: Store) -> None:
    text = _talk(store, START + "2\n")
    entries = _kept(store).entries
    assert entries[:2] == (Situated("process", "p"), Reported("bad"))
    assert isinstance(entries[-1], Answered)
    assert entries[-1].answer == "yes"
    assert text.rstrip().endswith("The case is kept.")


def test_zero_means_dont_know_and_s_skips(store: Store) -> None:
    _talk(store, START + "0\ns\n")
    passed = [e for e in _kept(store).entries if isinstance(e, Passed)]
    assert {each.reason for each in passed if each.check in ("door", "metal")} == {
        "don't know",
        "skip",
    }


def test_undo_takes_back_the_last_entry_and_says_which(store: Store) -> None:
    text = _talk(store, START + "volts 18 V\nu\n")
    assert "Undone: volts: 18 V" in text
    assert _kept(store).measured == {}


def test_undo_with_nothing_to_undo_says_so(store: Store) -> None:
    assert "There is nothing to undo." in _talk(store, "u\n")


def test_a_case_goes_on_from_where_it_was_left(store: Store) -> None:
    first = _talk(store, START)
    second = _talk(store, "1\n")
    assert "An unfinished case is kept:" in second
    question = next(line for line in first.splitlines() if line in ("door?", "metal?"))
    assert question in second.splitlines()


def test_starting_afresh_loses_nothing(store: Store) -> None:
    _talk(store, START)
    kept = _kept(store)
    _talk(store, "2\n")
    assert store.resume() is None
    assert [each.case for each in store.finished()] == [kept]


@pytest.mark.parametrize("line", ["say no draught here, rust", '"no draught here, rust"'])
def test_own_words_are_taken_and_told_back(store: Store, line: str) -> None:
    rules = replace(
        _rules(),
        said={"answer metal yes": ("rust", "rusty metal"), "answer door yes": ("open door",)},
    )
    text = _talk(store, f"{START}{line}\nq\n", rules)
    assert "say holes in the bead" in text
    assert "Understood from your words" in text
    assert '("rust")' in text
    case = store.resume()
    assert case is not None
    assert {e.check for e in case.entries if isinstance(e, (Answered, Supposed))} == {"metal"}
    ((said, taken),) = case.own_words
    assert said.text == "no draught here, rust"
    assert [each.words for each in taken] == ["rust"]


def test_own_words_are_told_in_the_report_until_they_are_undone(store: Store) -> None:
    rules = replace(_rules(), said={"answer metal yes": ("rust", "rusty metal")})
    line = 'from "rust"'
    told = _talk(store, f"{START}say rust, my cat\x1b[2J sleeps\nr\n", rules)
    assert "In the person's own words:" in told
    assert '- "rust, my cat sleeps"' in told
    assert line in told
    fewer = _talk(store, "1\nu\nr\n", rules)
    assert '- "rust, my cat sleeps"' in fewer
    assert line not in fewer
    none = _talk(store, "1\nu\nr\n", rules)
    assert 'Undone: own words: "rust, my cat sleeps"' in none
    assert "In the person's own words:" not in none


def test_own_words_that_mean_nothing_change_nothing_but_are_kept(store: Store) -> None:
    text = _talk(store, f"{START}say seven green umbrellas\nq\n")
    assert 'Not understood, so not counted: "seven green umbrellas"' in text
    case = store.resume()
    assert case is not None
    assert case.entries[2:] == (Said("seven green umbrellas", ("seven green umbrellas",)),)


def test_words_with_nothing_in_them_to_name_are_answered_too(store: Store) -> None:
    text = _talk(store, f"{START}say hello there\nq\n")
    assert "Nothing of this was understood; your words are kept for the report." in text
    assert "Nothing of this" not in _talk(store, f"{START}say seven green umbrellas\nq\n")
    assert '"hello there"' in _talk(store, "1\nu\nr\nq\n")


def test_a_case_from_other_rules_is_resumed_without_what_is_unknown(store: Store) -> None:
    store.save(Case((Reported("bad"), Answered("gone", "x"), Tried("gone", "x", "better"))))
    text = _talk(store, "1\n")
    assert "2 things told are not in these rules" in text
    assert "Which process" in text


def test_a_sound_test_bead_ends_with_the_report_and_finishes_the_case(store: Store) -> None:
    text = _talk(store, START + "t 1\n1\n")
    assert "Done: the last test bead was sound." in text
    assert "What put it right:" in text
    assert store.resume() is None
    (finished,) = store.finished()
    assert finished.case.sound
    assert finished.when


def test_a_worse_bead_is_put_back_first(store: Store) -> None:
    text = _talk(store, START + "t 1\n4\n")
    assert "Put it back as it was" in text
    assert _kept(store).tried[-1].result == "worse"


def test_a_cause_can_be_opened_at_any_time(store: Store) -> None:
    text = _talk(store, START + "c 2\n")
    assert "About rust:" in text or "About draught:" in text
    assert "What to do:" in text


def test_other_questions_can_be_listed_and_taken(store: Store) -> None:
    text = _talk(store, START + "o\no 2\n2\n")
    listed = [line for line in text.splitlines() if line.startswith("  o 2. ")]
    (answered,) = (e for e in _kept(store).entries if isinstance(e, Answered))
    assert listed == [f"  o 2. {answered.check}?"]


def test_a_reading_can_be_told_unasked(store: Store) -> None:
    text = _talk(store, START + "volts: 18\nvolts 999 V\nmaterial mild steel\nflow what\n")
    assert _kept(store).measured == {"volts": "18 V"}
    assert "Volts 999 V is not possible" in text
    assert _kept(store).material == "mild-steel"
    assert '"flow what" means nothing here; type ? for help.' in text


def test_a_job_that_must_not_be_mended_by_guide_stops_at_once(store: Store) -> None:
    text = _talk(store, START + "job boiler\n")
    asked = _entries_of_asked(text)
    assert "STOP: Not a job for a guide." in asked
    assert "Call: a shop." in asked
    assert asked.count("Not a job for a guide.") == 1


@pytest.mark.parametrize(
    "typed", ["7", "c 99", "c", "o 99", "t 99", "x y z", "1 2", "\x1b[2J", "-1"]
)
def test_what_means_nothing_is_said_and_changes_nothing(store: Store, typed: str) -> None:
    _talk(store, START)
    before = _kept(store)
    text = _talk(store, f"1\n{typed}\n")
    assert _kept(store) == before
    assert "\x1b" not in text


def test_the_guide_goes_on_when_the_case_cannot_be_kept(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    text = _talk(Store(tmp_path / "file" / "x"), START)
    assert "the case goes on, but it is not kept" in text.replace("\n  ", " ")
    assert text.endswith("No case is kept.\n")
    assert "door?" in text or "metal?" in text


def test_a_broken_case_is_said_in_one_line_and_the_talk_begins(store: Store) -> None:
    (store.folder / "case.json").write_text("{", encoding="utf-8")
    text = _talk(store, START)
    assert "was moved to case.json.broken" in text.replace("\n  ", " ")
    assert _kept(store).process == "p"


def test_no_input_at_all_is_the_same_as_leaving(store: Store) -> None:
    sink = io.StringIO()
    assert run(_rules(), store, None, sink) == ExitCode.FINE


def test_preferred_units_and_patience_are_used(store: Store) -> None:
    store.preferences = Preferences(units="mm", patience="brisk")
    assert "Which process" in _talk(store, "")


def test_lines_are_plain_text_no_wider_than_a_small_terminal(store: Store) -> None:
    text = _talk(store, START + "c 1\no\nr\nt 1\n3\n")
    for line in text.splitlines():
        assert len(line) <= 76
        assert line.isascii()
        assert not line or line.isprintable()


def test_an_unchanged_ranking_is_not_read_out_twice(store: Store) -> None:
    once = _talk(store, START)
    assert _talk(store, "1\n?\no\nx\n").count("Most likely:") == 1
    assert once.count("Most likely:") >= 1


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.lists(
        st.sampled_from([*"0123456789suocrtaq?", "c 1", "t 1", "o 1", "t 2", "volts 18 V", ""])
        | st.text(max_size=12),
        max_size=25,
    )
)
def test_no_typing_whatever_makes_it_fail(tmp_path: Path, typed: list[str]) -> None:
    sink = io.StringIO()
    lines = "".join(f"{line}\n" for line in typed)
    assert run(_rules(), Store(tmp_path / "any"), io.StringIO(lines), sink) == ExitCode.FINE
    assert all(line.isprintable() for line in sink.getvalue().splitlines() if line)


def _program(home: Path, **more: str) -> dict[str, str]:
    return {**os.environ, "WELDWHY_HOME": str(home), **more}


COMMAND = [sys.executable, "-m", "weldwhy", "--plain"]


def _typed_in(home: Path, typed: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        COMMAND, input=typed, capture_output=True, text=True, env=_program(home), check=False
    )


def test_it_works_in_a_pipe_with_the_real_rules(tmp_path: Path) -> None:
    done = subprocess.run(
        COMMAND,
        input="3\n1\n1\n",
        capture_output=True,
        text=True,
        env=_program(tmp_path),
        check=False,
    )
    assert done.returncode == 0
    assert done.stderr == ""
    assert "Most likely:" in done.stdout
    assert "\x1b" not in done.stdout


def test_whatever_is_said_reaches_the_terminal_as_text() -> None:
    sink = io.StringIO()
    Console(None, sink).say("  in\x1b[31mdented\x07", "a\rb")
    assert sink.getvalue() == "  indented\na b\n"


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "utf-8"])
def test_no_locale_breaks_it(tmp_path: Path, encoding: str) -> None:
    done = subprocess.run(
        COMMAND,
        input="3\n1\nmaterial m\xfcld\n".encode(encoding, "replace") + b"\xff\xfe\n",
        capture_output=True,
        env=_program(tmp_path, PYTHONIOENCODING=encoding, LC_ALL="C"),
        check=False,
    )
    assert done.returncode == 0
    assert b"Traceback" not in done.stderr


def test_control_c_leaves_with_130_and_the_case_kept(tmp_path: Path) -> None:
    with subprocess.Popen(
        COMMAND,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=_program(tmp_path),
    ) as talk:
        assert talk.stdin is not None
        assert talk.stdout is not None
        assert talk.stderr is not None
        talk.stdin.write("1\n1\n1\n")
        talk.stdin.flush()
        _wait_for(tmp_path / "case.json", "reported")
        talk.send_signal(signal.SIGINT)
        assert talk.wait(10) == ExitCode.INTERRUPTED
        assert "Traceback" not in talk.stderr.read()
    assert _kept(Store(tmp_path)).process == "gmaw"


def test_a_killed_program_resumes_at_the_same_question(tmp_path: Path) -> None:
    with subprocess.Popen(
        COMMAND, stdin=subprocess.PIPE, stdout=subprocess.DEVNULL, text=True, env=_program(tmp_path)
    ) as talk:
        assert talk.stdin is not None
        talk.stdin.write("1\n1\n1\n")
        talk.stdin.flush()
        _wait_for(tmp_path / "case.json", "reported")
        talk.kill()
    done = _typed_in(tmp_path, "1\n")
    assert "An unfinished case is kept:" in done.stdout
    assert "porosity" in done.stdout


def test_on_a_terminal_it_prompts_and_sends_no_control_codes(tmp_path: Path) -> None:
    """Run on a pseudo-terminal, as a screen reader would see it."""
    leader, follower = pty.openpty()
    with subprocess.Popen(
        COMMAND,
        stdin=follower,
        stdout=follower,
        stderr=follower,
        env=_program(tmp_path, TERM="dumb"),
    ) as talk:
        os.close(follower)
        os.write(leader, b"3\nq\n")
        seen = b""
        while chunk := _more(leader):
            seen += chunk
        assert talk.wait(10) == 0
    os.close(leader)
    assert b"> " in seen
    assert b"\x1b" not in seen


def _more(descriptor: int) -> bytes:
    try:
        return os.read(descriptor, 4096)
    except OSError:  # the other side has gone
        return b""


def _wait_for(path: Path, word: str, seconds: float = 10.0) -> None:
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if path.exists() and word in path.read_text(encoding="utf-8"):
            return
        time.sleep(0.01)
    pytest.fail(f"{word} never came to {path}")
