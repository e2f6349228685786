"""The compiler fails on one recipe: that is a finding of this recipe, and every other is checked, shown and built.

A fault is put into one place of the compiler, where it meets only what belongs to `bad.tamis`.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

from tamis import __version__
from tamis.assets import asset_text
from tamis.checks import registry
from tamis.checks.registry import check_of, scaling_names
from tamis.cli.main import main
from tamis.internal import SWITCH
from tests.table.schema import faults

GOOD = """\
title: Good oats
makes: 300 g

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Chill for 8–12 h].
"""
BAD = GOOD.replace("Good", "Bad")
USER = """\
title: Porridge
serves: 2
uses: bad

# Porridge

Warm [100 g of the bad oats] [in a saucepan] [for 5 min].
"""
PHASES = ["compile:parse", "compile:read", "compile:build", "checks.view:assess", "compile:supply_of"]
LATER = ["compile:run_checks", "checks.rules.work_unknown:check"]
FINDINGS: dict[str, Any] = json.loads(asset_text("grammar/schema/findings.schema.json"))
TIMELINE: dict[str, Any] = json.loads(asset_text("grammar/schema/timeline.schema.json"))


class Kitchen:
    """A folder of recipes, a fault somewhere, and the command line."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
        self.monkeypatch = monkeypatch
        self.capsys = capsys

    def breaks(self, place: str) -> None:
        """The function of this name fails on what belongs to the bad recipe."""
        name, _, function = place.partition(":")
        module = import_module(f"tamis.{name}")
        self.monkeypatch.setattr(module, function, failing(getattr(module, function)))
        forget_rules()

    def __call__(self, *words: str) -> tuple[int, str, str]:
        self.capsys.readouterr()
        status = main(words)
        printed = self.capsys.readouterr()
        return status, printed.out, printed.err


def failing(function: Callable[..., Any]) -> Callable[..., Any]:
    def fails(*given: Any, **named: Any) -> Any:
        if any(map(is_bad, given)):
            raise LookupError("a fault of the compiler")
        return function(*given, **named)

    return fails


def is_bad(given: Any) -> bool:
    """Whether a text, or what was made of it, is that of the bad recipe."""
    document = getattr(given, "document", given)
    text = getattr(getattr(document, "source", document), "text", "")
    title = getattr(getattr(given, "header", None), "title", "")
    return "Bad oats" in (title, str(text).partition("\n")[0].removeprefix("title: "))


def forget_rules() -> None:
    registry.check_of.cache_clear()


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Iterator[Kitchen]:
    monkeypatch.delenv(SWITCH)
    monkeypatch.chdir(tmp_path)
    Path("bad.tamis").write_text(BAD)
    Path("good.tamis").write_text(GOOD)
    yield Kitchen(monkeypatch, capsys)
    forget_rules()


def test_the_suite_itself_sees_the_exception(kitchen: Kitchen) -> None:
    kitchen.monkeypatch.setenv(SWITCH, "1")
    kitchen.breaks("compile:read")
    with pytest.raises(LookupError):
        kitchen("check")


@pytest.mark.parametrize("place", PHASES + LATER)
def test_check_goes_on(place: str, kitchen: Kitchen) -> None:
    kitchen.breaks(place)
    Path("good.tamis").write_text(GOOD.replace("200 ml", "200 mll"))
    status, out, err = kitchen("check", "--format", "json")
    data = json.loads(out)
    assert (status, err, data["recipes"], data["counts"]["error"]) == (1, "", 2, 2)
    assert list(faults(data, FINDINGS, FINDINGS)) == []
    bad, good = data["findings"]
    assert (bad["file"], bad["rule"], bad["line"], good["file"]) == ("bad.tamis", "internal-error", 1, "good.tamis")
    assert bad["message"].startswith("the compiler failed here: LookupError at tamis.")
    assert bad["message"].endswith(f"(tamis {__version__})") and ", line " in bad["message"]
    assert SWITCH in bad["hint"]
    assert "Traceback" not in kitchen("check")[1]


def test_what_was_found_before_is_told(kitchen: Kitchen) -> None:
    Path("bad.tamis").write_text(BAD.replace("200 ml milk]", "200 ml milk"))
    kitchen.breaks("compile:build")
    out = kitchen("check", "bad.tamis")[1]
    assert "(bracket-unclosed)" in out and "(internal-error)" in out


def test_no_allow_and_no_level_hides_it(kitchen: Kitchen) -> None:
    Path("kitchen.toml").write_text('[checks]\ninternal-error = "off"\n')
    Path("bad.tamis").write_text("% allow internal-error: no\n" + BAD)
    kitchen.breaks("checks.rules.work_unknown:check")
    kitchen.monkeypatch.setattr("tests.cli.test_internal_errors.is_bad", lambda given: hasattr(given, "safety"))
    assert kitchen("check", "bad.tamis")[1].count("(internal-error)") == 1


@pytest.mark.parametrize("place", [*PHASES, "timeline.timeline:build_timeline"])
def test_a_command_tells_it_like_any_error(place: str, kitchen: Kitchen) -> None:
    kitchen.breaks(place)
    status, out, err = kitchen("timeline", "bad.tamis", "--format", "json")
    assert (status, json.loads(out)["partial"], err.count("(internal-error)")) == (1, True, 1)
    assert list(faults(json.loads(out), TIMELINE, TIMELINE)) == []
    status, out, err = kitchen("timeline", "good.tamis", "--format", "json")
    assert (status, json.loads(out)["partial"], err) == (0, False, "")


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("table.ingredients:build_table", ["table"]),
        ("table.equipment:equipment_list", ["table"]),
        ("table.ingredients:build_table", ["market", "good.tamis"]),
        ("table.ingredients:build_table", ["cost"]),
        ("checks.view:assess", ["safety"]),
        ("compile:read", ["formula"]),
        ("compile:read", ["scale", "--by", "2"]),
        ("compile:read", ["table", "--by", "2"]),
        ("table.ingredients:build_table", ["scale", "--by", "2"]),
        ("scaling.scale:recipe_edits", ["scale", "--by", "2"]),
        ("formula.formula:build_formula", ["formula"]),
        ("safety.report:report_text", ["safety"]),
    ],
)
def test_every_command_tells_it(place: str, words: list[str], kitchen: Kitchen) -> None:
    command, *options = words
    kitchen.breaks(place)
    sound = kitchen(command, "good.tamis", *options)[0]
    status, out, err = kitchen(command, "bad.tamis", *options)
    assert err.startswith("bad.tamis:1:1: error: the compiler failed here: LookupError")
    assert err.count("(internal-error)") == 1 and "Traceback" not in err
    assert (status > 0, "rolled oats" in out) == (True, "good.tamis" in words)
    assert sound == (2 if command == "formula" else 0), "the other recipe is as it was"


def test_a_rule_of_scaling_fails(kitchen: Kitchen) -> None:
    kitchen.monkeypatch.setattr(
        "tamis.checks.run.check_of",
        lambda name: failing(lambda scene: []) if name in scaling_names() else check_of(name),
    )
    kitchen.monkeypatch.setattr("tests.cli.test_internal_errors.is_bad", lambda given: True)
    out = kitchen("scale", "good.tamis", "--by", "2")[1]
    assert "200 g" in out and "(internal-error)" in out


def test_a_command_for_many_files_says_that_it_failed(kitchen: Kitchen) -> None:
    kitchen.monkeypatch.setattr("tamis.cli.check.closing", failing(lambda *_: ""))
    kitchen.monkeypatch.setattr("tests.cli.test_internal_errors.is_bad", lambda given: True)
    status, _, err = kitchen("check")
    assert status == 2 and err.startswith("tamis check: the compiler failed here: LookupError at tamis.cli.check")


@pytest.mark.parametrize("place", PHASES)
def test_a_recipe_that_uses_it_is_told_once(place: str, kitchen: Kitchen) -> None:
    Path("porridge.tamis").write_text(USER)
    kitchen.breaks(place)
    out = kitchen("check", "porridge.tamis")[1]
    assert "the compiler failed on bad" in out and out.endswith("1 recipe: 1 error\n")


BUILDING = ["compile:read", "checks.rules.work_unknown:check", "publish.site:recipe_page"]


@pytest.mark.parametrize("place", BUILDING)
@pytest.mark.parametrize("options", [[], ["--by", "2", "-o", "twice"]])
def test_the_other_pages_are_built(place: str, options: list[str], kitchen: Kitchen) -> None:
    Path("porridge.tamis").write_text(USER.replace("uses: bad\n", "").replace("of the bad", "rolled"))
    kitchen.breaks(place)
    site = Path(options[-1] if options else "public")
    status, _, err = kitchen("build", *options)
    assert (status, site.exists(), err.count("(internal-error)")) == (1, False, 1)
    assert err.endswith("`--keep-going` builds only the recipes without errors\n")
    status, out, err = kitchen("build", "--keep-going", *options)
    assert (status, err.count("(internal-error)")) == (1, 1)
    assert "2 recipe pages" in out and "left out because of errors: bad.tamis" in out
    assert sorted(path.name for path in (site / "recipes").iterdir()) == ["good.html", "porridge.html"]
    assert "bad.html" not in (site / "index.html").read_text(encoding="utf-8")


def test_no_page_links_to_one_that_failed(kitchen: Kitchen) -> None:
    Path("porridge.tamis").write_text(USER)
    kitchen.breaks("publish.site:recipe_page")
    kitchen("build", "--keep-going")
    assert "bad.html" not in Path("public/recipes/porridge.html").read_text(encoding="utf-8")


def test_the_scaled_recipe_fails(kitchen: Kitchen) -> None:
    kitchen.breaks("scaling.scale:recipe_edits")
    assert kitchen("build", "--by", "2", "-o", "twice")[0] == 1
    status, out, err = kitchen("build", "--by", "2", "-o", "twice", "--keep-going")
    assert status == 1 and "1 recipe page" in out and err.count("(internal-error)") == 1


def test_the_market_page_fails(kitchen: Kitchen) -> None:
    kitchen.monkeypatch.setattr("tamis.publish.site.house_market_page", failing(lambda *_: ""))
    kitchen.monkeypatch.setattr("tests.cli.test_internal_errors.is_bad", lambda given: True)
    assert kitchen("build")[0] == 1 and not Path("public").exists()
    status, out, err = kitchen("build", "--keep-going")
    assert status == 1 and "2 recipe pages" in out and err.startswith("market.html:1:1: error: the compiler failed")
    assert not Path("public/market.html").exists()


def test_explain_knows_it(kitchen: Kitchen) -> None:
    status, out, _ = kitchen("explain", "internal-error")
    assert status == 0 and out.startswith("internal-error (error)\n\nThe compiler itself failed") and SWITCH in out
