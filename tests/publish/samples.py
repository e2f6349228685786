"""A house and a recipe that the tests build a site from."""

from __future__ import annotations

from collections.abc import Callable

from tamis.library.library import Library

Writer = Callable[..., Library]
"""Writes recipes (stem=text) into a folder and opens it."""

HOUSE = """\
[publish]
name = "Tern Quay"
address = "https://example.org/"
"""

CUSTARD = """\
title: Poured custard
makes: 600 ml
serves: 4–6
tags: sauce, vegetarian
course: pudding
tested: 2026-10-11
keeps: 3 days, in the fridge

Warm over a crumble, *cold* over plums.

# Custard

Warm [400 ml whole milk] and [1 split vanilla pod] [in a saucepan] [over medium heat] [until steaming, about 5 min].
[Off the heat], [infuse for 10–30 min].

[Meanwhile], whisk [6 egg yolks] with [70 g (1/3 cup) caster sugar, sifted] [in a bowl] [until thick and pale].

Pour [the milk] slowly on to [the yolks], [whisking all the time].
Return it to the pan and cook [over low heat], [stirring all the time], [until 82 °C and it coats the spoon, 6–9 min].

Note: above about 85 °C the yolks curdle.
"""
