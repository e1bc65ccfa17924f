"""The local decisions that the rules read, and the strictest reading of each where it is missing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from signage.model.library import PolicyScalar, PolicyValue
from signage.rehearse.state.snapshot import UNCHANGING

HYGIENE_EACH = "hygiene-each"
RESPIRATOR_LAST = "respirator-last"
SOIL_NEEDS_WASH = "soil-needs-wash"
CHLORINE_ON_SKIN = "chlorine-on-skin"
OBSERVER_FOR_REMOVAL = "observer-for-removal"
MINIMUM_RUB = "min-rub"
MINIMUM_WASH = "min-wash"
GLOVE_HYGIENE_LIMIT = "glove-hygiene-limit"
NEEDS_BEFORE_KIT = "needs-before-kit"
DRYING_SECONDS = "drying-seconds"
MINIMUM_WIPE = "min-wipe"
AGENTS_ON_KIT = "agents-on-kit"
AGENTS_ON_GLOVE = "agents-on-glove"
AGENTS_ON_SKIN = "agents-on-skin"

CRITICAL_MARKS = "critical-marks"
MARK_EVERY_S1 = "every-s1"
MARK_EXPOSURE = "exposure"

STRICTEST: Mapping[str, PolicyScalar | tuple[str, ...]] = MappingProxyType(
    {
        HYGIENE_EACH: True,
        RESPIRATOR_LAST: True,
        SOIL_NEEDS_WASH: True,
        CHLORINE_ON_SKIN: False,
        OBSERVER_FOR_REMOVAL: True,
        MINIMUM_RUB: 30,
        MINIMUM_WASH: 60,
        GLOVE_HYGIENE_LIMIT: 0,
        NEEDS_BEFORE_KIT: True,
        DRYING_SECONDS: 0,
        MINIMUM_WIPE: 60,
        AGENTS_ON_KIT: (),
        AGENTS_ON_GLOVE: (),
        AGENTS_ON_SKIN: (),
    }
)
"""Times in seconds: the upper ends of 20 to 30 s for a rub and 40 to 60 s for a wash, WHO Guidelines on
Hand Hygiene in Health Care, 2009, read through secondary pages. A wiped surface stays wet for as long as
the label of the wipe says, often one minute: common practice, no source."""

_AS_A_MATTER_OF_COURSE = frozenset({NEEDS_BEFORE_KIT})
"""What holds in its strictest reading unless local policy says otherwise; its absence is no fault."""


@dataclass(slots=True)
class LocalPolicy:
    """The decisions of one library. ``missing`` gathers what was asked for and is not there."""

    values: Mapping[str, PolicyValue] = field(metadata=UNCHANGING)
    missing: set[str] = field(default_factory=set)

    def is_yes(self, key: str) -> bool:
        """A yes-or-no decision."""
        return bool(self._decided(key, bool))

    def number(self, key: str) -> int:
        """A decision that is a whole number."""
        value = self._decided(key, int)
        assert isinstance(value, int)
        return value

    def number_if_decided(self, key: str) -> int:
        """A whole number that only some hospitals decide; 0, and no fault, where nothing is decided."""
        return self.number(key) if key in self.values else 0

    def words(self, key: str) -> tuple[str, ...]:
        """A decision that is a list of words."""
        value = self._decided(key, tuple)
        assert isinstance(value, tuple)
        return value

    @property
    def critical_marks(self) -> str:
        """Which critical steps sheets mark; every one where nothing is decided, which is no fault."""
        decision = self.values.get(CRITICAL_MARKS)
        return MARK_EXPOSURE if decision is not None and decision.value == MARK_EXPOSURE else MARK_EVERY_S1

    def _decided(self, key: str, kind: type) -> PolicyScalar | tuple[str, ...]:
        """The local value if it is there and of this kind, else the strictest reading."""
        decision = self.values.get(key)
        if decision is not None and type(decision.value) is kind:
            return decision.value
        if key not in _AS_A_MATTER_OF_COURSE:
            self.missing.add(key)
        return STRICTEST[key]
