"""Checks against something outside the project; each names its published source."""
