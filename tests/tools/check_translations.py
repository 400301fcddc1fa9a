"""Fails when a text with a number in it lacks its English forms, or the list in resources/translations is not the
one that the sources give (make it anew with: python3 tests/tools/check_translations.py . --update, then fill in the forms).
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

root = pathlib.Path(sys.argv[1]).resolve()
kept = root / "resources/translations/hither_en.ts"
lupdate = shutil.which("lupdate6") or "/usr/lib/qt6/bin/lupdate"
command = [lupdate, "-silent", "-pluralonly", "-no-obsolete", "-locations", "none", "-source-language", "en", "-target-language", "en", "-I", str(root), str(root / "app")]


def messages(path):
    found = {}
    for context in tree.parse(path).getroot().iter("context"):
        for message in context.iter("message"):
            if message.get("numerus") == "yes":
                forms = [f.text or "" for f in message.iter("numerusform")]
                found[(context.findtext("name"), message.findtext("source"))] = forms
    return found


if "--update" in sys.argv:
    sys.exit(subprocess.run([*command, "-ts", str(kept)]).returncode)
with tempfile.TemporaryDirectory() as folder:
    fresh = pathlib.Path(folder) / "hither_en.ts"
    subprocess.run([*command, "-ts", str(fresh)], check=True, stderr=subprocess.DEVNULL)
    wanted, have = messages(fresh), messages(kept)
problems = [f"not in {kept.name}: {key}" for key in wanted if key not in have]
problems += [f"in {kept.name} but no longer in the sources: {key}" for key in have if key not in wanted]
problems += [f"English forms missing: {key}" for key, forms in have.items() if len(forms) != 2 or not all(f.strip() for f in forms)]
problems += [f"English form without its number: {key} {form!r}" for key, forms in have.items() for form in forms[1:] if "%n" in key[1] and "%n" not in form]
print("\n".join(problems), file=sys.stderr)
if not wanted:
    problems.append("no texts found")
sys.exit(1 if problems else 0)
