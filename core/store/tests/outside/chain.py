"""Checks the chain of every device without the program: chain.py PLAIN HEAD.

PLAIN is what plain.py has made of the database, HEAD the file beside it. Signatures are checked by openssl, 3.0 or newer.

    link(n) = SHA-256("secundine link 1" + link(n-1) + birth + n + SHA-256(body)), link(0) is 32 zero bytes
    the device signs "secundine entry 1" + n + link(n) with Ed25519
    its id is the first 16 bytes of SHA-256(public key)
"""

import hashlib
import sqlite3
import struct
import subprocess
import sys
import tempfile

# What stands before the 32 bytes of an Ed25519 key in the form that openssl reads (RFC 8410).
BEFORE_KEY = bytes.fromhex("302a300506032b6570032100")


def signed(public, n, link, signature):
    with tempfile.NamedTemporaryFile() as key, tempfile.NamedTemporaryFile() as sig, tempfile.NamedTemporaryFile() as text:
        for file, content in [(key, BEFORE_KEY + public), (sig, signature), (text, b"secundine entry 1" + n + link)]:
            file.write(content)
            file.flush()
        openssl = ["openssl", "pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-inkey", key.name, "-rawin", "-in", text.name]
        return subprocess.run(openssl + ["-sigfile", sig.name], capture_output=True).returncode == 0


def chain(store, device, public):
    """Every link, from link(0) on."""
    links = [bytes(32)]
    rows = "SELECT n, birth, body, link, signature FROM entry WHERE device = ? ORDER BY n"
    for count, (number, birth, body, link, signature) in enumerate(store.execute(rows, [device]), 1):
        n = struct.pack(">Q", count)
        made = hashlib.sha256(b"secundine link 1" + links[-1] + birth + n + hashlib.sha256(body).digest()).digest()
        if number != count or made != link or not signed(public, n, link, signature):
            sys.exit(f"entry {count} of {device.hex()} does not fit")
        links.append(link)
    return links


def main(plain, head):
    store = sqlite3.connect(plain)
    devices = store.execute("SELECT id, public, seed IS NOT NULL FROM device").fetchall()
    unknown = store.execute("SELECT count(*) FROM entry WHERE device NOT IN (SELECT id FROM device)").fetchone()[0]
    if unknown:
        sys.exit(f"{unknown} entries of devices without a key")
    for device, public, own in devices:
        if hashlib.sha256(public).digest()[:16] != device:
            sys.exit(f"the key of {device.hex()} is another device's")
        links = chain(store, device, public)
        print(f"{len(links) - 1} entries of {device.hex()} fit")
        if own:
            with open(head, encoding="ascii") as file:
                title, n, link, signature = file.read().splitlines()
            at = int(n)
            if title != "secundine head 1" or not signed(public, struct.pack(">Q", at), bytes.fromhex(link), bytes.fromhex(signature)):
                sys.exit("the head is not this device's")
            if at >= len(links):
                sys.exit(f"entry {len(links)} is cut off")
            if links[at] != bytes.fromhex(link):
                sys.exit(f"entry {at} is not the one that the head tells of")


if __name__ == "__main__":
    main(*sys.argv[1:])
