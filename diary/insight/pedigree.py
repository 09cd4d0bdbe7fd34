"""Who came from whom, to any depth: ancestors, inbreeding, formulas. Pure.

A pedigree is a table of plants and their two parents. A parent that is not known is None;
a sport has its mother plant as `sport_of` and no second parent.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

import networkx

from diary.errors import UsageError


@dataclass(frozen=True, slots=True, kw_only=True)
class Parentage:
    """One plant's parents: keys of plants, or None where unknown."""

    plant: str
    seed_parent: str | None = None
    pollen_parent: str | None = None
    sport_of: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """A plant in a family tree drawn from one plant: parents below it, to the depth asked for.

    `role` is "", "seed parent", "pollen parent" or "sport of"; `seen_above` marks a plant that
    stands elsewhere in the tree and is not followed again.
    """

    plant: str
    role: str
    depth: int
    parents: tuple["Node", ...] = ()
    seen_above: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Pedigree:
    """All known parentages; every parent named has an entry too, if only an empty one."""

    entries: dict[str, Parentage] = field(default_factory=dict)

    def of(self, plant: str) -> Parentage:
        """The parents of a plant; unknown ones for a plant never heard of."""
        return self.entries.get(plant, Parentage(plant=plant))

    def children(self, plant: str) -> tuple[str, ...]:
        """The plants with this one as a parent, in natural reading order."""
        return tuple(
            sorted(
                entry.plant
                for entry in self.entries.values()
                if plant in (entry.seed_parent, entry.pollen_parent)
            )
        )


def build_pedigree(parentages: Iterable[Parentage]) -> Pedigree:
    """Collect parentages; the first one that knows a parent wins.

    Raises UsageError if a plant would be its own ancestor, naming the ring.
    """
    entries: dict[str, Parentage] = {}
    for row in parentages:
        before = entries.get(row.plant)
        entries[row.plant] = row if before is None else _merged(before, row)
    for row in tuple(entries.values()):
        for parent in (row.seed_parent, row.pollen_parent, row.sport_of):
            if parent is not None and parent not in entries:
                entries[parent] = Parentage(plant=parent)
    pedigree = Pedigree(entries=entries)
    try:
        ring = networkx.find_cycle(graph_of(pedigree))
    except networkx.NetworkXNoCycle:
        return pedigree
    names = " -> ".join([edge[0] for edge in ring] + [ring[-1][1]])
    raise UsageError(
        f"A plant cannot be its own ancestor: {names}. "
        "Put the parents of one of them right in the register."
    )


def _merged(first: Parentage, second: Parentage) -> Parentage:
    if first.seed_parent or first.pollen_parent or first.sport_of:
        return Parentage(
            plant=first.plant,
            seed_parent=first.seed_parent or second.seed_parent,
            pollen_parent=first.pollen_parent or second.pollen_parent,
            sport_of=first.sport_of or second.sport_of,
        )
    return second


def graph_of(pedigree: Pedigree) -> "networkx.DiGraph[str]":
    """The pedigree as a directed graph, parent -> child, edges labelled with the role."""
    graph: networkx.DiGraph[str] = networkx.DiGraph()
    graph.add_nodes_from(pedigree.entries)
    for entry in pedigree.entries.values():
        for role, parent in _parents(entry):
            graph.add_edge(parent, entry.plant, role=role)
    return graph


def _parents(entry: Parentage) -> Iterator[tuple[str, str]]:
    if entry.sport_of is not None:
        yield "sport of", entry.sport_of
        return
    if entry.seed_parent is not None:
        yield "seed parent", entry.seed_parent
    if entry.pollen_parent is not None:
        yield "pollen parent", entry.pollen_parent


def family_tree(pedigree: Pedigree, plant: str, *, depth: int | None = None) -> Node:
    """The ancestors of `plant`, seed parent before pollen parent; depth None is all of them."""
    seen: set[str] = set()

    def grow(name: str, role: str, level: int) -> Node:
        entry = pedigree.of(name)
        known = tuple(_parents(entry))
        if name in seen and known:
            return Node(plant=name, role=role, depth=level, seen_above=True)
        seen.add(name)
        if depth is not None and level >= depth:
            return Node(plant=name, role=role, depth=level)
        parents = tuple(grow(parent, what, level + 1) for what, parent in known)
        return Node(plant=name, role=role, depth=level, parents=parents)

    return grow(plant, "", 0)


def ancestors(pedigree: Pedigree, plant: str) -> dict[str, int]:
    """Every ancestor and in how few generations it is reached."""
    lengths = networkx.single_source_shortest_path_length(graph_of(pedigree).reverse(), plant)
    return {name: steps for name, steps in lengths.items() if steps}


def inbreeding(pedigree: Pedigree, plant: str) -> float:
    """Wright's coefficient of inbreeding F, 0..1, founders taken as unrelated.

    F of a plant is the coancestry of its parents (Malecot 1948; Falconer and Mackay,
    Introduction to Quantitative Genetics, 4th ed. 1996, ch. 5). A selfed seedling of an
    unrelated plant has F = 1/2. A sport has the F of the plant it sported from; a plant with
    an unknown parent counts as not inbred.
    """
    entry = pedigree.of(plant)
    if entry.sport_of is not None:
        return inbreeding(pedigree, entry.sport_of)
    if entry.seed_parent is None or entry.pollen_parent is None:
        return 0.0
    return coancestry(pedigree, entry.seed_parent, entry.pollen_parent)


def coancestry(pedigree: Pedigree, first: str, second: str) -> float:
    """The chance that a gene drawn from each is the same by descent, 0..1."""
    return Kinship(pedigree).between(first, second)


class Kinship:
    """Coancestries within one pedigree, each pair worked out once.

    With itself a plant has (1 + F) / 2; of two plants the younger passes the question on to
    its parents, half of the answer from each.
    """

    def __init__(self, pedigree: Pedigree) -> None:
        self._pedigree = pedigree
        order = networkx.topological_sort(graph_of(pedigree))
        self._age = {name: rank for rank, name in enumerate(order)}
        self._known: dict[tuple[str, str], float] = {}

    def between(self, first: str, second: str) -> float:
        """The coancestry of two plants, 0..1."""
        # a stack of our own: a line of a thousand generations must not meet the recursion limit
        wanted = [self._pair(first, second)]
        while wanted:
            question = wanted[-1]
            needed = self._needed(*question)
            missing = [pair for pair in needed if pair not in self._known]
            if missing:
                wanted.extend(missing)
                continue
            self._known[question] = self._settle(question, needed)
            wanted.pop()
        return self._known[self._pair(first, second)]

    def _settle(self, question: tuple[str, str], needed: list[tuple[str, str]]) -> float:
        if question[0] == question[1]:
            return (1 + sum(self._known[pair] for pair in needed)) / 2
        return sum(self._known[pair] / 2 for pair in needed)

    def _needed(self, one: str, other: str) -> list[tuple[str, str]]:
        """The pairs that must be known first: none for a founder with itself."""
        if one == other:
            entry = self._pedigree.of(one)
            if entry.seed_parent is None or entry.pollen_parent is None:
                return []
            return [self._pair(entry.seed_parent, entry.pollen_parent)]
        younger, older = one, other
        if self._age.get(one, -1) < self._age.get(other, -1):
            younger, older = other, one
        return [self._pair(parent, older) for _, parent in _parents(self._pedigree.of(younger))]

    def _pair(self, one: str, other: str) -> tuple[str, str]:
        one, other = self._origin(one), self._origin(other)
        return (one, other) if one <= other else (other, one)

    def _origin(self, name: str) -> str:
        """A sport is the same plant as far as descent goes."""
        while (mother := self._pedigree.of(name).sport_of) is not None:
            name = mother
        return name
