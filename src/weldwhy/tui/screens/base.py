"""What all screens share: the top line, the page, the bottom line, and the plea to enlarge."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar, TypeVar, cast

from textual.app import ComposeResult
from textual.containers import Container
from textual.screen import Screen

from weldwhy.tui.commands import PAGE, footer_of, shown_key
from weldwhy.tui.footer import Footer, FooterKey
from weldwhy.tui.page import Lines, Page, TitleLine
from weldwhy.tui.rows import Row, paragraph

if TYPE_CHECKING:
    from weldwhy.tui.app import WeldwhyApp

Result = TypeVar("Result")

LEAST_WIDTH, LEAST_HEIGHT, WIDE = 60, 20, 100
"""Below the least, only a plea to enlarge is shown; from WIDE on, panels stand side by side."""

_WIDTHS = ((0, "-tiny"), (LEAST_WIDTH, "-slim"), (80, "-usual-width"), (WIDE, "-wide"))
_HEIGHTS = ((0, "-flat"), (LEAST_HEIGHT, "-usual"), (32, "-tall"))


def _class_for(cells: int, steps: Sequence[tuple[int, str]]) -> str:
    return max(step for step in steps if step[0] <= cells)[1]


class PageScreen(Screen[Result]):
    """A top line, one page and a bottom line. `place` says whose commands it has."""

    # The framework reads these from the class but declares them as the instance's.
    HORIZONTAL_BREAKPOINTS = [*_WIDTHS]  # noqa: RUF012
    VERTICAL_BREAKPOINTS = [*_HEIGHTS]  # noqa: RUF012

    place: ClassVar[str] = PAGE

    def compose(self) -> ComposeResult:
        # without an update: nothing is styled yet, and later each change styles all of it again
        self.update_classes(dict.fromkeys(self.first_classes(), True), update=False)
        yield TitleLine(self.title_texts)
        with Container(id="body"):
            yield from self.compose_body()
        yield Footer(self.footer_keys)
        yield Lines(_plea, "enlarge")

    def first_classes(self) -> set[str]:
        """The classes the screen begins with: how wide and how high it is."""
        return {
            _class_for(self.app.size.width, _WIDTHS),
            _class_for(self.app.size.height, _HEIGHTS),
        }

    def compose_body(self) -> ComposeResult:
        """The pages between the top and the bottom line."""
        yield Page(self.rows, "main")

    def rows(self, width: int, height: int) -> Sequence[Row]:
        """The rows of the main page."""
        raise NotImplementedError

    def title_texts(self) -> tuple[str, str]:
        """What the top line says: where one is, and a note at its right end."""
        return "", ""

    @property
    def main(self) -> Page:
        """The main page."""
        return self.query_one("#main", Page)

    @property
    def program(self) -> WeldwhyApp:
        """The program this screen belongs to."""
        return cast("WeldwhyApp", self.app)

    def footer_keys(self) -> list[FooterKey]:
        """The keys on the bottom line, those without use now marked."""
        return [
            FooterKey(
                shown_key(command.id, self.program.own_keys), command.label,
                self.check_action(command.id, ()) is not None,
            )
            for command in footer_of(self.place)
        ]  # fmt: skip

    def redraw(self, to_top: bool = False) -> None:
        """Make all pages again; only what changed is sent."""
        for page in self.query(Lines):
            page.rebuild(to_top=to_top and page.id == "main")

    def on_screen_resume(self) -> None:
        self.redraw()

    def action_page_down(self) -> None:
        self.main.turn(1)

    def action_page_up(self) -> None:
        self.main.turn(-1)

    def action_back(self) -> None:
        self.dismiss(None)

    def action_help(self) -> None:
        self.program.show_help(self.place)

    def action_palette(self) -> None:
        self.program.show_palette(self)

    def action_preferences(self) -> None:
        self.program.show_preferences()


def _plea(width: int, height: int) -> list[Row]:
    words = f"Please enlarge: {LEAST_WIDTH} by {LEAST_HEIGHT} at least."
    return paragraph(words, width, "text")[:height]  # there is no turning to a second part
