#!/usr/bin/env python3
"""Runs the README's examples and follows the links of the documents. Exit 0: all true; 1: some not, each shown.

usage: check_documents.py ROOT BIN
  An example is a block that opens with ```console: lines after "$ " are typed into one shell in an empty folder with BIN on the
  path; the lines below them are what must come out, where a line "..." stands for any lines, and "…" for any characters.
"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile


def examples(text):
    for block in re.findall(r"^```console\n(.*?)^```", text, re.M | re.S):
        command, expected = None, []
        for line in block.splitlines():
            if line.startswith("$ "):
                if command is not None:
                    yield command, expected
                command, expected = line[2:], []
            else:
                expected.append(line)
        yield command, expected


def pattern(expected):
    parts = []
    for line in expected:
        parts.append(r"(?:.*\n)*?" if line.strip() == "..." else re.escape(line).replace("…", ".*") + r"\n")
    return "".join(parts)


def example_faults(document, folder, binaries):
    for command, expected in examples(document.read_text(encoding="utf-8")):
        environment = dict(os.environ, PATH=f"{binaries}:{os.environ['PATH']}", LC_ALL="C.UTF-8")
        ran = subprocess.run(["bash", "-c", command], cwd=folder, env=environment, text=True,
                             stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        if not re.fullmatch(pattern(expected), ran.stdout):
            yield f"{document.name}: $ {command}\n  expected:\n    " + "\n    ".join(expected) + \
                  "\n  came out:\n    " + "\n    ".join(ran.stdout.splitlines())


def link_faults(document):
    for target in re.findall(r"\]\(([^)#\s]+)[^)]*\)", document.read_text(encoding="utf-8")):
        if "://" not in target and not (document.parent / target).exists():
            yield f"{document.name}: the link to {target} leads nowhere"


def place_faults(root, document):
    """Every file or folder of the house that is named in `code` is there."""
    for name in re.findall(r"`((?:core|schema|sync|mobile|tests|assets)/[\w./-]*)`", document.read_text(encoding="utf-8")):
        stem = name.rstrip("/").removesuffix(".*")
        if not (root / stem).exists() and not list(root.glob(stem + ".*")):
            yield f"{document.name}: `{name}` is not there"


def main():
    root, binaries = pathlib.Path(sys.argv[1]), sys.argv[2]
    found = []
    with tempfile.TemporaryDirectory() as folder:
        for document in (root / "README.md", root / "DEVELOPERS.md"):
            found += list(link_faults(document)) + list(place_faults(root, document))
            found += list(example_faults(document, folder, binaries))
    print("\n".join(found) or "every example, link and place is true")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
