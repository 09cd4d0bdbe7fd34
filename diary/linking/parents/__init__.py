"""Seed parent, pollen parent and how the plant came about."""
