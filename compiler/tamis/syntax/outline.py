"""From a file's text to a `Document`, by the grammar `outline.lark` and the bracket scan.

The grammar tells what each line is and which lines stand together; here they become a header, a headnote,
components and steps. Whatever is wrong with a line is a finding, and the rest is compiled all the same.
"""

from __future__ import annotations

from functools import cache

from tamis.assets import asset_text
from tamis.diagnostics import Diagnostic, Fix
from tamis.lalr.parse import TokenParser
from tamis.lalr.table import load
from tamis.patterns import pattern
from tamis.source import Source, Span
from tamis.syntax.actions import action_of, actions_of
from tamis.syntax.brackets import IN_REMARK
from tamis.syntax.document import (
    AHEAD,
    ALLOW,
    Ahead,
    Block,
    Comment,
    ComponentNode,
    Document,
    Field,
    Line,
    Remark,
    RemarkKind,
    Step,
)
from tamis.syntax.lines import lines_of
from tamis.typed import TYPE_CHECKING, cast

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.lalr.values import Node

_ALLOW = pattern(rf"%\s*{ALLOW}\s+([A-Za-z-]+)\s*(?::\s*(.*\S))?\s*$")
# `prep time: 20 min`: no key has two words, but a line that begins so was meant as one.
_KEY_OF_WORDS = pattern(r"[^\W\d_]+(?: [^\W\d_]+){1,2}\s*")
_ALLOW_TRY = pattern(rf"%\s*{ALLOW}\b")


@cache
def _parser() -> TokenParser:
    return TokenParser(load(asset_text("grammar/saved/outline.txt")))


def parse(source: Source, language: str) -> tuple[Document, list[Diagnostic]]:
    """The document of a recipe's text in a language, and what is wrong with its lines and brackets."""
    tree = _parser().parse("document", lines_of(source.text))
    return _Builder(source, language).build(tree)


class _Builder:
    """Walks the lines once, in order, and gathers the document's parts."""

    __slots__ = (
        "blocks", "comments", "components", "fields", "findings", "heading", "headnote", "language", "lines", "name",
        "opening", "prose", "source",
    )  # fmt: skip

    def __init__(self, source: Source, language: str) -> None:
        self.source = source
        self.language = language
        self.lines: list[Line] = []
        self.fields: list[Field] = []
        self.comments: list[Comment] = []
        self.findings: list[Diagnostic] = []
        self.opening: ComponentNode | None = None
        self.headnote: list[str] = []
        self.prose = False
        self.components: list[ComponentNode] = []
        self.name = ""
        self.heading: Span | None = None
        self.blocks: list[Block] = []

    def build(self, tree: Node) -> tuple[Document, list[Diagnostic]]:
        self.prose = any(isinstance(child, Line) and child.kind == "HEADING" for child in tree[1])
        begun = False
        for child in tree[1]:
            lines = [child] if isinstance(child, Line) else cast("list[Line]", child[1])
            self.lines += lines
            for line in lines:
                if line.kind == "COMMENT":
                    self._comment(line)
            if isinstance(child, Line):
                if child.kind == "HEADING":
                    begun, self.prose = True, False
                    self._open_component(child)
                continue
            first = next((line.kind for line in lines if line.kind != "COMMENT"), "COMMENT")
            if first == "FIELD" and not begun:
                ends = _end_of_header(lines)
                self._header(lines[:ends])
                if ends < len(lines):
                    self._runs_on(lines[ends])
                    self._body(lines[ends:])
            else:
                self._body(lines)
            begun = begun or first != "COMMENT"
        self._close_component()
        opening = self.opening or ComponentNode("", None, ())
        document = Document(
            self.source,
            tuple(self.lines),
            tuple(self.fields),
            "".join(self.headnote).strip(),
            opening,
            tuple(self.components),
            tuple(self.comments),
        )
        self._nul()
        return document, self.findings

    def _find(self, rule: str, span: Span, message: str, hint: str = "", fix: Fix | None = None) -> None:
        self.findings.append(Diagnostic(rule, "error", span, message, hint, fix=fix))

    def _comment(self, line: Line) -> None:
        text = line.text.rstrip("\r\n")
        found = _ALLOW.match(text) if ALLOW in text else None
        span = Span(line.span.start, line.span.start + len(text))
        if found and found[2]:
            speaks_for = self.source.place(line.span.start).line + 1
            self.comments.append(Comment(text[1:].strip(), span, found[1], found[2], speaks_for))
            return
        if ALLOW in text and _ALLOW_TRY.match(text):
            message = "this allow comment has no effect: expected `% allow RULE: reason`"
            self._find("allow-without-reason", span, message, "say why the rule does not hold here")
        self.comments.append(Comment(text[1:].strip(), span))

    def _header(self, lines: Sequence[Line]) -> None:
        for line in lines:
            text = line.text.rstrip()
            if line.kind == "COMMENT":
                continue
            key, _, value = text.partition(":")
            start = line.span.start
            if not _is_field(line):
                span = Span(start, start + len(text))
                hint = "write a key and a colon before it, or put it below the header, after an empty line"
                self._find("header-line", span, "a line of the header is `key: value`; this one is neither", hint)
                continue
            lead = len(value) - len(value.lstrip())
            value_start = start + len(key) + 1 + lead
            key_span = Span(start, start + len(key.rstrip()))
            value_span = Span(value_start, max(value_start, start + len(text)))
            self.fields.append(Field(key.strip().lower(), value.strip(), key_span, value_span))

    def _runs_on(self, line: Line) -> None:
        """No empty line parts the header from what stands below it."""
        text = line.text.rstrip()
        below = "the headnote" if self.prose else "what is done"
        fix = Fix(Span(line.span.start, line.span.start), "\n", "put an empty line before it")
        span = Span(line.span.start, line.span.start + len(text))
        message, hint = "the header ends here, without an empty line", f"leave one between the header and {below}"
        self._find("header-line", span, message, hint, fix)

    def _body(self, lines: list[Line]) -> None:
        if self.prose:
            self.headnote.extend(line.text for line in lines if line.kind != "COMMENT")
            self.headnote.append("\n")
        else:
            self._paragraph(lines)

    def _open_component(self, line: Line) -> None:
        self._close_component()
        text = line.text.rstrip()
        hashes = len(text) - len(text.lstrip("#"))
        self.name = text[hashes:].strip()
        self.heading = Span(line.span.start, line.span.start + len(text))
        if hashes > 1:
            fix = Fix(Span(line.span.start, line.span.start + hashes), "#", "write one #")
            message = f"a component opens with one `#`; here stand {hashes}"
            hint = "there are no headings below a component: make it a component of its own, or a `Note:`"
            self._find("heading-level", self.heading, message, hint, fix)
        if not self.name:
            self._find("heading-name", self.heading, "this heading has no name", "name what the component makes")

    def _close_component(self) -> None:
        node = ComponentNode(self.name, self.heading, tuple(self.blocks))
        if self.heading is None:
            self.opening = node
        else:
            self.components.append(node)
            if not any(isinstance(block, Step) for block in self.blocks):
                message = f"the component “{self.name}” has no steps"
                self._find("empty-component", self.heading, message, "write what is done, or take the heading out")
        self.name, self.heading, self.blocks = "", None, []

    def _paragraph(self, lines: list[Line]) -> None:
        """One paragraph, which a remark in its midst parts in two."""
        text_lines: list[Line] = []
        for at, line in enumerate(lines):
            if line.kind in ("REMARK", "AHEAD"):
                self._step(text_lines)
                self._remark(lines[at:])
                return
            text_lines.append(line)
        self._step(text_lines)

    def _step(self, lines: list[Line]) -> None:
        actions = actions_of(self.source, [line for line in lines if line.text.strip()], self.findings, self.language)
        if actions:
            self.blocks.append(Step(tuple(actions), Span(actions[0].span.start, actions[-1].span.end)))

    def _remark(self, lines: list[Line]) -> None:
        kind, _, _ = lines[0].text.partition(":")
        kept = [line for line in lines if line.kind != "COMMENT"]
        end = kept[-1].span.start + len(kept[-1].text.rstrip())
        span = Span(lines[0].span.start, end)
        if lines[0].kind == "AHEAD":
            body = Span(span.start + len(AHEAD) + 1, end)
            self.blocks.append(Ahead(action_of(self.source, body, self.findings, self.language), span))
            return
        text = "".join([line.text for line in kept])[len(kind) + 1 :].strip()
        text = IN_REMARK.sub(r"\1", text) if "[" in text else text
        self.blocks.append(Remark(cast("RemarkKind", kind.capitalize()), text, span))

    def _nul(self) -> None:
        at = self.source.text.find("\0")
        if at >= 0:
            message = "a NUL byte stands here; a recipe is text"
            self._find("not-text", Span(at, at + 1), message, "take it out, or save the file again as plain text")


def _is_field(line: Line) -> bool:
    """Whether a line of a header is `key: value`."""
    key, colon, _ = line.text.partition(":")
    return bool(colon) and line.kind != "REMARK" and (line.kind != "TEXT" or bool(_KEY_OF_WORDS.fullmatch(key)))


def _end_of_header(lines: Sequence[Line]) -> int:
    """How many of the lines of the first paragraph are its header: what is none and stands last is below it."""
    ends = len(lines)
    while ends and not (lines[ends - 1].kind != "COMMENT" and _is_field(lines[ends - 1])):
        ends -= 1
    while ends < len(lines) and lines[ends].kind == "COMMENT":
        ends += 1
    return ends
