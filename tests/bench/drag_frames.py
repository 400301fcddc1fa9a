"""Counts how fluent the editor is while a part is dragged with the findings live: drawn frames, plans shown and plans
judged in a second, in the real program under its own X server. Usage, after a build with the tests:

    HITHER_PROGRAM=.build/release/app/hither /usr/bin/python3 tests/bench/drag_frames.py [PLAN ...]
"""
import pathlib
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "gui" / "session"))
from session import ROOT, Session  # noqa: E402


def last(log):
    words = log.read_text().splitlines()[-1].split()
    return float(words[0]), *(int(words[i]) for i in (2, 4, 6))


def says(s):
    """The line that tells what is under the pointer."""
    bar = s.find("status bar")
    return next(bar.getChildAtIndex(i) for i in range(bar.childCount) if bar.getChildAtIndex(i).getRoleName() == "label")


def measure(plan, words, seconds=4.0):
    with Session() as s:
        log = s.folder / "frames.log"
        s.environment["HITHER_FRAME_LOG"] = str(log)
        s.start(plan)
        s.find("radio button", "Step 4, Build")
        print(f"{plan.name}: window there after {time.time() - s.began:.2f} s")
        s.key("ctrl+4")
        time.sleep(1.5)
        scene = s.find(None, "Scene")
        x0, y0, w, h = s.box(scene)
        line = says(s)
        spot = None
        for step in (24, 12, 6):
            for y in range(y0 + 60, y0 + h - 20, step):
                for x in range(x0 + 20, x0 + w - 20, step):
                    s.xdo("mousemove", x, y)
                    time.sleep(0.012)
                    if words in line.name.lower():
                        spot = (x, y)
                        break
                if spot:
                    break
            if spot:
                break
        if not spot:
            print(f"  nothing under the pointer says {words!r}")
            return
        s.xdo("mousemove", *spot)
        s.xdo("mousedown", 1)
        time.sleep(0.4)
        before, began, n = last(log), time.time(), 0
        while time.time() - began < seconds:
            n += 1
            s.xdo("mousemove", spot[0] + (n * 3) % 60 - 30, spot[1] + (n * 2) % 40 - 20)
        time.sleep(0.3)
        after = last(log)
        s.xdo("mouseup", 1)
        span = after[0] - before[0]
        print(f"  dragging {words!r}: " + ", ".join(f"{(b - a) / span:.0f} {what}/s" for a, b, what in zip(before[1:], after[1:], ("plans shown", "frames drawn", "plans judged")))
              + f" ({n / (time.time() - began):.0f} pointer moves/s)")


for name in sys.argv[1:] or ["elbow_switch_on_chair", "head_switch_on_bed", "two_switches_on_tray"]:
    plan = pathlib.Path(name) if name.endswith(".hither") else ROOT / "sample_plans" / (name + ".hither")
    measure(plan, "drag")
