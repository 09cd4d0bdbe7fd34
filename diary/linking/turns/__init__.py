"""Which plant: where the speaker turns to another."""
