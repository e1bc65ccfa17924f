"""Which function rehearses which verb."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from signage.model.choices import ActionVerb
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.carrying import drink, put_down, take
from signage.rehearse.verbs.clothes import change_clothes
from signage.rehearse.verbs.discarding import discard, hand_over, replace
from signage.rehearse.verbs.dressing import check, inspect, meet_need, put_on
from signage.rehearse.verbs.hygiene import clean_hands
from signage.rehearse.verbs.moving import move
from signage.rehearse.verbs.parts import fasten, lower_part, raise_part, unfasten
from signage.rehearse.verbs.resting import disinfect, do_nothing, sit, stand, stand_on_mat
from signage.rehearse.verbs.touching import touch
from signage.rehearse.verbs.undressing import take_off
from signage.rehearse.verbs.wiping import wipe

VERBS: Mapping[ActionVerb, Callable[[Scene, Act], None]] = MappingProxyType(
    {
        ActionVerb.NEED: meet_need,
        ActionVerb.INSPECT: inspect,
        ActionVerb.CHECK: check,
        ActionVerb.DON: put_on,
        ActionVerb.FASTEN: fasten,
        ActionVerb.UNFASTEN: unfasten,
        ActionVerb.DOFF: take_off,
        ActionVerb.DISCARD: discard,
        ActionVerb.HYGIENE: clean_hands,
        ActionVerb.TOUCH: touch,
        ActionVerb.ADJUST: touch,
        ActionVerb.MOVE: move,
        ActionVerb.SIT: sit,
        ActionVerb.STAND: stand,
        ActionVerb.DISINFECT: disinfect,
        ActionVerb.MAT: stand_on_mat,
        ActionVerb.WAIT: do_nothing,
        ActionVerb.SAY: do_nothing,
        ActionVerb.HANDOVER: hand_over,
        ActionVerb.REPLACE: replace,
        ActionVerb.BRANCH: do_nothing,
        ActionVerb.WIPE: wipe,
        ActionVerb.RAISE: raise_part,
        ActionVerb.LOWER: lower_part,
        ActionVerb.DRINK: drink,
        ActionVerb.CHANGE_CLOTHES: change_clothes,
        ActionVerb.TAKE: take,
        ActionVerb.PUT_DOWN: put_down,
    }
)
