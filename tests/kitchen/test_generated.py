"""Generated files are written where they are new, and all generators say it alike."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis import assets, generated
from tamis.make_all import GENERATORS


def test_only_new_texts_are_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(generated, "asset", lambda name: str(tmp_path / name))
    generated.write({"grammar/a.txt": "1\n", "grammar/deep/b.txt": "2\n"})
    generated.write({"grammar/a.txt": "1\n", "grammar/deep/b.txt": "3\n"})
    generated.write({"grammar/a.txt": "1\n", "grammar/deep/b.txt": "3\n"})
    assert capsys.readouterr().out.splitlines() == [
        "wrote grammar/a.txt",
        "wrote grammar/deep/b.txt",
        "wrote grammar/deep/b.txt",
        "nothing new in grammar",
    ]
    assert (tmp_path / "grammar/deep/b.txt").read_text("utf-8") == "3\n"


def test_every_generator_is_run() -> None:
    package = Path(assets.__file__).parent
    writers = [path for path in package.rglob("make_*.py") if "generated import write" in path.read_text("utf-8")]
    assert sorted(".".join(path.relative_to(package.parent).with_suffix("").parts) for path in writers) == sorted(
        GENERATORS
    )
