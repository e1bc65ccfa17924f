"""On request: two hundred phones for ten seconds on the loopback interface."""

import http.client
import sys
import threading
import time
from collections import Counter

import pytest
from serving import serving
from site_samples import site

from signage.produce.publish import write_site

PHONES = 200
SECONDS = 10


@pytest.fixture(scope="module")
def port(tmp_path_factory):
    folder = tmp_path_factory.mktemp("load")
    write_site(folder, site().files)
    with serving(folder) as port:
        yield port


def test_two_hundred_phones_for_ten_seconds(port, capsys):
    paths = [f"/{path.removesuffix('index.html')}" for path in site().files if path.endswith("/index.html")]
    results, waits, stop = Counter(), [], time.monotonic() + SECONDS

    def phone(number):
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
        place = number
        while time.monotonic() < stop:
            began = time.monotonic()
            connection.request("GET", paths[place % len(paths)], headers={"Accept-Encoding": "gzip"})
            response = connection.getresponse()
            response.read()
            waits.append(time.monotonic() - began)
            results[response.status] += 1
            place += 7
        connection.close()

    phones = [threading.Thread(target=phone, args=(number,)) for number in range(PHONES)]
    for each in phones:
        each.start()
    for each in phones:
        each.join()
    waits.sort()
    rate, half, most = len(waits) / SECONDS, waits[len(waits) // 2], waits[len(waits) * 99 // 100]
    with capsys.disabled():
        sys.stdout.write(f"\n{rate:.0f} pages a second, half within {half:.3f} s, 99 % within {most:.3f} s\n")
    assert most < 5
    assert set(results) == {200}
