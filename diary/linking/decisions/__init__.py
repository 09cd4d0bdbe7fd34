"""What is to become of the plant, and whether that is decided."""
