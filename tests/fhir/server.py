"""A FHIR server on loopback; Helios where `SECUNDINE_HFS` names it.

`server.py FILE…` is given transactions, and prints, as one JSON text, what it holds after each:
[{status, entries: [status of each entry], resources}].
`server.py` alone prints its address and stays; for each line that it is given it prints what it holds, as one line of JSON.
"""

import contextlib
import json
import os
import pathlib
import socket
import sys
import tempfile
import threading
import time

import uvicorn
from helios import ask, served
from sekmet.config import Settings
from sekmet.main import create_app

TYPES = [
    "AllergyIntolerance", "Binary", "Composition", "DocumentReference", "Encounter", "MedicationAdministration", "Observation",
    "Organization", "Patient", "Practitioner", "Procedure", "Provenance", "RelatedPerson",
]


def held(base):
    """Every resource that the server finds by its type."""
    resources = []
    for kind in TYPES:
        _, found = ask(f"{base}/{kind}?_count=1000")
        inside = [entry["resource"] for entry in found.get("entry", [])]
        assert len(inside) == found.get("total", len(inside)), f"{kind}: {len(inside)} of {found['total']}"
        resources += inside
    return resources


@contextlib.contextmanager
def sekmet():
    """The server's address, as long as it is served."""
    with tempfile.TemporaryDirectory() as folder, socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        port = listening.getsockname()[1]
        base = f"http://127.0.0.1:{port}/fhir"
        settings = Settings(base_url=base, host="127.0.0.1", port=port, data_dir=folder, simulator={"enabled": False},
                            own_private_key_path=f"{folder}/key.pem")
        server = uvicorn.Server(uvicorn.Config(create_app(settings), log_level="warning"))
        running = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
        running.start()
        while not server.started:
            time.sleep(0.05)
        yield base
        server.should_exit = True
        running.join(timeout=10)


def main():
    told = []
    with served() if "SECUNDINE_HFS" in os.environ else sekmet() as base:
        for name in sys.argv[1:]:
            status, answer = ask(base, pathlib.Path(name).read_bytes())
            entries = [entry["response"]["status"] for entry in answer.get("entry", [])]
            told.append({"status": status, "entries": entries, "resources": held(base), "answer": answer.get("issue")})
        if not sys.argv[1:]:
            print(base, flush=True)
            for _ in sys.stdin:
                print(json.dumps(held(base)), flush=True)
    if told:
        json.dump(told, sys.stdout)


main()
