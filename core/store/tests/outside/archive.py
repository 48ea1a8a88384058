"""Checks the entries of a backup without the program: archive.py ENTRIES.

ENTRIES is what age has made of `entries.age`. Signatures are checked by openssl, 3.0 or newer. The form of links and
signatures is told in chain.py, and in the backup's own README.txt.
"""

import hashlib
import json
import struct
import subprocess
import sys
import tempfile

# What stands before the 32 bytes of an Ed25519 key in the form that openssl reads (RFC 8410).
BEFORE_KEY = bytes.fromhex("302a300506032b6570032100")

with open(sys.argv[1], "rb") as file:
    lines = file.read().splitlines(keepends=True)
header, *entries, end = map(json.loads, lines)
if end != {"end": hashlib.sha256(b"".join(lines[:-1])).hexdigest()}:
    sys.exit("the end does not fit")


def signed(public, n, link, signature):
    with tempfile.NamedTemporaryFile() as key, tempfile.NamedTemporaryFile() as sig, tempfile.NamedTemporaryFile() as text:
        for file, content in [(key, BEFORE_KEY + public), (sig, signature), (text, b"secundine entry 1" + n + link)]:
            file.write(content)
            file.flush()
        openssl = ["openssl", "pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-inkey", key.name, "-rawin", "-in", text.name]
        return subprocess.run(openssl + ["-sigfile", sig.name], capture_output=True).returncode == 0


keys, ends, births = {}, {}, set()
for line in entries:
    if "key" in line:
        continue
    device = line["device"]
    if "public" in line:
        keys[device] = bytes.fromhex(line["public"])
        if hashlib.sha256(keys[device]).digest()[:16].hex() != device:
            sys.exit(f"the key of {device} is another device's")
        continue
    number, before = ends.get(device, (0, bytes(32)))
    of, birth_number = line["birth"].split("-")
    birth = bytes.fromhex(of) + struct.pack(">Q", int(birth_number))
    n = struct.pack(">Q", number + 1)
    # Of an entry whose birth was erased the digest is all there is.
    body = line.get("body")
    digest = bytes.fromhex(line["digest"]) if body is None else hashlib.sha256(body.encode()).digest()
    link = hashlib.sha256(b"secundine link 1" + before + birth + n + digest).digest()
    fits = line["n"] == number + 1 and line["link"] == link.hex()
    if not fits or not signed(keys[device], n, link, bytes.fromhex(line["signature"])):
        sys.exit(f"entry {line['n']} of {device} does not fit")
    ends[device] = (number + 1, link)
    if body is None:
        continue
    if json.loads(body)["id"] != f"{device}-{line['n']}":
        sys.exit(f"entry {line['n']} of {device} is another")
    births.add(line["birth"])
births.discard("0" * 32 + "-0")
if (header["entries"], header["births"]) != (sum(n for n, _ in ends.values()), len(births)):
    sys.exit("not as many as the header says")
for device, (n, _) in ends.items():
    print(f"{n} entries of {device} fit")
