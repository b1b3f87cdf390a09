"""Which one thing is meant by a word or two: by kind and id, by name, or by the nearest search."""

from __future__ import annotations

from weldwhy.lookup.index import SLIP, TEXT, index
from weldwhy.lookup.links import links
from weldwhy.lookup.things import KINDS, Ref, things
from weldwhy.model import RuleBase


def meant(rules: RuleBase, text: str) -> list[Ref]:
    """The one thing that is meant; several where they fit equally well, none where nothing does.

    "check wire-end" names the kind too. Where one of several goes with all the others, it is
    taken, since its page leads to them.
    """
    kind, rest = _kind(text)
    if kind and Ref(kind, rest) in things(rules):
        return [Ref(kind, rest)]
    whole = [ref for ref in index(rules).whole(rest) if kind in ("", ref.kind)]
    if not whole and kind:
        whole = index(rules).whole(text)
    if whole:
        return _answering(rules, whole)
    hits = index(rules).search(rest, kind)
    if not hits and kind:
        hits = index(rules).search(text)
    best = [hit for hit in hits if hit.rank == hits[0].rank]
    if best and best[0].rank % SLIP == TEXT:
        return [hit.ref for hit in best]  # a word in a text says little: none is taken
    return _answering(rules, [hit.ref for hit in best])


def _kind(text: str) -> tuple[str, str]:
    """The kind that a text names at its beginning, if it goes on after it; and the rest."""
    first, _, rest = text.strip().partition(" ")
    low = first.lower()
    for kind in KINDS.values():
        if rest and low in (kind.id, kind.one):
            return kind.id, rest
    return "", text


def _answering(rules: RuleBase, found: list[Ref]) -> list[Ref]:
    if len(found) < 2:
        return found
    near = links(rules)
    for ref in found:
        others = set(found) - {ref}
        if others <= set(near.of(ref)):
            return [ref]
    return found
