"""The compiled form: equal to what the YAML gives, never stale, and light to load."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import sys
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from weldwhy import compiled, model, rulebase, setupmodel
from weldwhy.model import RuleBase

from .conftest import SHIPPED

# The fields of the model that compiled.FORM stands for.
FORM, FIELDS = 7, "e0b17010f578eb8e"


def write(folder: Path) -> RuleBase:
    """Compile a folder in place; the rule base it was read as, without cases."""
    base, problems = rulebase.read([folder])
    assert base is not None, problems
    (folder / compiled.NAME).write_text(compiled.dump(base, str(folder)))
    return replace(base, causes={name: replace(c, cases=()) for name, c in base.causes.items()})


def test_it_gives_what_the_yaml_gave(sound: Path) -> None:
    read = write(sound)
    loaded = compiled.load(str(sound))
    assert loaded is not None
    assert vars(loaded) == vars(read)


def test_it_gives_what_the_shipped_rules_gave(tmp_path: Path) -> None:
    base, _ = rulebase.read([SHIPPED])
    assert base is not None
    shutil.copytree(SHIPPED, tmp_path / "rules")
    (tmp_path / "rules" / compiled.NAME).write_text(compiled.dump(base, str(tmp_path / "rules")))
    loaded = compiled.load(str(tmp_path / "rules"))
    assert loaded is not None
    for part in fields(base):
        expected = getattr(base, part.name)
        if part.name == "causes":
            expected = {name: replace(cause, cases=()) for name, cause in expected.items()}
        assert getattr(loaded, part.name) == expected


def test_order_is_kept(sound: Path) -> None:
    read = write(sound)
    loaded = compiled.load(str(sound))
    assert loaded is not None
    for part in fields(read):
        assert list(getattr(loaded, part.name)) == list(getattr(read, part.name))


def test_without_the_file_there_is_nothing(sound: Path) -> None:
    assert compiled.load(str(sound)) is None
    assert compiled.load(str(sound / "gone")) is None


def later(path: Path) -> None:
    """As if written an hour after."""
    when = path.stat().st_mtime + 3600
    os.utime(path, (when, when))


def test_a_changed_rule_is_noticed_even_at_the_same_size(sound: Path) -> None:
    write(sound)
    path = sound / "likelihood.yaml"
    path.write_text(path.read_text().replace("0.15", "0.16"))
    later(path)
    assert compiled.load(str(sound)) is None


def test_files_written_together_are_not_read_again(
    sound: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An installer may write a rule file some seconds after; that is no reason to read them all."""
    write(sound)
    path = sound / "likelihood.yaml"
    when = (sound / compiled.NAME).stat().st_mtime + 5
    os.utime(path, (when, when))
    monkeypatch.setattr(compiled, "key", lambda folder: pytest.fail("the files were read"))
    assert compiled.load(str(sound)) is not None


def test_a_file_that_was_only_touched_is_no_change(sound: Path) -> None:
    write(sound)
    later(sound / "likelihood.yaml")
    assert compiled.load(str(sound)) is not None


def test_an_added_renamed_or_lost_file_is_noticed(sound: Path) -> None:
    write(sound)
    added = sound / "checks" / "more.yaml"
    added.write_text("checks: []\n")
    assert compiled.load(str(sound)) is None
    added.unlink()
    assert compiled.load(str(sound)) is not None
    (sound / "materials.yaml").rename(sound / "metals.yaml")
    assert compiled.load(str(sound)) is None
    (sound / "metals.yaml").unlink()
    assert compiled.load(str(sound)) is None


def changed(text: str, key: str, value: Any) -> str:
    """The text with another value in its first line."""
    head, _, rest = text.partition("\n")
    return f"{json.dumps({**json.loads(head), key: value})}\n{rest}"


PARTS = [each.name for each in fields(RuleBase)]


@pytest.mark.parametrize(
    "damage",
    [
        lambda text: "",
        lambda text: text[: len(text) // 2],
        lambda text: "[]",
        lambda text: "null",
        lambda text: '{"form": 1}',
        lambda text: changed(text, "form", 99),
        lambda text: changed(text, "sum", 0),
        lambda text: changed(text, "sizes", 5),
        lambda text: changed(text, "parts", None),
        lambda text: changed(text, "parts", ["nonsense"]),
        lambda text: changed(text, "parts", []),
        lambda text: changed(text, "parts", PARTS[:-1]),
        lambda text: changed(text, "parts", PARTS[::-1]),
        lambda text: "[" * 200_000 + text,
        lambda text: text.replace("often", "0ften", 1).replace("weld", "we1d", 1),
        lambda text: text + "\u00e9",
        lambda text: text.partition("\n")[0],
    ],
)  # fmt: skip
def test_a_damaged_file_is_as_good_as_none(sound: Path, damage: Any) -> None:
    write(sound)
    path = sound / compiled.NAME
    path.write_text(damage(path.read_text()), encoding="utf-8")
    assert compiled.load(str(sound)) is None


def test_only_what_is_asked_for_is_made(sound: Path) -> None:
    read = write(sound)
    loaded = compiled.load(str(sound))
    assert loaded is not None
    causes = loaded.causes
    assert isinstance(causes, compiled.Part)
    name = next(iter(read.causes))
    assert causes[name] == read.causes[name]
    assert causes[name] is causes[name]
    assert list(causes._made) == [name]
    assert "nonsense" not in causes
    with pytest.raises(KeyError):
        causes["nonsense"]
    assert [each.id for each in causes.values()] == list(read.causes)
    assert isinstance(loaded.windows, compiled.Part)
    assert loaded.windows._read is None


def test_a_new_field_of_the_model_needs_a_new_form() -> None:
    """An old compiled file must not be read as a new model: raise FORM, then both values here."""
    known = [*vars(model).values(), *vars(setupmodel).values()]
    kinds = dict.fromkeys(k for k in known if isinstance(k, type) and is_dataclass(k))
    assert len(kinds) > 20
    names = [f"{kind.__name__}.{each.name}" for kind in kinds for each in fields(kind)]
    found = hashlib.sha256(" ".join(names).encode()).hexdigest()[:16]
    assert (compiled.FORM, found) == (FORM, FIELDS)


def test_loading_it_brings_in_no_yaml_reader_and_no_screen(sound: Path) -> None:
    write(sound)
    code = (
        "import sys; from weldwhy import compiled, rulebase;"
        f"assert compiled.load({str(sound)!r}) is not None;"
        "print(sorted({name.partition('.')[0] for name in sys.modules}"
        " & {'yaml', 'textual', 'rich', 'difflib', 'pathlib', 'hashlib'}))"
    )
    path = str(Path(compiled.__file__).parents[1])
    done = subprocess.run(
        [sys.executable, "-I", "-c", f"import sys; sys.path.insert(0, {path!r}); {code}"],
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.strip() == "[]"
