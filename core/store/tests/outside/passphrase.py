"""Gives a passphrase to age, which takes one from a terminal only: passphrase.py FILE PASSPHRASE.

Prints what the file holds.
"""

import os
import pty
import sys

sealed, passphrase = sys.argv[1:]
reader, writer = os.pipe()
child, terminal = pty.fork()
if child == 0:
    os.dup2(writer, 1)
    os.execvp("age", ["age", "-d", sealed])
os.close(writer)
asked = b""
try:
    while b"assphrase" not in asked:
        asked += os.read(terminal, 1024)
    os.write(terminal, passphrase.encode() + b"\n")
    while os.read(terminal, 1024):
        pass
except OSError:
    pass  # The terminal closes when age ends.
_, status = os.waitpid(child, 0)
with os.fdopen(reader, "rb") as opened:
    sys.stdout.buffer.write(opened.read())
sys.exit(os.waitstatus_to_exitcode(status))
