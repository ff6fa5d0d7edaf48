#!/usr/bin/env python3
"""Breaks each rule of check_source.py in a folder of its own and sees that it is named."""
import pathlib
import tempfile
import unittest

import check_source


class RulesTest(unittest.TestCase):
    def faults(self, files):
        with tempfile.TemporaryDirectory() as folder:
            root = pathlib.Path(folder)
            for name, text in files.items():
                (root / name).parent.mkdir(parents=True, exist_ok=True)
                (root / name).write_text(text, encoding="utf-8")
            return list(check_source.faults(root))

    def test_a_clean_file_passes(self):
        self.assertEqual(self.faults({"core/a.cpp": '#include "core/a.h"\n', "core/CMakeLists.txt": "a.cpp"}), [])

    def test_an_include_against_the_direction(self):
        found = self.faults({"core/a.h": '#include "schema/database.h"\n'})
        self.assertIn("core may not include schema/database.h", found[0])

    def test_a_header_outside_its_owner(self):
        self.assertTrue(self.faults({"mobile/a.h": "#include <sqlite3.h>\n"}))
        self.assertTrue(self.faults({"schema/a.h": "#include <QString>\n"}))
        self.assertFalse(self.faults({"schema/database.h": "#include <sqlite3.h>\n"}))

    def test_a_clock_in_core(self):
        self.assertTrue(self.faults({"core/a.h": "auto t = std::chrono::system_clock::now();\n"}))

    def test_a_long_function(self):
        body = "int f() {\n" + "  g();\n" * 69 + "}\n"
        found = self.faults({"core/a.h": body})
        self.assertIn("a function of 71 lines", found[0])

    def test_a_source_that_is_not_listed(self):
        found = self.faults({"core/a.cpp": "\n", "core/CMakeLists.txt": "b.cpp"})
        self.assertIn("not listed", found[0])

    def qml(self, line):
        listed = {"mobile/CMakeLists.txt": "QML_FILES\n  screens/A.qml\n"}
        return self.faults({"mobile/screens/A.qml": "Item {\n    " + line + "\n}\n", **listed})

    def test_a_bare_size_or_time_in_qml(self):
        for line in ["width: 84", "font.pixelSize: 15", "anchors.margins: 1.5", "duration: 120", "border.width: 2"]:
            self.assertIn("a bare size or time", self.qml(line)[0], line)
        for line in ["width: 0", "width: Tokens.railHeight", "width: parent.width / 2", "lineHeight: Tokens.gap"]:
            self.assertEqual(self.qml(line), [], line)

    def test_a_literal_colour_in_qml(self):
        for line in ['color: "#FFFFFF"', 'color: "red"', "color: Qt.rgba(0, 0, 0, 1)"]:
            self.assertIn("a literal colour", self.qml(line)[0], line)
        self.assertEqual(self.qml('color: "transparent"'), [])

    def test_an_untyped_property_in_qml(self):
        self.assertIn("property var", self.qml("property var rooms")[0])

    def test_a_qml_file_that_is_long_or_not_listed(self):
        long = self.faults({"mobile/screens/A.qml": "\n" * 251, "mobile/CMakeLists.txt": "screens/A.qml"})
        self.assertIn("252 lines", long[0])
        self.assertIn("not listed", self.faults({"mobile/screens/A.qml": "Item {}\n", "mobile/CMakeLists.txt": ""})[0])


if __name__ == "__main__":
    unittest.main()
