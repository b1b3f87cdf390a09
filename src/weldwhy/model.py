"""The words of the rule base as frozen values: symptom, cause, check, remedy, caution, source.

Nothing here knows files, screens or arithmetic. Grades are already numbers (the scale in
`rules/likelihood.yaml` is the only place where a likelihood word becomes one), minutes are
minutes, and quantities are `units.Quantity`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from weldwhy.units import Quantity, Target

if TYPE_CHECKING:
    from weldwhy.setupmodel import Filler, Grade, Setup

How = Literal["ask", "look", "try", "measure"]
Share = Literal["operator", "machine", "material", "consumable"]
Side = Literal["too low", "too high"]

SHARES: tuple[Share, ...] = ("operator", "machine", "material", "consumable")
PLACES = ("indoors", "outdoors")
JOINTS = ("butt", "fillet", "lap", "corner", "edge")
POSITIONS = ("flat", "horizontal", "vertical up", "vertical down", "overhead")
BESIDE = ("supply", "metal", "distance", "spool", "tool", "machine", "dial")
"""What words tell of a number, or of the name of a metal, beside them."""
SUITS = ("good", "usable", "poor")


@dataclass(frozen=True, slots=True)
class Source:
    """Where a rule comes from. `basis`: found (text seen), memory, or common practice."""

    id: str
    title: str
    basis: Literal["found", "memory", "common practice"]
    place: str = ""


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning shown before the step it belongs to; `stop` means: do not go on, call `call`.

    `short` says and forbids the same in at most 60 letters, for a wall chart.
    """

    id: str
    text: str
    source: str
    stop: bool = False
    call: str = ""
    short: str = ""


@dataclass(frozen=True, slots=True)
class Process:
    """A welding process: short name, plain name, and how it is hooked up."""

    id: str
    name: str
    plain: str
    polarity: str
    source: str


@dataclass(frozen=True, slots=True)
class Material:
    """A metal by family id, with the names people give it.

    A metal whose `caution` stops is not one for a small shop to weld.
    """

    id: str
    name: str
    also: tuple[str, ...] = ()
    caution: str = ""


@dataclass(frozen=True, slots=True)
class Gas:
    """A shielding gas. `parts`: volume percent of argon, helium, co2, oxygen and the like."""

    id: str
    name: str
    parts: Mapping[str, float]
    source: str
    group: str = ""
    also: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Table:
    """Figures by name: each of `rows` holds one number for each of `columns`, in its `units`."""

    id: str
    name: str
    columns: tuple[str, ...]
    units: tuple[str, ...]
    rows: Mapping[str, tuple[float, ...]]
    source: str
    note: str = ""

    def value(self, row: str, column: str = "") -> float:
        """One figure; the first column if none is named. KeyError if there is no such row."""
        return self.rows[row][self.columns.index(column) if column else 0]


@dataclass(frozen=True, slots=True)
class Job:
    """What the weld is for; a job whose `caution` stops is not one to mend by guide."""

    id: str
    name: str
    caution: str = ""


@dataclass(frozen=True, slots=True)
class Setting:
    """A dial or consumable value. `quantity` is a kind known to `units`, or "text".

    `possible` bounds what a sane entry may be; outside it an entry is refused. `too_little` and
    `too_much` say what to change when a machine ends below or above what is wanted.
    """

    id: str
    name: str
    quantity: str
    possible: tuple[Quantity, Quantity] | None = None
    too_little: str = ""
    too_much: str = ""


@dataclass(frozen=True, slots=True)
class Shift:
    """How much a joint or a position changes what is set: each of `scale` times as much."""

    id: str
    name: str
    processes: tuple[str, ...]
    scale: Mapping[str, float]
    why: str
    source: str
    joints: tuple[str, ...] = ()
    positions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WindowRow:
    """Targets at one thickness and consumable size (either may be None: any)."""

    thickness: Quantity | None
    size: Quantity | None
    targets: Mapping[str, Target]


@dataclass(frozen=True, slots=True)
class Window:
    """An operating window: where volts, feed, amps and flow may lie in one situation.

    `size_of` names the setting that `WindowRow.size` speaks of: wire, rod or tungsten.
    `targets` hold in every row; `outdoors` replaces some of them in moving air. `transfer` is how
    the metal crosses the arc, `inductance` where that dial starts, in words. `gas` holds ids of
    gases, `positions` those it is good for (empty: all).
    """

    id: str
    name: str
    processes: tuple[str, ...]
    materials: tuple[str, ...]
    size_of: str
    source: str
    consumable: str = ""
    gas: tuple[str, ...] = ()
    transfer: str = ""
    inductance: str = ""
    positions: tuple[str, ...] = ()
    note: str = ""
    targets: Mapping[str, Target] = field(default_factory=dict)
    outdoors: Mapping[str, Target] = field(default_factory=dict)
    rows: tuple[WindowRow, ...] = ()


@dataclass(frozen=True, slots=True)
class DutyPoint:
    """A machine's rating: so many percent of ten minutes at so many amps."""

    percent: float
    amps: float


@dataclass(frozen=True, slots=True)
class Machine:
    """A welding machine: what it reaches, by setting; `limits_in` by process where that differs.

    `dials` gives, for a setting whose dial has marks only, each mark with what it stands for.
    """

    id: str
    name: str
    processes: tuple[str, ...]
    limits: Mapping[str, tuple[Quantity, Quantity]] = field(default_factory=dict)
    limits_in: Mapping[str, Mapping[str, tuple[Quantity, Quantity]]] = field(default_factory=dict)
    duty: tuple[DutyPoint, ...] = ()
    supply: Quantity | None = None
    breaker: Quantity | None = None
    dials: Mapping[str, Mapping[str, Quantity]] = field(default_factory=dict)
    gun: Quantity | None = None
    work_lead: Quantity | None = None
    lead: Quantity | None = None
    cord: Quantity | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Lens:
    """The lightest lens shade allowed from `least` up to `most` amps, in these processes."""

    id: str
    processes: tuple[str, ...]
    least: float
    most: float
    shade: float
    source: str


@dataclass(frozen=True, slots=True)
class Symptom:
    """What is reported. `group` is where one notices it: the bead, a crack, the arc, the wire.

    `materials` are the metals that can show it (empty: any); a single one need not be asked.
    `cautions` come before every step of a case that reports it.
    """

    id: str
    name: str
    group: str
    processes: tuple[str, ...]
    looks: str
    source: str
    also: tuple[str, ...] = ()
    iso_6520_1: str = ""
    limits: str = ""
    materials: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    confused_with: str = ""


@dataclass(frozen=True, slots=True)
class Picture:
    """The drawing of a symptom: `draws` names the drawing, `parts` its parameters.

    `like` gives other symptoms that are taken for it: P(this picture is picked | it is that one).
    """

    id: str
    draws: str
    parts: Mapping[str, float | str]
    like: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade and what it means. `see` holds ids of what it is about."""

    id: str
    name: str
    means: str
    source: str
    also: tuple[str, ...] = ()
    see: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Answer:
    """One possible answer to a check."""

    id: str
    text: str


@dataclass(frozen=True, slots=True)
class Check:
    """Anything that can be answered. The first answer is the normal one.

    `baseline` holds P(answer | nothing linked is wrong), in answer order, summing to 1.
    `noise` is the chance of a slip, `dont_know` of no answer; `minutes` its cost.
    `setting` names a setting that, once measured, answers this check by itself.
    """

    id: str
    ask: str
    how: How
    minutes: float
    answers: tuple[Answer, ...]
    baseline: tuple[float, ...]
    noise: float
    dont_know: float
    settles: str
    source: str
    ordered: bool = False
    same_look: str = ""
    setting: str = ""
    processes: tuple[str, ...] = ()
    materials: tuple[str, ...] = ()
    symptoms: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Remedy:
    """What puts a cause right. `minutes` exclude the test bead; `settings` are shown with targets.

    `stop` means that the remedy is to stop and call `call`. `short` says and forbids the same in at
    most 100 letters, for a wall chart.
    """

    id: str
    do: str
    minutes: float
    works: float
    source: str
    settings: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    stop: bool = False
    call: str = ""
    short: str = ""


@dataclass(frozen=True, slots=True)
class WorkedCase:
    """A welder's story with its answers; `leads`: whether the cause it stands under must lead."""

    story: str
    process: str
    symptom: str
    leads: bool
    says: str
    answers: Mapping[str, str] = field(default_factory=dict)
    settings: Mapping[str, str] = field(default_factory=dict)
    material: str = ""
    thickness: str = ""


@dataclass(frozen=True, slots=True)
class Cause:
    """What is wrong. `shows[check][answer]` = P(answer | only this cause); `symptoms` likewise.

    `base` is the relative frequency, `base_in` that in processes where it differs; causes with
    the same `exclusive` word never occur together. `hazard`: its check comes first whatever it
    costs. `setting`: (setting, side) whose measured value speaks for or against this cause.
    """

    id: str
    name: str
    what: str
    family: str
    share: Share
    processes: tuple[str, ...]
    base: float
    symptoms: Mapping[str, float]
    shows: Mapping[str, Mapping[str, float]]
    remedies: tuple[Remedy, ...]
    source: str
    prevent: str = ""
    base_in: Mapping[str, float] = field(default_factory=dict)
    materials: tuple[str, ...] = ()
    exclusive: str = ""
    hazard: bool = False
    setting: tuple[str, Side] | None = None
    cases: tuple[WorkedCase, ...] = ()

    def rate(self, process: str) -> float:
        """How often it is met in the process ("" if not known), relative to other causes."""
        return self.base_in.get(process, self.base)

    def remedy(self, tried: int) -> Remedy:
        """The remedy after `tried` tries in vain: the next one, or the last one once more."""
        return self.remedies[min(tried, len(self.remedies) - 1)]


@dataclass(frozen=True, eq=False)
class RuleBase:
    """Everything the guide knows, indexed by id in file order. Loaded and checked elsewhere.

    Two bases are equal only if they are the same object, so that one can key a cache.
    """

    processes: Mapping[str, Process]
    symptoms: Mapping[str, Symptom]
    causes: Mapping[str, Cause]
    checks: Mapping[str, Check]
    cautions: Mapping[str, Caution] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    materials: Mapping[str, Material] = field(default_factory=dict)
    settings: Mapping[str, Setting] = field(default_factory=dict)
    windows: Mapping[str, Window] = field(default_factory=dict)
    jobs: Mapping[str, Job] = field(default_factory=dict)
    lenses: Mapping[str, Lens] = field(default_factory=dict)
    families: Mapping[str, str] = field(default_factory=dict)
    groups: Mapping[str, str] = field(default_factory=dict)
    likelihoods: Mapping[str, float] = field(default_factory=dict)
    grades: Mapping[str, Grade] = field(default_factory=dict)
    gases: Mapping[str, Gas] = field(default_factory=dict)
    fillers: Mapping[str, Filler] = field(default_factory=dict)
    tables: Mapping[str, Table] = field(default_factory=dict)
    shifts: Mapping[str, Shift] = field(default_factory=dict)
    setups: Mapping[str, Setup] = field(default_factory=dict)
    machines: Mapping[str, Machine] = field(default_factory=dict)
    pictures: Mapping[str, Picture] = field(default_factory=dict)
    terms: Mapping[str, Term] = field(default_factory=dict)
    said: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Phrases that people use, by what they mean, such as "symptom porosity"."""
