"""What a sheet is printed as."""

from enum import StrEnum


class Mark(StrEnum):
    """``none`` is a released sheet, ``proof`` one that is known to have faults, ``refused`` none at all."""

    NONE = "none"
    DRAFT = "draft"
    PROOF = "proof"
    REFUSED = "refused"
