#!/bin/sh
# Builds Hither when needed and runs it. With arguments it hands them to the program, quietly when all is
# built. Without, it opens the editor; where there is no display, it checks a sample plan instead.
# Exit code: the program's (2 when it cannot be built).
set -u
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 2
. "$root/app/setup.sh"

need_packages $build_packages || exit 2
build_in program hither -DHITHER_TESTS=OFF || exit 2
hither="$root/.build/program/app/hither"

if [ $# -gt 0 ]; then
    exec "$hither" "$@"
fi

if [ -n "${DISPLAY:-}" ] || [ -n "${WAYLAND_DISPLAY:-}" ]; then
    exec "$hither"
fi

sample="$root/sample_plans/elbow_switch_on_chair.hither"
echo "Hither plans where an adaptive switch goes and what holds it there. Checking a sample plan:"
echo "  $sample"
echo
"$hither" check "$sample"
verdict=$?
[ "$verdict" -le 1 ] || exit "$verdict"
echo
"$hither" parts "$sample" || exit $?
echo
echo "Sample plans:   $root/sample_plans  (the .json beside each is the same plan to read)"
echo "The program:    $hither"
echo "Try:            sh app/start.sh check sample_plans/head_switch_on_bed.hither"
echo "                sh app/start.sh --help"
exit "$verdict"
