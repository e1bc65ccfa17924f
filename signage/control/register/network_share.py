"""Whether a folder lies on another machine: locks of files cannot be trusted there."""

from __future__ import annotations

import sys
from pathlib import Path

_NETWORK = ("nfs", "cifs", "smb", "afs", "ncp", "9p", "ceph", "gluster", "lustre", "fuse.sshfs", "davfs")
"""How the names of file systems of other machines begin, as ``/proc/self/mountinfo`` tells them (proc(5))."""

_REMOTE_DRIVE = 4
"""DRIVE_REMOTE of GetDriveTypeW (Windows)."""


def is_on_network_share(path: Path) -> bool:
    """Whether it is known to lie on a network share; False where the system does not tell."""
    resolved = path.resolve()
    if sys.platform == "win32":
        import ctypes  # noqa: PLC0415 - only there

        root = resolved.anchor
        return root.startswith("\\\\") or ctypes.windll.kernel32.GetDriveTypeW(root) == _REMOTE_DRIVE
    try:
        mounts = Path("/proc/self/mountinfo").read_text(encoding="utf-8", errors="replace")
    except OSError:
        return False
    return is_of_network(file_system_of(resolved.as_posix(), mounts))


def is_of_network(file_system: str) -> bool:
    """Whether a file system of that name lies on another machine."""
    return file_system.startswith(_NETWORK)


def file_system_of(path: str, mounts: str) -> str:
    """The type of the file system that holds a path, from the lines of ``/proc/self/mountinfo`` (proc(5))."""
    found, longest = "", -1
    for line in mounts.splitlines():
        before, _, after = line.partition(" - ")
        fields = before.split(" ")
        if len(fields) < 5 or not after:
            continue
        point = fields[4].encode().decode("unicode_escape", "replace").rstrip("/")
        if (path == point or path.startswith(f"{point}/")) and len(point) >= longest:
            found, longest = after.split(" ")[0], len(point)
    return found
