"""Reads rule folders file by file and joins what they hold: the first of the two passes.

Each file is read alone against its declared shape. Then items are indexed by id, folder by
folder, and handed to the checks over the whole base.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from weldwhy import soundness, yamltree
from weldwhy.build import Builder, Scale
from weldwhy.folders import TOP_FILES, files, misplaced
from weldwhy.forms import BASES, GRADES, NOISES
from weldwhy.problems import Problem, did_you_mean
from weldwhy.schema import FILES, FileKind
from weldwhy.shape import Reader
from weldwhy.survey import Item, Survey


def join(folders: Sequence[Path]) -> Survey:
    """The survey of these folders; see `rulebase.survey`."""
    joiner = _Joiner()
    for number, folder in enumerate(folders):
        joiner.folder(folder, first=number == 0)
    return joiner.finish()


class _Joiner:
    """What was read so far. A later folder's items replace those of the same id."""

    def __init__(self) -> None:
        self.survey = Survey()
        self.scale: Scale | None = None

    def folder(self, folder: Path, first: bool) -> None:
        """Read one folder. The first must be whole; others may hold anything or nothing."""
        if not folder.is_dir():
            words = "there is no such folder; name a folder with rules in it"
            self._say(folder, words, "file-place")
            return
        self.survey.problems += misplaced(folder)
        mine: dict[str, dict[str, Item]] = {}
        for kind, path in files(folder):
            for item in self._file(path, FILES[kind]):
                if kind == "likelihood":
                    self.scale = self._scale(item) or self.scale
                else:
                    self._add(mine.setdefault(kind, {}), item)
        for kind, items in mine.items():
            self.survey.items.setdefault(kind, {}).update(items)
        for name, kind in TOP_FILES.items() if first else ():
            if not (folder / name).is_file():
                self.survey.unread.add(kind)
                words = f"this file is missing; it holds {FILES[kind].about}"
                self._say(folder / name, words, "file-missing")

    def finish(self) -> Survey:
        """The survey with its base and with what is wrong across files.

        Without likelihood words no number is known, so there is no base to look at.
        """
        survey = self.survey
        if self.scale is not None:
            builder = Builder(self.scale)
            survey.base = builder.base(survey.items)
            survey.problems += builder.problems
            survey.problems += soundness.problems(survey)
        survey.problems.sort()
        return survey

    def _file(self, path: Path, file: FileKind) -> list[Item]:
        """The sound items of one file; what is wrong with the others is noted."""
        before = len(self.survey.problems)
        tree = self._tree(path)
        faulty = {(each.line, each.column) for each in self.survey.problems[before:]}
        nodes = None if tree is None else self._nodes(tree, path, file)
        if nodes is None:
            # Who names an item of this file should not be told that it does not exist.
            self.survey.unread.add(file.kind if file.list_key else f"{file.kind} {path.stem}")
            return []
        return [item for node in nodes if (item := self._item(node, path, file, faulty))]

    def _tree(self, path: Path) -> yamltree.Node | None:
        try:
            with path.open("rb") as stream:
                data = stream.read(yamltree.MAX_BYTES + 1)
        except OSError as fault:
            self._say(path, f"this file cannot be read: {fault.strerror}", "file-unreadable")
            return None
        tree, problems = yamltree.read(data, str(path))
        self.survey.problems += problems
        return tree

    def _nodes(self, tree: yamltree.Node, path: Path, file: FileKind) -> list[yamltree.Node] | None:
        """The parts of the list that is the whole of such a file; else the file itself."""
        key = file.list_key
        if not key:
            return [tree]
        reader = Reader(str(path))
        listed = tree.items.get(key) if isinstance(tree, yamltree.Mapping) else None
        if isinstance(tree, yamltree.Mapping):
            for other in tree.keys.values():
                if other.value != key:
                    words = f'unknown key "{other.value}"{did_you_mean(other.value, [key])}'
                    reader.say(other, words, "unknown-key")
        if not isinstance(listed, yamltree.List) and not reader.problems:
            words = f'this file must hold "{key}:" and a list under it, each part after "- "'
            reader.say(tree if listed is None else listed, words, "wrong-kind")
        self.survey.problems += reader.problems
        return listed.items if isinstance(listed, yamltree.List) else None

    def _item(
        self, node: yamltree.Node, path: Path, file: FileKind, faulty: set[tuple[int, int]]
    ) -> Item | None:
        """The item at `node` if it is sound. A place known as `faulty` is not reported again."""
        reader = Reader(str(path))
        data = file.shape.read(node, reader)
        self.survey.problems += [
            each for each in reader.problems if (each.line, each.column) not in faulty
        ]
        name = data.get(file.kind) or path.stem
        if reader.problems or not isinstance(node, yamltree.Mapping):
            self.survey.unread.add(f"{file.kind} {name}")
            return None
        return Item(file.kind, name, str(path), node, data, tuple(reader.references))

    def _add(self, known: dict[str, Item], item: Item) -> None:
        first = known.setdefault(item.id, item)
        if first is not item:
            at = yamltree.place(first.node, item.kind)
            words = f'{item.kind} "{item.id}" is here twice; the first is at {first.file}:{at.line}'
            self.survey.problems.append(item.problem((), words, "duplicate-id"))

    def _scale(self, item: Item) -> Scale | None:
        problems = []
        for key, words in (("grades", GRADES), ("base", BASES), ("noise", NOISES)):
            known = item.data[key]
            problems += [
                item.problem((key,), f'no number for "{word}"', "missing-key")
                for word in words
                if word not in known
            ]
            numbers = [known[word] for word in words if word in known]
            if numbers != sorted(set(numbers)):
                said = f"the numbers must rise in this order: {', '.join(words)}"
                problems.append(item.problem((key,), said, "bad-number"))
        self.survey.problems += problems
        return None if problems else Scale(**item.data)

    def _say(self, path: Path, words: str, check_id: str) -> None:
        self.survey.problems.append(Problem(str(path), 0, 0, "error", words, check_id))
