"""A diary of a breeder's seedlings, kept from what is said while filming them."""

__version__ = "0.1.0"
