#!/usr/bin/env python3
"""Checks resources/plan.schema.json itself, then every sample plan and every plan of plan_format.md against it.

Usage: check_schema.py SOURCE_FOLDER. Exit code 1 and one line a problem when something does not fit.
"""
import json
import pathlib
import re
import sys

import jsonschema


def main(root):
    schema = json.loads((root / "resources/plan.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    page = (root / "resources/plan_format.md").read_text(encoding="utf-8")
    plans = {f"plan_format.md, block {i + 1}": text for i, text in enumerate(re.findall(r"```json\n(.*?)```", page, re.S))}
    for file in sorted((root / "sample_plans").glob("*.json")) + sorted((root / "tests/unit/storage/fixtures").glob("*.json")):
        plans[file.name] = file.read_text(encoding="utf-8")
    problems = 0
    for name, text in plans.items():
        plan = json.loads(text)
        for error in validator.iter_errors(plan):
            problems += 1
            print(f"{name}: {'/'.join(map(str, error.path))}: {error.message[:200]}")
        # What the schema must refuse.
        for spoil in ({"titel": "x"}, {"hither_plan": 2}, {"currency": "euro"}, {"made_utc": "yesterday"}, {"supports": [{}]}):
            if validator.is_valid({**plan, **spoil}):
                problems += 1
                print(f"{name}: {spoil} passes")
    if len(plans) < 3:
        problems += 1
        print("fewer plans than there should be")
    print(f"{len(plans)} plans, {problems} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1])))
