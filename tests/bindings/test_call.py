"""The generated Python side: the one call through a whole birth, and the typed calls of native code.

Needs the folder of the generated module and of the library on PYTHONPATH. SECUNDINE_APP_LIBRARY names the library of the whole
program, in which a phone finds the same.
"""

import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time
import unittest

import secundine_bindings
from secundine_bindings import CallError, MarkError, NotTold, Secundine, mark_words

PASSPHRASE = "lamp kettle bicycle"
# A process of its own, as a tile or an intent may have: it marks and says what came of it.
MARK = """
import sys
from secundine_bindings import MarkError, Secundine
door = Secundine.beside(sys.argv[1])
for _ in range(int(sys.argv[2])):
    marked = door.mark_baby_born(0, "en")
    assert marked.waits
    print(marked.clock)
"""


class OneCall(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.door = Secundine(f"{self.folder.name}/practice", f"{self.folder.name}/records")

    def ask(self, request, **values):
        answer = json.loads(self.door.call(json.dumps({"request": request, **values})))
        self.assertEqual(answer["response"], request)
        return answer

    def refused(self, request, **values):
        with self.assertRaises(CallError.Refused) as caught:
            self.ask(request, **values)
        return json.loads(caught.exception.error)

    def found(self):
        practice = {"name": "Prüfung", "practitioner": "Åsa Ngũgĩ", "role": "midwife", "protocol": "who"}
        return self.ask("create_practice", practice=practice, passphrase=PASSPHRASE)

    def test_a_birth_from_the_first_tap_to_the_printed_record(self):
        self.assertTrue(self.found()["recovery"]["identity"].startswith("AGE-SECRET-KEY-1"))
        birth = self.ask("baby_born_now", ago_ms=40)["birth"]
        now = {"at": "now", "ago_ms": 0}
        for kind, data in [
            ("cord_pulsation_stopped", {"baby": 1}),
            ("cord_clamped", {"baby": 1}),
            ("placenta_born", {"babies": [1]}),
            ("membranes_born", {"babies": [1]}),
            ("examined", {"placenta": 1, "item": "lobes", "answer": {"answer": "choice", "option": "meet"}}),
        ]:
            self.ask("record", birth=birth, fact={"kind": kind, "data": data}, at=now)
        view = self.ask("birth", birth=birth)
        self.assertEqual(view["phase"], "after_placenta")
        self.assertEqual(view["timeline"][0]["author"], "Åsa Ngũgĩ")
        self.assertLess(abs(view["third_stage"]["elapsed_ms"]), 5_000)
        self.ask("sign", birth=birth, signer=None)
        self.assertEqual(self.ask("birth", birth=birth)["phase"], "signed")
        record = self.ask("write_file", birth=birth, file={"kind": "record"})
        self.assertEqual(pathlib.Path(record["path"]).read_bytes()[:5], b"%PDF-")

    def test_refusals_are_codes_and_messages(self):
        self.assertEqual(self.refused("births", skip=0, take=10)["code"], "locked")
        self.assertEqual(self.refused("unlock", passphrase="nobody here")["code"], "no_practice")
        self.found()
        self.assertEqual(self.found_again()["code"], "already_there")
        self.ask("lock")
        self.assertEqual(self.refused("unlock", passphrase="not this one")["code"], "wrong_passphrase")
        self.ask("unlock", passphrase=PASSPHRASE)

    def found_again(self):
        practice = {"name": "", "practitioner": "B", "role": "", "protocol": None}
        return self.refused("create_practice", practice=practice, passphrase=PASSPHRASE)

    def test_what_is_no_request_is_told(self):
        for bad in ["", "{", '{"request":"fly"}', '{"request":"births","skip":-1,"take":1}']:
            with self.assertRaises(CallError.Refused) as caught:
                self.door.call(bad)
            self.assertEqual(json.loads(caught.exception.error)["code"], "impossible")

    def marking(self, times):
        """Another process over the same practice that makes so many marks."""
        practice = f"{self.folder.name}/practice"
        return subprocess.Popen([sys.executable, "-c", MARK, practice, str(times)], stdout=subprocess.PIPE, text=True)

    def babies(self):
        """The local time of each birth of a baby that stands in a chart."""
        births = self.ask("births", skip=0, take=99)["births"]
        lines = [line for birth in births for line in self.ask("birth", birth=birth["birth"])["timeline"]]
        return [line["clock"] for line in lines if line["fact"]["kind"] == "baby_born" and not line["retracted"]]

    def test_a_mark_of_a_process_where_nothing_was_opened_stands_in_a_chart_after_unlocking(self):
        self.found()
        self.ask("lock")
        told, _ = self.marking(1).communicate(timeout=60)
        self.ask("unlock", passphrase=PASSPHRASE)
        self.assertEqual(self.babies(), [told.strip()])

    def test_marks_of_processes_at_once_beside_an_open_practice_are_there_once(self):
        self.found()
        others = [self.marking(8) for _ in range(2)]
        told = []
        while any(other.poll() is None for other in others):
            told.append(self.door.mark_baby_born(0, "en").clock)
            self.ask("lock")
            self.ask("unlock", passphrase=PASSPHRASE)
        for other in others:
            told += other.communicate(timeout=60)[0].split()
            self.assertEqual(other.returncode, 0)
        self.ask("lock")
        self.ask("unlock", passphrase=PASSPHRASE)
        self.assertEqual(sorted(self.babies()), sorted(told))
        self.assertTrue(self.ask("verify")["ok"])

    def test_one_process_has_one_session(self):
        self.found()
        beside = Secundine.beside(f"{self.folder.name}/./practice")
        marked = beside.mark_baby_born(1_500, "es")
        self.assertFalse(marked.waits)
        self.assertEqual(marked.words, f"{marked.clock} guardado")
        self.assertLess(abs(marked.at.utc_ms + 1_500 - time.time() * 1000), 5_000)
        self.assertEqual(self.babies(), [marked.clock])
        beside.take_back_mark("en")
        self.assertEqual(self.babies(), [])

    def test_what_is_armed_and_what_runs_bear_no_name(self):
        self.found()
        self.assertIsNone(self.door.running())
        self.door.mark_baby_born(0, "en")
        reminders = self.door.reminders("en")
        self.assertEqual(len(reminders), 3)
        running = self.door.running()
        boot_ms = time.clock_gettime(time.CLOCK_BOOTTIME) * 1000
        self.assertLess(abs(boot_ms - running.elapsed_ms - running.since.running_ms), 5_000)
        self.assertTrue(all(reminder.at.running_ms > boot_ms for reminder in reminders))
        self.assertNotRegex(f"{reminders} {running}", "Åsa|Prüfung")
        self.ask("lock")
        with self.assertRaises(NotTold.Locked):
            self.door.reminders("en")
        self.assertIsNotNone(self.door.running(), "it ran at the lock")

    def test_what_is_not_on_disk_says_so(self):
        with self.assertRaises(MarkError.NotSaved) as caught:
            self.door.mark_baby_born(0, "en")
        self.assertEqual(caught.exception.why, "There is no practice on this device yet.")
        self.found()
        self.ask("lock")
        pathlib.Path(f"{self.folder.name}/practice/inbox").write_text("in the way")
        with self.assertRaises(MarkError.NotSaved):
            self.door.mark_baby_born(0, "en")
        with self.assertRaises(MarkError.Stands):
            self.door.take_back_mark("en")
        self.assertEqual([mark_words(tag).not_saved for tag in ("en", "es-MX", "fr")], ["NOT SAVED", "NO GUARDADO", "NON ENREGISTRÉ"])

    @unittest.skipUnless("SECUNDINE_APP_LIBRARY" in os.environ, "the whole program was not built")
    def test_the_library_of_the_program_has_all_that_is_called(self):
        module = pathlib.Path(secundine_bindings.__file__).read_text()
        called = set(re.findall(r"\b(?:uniffi|ffi)_secundine_bindings_\w+", module))
        there = subprocess.run(
            ["nm", "-D", "--defined-only", os.environ["SECUNDINE_APP_LIBRARY"]], capture_output=True, text=True, check=True
        )
        self.assertGreater(len(called), 10)
        self.assertEqual(called - set(there.stdout.split()), set())


if __name__ == "__main__":
    unittest.main()
