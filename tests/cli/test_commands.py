"""The commands as a shell sees them: what is printed where, and the exit status."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tamis.cli.main import COMMANDS, main
from tamis.words import languages

CLEAN = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Chill for 8–12 h].
"""
FAULTY = CLEAN.replace("200 ml milk", "2 tbps milk")
DOUGH = """\
title: Buns
makes: 8 buns

# Buns

Stir [500 g bread flour] with [320 g water], [10 g fine salt] and [5 g instant yeast] [in a bowl].
[Leave for 2 h] [until doubled].
Heat [the oven] [to 220 °C].
Shape the dough and [bake for 18 min] [until browned].
"""
WARNED = CLEAN.replace("serves: 2\n", "")


class Shell:
    """Runs command lines in a folder and keeps what they print."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self.capsys = capsys

    def __call__(self, *words: str) -> tuple[int, str, str]:
        self.capsys.readouterr()
        status = main(words)
        printed = self.capsys.readouterr()
        return status, printed.out, printed.err


@pytest.fixture
def shell(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Shell:
    monkeypatch.chdir(tmp_path)
    return Shell(capsys)


def test_check_of_a_clean_file(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    assert shell("check", "oats.tamis") == (0, "1 recipe: clean\n", "")


def test_check_tells_everything_of_every_file(shell: Shell) -> None:
    Path("a.tamis").write_text(FAULTY)
    Path("b.tamis").write_text(WARNED.replace("Oats", "Other oats"))
    status, out, _ = shell("check")
    assert status == 1
    assert "a.tamis:6:" in out and "b.tamis:1:1: warning" in out
    assert out.endswith("2 recipes: 1 error, 1 warning\n")


def test_strict_counts_warnings(shell: Shell) -> None:
    Path("oats.tamis").write_text(WARNED)
    assert shell("check", "oats.tamis")[0] == 0
    assert shell("check", "--strict", "oats.tamis")[0] == 1


def test_check_as_json(shell: Shell) -> None:
    Path("oats.tamis").write_text(FAULTY)
    status, out, _ = shell("check", "--format", "json")
    data = json.loads(out)
    assert status == 1 and data["recipes"] == 1
    assert data["counts"] == {"error": 1, "warning": 0, "information": 0}
    assert [(found["rule"], found["line"]) for found in data["findings"]] == [("unit-unknown", 6)]


@pytest.mark.parametrize(
    ("words", "reason"),
    [
        (("check", "nowhere.tamis"), "no such file"),
        (("check",), "no recipe files"),
        (("table", "nowhere.tamis"), "no such file"),
        (("table", "."), "this is a folder"),
        (("build", "nowhere"), "no such file"),
        (("explain", "two-tims"), "did you mean `two-times`"),
        (("chek",), "did you mean `check`"),
    ],
)
def test_what_cannot_run(shell: Shell, words: tuple[str, ...], reason: str) -> None:
    status, out, err = shell(*words)
    assert (status, out) == (2, "") and reason in err


@pytest.mark.parametrize("settings", [b"[kitchen\n", b"[kitchen]\nname = '\xff'\n"])
def test_unreadable_settings_stop_the_command(shell: Shell, settings: bytes) -> None:
    Path("kitchen.toml").write_bytes(settings)
    Path("oats.tamis").write_text(CLEAN)
    status, out, err = shell("check")
    assert (status, out) == (2, "") and "kitchen.toml:" in err


def test_unknown_rules_in_the_settings_are_told(shell: Shell) -> None:
    Path("kitchen.toml").write_text('[checks]\nmissing-queue = "off"\nmissing-yield = "error"\n')
    Path("oats.tamis").write_text(WARNED)
    status, out, _ = shell("check")
    assert status == 1 and "did you mean `missing-cue`?" in out and "error: this recipe says neither" in out


def test_explain_prints_the_page_and_the_list(shell: Shell) -> None:
    status, out, _ = shell("explain", "missing-yield")
    assert status == 0 and out.startswith("missing-yield (warning)") and "serves: 4" in out
    assert "missing-yield" in shell("explain")[1]


@pytest.mark.parametrize(
    ("name", "file", "title"),
    [
        ("Harbour soup", "harbour-soup.tamis", "Harbour soup"),
        ("pea-soup.tamis", "pea-soup.tamis", "Pea soup"),
        ("Crème brûlée", "crème-brûlée.tamis", "Crème brûlée"),
    ],
)
def test_new_writes_a_clean_recipe_and_never_over_one(shell: Shell, name: str, file: str, title: str) -> None:
    assert shell("new", name)[0] == 0
    text = Path(file).read_text()
    assert f"title: {title}\n" in text
    assert shell("check", "--strict", file)[:2] == (0, "1 recipe: clean\n")
    status, _, err = shell("new", name)
    assert status == 2 and "was not changed" in err and Path(file).read_text() == text


@pytest.mark.parametrize("language", languages())
def test_new_writes_in_the_language_of_the_house(shell: Shell, language: str) -> None:
    Path("kitchen.toml").write_text(f'[kitchen]\nlanguage = "{language}"\n')
    assert shell("new", "Menu")[0] == 0
    assert shell("check", "--strict", "menu.tamis")[:2] == (0, "1 recipe: clean\n")


def test_table_of_a_faulty_file_is_marked_as_a_part(shell: Shell) -> None:
    Path("oats.tamis").write_text(FAULTY)
    status, out, err = shell("table", "oats.tamis")
    assert status == 1 and "unit-unknown" in err and "rolled oats" in out and "Incomplete" in out
    status, out, _ = shell("table", "oats.tamis", "--format", "json")
    assert status == 1 and json.loads(out)["partial"] is True


def test_table_in_each_format(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    for form in ("text", "markdown", "json"):
        status, out, err = shell("table", "oats.tamis", "--format", form)
        assert (status, err) == (0, "") and "rolled oats" in out
    assert json.loads(out)["partial"] is False


def test_timeline_forward_and_counted_back(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    status, out, err = shell("timeline", "oats.tamis")
    assert (status, err) == (0, "") and "Chill" in out
    status, out, _ = shell("timeline", "oats.tamis", "--ready", "2026-12-21 08:00")
    assert status == 0 and "20 Dec" in out
    assert json.loads(shell("timeline", "oats.tamis", "--format", "json")[1])["partial"] is False
    status, _, err = shell("timeline", "oats.tamis", "--ready", "noon")
    assert status == 2 and "2026-12-21 19:00" in err


def test_flow_of_one_file_of_several_and_of_one_line(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    Path("buns.tamis").write_text(DOUGH)
    status, out, err = shell("flow", "oats.tamis")
    assert (status, err) == (0, "") and "done       Oats, 306 g" in out and "why" not in out
    status, out, _ = shell("flow", "oats.tamis", "buns.tamis")
    assert status == 0 and out.index("Oats\n") < out.index("\n\nBuns\n")
    status, out, _ = shell("flow", "buns.tamis", "oats.tamis", "--format", "json")
    told = json.loads(out)["recipes"]
    assert [(recipe["title"], recipe["partial"]) for recipe in told] == [("Buns", False), ("Oats", False)]
    status, out, _ = shell("flow", "oats.tamis", "--why", "7")
    assert status == 0 and "Chill" in out and "Stir" not in out and "why        waits for the end of line 6" in out


def test_flow_asks_for_a_line_that_does_something(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    status, out, err = shell("flow", "oats.tamis", "--why", "1")
    assert (status, out) == (2, "") and "nothing is done in line 1; expected one of 6, 7" in err
    assert shell("flow", "oats.tamis", "oats.tamis", "--why", "6")[0] == 2
    assert shell("flow", "none.tamis")[0] == 2


def test_flow_of_a_faulty_file_is_marked_as_a_part(shell: Shell) -> None:
    Path("oats.tamis").write_text(FAULTY)
    status, out, err = shell("flow", "oats.tamis")
    assert status == 1 and "unit-unknown" in err and "rolled oats" in out and "Incomplete" in out
    status, out, _ = shell("flow", "oats.tamis", "--format", "json")
    assert status == 1 and json.loads(out)["recipes"][0]["partial"] is True


def test_a_used_recipe_is_found_in_the_house(shell: Shell) -> None:
    Path("kitchen.toml").write_text("")
    Path("stocks").mkdir()
    Path("stocks/brine.tamis").write_text(
        "title: Brine\nmakes: 1 l\n\n# Brine\n\nStir [1 l water] with [10 g fine salt] [in a jug].\n"
    )
    Path("peas.tamis").write_text(
        "title: Peas\nserves: 4\nuses: brine\n\n# Peas\n\n"
        "Boil [400 g peas] with [500 ml of the brine] [in a saucepan] [for 4 min].\n"
    )
    assert shell("check", "peas.tamis") == (0, "1 recipe: clean\n", "")


def test_build_writes_says_and_leaves_alone(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    status, out, err = shell("build")
    assert (status, err) == (0, "") and "1 recipe page and an index in public" in out
    assert "open public/index.html" in out and Path("public/recipes/oats.html").exists()
    assert "nothing has changed" in shell("build", ".")[1]

    Path("oats.tamis").write_text(FAULTY)
    before = Path("public/recipes/oats.html").read_bytes()
    status, out, err = shell("build")
    assert (status, out) == (1, "") and "unit-unknown" in err and "nothing was built" in err
    assert Path("public/recipes/oats.html").read_bytes() == before

    Path("brine.tamis").write_text(CLEAN.replace("Oats", "Other oats"))
    status, out, err = shell("build", "--keep-going", "-o", "site")
    assert status == 1 and "left out because of errors: oats.tamis" in out
    assert Path("site/recipes/brine.html").exists() and not Path("site/recipes/oats.html").exists()


def test_build_refuses_a_folder_that_it_did_not_make(shell: Shell) -> None:
    Path("oats.tamis").write_text(CLEAN)
    Path("mine").mkdir()
    Path("mine/index.html").write_text("by hand")
    status, out, err = shell("build", "-o", "mine")
    assert (status, out) == (2, "") and "--replace" in err
    assert Path("mine/index.html").read_text() == "by hand"
    assert shell("build", "-o", "mine", "--replace")[0] == 0
    assert shell("build", "oats.tamis")[0] == 2


def test_help_names_every_command(shell: Shell) -> None:
    status, out, _ = shell()
    assert status == 2 and all(name in out for name in COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as end:
        main([name, "--help"])
    assert end.value.code == 0 and name in capsys.readouterr().out


def loaded_by_check(folder: Path) -> set[str]:
    program = (
        "import sys; from tamis.cli.main import main; main(['check', sys.argv[1]]);print(' '.join(sorted(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", program, str(folder)], capture_output=True, text=True, check=True)
    return set(done.stdout.splitlines()[-1].split())


@pytest.mark.parametrize(("text", "dough"), [(CLEAN, set()), (DOUGH, {"formula", "parts", "words"})])
def test_check_imports_nothing_heavy(tmp_path: Path, text: str, dough: set[str]) -> None:
    (tmp_path / "dish.tamis").write_text(text)
    loaded = loaded_by_check(tmp_path)
    heavy = {
        "typing",
        "datetime",
        "copy",
        "lark",
        "jinja2",
        "markdown_it",
        "pint",
        "pydantic",
        "csv",
        "asyncio",
        "difflib",
        "tomllib",
    }
    assert heavy.isdisjoint(loaded)
    printing = {f"tamis.quantity.{name}" for name in ("display", "spoons", "weights", "wrapping")}
    assert printing.isdisjoint(loaded)
    # Of our own it takes what reads and judges a recipe, and nothing of what shows or plans one.
    base = {"assets", "typed", "patterns", "record", "saved", "string_tables", "words", "lalr", "source"}
    base |= {"diagnostics", "quantity"}
    judging = {"syntax", "kitchen", "reading", "model", "safety", "checks", "compile", "library", "cli"}
    parts = {name.split(".")[1] for name in loaded if name.startswith("tamis.")}
    assert parts.difference(base, judging) == ({"formula"} if dough else set())
    assert {name for name in loaded if name.startswith("tamis.formula.")} == {f"tamis.formula.{name}" for name in dough}


def test_a_reader_that_goes_away_is_no_traceback(tmp_path: Path) -> None:
    (tmp_path / "bad.tamis").write_text(FAULTY)
    program = f"{sys.executable} -m tamis check {tmp_path} | true"
    done = subprocess.run(["sh", "-c", program], capture_output=True, text=True, check=False)
    assert "Traceback" not in done.stderr


def test_ready_takes_a_time_of_day(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "salt-water.tamis"
    file.write_text("title: Salt water\nserves: 1\n\n# Water\n\nStir [10 g fine salt] into [1 l water].\n", "utf-8")
    assert main(["timeline", str(file), "--ready", "19:00"]) == 0
    assert "19:00, estimates" in capsys.readouterr().out
    assert main(["timeline", str(file), "--ready", "seven"]) == 2
    assert "a time of day, as 19:00" in capsys.readouterr().err
