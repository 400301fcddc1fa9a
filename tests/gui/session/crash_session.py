"""Killed with unsaved work, the next start offers it, and it is whole; discarded, it is offered no more."""
from session import ROOT, Session, check, main
import json
import shutil
import time


def title_of(session, path):
    code, out, err = session.run("export", path)
    check(code == 0, err)
    return json.loads(out)["display"]


def change_to_inches(s):
    s.key("ctrl+k")
    s.find("dialog", "Find a command")
    s.type("inches")
    s.key("Return")
    s.until(lambda: s.window().name.startswith("*") or "*" in s.window().name, "the window to say that there are changes")


def test():
    with Session() as s:
        plan = s.folder / "my plan.hither"
        shutil.copy(ROOT / "sample_plans" / "elbow_switch_on_chair.hither", plan)
        before = plan.read_bytes()
        s.start(plan)
        s.find("radio button", "Step 1, Support")
        change_to_inches(s)
        time.sleep(4)                      # kept within 3 s of the last step
        s.kill()
        check(plan.read_bytes() == before, "the plan's own file was touched")

        s.start(plan)
        s.click(s.find("push button", "Look at them …"))
        s.find("dialog")
        s.click(s.find("push button", "Continue with Robin", part=True))
        s.until(lambda: "*" in s.window().name, "the recovered plan to be there with its changes")
        s.key("ctrl+s")
        s.until(lambda: "*" not in s.window().name, "the plan to be saved")
        check(title_of(s, plan) == "inch", "the saved plan does not hold the recovered change")
        code, _ = s.check_plan(plan)
        check(code == 0, "the recovered plan no longer passes its checks")
        s.key("ctrl+q")
        s.until_ended()

        s.start(plan)
        time.sleep(1)
        check(s.look("push button", "Look at them …") is None, "a plan that was saved is offered again")


main(test)
