import json
import subprocess
import sys
import time
import urllib.request

DAY = ("--date", "2026-11-26")


def test_pages_as_json(run, ward):
    result = json.loads(run(ward, "pages", "--locale", "en", *DAY, "--format", "json").stdout)
    assert result["locales"] == ["en"]
    assert result["refused"] == []
    site = ward / result["site"]
    files = [path for path in site.rglob("*") if path.is_file() and path.name != "site-files.txt"]
    assert len(files) == result["files"]
    assert sum(path.stat().st_size for path in files) == result["bytes"]
    assert (site / "en" / "g1" / "gloves-off" / "index.html").is_file()
    assert result["pages"] == len([path for path in files if path.name == "index.html"])


def test_made_twice_every_byte_is_the_same_and_old_pages_go(run, ward):
    run(ward, "pages", *DAY)
    first = {path.relative_to(ward): path.read_bytes() for path in (ward / "output").rglob("*.html")}
    protocol = ward / "content" / "protocols" / "gloves.yaml"
    text = protocol.read_text(encoding="utf-8")
    protocol.write_text(text.replace("step: gloves-on", "step: both-gloves-on"), encoding="utf-8")
    assert json.loads(run(ward, "pages", *DAY, "--format", "json").stdout)["removed"] > 0
    assert not (ward / "output" / "site" / "en" / "g1" / "gloves-on").exists()
    protocol.write_text(text, encoding="utf-8")
    run(ward, "pages", *DAY)
    assert {path.relative_to(ward): path.read_bytes() for path in (ward / "output").rglob("*.html")} == first


def test_a_language_in_work_is_refused_and_the_others_are_made(run, ward):
    done = run(ward, "pages", "--locale", "en", "--locale", "fr", *DAY, expect=1)
    assert "Refused: fr" in done.stderr
    assert "in-use" in done.stderr
    assert (ward / "output" / "site" / "en" / "index.html").is_file()


def test_typing_errors_are_answered_with_what_exists(run, ward):
    assert "2026-11-26" in run(ward, "pages", "--date", "26.11.2026", expect=2).stderr
    assert "fr" in run(ward, "pages", "--locale", "xx", expect=2).stderr


def test_an_address_that_no_phone_reaches_is_a_warning(run, ward):
    assert "PG-1" not in run(ward, "pages", *DAY).stdout
    library = ward / "content" / "library.yaml"
    text = library.read_text(encoding="utf-8")
    library.write_text(text.replace("example-ward.internal", "localhost"), encoding="utf-8")
    message = run(ward, "pages", *DAY).stdout
    assert "PG-1" in message
    assert "library.yaml" in message


def test_serving_without_pages_says_what_to_do_first(run, folder):
    assert "Run 'signage pages' first" in run(folder, "serve", expect=2).stderr


def test_pages_are_served_to_this_machine_only_unless_asked(run, ward):
    run(ward, "pages", *DAY)
    server = subprocess.Popen(
        [sys.executable, "-u", "-m", "signage", "serve", "--port", "0"],
        cwd=ward,
        stdout=subprocess.PIPE,
        text=True,
        encoding="utf-8",
    )
    try:
        lines = [server.stdout.readline() for _ in range(3)]
        address = lines[1].strip()
        assert address.startswith("http://127.0.0.1:")
        assert "--address 0.0.0.0" in lines[2]
        assert "Put on the gloves" in _fetched(f"{address}en/g1/gloves-on/?r=K7M2")
        port = address.rstrip("/").rpartition(":")[2]
        assert "--port" in run(ward, "serve", "--port", port, expect=3).stderr
    finally:
        server.terminate()
        server.wait(timeout=20)
        server.stdout.close()


def _fetched(address):
    limit = time.monotonic() + 20
    while True:
        try:
            with urllib.request.urlopen(address, timeout=10) as answer:  # noqa: S310 - the loopback interface
                return answer.read().decode()
        except OSError:
            if time.monotonic() > limit:
                raise
            time.sleep(0.1)
