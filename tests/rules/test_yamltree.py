"""The tree of a YAML text: values as typed, in their places, nothing run, nothing unbounded."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from weldwhy import yamltree
from weldwhy.yamltree import List, Mapping, Node, Text


@pytest.fixture(params=["C", "Python"], autouse=True)
def parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """Everything here holds for both of the YAML reader's parsers."""
    loader = yaml.CSafeLoader if request.param == "C" else yaml.SafeLoader
    monkeypatch.setattr(yamltree, "_Loader", loader)
    return str(request.param)


def tree(text: str | bytes) -> Node:
    """The tree of a text in which nothing is wrong."""
    data = text.encode() if isinstance(text, str) else text
    node, problems = yamltree.read(data, "x.yaml")
    assert problems == []
    assert node is not None
    return node


def problems(text: str | bytes) -> list[str]:
    data = text.encode() if isinstance(text, str) else text
    return [str(each) for each in yamltree.read(data, "x.yaml")[1]]


def plain(node: Node) -> object:
    """The tree as plain values."""
    if isinstance(node, Text):
        return node.value
    if isinstance(node, List):
        return [plain(each) for each in node.items]
    return {key: plain(each) for key, each in node.items.items()}


@pytest.mark.parametrize(
    "trap",
    [
        "030", "035", "0.030", "0o14", "0x1f", "yes", "no", "on", "off", "Y", "true", "null", "~",
        "12:30", "1_000", "=", "<<", "2024-05-01", "1e3", ".inf", ".nan", "-0", "+1", "1/8 in",
    ],
)  # fmt: skip
def test_a_value_stays_the_text_that_was_typed(trap: str) -> None:
    """The language would make 24 of 030, true of yes, 750 of 12:30, a date of 2024-05-01."""
    assert plain(tree(f"a: {trap}\n{trap}: b\n")) == {"a": trap, trap: "b"}


def test_a_value_that_is_not_there_is_an_empty_text() -> None:
    assert plain(tree("a:\nb: ''\n")) == {"a": "", "b": ""}


def test_an_empty_file_is_an_empty_mapping() -> None:
    assert plain(tree("")) == {}
    assert plain(tree("# only a remark\n")) == {}


def test_every_node_knows_its_line_and_column() -> None:
    root = tree("a: one\nb:\n  - two\n  - {c: three}\n")
    assert isinstance(root, Mapping)
    found = [yamltree.place(root, *path) for path in (["a"], ["b", 0], ["b", 1, "c"])]
    assert [(node.line, node.column) for node in found] == [(1, 1), (3, 5), (4, 6)]
    listed = root.items["b"]
    assert isinstance(listed, List)
    inner = listed.items[1]
    assert isinstance(inner, Mapping)
    value = inner.items["c"]
    assert (value.line, value.column) == (4, 9)


def test_a_place_that_does_not_exist_is_shown_as_near_as_possible() -> None:
    root = tree("a:\n  b: one\n")
    at = yamltree.place(root, "a", "b", "c", 7)
    assert (at.line, at.column) == (2, 3)


def test_a_duplicate_key_shows_both_lines_and_keeps_the_first() -> None:
    node, found = yamltree.read(b"a: one\nb: two\na: three\n", "x.yaml")
    assert [str(each) for each in found] == [
        'x.yaml:3:1: error: key "a" is here twice; the first is at line 1 [duplicate-key]'
    ]
    assert node is not None
    assert plain(node) == {"a": "one", "b": "two"}


def test_yes_and_Yes_are_different_keys() -> None:  # noqa: N802 - the capital is the point
    assert plain(tree("yes: 1\nYes: 2\n")) == {"yes": "1", "Yes": "2"}


def test_an_alias_bomb_does_not_unfold() -> None:
    bomb = "a: &a [x, x]\n" + "".join(
        f"{chr(98 + n)}: &{chr(98 + n)} [*{chr(97 + n)}, *{chr(97 + n)}]\n" for n in range(20)
    )
    node, found = yamltree.read(bomb.encode(), "x.yaml")
    assert {each.check_id for each in found} == {"alias"}
    assert node is not None
    assert len(repr(node)) < 20_000


@pytest.mark.parametrize("tag", ["!!python/object/apply:os.system [echo]", "!!binary aGk=", "!x y"])
def test_a_tag_is_refused_and_does_nothing(tag: str) -> None:
    assert any(line.endswith("[tag]") for line in problems(f"a: {tag}\n"))


@pytest.mark.parametrize(
    "deep", ["[" * 10_000, "{a: " * 10_000, "- " * 10_000, "? " * 10_000], ids=lambda deep: deep[:4]
)
def test_deep_nesting_stops_early(deep: str) -> None:
    assert "levels deep" in problems(deep)[-1]


def test_a_file_over_a_megabyte_is_not_even_parsed() -> None:
    (line,) = problems(b"#" * (yamltree.MAX_BYTES + 1))
    assert (
        line == "x.yaml: error: the file is over 1000 kB; split it into smaller files [file-size]"
    )


def test_more_values_than_anybody_writes_are_refused() -> None:
    (line,) = problems("[" + "a," * (yamltree.MAX_NODES + 1) + "]")
    assert line.endswith("more than 50000 values in one file; split it [file-size]")


def test_text_that_is_not_utf_8_is_placed() -> None:
    (line,) = problems(b"a: one\nb: caf\xe9\n")
    assert line == (
        "x.yaml:2:7: error: this is not UTF-8 text; save the file as UTF-8 [file-encoding]"
    )


@pytest.mark.parametrize(
    ("mark", "name"),
    [("\x00", "U+0000"), ("\x1b", "U+001B"), ("\x7f", "U+007F"), ("\x9b", "U+009B"),
     ("\u200b", "U+200B"), ("\u202e", "U+202E"), ("\u2066", "U+2066"), ("\u2028", "U+2028")],
)  # fmt: skip
def test_a_mark_that_cannot_be_seen_is_refused(mark: str, name: str) -> None:
    assert problems(f"a: one\nb: t{mark}wo\n") == [
        f"x.yaml:2:5: error: hidden mark {name} here; delete it [hidden-mark]"
    ]


@pytest.mark.parametrize("escape", ["\\e[31m", "\\x07", "\\0", "\\u202e", "\\L", "\\N"])
def test_a_mark_written_as_an_escape_is_refused_too(escape: str) -> None:
    node, found = yamltree.read(f'a: "red {escape} alert"\n'.encode(), "x.yaml")
    assert [(each.line, each.column, each.check_id) for each in found] == [(1, 4, "hidden-mark")]
    assert node is not None
    assert plain(node) == {"a": ""}


def test_a_byte_order_mark_and_windows_line_ends_are_no_fault() -> None:
    assert plain(tree(b"\xef\xbb\xbfa: one\r\nb: two\r\n")) == {"a": "one", "b": "two"}


def test_a_second_document_is_refused() -> None:
    assert problems("a: one\n---\nb: two\n") == [
        'x.yaml:2:1: error: a second document starts here ("---"); use one file for each '
        "[many-documents]"
    ]


@pytest.mark.parametrize(
    "broken",
    ["a: b: c\n", "a:\n  b: 1\n c: 2\n", "a: [1, 2\n", "a: {b: 1\n", 'a: "open\n', "a: 'open\n",
     "\ta: 1\n", "a: `b\n", "a: @b\n", "a: %b\n", 'a: "\\q"\n', "- a\nb: 1\n", "a: 1\n- b\n",
     'a: "\\U00110000"', 'a: "\\UFFFFFFFF"', "a: [b]]\n", "a: *\n", "a: &\n", "a\nb: 1\n",
     "%YAML 9.9\n---\na: 1\n", "a: !<\n"],
)  # fmt: skip
def test_broken_yaml_gives_one_plain_line_with_its_place(broken: str, parser: str) -> None:
    found = problems(broken)
    assert len(found) == 1
    assert found[0].startswith("x.yaml:")
    assert found[0].endswith("[yaml-syntax]")
    assert "\n" not in found[0]
    if parser == "C":
        assert "not readable: " not in found[0], "no plain words for this yet"


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.binary(max_size=400))
def test_random_bytes_give_problems_and_never_raise(data: bytes) -> None:
    node, found = yamltree.read(data, "x.yaml")
    assert node is not None or found


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(alphabet="ab:-[]{}&*!|>'\"%@`#?,\n \t~=<\\0e", max_size=60))
def test_random_yaml_marks_give_problems_and_never_raise(text: str) -> None:
    node, found = yamltree.read(text.encode(), "x.yaml")
    assert node is not None or found
    for each in found:
        assert each.line >= 1
        assert "\n" not in str(each)
