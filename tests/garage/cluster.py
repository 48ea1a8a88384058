"""A cluster of Garage on loopback, in a folder of its own.

`cluster.py GARAGE` starts three nodes that keep each object three times, makes a bucket and a key, and prints as one line of
JSON {endpoints, region, bucket, key, secret}. Each line that it is given is then a command, answered by one line of JSON:

    kill N            node N (from 1) is killed as by a power cut
    start N           and started again
    key NAME RIGHTS   a key with RIGHTS (read, write, owner, or several with commas; none) on the bucket: {key, secret}
    quota OBJECTS     the bucket takes so many objects; none: as many as come
    garage ARGS…      what Garage's own command line says: {said}

When its input ends, all nodes are killed and the folder is removed.
"""

import json
import pathlib
import re
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time

REGION, BUCKET = "garage", "practice"


def free_ports(count):
    """Ports that nobody listens on, of the machine's own choosing."""
    sockets = [socket.socket() for _ in range(count)]
    for one in sockets:
        one.bind(("127.0.0.1", 0))
    ports = [one.getsockname()[1] for one in sockets]
    for one in sockets:
        one.close()
    return ports


class Cluster:
    def __init__(self, garage, folder):
        self.garage, self.folder = garage, folder
        self.running, self.endpoints = {}, []

    def begin(self, count=3):
        """Starts the nodes, makes them know each other, and makes the bucket."""
        folder, rpc_secret, ports = self.folder, secrets.token_hex(32), free_ports(3 * count)
        nodes = range(1, count + 1)
        for node in nodes:
            s3, rpc, admin = ports[3 * node - 3:3 * node]
            self.endpoints.append(f"http://127.0.0.1:{s3}")
            config = self.config(node)
            config.touch(mode=0o600)
            config.write_text(f"""\
metadata_dir = "{folder}/{node}/meta"
data_dir = "{folder}/{node}/data"
db_engine = "sqlite"
metadata_fsync = true
data_fsync = true
replication_factor = {count}
consistency_mode = "consistent"
rpc_bind_addr = "127.0.0.1:{rpc}"
rpc_public_addr = "127.0.0.1:{rpc}"
rpc_secret = "{rpc_secret}"
[s3_api]
s3_region = "{REGION}"
api_bind_addr = "127.0.0.1:{s3}"
root_domain = ".s3.garage.localhost"
[admin]
api_bind_addr = "127.0.0.1:{admin}"
""")
            self.start(node)
        ids = [self.until("node", "id", "-q", node=node).strip() for node in nodes]
        for node, own in zip(nodes, ids):
            # Without it a node knows whom it wrote down last, which it does once a minute (Garage 2.5.0): killed before, nobody; and
            # whoever is away longer than ten tries of half a minute is forgotten by the others too.
            config, others = self.config(node), [one for one in ids if one != own]
            config.write_text(f"bootstrap_peers = {json.dumps(others)}\n{config.read_text()}")
            self.kill(node)
            self.start(node)
        for node, one in enumerate(ids, 1):
            self.until("layout", "assign", "-z", f"dc{node}", "-c", "1G", one[:16])
        self.until("layout", "apply", "--version", "1")
        for node in nodes:
            # The others hear of it within ten seconds or so; until then they are "not ready" for some of the objects.
            self.until("layout", "history", node=node, says="#1 ")
        self.until("bucket", "create", BUCKET)

    def config(self, node):
        return self.folder / f"n{node}.toml"

    def start(self, node):
        log = (self.folder / f"n{node}.log").open("ab")
        command = [self.garage, "-c", self.config(node), "server"]
        self.running[node] = subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=log, stderr=log)
        port = int(self.endpoints[node - 1].rsplit(":", 1)[1])
        deadline = time.monotonic() + 60
        while True:
            try:
                return socket.create_connection(("127.0.0.1", port), 1).close()
            except OSError:
                if time.monotonic() > deadline or self.running[node].poll() is not None:
                    sys.exit(f"node {node} does not start: {(self.folder / f'n{node}.log').read_text()[-2000:]}")
                time.sleep(0.05)

    def kill(self, node):
        process = self.running.pop(node)
        process.send_signal(signal.SIGKILL)
        process.wait()

    def ask(self, *words, node=None):
        """What Garage's command line says through a node that runs, and what it complains of."""
        config = self.config(node or min(self.running))
        done = subprocess.run([self.garage, "-c", config, *words], capture_output=True, text=True, timeout=120)
        return done.returncode, done.stdout, done.stderr

    def until(self, *words, node=None, says=""):
        """The same, again until it works and says so: nodes take a moment to know each other."""
        deadline = time.monotonic() + 60
        while True:
            code, said, complained = self.ask(*words, node=node)
            if code == 0 and says in said:
                return said
            if time.monotonic() > deadline:
                sys.exit(f"{words}: {complained or said}")
            time.sleep(0.3)

    def key(self, name, rights):
        said = self.until("key", "create", name)
        key = re.search(r"Key ID:\s+(\S+)", said).group(1)
        secret = re.search(r"Secret key:\s+(\S+)", said).group(1)
        if rights != "none":
            self.until("bucket", "allow", *(f"--{right}" for right in rights.split(",")), BUCKET, "--key", key)
        return {"key": key, "secret": secret}

    def do(self, line):
        match line.split():
            case ["kill", node]:
                self.kill(int(node))
            case ["start", node]:
                self.start(int(node))
            case ["key", name, rights]:
                return self.key(name, rights)
            case ["quota", objects]:
                self.until("bucket", "set-quotas", "--max-objects", objects, BUCKET)
            case ["garage", *words]:
                return {"said": self.until(*words)}
            case _:
                sys.exit(f"no such command: {line}")
        return {}


def main():
    garage = shutil.which(sys.argv[1])
    if garage is None:
        sys.exit(f"{sys.argv[1]} is not there: `make garage` builds it")
    with tempfile.TemporaryDirectory() as folder:
        cluster = Cluster(garage, pathlib.Path(folder))
        try:
            cluster.begin()
            known = {"endpoints": cluster.endpoints, "region": REGION, "bucket": BUCKET}
            print(json.dumps(known | cluster.key("app", "read,write")), flush=True)
            for line in sys.stdin:
                print(json.dumps(cluster.do(line)), flush=True)
        finally:
            for node in list(cluster.running):
                cluster.kill(node)


if __name__ == "__main__":
    main()
