#!/usr/bin/env python3
"""Breaks a file of words in each way that check_words.py names, and sees that it is named."""

import pathlib
import tempfile
import unittest

import check_words

FILE = """<?xml version="1.0" encoding="utf-8"?><TS version="2.1" language="de"><context><name>Room</name>{}</context></TS>"""
WHOLE = "<message><source>Bay %1 of %L2</source><translation>Feld %1 von %L2</translation></message>"
PLURAL = ('<message numerus="yes"><source>%n post(s)</source><translation><numerusform>%n Pfosten</numerusform>'
          "<numerusform>%n Pfosten</numerusform></translation></message>")


class Words(unittest.TestCase):
    def faults(self, messages):
        with tempfile.TemporaryDirectory() as folder:
            words = pathlib.Path(folder) / "kneerail_de.ts"
            words.write_text(FILE.format(messages))
            return list(check_words.faults(words))

    def test_whole_words_have_no_fault(self):
        self.assertEqual(self.faults(WHOLE + PLURAL), [])

    def test_each_fault_is_named(self):
        for broken, said in [
            (WHOLE.replace("<translation>Feld %1 von %L2", '<translation type="unfinished">'), "no translation"),
            (WHOLE.replace("Feld %1 von %L2", " "), "no translation"),
            (WHOLE.replace("<translation>", '<translation type="vanished">'), "no longer said"),
            (WHOLE.replace("von %L2", ""), "other place holders"),
            (WHOLE.replace("von %L2", "von %2"), "other place holders"),
            (PLURAL.replace("<numerusform>%n Pfosten</numerusform>", "", 1), "one form"),
        ]:
            with self.subTest(said):
                self.assertEqual(len(self.faults(broken)), 1)
                self.assertIn(said, self.faults(broken)[0])


if __name__ == "__main__":
    unittest.main()
