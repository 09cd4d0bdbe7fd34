"""Which other plant this one is like."""
