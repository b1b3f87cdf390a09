"""Look up: what was found, what there is to browse, and the shelves of one kind."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from weldwhy.lookup.shelves import shelves
from weldwhy.lookup.things import KINDS, Ref, in_short, things
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.tui.cards.card import PER_WINDOW, Body, Card, Choice
from weldwhy.tui.rows import Row, inset, row

KIND, SHELF, PAGE = "kind:", "shelf:", "page:"
"""What the act of a choice begins with: a kind to browse, a shelf of it, a page to open."""

NAME = 60
"""Letters of a name in a list, so that what it is fits beside it at 80 columns."""

WHERE = "Look up"


def found_card(rules: RuleBase, typed: str, found: Sequence[Ref]) -> Card:
    """What was found for the words typed so far, each with what it is."""
    known = things(rules)
    choices = tuple(
        Choice(f"{capital(in_short(known.name(ref), NAME))} [{KINDS[ref.kind].one}]", page_act(ref))
        for ref in found
    )
    hint = "Its number, or the arrow keys and enter." if found else "Nothing found."
    return Card(_typing(typed, hint), choices, where=WHERE)


def kinds_card(rules: RuleBase) -> Card:
    """Everything there is to browse, while nothing is typed."""
    known = things(rules)
    choices = tuple(
        Choice(f"{capital(kind.many)} ({len(known.of_kind(kind.id))})", f"{KIND}{kind.id}")
        for kind in KINDS.values()
        if known.of_kind(kind.id)
    )
    hint = "Or browse. For a number such as 6061 begin with a blank."
    return Card(_typing("", hint), choices, where=WHERE)


def shelves_of(rules: RuleBase, kind: str) -> Mapping[str, tuple[Ref, ...]]:
    """The shelves of a kind; one shelf alone where a list of nine holds them all."""
    found = shelves(rules, kind)
    everything = tuple(ref for refs in found.values() for ref in refs)
    return {"all": everything} if len(everything) <= PER_WINDOW else found


def shelves_card(rules: RuleBase, kind: str) -> Card:
    """The shelves of one kind, with how much stands on each."""
    choices = tuple(
        Choice(f"{capital(title)} ({len(refs)})", f"{SHELF}{title}")
        for title, refs in shelves_of(rules, kind).items()
    )
    return Card(_typing("", _browsing(kind)), choices, where=f"{WHERE}: {KINDS[kind].many}")


def shelf_card(rules: RuleBase, kind: str, shelf: str) -> Card:
    """What stands on one shelf."""
    refs = shelves_of(rules, kind)[shelf]
    where = f"{WHERE}: {KINDS[kind].many}" + (f", {shelf}" if shelf != "all" else "")
    return Card(_typing("", _browsing(kind)), tuple(_named(rules, refs)), where=where)


def _named(rules: RuleBase, refs: Iterable[Ref]) -> Iterable[Choice]:
    known = things(rules)
    return (Choice(capital(in_short(known.name(r), NAME + 12)), page_act(r)) for r in refs)


def _browsing(kind: str) -> str:
    return f"Or browse: {KINDS[kind].many}."


def page_act(ref: Ref) -> str:
    """The act that opens a page."""
    return f"{PAGE}{ref.kind} {ref.id}"


def ref_of(act: str) -> Ref:
    """The thing whose page an act opens."""
    kind, _, name = act.removeprefix(PAGE).partition(" ")
    return Ref(kind, name)


def _typing(typed: str, hint: str) -> Body:
    """The line that is typed into, and what to do."""

    def made(width: int, room: int) -> list[Row]:
        line = row((" Type to find: ", "strong"), (typed, "text"), (" ", "edit"))
        return [line, *inset(hint, width, "dim")]

    return made
