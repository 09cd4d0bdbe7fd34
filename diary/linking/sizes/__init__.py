"""Which length is the size of what."""
