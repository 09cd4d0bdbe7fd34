"""How traits and values are put into words on every screen, list and sheet. Pure."""

from diary.linking.document import Value


def trait_words(trait: str, part: str | None = None) -> str:
    """The trait as a person says it: "colour of the throat", "bloom diameter", "heads".

    >>> trait_words("colour", "throat"), trait_words("count_heads")
    ('colour of throat', 'heads')
    """
    said = trait.removeprefix("count_").replace("_", " ")
    return f"{said} of {part}" if part else said


def value_words(value: Value, unit: str | None = None, modifiers: tuple[str, ...] = ()) -> str:
    """The value as a person says it: "soft pink", "45 mm".

    >>> value_words("pink", None, ("soft",)), value_words(45, "mm")
    ('soft pink', '45 mm')
    """
    said = value if isinstance(value, str) else f"{value:g}"
    said = f"{said} mm" if unit == "mm" else said
    return " ".join((*modifiers, said))
