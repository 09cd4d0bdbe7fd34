"""Habits of speech that do not assert: denying, asking, wishing, remembering."""
