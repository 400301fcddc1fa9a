"""Building in the Build step from its lists, as somebody does who cannot use a mouse."""
from session import Failed, check


def focus_row(s, wanted, most=200):
    """With the focus in a list: Down until the row that has the words is the present one."""
    seen = []
    for _ in range(most):
        node = s.focused()
        if node is not None:
            if wanted in node.name:
                return node
            seen.append(node.name)
        s.key("Down")
        if len(seen) > 3 and seen[-1] == seen[-2] == seen[-3]:
            break
    raise Failed(f"no row {wanted!r}; passed {list(dict.fromkeys(seen))}")
