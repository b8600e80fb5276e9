"""`start` on a real terminal: what a teacher types, and what she sees there.

Needs the packages pexpect (a terminal to sit at) and pyte (what such a terminal shows).

    python .ci/terminal.py target/release/puddlebook
"""

import pathlib
import subprocess
import sys
import tempfile

import pexpect
import pyte

PATIENCE = 60  # seconds; only a failure takes as long
ROWS = 50
program = pathlib.Path(sys.argv[1]).resolve()

ENTER, ESCAPE, CTRL_C, DOWN = "\r", "\x1b", "\x03", "\x1b[B"
NOTHING = "\x7f" * 40  # takes away what is typed or offered


class Desk:
    """A terminal with `start` running in it."""

    def __init__(self, folder, columns=80):
        self.screen = pyte.HistoryScreen(columns, ROWS, history=2000)
        self.stream = pyte.Stream(self.screen)
        self.child = pexpect.spawn(
            str(program), ["start"], cwd=str(folder), dimensions=(ROWS, columns),
            encoding="utf-8", env={"TERM": "xterm-256color", "PATH": "/usr/bin:/bin"},
        )
        self.asked = 0

    def lines(self):
        """All that was ever shown, as it is on the screen now."""
        gone = ["".join(line[at].data for at in range(self.screen.columns)) for line in self.screen.history.top]
        return [line.rstrip() for line in [*gone, *self.screen.display]]

    def text(self):
        return "\n".join(self.lines())

    def feed(self):
        """Shows what has come; whether there may be more."""
        try:
            self.stream.feed(self.child.read_nonblocking(65536, PATIENCE))
            return True
        except pexpect.EOF:
            return False
        except pexpect.TIMEOUT:
            raise AssertionError(f"nothing came for {PATIENCE} s after\n{self.text()}") from None

    def sees(self, words):
        """Waits for words on the screen, however they are broken into lines."""
        while words not in " ".join(self.text().split()):
            assert self.feed(), f"{words!r} never came:\n{self.text()}"

    def answer(self, question, keys=ENTER):
        """Waits for a question, then answers it."""
        self.sees(f"? {question}")
        self.child.send(keys)
        # An answered question has another mark in front of it.
        self.sees(f"> {question}")

    def ends(self):
        """What the program ends with."""
        while self.feed():
            pass
        self.child.close()
        return self.child.exitstatus


# Questions in their order, each with keys that are typed at it; none are told for what is offered.
QUESTIONS = [
    "How are your handouts printed?", "What is the class called?", "Who gives it?", "Where?",
    "On which day?", "How many people come?", "How old is the youngest?", "What do they paint on?",
    "And another kind of canvas?", "How is it poured?", "How does the paint for it run off the stick?",
    "Which colours does it get?", "What of it is in your cupboard?", "Into which file shall it go?",
]


def interview(desk, until=None, **answers):
    for question in QUESTIONS:
        if question == until:
            return
        desk.answer(question, answers.get(question, ENTER))


def files(folder):
    return {path.name: path.read_text(encoding="utf-8") for path in folder.iterdir()}


def check(lesson):
    checked = subprocess.run([program, "check", lesson], capture_output=True, text=True)
    assert checked.returncode == 0, checked.stderr


def all_as_offered(folder, columns):
    desk = Desk(folder, columns)
    interview(desk)
    assert desk.ends() == 0, desk.text()
    [name] = files(folder)
    told = " ".join(desk.text().split())
    for words in ["of mixed paint", "To buy:", f"Wrote {name}", "every line is explained"]:
        assert words in told, f"{words!r} is not in\n{desk.text()}"
    # A name may be longer than the window is wide; it can be copied all the same.
    assert f"puddlebook make {name}" in "".join(line.ljust(columns)[:columns] for line in desk.lines()), desk.text()
    check(folder / name)
    return name


def with_answers(folder):
    desk = Desk(folder)
    interview(desk, until="How many people come?")
    desk.sees("? How many people come?")
    desk.child.send(NOTHING + "a dozen or so" + ENTER)
    desk.sees("Not right yet")
    # What was typed is there to be mended.
    desk.sees("? How many people come? a dozen or so")
    desk.child.send(NOTHING + "12" + ENTER)
    desk.sees("> How many people come? 12")
    desk.answer("How old is the youngest?", "9" + ENTER)
    desk.answer("What do they paint on?", "round 12 in, 3/4 in deep" + ENTER)
    desk.answer("And another kind of canvas?")
    desk.sees("for 12 people")
    desk.answer("How is it poured?", DOWN + ENTER)
    for question in QUESTIONS[10:]:
        desk.answer(question)
    assert desk.ends() == 0, desk.text()
    [(name, text)] = files(folder).items()
    for line in ["students: 12", "youngest age: 9", "12 in", "3/4 in"]:
        assert line in text, f"{line} is not in\n{text}"
    check(folder / name)


def a_file_in_the_way(folder, name):
    (folder / name).write_text("mine", encoding="utf-8")
    desk = Desk(folder)
    interview(desk)
    desk.answer(f"{name} is there already. What now?")
    assert desk.ends() == 0, desk.text()
    written = files(folder)
    assert written.pop(name) == "mine"
    [other] = written
    check(folder / other)


def left(folder, keys):
    """Leaves in the middle, and at the last question."""
    for until in ["Where?", "Which colours does it get?", QUESTIONS[-1]]:
        desk = Desk(folder)
        interview(desk, until=until)
        desk.sees(f"? {until}")
        desk.child.send(keys)
        code = desk.ends()
        assert code == 0, f"{code}\n{desk.text()}"
        assert "nothing was written" in desk.text(), desk.text()
        assert not files(folder), files(folder)


def closed(folder):
    """The window is closed while the questions are there."""
    desk = Desk(folder)
    interview(desk, until=QUESTIONS[-1])
    desk.child.close(force=True)
    assert not files(folder)


def main():
    def in_folder(work, *rest):
        with tempfile.TemporaryDirectory() as folder:
            return work(pathlib.Path(folder), *rest)

    name = in_folder(all_as_offered, 80)
    in_folder(all_as_offered, 46)
    in_folder(with_answers)
    in_folder(a_file_in_the_way, name)
    in_folder(left, ESCAPE)
    in_folder(left, CTRL_C)
    in_folder(closed)
    print("start: answered, corrected, left and closed on a terminal")


main()
