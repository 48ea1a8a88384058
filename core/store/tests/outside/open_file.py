"""Opens a picture of another phone, as a backup's README.txt says: open_file.py ENTRIES FILE > PICTURE

ENTRIES is what age has made of `entries.age`, where its key stands; FILE lies in the backup's folder `files`.
"""

import hmac
import json
import os
import sys

import chacha

PIECE = 65_536 + 16


def hkdf(key, salt, info):
    """HKDF-SHA256, RFC 5869, 32 bytes."""
    return hmac.digest(hmac.digest(salt, key, "sha256"), info + b"\1", "sha256")


entries, file = sys.argv[1:]
with open(entries, "rb") as opened:
    lines = [json.loads(line) for line in opened]
keys = {line["file"]: bytes.fromhex(line["key"]) for line in lines if "key" in line}
with open(file, "rb") as opened:
    sealed = opened.read()
start = sealed.index(b"\n", sealed.index(b"\n---") + 1) + 1
nonce, payload = sealed[start : start + 16], sealed[start + 16 :]
key = hkdf(keys[os.path.basename(file)], nonce, b"payload")
for number, at in enumerate(range(0, len(payload), PIECE)):
    last = at + PIECE >= len(payload)
    plain = chacha.unseal(key, number.to_bytes(11, "big") + bytes([last]), b"", payload[at : at + PIECE])
    if plain is None:
        sys.exit("it does not open, or was altered")
    sys.stdout.buffer.write(plain)
