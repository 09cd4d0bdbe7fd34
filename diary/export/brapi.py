"""The diary as BrAPI 2.1 answers, one document for each kind of thing. Pure.

Each is what a BrAPI server would answer: `{"metadata": ..., "result": {"data": [...]}}`, all on
one page (the first page is 0).
"""

from collections.abc import Callable, Iterable
from typing import Any

from diary.export import brapi_plants, brapi_traits
from diary.insight.overview import Overview

CONTEXT = "https://brapi.org/jsonld/context/metadata.jsonld"

# file name: what goes into it
_CALLS: dict[str, Callable[[Overview], Iterable[dict[str, Any]]]] = {
    "germplasm": brapi_plants.germplasm,
    "crossingprojects": brapi_plants.crossing_projects,
    "crosses": brapi_plants.crosses,
    "pedigree": brapi_plants.pedigree_nodes,
    "variables": brapi_traits.observation_variables,
    "observationunits": brapi_traits.observation_units,
    "observations": brapi_traits.observations,
}
CALLS = tuple(_CALLS)


def brapi_documents(overview: Overview) -> dict[str, dict[str, Any]]:
    """All documents by the name of the BrAPI call they answer."""
    return {name: _envelope(list(make(overview))) for name, make in _CALLS.items()}


def _envelope(data: list[dict[str, Any]]) -> dict[str, Any]:
    return {
        "@context": [CONTEXT],
        "metadata": {
            "datafiles": [],
            "pagination": {
                "currentPage": 0,
                "pageSize": max(1, len(data)),
                "totalCount": len(data),
                "totalPages": 1,
            },
            "status": [],
        },
        "result": {"data": data},
    }
