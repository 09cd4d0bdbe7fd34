"""What a recogniser writes for a word that it does not know."""
