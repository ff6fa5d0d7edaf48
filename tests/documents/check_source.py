#!/usr/bin/env python3
"""Reads the source and says where it breaks a rule of the house. Exit 0: none; 1: some, each on a line.

usage: check_source.py ROOT
  Layers: core <- schema <- sync <- mobile; nothing includes the other way. Some headers have one owner.
  Functions: at most 70 lines. Each folder's CMakeLists.txt lists every source in it.
  QML: no bare size, time or colour (they are Tokens), no property var, at most 250 lines, listed by the module.
"""
import pathlib
import re
import sys

LAYERS = ["core", "schema", "sync", "mobile"]
FUNCTION_LINES_MAX = 70
FILE_LINES_MAX = 500

# header pattern -> the only places that may include it
OWNERS = [
    (r"sqlite3\.h", r"schema/database\.(h|cpp)|tests/faults/.*|tests/benchmark/.*"),
    (r"openssl/.*", r"schema/digest\.(h|cpp)|sync/transport/.*"),
    (r"(Q[A-Z]|Qt).*", r"mobile/.*|tests/mobile/.*"),
    (r"curl/.*", r"sync/transport/.*"),
    (r"(Eigen|boost)/.*", r".*\.cpp|core/(statistics|forecast)/.*_inside\.h"),
]
NOT_IN_CORE = re.compile(r"<(fstream|filesystem|iostream|cstdio|random)>|system_clock|steady_clock|std::random_device")
CORE_MAY_PRINT = {"core/base/result.cpp", "core/base/date.cpp"}  # the last words of check(), and snprintf

QML_LINES_MAX = 250
QML_RULES = [
    (re.compile(r"\b(x|y|z?[wW]idth|[hH]eight|implicit(Width|Height)|\w*[mM]argins?|\w*[pP]adding|spacing|radius|pixelSize|pointSize"
                r"|\w*Margin|border\.width|duration|interval|\w+Offset)\s*:\s*-?(?!0\s*$)[0-9.]+\s*$"), "a bare size or time; name it in Tokens"),
    (re.compile(r'"#[0-9A-Fa-f]{3,8}"|\bQt\.(rgba|hsla|hsva)\(|\b\w*[cC]olou?r\s*:\s*"(?!transparent")'), "a literal colour; name it in Tokens"),
    (re.compile(r"\bproperty\s+var\b"), "property var; give it its type"),
]

INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]')


def sources(root):
    for layer in LAYERS + ["tests"]:
        for path in sorted((root / layer).rglob("*")):
            if path.suffix in (".h", ".cpp"):
                yield path


def include_faults(name, lines):
    layer = name.split("/")[0]
    for number, line in enumerate(lines, 1):
        found = INCLUDE.match(line)
        if found:
            header = found.group(1)
            target = header.split("/")[0]
            if layer in LAYERS and target in LAYERS + ["tests"]:
                if target == "tests" or LAYERS.index(target) > LAYERS.index(layer):
                    yield f"{name}:{number}: {layer} may not include {header}"
            for pattern, owner in OWNERS:
                if re.fullmatch(pattern, header) and not re.fullmatch(owner, name):
                    yield f"{name}:{number}: {header} belongs to {owner}"
        if layer == "core" and name not in CORE_MAY_PRINT and NOT_IN_CORE.search(line.split("//")[0]):
            yield f"{name}:{number}: core has no files, clock or chance of its own: {line.strip()}"


def function_faults(name, lines):
    """Layout puts every function's head at the left edge and its closing brace alone there."""
    start = None
    for number, line in enumerate(lines, 1):
        if start is None and line and not line[0].isspace() and line.rstrip().endswith("{"):
            if not re.match(r"(inline )?(namespace|class|struct|enum|extern|union|TEST_CASE|TEMPLATE_TEST_CASE)\b", line) and "=" not in line.split("(")[0]:
                start = number
        elif start is not None and line.rstrip() == "}":
            if number - start + 1 > FUNCTION_LINES_MAX:
                yield f"{name}:{start}: a function of {number - start + 1} lines; {FUNCTION_LINES_MAX} is the most"
            start = None


def listing_faults(root, path):
    listing = path.parent / "CMakeLists.txt"
    while not listing.exists():
        listing = listing.parent.parent / "CMakeLists.txt"
    wanted = path.relative_to(listing.parent).as_posix()
    if not re.search(r"(?<![\w/])" + re.escape(wanted) + r"(?![\w/])", listing.read_text()):
        yield f"{path.relative_to(root)}: not listed in {listing.relative_to(root)}"


def qml_faults(root):
    module = root / "mobile" / "CMakeLists.txt"
    for path in sorted((root / "mobile").rglob("*.qml")):
        name = path.relative_to(root).as_posix()
        lines = path.read_text(encoding="utf-8").split("\n")
        for number, line in enumerate(lines, 1):
            for pattern, words in QML_RULES:
                if pattern.search(line.split("//")[0]):
                    yield f"{name}:{number}: {words}: {line.strip()}"
        if len(lines) > QML_LINES_MAX + 1:
            yield f"{name}: {len(lines)} lines; find a seam before {QML_LINES_MAX}"
        if path.relative_to(root / "mobile").as_posix() not in re.split(r"[\s()]+", module.read_text()):
            yield f"{name}: not listed in {module.relative_to(root)}"


def faults(root):
    yield from qml_faults(root)
    for path in sources(root):
        name = path.relative_to(root).as_posix()
        lines = path.read_text(encoding="utf-8").split("\n")
        yield from include_faults(name, lines)
        yield from function_faults(name, lines)
        if len(lines) > FILE_LINES_MAX:
            yield f"{name}: {len(lines)} lines; find a seam before {FILE_LINES_MAX}"
        if path.suffix == ".cpp":
            yield from listing_faults(root, path)


def main():
    root = pathlib.Path(sys.argv[1])
    found = list(faults(root))
    print("\n".join(found) or "every rule holds")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
