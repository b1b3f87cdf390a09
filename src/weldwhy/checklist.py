"""The checklist before the first arc, and the cautions that stand over the whole work."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy.case import Case
from weldwhy.model import Caution, RuleBase
from weldwhy.setupmodel import Setup
from weldwhy.steps import cautions
from weldwhy.suiting import Situation, holding


@dataclass(frozen=True, slots=True)
class ChecklistStep:
    """One thing to do and tick off; its cautions are shown before it."""

    text: str
    cautions: tuple[Caution, ...]
    source: str


def checklist(rules: RuleBase, setup: Setup, work: Situation) -> tuple[ChecklistStep, ...]:
    """The steps for this work, in order."""
    return tuple(
        ChecklistStep(step.do, cautions(rules, step.cautions), step.source)
        for step in holding(setup.checklist, work)
    )


def standing(rules: RuleBase, setup: Setup, work: Situation, case: Case) -> tuple[Caution, ...]:
    """What is to be kept in mind throughout: for job, metal and process; none twice."""
    job, metal = rules.jobs.get(case.job), rules.materials.get(work.material)
    ids = [job.caution if job else "", metal.caution if metal else ""]
    ids += (line.caution for line in holding(setup.cautions, work))
    return cautions(rules, dict.fromkeys(ids))
