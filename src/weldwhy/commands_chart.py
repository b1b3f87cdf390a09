"""`weldwhy chart`: one page for the wall, all of them as a book, or the guide as a full tree."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from weldwhy.entries import EntryError, known
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode, UsageError, environment, own_rules

if TYPE_CHECKING:
    from weldwhy.model import RuleBase, Symptom
    from weldwhy.wall.page import Page
    from weldwhy.wall.print import Print

    Pair = tuple[int, str, str]


def chart(options: argparse.Namespace) -> ExitCode:
    """Print the page of a symptom in one process, or in each; or all pages; or the tree."""
    _refuse(options)
    rules = load(own_rules(options.rules, environment()))
    try:
        if options.process is not None:
            known(options.process, rules.processes, "process")
        name = known(options.symptom, rules.symptoms, "symptom") if options.symptom else ""
    except EntryError as fault:
        raise UsageError(str(fault)) from None
    if options.all:
        lines = _book(rules, options.process or "", options.format)
    else:
        symptom = rules.symptoms[name]
        wanted = _processes(symptom, options)
        lines = (
            _tree(rules, name, wanted, options)
            if options.depth
            else _pages(rules, symptom, wanted, options.format)
        )
    for line in lines:
        print(line)
    return ExitCode.FINE


def _refuse(options: argparse.Namespace) -> None:
    """UsageError for options that exclude each other."""
    if options.all and options.symptom:
        raise UsageError("name a symptom or give --all, not both")
    if not options.all and not options.symptom:
        raise UsageError("which symptom? Name one, or give --all; see `weldwhy chart --help`")
    if options.all and options.depth:
        raise UsageError("--depth is for the tree of one symptom: leave out --all")
    if options.format == "svg" and (options.all or options.depth):
        what = "--all" if options.all else "--depth"
        raise UsageError(f"{what} makes more than one page: use html, markdown or text, not svg")


def _processes(symptom: Symptom, options: argparse.Namespace) -> tuple[str, ...]:
    if options.process is None:
        single = options.format == "svg" or (options.format == "html" and options.depth)
        if single and len(symptom.processes) > 1:
            raise UsageError(
                f"{options.format} holds one process here: name it with --process "
                f"({', '.join(symptom.processes)})"
            )
        return symptom.processes
    if options.process not in symptom.processes:
        raise UsageError(f"{symptom.name} is not met with {options.process}")
    return (options.process,)


def _tree(
    rules: RuleBase, symptom: str, processes: Iterable[str], options: argparse.Namespace
) -> Iterator[str]:
    from weldwhy.chart import build
    from weldwhy.sheet import sheet

    for place, process in enumerate(processes):
        lines = sheet(rules, build(rules, symptom, process, options.depth), options.format)
        yield from ["", *lines] if place else lines


def _pages(
    rules: RuleBase, symptom: Symptom, processes: tuple[str, ...], form: str
) -> Iterator[str]:
    pairs = [(0, symptom.id, process) for process in processes]
    if form == "svg":
        from weldwhy.wall.svg import svg_page

        for page, size in _printed(rules, pairs):
            yield from svg_page(page, size)
    elif form == "html":
        from weldwhy.wall.html import html_pages

        numbered = [(place, *pair[1:]) for place, pair in enumerate(pairs, 1)]
        yield from html_pages(symptom.name, _printed(rules, numbered))
    else:
        yield from _written(rules, pairs, form)


def _book(rules: RuleBase, process: str, form: str) -> Iterator[str]:
    from weldwhy.wall.book import PAGE_END, book, markdown_front, text_front

    made = book(rules, process)
    pairs = [(entry.number, entry.symptom, entry.process) for entry in made.entries]
    if form == "html":
        from weldwhy.wall.html import html_book

        yield from html_book(made, _printed(rules, pairs))
    elif form == "markdown":
        yield from (*markdown_front(made), "", *_written(rules, pairs, form))
    else:
        yield from (*text_front(made), *_written(rules, pairs, form, PAGE_END))


def _printed(rules: RuleBase, pairs: Iterable[Pair]) -> Iterator[tuple[Page, Print]]:
    """The pages for paper, each made when it is wanted."""
    from weldwhy.wall.page import page
    from weldwhy.wall.picture import as_svg
    from weldwhy.wall.print import POINTS, Print

    for number, symptom, process in pairs:
        drawn = as_svg(rules, symptom, process)
        yield page(rules, symptom, process, [Print(size, drawn) for size in POINTS], number)


def _written(rules: RuleBase, pairs: Iterable[Pair], form: str, between: str = "") -> Iterator[str]:
    """The pages in letters, as text or Markdown."""
    from weldwhy.wall.page import page
    from weldwhy.wall.picture import as_letters
    from weldwhy.wall.text import forms_of, markdown_page, text_page

    for place, (number, symptom, process) in enumerate(pairs):
        forms = forms_of(as_letters(rules, symptom, process))
        made, size = page(rules, symptom, process, forms, number)
        if place:
            yield between
        yield from text_page(made, size) if form == "text" else markdown_page(made)
