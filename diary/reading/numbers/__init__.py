"""Seedling numbers as they are said, in the breeder's own format."""
