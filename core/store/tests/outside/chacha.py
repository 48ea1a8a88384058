"""ChaCha20-Poly1305 as RFC 8439 has it, in plain Python: `openssl enc` does not do it. Slow, and not safe against an onlooker
who times it: for reading alone. Run by itself it tries the RFC's own example."""

import hmac
import struct

MASK = 0xFFFFFFFF


def quarter(state, a, b, c, d):
    for one, other, target, by in ((a, b, d, 16), (c, d, b, 12), (a, b, d, 8), (c, d, b, 7)):
        state[one] = (state[one] + state[other]) & MASK
        mixed = state[target] ^ state[one]
        state[target] = ((mixed << by) | (mixed >> (32 - by))) & MASK


def block(key, counter, nonce):
    """64 bytes of the stream."""
    start = list(struct.unpack("<16I", b"expand 32-byte k" + key + struct.pack("<I", counter) + nonce))
    state = start[:]
    for _ in range(10):
        for column in range(4):
            quarter(state, column, 4 + column, 8 + column, 12 + column)
        for place in range(4):
            quarter(state, place, 4 + (place + 1) % 4, 8 + (place + 2) % 4, 12 + (place + 3) % 4)
    return struct.pack("<16I", *((one + other) & MASK for one, other in zip(state, start)))


def poly1305(key, text):
    r = int.from_bytes(key[:16], "little") & 0x0FFFFFFC0FFFFFFC0FFFFFFC0FFFFFFF
    total = 0
    for at in range(0, len(text), 16):
        total = (total + int.from_bytes(text[at : at + 16] + b"\1", "little")) * r % ((1 << 130) - 5)
    return ((total + int.from_bytes(key[16:], "little")) % (1 << 128)).to_bytes(16, "little")


def padded(text):
    return text + bytes(-len(text) % 16)


def unseal(key, nonce, bound, sealed):
    """What was sealed with its tag behind it; None where it does not verify."""
    text, tag = sealed[:-16], sealed[-16:]
    lengths = struct.pack("<QQ", len(bound), len(text))
    made = poly1305(block(key, 0, nonce)[:32], padded(bound) + padded(text) + lengths)
    if len(sealed) < 16 or not hmac.compare_digest(made, tag):
        return None
    stream = b"".join(block(key, 1 + k, nonce) for k in range((len(text) + 63) // 64))
    return bytes(one ^ other for one, other in zip(text, stream))


def check():
    """RFC 8439, section 2.8.2."""
    key, nonce = bytes(range(0x80, 0xA0)), bytes.fromhex("070000004041424344454647")
    bound = bytes.fromhex("50515253c0c1c2c3c4c5c6c7")
    sealed = bytes.fromhex(
        "d31a8d34648e60db7b86afbc53ef7ec2a4aded51296e08fea9e2b5a736ee62d63dbea45e8ca9671282fafb69da92728b1a71de0a9e060b2905d6a5b6"
        "7ecd3b3692ddbd7f2d778b8c9803aee328091b58fab324e4fad675945585808b4831d7bc3ff4def08e4b7a9de576d26586cec64b6116"
        "1ae10b594f09e26a7e902ecbd0600691"
    )
    text = (
        b"Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, sunscreen would be it."
    )
    if unseal(key, nonce, bound, sealed) != text or unseal(key, nonce, bound, sealed[:-1] + b"\0") is not None:
        raise SystemExit("ChaCha20-Poly1305 does not do what RFC 8439 says")


if __name__ == "__main__":
    check()
    print("as RFC 8439 says")
