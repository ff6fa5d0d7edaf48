#!/usr/bin/env python3
"""Writes documents that are not true and sees that check_documents.py says so."""
import pathlib
import tempfile
import unittest

import check_documents


class DocumentsTest(unittest.TestCase):
    def faults(self, text):
        with tempfile.TemporaryDirectory() as name:
            root = pathlib.Path(name)
            (root / "assets").mkdir()
            (root / "assets" / "one").write_text("1\n", encoding="utf-8")
            document = root / "README.md"
            document.write_text(text, encoding="utf-8")
            folder = root / "typed-here"
            folder.mkdir()
            check_documents.furnish(folder, root, root / "bin")
            return [fault for look in (check_documents.link_faults(document), check_documents.place_faults(root, document),
                                       check_documents.example_faults(document, folder)) for fault in look]

    def test_a_true_document_passes(self):
        text = "[one](assets/one) `assets/one`\n```console\n$ cat assets/one\n1\n$ echo a \\\n    b; echo c; echo d\na b\n...\n$ false\n[exit 1]\n```\n"
        self.assertEqual(self.faults(text), [])

    def test_another_output(self):
        self.assertIn("came out:\n    1", self.faults("```console\n$ cat assets/one\n2\n```\n")[0])

    def test_a_line_too_many(self):
        self.assertTrue(self.faults("```console\n$ printf '1\\n2\\n'\n1\n```\n"))

    def test_an_exit_code_that_is_kept_quiet(self):
        self.assertIn("[exit 3]", self.faults("```console\n$ exit 3\n```\n")[0])

    def test_a_link_and_a_place_that_lead_nowhere(self):
        self.assertEqual(len(self.faults("[two](assets/two) `assets/two`\n")), 2)


if __name__ == "__main__":
    unittest.main()
