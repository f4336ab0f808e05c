"""validate.py SCHEMA[#NAME] FILE...: says which JSON files break the schema, and where.

With a NAME they are held against that definition of the schema alone.
"""

import json
import sys

from jsonschema import Draft202012Validator, FormatChecker
from jsonschema.validators import validator_for


def schema_of(argument):
    name, _, definition = argument.partition("#")
    with open(name, encoding="utf-8") as file:
        schema = json.load(file)
    if not definition:
        return schema
    return {"$schema": schema["$schema"], "definitions": schema["definitions"],
            "allOf": [{"$ref": "#/definitions/" + definition}]}


def main(schema_argument, names):
    schema = schema_of(schema_argument)
    kind = validator_for(schema, default=Draft202012Validator)
    if "#" not in schema_argument:  # a published schema is not ours to check
        kind.check_schema(schema)
    validator = kind(schema, format_checker=FormatChecker())
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
