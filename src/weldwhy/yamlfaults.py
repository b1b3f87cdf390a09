"""What the YAML reader complains of, in plain words that say how to mend it.

The reader's wording is for programmers and differs between its two parsers. Its exceptions are
read here by their attributes, so that this module needs no YAML reader.
"""

from __future__ import annotations

from weldwhy.problems import Problem

_NO_MARK = 'a "\\" in double quotes with no mark of that number; use single quotes'
_OPEN_QUOTE = "a quote is opened here and never closed"
# The reader's own complaints, by a part of their text, in plain words.
_PLAIN = (
    ("mapping values are not allowed", 'a ":" too many; put the text in quotes'),
    ("could not find expected ':'", 'a key without its ":" after it'),
    ("that cannot start any token", "this mark cannot start a value; put the text in quotes"),
    ("did not find expected key", "this does not line up with the lines above it"),
    ("expected <block end>", "this does not line up with the lines above it"),
    ("did not find expected '-'", 'this does not line up with the "-" above it'),
    ("block sequence entries are not allowed", 'a "-" cannot stand here; start a new line'),
    ("did not find expected ',' or ']'", 'a list in [ ] lacks a "," or its "]"'),
    ("did not find expected ',' or '}'", 'a mapping in { } lacks a "," or its "}"'),
    ("expected ',' or ']'", 'a list in [ ] lacks a "," or its "]"'),
    ("expected ',' or '}'", 'a mapping in { } lacks a "," or its "}"'),
    ("unexpected end of stream", _OPEN_QUOTE),
    ("alphabetic or numeric character", 'text that begins with "&" or "*" goes in quotes'),
    ("YAML document", 'a line that begins with "%" has no place in a rule file; delete it'),
    ("directive", 'a line that begins with "%" has no place in a rule file; delete it'),
    ("tag", 'text that begins with "!" goes in quotes'),
    ("exceeded maximum nesting depth", "far too many levels deep"),
    ("escape code", _NO_MARK),
    ("unknown escape character", 'a "\\" in double quotes; use single quotes'),
    ("unexpected document indicator", 'a "---" or "..." inside a text'),
    ("expected <document start>", "the text goes on after its end"),
    ("did not find expected node content", "a value is missing or begins with a wrong mark"),
    ("expected the node content", "a value is missing or begins with a wrong mark"),
)


def syntax_problem(fault: Exception, file: str, text: str) -> Problem:
    """The problem that the YAML reader's exception tells of, placed where it points in `text`."""
    said = str(getattr(fault, "problem", None) or getattr(fault, "reason", None) or "escape code")
    words = next((plain for part, plain in _PLAIN if part in said), f"not readable: {said}")
    mark = getattr(fault, "problem_mark", None) or getattr(fault, "context_mark", None)
    if words is _OPEN_QUOTE:  # noticed at the end of the file; the quote's own place helps more
        mark = getattr(fault, "context_mark", None) or mark
    if mark is None:
        return Problem(file, 0, 0, "error", words, "yaml-syntax")
    if _at(text, mark.line, mark.column) == "\t":
        words = "a tab stands here; use spaces"
    return Problem(file, mark.line + 1, mark.column + 1, "error", words, "yaml-syntax")


def _at(text: str, line: int, column: int) -> str:
    """The character there, or nothing. Lines end as the YAML reader ends them."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return lines[line][column : column + 1] if line < len(lines) else ""
