"""Fails on an include that goes the wrong way (DEVELOPERS.md, 'Folders').

A folder may include itself and the folders listed for it. Quoted includes must name a file from
the project's top ("core/units/basis.h"), core may not include Qt, and no folder may use a header
that is not there.
"""
import pathlib
import re
import sys

BASE = ["core/units", "core/geometry"]
CHAIN = BASE + ["core/catalogue", "core/situation", "core/chain"]
DOCUMENT = CHAIN + ["core/checks", "core/plan", "core/plan/edits", "core/storage", "app/words"]
EDITOR = DOCUMENT + ["core/solve", "core/ways", "core/offers", "core/remedy", "app/document", "app/shipped", "app/analysis", "app/actions", "app/widgets"]
ALLOWED = {
    "core/units": [],
    "core/geometry": ["core/units"],
    "core/catalogue": BASE,
    "core/situation": BASE,
    "core/chain": BASE + ["core/catalogue", "core/situation"],
    "core/solve": CHAIN,
    "core/checks": CHAIN,
    "core/ways": CHAIN + ["core/solve", "core/checks"],
    "core/plan": CHAIN,
    "core/plan/edits": CHAIN + ["core/plan"],
    "core/offers": CHAIN + ["core/checks", "core/plan", "core/plan/edits"],
    "core/remedy": CHAIN + ["core/checks", "core/solve", "core/ways", "core/plan", "core/plan/edits"],
    "core/storage": CHAIN + ["core/plan"],
    "app/shipped": CHAIN + ["core/checks", "core/plan"],
    "app/words": CHAIN + ["core/checks", "core/plan", "core/storage"],
    "app/document": DOCUMENT,
    "app/analysis": DOCUMENT + ["core/solve", "core/ways", "app/document", "app/shipped"],
    "app/actions": DOCUMENT + ["core/solve", "core/ways", "app/document", "app/shipped", "app/analysis"],
    "app/picture": DOCUMENT + ["app/document"],
    "app/widgets": CHAIN + ["core/checks"],
    "app/scene": EDITOR + ["app/picture"],
    "app/dialogs": EDITOR,
    "app/panels": EDITOR + ["app/dialogs"],
    "app/editor": EDITOR + ["app/picture", "app/scene", "app/dialogs", "app/panels"],
    "app/cli": DOCUMENT + ["core/solve", "core/ways", "app/shipped", "app/editor"],
}

root = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ".").resolve()
problems = []
files = sorted(p for top in ("core", "app") for p in (root / top).rglob("*") if p.suffix in (".h", ".cpp"))
for path in files:
    folder = path.parent.relative_to(root).as_posix()
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        found = re.match(r'\s*#\s*include\s*([<"])([^>"]+)[>"]', line)
        if not found:
            continue
        kind, name = found.groups()
        place = f"{path.relative_to(root)}:{number}"
        if kind == "<":
            if folder.startswith("core/") and re.match(r"Q[A-Z]|Qt", name):
                problems.append(f"{place}: core may not use Qt ({name})")
            continue
        top = str(pathlib.PurePosixPath(name).parent)
        if not (root / name).exists():
            problems.append(f"{place}: no such header from the project's top: {name}")
        elif top != folder and top not in ALLOWED.get(folder, []):
            problems.append(f"{place}: {folder} may not include {top}")
for folder in {p.parent.relative_to(root).as_posix() for p in files} - set(ALLOWED):
    problems.append(f"{folder}: a folder without a rule in tests/tools/include_rules.py")

for problem in problems:
    print(problem, file=sys.stderr)
if not files:
    print("include rules: no source files found", file=sys.stderr)
    sys.exit(1)
sys.exit(1 if problems else 0)
