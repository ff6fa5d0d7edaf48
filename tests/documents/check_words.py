#!/usr/bin/env python3
"""Whether every word of the screens is there in each language that has a file of its own.

usage: check_words.py ROOT LUPDATE

Lists the words anew from the source, beside a copy of each mobile/words/*.ts but English, and names what has no
translation, what the source no longer says, and what a translation leaves out: a place holder, a plural form.
"""

import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

HOLDER = re.compile(r"%L?\d+|%n")


def forms(translation):
    plural = [form.text or "" for form in translation.iter("numerusform")]
    return plural or [translation.text or ""]


def faults_of(message, context):
    source = message.find("source").text
    translation = message.find("translation")
    where = f"{context}: {source!r}"
    kind = translation.get("type")
    if kind in ("vanished", "obsolete"):
        yield f"{where} is no longer said"
        return
    all_forms = forms(translation)
    if kind == "unfinished" or not all(form.strip() for form in all_forms):
        yield f"{where} has no translation"
        return
    if message.get("numerus") == "yes" and len(all_forms) < 2:
        yield f"{where} has one form for one and many"
    for form in all_forms:
        if sorted(HOLDER.findall(form)) != sorted(HOLDER.findall(source)):
            yield f"{where}: {form!r} has other place holders"


def faults(words):
    for context in tree.parse(words).getroot().iter("context"):
        name = context.find("name").text
        for message in context.iter("message"):
            for fault in faults_of(message, name):
                yield f"{words.name}: {fault}"


def listed_anew(root, lupdate, words, folder):
    copy = pathlib.Path(folder) / words.name
    shutil.copy(words, copy)
    subprocess.run([lupdate, "-silent", "-recursive", ".", "-I", "..", "-locations", "none", "-ts", str(copy)],
                   cwd=root / "mobile", check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return copy


def main(root, lupdate):
    found = []
    files = [words for words in sorted((root / "mobile/words").glob("*.ts")) if words.stem != "kneerail_en"]
    with tempfile.TemporaryDirectory() as folder:
        for words in files:
            found += faults(listed_anew(root, lupdate, words, folder))
    for fault in found:
        print(fault)
    if found:
        print(f"{len(found)} words to mend: ninja -C build kneerail_words lists them in mobile/words, then fill them in")
        return 1
    print(f"every word is there in {len(files)} languages")
    return 0 if files else 1


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1]), sys.argv[2]))
