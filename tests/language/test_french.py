"""Clauses and a recipe in French: another language is data alone (`grammar/words/fr`), and messages stay English."""

import subprocess
import sys
from fractions import Fraction
from pathlib import Path
from typing import Any, get_args

import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.compile import Compiled, compile
from tamis.diagnostics import Diagnostic
from tamis.kitchen.equipment import Equipment
from tamis.kitchen.food import Goods
from tamis.kitchen.house import default_kitchen, house_kitchen
from tamis.kitchen.verbs import Verb
from tamis.quantity.amount import Amount
from tamis.quantity.display import written
from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import Read, Role, Share, VerbUse
from tamis.safety.report import report_text
from tamis.scaling.exchange import exchange_for, exchanged
from tamis.scaling.scale import scaled
from tamis.source import Source, Span
from tamis.syntax.document import Clause
from tamis.table.text import equipment_text, table_text
from tamis.timeline.text import timeline_text

LIST = Path(__file__).with_name("clauses-fr.tsv")
CASES = [
    (*line.split("\t"), "")[:3] for line in LIST.read_text("utf-8").splitlines() if line and not line.startswith("#")
]
ROLES = get_args(Role)
KITCHEN = default_kitchen("fr")


def read(text: str) -> tuple[list[Read], list[Diagnostic]]:
    findings: list[Diagnostic] = []
    clause = Clause(text, Span(0, len(text) + 2), language="fr")
    records = read_clause(clause, KITCHEN, findings)
    return [record for record in records if not isinstance(record, VerbUse)], findings


def shown(value: Any) -> str:
    """A value as the list writes it."""
    if isinstance(value, Duration):
        return f"{value.lo}" if value.lo == value.hi else f"{value.lo}–{value.hi or ''}"
    if isinstance(value, Amount):
        return f"{value.lo}" if value.single else f"{value.lo}–{value.hi}"
    if isinstance(value, Share):
        return value.kind if value.kind == "rest" else shown(value.measure or value.fraction)
    if isinstance(value, Measure):
        return written(value, "fr")
    if isinstance(value, Goods | Equipment):
        return value.id
    if isinstance(value, Verb):
        return value.base
    return ",".join(value) if isinstance(value, tuple) else str(value)


def said(record: Read, key: str) -> str:
    measures: tuple[Measure, ...] = getattr(record, "measures", ())
    if key == "unit":
        return measures[0].unit
    value = measures[0] if key == "measure" else getattr(record, key)
    return shown(Fraction(value) if isinstance(value, int) and not isinstance(value, bool) else value).replace(" ", "_")


@pytest.mark.parametrize(("text", "role", "values"), CASES)
def test_clause(text: str, role: str, values: str) -> None:
    records, findings = read(text)
    if role not in ROLES:
        assert [finding.rule for finding in findings] == [role]
        return
    assert [record.role for record in records][-1:] == [role]
    assert [finding for finding in findings if finding.severity == "error"] == []
    pairs = [pair.split("=") for pair in values.split()]
    assert {key: said(records[-1], key) for key, _ in pairs} == dict(pairs)


def test_every_role_is_listed() -> None:
    assert {role for _, role, _ in CASES} >= set(ROLES)


FOLDER = Path(__file__).with_name("french")
SOUP = FOLDER / "soupe-aux-poireaux.tamis"


def compiled(text: str) -> Compiled:
    kitchen, problems = house_kitchen((FOLDER / "kitchen.toml").read_text("utf-8"), None)
    assert problems == [] and kitchen.language == "fr"
    return compile(Source(SOUP.name, text), kitchen, {})


def test_a_recipe_has_its_table_its_plan_and_its_safety(snapshot: SnapshotAssertion) -> None:
    soup = compiled(SOUP.read_text("utf-8"))
    assert soup.findings == ()
    assert (
        "\n".join(
            (
                table_text(soup.table, soup.kitchen),
                equipment_text(soup.equipment),
                timeline_text(soup.timeline),
                report_text(soup.safety, soup.recipe),
            )
        )
        == snapshot
    )


def test_a_mistake_is_told_in_english() -> None:
    text = SOUP.read_text("utf-8").replace("1 l de bouillon", "1,5 l de bouillon")
    finding = compiled(text).findings[0]
    assert (finding.rule, "can be read as 1.5 or as 1 and 5" in finding.message) == ("number-unclear", True)


CHICKEN = """title: Poulet
serves: 4

Disposer [4 cuisses de poulet] [dans un plat à four].
[Cuire au four pendant 40 min] [à 200 °C] [CUE].
Servir [aussitôt].
"""


@pytest.mark.parametrize(
    ("cue", "sound"),
    [
        ("jusqu'à 75 °C à cœur", True),
        ("jusqu'à ce que le centre soit à 75 °C", True),
        ("jusqu'à ce que la peau soit à 75 °C", False),
        ("jusqu'à ce qu'elles soient dorées", False),
        ("jusqu'à 60 °C à cœur", False),
    ],
)
def test_raw_food_is_followed(cue: str, sound: bool) -> None:
    rules = {finding.rule for finding in compiled(CHICKEN.replace("CUE", cue)).findings}
    assert "clause-role" not in rules and ("hazard-not-cleared" not in rules) == sound


WATCHED = """
import contextlib, io, sys
from tamis import assets
real, read = assets.asset, []
assets.asset = lambda name: (read.append(name), real(name))[1]
from tamis.cli.main import main
folder, soup, out = sys.argv[1:]
with contextlib.redirect_stdout(io.StringIO()):
    for command in (["check", folder], ["timeline", soup], ["safety", soup], ["flow", soup, "--why", "9"],
                    ["scale", soup, "--serves", "8"], ["market", soup], ["build", folder, "-o", out]):
        assert main(command) == 0, command
print(*(name for name in read if "/en/" in name), sep="\\n")
"""


def test_no_command_asks_for_english_words(tmp_path: Path) -> None:
    """What passes no language would ask for English quietly."""
    command = [sys.executable, "-c", WATCHED, str(FOLDER), str(SOUP), str(tmp_path / "out")]
    done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=False)
    assert (done.stdout.split(), done.stderr) == ([], "")


ROWS = {
    "Préchauffer [le four] [à 200 °C].": "Préchauffer le four à 200 °C",
    "Mixer [hors du feu] [pendant 1 min].": "Mixer hors du feu",
    "Laver [300 g de tomates, pépins retirés].": "Retirer pépins de tomates",
}


@pytest.mark.parametrize("line", ROWS)
def test_rows_that_no_line_writes_are_in_the_words_of_the_recipe(line: str) -> None:
    text = f"title: Soupe\nserves: 4\n\nMélanger [1 l d'eau] [dans une casserole].\n{line}\nServir [aussitôt].\n"
    assert ROWS[line] in [entry.title for entry in compiled(text).timeline.entries]


CAKE = """title: Gâteau
makes: 1 gâteau

Mélanger [3 œufs] et [2 gousses d'ail] [dans un saladier].
Verser [dans un 20 cm moule rond].
"""


def test_a_scaled_recipe_is_written_in_its_words() -> None:
    cake = compiled(CAKE)
    shown = [edit.shown for edit in scaled(cake, Fraction(113, 100), cake.kitchen).edits]
    assert "environ 3½" in shown and "environ 2¼" in shown


def test_another_tin_has_its_shape_in_the_words_of_the_recipe() -> None:
    cake = compiled(CAKE)
    exchange = exchange_for("20 cm carré", cake.recipe, cake.kitchen)
    assert exchange.problem == ""
    assert "dans un 20 cm moule carré" in exchanged(cake, exchange, cake.kitchen).text
