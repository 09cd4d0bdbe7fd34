"""Which title means which plant: renumbered, merged and named seedlings, synonyms. Pure."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from diary.linking.document import PlantKind
from diary.records.corrections import Correction, GiveName, MergePlants, Renumber, live
from diary.records.record import PlantRef


@dataclass(frozen=True, slots=True, kw_only=True)
class Identities:
    """The register's answer to "which plant is that?".

    `present` gives the present number of a former or merged one; `names` the name of a
    seedling by its present number; `titles` the seedling's number or the named plant's name
    by any name it goes by, in lower case.
    """

    present: Mapping[str, str]
    names: Mapping[str, str]
    titles: Mapping[str, tuple[PlantKind, str]]

    def number(self, number: str) -> str:
        """The number this one goes by now."""
        return self.present.get(number, number)

    def former(self, number: str) -> tuple[str, ...]:
        """The numbers that now mean this one."""
        return tuple(old for old, new in self.present.items() if new == number and old != number)

    def seedling(self, number: str) -> PlantRef:
        """The seedling of this number, present or former."""
        now = self.number(number)
        name = self.names.get(now)
        title = f"{now} '{name}'" if name else now
        return PlantRef(kind=PlantKind.SEEDLING, key=now, title=title)

    def plant(self, kind: PlantKind, title: str) -> PlantRef:
        """The plant that a number or a name means."""
        if title in self.present:
            return self.seedling(title)
        kind, title = self.titles.get(title.casefold(), (kind, title))
        if kind is PlantKind.SEEDLING:
            return self.seedling(title)
        return PlantRef(kind=PlantKind.CULTIVAR, key=title, title=title)


def identities(
    corrections: Iterable[Correction],
    seedlings: Iterable[tuple[str, str | None]],
    names: Iterable[tuple[str, tuple[str, ...]]],
) -> Identities:
    """Fold the register's rows (number, name; name, synonyms) and its events, in order."""
    rows = tuple(seedlings)
    present: dict[str, str] = {number: number for number, _ in rows}
    given: dict[str, str] = {number: name for number, name in rows if name}
    for correction in live(corrections):
        match correction.change:
            case Renumber(number=old, to=new):
                _move(present, given, old, new)
            case MergePlants(number=str() as old, into=str() as new):
                _move(present, given, old, present.get(new, new))
            case GiveName(number=number, name=name):
                given[present.get(number, number)] = name
    titles: dict[str, tuple[PlantKind, str]] = {}
    for name, synonyms in names:
        for said in (name, *synonyms):
            titles[said.casefold()] = (PlantKind.CULTIVAR, name)
    for number, name in given.items():
        # a seedling that got a name is one plant with that name and its other names
        for said, (_, owner) in list(titles.items()):
            if owner.casefold() == name.casefold():
                titles[said] = (PlantKind.SEEDLING, number)
        titles[name.casefold()] = (PlantKind.SEEDLING, number)
    return Identities(present=present, names=given, titles=titles)


def _move(present: dict[str, str], given: dict[str, str], old: str, new: str) -> None:
    was = present.get(old, old)
    for number in [number for number, now in present.items() if now == was]:
        present[number] = new
    present.update({old: new, was: new, new: new})
    if was in given:
        given.setdefault(new, given.pop(was))
