"""A server of the training pages on the loopback interface, in a thread of the test process."""

import contextlib
import socket
import threading
import time

import uvicorn

from signage.pages.address import FILE_LIST
from signage.pages.server import SiteFolder, server_application


@contextlib.contextmanager
def serving(folder):
    """Yields the port; the server stops at the end."""
    listener = socket.socket()
    listener.bind(("127.0.0.1", 0))
    application = server_application(SiteFolder(folder, FILE_LIST))
    settings = uvicorn.Config(
        application, log_level="critical", access_log=False, server_header=False, lifespan="off"
    )
    server = uvicorn.Server(settings)
    thread = threading.Thread(target=server.run, kwargs={"sockets": [listener]}, daemon=True)
    thread.start()
    limit = time.monotonic() + 10
    while not server.started and time.monotonic() < limit:
        time.sleep(0.01)
    assert server.started
    try:
        yield listener.getsockname()[1]
    finally:
        server.should_exit = True
        thread.join(timeout=10)
        listener.close()
