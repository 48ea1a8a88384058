"""A WebDAV server on loopback: `server.py FOLDER USER PASSWORD` prints its address and stays until its input ends."""

import socket
import sys
import threading

from cheroot.wsgi import Server
from wsgidav.wsgidav_app import WsgiDAVApp


def main():
    folder, user, password = sys.argv[1:]
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    app = WsgiDAVApp({
        "provider_mapping": {"/dav": {"root": folder, "readonly": False}},
        "simple_dc": {"user_mapping": {"*": {user: {"password": password}}}},
        "http_authenticator": {"accept_basic": True, "accept_digest": False, "default_to_digest": False},
        # As most servers are set.
        "property_manager": True,
        "lock_storage": False,
        "verbose": 0,
    })
    server = Server(("127.0.0.1", port), app, numthreads=10)
    server.prepare()
    threading.Thread(target=server.serve, daemon=True).start()
    print(f"http://127.0.0.1:{port}/dav", flush=True)
    sys.stdin.read()
    server.stop()


if __name__ == "__main__":
    main()
