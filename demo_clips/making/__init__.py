"""How the demo recordings are made: a voice, drawn plants, a bench, a camera, a film."""
