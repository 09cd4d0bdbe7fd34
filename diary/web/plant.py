"""The page of one plant, and the plants that look like it."""

from starlette.requests import Request
from starlette.responses import Response

from diary.insight.likeness import nearest
from diary.insight.names import formula
from diary.records.choosing import shades_of
from diary.records.pages import find_plant, plant_page
from diary.web.desk import desk_of
from diary.web.shown import moments_of, shelf_of, trait_rows

ALIKE = 6  # look-alikes shown
FILM = 8  # stills in the strip


def page(request: Request) -> Response:
    """Everything known of one plant."""
    desk = desk_of(request)
    with desk.store() as store:
        found = plant_page(store, request.path_params["key"])
        shelf = shelf_of(store, moments_of(found.clips))
    heard = {belief.trait: str(belief.value) for belief in found.beliefs}
    seed = (
        (found.seedling and found.seedling.seed_parent)
        or (found.cross and found.cross.seed_parent)
        or (found.named and found.named.seed_parent)
        or heard.get("seed_parent")
    )
    pollen = (
        (found.seedling and found.seedling.pollen_parent)
        or (found.cross and found.cross.pollen_parent)
        or (found.named and found.named.pollen_parent)
        or heard.get("pollen_parent")
    )
    return desk.page(
        request,
        "plant.html",
        page=found,
        plant=found.plant,
        shelf=shelf,
        rows=trait_rows(found.beliefs, found.records),
        stills=[clip for clip in reversed(found.clips) if shelf.still(clip.moment)][:FILM],
        seed=seed or None,
        pollen=pollen or None,
        formula=formula(seed, pollen) if seed or pollen else None,
        decision=next((b for b in found.beliefs if b.trait == "decision"), None),
    )


def alike(request: Request) -> Response:
    """Look-alikes with their reasons, and sisters: a piece of the plant's page, asked for later."""
    desk = desk_of(request)
    with desk.store() as store:
        plant = find_plant(store, request.path_params["key"])
        looks = desk.looks(store)
        faces = desk.faces(store)
        descriptions = desk.memo.get("descriptions", looks.descriptions)
        mine = next((one for one in descriptions if one.plant.key == plant.key), None)
        near = nearest(mine, descriptions, limit=ALIKE) if mine else ()
        summary = next((one for one in looks.plants if one.plant.key == plant.key), None)
        parents = looks.parents(summary) if summary else (None, None)
        sisters = [
            one.plant
            for one in looks.plants
            if one.plant.key != plant.key and all(parents) and looks.parents(one) == parents
        ]
        shown = {one.plant.key for one in near} | {one.key for one in sisters[:12]}
        here = {key: faces.get(key) for key in shown}
        shelf = shelf_of(store, here.values())
    return desk.page(
        request,
        "_alike.html",
        plant=plant,
        described=mine is not None,
        near=near,
        sisters=sisters[:12],
        more_sisters=max(0, len(sisters) - 12),
        faces=here,
        shades={one.plant.key: shades_of(one) for one in looks.plants if one.plant.key in shown},
        shelf=shelf,
    )
