import contextlib
import gzip
import http.client
import socket
import threading
import time
from collections import Counter

import pytest
from serving import serving

from signage.produce.publish import write_site

FILES = {
    "index.html": b"<p>start</p>",
    "404.html": b"<p>no page</p>",
    "ar/p1/apron-off/index.html": "<p>مريلة</p>".encode() * 50,
    "site-assets/site.css": b"p{}",
    "site-assets/site.js": b"1",
    "site-assets/a.svg": b"<svg/>",
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    outer = tmp_path_factory.mktemp("served")
    (outer / "secret.txt").write_text("secret", encoding="utf-8")
    site = outer / "site"
    write_site(site, FILES)
    (site / "leak.txt").symlink_to(outer / "secret.txt")
    (site / ".hidden").write_text("hidden", encoding="utf-8")
    return site


@pytest.fixture(scope="module")
def port(folder):
    with serving(folder) as port:
        yield port


def ask(port, path, method="GET", headers=None):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.putrequest(method, path, skip_accept_encoding=True)
    for name, value in (headers or {}).items():
        connection.putheader(name, value)
    connection.endheaders()
    response = connection.getresponse()
    body = response.read()
    connection.close()
    return response, body


@pytest.mark.parametrize(
    ("path", "file", "kind"),
    [
        ("/", "index.html", "text/html; charset=utf-8"),
        ("/?r=K7M2", "index.html", "text/html; charset=utf-8"),
        ("/ar/p1/apron-off/?r=K7M2", "ar/p1/apron-off/index.html", "text/html; charset=utf-8"),
        ("/ar/p1/apron-off/index.html", "ar/p1/apron-off/index.html", "text/html; charset=utf-8"),
        ("/site-assets/site.js", "site-assets/site.js", "text/javascript; charset=utf-8"),
        ("/site-assets/a.svg", "site-assets/a.svg", "image/svg+xml"),
    ],
)
def test_files_come_as_they_are(port, path, file, kind):
    response, body = ask(port, path)
    assert (response.status, body) == (200, FILES[file])
    assert response.headers["content-type"] == kind


def test_a_folder_without_slash_leads_to_the_folder_and_keeps_the_code(port):
    response, _ = ask(port, "/ar/p1/apron-off?r=K7M2")
    assert response.status == 301
    assert response.headers["location"] == "/ar/p1/apron-off/?r=K7M2"


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/ar/../../secret.txt",
        "/%2e%2e%2f%2e%2e%2fetc/passwd",
        "/....//secret.txt",
        "/..\\secret.txt",
        "/..%5csecret.txt",
        "//etc/passwd",
        "/leak.txt",
        "/.hidden",
        "/index.html%00.txt",
        "/site-files.txt/../../secret.txt",
        "/ar/",
        "/%ff%fe",
    ],
)
def test_nothing_outside_the_site_is_found(port, path):
    response, body = ask(port, path)
    assert response.status == 404
    assert body == FILES["404.html"]


def test_another_host_is_never_a_target(port):
    response, _ = ask(port, "//elsewhere.example/ar/p1/apron-off")
    assert response.status == 404


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND"])
def test_only_reading_is_possible(port, method):
    response, _ = ask(port, "/", method)
    assert response.status == 405
    assert response.headers["allow"] == "GET, HEAD"


def test_head_has_no_body(port):
    response, body = ask(port, "/", "HEAD")
    assert (response.status, body) == (200, b"")
    assert response.headers["content-length"] == str(len(FILES["index.html"]))


def test_a_long_address_is_refused_and_a_huge_one_too(port):
    assert ask(port, "/" + "a" * 2000)[0].status == 414
    with socket.create_connection(("127.0.0.1", port), timeout=5) as raw, contextlib.suppress(OSError):
        raw.sendall(b"GET /" + b"a" * 200_000)  # the server may hang up before it has all
        assert raw.recv(12).startswith(b"HTTP/1.1 4")
    assert ask(port, "/")[0].status == 200


def test_headers_let_a_browser_do_little(port):
    for path in ("/", "/nowhere", "/ar/p1/apron-off"):
        headers = ask(port, path)[0].headers
        policy = headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["referrer-policy"] == "no-referrer"
        assert headers["cache-control"] == "no-cache"
        assert "set-cookie" not in headers
        assert "server" not in headers


def test_a_browser_that_has_the_page_is_told_so(port):
    tag = ask(port, "/")[0].headers["etag"]
    response, body = ask(port, "/", headers={"If-None-Match": tag})
    assert (response.status, body) == (304, b"")
    assert ask(port, "/", headers={"If-None-Match": '"other"'})[0].status == 200


def test_packed_where_the_browser_can_unpack(port):
    response, body = ask(port, "/ar/p1/apron-off/", headers={"Accept-Encoding": "gzip, br"})
    assert response.headers["content-encoding"] == "gzip"
    assert gzip.decompress(body) == FILES["ar/p1/apron-off/index.html"]
    assert len(body) < len(FILES["ar/p1/apron-off/index.html"]) / 2


def test_new_pages_are_shown_without_a_new_start(tmp_path):
    write_site(tmp_path, {"index.html": b"old"})
    with serving(tmp_path) as port:
        assert ask(port, "/")[1] == b"old"
        write_site(tmp_path, {"index.html": b"new", "more/index.html": b"more"})
        assert ask(port, "/")[1] == b"new"
        assert ask(port, "/more/")[1] == b"more"


def test_a_broken_request_harms_nobody_else(port):
    with socket.create_connection(("127.0.0.1", port), timeout=5) as raw:
        raw.sendall(b"\x00\xff nonsense\r\n\r\n")
        assert raw.recv(100).startswith(b"HTTP/1.1 400")
    assert ask(port, "/")[0].status == 200


def test_two_hundred_phones_at_once(port):
    """A short form of tests/speed/test_server_load.py."""
    results, stop = Counter(), time.monotonic() + 2

    def phone():
        try:
            connection = http.client.HTTPConnection("127.0.0.1", port, timeout=30)
            is_first = True
            while is_first or time.monotonic() < stop:
                connection.request("GET", "/ar/p1/apron-off/")
                results[connection.getresponse().read() == FILES["ar/p1/apron-off/index.html"]] += 1
                is_first = False
            connection.close()
        except OSError as error:
            results[type(error).__name__] += 1

    phones = [threading.Thread(target=phone) for _ in range(200)]
    for each in phones:
        each.start()
    for each in phones:
        each.join()
    assert set(results) == {True}
    assert results[True] >= 200  # each of them has its page, however busy the machine
