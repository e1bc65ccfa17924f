"""A small valid library, invented throughout, for somebody who begins."""

from importlib.resources import files
from importlib.resources.abc import Traversable


def starter_files() -> dict[str, bytes]:
    """The files of the library by their path below a new folder, such as ``content/kit.yaml``."""
    root = files("signage.load") / "starter_content"
    return {f"content/{name}": data for name, data in sorted(_files_below(root, "").items())}


def _files_below(folder: Traversable, prefix: str) -> dict[str, bytes]:
    """The YAML files of a folder and of the folders in it."""
    found: dict[str, bytes] = {}
    for entry in folder.iterdir():
        if entry.is_dir():
            found.update(_files_below(entry, f"{prefix}{entry.name}/"))
        elif entry.name.endswith(".yaml"):
            found[f"{prefix}{entry.name}"] = entry.read_bytes()
    return found
