"""In which form a report is saved."""

from __future__ import annotations

from weldwhy.tui.cards.card import Card, Choice, text_body

FORMS = (
    ("text", "Plain text: read anywhere, prints on anything"),
    ("markdown", "Markdown: for notes that show headings and tables"),
    ("html", "HTML: a page for a browser, the neatest on paper"),
)


def saving_card() -> Card:
    """Asks for the form; the act of each choice is one of `blocks.FORMATS`."""
    choices = tuple(Choice(text, form) for form, text in FORMS)
    return Card(text_body([("Save the case as", "strong")]), choices, where="Save")
