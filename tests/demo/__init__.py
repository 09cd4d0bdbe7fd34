"""What a person expects of the demo recordings, with the real speech model over them."""
