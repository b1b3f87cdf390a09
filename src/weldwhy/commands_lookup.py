"""`weldwhy lookup`: the page of a symptom, cause, check, word or anything else the rules know."""

from __future__ import annotations

import argparse
from collections.abc import Iterable

from weldwhy.lines import wrapped
from weldwhy.lookup import text
from weldwhy.lookup.finding import meant
from weldwhy.lookup.index import index
from weldwhy.lookup.page import leaf
from weldwhy.lookup.things import KINDS
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.problems import did_you_mean
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode, UsageError, environment, own_rules

LISTED = 20
"""Things listed where several are meant equally well."""

LONGEST = 200
"""Letters of a term worth looking for."""


def lookup(options: argparse.Namespace) -> ExitCode:
    """Print the page of what is meant, or the things that may be meant (exit code 1), or a list."""
    rules = load(own_rules(options.rules, environment()))
    term = " ".join(" ".join(options.term).split())[:LONGEST]
    if options.list is not None:
        if term:
            raise UsageError("--list takes the name of a kind alone, or nothing")
        _list(rules, options.list)
        return ExitCode.FINE
    if not term:
        _print(text.overview_lines(rules))
        return ExitCode.FINE
    found = meant(rules, term)
    if len(found) == 1:
        _print(text.page_lines(rules, leaf(rules, found[0], system=options.units)))
        return ExitCode.FINE
    if not found:
        near = ", ".join(index(rules).nearest(term))
        hint = f"; near it: {near}" if near else "; `weldwhy lookup` says what there is"
        raise UsageError(f'nothing is known of "{clean(term[:40])}"{hint}')
    _print([f'"{clean(term)}" may be any of these; name one of them:'])
    _print(text.found_lines(rules, found[:LISTED]))
    return ExitCode.FINDINGS


def _list(rules: RuleBase, wanted: str) -> None:
    """The things of one kind, or the kinds."""
    if not wanted:
        _print(text.overview_lines(rules))
        return
    low = wanted.lower()
    for kind in KINDS.values():
        if low in (kind.id, kind.one, kind.many, f"{kind.id}s", kind.part):
            _print(text.kind_lines(rules, kind.id))
            return
    raise UsageError(f'there is no kind "{clean(wanted[:40])}"' + _kinds(low))


def _kinds(wanted: str) -> str:
    return did_you_mean(wanted, KINDS) or f"; known: {', '.join(KINDS)}"


def _print(lines: Iterable[str]) -> None:
    for line in wrapped(lines):
        print(line)
