"""tamis: a compiler for recipes."""

__version__ = "0.1.0"
