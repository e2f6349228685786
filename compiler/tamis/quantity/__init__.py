"""Numbers, units, measures and durations: exact inside, a cook's way of writing outside."""
