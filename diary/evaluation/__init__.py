"""How well talk is understood: answers written by hand, against what the reader says."""
