#!/usr/bin/env python3
"""Runs the README's examples and follows the links of the documents. Exit 0: all true; 1: some not, each shown.

usage: check_documents.py ROOT BIN
  An example is a block that opens with ```console. Each line after "$ " is typed into a shell, in a folder that looks like the
  root as far as examples may go: `assets` and `tests` are ROOT's, `build/bin` is BIN, and what is written stays there. A line that
  ends in a backslash goes on in the next. The lines below are what must come out, with what the shell says of the exit code
  where it is not 0: "[exit 1]". A line "..." stands for any lines, and "…" for any characters.
"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile


def examples(text):
    for block in re.findall(r"^```console\n(.*?)^```", text, re.M | re.S):
        for typed in re.split(r"^\$ ", block, flags=re.M)[1:]:
            command, *expected = typed.replace("\\\n", "").splitlines()
            yield command, expected


def pattern(expected):
    parts = []
    for line in expected:
        parts.append(r"(?:.*\n)*?" if line.strip() == "..." else re.escape(line).replace("…", ".*") + r"\n")
    return "".join(parts)


def furnish(folder, root, binaries):
    (folder / "build").mkdir()
    (folder / "build" / "bin").symlink_to(pathlib.Path(binaries).resolve())
    for name in ("assets", "tests"):
        (folder / name).symlink_to(root.resolve() / name)


def example_faults(document, folder):
    for command, expected in examples(document.read_text(encoding="utf-8")):
        ran = subprocess.run(["bash", "-c", command], cwd=folder, env=dict(os.environ, LC_ALL="C.UTF-8"), text=True,
                             stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        came = ran.stdout + (f"[exit {ran.returncode}]\n" if ran.returncode else "")
        if not re.fullmatch(pattern(expected), came):
            yield f"{document.name}: $ {command}\n  expected:\n    " + "\n    ".join(expected) + \
                  "\n  came out:\n    " + "\n    ".join(came.splitlines())


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
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        furnish(folder, root, binaries)
        for document in (root / "README.md", root / "DEVELOPERS.md"):
            found += list(link_faults(document)) + list(place_faults(root, document))
            found += list(example_faults(document, folder))
    print("\n".join(found) or "every example, link and place is true")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
