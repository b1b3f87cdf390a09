"""The declared form of rule files agrees with its JSON Schema and with `rules/README.md`."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import jsonschema
import pytest
import yaml

from weldwhy import lint, schema
from weldwhy.folders import FOLDERS, TOP_FILES, files
from weldwhy.forms import GRADES
from weldwhy.schema import FILES, json_schema

from .conftest import HERE, SHIPPED

README = (SHIPPED / "README.md").read_text(encoding="utf-8")
EVERY = [*files(SHIPPED), *files(HERE / "sound")]


@pytest.mark.parametrize("kind", FILES)
def test_every_kind_has_a_valid_json_schema(kind: str) -> None:
    jsonschema.Draft202012Validator.check_schema(json_schema(kind))


@pytest.mark.parametrize(("kind", "path"), EVERY, ids=[path.name for _, path in EVERY])
def test_every_rule_file_holds_to_its_json_schema(kind: str, path: Path) -> None:
    """An editor that reads YAML its own way must not complain of a good file."""
    held = yaml.safe_load(path.read_text(encoding="utf-8"))
    _validator(kind).validate(_texted(held))


@cache
def _validator(kind: str) -> jsonschema.Draft202012Validator:
    """Made once: that its schema is one, another test proves."""
    return jsonschema.Draft202012Validator(json_schema(kind))


def _texted(value: object) -> object:
    """As an editor has it, which takes every key as text."""
    if isinstance(value, dict):
        return {str(key): _texted(each) for key, each in value.items()}
    return [_texted(each) for each in value] if isinstance(value, list) else value


@pytest.mark.parametrize("name", ["unknown-key", "missing-key", "unknown-word", "wrong-kind"])
def test_what_the_reader_refuses_the_json_schema_refuses(name: str) -> None:
    held = yaml.safe_load((HERE / "broken" / f"{name}.yaml").read_text(encoding="utf-8"))
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(held, json_schema("cause"), jsonschema.Draft202012Validator)


def test_the_manual_has_the_tables_of_keys() -> None:
    """If this fails, put what `python -m weldwhy.schema` prints at the end of rules/README.md."""
    begin = README.index("## Every key")
    assert README[begin:].rstrip("\n").split("\n") == schema.manual()


def test_every_key_is_explained() -> None:
    for noun, shape in schema.tables().items():
        for key in shape.keys:
            assert 5 < len(key.about) < 100, (noun, key.name)
            assert "|" not in key.about + key.shape.words, (noun, key.name)


def test_the_manual_names_every_place() -> None:
    for name in [*TOP_FILES, *(f"{folder}/" for folder in FOLDERS)]:
        assert name in README


def test_the_manual_gives_the_likelihood_words_their_numbers() -> None:
    held = yaml.safe_load((SHIPPED / "likelihood.yaml").read_text(encoding="utf-8"))
    rows = re.findall(r"^\| ([a-z ]+) \| ([0-9]+).* in 100 \|$", README, re.MULTILINE)
    assert [word for word, _ in rows] == list(GRADES)
    for word, about in rows:
        assert abs(held["grades"][word] * 100 - int(about)) < 1
    assert list(held["base"].values()) == [1, 3, 8, 20]


def test_the_example_in_the_manual_is_a_rule_that_works(tmp_path: Path) -> None:
    """An instructor who copies it gets no complaint."""
    blocks = re.findall(r"`([a-z-]+/[a-z/-]+\.yaml)`:\n\n```yaml\n(.*?)```", README, re.DOTALL)
    assert [place.partition("/")[0] for place, _ in blocks] == [
        "causes", "checks", "windows", "tables",
    ]  # fmt: skip
    for place, text in blocks:
        path = tmp_path / place
        path.parent.mkdir(parents=True)
        path.write_text(text)
    mine = [str(each) for each in lint.check([SHIPPED, tmp_path]) if str(tmp_path) in each.file]
    assert mine == []
