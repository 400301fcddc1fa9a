"""From nothing to a saved plan that passes its checks, by the keyboard alone."""
from session import Session, check, main

PARTS = ["Screw tube clamp, hinged, 7/8 in class", "Single-lock arm, halves of 130 mm", "Switch back, three #4-40 screws on a circle of 40 mm", "Round switch, medium, 65 mm"]


def test():
    with Session() as s:
        s.start()
        s.tab_to("Manual wheelchair")
        s.key("Return")
        s.until(lambda: s.window().name.startswith("New plan"), "a new plan")

        s.key("ctrl+2")
        s.tab_to("Add the person")
        s.key("space")
        s.tab_to("Pseudonym")
        s.key("ctrl+a")
        s.type("Kim")
        s.key("Return")
        s.until(lambda: "Kim" in s.find("radio button", "Step 2, Person").description, "the pseudonym in the steps")

        s.key("ctrl+3")
        s.tab_to("Find")
        s.type("right elbow")
        s.key("Return")
        s.tab_to("Put a site there")
        s.key("space")
        s.tab_to("Force")
        s.key("ctrl+a")
        s.type("6 N")
        s.key("Return")

        s.key("ctrl+4")
        s.until(lambda: s.focused() is not None and s.focused().name.startswith("Seat rail, left"), "the list of what a mount can be fixed to")
        s.down_to("Back cane, right")
        s.key("Return")
        for i, part in enumerate(PARTS):
            s.tab_to("Search the parts by words", key="Tab" if i else "shift+Tab")
            s.key("ctrl+a")
            s.type(part)
            s.key("Return")
            s.until(lambda: s.look("list item", f"{i + 1} {part}", part=True) is not None or s.look("table cell", f"{i + 1} {part}", part=True) is not None, f"{part} in the mount")
        s.key("ctrl+b")
        s.find("push button", "Keep", part=True, seconds=30)
        s.tab_to("Keep", part=True)
        s.key("space")
        s.until(lambda: "Passes these checks" in s.find("radio button", "Step 5, Check").description, "the checks to be passed", 30)

        path = s.folder / "by keyboard.hither"
        s.key("ctrl+s")
        s.find("dialog", "Save the plan")
        s.type(str(path))
        s.key("Return")
        s.until(lambda: path.exists() and "*" not in s.window().name, "the plan to be saved")
        code, findings = s.check_plan(path)
        check(code == 0, f"hither check says {code}: {findings}")


main(test)
