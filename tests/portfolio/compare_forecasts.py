#!/usr/bin/env python3
"""Compares two forecasts as JSON, number by number: those of two builds of one register must agree.

    compare_forecasts.py ONE.json OTHER.json [--tolerance 1e-9]

A number may differ by the tolerance times its size, or by the tolerance where it is under 1. All
else, words and order among it, must be the same. Prints how many numbers were compared and the
largest difference; exit code 1 where one is too large or anything else differs.
"""

import argparse
import json
import sys


class Comparison:
    def __init__(self, tolerance):
        self.tolerance = tolerance
        self.numbers = 0
        self.largest = 0.0
        self.where = ""
        self.other = []

    def numbers_of(self, one, other, path):
        self.numbers += 1
        difference = abs(one - other) / max(1.0, abs(one), abs(other))
        if difference > self.largest:
            self.largest, self.where = difference, path

    def compare(self, one, other, path=""):
        number = (int, float)
        if isinstance(one, bool) or isinstance(other, bool):
            same = one is other
        elif isinstance(one, number) and isinstance(other, number):
            return self.numbers_of(one, other, path)
        elif isinstance(one, dict) and isinstance(other, dict):
            if one.keys() == other.keys():
                for key in one:
                    self.compare(one[key], other[key], f"{path}/{key}")
                return None
            same = False
        elif isinstance(one, list) and isinstance(other, list):
            if len(one) == len(other):
                for place, (a, b) in enumerate(zip(one, other)):
                    self.compare(a, b, f"{path}/{place}")
                return None
            same = False
        else:
            same = one == other
        if not same:
            self.other.append(path)
        return None


def main():
    arguments = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    arguments.add_argument("one")
    arguments.add_argument("other")
    arguments.add_argument("--tolerance", type=float, default=1e-9)
    asked = arguments.parse_args()
    made = Comparison(asked.tolerance)
    with open(asked.one, encoding="utf-8") as one, open(asked.other, encoding="utf-8") as other:
        made.compare(json.load(one), json.load(other))
    print(f"{made.numbers:,} numbers, the largest difference {made.largest:.2g} {made.where}")
    for path in made.other[:10]:
        print(f"differs: {path}")
    if made.numbers == 0:
        print("there was nothing to compare")
    return 1 if made.largest > asked.tolerance or made.other or made.numbers == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
