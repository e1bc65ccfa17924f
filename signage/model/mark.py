"""What a sheet is printed as."""

from enum import StrEnum


class Mark(StrEnum):
    """``none`` is a released sheet, ``proof`` one that is known to have faults, ``refused`` none at all.

    ``demonstration`` is one that was released in an invented library: signed, and not for clinical use.
    """

    NONE = "none"
    DEMONSTRATION = "demonstration"
    DRAFT = "draft"
    PROOF = "proof"
    REFUSED = "refused"

    @property
    def is_released(self) -> bool:
        """Whether somebody has signed it as it is: it names who, and no word of it is unverified."""
        return self in {Mark.NONE, Mark.DEMONSTRATION}
