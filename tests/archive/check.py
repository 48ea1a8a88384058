#!/usr/bin/env python3
"""Reads an archive as core/store/ARCHIVE.md says and checks it: check.py FILE [DIGITS OF A PRINTED RECORD]

Written from that document alone. Ends with 0 where all fits, with 1 and a line that says what does not.
"""
import hashlib
import json
import sys
from collections import defaultdict

from nacl.exceptions import BadSignatureError
from nacl.signing import VerifyKey

sha256 = lambda *parts: hashlib.sha256(b"".join(parts)).digest()


def key_of_birth(birth):
    device, n = birth.split("-")
    return bytes.fromhex(device) + int(n).to_bytes(8, "big")


def check(path, digits):
    raw = open(path, "rb").read()
    lines = [json.loads(line) for line in raw.splitlines()]
    header, end = lines[0], lines[-1]
    assert header["form"] == 1, "a later form"
    assert raw.endswith(b"\n") and end["end"] == sha256(raw[: raw.rstrip().rindex(b"\n") + 1]).hex(), "the end does not fit"
    keys, entries = {}, []
    for line in lines[1:-1]:
        if "signature" in line:
            entries.append(line)
        elif "public" in line:
            keys[line["device"]] = bytes.fromhex(line["public"])
    assert len(entries) == header["entries"], "the entries are not as many as the header says"
    for device, public in keys.items():
        assert sha256(public)[:16].hex() == device, f"device {device} stands with the key of another"
    births, last, gaps = defaultdict(list), (None, 0, bytes(32)), 0
    for entry in entries:
        device, n, body = entry["device"], entry["n"], entry.get("body")
        digest = sha256(body.encode()) if body is not None else bytes.fromhex(entry["digest"])
        name = f"entry {n} of {device}"
        follows = last[0] == device and last[1] == n - 1
        before = last[2] if follows else bytes(32) if n == 1 else bytes.fromhex(entry.get("before", ""))
        gaps += not follows and n > 1
        assert len(before) == 32, f"the entry before {name} is missing"
        place = n.to_bytes(8, "big")
        link = sha256(b"secundine link 1", before, key_of_birth(entry["birth"]), place, digest)
        assert link.hex() == entry["link"], f"{name} does not follow from the one before it, or was altered"
        try:
            VerifyKey(keys[device]).verify(b"secundine entry 1" + place + link, bytes.fromhex(entry["signature"]))
        except BadSignatureError:
            raise AssertionError(f"{name} is not signed by its device") from None
        last = (device, n, link)
        if body is None:
            continue
        fact = json.loads(body)
        assert (fact["id"], fact["birth"]) == (f"{device}-{n}", entry["birth"]), f"{name} is another"
        assert header.get("birth", entry["birth"]) == entry["birth"], f"{name} is of another birth"
        births[entry["birth"]].append(digest)
    versions = {birth: sha256(*digests).hex() for birth, digests in births.items() if not birth.startswith("0" * 32)}
    assert len(versions) == header["births"], "the births are not as many as the header says"
    assert not digits or any(version.startswith(digits) for version in versions.values()), "the paper shows other entries"
    print(f"{len(entries)} entries of {len(versions)} births by {len(keys)} devices, {gaps} gaps: each is signed")


try:
    check(sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else "")
except (AssertionError, KeyError, ValueError) as wrong:
    sys.exit(f"does not fit: {wrong}")
