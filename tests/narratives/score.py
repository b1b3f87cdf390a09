"""How well stories in people's own words are understood, and what that is worth to the guide.

    PYTHONPATH=src:. python tests/narratives/score.py FILE [--quick] [--show]

For each kind of evidence: recall (of what a fair reader takes from the story, how much was taken)
and precision (of what was taken, how much a fair reader takes too). What stands under `also` in a
story may be taken or not. Doubtful entries are counted apart. Then, how often the true cause is
among the first 1, 3, 5: from the text alone, and after the guide's own questions, each against
the same with process and symptom told by hand. `--quick` leaves the questions out; `--show`
prints each miss and each slip.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml

from weldwhy import gases
from weldwhy.case import (
    NONE_OF_THESE,
    Answered,
    Case,
    Entry,
    Hinted,
    Measured,
    Reported,
    Situated,
    Supposed,
    Suspected,
    Tried,
    entry_for,
)
from weldwhy.engine import rows
from weldwhy.interview import Interview
from weldwhy.model import RuleBase
from weldwhy.rulebase import load
from weldwhy.understanding.heard import Understood
from weldwhy.understanding.hearing import understand
from weldwhy.units import UnitError, parse

KINDS = ("work", "symptom", "answer", "setting", "tried", "guess")
MOST = 9
"""Answers that the guide may ask for before a remedy is offered."""

Item = tuple[str, str, str]


@dataclass
class Count:
    """Items of one kind: wanted, found among them, taken for sure, and right among those."""

    wanted: int = 0
    found: int = 0
    taken: int = 0
    right: int = 0
    doubtful: int = 0
    doubtful_right: int = 0
    found_with_doubt: int = 0

    @property
    def recall(self) -> float:
        """Share of what was wanted that was taken for sure."""
        return self.found / self.wanted if self.wanted else 1.0

    @property
    def recall_with_doubt(self) -> float:
        """The same with doubtful entries."""
        return self.found_with_doubt / self.wanted if self.wanted else 1.0

    @property
    def precision(self) -> float:
        """Share of what was taken for sure that is right."""
        return self.right / self.taken if self.taken else 1.0


@dataclass
class Score:
    """The counts of a file of stories by kind, and ranks of the true cause by way of asking."""

    counts: dict[str, Count] = field(default_factory=lambda: {kind: Count() for kind in KINDS})
    slips: list[str] = field(default_factory=list)

    @property
    def whole(self) -> Count:
        """All kinds together."""
        total = Count()
        for count in self.counts.values():
            for name, value in vars(count).items():
                setattr(total, name, getattr(total, name) + value)
        return total


def stories(path: Path) -> list[dict[str, Any]]:
    """The stories of a file."""
    found: list[dict[str, Any]] = yaml.safe_load(path.read_text(encoding="utf-8"))
    return found


def wanted(rules: RuleBase, story: Mapping[str, Any]) -> set[Item]:
    """What a fair reader takes from a story."""
    items = {("work", name, value(rules, name, v)) for name, v in story.get("work", {}).items()}
    items |= {("symptom", name, "") for name in story.get("symptoms", [])}
    items |= {("answer", check, answer) for check, answer in story.get("answers", {}).items()}
    settings = story.get("settings", {})
    items |= {("setting", name, value(rules, name, v)) for name, v in settings.items()}
    items |= {("tried", cause, result) for cause, result in story.get("tried", {}).items()}
    if "guess" in story:
        items.add(("guess", story["guess"], ""))
    return items


def value(rules: RuleBase, name: str, words: object) -> str:
    """A value in one form, so that "3mm" and "3 mm" are the same."""
    text = str(words)
    if name == "gas":
        gas = gases.read(rules, text)
        return gas.id if gas else text
    setting = rules.settings.get(name)
    kind = "length" if name == "thickness" else setting.quantity if setting else ""
    if not kind or kind == "text":
        return text
    try:
        return f"{parse(text, kind).value:.3g}"
    except UnitError:
        return text


def item(rules: RuleBase, entry: Entry) -> Item:
    """An entry as an item of a story."""
    match entry:
        case Situated(field=name, value=told):
            return "work", name, value(rules, name, told)
        case Reported(symptom) | Hinted(symptom):
            return "symptom", symptom, ""
        case Answered(check=check, answer=answer) | Supposed(check=check, answer=answer):
            return "answer", check, answer
        case Measured(setting=setting, value=told):
            return "setting", setting, value(rules, setting, told)
        case Tried(cause=cause, result=result):
            return "tried", cause, result
        case Suspected(cause=cause):
            return "guess", cause, ""
    raise AssertionError(entry)


def score(rules: RuleBase, told: list[dict[str, Any]]) -> Score:
    """How well the stories are understood."""
    result = Score()
    for story in told:
        heard = understand(rules, story["text"])
        want = wanted(rules, story)
        may = {("answer", check, answer) for check, answer in story.get("also", {}).items()}
        sure = {item(rules, u.entry): u for u in heard.understood if u.sure}
        doubt = {item(rules, u.entry): u for u in heard.understood if not u.sure}
        for kind in KINDS:
            count = result.counts[kind]
            _count(count, *(_of(kind, each) for each in (want, may, set(sure), set(doubt))))
        missed = sorted(i for i in want if i not in sure)
        wrong = sorted(i for i in sure if i not in want and i not in may)
        if missed or wrong:
            result.slips.append("\n".join(_slip(story, missed, wrong, sure, set(doubt))))
    return result


def _of(kind: str, items: set[Item]) -> set[Item]:
    return {each for each in items if each[0] == kind}


def _count(
    count: Count, want: set[Item], may: set[Item], sure: set[Item], doubt: set[Item]
) -> None:
    judged = sure - may
    count.wanted += len(want)
    count.found += len(want & sure)
    count.taken += len(judged)
    count.right += len(judged & want)
    count.doubtful += len(doubt - may)
    count.doubtful_right += len(doubt & want)
    count.found_with_doubt += len(want & (sure | doubt))


def _slip(
    story: Mapping[str, Any], missed: list[Item], wrong: list[Item],
    sure: Mapping[Item, Understood], doubt: set[Item],
) -> Iterator[str]:  # fmt: skip
    yield story["text"]
    for each in missed:
        yield f"    missed{' (doubtful)' if each in doubt else ''}: {' '.join(each)}"
    for each in wrong:
        yield f"    wrong: {' '.join(each)}  <- {sure[each].text} ({sure[each].confidence})"


# what it is worth to the guide


def by_hand(story: Mapping[str, Any]) -> Case:
    """The case of somebody who tells process and symptoms from the lists, and nothing else."""
    process = story.get("work", {}).get("process", "")
    return Case(
        (Situated("process", process), *(Reported(each) for each in story.get("symptoms", [])))
    )


def struck_out(case: Case, story: Mapping[str, Any]) -> Case:
    """The case of somebody who reads what was understood and strikes out the wrong symptoms."""
    meant = story.get("symptoms", [])
    symptoms = (Reported, Hinted)
    kept = (e for e in case.entries if not isinstance(e, symptoms) or e.symptom in meant)
    return Case(tuple(kept))


def rank(rules: RuleBase, case: Case, story: Mapping[str, Any]) -> int:
    """The place of the true cause (of two: of the better placed), from 1; 999 if not in play."""
    true = {story["cause"], story.get("second", story["cause"])}
    ranked = Interview(rules, case).ranked
    return next((n for n, each in enumerate(ranked, 1) if each.cause.id in true), 999)


def asked(rules: RuleBase, case: Case, story: Mapping[str, Any]) -> tuple[Case, int]:
    """The case after the guide's own questions, answered from the truth, and how many they were."""
    count = 0
    while count < MOST:
        step = Interview(rules, case).step
        if step.kind not in ("ask", "check") or not step.answers:
            break
        count += 1
        offered = [each.id for each in step.answers]
        case = case.with_(entry_for(step.id, _answer(rules, step.id, story, offered)))
    return case, count


def _answer(
    rules: RuleBase, check_id: str, story: Mapping[str, Any], offered: Sequence[str]
) -> str:
    symptoms = story.get("symptoms", [])
    if check_id == "symptom":
        return next((each for each in symptoms if each in offered), NONE_OF_THESE)
    if check_id == "group":
        return rules.symptoms[symptoms[0]].group if symptoms else ""
    if check_id not in rules.checks:
        return str(story.get("work", {}).get(check_id, ""))
    told = {**story.get("also", {}), **story.get("answers", {})}
    if check_id in told:
        return str(told[check_id])
    check = rules.checks[check_id]
    causes = [rules.causes[story[name]] for name in ("cause", "second") if name in story]
    row = rows.together(check, [rows.single(check, cause) for cause in causes])
    return check.answers[max(range(len(row)), key=row.__getitem__)].id


def ranks(rules: RuleBase, told: list[dict[str, Any]], ask: bool) -> dict[str, list[int]]:
    """Places of the true cause, by way of asking; and the number of questions."""
    found: dict[str, list[int]] = {}
    for story in told:
        if not story.get("cause"):
            continue  # somebody who says nothing of a weld
        text = Case(understand(rules, story["text"]).entries)
        read = struck_out(text, story)
        ways = (("text", text), ("text read through", read), ("by hand", by_hand(story)))
        for name, case in ways:
            found.setdefault(name, []).append(rank(rules, case, story))
            if ask:
                after, count = asked(rules, case, story)
                found.setdefault(f"{name}, then asked", []).append(rank(rules, after, story))
                found.setdefault(f"questions after {name}", []).append(count)
    return found


def lines(result: Score, places: Mapping[str, list[int]]) -> Iterator[str]:
    """The figures in words."""
    yield "kind      wanted recall (with doubtful) taken precision   doubtful right"
    for kind, count in (*result.counts.items(), ("all", result.whole)):
        yield (
            f"{kind:9} {count.wanted:6} {count.recall:6.2f} {count.recall_with_doubt:15.2f}"
            f" {count.taken:5} {count.precision:9.2f} {count.doubtful:10} {count.doubtful_right:5}"
        )
    for name, held in places.items():
        if name.startswith("questions"):
            yield f"{name}: {sum(held) / len(held):.1f}"
        else:
            first = [sum(place <= top for place in held) / len(held) for top in (1, 3, 5)]
            yield f"true cause, {name}: first 1, 3, 5 in {', '.join(f'{x:.0%}' for x in first)}"


def main(arguments: list[str]) -> None:
    """Print the figures of the file named."""
    rules = load()
    told = stories(Path(arguments[0]))
    result = score(rules, told)
    if "--show" in arguments:
        sys.stdout.write("\n\n".join(result.slips) + "\n")
    places = ranks(rules, told, ask="--quick" not in arguments)
    styles = Counter(story["style"] for story in told)
    by_style = ", ".join(f"{n} {style}" for style, n in styles.items())
    sys.stdout.write(f"{len(told)} stories: {by_style}\n")
    sys.stdout.writelines(f"{line}\n" for line in lines(result, places))


if __name__ == "__main__":
    main(sys.argv[1:])
