"""Form, habit, foliage, flowering, scent, health: told by a word."""
