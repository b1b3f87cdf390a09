"""Cases replayed through the interview, as a welder would live them."""

from __future__ import annotations

from functools import cache

from weldwhy.case import Answered, Case, Measured, Reported, Situated, Tried
from weldwhy.engine import rows
from weldwhy.interview import Interview, Ranked
from weldwhy.model import Cause, Check, RuleBase, WorkedCase
from weldwhy.rulebase import default_folder, read
from weldwhy.steps import Step


@cache
def shipped_rules() -> RuleBase:
    """The shipped rules with their worked cases."""
    rules, problems = read([default_folder()])
    assert rules is not None, problems
    return rules


def situation(worked: WorkedCase) -> Case:
    """The worked case before its first answer."""
    case = Case().with_(Reported(worked.symptom), Situated("process", worked.process))
    case = case.with_(Situated("material", worked.material))
    if worked.thickness:
        case = case.with_(Situated("thickness", worked.thickness))
    return case.with_(*(Measured(s, value) for s, value in worked.settings.items()))


def told(worked: WorkedCase) -> Case:
    """The worked case with all its answers."""
    return situation(worked).with_(*(Answered(c, a) for c, a in worked.answers.items()))


def answer(cause: Cause, worked: WorkedCase, check: Check) -> str:
    """What this welder would answer: as the case says, else what the cause mostly shows."""
    if check.id in worked.answers:
        return worked.answers[check.id]
    row = rows.single(check, cause)
    return check.answers[row.index(max(row))].id


@cache
def _seen(case: Case, patience: str) -> tuple[Step, Ranked]:
    """The next step and the likeliest cause; many cases begin alike."""
    interview = Interview(shipped_rules(), case, patience)
    return interview.step, interview.ranked[0]


def live(cause: Cause, worked: WorkedCase, patience: str = "normal") -> tuple[int, list[str]]:
    """Answers given until the cause is named or a remedy offered, and the path to the end."""
    rules, case = shipped_rules(), situation(worked)
    given, named, path = 0, -1, []
    for _ in range(60):
        step, leader = _seen(case, patience)
        knows = leader.cause.id == cause.id and leader.probability >= 0.5
        if named < 0 and (knows or step.kind in ("remedy", "stop")):
            named = given
        path.append(f"{step.kind} {step.cause or step.id}")
        if step.kind in ("ask", "check"):
            given += 1
            case = case.with_(Answered(step.id, answer(cause, worked, rules.checks[step.id])))
        elif step.kind == "remedy" and step.cause != cause.id:
            case = case.with_(Tried(step.cause, step.id, "no change"))
        else:
            break
    return named, path
