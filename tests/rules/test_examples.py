"""A rule's bad example gives that rule's finding and no other; its good example gives none at all."""

from __future__ import annotations

from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.checks.registry import Files, names, page
from tamis.cli.findings import Finding, as_text
from tamis.library.library import open_library


def findings_of(files: Files, folder: Path, monkeypatch: pytest.MonkeyPatch) -> list[Finding]:
    """What is said about an example, its files written to a folder of their own."""
    for name, content in files.items():
        path = folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
    monkeypatch.chdir(folder)
    return open_library(folder).findings()


@pytest.mark.parametrize("name", names())
def test_bad(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, snapshot: SnapshotAssertion) -> None:
    """The messages themselves are kept as snapshots, to be read by a person when they change."""
    rule = page(name)
    found = findings_of(rule.bad, tmp_path, monkeypatch)
    assert {finding.rule for _, finding in found} == {name}
    assert {finding.severity for _, finding in found} == {rule.level}
    assert "\n\n".join(as_text(source, finding) for source, finding in found) == snapshot


@pytest.mark.parametrize("name", names())
def test_good(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = findings_of(page(name).good, tmp_path, monkeypatch)
    assert [as_text(source, finding) for source, finding in found] == []
