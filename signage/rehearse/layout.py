"""The ward as a graph of zones and doors: no way may lead round the place where kit comes off."""

from __future__ import annotations

from collections import deque
from collections.abc import Collection

from signage.model.choices import ZoneClass
from signage.model.library import Ward
from signage.rehearse.rules.places import WAY_ROUND_REMOVAL
from signage.rehearse.state.scene import Scene


def way_round(ward: Ward, start: str, avoiding: Collection[str]) -> tuple[str, ...] | None:
    """The shortest way from a zone to any clean zone that passes none of the zones ``avoiding``.

    A cut test: with the zones of removal taken out of the graph, no such way may remain. None is good.
    """
    came_from: dict[str, str | None] = {start: None}
    waiting = deque([start])
    while waiting:
        here = waiting.popleft()
        if ward.zones[here].zone_class is ZoneClass.CLEAN and here != start:
            return _way(came_from, here)
        for end in sorted(door.end for door in ward.doors if door.start == here):
            if end in ward.zones and end not in came_from and end not in avoiding:
                came_from[end] = here
                waiting.append(end)
    return None


def _way(came_from: dict[str, str | None], end: str) -> tuple[str, ...]:
    way = [end]
    while (before := came_from[way[-1]]) is not None:
        way.append(before)
    return tuple(reversed(way))


def look_at_ways(scene: Scene) -> None:
    """Rule ZN-6 for every contaminated zone that this protocol enters, unless kit comes off right there."""
    ward = scene.setting.ward
    if not scene.zones_of_removal:
        return
    for zone in sorted(scene.contaminated_zones - scene.zones_of_removal):
        way = way_round(ward, zone, scene.zones_of_removal)
        if way is not None:
            names = " to ".join(ward.zones[each].name for each in way)
            last = next(door for door in ward.doors if (door.start, door.end) == way[-2:])
            message = f"A way leads round the place where kit comes off: {names}."
            scene.report_form(WAY_ROUND_REMOVAL, message, last.place, item=zone)
