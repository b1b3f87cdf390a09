"""The person's machine: what it can do and reaches, one numbered line each, kept at once."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.bench import Bench
from weldwhy.machinefile import MachineError, begun_from, changed
from weldwhy.tui.cards.card import Act, Card, Choice, with_notes
from weldwhy.tui.cards.form import Field
from weldwhy.tui.cards.machine import CAN, START, Line, lines, start_card, whose
from weldwhy.tui.screens.cardscreen import PickScreen
from weldwhy.tui.screens.form import FormScreen
from weldwhy.tui.screens.typed import TypedLine

ROOM = 200
"""Letters that may be added to a line: a dial can have many marks."""


class MachineScreen(FormScreen[None]):
    """Shows the machine in use; every line that is changed is on the disk at once."""

    where = "My machine"

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._notes: list[str] = []

    def fields(self) -> Sequence[Line]:
        return lines(self._bench.rules, self._bench.machine)

    def said(self) -> Sequence[tuple[str, str]]:
        if self._editing is not None:
            return [(_about(self.fields(), self._editing.id), "strong")]
        ask = "What can it do? Its plate and its manual say so. Leave what you do not know."
        return [(ask, "strong"), whose(self._bench.in_use, str(self._bench.store.machine_file))]

    def others(self) -> tuple[Choice, ...]:
        return (Choice("Back to the weld", "done", key="0"),)

    def card(self) -> Card:
        self._notes += self._bench.take_notices()
        return with_notes(super().card(), self._notes)

    def begin(self, field: Field) -> None:
        super().begin(field)
        self._line = TypedLine(field.value, len(field.value) + ROOM)

    def chosen(self, choice: Choice) -> None:
        act = choice.act if isinstance(choice.act, str) else ""
        self._notes, self._fault = [], ""
        if act == START:
            card = start_card(self._bench.rules, self._bench.in_use.own, self.where)
            self.app.push_screen(PickScreen(card), self._start)
        elif act.startswith(CAN):
            field = next(field for field in self.fields() if field.id == act)
            self._take(field, "no" if field.value == "yes" else "yes")
            self.redraw()
        else:
            super().chosen(choice)

    def _start(self, act: Act | None) -> None:
        machine = self._bench.rules.machines.get(act) if isinstance(act, str) else None
        if machine is not None:
            self._bench.change_machine(begun_from(machine), anew=True)
        self.redraw()

    def keep(self, field: Field, text: str) -> None:
        rules, machine = self._bench.rules, self._bench.machine
        if field.id.startswith(CAN):
            able = {*machine.processes, field.id.removeprefix(CAN)}
            if text == "no":
                able.remove(field.id.removeprefix(CAN))
            if not able:
                raise MachineError("A machine can do at least one of these.")
            text = ", ".join(each for each in rules.processes if each in able)
            self._bench.change_machine(changed(rules, machine, "processes", text))
        elif " ".join(text.split()) != field.value:
            self._bench.change_machine(changed(rules, machine, field.id, text))

    def done(self) -> None:
        self.app.call_later(self.program.action_diagnose)

    async def action_back(self) -> None:  # type: ignore[override]  # the framework awaits either
        await self.program.action_diagnose()


def _about(fields: Sequence[Line], field_id: str) -> str:
    return next(field.about for field in fields if field.id == field_id)
