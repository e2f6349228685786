"""A measure in every other unit, a temperature on every scale, and what may stand in for a food."""
