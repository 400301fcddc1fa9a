#!/bin/sh
# Installs what is missing, builds everything and runs all tests. Last line: "N passed, N failed".
# Exit code 0 only when all passed.
set -u
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 2
. "$root/app/setup.sh"

need_packages $build_packages $test_packages || exit 2

python3 "$root/tests/tools/include_rules.py" "$root" || exit 1
build_in release all || exit 1

report="$root/.build/release/test-report.xml"
rm -f "$report"
ctest --test-dir "$root/.build/release" -j2 --output-on-failure --no-tests=error --output-junit "$report" \
    | grep -vE '^ *(Start +[0-9]+:|[0-9]+/[0-9]+ Test.*Passed)' >&2

python3 "$root/tests/tools/count_results.py" "$report"
