"""Form, habit, foliage, flowering, scent, health, likeness: told by a word."""
