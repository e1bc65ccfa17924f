"""The site on the local network: read-only, from memory, with headers that let a browser do little.

Every file is read when the server starts and again when the list of files changes. A request only looks
up a name, so no path can lead out of the folder.
"""

from __future__ import annotations

import gzip
import hashlib
import mimetypes
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from urllib.parse import quote

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from signage.pages import address

LONGEST_PATH = 1024
"""Characters; no page of a site has a tenth of it."""

LARGEST_FILE = 4_000_000
"""Bytes; a larger file in the folder is no part of a site."""

HEADERS = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
        "font-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "Cache-Control": "no-cache",
}
"""Sent with every answer. A browser may keep a page, but asks each time whether it is still the same."""

_TYPES = {
    ".js": "text/javascript",
    ".svg": "image/svg+xml",
    ".css": "text/css",
    ".html": "text/html",
    ".woff2": "font/woff2",
}


@dataclass(frozen=True)
class StoredFile:
    """A file as it is sent."""

    data: bytes
    media_type: str
    tag: str

    @cached_property
    def packed(self) -> bytes:
        """The data as gzip, made when a browser first asks for it: a whole site would take seconds."""
        return gzip.compress(self.data, 6, mtime=0)


class SiteFolder:
    """The files of a folder by path, read anew when ``list_name`` in it changes."""

    def __init__(self, folder: Path, list_name: str) -> None:
        self._folder = folder
        self._list = folder / list_name
        self._seen = self._stamp()
        self._files = read_files(folder)

    def files(self) -> Mapping[str, StoredFile]:
        """The files as the last finished run of the programme left them."""
        stamp = self._stamp()
        if stamp != self._seen:
            self._files = read_files(self._folder)
            self._seen = stamp
        return self._files

    def _stamp(self) -> tuple[int, int]:
        try:
            found = self._list.stat()
        except OSError:
            return (0, 0)
        return (found.st_mtime_ns, found.st_size)


def read_files(folder: Path) -> dict[str, StoredFile]:
    """All files below a folder that lie in it: no links to elsewhere, no hidden ones, none too large."""
    root = folder.resolve()
    files: dict[str, StoredFile] = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        is_hidden = any(part.startswith(".") for part in path.relative_to(folder).parts)
        if is_hidden or not path.is_file() or root not in path.resolve().parents:
            continue
        if path.stat().st_size <= LARGEST_FILE:
            files[name] = _stored(name, path.read_bytes())
    return files


def _stored(name: str, data: bytes) -> StoredFile:
    suffix = Path(name).suffix.lower()
    media_type = _TYPES.get(suffix) or mimetypes.guess_type(name)[0] or "application/octet-stream"
    if media_type.startswith("text/"):
        media_type += "; charset=utf-8"
    tag = f'"{hashlib.sha256(data).hexdigest()[:24]}"'
    return StoredFile(data, media_type, tag)


def server_application(site: SiteFolder) -> Starlette:
    """The application to serve; it answers GET and HEAD and refuses every other method."""

    async def answer(request: Request) -> Response:
        return _answer(site.files(), request)

    return Starlette(
        routes=[Route("/{path:path}", answer, methods=["GET", "HEAD"])], exception_handlers={405: _refuse}
    )


async def _refuse(_request: Request, _error: Exception) -> Response:
    return Response("Only reading is possible.\n", 405, {**HEADERS, "Allow": "GET, HEAD"}, "text/plain")


def _answer(files: Mapping[str, StoredFile], request: Request) -> Response:
    path = request.url.path if len(request.scope["path"]) <= LONGEST_PATH else ""
    if not path:
        return Response("The address is too long.\n", 414, HEADERS, "text/plain")
    name = str(request.scope["path"]).removeprefix("/")
    if (not name or name.endswith("/")) and address.file_of(name) in files:
        return _file(files[address.file_of(name)], request)
    if name in files:
        return _file(files[name], request)
    if address.file_of(f"{name}/") in files:
        query = f"?{request.url.query}" if request.url.query else ""
        return RedirectResponse(f"/{quote(name)}/{query}", 301, HEADERS)
    missing = files.get(address.NOT_FOUND_FILE)
    if missing is None:
        return Response("There is no page here.\n", 404, HEADERS, "text/plain")
    return _file(missing, request, 404)


def _file(file: StoredFile, request: Request, status: int = 200) -> Response:
    headers = {**HEADERS, "ETag": file.tag, "Vary": "Accept-Encoding", "Content-Type": file.media_type}
    if status == 200 and file.tag in request.headers.get("if-none-match", ""):
        return Response(None, 304, headers)
    if "gzip" in request.headers.get("accept-encoding", ""):
        return Response(file.packed, status, {**headers, "Content-Encoding": "gzip"})
    return Response(file.data, status, headers)
