"""A small invented rule base, and files of machines as people type them."""

from __future__ import annotations

from hypothesis import strategies as st

from weldwhy.machinefile import read
from weldwhy.model import Machine, Process, RuleBase, Setting
from weldwhy.units import parse

PROCESSES = ("gmaw", "smaw")
LITTLE, MUCH = "take a thinner wire.", "weld in short stitches."

RULES = RuleBase(
    processes={p: Process(p, p, f"plain {p}", "gun plus", "common practice") for p in PROCESSES},
    symptoms={},
    causes={},
    checks={},
    settings={
        "volts": Setting(
            "volts", "volts", "voltage", (parse("5 V", "voltage"), parse("60 V", "voltage")),
            LITTLE, MUCH,
        ),
        "wire_feed": Setting(
            "wire_feed", "wire feed", "feed", (parse("5 ipm", "feed"), parse("1200 ipm", "feed"))
        ),
        "amps": Setting("amps", "amps", "current"),
        "gas": Setting("gas", "gas", "text"),
    },
    machines={
        "small": Machine("small", "small machine", PROCESSES, note="of the rules"),
        "big": Machine("big", "big machine", ("smaw",), supply=parse("400 V", "voltage")),
    },
)  # fmt: skip

WHOLE = """\
# My welding machine: the guide holds its targets to what stands here.
name: blue box, 180 A
processes: [gmaw, smaw]
limits: {volts: 13 V to 24 V, wire_feed: 60 ipm to 12 m/min, amps: 30 A to 180 A}
limits_in:
  smaw: {amps: 20 A to 160 A}
duty: [20 % at 180 A, 60 % at 104.5 A]
dials:
  volts: {1: 13 V, 4: 16.25 V, 10: 24 V}
  wire_feed: {A: 60 ipm, J: 500 ipm}
supply: 230 V
breaker: 30 A
gun: 10 ft
work_lead: 3.5 m
lead: 2 AWG
cord: 1/2 m
note: "bought used; it says: \\"handle with care\\""
"""


def made(text: str) -> Machine:
    """The machine in the text of a file."""
    return read(text.encode(), "machine.yaml", RULES)


def _numbers(low: int, high: int) -> st.SearchStrategy[str]:
    """Numbers as people type them: whole, with a point, or with a fraction."""
    whole = st.integers(low, high).map(str)
    point = st.tuples(st.integers(low, high - 1), st.integers(1, 9999)).map(
        lambda n: f"{n[0]}.{n[1]:04}"
    )
    if low > 99:
        return whole | point  # a whole number before a fraction has two digits
    parts = st.tuples(st.integers(low, min(high - 1, 99)), st.integers(1, 15)).map(
        lambda n: f"{n[0]} {n[1]}/16"
    )
    return whole | point | parts


def _range(low: int, middle: int, high: int, unit: str) -> st.SearchStrategy[str]:
    ends = st.tuples(_numbers(low, middle), _numbers(middle, high))
    return ends.map(lambda pair: f"{pair[0]} {unit} to {pair[1]} {unit}")


_NAMES = st.text(
    st.characters(exclude_categories=("C", "Z")) | st.just(" "), min_size=1, max_size=30
).filter(lambda name: bool(name.strip()))


def _quoted(name: str) -> str:
    return '"' + name.replace("\\", "\\\\").replace('"', '\\"') + '"'


@st.composite
def machine_texts(draw: st.DrawFn) -> str:
    """Files of machines with any of their keys, in any of their units."""
    limits = {
        "volts": draw(_range(5, 20, 60, "V")),
        "wire_feed": draw(_range(5, 200, 1200, "ipm") | _range(1, 6, 25, "m/min")),
        "amps": draw(_range(1, 90, 500, "A")),
    }
    lines = [
        f"name: {_quoted(draw(_NAMES))}",
        f"processes: {draw(st.sampled_from(['[gmaw]', '[smaw, gmaw]']))}",
    ]
    told = draw(st.sets(st.sampled_from(sorted(limits))))
    lines.append(f"limits: {{{', '.join(f'{name}: {limits[name]}' for name in sorted(told))}}}")
    optional = {
        "limits_in": f"{{smaw: {{amps: {draw(_range(1, 80, 400, 'A'))}}}}}",
        "duty": f"[{draw(st.integers(1, 100))} % at {draw(st.integers(1, 999))}.5 A]",
        "dials": f"{{volts: {{1: 13 V, {draw(st.integers(2, 9))}: {draw(_numbers(14, 60))} V}}}}",
        "supply": f"{draw(_numbers(50, 700))} V",
        "gun": draw(_numbers(2, 300).map("{} ft".format) | _numbers(1, 100).map("{} m".format)),
        "lead": draw(
            st.integers(1, 10).map("{} AWG".format) | _numbers(4, 200).map("{} mm2".format)
        ),
        "note": _quoted(draw(_NAMES)),
    }
    kept = draw(st.sets(st.sampled_from(sorted(optional))))
    lines += [f"{name}: {value}" for name, value in optional.items() if name in kept]
    return "\n".join(lines) + "\n"
