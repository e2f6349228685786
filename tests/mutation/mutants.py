"""Small faults that could be put into a file of the compiler: each is one change of its text.

A condition is turned round, a comparison takes the bound in or leaves it out, a number is one more, a term of a sum is
dropped or gets the other sign, a returned constant is another one.
"""

from __future__ import annotations

import ast
import hashlib
import random
from collections.abc import Iterator
from itertools import islice
from pathlib import Path
from typing import Literal, NamedTuple

PACKAGES = ("reading", "model", "table", "timeline", "safety")
Kind = Literal["condition", "comparison", "bound", "sum", "returned"]
KINDS: tuple[Kind, ...] = ("condition", "comparison", "bound", "sum", "returned")
_OTHER: dict[type[ast.cmpop], str] = {
    ast.Lt: "<=",
    ast.LtE: "<",
    ast.Gt: ">=",
    ast.GtE: ">",
    ast.Eq: "!=",
    ast.NotEq: "==",
    ast.Is: "is not",
    ast.IsNot: "is",
    ast.In: "not in",
    ast.NotIn: "in",
}


# What has no difference, so that a minus fails at once and tells nothing of the tests.
_NO_NUMBERS = (ast.JoinedStr, ast.List, ast.ListComp, ast.Tuple)


class Mutant(NamedTuple):
    """One fault: in `file` (below the compiler's folder) the text from `start` to `end` becomes `text`.

    `function` is the function that it stands in, as `Class.method`; "" outside of functions.
    """

    file: str
    line: int
    kind: Kind
    start: int
    end: int
    text: str
    old: str
    function: str

    @property
    def key(self) -> str:
        """What it is known by as long as its line stays the same."""
        said = repr((self.file, self.function, self.kind, self.old, self.text, self.line))
        return hashlib.sha256(said.encode()).hexdigest()[:12]

    def __str__(self) -> str:
        return f"{self.file}:{self.line} {self.kind}: {_short(self.old)} → {_short(self.text)}"


def _short(text: str) -> str:
    words = " ".join(text.split())
    return f"`{words[:70]}…`" if len(words) > 70 else f"`{words}`"


def chosen(home: Path, seed: int, many: int) -> list[Mutant]:
    """So many mutants, spread over the packages and the kinds: any first part of the list is spread like the whole."""
    draw = random.Random(seed)
    rows = []
    texts: dict[str, str] = {}
    for package in PACKAGES:
        found: dict[Kind, list[Mutant]] = {kind: [] for kind in KINDS}
        for file in sorted((home / package).glob("*.py")):
            if not file.name.startswith("make_"):
                name = file.relative_to(home).as_posix()
                texts[name] = file.read_text("utf-8")
                for mutant in mutants(texts[name], name):
                    found[mutant.kind].append(mutant)
        for each in found.values():
            draw.shuffle(each)
        rows.append(list(_in_turn(list(found.values()))))
    sound = (mutant for mutant in _in_turn(rows) if _is_python(mutated(texts[mutant.file], mutant)))
    return list(islice(sound, many))


def _in_turn(rows: list[list[Mutant]]) -> Iterator[Mutant]:
    """One of each row, then another of each."""
    for at in range(max(map(len, rows))):
        yield from (row[at] for row in rows if at < len(row))


def mutants(text: str, file: str) -> list[Mutant]:
    """All that can be made of a file, in its order; a few are no Python."""
    finder = _Finder(text, file)
    finder.visit(ast.parse(text))
    return finder.found


def mutated(text: str, mutant: Mutant) -> str:
    """The text of the file with the fault in it."""
    return text[: mutant.start] + mutant.text + text[mutant.end :]


def _is_python(text: str) -> bool:
    try:
        ast.parse(text)
    except SyntaxError:
        return False
    return True


class _Finder(ast.NodeVisitor):
    """Goes through a file; what says nothing at run time (annotations, names of types) is passed over."""

    def __init__(self, text: str, file: str) -> None:
        self.text, self.file = text, file
        self.found: list[Mutant] = []
        self.within: list[str] = []
        self.function = ""
        self.lines = [0]
        for line in text.splitlines(keepends=True):
            self.lines.append(self.lines[-1] + len(line))
        self.bytes = [line.encode() for line in text.splitlines(keepends=True)]

    def place(self, line: int, column: int) -> int:
        """An offset in characters; the columns of `ast` count bytes."""
        return self.lines[line - 1] + len(self.bytes[line - 1][:column].decode()) if line <= len(self.bytes) else -1

    def span(self, node: ast.expr) -> tuple[int, int]:
        assert node.end_lineno is not None and node.end_col_offset is not None
        return self.place(node.lineno, node.col_offset), self.place(node.end_lineno, node.end_col_offset)

    def add(self, kind: Kind, node: ast.expr, text: str, span: tuple[int, int] | None = None) -> None:
        start, end = span or self.span(node)
        old = self.text[start:end]
        if old != text:
            self.found.append(Mutant(self.file, node.lineno, kind, start, end, text, old, self.function))

    def said(self, node: ast.expr) -> str:
        start, end = self.span(node)
        return self.text[start:end]

    # ---- where it stands

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        for each in (*node.args.defaults, *filter(None, node.args.kw_defaults)):
            self.visit(each)
        outer = self.function
        self.function = outer or ".".join((*self.within, node.name))
        for each in node.body:
            self.visit(each)
        self.function = outer

    def visit_ClassDef(self, node: ast.ClassDef) -> None:
        self.within.append(node.name)
        for each in node.body:
            self.visit(each)
        self.within.pop()

    def visit_AnnAssign(self, node: ast.AnnAssign) -> None:
        if node.value is not None:
            self.visit(node.value)

    def visit_Assert(self, node: ast.Assert) -> None:
        pass

    def visit_JoinedStr(self, node: ast.JoinedStr) -> None:
        pass  # the places of what stands inside are not known

    def visit_If(self, node: ast.If) -> None:
        if not (isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING"):
            self.negate(node.test)
            self.generic_visit(node)

    def visit_Subscript(self, node: ast.Subscript) -> None:
        if isinstance(node.value, ast.Name) and node.value.id[:1].isupper():
            return  # an alias of types
        self.generic_visit(node)

    # ---- what is put wrong

    def negate(self, test: ast.expr) -> None:
        if isinstance(test, ast.UnaryOp) and isinstance(test.op, ast.Not):
            self.add("condition", test, self.said(test.operand))
        else:
            self.add("condition", test, f"(not ({self.said(test)}))")

    def visit_While(self, node: ast.While) -> None:
        self.generic_visit(node)  # to turn it round mostly ends in an endless loop

    def visit_IfExp(self, node: ast.IfExp) -> None:
        self.negate(node.test)
        self.generic_visit(node)

    def visit_comprehension(self, node: ast.comprehension) -> None:
        for test in node.ifs:
            self.negate(test)
        self.generic_visit(node)

    def visit_BoolOp(self, node: ast.BoolOp) -> None:
        for value in node.values:
            if not isinstance(value, ast.Compare):
                self.negate(value)
        self.generic_visit(node)

    def visit_Compare(self, node: ast.Compare) -> None:
        left = node.left
        for operator, right in zip(node.ops, node.comparators, strict=True):
            span = self.span(left)[1], self.span(right)[0]
            between = self.text[span[0] : span[1]]
            if not set(between) & set("()#"):
                self.add("comparison", node, f" {_OTHER[type(operator)]} ", span)
            left = right
        self.generic_visit(node)

    def visit_Constant(self, node: ast.Constant) -> None:
        if type(node.value) is int:
            self.add("bound", node, str(node.value + 1))

    def visit_BinOp(self, node: ast.BinOp) -> None:
        if isinstance(node.op, ast.Add | ast.Sub):
            left, right = self.said(node.left), self.said(node.right)
            turned = "-" if isinstance(node.op, ast.Add) else "+"
            if not any(isinstance(side, _NO_NUMBERS) for side in (node.left, node.right)):
                self.add("sum", node, f"({left} {turned} ({right}))")
            self.add("sum", node, f"({left})")
            if isinstance(node.op, ast.Add):
                self.add("sum", node, f"({right})")
        self.generic_visit(node)

    def visit_Return(self, node: ast.Return) -> None:
        if isinstance(node.value, ast.Constant):
            value = node.value.value
            if isinstance(value, bool):
                self.add("returned", node.value, str(not value))
            elif isinstance(value, int):
                self.add("returned", node.value, str(value + 1))
                return
            elif isinstance(value, str):
                self.add("returned", node.value, '"?"' if not value else '""')
        if node.value is not None:
            self.visit(node.value)
