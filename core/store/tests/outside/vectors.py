"""Reads every vector without the program and holds it against what it says: vectors.py FOLDER.

Uses age and openssl as anybody has them. The forms are those that are written in the store's own sources.
"""

import hashlib
import hmac
import json
import os
import pathlib
import pty
import struct
import subprocess
import sys
import tempfile

import chacha
from chain import signed

RECORD_MAX = 64 * 1024 - 20
UNUSED = b"\xff"
PRIME = 2**255 - 19


def age(sealed, identity):
    """What age opens with an identity; or what it says."""
    with tempfile.NamedTemporaryFile() as key, tempfile.NamedTemporaryFile() as file:
        key.write(identity.encode())
        key.flush()
        file.write(sealed)
        file.flush()
        done = subprocess.run(["age", "-d", "-i", key.name, file.name], capture_output=True)
        return (done.stdout, None) if done.returncode == 0 else (None, done.stderr.decode())


def age_by_passphrase(sealed, passphrase):
    """The same with a passphrase, which age takes from a terminal only."""
    with tempfile.NamedTemporaryFile() as file, tempfile.NamedTemporaryFile() as opened:
        file.write(sealed)
        file.flush()
        child, terminal = pty.fork()
        if child == 0:
            os.execvp("age", ["age", "-d", "-o", opened.name, file.name])
        said, given = b"", False
        try:
            while part := os.read(terminal, 1024):
                said += part
                if not given and b"assphrase" in said:
                    given = True
                    os.write(terminal, passphrase.encode() + b"\n")
        except OSError:
            pass  # The terminal closes when age ends.
        _, status = os.waitpid(child, 0)
        return (opened.read(), None) if os.waitstatus_to_exitcode(status) == 0 else (None, said.decode())


# --- key files ------------------------------------------------------------------------------------------------------------


def key_file(vector):
    sealed, secret = bytes.fromhex(vector["hex"]), vector["secret"]
    if vector["file"] == "recovery":
        opened, complaint = age(sealed, secret.strip().upper())
    else:
        stanza = sealed.split(b"\n")[1].split(b" ") if sealed.count(b"\n") > 1 else []
        # The dearest that is opened is 2^18.
        if stanza[1:2] == [b"scrypt"] and (not stanza[3].isdigit() or int(stanza[3]) > 18):
            return "damaged_key"
        opened, complaint = age_by_passphrase(sealed, secret)
    if complaint is None:
        key = opened.decode(errors="replace")
        return "opens" if len(key) == 64 and all(digit in "0123456789abcdefABCDEF" for digit in key) else "damaged_key"
    wrong = ("no identity matched", "incorrect passphrase", "malformed secret key")
    return "wrong_passphrase" if any(words in complaint for words in wrong) else "damaged_key"


# --- inbox ----------------------------------------------------------------------------------------------------------------


def derive(key, purpose):
    """HKDF-SHA256 without salt, 32 bytes."""
    inner = hmac.new(bytes(32), key, "sha256").digest()
    return hmac.new(inner, purpose + b"\1", "sha256").digest()


def open_header(file, identity):
    """Seed, number, the file before, digest and the rest; or why there is none."""
    title = b"secundine inbox 1\n"
    if not file.startswith(title):
        return "torn" if title.startswith(file) or not any(file) else "damaged"
    if len(file) < len(title) + 2:
        return "torn"
    end = len(title) + 2 + struct.unpack_from(">H", file, len(title))[0]
    if len(file) < end:
        return "torn"
    plain, _ = age(file[len(title) + 2 : end], identity)
    if plain is None or len(plain) != 32 + 8 + 1 + 32 + 8 + 16:
        return "damaged"
    seed, n, has, digest, count, tag = struct.unpack(">32sQB32sQ16s", plain)
    return seed, n, (digest, count, tag) if has else None, hashlib.sha256(file[:end]).digest(), file[end:]


def unused(rest):
    return not rest.strip(UNUSED)


def records(seed, rest):
    """Those that verify, the last tag, and how the file goes on after them."""
    key, tag, found = seed, bytes(16), []
    while not unused(rest):
        length = struct.unpack_from(">I", rest)[0] if len(rest) >= 4 else None
        end = None if length is None else 4 + length + 16
        record = None
        if end is not None and end <= len(rest):
            bound = struct.pack(">Q", len(found)) + tag
            record = chacha.unseal(derive(key, b"message"), bytes(12), bound, rest[4:end])
        if record is None:
            likely = all(byte in (0, UNUSED[0]) for byte in rest[:2])
            last = end is None or unused(rest[end:])
            text = rest.rstrip(UNUSED)
            torn = (likely and last and len(text) <= RECORD_MAX + 20) or not any(text)
            return found, tag, "torn" if torn else "damaged"
        found.append(record.decode())
        key, tag, rest = derive(key, b"chain"), rest[end - 16 : end], rest[end:]
    return found, tag, "whole"


def inbox(vector, identity):
    opened, ends = [], []
    for name, file in sorted(vector["files"].items()):
        header = open_header(bytes.fromhex(file), identity)
        ends.append(header) if isinstance(header, str) else opened.append((header[1], name, header))
    taken, known, lost = [], {}, set()
    for _, _, (seed, _, before, digest, rest) in sorted(opened, key=lambda one: one[:2]):
        found, tag, end = records(seed, rest)
        if before is not None:
            at, count, last = before
            whole, here, there = known.get(at, (True, -1, None))
            if whole and (here < count or (here == count and there != last)):
                lost.add(at)
        known[digest] = (end == "whole", len(found), tag)
        taken += found
        ends.append(end)
    worst = max(ends, key=["whole", "torn", "damaged"].index)
    return {"class": worst, "records": taken, "lost_tail": len(lost)}


# --- chain ----------------------------------------------------------------------------------------------------------------


def is_point(public):
    """Whether these are the 32 bytes of a point (RFC 8032, 5.1.3)."""
    y = (int.from_bytes(public, "little") & ((1 << 255) - 1)) % PRIME
    d = -121665 * pow(121666, -1, PRIME)
    square = (y * y - 1) * pow(d * y * y + 1, -1, PRIME) % PRIME
    return square == 0 or pow(square, (PRIME - 1) // 2, PRIME) == 1


def head_told(head, devices):
    """Device, number and link of the head, where one of these devices has signed it."""
    if head is None:
        return "nothing", None, None
    try:
        title, n, link, signature = head.splitlines()
        n, link, signature = int(n), bytes.fromhex(link), bytes.fromhex(signature)
    except ValueError:
        return "unreadable", None, None
    for device in devices if title == "secundine head 1" else []:
        public = bytes.fromhex(device["public"])
        if is_point(public) and signed(public, struct.pack(">Q", n), link, signature):
            return device["id"], n, link
    return "unreadable", None, None


def first_misfit(vector, own, told):
    keys = {device["id"]: bytes.fromhex(device["public"]) for device in [own] + vector["devices"]}
    links = {own["id"]: [bytes(32)]}
    for entry in sorted(vector["entries"], key=lambda entry: (entry["device"], entry["n"], entry["birth"])):
        device, n = entry["device"], entry["n"]
        before = links.setdefault(device, [bytes(32)])

        def misfit(kind, at=n):
            return {"kind": kind, "device": device, "n": at}

        if n > len(before):
            return misfit("missing", len(before))
        if n < len(before):
            return misfit("twice")
        public = keys.get(device)
        if public is None or not is_point(public):
            return misfit("no_key")
        if hashlib.sha256(public).hexdigest()[:32] != device:
            return misfit("other_key")
        birth, body, link, signature = (bytes.fromhex(entry[part]) for part in ("birth", "body", "link", "signature"))
        number = struct.pack(">Q", n)
        made = hashlib.sha256(b"secundine link 1" + before[-1] + birth + number + hashlib.sha256(body).digest()).digest()
        right, by_device = made == link, signed(public, number, link, signature)
        if not (right and by_device):
            return misfit("unsigned" if right else "changed" if by_device else "unlinked")
        before.append(link)
    device, n, link = told
    if link is not None:
        here = links.get(device, [bytes(32)])
        if n >= len(here):
            return {"kind": "cut_off", "device": device, "n": len(here)}
        if here[n] != link:
            return {"kind": "rewritten", "device": device, "n": n}
    return None


def chain(vector, own):
    device, n, link = told = head_told(vector["head"], [own] + vector["devices"])
    seen = n if device == own["id"] else "nothing" if link is not None else device
    return {"misfit": first_misfit(vector, own, told), "head": seen}


# --- all of them ----------------------------------------------------------------------------------------------------------

chacha.check()
folder = pathlib.Path(sys.argv[1])
read = {name: json.loads((folder / f"{name}.json").read_text()) for name in ("inbox", "keys", "chain")}
readers = {
    "inbox": lambda vector: inbox(vector, read["inbox"]["identity"]),
    "keys": key_file,
    "chain": lambda vector: chain(vector, read["chain"]["own"]),
}
agreed, wrong = 0, []
for kind, reader in readers.items():
    for vector in read[kind]["vectors"]:
        came_to = reader(vector)
        if came_to == vector["expect"]:
            agreed += 1
        else:
            wrong.append(f"{kind}: {vector['name']}: {came_to}, not {vector['expect']}")
print("\n".join(wrong) or f"{agreed} vectors agree")
sys.exit(bool(wrong))
