"""The parts of a case in words: ranking, step, cause, reasons, remedies, settings, sources.

They know an interview, and nothing of files, screens or the clock. Lines come unwrapped, in the
interview's own units, without anything that could drive a terminal. `casereport.py` makes a whole
case of them; the same result as data is `diagnosis.py`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from weldwhy.lines import safe
from weldwhy.told import in_short

if TYPE_CHECKING:
    from weldwhy.advice import Advice, SettingAdvice
    from weldwhy.interview import Interview, Ranked
    from weldwhy.model import Cause, Caution, RuleBase
    from weldwhy.reasons import Reason
    from weldwhy.steps import Step
    from weldwhy.understanding.heard import Understood

TOP = 3
"""How many causes stand in a result: what fits beside a question on the smallest screen."""


class Once:
    """Cautions as lines, each the first time only."""

    def __init__(self) -> None:
        self._ids: set[str] = set()

    def lines(self, cautions: Iterable[Caution]) -> list[str]:
        """The lines of those that were not said before."""
        new = [caution for caution in cautions if caution.id not in self._ids]
        self._ids |= {caution.id for caution in new}
        return caution_lines(new)


def ranking_title(interview: Interview) -> str:
    """What stands over the ranking: while a symptom is only hinted at, that it is supposed."""
    supposed = interview.supposed
    name = interview.rules.symptoms[supposed].name if supposed in interview.rules.symptoms else ""
    return f"Most likely, if it is {name}" if name else "Most likely"


def ranking_lines(interview: Interview, top: int = TOP) -> list[str]:
    """The likeliest causes in words and numbers, whose share it is, and the minutes to go."""
    lines = [ranked_line(interview, i, r) for i, r in enumerate(interview.ranked[:top], 1)]
    lines.append(f"Something not in this list: {percent(interview.unlisted)}")
    shares = sorted(interview.shares.items(), key=lambda item: -item[1])
    told = ", ".join(f"{share} {percent(part)}" for share, part in shares if part >= 0.005)
    lines.append(f"Where it lies: {told}")
    if interview.expected_minutes:
        lines.append(f"To a sound bead: {minutes(interview.expected_minutes)}")
    if interview.notice:
        lines.append(f"Please note: {interview.notice}")
    return safe(lines)


def ranked_line(interview: Interview, number: int, ranked: Ranked) -> str:
    """One cause with its likelihood: "1. gas flow too low: likely, 61 %"."""
    word = interview.likelihood_word(ranked.probability)
    return f"{number}. {ranked.cause.name}: {word}, {percent(ranked.probability)}"


def step_lines(step: Step) -> list[str]:
    """One step: cautions before it, then what to do, why now, and how long it takes."""
    lines = caution_lines(before(step))
    lines.append(f"STOP: {step.text}" if step.kind == "stop" else step.text)
    if step.call:
        lines.append(f"Call: {ended(step.call)}")
    if step.reason:
        lines.append(f"Why now: {ended(step.reason)}")
    if step.minutes and step.kind != "stop":
        lines.append(f"Takes {minutes(step.minutes)}.")
    return safe(lines)


def before(step: Step) -> tuple[Caution, ...]:
    """The cautions that must come before the step is read.

    A job that must not be mended by guide is its own caution: it is said once.
    """
    return tuple(caution for caution in step.cautions if caution.text != step.text)


def cause_lines(interview: Interview, cause_id: str) -> list[str]:
    """A cause opened: what it is, why it is thought, what would change that, what to do."""
    cause = interview.rules.causes[cause_id]
    lines = _section(f"About {cause.name}", [cause.what])
    lines += _section("Why", [reason_line(reason) for reason in interview.why(cause_id)])
    open_checks = {check.id for check in interview.open_checks}
    confirming = (c.ask for c in interview.confirm(cause_id) if c.id in open_checks)
    lines += _section("To confirm it", _items(confirming))
    lines += _section("What would change this", _items(interview.mind_changers[:TOP]))
    lines += _section("What to do", remedy_lines(interview, cause_id))
    lines += _section("To keep it from coming back", _items(filter(None, [cause.prevent])))
    lines += _section("Source", source_lines(interview.rules, cause))
    return safe(lines)


def reason_line(reason: Reason) -> str:
    """The weight of one thing told: "for, clearly (+7): What does the gauge read? Below it"."""
    side = "for" if reason.decibans > 0 else "against"
    size = abs(reason.decibans)
    how = "strongly" if size >= 10 else "clearly" if size >= 5 else "a little"
    return f"{side}, {how} ({reason.decibans:+.0f}): {reason.told}"


def remedy_lines(interview: Interview, cause_id: str) -> list[str]:
    """The remedies in order, cautions before each and settings after it."""
    lines: list[str] = []
    said = Once()
    for number, advice in enumerate(interview.remedies(cause_id), 1):
        lines += said.lines(advice.cautions)
        lines += advice_lines(advice, number)
    return lines


def advice_lines(advice: Advice, number: int) -> list[str]:
    """One remedy without its cautions: the action, then yours, try and allowed range."""
    remedy = advice.remedy
    if remedy.stop:
        lines = [f"{number}. STOP: {remedy.do}"]
    else:
        lines = [f"{number}. {remedy.do} ({minutes(remedy.minutes)}, then a test bead)"]
    if remedy.call:
        lines.append(f"   Call: {ended(remedy.call)}")
    return lines + [f"   {setting_line(setting)}" for setting in advice.settings if _told(setting)]


def setting_line(setting: SettingAdvice) -> str:
    """One setting: "volts: yours 22 V, try 18.5 V, allowed 17.5 V to 19.5 V"."""
    parts = [f"yours {setting.yours}"] if setting.yours else []
    if setting.best:
        better = "leave it" if setting.best == setting.yours else f"try {setting.best}"
        parts += [better, f"allowed {setting.allowed}"]
    note = f" ({setting.note})" if setting.note else ""
    return f"{setting.name}: {', '.join(parts)}{note}"


def _told(setting: SettingAdvice) -> bool:
    """Whether there is anything to say of this setting."""
    return bool(setting.yours or setting.best)


def remedy_settings(interview: Interview, step: Step) -> list[str]:
    """The settings that go with a step's remedy: yours, try, allowed."""
    advised = interview.remedies(step.cause) if step.cause else ()
    found = [each for each in advised if each.remedy.id == step.id]
    return safe(f"  {setting_line(s)}" for a in found for s in a.settings if _told(s))


def caution_lines(cautions: Iterable[Caution]) -> list[str]:
    """Cautions as lines; each says in a word what it is, since colour may be missing."""
    lines = []
    for caution in cautions:
        lines.append(f"{'STOP' if caution.stop else 'CAUTION'}: {caution.text}")
        if caution.call:
            lines.append(f"Call: {ended(caution.call)}")
    return safe(lines)


def source_lines(rules: RuleBase, cause: Cause) -> list[str]:
    """Where the cause and its remedies come from, each source once."""
    cited = dict.fromkeys([cause.source, *(remedy.source for remedy in cause.remedies)])
    return _items(source_text(rules, source) for source in cited)


def source_text(rules: RuleBase, cited: str) -> str:
    """One citation in words: title, place in it, and whether it is from memory."""
    source_id, _, place = cited.partition(",")
    known = rules.sources.get(source_id.strip().replace(" ", "-"))
    if known is None:
        return cited
    basis = " (from memory)" if known.basis == "memory" else ""
    return f"{known.title}{',' + place if place else ''}{basis}"


def not_understood_lines(said: Iterable[str]) -> list[str]:
    """Free sentences that had no effect, handed back so that nobody counts on them."""
    return safe(f'Not understood, so not counted: "{text}"' for text in said)


def understood_lines(rules: RuleBase, understood: Sequence[Understood]) -> list[str]:
    """What free sentences were taken to say, "+" for sure and "?" for doubtful; a blank line after.

    Empty if nothing was understood.
    """
    if not understood:
        return []
    lines = (
        f"  {'+' if each.sure else '?'} {in_short(rules, each.entry)}"
        + (f' ("{each.text}")' if each.text else "")
        for each in understood
    )
    return ["Understood from your words (+ sure, ? doubtful):", *safe(lines), ""]


def percent(probability: float) -> str:
    """A probability as shown; never 0 or 100, since nothing is ever certain here."""
    if probability < 0.01:
        return "under 1 %"
    if probability > 0.99:
        return "over 99 %"
    return f"{100 * probability:.0f} %"


def minutes(amount: float) -> str:
    """Minutes as a person says them."""
    if amount < 0.25:
        return "a few seconds"
    if amount < 0.75:
        return "half a minute"
    whole = round(amount)
    return "about 1 minute" if whole == 1 else f"about {whole} minutes"


def ended(text: str) -> str:
    """The text with a full stop, unless it ends like a sentence already."""
    return text if text.endswith((".", "?", "!")) else f"{text}."


def _items(texts: Iterable[str]) -> list[str]:
    return [f"- {text}" for text in texts]


def _section(title: str, lines: Sequence[str]) -> list[str]:
    """A titled part; an empty one is left out."""
    return ["", f"{title}:", *(f"  {line}" for line in lines)] if lines else []
