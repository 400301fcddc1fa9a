"""From nothing to a saved plan that passes its checks, by the keyboard alone."""
from session import Session, check, main
from build_by_list import choose_row, parts_of


def test():
    with Session() as s:
        s.start()
        s.tab_to("Manual wheelchair")
        s.key("Return")
        s.until(lambda: s.window().name.startswith("New plan"), "a new plan")

        s.key("ctrl+2")
        s.tab_to("Add the person")
        s.key("space")
        s.find("text", "Pseudonym")
        s.tab_to("Pseudonym")
        s.key("ctrl+a")
        s.type("Kim")
        s.key("Return")
        s.until(lambda: "Kim" in s.find("radio button", "Step 2, Person").description, "the person's pseudonym in the steps")

        s.key("ctrl+3")
        s.tab_to("Find")
        s.type("right elbow")
        s.key("Return")
        s.find("text", "Force")
        s.tab_to("Force")
        s.key("ctrl+a")
        s.type("6 N")
        s.key("Return")

        s.key("ctrl+4")
        choose_row(s, "Where a mount can be fixed", "Back cane, right")
        for words, row in parts_of("elbow"):
            choose_row(s, "Parts on offer", row, words)
        s.key("ctrl+b")
        s.find("push button", "Keep this way", seconds=30)
        s.tab_to("Keep this way")
        s.key("space")
        s.until(lambda: "Passes these checks" in s.find("radio button", "Step 5, Check").description, "the checks to be passed", 20)

        s.key("ctrl+s")
        path = s.folder / "by keyboard.hither"
        s.find("dialog", "Save the plan")
        s.type(str(path))
        s.key("Return")
        s.until(lambda: path.exists() and "*" not in s.window().name, "the plan to be saved")
        code, findings = s.check_plan(path)
        check(code == 0, f"hither check says {code}: {findings}")


main(test)
