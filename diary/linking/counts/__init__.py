"""How many heads, buds, seeds, seedlings, cuttings."""
