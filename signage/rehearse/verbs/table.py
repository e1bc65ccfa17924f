"""Which function rehearses which verb."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.discarding import discard, hand_over, replace
from signage.rehearse.verbs.dressing import check, fasten, inspect, meet_need, put_on, unfasten
from signage.rehearse.verbs.hygiene import clean_hands
from signage.rehearse.verbs.moving import move
from signage.rehearse.verbs.resting import disinfect, do_nothing, sit, stand, stand_on_mat
from signage.rehearse.verbs.touching import touch
from signage.rehearse.verbs.undressing import take_off

VERBS: Mapping[str, Callable[[Scene, Act], None]] = MappingProxyType(
    {
        "need": meet_need,
        "inspect": inspect,
        "check": check,
        "don": put_on,
        "fasten": fasten,
        "unfasten": unfasten,
        "doff": take_off,
        "discard": discard,
        "hygiene": clean_hands,
        "touch": touch,
        "adjust": touch,
        "move": move,
        "sit": sit,
        "stand": stand,
        "disinfect": disinfect,
        "mat": stand_on_mat,
        "wait": do_nothing,
        "say": do_nothing,
        "handover": hand_over,
        "replace": replace,
        "branch": do_nothing,
    }
)
