"""Every control of every step has a name and a role that a screen reader can tell, and the keyboard reaches all of
them by Tab and leaves the scene again."""
from session import ROOT, Session, check, main

CONTROLS = {"push button", "toggle button", "radio button", "check box", "combo box", "text", "spin button", "slider", "list", "table", "tree",
            "tree table", "page tab list", "menu item", "list item", "entry", "password text"}
INSIDE = {"list item", "table cell", "table row", "tree item", "page tab", "menu item", "scroll bar", "column header", "table column header", "row header"}


def interactive(s):
    import pyatspi
    out = []
    for node in s.all():
        try:
            state = node.getState()
            if node.getRoleName() in CONTROLS and state.contains(pyatspi.STATE_SHOWING) and state.contains(pyatspi.STATE_VISIBLE):
                out.append((node.getRoleName(), node.name, node.description, state.contains(pyatspi.STATE_FOCUSABLE) and state.contains(pyatspi.STATE_ENABLED), s.box(node)))
        except Exception:
            continue
    return out


def test():
    unnamed, unreached = [], []
    with Session() as s:
        s.start(ROOT / "sample_plans" / "two_switches_on_tray.hither")
        for step in range(1, 7):
            s.key(f"ctrl+{step}")
            s.until(lambda: s.focused() is not None, "something to have the focus")
            controls = interactive(s)
            check(len(controls) > 10, f"step {step} shows only {len(controls)} controls")
            unnamed += [f"step {step}: {role} at {box}" for role, name, _, _, box in controls if not name.strip()]
            # Round by Tab until the same control has the focus again.
            seen = {}
            first = None
            for _ in range(250):
                node = s.focused()
                if node is not None:
                    key = (node.getRoleName(), node.name)
                    if first is None:
                        first = key
                    elif key == first and len(seen) > 12:
                        break
                    seen[key] = True
                    if node.getRoleName() in INSIDE or not node.name:
                        seen[(node.parent.getRoleName(), node.parent.name)] = True
                s.xdo("key", "Tab")
            else:
                check(False, f"step {step}: Tab does not come round; last at {list(seen)[-3:]}")
            names = set(seen)
            for role, name, _, focusable, box in controls:
                if focusable and role not in INSIDE and (role, name) not in names and role != "radio button":
                    unreached.append(f"step {step}: {role} {name!r} at {box}")
    check(not unnamed, "controls without a name:\n" + "\n".join(unnamed))
    check(not unreached, "controls that Tab does not reach:\n" + "\n".join(unreached))


main(test)
