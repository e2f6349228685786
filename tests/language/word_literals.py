"""Finds the word literals of the compiler: strings in its code that are asked of a cook's text.

Words are data: they stand in `grammar/`, by language. A string constant counts as a word literal if it holds two
letters in a row and

1. is compared: an operand of `==`, `!=`, `in`, `not in`, or the pattern of a `case`;
2. is an element of a collection of strings (the key of a dict) that is compared, looked up in, looped over, or kept as
   a constant of a module or class;
3. is what `startswith`, `split`, `replace` and their like look for;
4. stands in the pattern of a regular expression, outside escapes, ranges, group names and flags.

A name of the code's own is no word. What is one follows from the code, never from a list: a string that is compared
to something whose annotation names it (`station: Station`, where `Station = Literal["oven", …]`; a constant,
argument, function or field is known by its name), a choice of a command's option, the name of a rule, the id of a
unit beside a `unit`, the fields of one record, a production of the grammar beside the first of a `Node`, the kind
of a token. So a name of the code's own is given a `Literal` type, and a word goes to `grammar/`.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from tests.language.own_names import Names, last, members_of, own_names

ROOT = Path(__file__).parents[2]
CODE = ROOT / "compiler" / "tamis"

_LETTER = r"[^\W\d_¼-¾⅐-⅞]"
_TWO_LETTERS = re.compile(_LETTER + "{2}")
_SYNTAX = re.compile(r"[/\\_<>={}@#$&|*+~^\n]|\.\w")
"""Signs that no word holds: tags, paths, endings of files, names of the machine's."""

_TOKEN = re.compile(r"[A-Z_]+")
"""The kind of a token: no cook writes in capitals only."""

_ASKING = frozenset(
    ("startswith", "endswith", "removeprefix", "removesuffix", "partition", "rpartition", "split", "rsplit", "find",
     "rfind", "index", "rindex", "count", "replace", "strip", "lstrip", "rstrip")
)  # fmt: skip
_REGEX = frozenset(("compile", "match", "fullmatch", "search", "findall", "finditer", "sub", "subn", "split"))
_COLLECTIONS = frozenset(["frozenset", "set", "tuple", "list", "dict", "dict.fromkeys", "OrderedDict"])
_ESCAPES = re.compile(r"\\N\{[^}]*\}|\\x[0-9a-fA-F]{2}|\\u[0-9a-fA-F]{4}|\\.")
_GROUPS = re.compile(r"\(\?P<\w+>|\(\?P=\w+\)|\(\?\(\w+\)|\(\?[aiLmsux-]+[:)]")
_CLASS = re.compile(r"\[\^?\]?[^\]]*\]")
_GAP = "\x00"


class Literal(NamedTuple):
    """A word literal and its place."""

    file: str
    line: int
    word: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.word}"


def is_word(text: str) -> bool:
    """Whether a string could be asked of a cook's text."""
    return bool(_TWO_LETTERS.search(text)) and not _SYNTAX.search(text) and not _TOKEN.fullmatch(text)


def trees(files: Iterable[Path] | None = None) -> dict[str, ast.Module]:
    """The syntax trees of the compiler's files, by their path below `compiler/tamis`."""
    paths = sorted(CODE.rglob("*.py")) if files is None else files
    return {path.relative_to(CODE).as_posix(): ast.parse(path.read_text("utf-8")) for path in paths}


def word_literals(modules: dict[str, ast.Module]) -> list[Literal]:
    """All of them, in the order of the files."""
    names = own_names(modules)
    constants = {file: _constants(tree) for file, tree in modules.items()}
    home = {id(node): file for file, tree in modules.items() for node in ast.walk(tree)}
    found: list[Literal] = []
    seen: set[tuple[int, str]] = set()
    for file, tree in modules.items():
        reader = _Reader(names, _reachable(file, tree, constants), _reads_trees(tree))
        reader.visit(tree)
        for node, word in reader.found:
            # A constant that is asked in two places, or in another module, is one literal.
            if (id(node), word) not in seen:
                seen.add((id(node), word))
                found.append(Literal(home[id(node)], node.lineno, word))
    return sorted(found)


def _constants(tree: ast.Module) -> dict[str, ast.expr]:
    """What the names of a module and of its classes stand for."""
    found = {}
    for body in (tree.body, *(node.body for node in tree.body if isinstance(node, ast.ClassDef))):
        for node in body:
            if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
                found[node.targets[0].id] = node.value
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.value:
                found[node.target.id] = node.value
    return found


def _reachable(file: str, tree: ast.Module, constants: dict[str, dict[str, ast.expr]]) -> dict[str, ast.expr]:
    """The constants of a module and those that it imports."""
    found: dict[str, ast.expr] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("tamis."):
            path = node.module.removeprefix("tamis.").replace(".", "/")  # type: ignore[union-attr]
            there = constants.get(f"{path}.py") or {}
            found |= {name.asname or name.name: there[name.name] for name in node.names if name.name in there}
    return found | constants[file]


class _Reader(ast.NodeVisitor):
    """Collects the word literals of one module."""

    def __init__(self, names: Names, constants: dict[str, ast.expr], reads_trees: bool) -> None:
        self.names = names
        self.productions = names.productions if reads_trees else frozenset[str]()
        self.constants = constants
        self.found: list[tuple[ast.expr, str]] = []
        self.local: dict[str, frozenset[str]] = {}
        self.judged: set[int] = set()
        self.rules = frozenset(rule for rule in names.beside["rule"] if "-" in rule)

    # What is asked

    def visit_Compare(self, node: ast.Compare) -> None:
        operands = [node.left, *node.comparators]
        for at, operator in enumerate(node.ops):
            if isinstance(operator, ast.Eq | ast.NotEq | ast.In | ast.NotIn):
                left, right = operands[at], operands[at + 1]
                self._ask(left, self._may_hold(right))
                self._ask(right, self._may_hold(left))
        self.generic_visit(node)

    def visit_Match(self, node: ast.Match) -> None:
        own = self._may_hold(node.subject)
        for case in node.cases:
            for pattern in ast.walk(case.pattern):
                if isinstance(pattern, ast.MatchValue):
                    self._ask(pattern.value, own)
        self.generic_visit(node)

    def visit_Call(self, node: ast.Call) -> None:
        name = last(node.func)
        if isinstance(node.func, ast.Attribute):
            receiver = node.func.value
            if isinstance(receiver, ast.Name) and receiver.id == "re" and name in _REGEX and node.args:
                self._pattern(node.args[0])
            elif name in _ASKING and node.args:
                self._ask(node.args[0], self._may_hold(receiver))
            elif name == "get":
                self._ask_collection(receiver, frozenset())
        elif name == "pattern" and node.args:
            self._pattern(node.args[0])
        if name in ("frozenset", "set") and node.args and id(node) not in self.judged:
            self._ask(node.args[0], frozenset())
        self.generic_visit(node)

    def visit_Subscript(self, node: ast.Subscript) -> None:
        if isinstance(node.value, ast.Dict):
            self._ask_collection(node.value, frozenset())
        self.generic_visit(node)

    def visit_For(self, node: ast.For) -> None:
        self._loop(node.target, node.iter, node.body)
        self.generic_visit(node)

    def visit_ListComp(self, node: ast.ListComp | ast.SetComp | ast.GeneratorExp | ast.DictComp) -> None:
        for loop in node.generators:
            self._loop(loop.target, loop.iter, [node])
        self.generic_visit(node)

    visit_SetComp = visit_GeneratorExp = visit_DictComp = visit_ListComp

    def _loop(self, target: ast.expr, over: ast.expr, body: Iterable[ast.AST]) -> None:
        """What is looped over is asked if its elements are."""
        variables = {node.id for node in ast.walk(target) if isinstance(node, ast.Name)}
        if isinstance(target, ast.Name):
            self.local[target.id] = self._may_hold(over)
        if any(_asks(node, variables) for part in body for node in ast.walk(part)):
            self._ask(over, self._may_hold(target))

    # What is kept

    def visit_Module(self, node: ast.Module) -> None:
        self._kept(node.body)
        self.generic_visit(node)

    def visit_ClassDef(self, node: ast.ClassDef) -> None:
        self._kept(node.body)
        self.generic_visit(node)

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        for default in (*node.args.defaults, *node.args.kw_defaults):
            if default is not None:
                self._ask_collection(default, frozenset())
        before, self.local = self.local, dict(self.local)
        self.generic_visit(node)
        self.local = before

    def visit_Assign(self, node: ast.Assign) -> None:
        """A variable holds what it is made from: `kind = event.kind`."""
        if isinstance(node.targets[0], ast.Name) and not isinstance(node.value, ast.Constant):
            own = self._may_hold(node.value)
            if own:
                self.local[node.targets[0].id] = own
        self.generic_visit(node)

    def _kept(self, body: list[ast.stmt]) -> None:
        for node in body:
            target = node.targets[0] if isinstance(node, ast.Assign) else getattr(node, "target", None)
            name = last(target)
            if isinstance(node, ast.Assign | ast.AnnAssign) and node.value and not name.startswith("__"):
                own = (
                    members_of(node.annotation, self.names.aliases) if isinstance(node, ast.AnnAssign) else frozenset()
                )
                # A tuple or a list may be for printing: it counts where it is asked.
                if not isinstance(node.value, ast.Tuple | ast.List):
                    self._ask_collection(node.value, own)
                for inner in node.value.values if isinstance(node.value, ast.Dict) else ():
                    self._ask_collection(inner, own)

    # What counts

    def _may_hold(self, node: ast.expr) -> frozenset[str]:
        """The names of the code's own that an expression may hold."""
        if isinstance(node, ast.BoolOp):
            return frozenset().union(*map(self._may_hold, node.values))
        if isinstance(node, ast.IfExp):
            return self._may_hold(node.body) | self._may_hold(node.orelse)
        if isinstance(node, ast.BinOp):
            return self._may_hold(node.left) | self._may_hold(node.right)
        if isinstance(node, ast.Set | ast.Tuple | ast.List):
            return frozenset().union(*map(self._may_hold, node.elts))
        if isinstance(node, ast.ListComp | ast.SetComp):
            return self._may_hold(node.elt)
        if isinstance(node, ast.Subscript) and isinstance(node.slice, ast.Constant) and node.slice.value == 0:
            return self.productions | self._may_hold(node.value)
        name = last(node)
        own = self.local.get(name) or self.names.of.get(name, frozenset())
        return own.union(*(names for part, names in self.names.beside.items() if part in name.lower()))

    def _ask(self, node: ast.expr, own: frozenset[str]) -> None:
        if isinstance(node, ast.Name):
            # A constant whose own annotation says what it holds is a name too.
            own = own | self.names.of.get(node.id, frozenset())
            node = self.constants.get(node.id, node)
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            if is_word(node.value) and node.value not in own | self.names.terminals | self.rules:
                self.found.append((node, node.value))
        elif isinstance(node, ast.IfExp):
            self._ask(node.body, own)
            self._ask(node.orelse, own)
        else:
            self._ask_collection(node, own)

    def _ask_collection(self, node: ast.expr, own: frozenset[str]) -> None:
        if isinstance(node, ast.BinOp):
            self._ask_collection(node.left, own)
            self._ask_collection(node.right, own)
            return
        if isinstance(node, ast.Call) and last(node.func) in _COLLECTIONS and node.args:
            self.judged.add(id(node))
            node = node.args[0]
        elements = node.keys if isinstance(node, ast.Dict) else getattr(node, "elts", ())
        constants = [element for element in elements if isinstance(element, ast.Constant)]
        if not constants or len(constants) < len(elements) or not all(isinstance(c.value, str) for c in constants):
            for element in elements:
                if isinstance(element, ast.Tuple | ast.List | ast.Set):
                    self._ask_collection(element, own)
            return
        said = {constant.value for constant in constants}
        own = own | self.names.terminals
        if not any(said <= names for names in self.names.sets):
            self.found += [(c, c.value) for c in constants if is_word(c.value) and c.value not in own]

    def _pattern(self, node: ast.expr) -> None:
        """The words in a pattern, and in the constants that it is put together from."""
        if isinstance(node, ast.Name) and node.id in self.constants:
            if not self.names.of.get(node.id):
                self._pattern(self.constants[node.id])
        elif isinstance(node, ast.JoinedStr):
            for part in node.values:
                self._pattern(part.value if isinstance(part, ast.FormattedValue) else part)
        elif isinstance(node, ast.BinOp):
            self._pattern(node.left)
            self._pattern(node.right)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            self.found += [(node, word) for word in words_of_pattern(node.value)]


def _reads_trees(tree: ast.Module) -> bool:
    """Whether a module knows the nodes of a clause's tree: an annotation names them."""
    return any(isinstance(node, ast.Name) and node.id == "Node" for node in ast.walk(tree))


def _asks(node: ast.AST, variables: set[str]) -> bool:
    """Whether something is compared to a variable, or looked for with it."""
    if isinstance(node, ast.Compare):
        asked: list[ast.expr] = [node.left, *node.comparators]
    elif isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in _ASKING | _REGEX:
        asked = node.args
    else:
        return False
    return any(isinstance(inner, ast.Name) and inner.id in variables for a in asked for inner in ast.walk(a))


def words_of_pattern(pattern: str) -> list[str]:
    """The words that a regular expression looks for. Three letters between square brackets are one too."""
    plain = _CLASS.sub(_letters_of_class, _GROUPS.sub(_GAP, _ESCAPES.sub(_GAP, pattern)))
    return re.findall(_LETTER + "{2,}", plain)


def _letters_of_class(found: re.Match[str]) -> str:
    letters = "".join(re.findall(_LETTER, re.sub(r"\w-\w", "", found[0])))
    return f"{_GAP}{letters}{_GAP}" if len(set(letters.lower())) > 2 else _GAP


if __name__ == "__main__":
    import sys

    for literal in word_literals(trees()):
        if literal.file.startswith(tuple(sys.argv[1:]) or ""):
            print(literal)
