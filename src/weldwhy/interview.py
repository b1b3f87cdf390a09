"""What the guide thinks of a case: the next step, the ranked causes, the reasons. A pure view.

The engine and what feeds it are imported when the first symptom is told, not before: the first
screen is there sooner by what takes a quarter of its time.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from weldwhy import steps, told
from weldwhy.case import Case
from weldwhy.engine.tuning import PATIENCE, Tuning
from weldwhy.model import SHARES, Cause, Caution, Check, Machine, RuleBase, Share
from weldwhy.steps import Step
from weldwhy.units import Quantity, show, show_target

if TYPE_CHECKING:
    from weldwhy import advice
    from weldwhy.advice import Advice
    from weldwhy.engine import choice
    from weldwhy.engine.belief import Belief, Log
    from weldwhy.engine.choice import Chooser
    from weldwhy.engine.network import Network
    from weldwhy.reasons import Reason
    from weldwhy.windows import Found

BELIEF_WORDS = (
    (0.85, "almost surely"),
    (0.50, "likely"),
    (0.25, "quite possible"),
    (0.08, "possible"),
    (0.00, "unlikely"),
)
"""Least probability and the words for it, for a cause on the screen."""
REASONS = {
    "hazard": "a danger to you comes before everything else",
    "again": "this does not fit with the rest; please look once more",
}
"""Why a check comes now, where it is not for what it settles."""
METAL_MATTERS = 0.05
"""From this chance on that a fault of some metals only is at work, the metal is asked."""
DISAGREE = 0.35
"""From this log10 on, answers are said to disagree; one honest case in 200 reaches it."""


@dataclass(frozen=True, slots=True)
class Ranked:
    """A cause and how likely it is to be still at work."""

    cause: Cause
    probability: float


class Interview:
    """The guide's view of one case. Everything is worked out when first asked for.

    `patience` is brisk, normal or thorough; `multipliers` shift base rates by the shop's own
    history; `system` is "in", "mm" or None (as the person writes, or, if nothing was written yet,
    as their `habit` is); advice keeps to what `machine` reaches.
    """

    def __init__(
        self,
        rules: RuleBase,
        case: Case,
        patience: str = "normal",
        multipliers: Mapping[str, float] | None = None,
        system: str | None = None,
        machine: Machine | None = None,
        habit: str | None = None,
    ) -> None:
        self.rules = rules
        self.case = case
        self.patience = patience
        self.machine = machine
        self._wanted = system
        self._habit = habit
        self._multipliers = tuple(sorted((multipliers or {}).items()))

    @cached_property
    def system(self) -> str | None:
        """The unit system to show what the person did not write; None: as the rules have it."""
        if self._wanted or not self.case.entries:
            return self._wanted or self._habit
        from weldwhy.readings import habit

        return habit(self.rules, self.case) or self._habit

    @property
    def shown(self) -> advice.Shown:
        """How quantities are written here."""
        from weldwhy import advice

        return advice.Shown(self._wanted, self.system, self.machine)

    def of(self, case: Case) -> Interview:
        """The same guide's view of another case, such as this one at an earlier time."""
        return type(self)(
            self.rules, case, self.patience, dict(self._multipliers), self._wanted, self.machine,
            self.system,
        )  # fmt: skip

    def setting(self, name: str) -> advice.SettingAdvice:
        """A setting as told, and where it should lie, as far as the machine reaches."""
        from weldwhy import advice

        return advice.setting_advice(self.rules, self.case, name, self.within_reach, self.shown)

    # what is in play

    @cached_property
    def log(self) -> Log:
        """The case's answers, measured settings and remedies as the engine's log."""
        from weldwhy.logbook import log_of

        return log_of(self.rules, self.case, self.window, self.material)

    @cached_property
    def network(self) -> Network:
        """The causes and checks in play for what was reported."""
        from weldwhy.engine.network import network_for

        failed = frozenset(t.cause for t in self.case.tried if t.result != "sound")
        return network_for(
            self.rules,
            self.case.process,
            tuple(sorted(self.symptoms)),
            self.material,
            self._multipliers,
            failed,
            self.case.resembled,
        )

    @property
    def symptoms(self) -> tuple[str, ...]:
        """The symptoms told; if there are none, the likeliest that the words may mean.

        That one is only for a first view of the causes: which is meant is the next question.
        """
        return self.case.symptoms or self._hinted[:1]

    @property
    def supposed(self) -> str:
        """The symptom that the causes are ranked for though it is not told yet; "" if none is."""
        return "" if self.case.symptoms else next(iter(self._hinted), "")

    @cached_property
    def _hinted(self) -> tuple[str, ...]:
        """The symptoms hinted at, as far as the process can show them."""
        shown = {symptom.id for symptom in steps.symptoms_of(self.rules, self.case.process)}
        return tuple(name for name in self.case.hinted if name in shown)

    @property
    def material(self) -> str:
        """The metal told, that of its grade, or the only one that can show a symptom reported."""
        reported = [self.rules.symptoms[s] for s in self.symptoms if s in self.rules.symptoms]
        lone = [s.materials[0] for s in reported if len(s.materials) == 1]
        of_grade = self._metal_of_grade if self.case.grade else ""
        return self.case.material or of_grade or (lone[0] if lone else "")

    @cached_property
    def _metal_of_grade(self) -> str:
        from weldwhy import metalwork  # few cases tell a grade

        metal = metalwork.told(self.rules, self.case.grade)
        return metal.material if metal else ""

    @cached_property
    def window(self) -> Found | None:
        """The operating window of the situation, if the rules hold one."""
        from weldwhy import advice

        return advice.window(self.rules, self.case, self.material)

    @cached_property
    def within_reach(self) -> Found | None:
        """The window as far as the machine reaches: what can be advised."""
        if self.window is None or self.machine is None:
            return self.window
        from weldwhy.limits import fit

        return fit(self.rules, self.window, self.machine, self.case.process, self.system)

    @cached_property
    def belief(self) -> Belief:
        """The belief after the whole log."""
        from weldwhy.engine.belief import replay

        return replay(self.network, self.log)

    @cached_property
    def chooser(self) -> Chooser:
        """The engine's choice for this belief."""
        from weldwhy import advice
        from weldwhy.engine.belief import Finding
        from weldwhy.engine.choice import Chooser

        seen = [e.check for e in self.log if isinstance(e, Finding) and e.trust == 1.0]
        return Chooser(
            self.belief,
            self.log,
            refused=self.case.passed,
            tuned=self._tuned,
            looked_again={check for check in seen if seen.count(check) > 1},
            settled=advice.settled(self.rules, self.case, self.window),
            declined=self._declined,
        )

    @property
    def _declined(self) -> frozenset[str]:
        """Causes whose next remedy was passed over: it cannot be done now."""
        passed, tries = set(self.case.passed), self.belief.tries
        causes = self.network.causes
        return frozenset(c.id for c in causes if c.remedy(tries.get(c.id, 0)).id in passed)

    @property
    def _reported(self) -> bool:
        return bool(self.symptoms) and bool(self.network.causes)

    # what to show

    @cached_property
    def ranked(self) -> tuple[Ranked, ...]:
        """Causes from most to least likely, ties in file order; none before a symptom is told."""
        if not self._reported:
            return ()
        marginals = self.belief.marginals()
        order = sorted(self.network.causes, key=lambda cause: -marginals[cause.id])
        return tuple(Ranked(cause, marginals[cause.id]) for cause in order)

    @cached_property
    def unlisted(self) -> float:
        """P(something not in this list)."""
        return self.belief.unlisted if self._reported else 0.0

    @cached_property
    def shares(self) -> dict[Share, float]:
        """How the fault divides over operator, machine, material and consumable; sums to 1."""
        sums = dict.fromkeys(SHARES, 0.0)
        for ranked in self.ranked:
            sums[ranked.cause.share] += ranked.probability
        total = sum(sums.values())
        return {share: part / total if total else 0.0 for share, part in sums.items()}

    @cached_property
    def expected_minutes(self) -> float:
        """Expected minutes to a sound bead from here."""
        if not self._reported or self.case.sound:
            return 0.0
        return self.chooser.expected

    @cached_property
    def notice(self) -> str:
        """A remark if the answers do not fit together, else ""."""
        if self._reported and self.belief.surprise > DISAGREE:
            return "Your answers pull in different directions: two faults at once, or one slip."
        return ""

    @cached_property
    def standing_cautions(self) -> tuple[Caution, ...]:
        """The cautions of the job the weld is for and of its metal."""
        job, metal = self.rules.jobs.get(self.case.job), self.rules.materials.get(self.material)
        return steps.cautions(self.rules, [each.caution for each in (job, metal) if each])

    @cached_property
    def lens(self) -> str:
        """The lightest lens shade for the case's current, in words; "" if the rules have none."""
        from weldwhy.lens import lightest
        from weldwhy.readings import worked_out

        amps = worked_out(self.rules, self.case.process, self.case.measured).get("amps")
        value = amps.value if isinstance(amps, Quantity) else None
        if value is None and self.window and "amps" in self.window.targets:
            value = self.window.targets["amps"].high.value
        found = lightest(self.rules, self.case.process, value)
        return f"Lens shade {found.shade:g} or darker." if found else ""

    # the next step

    @cached_property
    def step(self) -> Step:
        """The next step: what to ask, check, try; or to stop; or that the case is done."""
        for caution in self.standing_cautions:
            if caution.stop:
                return steps.stop_for_job(caution)
        if self.case.told("process") is None:
            return steps.ask_process(self.rules, self.case.symptoms)
        if not self.case.symptoms:
            return self._way_in
        if self._metal_open and self._metal_matters:
            return steps.ask_material(self.rules)
        if self.case.sound:
            return Step("done", "done", "The bead is sound.")
        if not self._reported:
            return steps.call_for_help(self._tuned.help)
        return self._engine_step(self.chooser.step)

    @property
    def _way_in(self) -> Step:
        """What is wrong? Of many symptoms, first where it is noticed."""
        process, group = self.case.process, self.case.told("group")
        if self._hinted:
            return steps.ask_meant(self.rules, self._hinted)
        many = len(steps.symptoms_of(self.rules, process)) > steps.SHORT_LIST
        if many and group is None:
            return steps.ask_group(self.rules, process)
        return steps.ask_symptom(self.rules, process, group or "")

    @cached_property
    def _symptom_cautions(self) -> tuple[Caution, ...]:
        symptoms = self.rules.symptoms
        ids = [c for s in self.case.symptoms if s in symptoms for c in symptoms[s].cautions]
        return steps.cautions(self.rules, dict.fromkeys(ids))

    def _with_symptoms(self, cautions: tuple[Caution, ...]) -> tuple[Caution, ...]:
        """The warnings of the symptoms reported, then these; none twice."""
        first = self._symptom_cautions
        return (*first, *(caution for caution in cautions if caution not in first))

    def _warned(self, step: Step) -> Step:
        return replace(step, cautions=self._with_symptoms(step.cautions))

    @property
    def _tuned(self) -> Tuning:
        return PATIENCE[self.patience]

    @property
    def _metal_open(self) -> bool:
        return self.case.told("material") is None and not self.material

    @property
    def _metal_matters(self) -> bool:
        """Whether faults of some metals only are likely, or the next check is for some only."""
        if not self._reported or self.case.sound:
            return False
        chances = self.belief.marginals()
        if sum(chances[c.id] for c in self.network.causes if c.materials) >= METAL_MATTERS:
            return True
        check = self.chooser.step.check
        return bool(check) and bool(self.rules.checks[check].materials)

    def _engine_step(self, step: choice.Step) -> Step:
        if step.kind == "fix":
            return self.remedy(step.cause, self.belief.tries.get(step.cause, 0))
        if step.kind == "help":
            leader = self.rules.causes[step.cause] if step.cause else self.ranked[0].cause
            stops = leader.remedies[0].stop
            return self.remedy(leader.id) if stops else steps.call_for_help(self._tuned.help)
        return self.ask(step.check, REASONS.get(step.kind, ""))

    def ask(self, check_id: str, reason: str = "") -> Step:
        """The step that puts one check, whether or not it is the best now."""
        check = self.rules.checks[check_id]
        step = self._warned(steps.put_check(self.rules, check, reason or check.settles))
        target = self.window.targets.get(check.setting) if self.window else None
        if target is None:
            return step
        # a dial can only be held against a range that is in sight
        return replace(step, text=f"{step.text} Here: {show_target(target, self.system)}.")

    def remedy(self, cause_id: str, number: int = 0) -> Step:
        """The step that offers remedy `number` of a cause (the last one if there are fewer)."""
        chance = self.belief.probability(cause_id) if self._in_play(cause_id) else 0.0
        return self._warned(steps.offer_remedy(self.rules, cause_id, number, chance))

    def _in_play(self, cause_id: str) -> bool:
        return self._reported and cause_id in self.network.number

    @cached_property
    def open_checks(self) -> tuple[Check, ...]:
        """Checks that may be answered out of order, the most telling first."""
        if not self._reported:
            return ()
        chooser = self.chooser
        order = sorted(chooser.open_checks, key=lambda c: (-chooser.bits(c), c))
        return tuple(self.rules.checks[c] for c in order)

    # a cause, opened

    def why(self, cause_id: str) -> tuple[Reason, ...]:
        """What was told for and against the cause, strongest first; below 1 deciban left out."""
        from weldwhy.reasons import reasons

        if not self._in_play(cause_id):
            return ()
        return reasons(self.rules, self.case, self.network, self.log, cause_id, self._wanted)

    @cached_property
    def mind_changers(self) -> tuple[str, ...]:
        """Answers that would put another cause first, in words."""
        from weldwhy.reasons import mind_changers

        if not self.ranked or self.case.sound:
            return ()
        leader = self.ranked[0].cause.id
        return mind_changers(self.rules, self.network, leader, self.chooser.values)

    def confirm(self, cause_id: str) -> tuple[Check, ...]:
        """Checks that decide on the cause by themselves, cheapest first."""
        from weldwhy.engine.plan import direct_checks

        if not self._in_play(cause_id):
            return ()
        found = direct_checks(self.network)[self.network.number[cause_id]]
        return tuple(self.rules.checks[direct.check] for direct in found)

    def remedies(self, cause_id: str) -> tuple[Advice, ...]:
        """The cause's remedies with cautions and corrective settings."""
        from weldwhy import advice

        cause = self.rules.causes[cause_id]
        found = advice.advise(self.rules, self.case, cause, self.within_reach, self.shown)
        return tuple(replace(a, cautions=self._with_symptoms(a.cautions)) for a in found)

    # what was told

    @cached_property
    def told(self) -> tuple[str, ...]:
        """What was told so far, one line an entry, oldest first."""
        return tuple(told.entry_line(self.rules, entry) for entry in self.case.entries)

    @cached_property
    def follows(self) -> tuple[str, ...]:
        """What follows from the sizes of the bead that were told, one line each."""
        from weldwhy.beadheat import bead_heat
        from weldwhy.readings import worked_out

        read = worked_out(self.rules, self.case.process, self.case.measured)
        heat = bead_heat(self.rules, self.case.process, read, self.window)
        lines = []
        if "travel" not in self.case.measured and isinstance(read.get("travel"), Quantity):
            lines.append(told.setting_line(self.rules, "travel", self._shown(read["travel"])))
        if heat is not None:
            lines.append(f"heat input: {self._shown(heat)}")
        return tuple(lines)

    def _shown(self, value: Quantity | str) -> str:
        return show(value, self.system) if isinstance(value, Quantity) else value

    @staticmethod
    def likelihood_word(probability: float) -> str:
        """The words for a probability on the screen."""
        return next(word for least, word in BELIEF_WORDS if probability >= least)
