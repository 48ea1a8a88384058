"""The generated Python side of the one call, through a whole birth.

Needs the folder of the generated module and of the library on PYTHONPATH.
"""

import json
import pathlib
import tempfile
import unittest

from secundine_bindings import CallError, Secundine


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
        return self.ask("create_practice", practice=practice, passphrase="lamp kettle bicycle")

    def test_a_birth_from_the_first_tap_to_the_printed_record(self):
        self.assertTrue(self.found()["recovery"]["identity"].startswith("AGE-SECRET-KEY-1"))
        birth = self.ask("baby_born_now", ago_ms=40)["birth"]
        now = {"at": "now", "ago_ms": 0}
        for kind, data in [
            ("cord_pulsation_stopped", {"baby": 1}),
            ("cord_clamped", {"baby": 1}),
            ("placenta_born", {"babies": [1]}),
        ]:
            self.ask("record", birth=birth, fact={"kind": kind, "data": data}, at=now)
        view = self.ask("birth", birth=birth)
        self.assertEqual(view["phase"], "after_placenta")
        self.assertEqual(view["timeline"][0]["author"], "Åsa Ngũgĩ")
        self.assertLess(abs(view["third_stage"]["elapsed_ms"]), 5_000)
        record = self.ask("write_file", birth=birth, file={"kind": "record"})
        self.assertEqual(pathlib.Path(record["path"]).read_bytes()[:5], b"%PDF-")

    def test_refusals_are_codes_and_messages(self):
        self.assertEqual(self.refused("births", skip=0, take=10)["code"], "locked")
        self.assertEqual(self.refused("unlock", passphrase="nobody here")["code"], "no_practice")
        self.found()
        self.assertEqual(self.found_again()["code"], "already_there")
        self.ask("lock")
        self.assertEqual(self.refused("unlock", passphrase="not this one")["code"], "wrong_passphrase")
        self.ask("unlock", passphrase="lamp kettle bicycle")

    def found_again(self):
        practice = {"name": "", "practitioner": "B", "role": "", "protocol": None}
        return self.refused("create_practice", practice=practice, passphrase="lamp kettle bicycle")

    def test_what_is_no_request_is_told(self):
        for bad in ["", "{", '{"request":"fly"}', '{"request":"births","skip":-1,"take":1}']:
            with self.assertRaises(CallError.Refused) as caught:
                self.door.call(bad)
            self.assertEqual(json.loads(caught.exception.error)["code"], "impossible")


if __name__ == "__main__":
    unittest.main()
