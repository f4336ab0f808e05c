"""validate.py SCHEMA FILE...: says which JSON files break the schema (draft 2020-12), and where."""

import json
import sys

from jsonschema import Draft202012Validator, FormatChecker


def main(schema_name, names):
    with open(schema_name, encoding="utf-8") as file:
        schema = json.load(file)
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema, format_checker=FormatChecker())
    faults = 0
    for name in names:
        with open(name, encoding="utf-8") as file:
            value = json.load(file)
        for fault in validator.iter_errors(value):
            print(f"{name}: {fault.json_path}: {fault.message[:200]}")
            faults += 1
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
