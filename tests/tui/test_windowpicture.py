"""The picture of an operating window: signs stand where their numbers are, and nowhere else."""

from __future__ import annotations

import timeit
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.advice import SettingAdvice
from weldwhy.case import Case, Entry, Measured, Reported, Situated
from weldwhy.interview import Interview
from weldwhy.model import Remedy, RuleBase
from weldwhy.store import Store
from weldwhy.thicknesses import neighbours
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.cards import caseview
from weldwhy.tui.cards.axis import axis
from weldwhy.tui.cards.card import lay_out
from weldwhy.tui.cards.cause import cause_card
from weldwhy.tui.cards.step import step_card
from weldwhy.tui.cards.windowpicture import LEAST, SIZE, picture
from weldwhy.tui.cards.windowview import View
from weldwhy.tui.rows import Row, joined
from weldwhy.units import Quantity, Target, parse, parse_target, show

from . import fakesetup
from .conftest import NOW
from .fake import PRACTICE
from .grid import text

NAMES = {"volts": "volts", "wire_feed": "wire feed", "amps": "amps"}
PLATE = parse("1/8 in", "length")


def _wire(volts: str, feed: str) -> dict[str, Target]:
    return {"volts": parse_target(volts, "voltage"), "wire_feed": parse_target(feed, "feed")}


def _at(volts: str, feed: str) -> dict[str, Quantity]:
    return {"volts": parse(volts, "voltage"), "wire_feed": parse(feed, "feed")}


HERE = _wire("19 V (17.5-20.5)", "220 ipm (175-280)")
WIRE = View(
    HERE, NAMES, PLATE,
    elsewhere=(
        (parse("16 ga", "length"), _wire("18 V (16.5-19.5)", "145 ipm (115-185)")),
        (PLATE, HERE),
        (parse("1/4 in", "length"), _wire("20.5 V (19-22)", "275 ipm (250-340)")),
    ),
)  # fmt: skip
AMPS = {"amps": parse_target("90 A (70-110)", "current")}
ROD = View(
    AMPS, NAMES, PLATE,
    elsewhere=(
        (parse("1/16 in", "length"), {"amps": parse_target("50 A (40-60)", "current")}),
        (PLATE, AMPS),
        (parse("1/4 in", "length"), {"amps": parse_target("130 A (110-150)", "current")}),
    ),
)  # fmt: skip


def _shown(view: View, size: tuple[int, int] = SIZE) -> str:
    return joined(picture(view, size, ascii_only=True))


def _plot(view: View) -> list[str]:
    """The painted rows alone, without axes, numbers and words."""
    return [
        line[6:].ljust(SIZE[0] - 6) for line in _shown(view).splitlines() if line[5:6] in ("|", "+")
    ][:-1]


def _place(view: View, sign: str) -> tuple[int, int]:
    found = [(y, line.index(sign)) for y, line in enumerate(_plot(view)) if sign in line]
    assert len(found) == 1, found
    return found[0]


@pytest.mark.parametrize(
    ("volts", "feed", "below", "right"),
    [("22 V", "300 ipm", False, True), ("16 V", "120 ipm", True, False),
     ("16 V", "320 ipm", True, True)],
)  # fmt: skip
def test_your_point_stands_on_its_side_of_the_mark_to_try(
    volts: str, feed: str, below: bool, right: bool
) -> None:
    view = replace(WIRE, yours=_at(volts, feed))
    mine, best = _place(view, "X"), _place(view, "O")
    assert (mine[0] > best[0]) is below
    assert (mine[1] > best[1]) is right


def test_a_point_inside_the_window_stands_on_its_paint() -> None:
    y, x = _place(replace(WIRE, elsewhere=(), yours=_at("18.2 V", "260 ipm")), "X")
    line = _plot(replace(WIRE, elsewhere=()))[y]
    assert line[x] == "#"


def test_a_point_outside_the_window_stands_off_its_paint() -> None:
    y, x = _place(replace(WIRE, elsewhere=(), yours=_at("23 V", "330 ipm")), "X")
    assert set(_plot(replace(WIRE, elsewhere=(), yours=_at("23 V", "330 ipm")))[y]) <= {" ", "X"}
    assert x > 0


def test_what_is_told_of_one_axis_only_stands_at_the_edge_and_says_so() -> None:
    view = replace(WIRE, yours={"volts": parse("22 V", "voltage")})
    assert _place(view, "X")[1] == 0
    assert "X yours (volts)" in _shown(view)


def test_the_words_name_every_sign_that_is_drawn_and_no_other() -> None:
    bare = _shown(replace(WIRE, elsewhere=()))
    assert "# allowed at 1/8 in" in bare
    assert "O try" in bare
    assert not any(words in bare for words in ("yours", "thicknesses", "machine's end"))
    ends = (parse("60 ipm", "feed"), parse("250 ipm", "feed"))
    full = _shown(replace(WIRE, yours=_at("22 V", "300 ipm"), reach={"wire_feed": ends}))
    for words in ("X yours", ": at other thicknesses", "% machine's end"):
        assert words in full


def test_a_machine_that_ends_inside_the_window_cuts_it_with_a_line() -> None:
    ends = (parse("60 ipm", "feed"), parse("250 ipm", "feed"))
    view = replace(WIRE, reach={"wire_feed": ends})
    columns = {line.rindex("%") for line in _plot(view)}
    assert len(columns) == 1
    assert columns.pop() > _place(view, "O")[1]


def test_a_machine_that_ends_far_away_is_not_drawn() -> None:
    ends = (parse("1 A", "current"), parse("600 A", "current"))
    assert "machine" not in _shown(replace(ROD, reach={"amps": ends}))


def test_amps_rise_with_thickness_and_the_own_one_is_painted_apart() -> None:
    plot = _plot(ROD)
    lowest = [max((y for y, line in enumerate(plot) if line[x] in ":#O"), default=-1)
              for x in range(len(plot[0]))]  # fmt: skip
    painted = [y for y in lowest if y >= 0]
    assert painted == sorted(painted, reverse=True)
    columns = {x for line in plot for x, sign in enumerate(line) if sign == "#"}
    assert len(columns) == 3
    assert _place(ROD, "O")[1] in columns


@pytest.mark.parametrize(
    ("system", "numbers"),
    [(None, ("volts (V) over wire feed (ipm)", " 200", " 300")),
     ("mm", ("volts (V) over wire feed (m/min)", "allowed at 3.2 mm", " 6", " 8"))],
)  # fmt: skip
def test_the_axes_are_in_the_persons_units(system: str | None, numbers: tuple[str, ...]) -> None:
    shown = _shown(replace(WIRE, system=system))
    assert all(text in shown for text in numbers)


def test_thickness_in_inches_is_numbered_in_fractions_as_on_a_rule() -> None:
    assert "1/16" in _shown(ROD)
    assert "1/8" in _shown(ROD).splitlines()[-3]
    gauge = replace(ROD, thickness=parse("11 ga", "length"))
    assert "thickness (in)" in _shown(gauge)


def test_there_is_no_picture_of_what_is_not_known() -> None:
    assert picture(View({}, NAMES, PLATE), SIZE, True) == []
    assert picture(replace(ROD, thickness=None), SIZE, True) == []
    assert picture(View({"volts": HERE["volts"]}, NAMES), SIZE, True) == []
    assert picture(WIRE, (LEAST[0] - 1, 12), True) == []


@given(
    st.integers(20, 100), st.integers(6, 40), st.floats(5, 60), st.floats(0.2, 30), st.booleans()
)
def test_any_size_and_any_point_are_drawn_inside_the_size(
    width: int, height: int, volts: float, feed: float, ascii_only: bool
) -> None:
    yours = {"volts": Quantity("voltage", volts, "V"), "wire_feed": Quantity("feed", feed, "m/min")}
    ends = (parse("60 ipm", "feed"), parse("250 ipm", "feed"))
    view = replace(WIRE, yours=yours, reach={"wire_feed": ends})
    rows = picture(view, (width, height), ascii_only)
    assert all(line.width <= width for line in rows)
    assert len(rows) <= height
    if rows and ascii_only:
        assert all(line.text.isascii() for line in rows)
    if rows:
        assert sum(line.text.count("X") for line in rows) == 2  # the point, and its words
        assert all(words in joined(rows) for words in ("allowed", "yours", "try"))


@given(st.floats(0.1, 500), st.floats(1.001, 50), st.integers(8, 80), st.integers(2, 10))
def test_an_axis_numbers_only_what_it_holds_in_order(
    low: float, times: float, steps: int, most: int
) -> None:
    ends = [Quantity("current", low, "A"), Quantity("current", low * times, "A")]
    laid = axis(ends, "A", steps)
    numbers = laid.numbers(most)
    assert len(numbers) <= most
    assert all(0 <= place < steps for place, _ in numbers)
    assert [place for place, _ in numbers] == sorted(place for place, _ in numbers)
    assert all(0 <= laid.place(q) < steps for q in ends)


def test_a_target_without_width_is_drawn_too() -> None:
    amps = parse("90 A", "current")
    view = View({"amps": Target(amps, amps, amps)}, NAMES, PLATE)
    assert "O" in "".join(_plot(view))


TOLD = (
    Reported("holes"), Situated("process", "mig"), Situated("material", "steel"),
    Situated("thickness", "1/8 in"),
)  # fmt: skip


def _rules() -> RuleBase:
    """The invented rules, with a cause that is put right at the dials."""
    rules = fakesetup.rules()
    turn = Remedy("turn", "Turn it up.", 1.0, 0.9, PRACTICE, settings=("volts", "wire_feed"))
    dialled = replace(rules.causes["flow-low"], remedies=(turn,))
    return replace(rules, causes={**rules.causes, "flow-low": dialled})


def _opened(width: int, *more: Entry, cause: str = "flow-low") -> list[str]:
    interview = Interview(_rules(), Case((*TOLD, *more)), machine=fakesetup.MACHINE)
    card = cause_card(interview, cause, letters=True)
    return [line.text for line in lay_out(card, width, 60)]


def test_the_picture_stands_beside_the_settings_of_a_wide_page_and_else_below() -> None:
    wide, usual = _opened(120), _opened(80)
    table = next(y for y, line in enumerate(wide) if "allowed" in line)
    assert "volts (V) over wire feed (ipm)" in wide[table]
    heads = [y for y, line in enumerate(usual) if "allowed" in line and "at 1/8 in" not in line]
    drawn = next(y for y, line in enumerate(usual) if "over wire feed" in line)
    assert drawn > heads[0]
    assert all(len(line) <= 80 for line in usual)


def test_what_you_told_is_the_point_in_the_picture_of_a_cause() -> None:
    assert not any("X yours" in line for line in _opened(120))
    told = (Measured("volts", "22 V"), Measured("wire_feed", "250 ipm"))
    assert any("X yours" in line for line in _opened(120, *told))


def test_the_mark_to_try_stands_where_the_table_says() -> None:
    """A feed that is right stays, so the mark is beside the best place of the window."""
    told = (Measured("volts", "22 V"), Measured("wire_feed", "285 ipm"))
    lines = _opened(120, *told)
    table = next(y for y, line in enumerate(lines) if "allowed" in line)
    assert any("leave it" in line for line in lines[table : table + 4])
    mine = next(line.index("X") for line in lines[table:] if "X" in line and "yours" not in line)
    best = next(line.index("O", 77) for line in lines[table:] if "O" in line[77:])
    assert mine == best


def test_nothing_to_try_is_marked_where_all_is_right() -> None:
    best = {name: target.best for name, target in HERE.items()}
    shown = _shown(replace(WIRE, yours=best))
    assert "O try" not in shown
    assert "X yours" in shown


async def test_a_picture_is_not_cut_where_a_page_is(store: Store) -> None:
    app = WeldwhyApp(_rules(), store, lambda: NOW)
    app.bench.record(*TOLD, Measured("volts", "22 V"))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("c")
        at = next(line for line in text(app).splitlines() if "Gas flow too low" in line)
        await pilot.press(at.split()[0])
        pages = [text(app)]
        for _ in range(4):
            await pilot.press("pagedown")
            pages.append(text(app))
        drawn = [page for page in pages if "over wire feed" in page]
        assert drawn
        assert all("X yours" in page and "O try" in page for page in drawn)
        assert "part 1 of" in pages[0]


@pytest.mark.parametrize(("width", "height", "drawn"), [(74, 38, True), (80, 17, False)])
def test_a_step_shows_the_picture_only_where_there_is_room_for_all_of_it(
    width: int, height: int, drawn: bool
) -> None:
    interview = Interview(_rules(), Case(TOLD))
    advice = interview.remedies("flow-low")[0]
    drawing = picture(WIRE, SIZE, ascii_only=True)
    card = step_card(interview.remedy("flow-low"), "", advice.settings, drawing=drawing)
    rows = lay_out(card, width, height)
    assert len(rows) <= height
    assert any("over wire feed" in line.text for line in rows) is drawn


def test_a_cause_without_volts_feed_or_amps_has_no_picture() -> None:
    assert not any("over wire feed" in line for line in _opened(120, cause="draught"))


def test_the_neighbours_of_a_thickness_are_for_the_same_wire_and_joint() -> None:
    rules = _rules()
    window = rules.windows["mig-steel"]
    found = neighbours(rules, Case(TOLD), "steel", window)
    assert [thick.value for thick, _ in found] == sorted(thick.value for thick, _ in found)
    assert len(found) == 3
    thin = replace(
        window, rows=(*window.rows, replace(window.rows[0], size=parse("0.035 in", "length")))
    )
    both = replace(rules, windows={**rules.windows, thin.id: thin})
    told = Case((*TOLD, Measured("wire", "0.035 in ER70S-6")))
    other = [dict(targets) for _, targets in neighbours(both, told, "steel", thin)]
    assert [bool(targets.get("volts")) for targets in other] == [True, False, False]


def test_where_another_window_is_the_right_one_there_is_no_neighbour() -> None:
    rules = _rules()
    window = rules.windows["mig-steel"]
    other = replace(window, id="plate", rows=window.rows[2:])
    both = replace(rules, windows={other.id: other, **rules.windows})
    found = neighbours(both, Case(TOLD), "steel", window)
    assert [thick for thick, _ in found] == [row.thickness for row in window.rows[:2]]


@pytest.mark.parametrize("view", [WIRE, ROD])
def test_a_picture_takes_less_than_the_time_of_a_frame(view: View) -> None:
    """Drawn in about 0.2 ms; the bound only catches a change of order."""
    drawn = timeit.repeat(lambda: picture(view, (40, 12), False), number=20, repeat=5)
    assert min(drawn) / 20 < 0.005


def _view(monkeypatch: pytest.MonkeyPatch, interview: Interview, advice: SettingAdvice) -> View:
    """What the picture beside this advice is drawn from."""
    views: list[View] = []

    def drawn(view: View, *_: object) -> list[Row]:
        views.append(view)
        return []

    monkeypatch.setattr(caseview, "picture", drawn)
    caseview.drawing_of(interview, [advice], letters=True)
    (view,) = views
    return view


@pytest.mark.parametrize(("feed", "begins"), [("300 ipm", "300 ipm"), ("600 ipm", "320 ipm")])
def test_a_setting_in_its_range_stays_while_another_one_is_changed(
    feed: str, begins: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The range is 280 to 380 ipm, best 320; a feed outside it is not where to begin."""
    told = (
        Reported("porosity"), Situated("process", "mig"), Situated("material", "steel"),
        Situated("thickness", "1/8 in"), Measured("wire", "0.030 in"),
        Measured("volts", "22 V"), Measured("wire_feed", feed),
    )  # fmt: skip
    volts = SettingAdvice("volts", "volts", "22 V", "19 V", "18 V", "20 V")
    view = _view(monkeypatch, Interview(fakesetup.rules(), Case(told)), volts)
    assert view.begin["volts"] == parse("19 V", "voltage")
    assert show(view.begin["wire_feed"]) == begins


def test_the_ends_drawn_are_those_of_the_machine_in_this_process(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    general, own = (
        (parse("30 A", "current"), parse(most, "current")) for most in ("180 A", "100 A")
    )
    machine = replace(
        fakesetup.MACHINE, limits={"amps": general}, limits_in={"stick": {"amps": own}}
    )
    told = (
        Reported("porosity"), Situated("process", "stick"), Situated("material", "steel"),
        Situated("thickness", "1/8 in"), Measured("rod", "1/8 in"),
    )  # fmt: skip
    interview = Interview(fakesetup.rules(), Case(told), machine=machine)
    amps = SettingAdvice("amps", "amps", "", "95 A", "80 A", "110 A")
    assert _view(monkeypatch, interview, amps).reach["amps"] == own
