"""A desktop session of its own for one test: X server, window manager, message bus, accessibility bus, and the
program as a person has it. Widgets are found by what a screen reader is told (role and name); mouse and keys are
real X events (xdotool). Run by /usr/bin/python3, which has Debian's pyatspi.
"""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[3]


class Failed(AssertionError):
    pass


def check(condition, words):
    if not condition:
        raise Failed(words)


def program():
    return os.environ["HITHER_PROGRAM"]


class Session:
    """with Session() as s: s.start(); s.click(s.find("push button", "Save"))"""

    def __init__(self, size="1280x800", environment=None):
        self.size = size
        self.extra = environment or {}
        self.processes = []
        self.app = None
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="hither session "))

    def __enter__(self):
        (self.folder / "run").mkdir(mode=0o700)
        read, write = os.pipe()
        server = subprocess.Popen(["Xvfb", "-displayfd", str(write), "-screen", "0", self.size + "x24", "-nolisten", "tcp"],
                                  pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        self.processes.append(server)
        os.close(write)
        number = b""
        while not number.endswith(b"\n"):
            piece = os.read(read, 16)
            check(piece, "the X server did not start")
            number += piece
        os.close(read)
        bus = subprocess.Popen(["dbus-daemon", "--session", "--print-address=1", "--nofork"], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        self.processes.append(bus)
        self.environment = {**os.environ, "DISPLAY": ":" + number.decode().strip(), "DBUS_SESSION_BUS_ADDRESS": bus.stdout.readline().strip(),
                            "HOME": str(self.folder), "XDG_DATA_HOME": str(self.folder / "data"), "XDG_CONFIG_HOME": str(self.folder / "config"),
                            "XDG_RUNTIME_DIR": str(self.folder / "run"), "QT_ACCESSIBILITY": "1", "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1",
                            "LC_ALL": "C.UTF-8", "NO_AT_BRIDGE": "0", **self.extra}
        self.environment.pop("WAYLAND_DISPLAY", None)
        self.environment.pop("QT_QPA_PLATFORM", None)
        self.environment.pop("HITHER_PARTS", None)
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "env": self.environment}
        manager = subprocess.Popen(["openbox"], **quiet)
        self.processes.append(manager)
        self.processes.append(subprocess.Popen(["/usr/libexec/at-spi-bus-launcher", "--launch-immediately"], **quiet))
        # pyatspi takes its buses from this process's environment when it is first imported.
        os.environ.update({k: self.environment[k] for k in ("DISPLAY", "DBUS_SESSION_BUS_ADDRESS", "XDG_RUNTIME_DIR", "HOME")})
        end = time.time() + 40             # a window shown before the window manager is there would stay inactive
        while subprocess.run(["xdotool", "get_num_desktops"], **quiet).returncode != 0:
            check(time.time() < end, "the window manager did not start")
            if manager.poll() is not None:
                manager = subprocess.Popen(["openbox"], **quiet)
                self.processes.append(manager)
            time.sleep(0.1)
        time.sleep(0.3)
        global pyatspi
        import pyatspi
        return self

    def __exit__(self, kind, error, trace):
        if kind is not None and self.app is not None and self.app.poll() is None:
            picture = os.environ.get("HITHER_SESSION_PICTURES")
            if picture:
                self.picture(os.path.join(picture, pathlib.Path(sys.argv[0]).stem + "_failed.png"))
        for process in [self.app] + self.processes[::-1]:
            if process is not None and process.poll() is None:
                process.terminate()
                try:
                    process.wait(5)
                except subprocess.TimeoutExpired:
                    process.kill()
        shutil.rmtree(self.folder, ignore_errors=True)

    def start(self, *arguments, wait=True):
        self.began = time.time()
        self.log = open(self.folder / "program.log", "ab")
        self.app = subprocess.Popen([program(), *map(str, arguments)], env=self.environment, cwd=self.folder, stdout=self.log, stderr=self.log)
        if wait:
            self.until(self.active, "the program's window to be there and active", 30)

    def kill(self):
        self.app.kill()
        self.app.wait()

    def until_ended(self, seconds=10):
        try:
            self.app.wait(seconds)
        except subprocess.TimeoutExpired:
            raise Failed(f"the program did not end; there is:\n{self.outline()}")

    def words(self):
        return (self.folder / "program.log").read_text(errors="replace")

    # What a screen reader is told.

    def root(self):
        desktop = pyatspi.Registry.getDesktop(0)
        for i in range(desktop.childCount):
            application = desktop.getChildAtIndex(i)
            if application is not None and application.get_process_id() == self.app.pid:
                return application
        return None

    def window(self):
        root = self.root()
        if root is None:
            return None
        for i in range(root.childCount):
            node = root.getChildAtIndex(i)
            if node is not None and node.getRoleName() in ("frame", "window"):
                return node
        return None

    def active(self):
        window = self.window()
        return window is not None and window.getState().contains(pyatspi.STATE_ACTIVE)

    def all(self, under=None):
        """Every node that is showing, depth first; what is hidden is not looked into."""
        stack = [under or self.root()]
        while stack:
            node = stack.pop()
            if node is None:
                continue
            try:
                yield node
                if node.getRoleName() not in ("application", "frame") and not node.getState().contains(pyatspi.STATE_SHOWING):
                    continue
                children = [node.getChildAtIndex(i) for i in range(node.childCount)]
            except Exception:  # it went while we looked
                continue
            stack.extend(reversed(children))

    def look(self, role, name=None, under=None, part=False):
        for node in self.all(under):
            try:
                if role and node.getRoleName() != role:
                    continue
                if name is not None and (name not in node.name if part else node.name != name):
                    continue
                if not node.getState().contains(pyatspi.STATE_SHOWING):
                    continue
                return node
            except Exception:
                continue
        return None

    def find(self, role, name=None, under=None, part=False, seconds=10):
        found = []
        self.until(lambda: found.append(self.look(role, name, under, part)) or found[-1] is not None, f"a {role} called {name!r}", seconds)
        return found[-1]

    def until(self, true, words, seconds=10):
        end = time.time() + seconds
        while not true():
            check(self.app.poll() is None, f"the program ended ({self.app.poll()}) while waiting for {words}: {self.words()[-800:]}")
            if time.time() > end:
                raise Failed(f"waited {seconds} s for {words}; there is:\n{self.outline()}")
            time.sleep(0.05)

    def outline(self, most=150):
        lines = []
        for node in self.all():
            try:
                if node.getState().contains(pyatspi.STATE_SHOWING):
                    lines.append(f"  {node.getRoleName()}: {node.name!r}")
            except Exception:
                pass
        return "\n".join(lines[:most])

    def focused(self):
        """What has the keyboard: the innermost that says so (what hands its focus on to a child says so too). The present
        row of a list says so whether or not the list has it: that counts only in a list that has."""
        found = None
        for node in self.all():
            try:
                if not node.getState().contains(pyatspi.STATE_FOCUSED) or node.getRoleName() in ("frame", "application"):
                    continue
                if node.getRoleName() in ("list item", "table cell", "tree item", "page tab") and not node.parent.getState().contains(pyatspi.STATE_FOCUSED):
                    continue
                found = node
            except Exception:
                continue
        return found

    def has_focus(self, name, part=False):
        node = self.focused()
        return node is not None and (name in node.name if part else node.name == name)

    def tab_to(self, name, part=False, key="Tab", most=150):
        """By the keyboard alone: Tab until what is called `name` has the focus."""
        passed = []
        for _ in range(most):
            node = self.focused()
            if node is not None:
                if name in node.name if part else node.name == name:
                    return node
                passed.append(f"{node.getRoleName()} {node.name!r}")
            self.key(key)
        raise Failed(f"Tab does not come to {name!r}; it passes:\n" + "\n".join(dict.fromkeys(passed)))

    def down_to(self, wanted, most=250):
        """With the focus in a list: Down until the present row begins with what is wanted."""
        passed = []
        for _ in range(most):
            node = self.focused()
            name = node.name if node is not None else ""
            if name.startswith(wanted):
                return node
            passed.append(name)
            self.key("Down")
            end = time.time() + 2
            while time.time() < end:
                node = self.focused()
                if node is not None and node.name != name:
                    break
                time.sleep(0.03)
            else:
                break
        raise Failed(f"no row begins with {wanted!r}; passed:\n" + "\n".join(dict.fromkeys(passed)))

    # Mouse and keys.

    def xdo(self, *arguments):
        subprocess.run(["xdotool", *map(str, arguments)], env=self.environment, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)

    def box(self, node):
        e = node.queryComponent().getExtents(pyatspi.DESKTOP_COORDS)
        return e.x, e.y, e.width, e.height

    def middle(self, node):
        x, y, w, h = self.box(node)
        return x + w // 2, y + h // 2

    def click(self, node, count=1):
        x, y = self.middle(node)
        check(0 <= x < int(self.size.split("x")[0]) and 0 <= y < int(self.size.split("x")[1]), f"{node.getRoleName()} {node.name!r} is not on the screen ({x}, {y})")
        self.click_at(x, y, count)

    def click_at(self, x, y, count=1):
        self.xdo("mousemove", x, y)
        time.sleep(0.05)
        self.xdo("click", "--repeat", count, "--delay", 60, 1)
        time.sleep(0.1)

    def drag(self, x0, y0, x1, y1, steps=12, hold=False, pause=0.02):
        self.xdo("mousemove", x0, y0)
        time.sleep(0.05)
        self.xdo("mousedown", 1)
        for i in range(1, steps + 1):
            self.xdo("mousemove", x0 + (x1 - x0) * i // steps, y0 + (y1 - y0) * i // steps)
            time.sleep(pause)
        if not hold:
            self.xdo("mouseup", 1)
            time.sleep(0.1)

    def key(self, *keys):
        self.xdo("key", "--delay", 40, *keys)
        time.sleep(0.08)

    def type(self, text):
        self.xdo("type", "--delay", 15, text)
        time.sleep(0.08)

    def picture(self, path):
        subprocess.run(["import", "-window", "root", str(path)], env=self.environment, check=False)

    # The command line, to check what was saved.

    def run(self, *arguments):
        done = subprocess.run([program(), *map(str, arguments)], env=self.environment, capture_output=True, text=True)
        return done.returncode, done.stdout, done.stderr

    def check_plan(self, path):
        code, out, err = self.run("check", path, "--json")
        check(code in (0, 1), f"hither check says {code}: {err}")
        return code, json.loads(out)


def main(test):
    """Runs one test; exit code 0 when it passed."""
    try:
        test()
    except Failed as failed:
        print(f"FAILED: {failed}", file=sys.stderr)
        sys.exit(1)
    print("passed")
