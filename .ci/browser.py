"""The preview in a real browser: what a teacher does with it, by keyboard, and nothing that
leaves this machine.

Needs the packages playwright and axe-playwright-python (a checker of accessible pages), and a
Chromium of the system; brings no browser of its own.

    python .ci/browser.py target/release/puddlebook [FOLDER FOR PICTURES]
"""

import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect, sync_playwright

FLAGS = [
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]
PATIENCE = 60_000  # milliseconds; only a failure takes as long
program = pathlib.Path(sys.argv[1]).resolve()
pictures = pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else None
lessons = pathlib.Path(__file__).resolve().parent.parent / "lessons"


def saved(path, text):
    """As editors save: a new file takes the name of the old one."""
    new = path.with_suffix(".new~")
    new.write_text(text, encoding="utf-8")
    new.replace(path)


def picture(page, name):
    if pictures:
        pictures.mkdir(parents=True, exist_ok=True)
        page.screenshot(path=pictures / f"{name}.png")


def hindrances(page):
    """What hinders somebody who listens, types or sees little, as far as a program can tell."""
    return [
        f"{fault['id']}: {fault['nodes'][0]['html']}" for fault in Axe().run(page).response["violations"]
    ]


def is_for_all(page):
    found = hindrances(page)
    assert not found, found


def place(page):
    """The caption of the page in view, and where it is in the window."""
    return page.evaluate(
        """() => {
          const figures = [...document.querySelectorAll('figure')];
          const seen = figures.findIndex((f) => f.getBoundingClientRect().bottom > innerHeight * 0.15);
          return [seen + 1, Math.round(figures[seen].getBoundingClientRect().top)];
        }"""
    )


def is_kept(page, at):
    """Whether the page in view is where it was, give or take the dot that scrolling rounds to."""
    now = place(page)
    assert now[0] == at[0] and abs(now[1] - at[1]) <= 2, f"{at} became {now}"


def is_drawn(page, number):
    """Waits until a page has its picture, with something on it."""
    page.wait_for_function(
        """(at) => {
          const picture = document.querySelectorAll('figure img')[at];
          return picture && picture.complete && picture.naturalWidth > 0;
        }""",
        arg=number - 1,
    )


def look_of(page, number):
    return page.locator("figure").nth(number - 1).get_attribute("data-look")


def tab_to(page, wanted):
    """Goes there by the keyboard alone."""
    for _ in range(40):
        if page.evaluate("document.activeElement.id") == wanted:
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"the keyboard does not reach {wanted}")


def run(page, lesson, address):
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    faults = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("console", lambda message: faults.append(message.text) if message.type == "error" else None)
    page.set_default_timeout(PATIENCE)
    expect.set_options(timeout=PATIENCE)

    # Pages are drawn, with colours on them.
    page.goto(address)
    expect(page.locator("h1")).to_have_text("Two Ways to Pour")
    expect(page.locator("#choice label")).to_have_count(8)
    is_drawn(page, 1)
    colours = page.evaluate(
        """async () => {
          const [, picture] = [0, document.querySelector('figure img')];
          const canvas = new OffscreenCanvas(306, 396);
          const pen = canvas.getContext('2d');
          pen.drawImage(picture, 0, 0, 306, 396);
          const dots = pen.getImageData(0, 0, 306, 396).data;
          return new Set(Array.from({ length: dots.length / 4 }, (_, at) =>
            dots[4 * at] * 65536 + dots[4 * at + 1] * 256 + dots[4 * at + 2])).size;
        }"""
    )
    assert colours > 50, f"only {colours} colours on the first page"
    picture(page, "wide")
    is_for_all(page)

    # The handout is chosen by keys; the page in view stays where it is when a save draws again.
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowUp")
    expect(page.locator("#choice input:checked")).to_have_value("guide")
    expect(page.locator("figure").nth(20)).to_be_attached()
    page.locator("figure").nth(6).scroll_into_view_if_needed()
    page.evaluate("scrollBy(0, 211)")
    is_drawn(page, 7)
    before, at = [look_of(page, number) for number in range(1, 15)], place(page)
    text = lesson.read_text(encoding="utf-8")
    saved(lesson, text.replace("students: 8 ", "students: 11 "))
    expect(page.locator("#students")).to_have_value("11")
    expect(page.locator("#status")).to_contain_text("Drawn again")
    is_kept(page, at)
    after = [look_of(page, number) for number in range(1, 15)]
    assert before != after and set(before) & set(after), "some pages are drawn again, others stay"
    redrawn = page.locator("figure.redrawn").first
    number = int(re.match(r"\d+", redrawn.locator("figcaption").inner_text())[0])
    redrawn.scroll_into_view_if_needed()
    is_drawn(page, number)

    # A mistake is told as on the terminal, over the old pages.
    at = place(page)
    saved(lesson, text.replace("straight pour", "strait pour"))
    alert = page.get_by_role("alert").filter(has_text="there is no technique called")
    expect(alert).to_contain_text('did you mean "straight pour"?')
    terminal = subprocess.run([program, "check", lesson], capture_output=True, text=True).stderr
    shown = page.locator("#fault pre").text_content().strip()
    assert shown == terminal.strip(), f"{shown}\n--- is not ---\n{terminal}"
    expect(page.locator("#mode")).to_contain_text("The last pages that were right")
    is_kept(page, at)
    expect(page.locator("#write")).to_be_disabled()
    page.evaluate("scrollTo(0, 0)")
    is_drawn(page, 1)
    picture(page, "wrong")
    is_for_all(page)
    saved(lesson, text)
    expect(page.locator("#fault")).to_be_hidden()
    expect(page.locator("#students")).to_have_value("8")

    # What a colleague would say stands beside the pages, with the place that the terminal names.
    expect(page.locator("#remarks")).to_be_hidden()
    saved(lesson, text.replace("fee: 48", "fee: 8"))
    remark = page.locator("#remarks li")
    expect(remark).to_have_count(1)
    expect(remark.locator("mark")).to_have_text("8")
    expect(remark.locator("pre")).to_have_text("fee: 8")
    told = subprocess.run([program, "check", lesson], capture_output=True, text=True).stderr
    assert remark.locator("h3").text_content() in told, told
    where = remark.locator(".where").text_content()
    assert where.replace(", line ", ":") + ":" in told, f"{where} is not in\n{told}"
    for sentence in remark.locator("p:not(.where)").all_text_contents():
        assert sentence in told, f"{sentence} is not in\n{told}"
    page.evaluate("scrollTo(0, 0)")
    is_drawn(page, 1)
    picture(page, "remarked")
    is_for_all(page)
    saved(lesson, text)
    expect(page.locator("#remarks")).to_be_hidden()

    # More students, by keys: order and pages follow, the file does not.
    tab_to(page, "students")
    for _ in range(3):
        page.keyboard.press("ArrowUp")
    expect(page.locator("#mode")).to_contain_text("With 11 students: to buy")
    expect(page.locator("#sums dd").first).to_contain_text("instead of")
    page.keyboard.press("Enter")
    assert page.locator("#lines tr").count() > 3
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#mode")).to_contain_text("With 12 students")
    tab_to(page, "mix-0")
    page.keyboard.press("t")
    page.keyboard.press("h")
    page.keyboard.press("i")
    page.keyboard.press("c")
    expect(page.locator("#mode")).to_contain_text("thick on square")
    assert lesson.read_text(encoding="utf-8") == text, "trying has touched the file"
    picture(page, "changed")
    is_for_all(page)

    # The button writes it, and nothing but it.
    expect(page.locator("#write")).to_be_enabled()
    tab_to(page, "write")
    page.keyboard.press("Enter")
    expect(page.locator("#order")).to_be_hidden()
    expect(page.locator("#students")).to_have_value("12")
    expected = text.replace("students: 8 ", "students: 12 ").replace(
        "consistency: medium ", "consistency: thick ", 1
    )
    assert lesson.read_text(encoding="utf-8") == expected, "more or less than the values was written"

    # Narrow: nothing is wider than the window.
    page.set_viewport_size({"width": 380, "height": 800})
    page.evaluate("scrollTo(0, 0)")
    is_drawn(page, 1)
    picture(page, "narrow")
    is_for_all(page)
    width = page.evaluate("document.documentElement.scrollWidth")
    assert width <= 380, f"the page is {width} wide"

    # The checker of accessible pages would have said so.
    page.evaluate("document.querySelector('label[for=students]').remove()")
    found = hindrances(page)
    assert any(hindrance.startswith("label: <input") for hindrance in found), found

    # Nothing was asked of anywhere else, and the page had no fault of its own.
    away = [url for url in asked if not url.startswith(address)]
    assert not away, away
    assert not faults, faults
    print(f"{len(asked)} requests, all of them to {address}")


def main():
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(lessons / "data", pathlib.Path(folder) / "data")
        lesson = pathlib.Path(folder) / "boathouse-evening.yaml"
        shutil.copy(lessons / "boathouse-evening.yaml", lesson)
        command = [program, "preview", lesson, "--no-browser"]
        preview = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        try:
            address = re.search(r"http://127\.0\.0\.1:\d+/", preview.stdout.readline())[0]
            with sync_playwright() as playwright:
                browser = playwright.chromium.launch(
                    executable_path=shutil.which("chromium"), args=FLAGS
                )
                run(browser.new_page(viewport={"width": 1360, "height": 900}), lesson, address)
                browser.close()
        finally:
            preview.terminate()
            preview.wait()


main()
