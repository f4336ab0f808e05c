"""csv_rows.py FILE: the rows of a CSV file as Python's own reader has them, as a JSON list."""

import csv
import json
import sys


def main(name):
    with open(name, encoding="utf-8", newline="") as file:
        json.dump(list(csv.DictReader(file, strict=True)), sys.stdout)


if __name__ == "__main__":
    main(sys.argv[1])
