"""A bread's page shows its formula; other pages don't."""

from __future__ import annotations

from tamis.publish.page import recipe_page

from .kneading import KITCHEN, made

LOAF = (
    "# <b> Poolish\n\nStir [50 g rye flour], [50 g water] and [1 g instant yeast].\n[Leave overnight].\n\n"
    "# Dough\n\nMix [450 g bread flour], [300 g water], [10 g fine salt] and [the poolish].\n[Rise for 3 h]."
)
CAKE = (
    "Beat [200 g butter], [200 g caster sugar], [4 eggs] and [200 g self-raising flour].\n"
    "[Bake for 40 min] [at 180 °C]."
)


def test_a_bread_has_a_formula_and_names_cannot_act_as_markup() -> None:
    html = recipe_page(made(LOAF), KITCHEN, ())
    section = html[html.index('<section class="formula"') :].partition("</section>")[0]
    assert '<th scope="row">water</th><td>350 g</td><td>70</td><td>50 g</td><td>100</td>' in section
    assert "10 % of all flour" in section
    assert "&lt;b&gt; Poolish" in section and "<b>" not in section


def test_a_cake_has_none() -> None:
    assert 'class="formula"' not in recipe_page(made(CAKE), KITCHEN, ())


def test_the_method_says_what_a_percentage_comes_to() -> None:
    done = made("Mix [100 % bread flour], [70 % water] and [1 % instant yeast].\n[Rise for 1 h].", "flour: 1 kg\n")
    html = recipe_page(done, KITCHEN, ())
    assert "70\u00a0%" in html and "(700\u00a0g)" in html
