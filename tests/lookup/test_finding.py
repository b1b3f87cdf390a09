"""One thing is taken only where it is plain which one is meant."""

from __future__ import annotations

import pytest

from weldwhy.lookup.finding import meant
from weldwhy.lookup.index import SLIP, TEXT, index
from weldwhy.lookup.links import links
from weldwhy.lookup.things import Ref, things

from .rules import every, shipped


def test_where_nothing_of_the_kind_is_found_the_whole_text_is_looked_for() -> None:
    assert meant(shipped(), "job porosity") == [Ref("symptom", "porosity")]


@pytest.mark.parametrize("typed", ["bridges", "bridegs"])
def test_a_word_in_texts_takes_none_of_several_even_where_one_leads_to_the_others(
    typed: str,
) -> None:
    """It says too little, also where it had to be put right."""
    found = meant(shipped(), typed)
    assert {hit.rank % SLIP for hit in index(shipped()).search(typed)} == {TEXT}
    assert set(found[1:]) <= set(links(shipped()).of(found[0]))
    assert len(found) > 1


def test_of_several_found_equally_well_one_is_taken_only_if_it_leads_to_all_others() -> None:
    known, several = index(shipped()), 0
    names = [things(shipped()).name(r) for r in every() if r.kind in ("symptom", "cause", "term")]
    for typed in sorted({name[:3].strip().lower() for name in names if name[:3].isalpha()}):
        hits = known.search(typed)
        best = {hit.ref for hit in hits if hit.rank == hits[0].rank}
        if len(best) < 3 or hits[0].rank % SLIP == TEXT or known.whole(typed):
            continue
        found = meant(shipped(), typed)
        leading = [ref for ref in best if best - {ref} <= set(links(shipped()).of(ref))]
        assert bool(leading) is (len(found) == 1), typed
        assert set(found) <= best
        several += len(found) > 1
    assert several > 20
