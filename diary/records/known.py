"""What is on record, in the form in which reading and recognition use it."""

from diary.reading.known import Known, KnownName, KnownSeedling
from diary.reading.known import Mishearing as KnownMishearing
from diary.records.correction_rows import corrections_of_kind
from diary.records.corrections import Mishearing, live
from diary.records.register import crosses, named_plants, number_format, seedlings
from diary.records.store import Store


def known(store: Store) -> Known:
    """Seedlings (present and former numbers), names, learnt mishearings, number format.

    Parents that only the cross of a seedling tells are taken from there.
    """
    by_code = {cross.code: cross for cross in crosses(store)}
    on_record = []
    for seedling in seedlings(store):
        cross = by_code.get(seedling.cross or "")
        for number in (seedling.number, *seedling.former):
            on_record.append(
                KnownSeedling(
                    number=number,
                    seed_parent=seedling.seed_parent or (cross.seed_parent if cross else None),
                    pollen_parent=seedling.pollen_parent
                    or (cross.pollen_parent if cross else None),
                    name=seedling.name,
                )
            )
    learnt = [
        KnownMishearing(heard=event.change.heard, meant=event.change.meant)
        for event in live(corrections_of_kind(store, "Mishearing"))
        if isinstance(event.change, Mishearing)
    ]
    return Known(
        seedlings=tuple(on_record),
        names=tuple(
            KnownName(name=plant.name, synonyms=plant.synonyms, mishearings=plant.mishearings)
            for plant in named_plants(store)
        ),
        mishearings=tuple(learnt),
        number_format=number_format(store),
    )
