"""Reading rule folders: what is found, what is joined, what replaces what."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from weldwhy import rulebase
from weldwhy.build import baseline
from weldwhy.folders import TOP_FILES
from weldwhy.model import RuleBase
from weldwhy.problems import RulesError

from .conftest import HERE, SHIPPED


def read(*folders: Path) -> RuleBase:
    base, problems = rulebase.read(folders)
    assert [str(each) for each in problems] == []
    assert base is not None
    return base


def lines(*folders: Path) -> list[str]:
    """The problems of folders, each with its path from the last folder on."""
    top = f"{folders[-1]}/"
    return [str(each).replace(top, "") for each in rulebase.read(folders)[1]]


def test_the_checkout_uses_the_rules_at_its_top() -> None:
    assert rulebase.default_folder() == SHIPPED


def test_likelihood_words_become_the_numbers_of_their_file(sound: Path) -> None:
    base = read(sound)
    cause = base.causes["flow-low"]
    assert cause.symptoms == {"porosity": 0.95}
    assert cause.shows == {"flow-reading": {"low": 0.85}}
    assert cause.base == 8
    assert cause.remedies[0].works == 0.95
    assert base.likelihoods["seldom"] == 0.15


def test_a_check_has_its_baseline_in_answer_order(sound: Path) -> None:
    check = read(sound).checks["flow-reading"]
    assert [answer.id for answer in check.answers] == ["right", "low", "high"]
    assert check.baseline == pytest.approx((0.85, 0.10, 0.05))
    assert (check.noise, check.dont_know) == (0.02, 0.15)


@pytest.mark.parametrize("off_normal", [0.02, 0.15, 0.5, 0.985])
@pytest.mark.parametrize("shares", [[1.0], [1, 1], [2, 1, 7], [0.01, 100]])
def test_a_baseline_sums_to_one_and_keeps_the_shares(
    off_normal: float, shares: list[float]
) -> None:
    row = baseline(off_normal, shares)
    assert sum(row) == pytest.approx(1, abs=1e-12)
    assert row[0] == pytest.approx(1 - off_normal)
    assert row[1] / shares[0] == pytest.approx(row[-1] / shares[-1])


def test_a_setting_names_its_side(sound: Path) -> None:
    causes = read(sound).causes
    assert causes["flow-low"].setting == ("gas_flow", "too low")
    assert causes["nozzle-clogged"].setting is None


def test_windows_hold_quantities(sound: Path) -> None:
    window = read(sound).windows["mig-steel"]
    row = window.rows[0]
    assert row.thickness is not None
    assert row.thickness.value == pytest.approx(3.175)
    target = row.targets["gas_flow"]
    assert (target.low.unit, target.best.unit) == ("cfh", "cfh")
    assert target.low.value < target.best.value < target.high.value


def test_cases_keep_what_was_typed(sound: Path) -> None:
    first, second = read(sound).causes["flow-high"].cases
    assert first.settings == {"gas_flow": "60 cfh", "gas": "C25"}
    assert (first.leads, second.leads) == (True, False)
    assert second.thickness == "1/8 in"


def test_an_own_folder_adds_and_replaces_whole_items(sound: Path, tmp_path: Path) -> None:
    own = tmp_path / "own"
    (own / "causes" / "shielding").mkdir(parents=True)
    text = (sound / "causes/shielding/flow-low.yaml").read_text()
    changed = text.replace("base: common", "base: rare").replace("prevent: x\n", "")
    (own / "causes/shielding/flow-low.yaml").write_text(changed)
    added = text.replace("cause: flow-low", "cause: flow-none").replace("set-flow", "open-it")
    (own / "causes/shielding/flow-none.yaml").write_text(added)
    base = read(sound, own)
    assert base.causes["flow-low"].base == 1
    assert list(base.causes) == ["flow-high", "flow-low", "nozzle-clogged", "flow-none"]
    assert base.causes["flow-high"] == read(sound).causes["flow-high"]


def test_an_own_folder_may_be_empty_and_may_change_the_likelihood_words(
    sound: Path, tmp_path: Path
) -> None:
    own = tmp_path / "own"
    own.mkdir()
    assert read(sound, own).causes == read(sound).causes
    text = (sound / "likelihood.yaml").read_text()
    (own / "likelihood.yaml").write_text(text.replace("usually: 0.85", "usually: 0.80"))
    assert read(sound, own).causes["flow-low"].shows["flow-reading"]["low"] == 0.80


def test_load_gives_the_shipped_rules() -> None:
    base = rulebase.load()
    assert {"porosity", "cold-crack", "no-feed", "tungsten-balls", "shock"} <= set(base.symptoms)
    assert len(base.causes) > 160


def test_load_says_why_an_own_folder_cannot_be_used(tmp_path: Path) -> None:
    (tmp_path / "symptoms").mkdir()
    (tmp_path / "symptoms" / "undercut.yaml").write_text("symptom: undercut\n")
    with pytest.raises(RulesError) as caught:
        rulebase.load(tmp_path)
    assert all(problem.file.endswith("undercut.yaml") for problem in caught.value.problems)
    assert 'symptom "undercut" lacks the key "name"' in str(caught.value)


def test_a_folder_that_is_not_there_is_one_line(tmp_path: Path) -> None:
    gone = tmp_path / "gone"
    base, problems = rulebase.read([gone])
    assert base is None
    assert str(problems[0]) == (
        f"{gone}: error: there is no such folder; name a folder with rules in it [file-place]"
    )


def test_missing_files_are_named_and_what_they_hold_is_not_called_unknown(sound: Path) -> None:
    for name in ("settings.yaml", "sources.yaml"):
        (sound / name).unlink()
    assert lines(sound) == [
        "settings.yaml: error: this file is missing; it holds dials and consumables with a value "
        "[file-missing]",
        "sources.yaml: error: this file is missing; it holds where rules come from [file-missing]",
    ]


def test_an_empty_folder_is_no_crash(tmp_path: Path) -> None:
    base, problems = rulebase.read([tmp_path])
    assert base is None
    assert {problem.check_id for problem in problems} == {"file-missing"}
    assert len(problems) == len(TOP_FILES)


def test_a_file_that_cannot_be_read_is_one_line(
    sound: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Path, mode: str = "r") -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    found = lines(sound)
    assert (
        "checks/gas.yaml: error: this file cannot be read: Permission denied [file-unreadable]"
        in (found)
    )


def test_a_file_that_is_too_big_is_not_read_whole(sound: Path) -> None:
    (sound / "checks" / "gas.yaml").write_bytes(b"#" * 1_000_001)
    assert lines(sound) == [
        "checks/gas.yaml: error: the file is over 1000 kB; split it into smaller files [file-size]"
    ]


def test_a_file_that_is_not_utf_8_is_placed(sound: Path) -> None:
    path = sound / "materials.yaml"
    path.write_bytes(path.read_bytes() + b"    # caf\xe9\n")
    assert lines(sound) == [
        "materials.yaml:5:10: error: this is not UTF-8 text; save the file as UTF-8 [file-encoding]"
    ]


def test_a_file_named_to_drive_the_terminal_is_shown_harmless(sound: Path) -> None:
    (sound / "x\x1b[31m\nred.yaml").write_text("a: b\n")
    (line,) = lines(sound)
    assert line == "x red.yaml: warning: no rule file is looked for here [file-place]"


def test_both_passes_report_in_the_order_of_the_files(sound: Path) -> None:
    low = sound / "causes/shielding/flow-low.yaml"
    low.write_text(low.read_text().replace("flow-reading: {low", "flow-raeding: {low"))
    noz = sound / "causes/shielding/nozzle-clogged.yaml"
    noz.write_text(noz.read_text().replace("base: common", "base: comon"))
    assert [line.partition(":")[0] for line in lines(sound)] == [
        "causes/shielding/flow-low.yaml",
        "causes/shielding/nozzle-clogged.yaml",
    ]


def test_the_same_folder_read_twice_gives_the_same(sound: Path, tmp_path: Path) -> None:
    again = Path(shutil.copytree(HERE / "sound", tmp_path / "again"))
    first, second = read(sound), read(again)
    assert vars(first) == vars(second)
