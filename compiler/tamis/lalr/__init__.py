"""Grammars of Lark as saved parse tables, and what reads by them without Lark."""
