"""The plant that a number or a name stands for."""

from diary.linking.document import Plant, PlantKind
from diary.reading.mentions import Mentions, Ref


def plant_of(mentions: Mentions, ref: Ref) -> Plant:
    """The plant of a number or a name; a seedling that was named is itself."""
    if ref.is_number:
        return Plant(kind=PlantKind.SEEDLING, number=ref.title, on_record=ref.on_record)
    known = mentions.numbers.seedlings.values()
    number = next((s.number for s in known if s.name == ref.title), None)
    if number is not None:
        return Plant(kind=PlantKind.SEEDLING, number=number, on_record=True)
    return Plant(kind=PlantKind.CULTIVAR, name=ref.title, on_record=True)
