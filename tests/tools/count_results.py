"""Prints "N passed, N failed" for a ctest JUnit report; exit 1 when a test failed or none ran."""
import sys
import xml.etree.ElementTree as ElementTree

try:
    suite = ElementTree.parse(sys.argv[1]).getroot()
except (OSError, ElementTree.ParseError) as error:
    print(f"no test report: {error}", file=sys.stderr)
    print("0 passed, 1 failed")
    sys.exit(1)

passed, failed = 0, 0
for case in suite.iter("testcase"):
    # "run" is ctest's word for a test that ran and passed.
    if case.get("status") == "run" and case.find("failure") is None:
        passed += 1
    else:
        failed += 1
        print("failed:", case.get("name"), file=sys.stderr)
print(f"{passed} passed, {failed} failed")
sys.exit(0 if failed == 0 and passed > 0 else 1)
