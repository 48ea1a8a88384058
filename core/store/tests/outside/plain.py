"""Reads a practice's database without the program: plain.py DATABASE KEY OUT.

KEY is what the age files hold. Every page is checked and decrypted by the published form of SQLCipher 4: AES-256-CBC,
HMAC-SHA512, pages of 4096 bytes with 80 reserved. OUT is an ordinary SQLite database.
"""

import hashlib
import hmac
import struct
import subprocess
import sys

PAGE, RESERVED, SALT, VECTOR = 4096, 80, 16, 16

database, key, out = sys.argv[1], bytes.fromhex(sys.argv[2]), sys.argv[3]
with open(database, "rb") as file:
    sealed = file.read()
if not sealed or len(sealed) % PAGE:
    sys.exit("not a whole number of pages")
salt = bytes(byte ^ 0x3A for byte in sealed[:SALT])
hmac_key = hashlib.pbkdf2_hmac("sha512", key, salt, 2, 32)


def decrypt(number, page):
    start = SALT if number == 1 else 0
    end = PAGE - RESERVED
    vector = page[end : end + VECTOR]
    tag = page[end + VECTOR : end + VECTOR + 64]
    made = hmac.new(hmac_key, page[start : end + VECTOR] + struct.pack("<I", number), "sha512").digest()
    if not hmac.compare_digest(tag, made):
        sys.exit(f"page {number} was altered")
    openssl = ["openssl", "enc", "-d", "-aes-256-cbc", "-nopad", "-K", key.hex(), "-iv", vector.hex()]
    plain = subprocess.run(openssl, input=page[start:end], capture_output=True, check=True).stdout
    return (b"SQLite format 3\0" if number == 1 else b"") + plain + page[end:]


with open(out, "wb") as file:
    for number in range(1, len(sealed) // PAGE + 1):
        file.write(decrypt(number, sealed[(number - 1) * PAGE : number * PAGE]))
