"""From a text to what was heard."""

from __future__ import annotations

from weldwhy.case import Case
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.understanding.gathering import gathered
from weldwhy.understanding.heard import Heard
from weldwhy.understanding.matching import matches
from weldwhy.understanding.phrases import book
from weldwhy.understanding.spelling import corrected
from weldwhy.understanding.telling import Telling
from weldwhy.understanding.tokens import tokens

LIMIT = 6000
"""Letters that are read; a longer text is cut at the last word before."""
REST = "(the text is long: what comes after this was not read)"


NOTHING_TOLD = Case()


def understand(
    rules: RuleBase, text: str, case: Case = NOTHING_TOLD, system: str | None = None
) -> Heard:
    """What a text says, as entries for the case it is told in.

    At most `LIMIT` letters are read, and it is said if there was more. `system` is what a bare
    number means ("in" or "mm"). Nothing is raised, whatever the text is.
    """
    # markup that takes much room must not cost much time either
    whole = clean(text[: 4 * LIMIT])
    cut = len(whole) > LIMIT or len(text) > 4 * LIMIT
    if cut:
        whole = whole[:LIMIT].rpartition(" ")[0] or whole[:LIMIT]
    heard = gathered(telling_of(rules, whole, case, system))
    return Heard(heard.understood, (*heard.not_understood, REST)) if cut else heard


def telling_of(rules: RuleBase, text: str, case: Case, system: str | None = None) -> Telling:
    """A clean text of usual length with the phrases that fit in it."""
    phrases = book(rules)
    words = corrected(phrases, tokens(text, phrases.joined))
    return Telling(rules, case, text, words, tuple(matches(phrases, words)), system)
