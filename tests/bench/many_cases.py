"""Writes a caseload to measure with: python3 many_cases.py FOLDER COUNT [DEMO_FOLDER]

Each file is one of the demo cases, larger or smaller by up to a quarter, with a course of its own
age and a change interval of 48 or 72 h. No two plans are alike. The same COUNT gives the same files.
The courses run on 2026-03-02.
"""
import json
import pathlib
import random
import sys
from datetime import date, timedelta

TODAY = date(2026, 3, 2)
LENGTHS = ("depth_cm", "wall_run_in_cm", "extent_cm", "length_cm")


def scaled(value, factor):
    """Every place and length of a wound, multiplied; angles, clocks and dates are left alone."""
    if isinstance(value, dict):
        return {
            name: round(part * factor, 4)
            if name in LENGTHS
            else part
            if name.startswith("from") or name.startswith("to")
            else scaled(part, factor)
            for name, part in value.items()
        }
    if isinstance(value, list):
        return [round(v * factor, 4) if isinstance(v, float | int) else scaled(v, factor) for v in value]
    return value


def varied(case, number, chance):
    factor = chance.uniform(0.75, 1.25)
    for assessment in case["assessments"]:
        for part in ("wounds", "skin_zones"):
            if part in assessment:
                assessment[part] = scaled(assessment[part], factor)
    case["label"] = f"Invented {number}"
    dressing = case.setdefault("dressing", {})
    dressing["change_every_h"] = chance.choice((48, 72))
    last = chance.randrange(0, 13)  # days of the course that are over
    every = dressing["change_every_h"] // 24
    case["applications"] = [
        {"date": str(TODAY - timedelta(days=ago)), "pieces_placed": 1} for ago in range(last, -1, -every)
    ]
    return case


def main(folder, count, demo):
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    texts = [path.read_text() for path in sorted(pathlib.Path(demo).glob("*.json"))]
    for number in range(int(count)):
        case = varied(json.loads(texts[number % len(texts)]), number, random.Random(number))
        (folder / f"case-{number:06d}.json").write_text(json.dumps(case))


if __name__ == "__main__":
    here = pathlib.Path(__file__).resolve().parent
    main(sys.argv[1], sys.argv[2], sys.argv[3] if len(sys.argv) > 3 else here / "../../demo_cases")
