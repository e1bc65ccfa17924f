"""What earlier runs kept, for a command that may use it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from signage.ground.kept import Kept


def kept_of_user(*, is_fresh: bool) -> Kept:
    """The results of this user; a fresh run uses none of them, and keeps its own for later ones."""
    from signage.ground.kept import kept_folder, open_kept

    return open_kept(kept_folder(), is_fresh=is_fresh)
