"""What a line of the method looks like on the page: a table of lines and their HTML."""

from __future__ import annotations

import pytest

from tamis.kitchen.house import default_kitchen
from tamis.publish.sentence import as_html, pieces_of, plain_text
from tamis.publish.words import page_words
from tamis.reading.clauses import VerbUse
from tamis.reading.reader import read
from tamis.source import Source
from tamis.syntax.outline import parse

LINES = [
    # the comma's rest belongs to the table
    ("Add [2 onions, finely chopped].", 'Add <b class="measure">2</b> onions.'),
    # … unless the food is taken apart
    ("Stir in [1 lemon, zested].", 'Stir in <b class="measure">1</b> lemon, zested.'),
    ("Add [1 tbsp caraway seed, lightly crushed].", 'Add <b class="measure">1\u00a0tbsp</b> caraway seed.'),
    ("Add [4 sprigs of thyme].", 'Add <b class="measure">4\u00a0sprigs</b> of thyme.'),
    ("Fry it [in 2 tbsp olive oil].", 'Fry it in <b class="measure">2\u00a0tbsp</b> olive oil.'),
    # both measures are printed, and kitchen fractions as such
    ("Add [480 g (3 1/2 cups) bread flour].", 'Add <b class="measure">480\u00a0g (3½\u00a0cups)</b> bread flour.'),
    ("Add [2 1/4 tsp instant yeast].", 'Add <b class="measure">2¼\u00a0tsp</b> instant yeast.'),
    ("Add [1 cup plus 2 tbsp whole milk].", 'Add <b class="measure">1\u00a0cup plus 2\u00a0tbsp</b> whole milk.'),
    (
        "Add [8 chicken thighs (140–200 g each), trimmed].",
        'Add <b class="measure">8</b> chicken thighs (140–200 g each).',
    ),
    # degrees typed without their sign get it, and their twin
    ("Roast [at 200C/180C fan/gas 6].", "Roast at 200\u00a0°C (392\u00a0°F)/180\u00a0°C fan/gas 6."),
    # times are marked, with the least of a range for machines
    ("[Knead for 5 min].", 'Knead for <time datetime="PT5M">5\u00a0min</time>.'),
    ("[Bake for 25–30 min].", 'Bake for <time datetime="PT25M">25–30\u00a0min</time>.'),
    (
        "[Leave for at least 4 h, up to 18 h].",
        'Leave for at least <time datetime="PT4H">4\u00a0h, up to 18\u00a0h</time>.',
    ),
    ("[Chill for up to 3 days].", 'Chill for up to <time datetime="P3D">3\u00a0days</time>.'),
    ("[Leave overnight].", 'Leave <time datetime="PT8H">overnight</time>.'),
    ("[Bake for 1 1/2 h].", 'Bake for <time datetime="PT1H30M">1½\u00a0h</time>.'),
    # a cue, and the time after its comma
    (
        "Fry [until golden, about 5 min].",
        'Fry <span class="cue">until golden, about </span><time datetime="PT5M">5\u00a0min</time>.',
    ),
    # the other scale: ovens to the five degrees, a probe never below what is written
    ("Heat [the oven] [to 230 °C].", "Heat the oven to 230\u00a0°C (450\u00a0°F)."),
    ("Heat [the oven] [to 375 °F].", "Heat the oven to 375\u00a0°F (190\u00a0°C)."),
    ("Heat [the oven] [to 375 °F (190 °C)].", "Heat the oven to 375\u00a0°F (190\u00a0°C)."),
    ("Heat [the oven] [to gas mark 4].", "Heat the oven to gas mark 4 (175\u00a0°C, 350\u00a0°F)."),
    ("Cook [until 74 °C inside].", 'Cook <span class="cue">until 74\u00a0°C (165\u00a0°F) inside</span>.'),
    ("Cook [until 63 °C inside].", 'Cook <span class="cue">until 63\u00a0°C (145\u00a0°F) inside</span>.'),
    (
        "Cook [until 63 °C in the fish and 74 °C in the stuffing].",
        'Cook <span class="cue">until 63\u00a0°C (145\u00a0°F) in the fish and 74\u00a0°C (165\u00a0°F) in the '
        "stuffing</span>.",
    ),
    ("Cook [until 62 °C inside].", 'Cook <span class="cue">until 62\u00a0°C (144\u00a0°F) inside</span>.'),
    ("Cook [until 145 °F inside].", 'Cook <span class="cue">until 145\u00a0°F (63\u00a0°C) inside</span>.'),
    ("Cook [until 97–99 °C inside].", 'Cook <span class="cue">until 97–99\u00a0°C (207–210\u00a0°F) inside</span>.'),
    # other clauses stand as written
    ("Lay it [in a 30 × 40 cm roasting tin].", "Lay it in a 30\u00a0×\u00a040 cm roasting tin."),
    ("Turn it in [2 tbsp of the duck fat].", 'Turn it in <b class="measure">2\u00a0tbsp</b> of the duck fat.'),
    # what is not Markdown's or HTML's business
    ("Press \\[Start\\] & wait <here>.", "Press [Start] &amp; wait &lt;here&gt;."),
    ("1. Add [2 eggs].", 'Add <b class="measure">2</b> eggs.'),
    # a number or a dash within a line is no mark of a list
    ("Heat it to gas mark 4. Stir well - gently.", "Heat it to gas mark 4. Stir well - gently."),
    ("Add [2 eggs]\n  and beat.", 'Add <b class="measure">2</b> eggs and beat.'),
]


def pieces(line: str) -> list:
    kitchen = default_kitchen("en")
    document, _ = parse(Source("line.tamis", f"title: A line\n\n# Dish\n\n{line}\n"), "en")
    reading, _ = read(document, kitchen)
    action = reading.components[0].steps[0].actions[0]
    reads = [event for event in action.events if not isinstance(event, VerbUse)]
    knobs = [read.clause.span for read in reads if "the oven" in line]
    return pieces_of(action.parts, reads, {}, page_words("en"), knobs)


@pytest.mark.parametrize(("line", "html"), LINES, ids=[line for line, _ in LINES])
def test_a_line(line: str, html: str) -> None:
    assert as_html(pieces(line)) == html


def test_the_amount_of_a_part_follows_its_clause() -> None:
    kitchen = default_kitchen("en")
    document, _ = parse(Source("line.tamis", "title: A line\n\n# Dish\n\nAdd [half of 300 g bread flour].\n"), "en")
    action = read(document, kitchen)[0].components[0].steps[0].actions[0]
    reads = [event for event in action.events if not isinstance(event, VerbUse)]
    comes_to = {reads[0].clause.span: "150 g"}
    assert (
        plain_text(pieces_of(action.parts, reads, comes_to, page_words("en")))
        == "Add half of 300 g bread flour (150 g)."
    )


def test_a_clause_that_was_not_understood_stays_as_written() -> None:
    document, _ = parse(Source("line.tamis", "title: A line\n\n# Dish\n\nDo [whatever <b>you</b> like].\n"), "en")
    action = document.components[0].blocks[0].actions[0]  # type: ignore[union-attr]
    assert as_html(pieces_of(action.parts, [], {}, page_words("en"))) == "Do whatever &lt;b&gt;you&lt;/b&gt; like."
