"""A recipe for more or for fewer, or for another tin."""
