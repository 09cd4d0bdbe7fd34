"""Which colour or marking of which part."""
