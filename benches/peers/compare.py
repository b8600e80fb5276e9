"""One document, every maker, one run: times, memory, size, gaps between words, and the ratios.

    python3 -m venv peers-env && peers-env/bin/pip install -r requirements.txt
    apt-get install time poppler-utils                                   # GNU time, pdftotext
    apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 # for weasyprint
    cargo build --release && cargo build --release --example comparison  # in the project's folder
    peers-env/bin/python compare.py [--runs N] [--only MAKER ...]

Makers take turns, so that a busy moment of the machine meets all of them; the middle of N runs
counts. "whole" is a process from start to end; "inside" is one run in a process that is warm
but sets a text that it has not met. Peers run in Python, whose start takes about 0.03 s of
their whole.
"""
import argparse
import json
import re
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

import content

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[1]
OWN = PROJECT / "target/release/examples/comparison"
PROGRAM = PROJECT / "target/release/puddlebook"
PEERS = {"typst": "gen_typst.py", "reportlab": "gen_reportlab.py", "fpdf2": "gen_fpdf2.py", "weasyprint": "gen_weasy.py"}
OURS = "puddlebook"
PAGES = {1: "about 20 pages", 10: "about 200 pages"}


def contents(folder, scale, count):
    """Files of contents, each with words of its own."""
    files = []
    for seed in range(2024, 2024 + count):
        file = folder / f"content-{scale}-{seed}.json"
        file.write_text(json.dumps(content.build(scale, seed)))
        files.append(str(file))
    return files


def command(maker, out, scale, texts, warm=0):
    """The command that makes the document, and `warm` more of them in the same process."""
    if maker == OURS:
        return [str(OWN), str(out), *texts[:1 + warm]]
    extra = ["--warm", str(warm)] if warm else []
    return [sys.executable, str(HERE / PEERS[maker]), str(out), str(scale), *extra]


def whole(arguments):
    """Seconds by the clock, seconds of CPU, and MiB at most, of a process."""
    run = subprocess.run(["/usr/bin/time", "-f", "%e %U %S %M", *arguments], capture_output=True, text=True, check=True)
    wall, user, system, memory = map(float, run.stderr.split()[-4:])
    return wall, user + system, memory / 1024


def inside(arguments):
    """Seconds of each run in a process but the first."""
    run = subprocess.run(arguments, capture_output=True, text=True, check=True)
    return [float(seconds) for seconds in re.findall(r"(\d+\.\d+) s", run.stdout)][1:]


def pages(file):
    return int(re.search(r"Pages:\s+(\d+)", subprocess.run(["pdfinfo", file], capture_output=True, text=True).stdout)[1])


def hyphens(file):
    text = subprocess.run(["pdftotext", "-layout", file, "-"], capture_output=True, text=True).stdout
    return len(re.findall(r"[a-z][-\u2010\u00ad]\s*\n", text))


def measure(makers, scale, runs, folder):
    texts = contents(folder, scale, 4)
    taken = {maker: [] for maker in makers}
    warm = {maker: [] for maker in makers}
    for _ in range(runs):
        for maker in makers:
            taken[maker].append(whole(command(maker, folder / f"{maker}-{scale}.pdf", scale, texts)))
            if scale == 1:
                warm[maker] += inside(command(maker, folder / "warm.pdf", scale, texts, warm=3))
    rows = {}
    for maker in makers:
        file = folder / f"{maker}-{scale}.pdf"
        wall, cpu, memory = (statistics.median(values) for values in zip(*taken[maker]))
        rows[maker] = dict(wall=wall, cpu=cpu, memory=memory, bytes=file.stat().st_size, pages=pages(file),
                           inside=statistics.median(warm[maker]) if warm[maker] else None)
    return rows


def show(rows, scale):
    print(f"\n{PAGES[scale]}\n{'':12}{'pages':>6}{'whole s':>9}{'cpu s':>8}{'MiB':>7}{'bytes':>11}{'inside s':>10}")
    for maker, row in rows.items():
        within = f"{row['inside']:.3f}" if row["inside"] else ""
        print(f"{maker:12}{row['pages']:6}{row['wall']:9.3f}{row['cpu']:8.2f}{row['memory']:7.0f}{row['bytes']:11,}{within:>10}")
    others = [maker for maker in rows if maker != OURS]
    if OURS in rows and others:
        for key, name in (("wall", "whole"), ("inside", "inside"), ("cpu", "cpu"), ("memory", "memory"), ("bytes", "bytes")):
            known = [maker for maker in others if rows[maker][key]]
            if known:
                best = min(known, key=lambda maker: rows[maker][key])
                ratio = rows[best][key] / rows[OURS][key]
                print(f"  {name}: {ratio:.1f} times as good as the best other, {best}")


def own_commands(folder, runs):
    """Whole commands of ours: the handouts of the demo lessons, and a worksheet for each of many."""
    lessons = sorted(map(str, (PROJECT / "lessons").glob("*.yaml")))
    names = [f"{first}{second}{last}" for first in ("Ba", "Ko", "Ri", "Mu", "Ne", "La", "To", "Ve", "Da", "Po")
             for second in ("ba", "ko", "ri", "mu", "ne", "la", "to", "ve", "da", "po")
             for last in ("na", "ko", "ra", "mi", "sel", "lo", "to", "vin", "da", "ren")]
    text = (PROJECT / "lessons/youth-hexagons.yaml").read_text()
    text = re.sub(r"\nexercises: .*\n", "\n", text)     # worksheets alone
    many = folder / "many.yaml"
    many.write_text(re.sub(r"students: \d+", f"students: [{', '.join(names)}]", text)
                    .replace("data/", f"{PROJECT}/lessons/data/"))
    print(f"\nown commands\n{'':34}{'whole s':>9}{'cpu s':>8}{'MiB':>7}")
    for name, arguments in (("handouts of one demo lesson", lessons[1:2]), ("handouts of all demo lessons", lessons),
                            (f"{len(names)} personal worksheets", [str(many), "--only", "worksheet"])):
        rows = [whole([str(PROGRAM), "make", *arguments, "--out", str(folder / "made")]) for _ in range(runs)]
        wall, cpu, memory = (statistics.median(values) for values in zip(*rows))
        print(f"{name:34}{wall:9.2f}{cpu:8.2f}{memory:7.0f}")
    print(f"worksheets: {pages(folder / 'made/many/worksheet.pdf')} pages")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--runs", type=int, default=7)
    parser.add_argument("--only", nargs="*", default=[OURS, *PEERS])
    parser.add_argument("--keep", type=Path, help="a folder in which the PDFs stay")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as temporary:
        folder = options.keep or Path(temporary)
        folder.mkdir(parents=True, exist_ok=True)
        small = measure(options.only, 1, options.runs, folder)
        show(small, 1)
        print("\nhyphens at line ends, and gaps between words")
        for maker in options.only:
            file = folder / f"{maker}-1.pdf"
            gaps = subprocess.run([sys.executable, HERE / "gaps.py", file], capture_output=True, text=True).stdout
            print(f"{maker:12}{hyphens(file):4} hyphens; {gaps.partition(' ')[2].strip()}")
        large = measure(options.only, 10, max(1, options.runs // 3), folder)
        show(large, 10)
        if OURS in small:
            own_commands(folder, max(1, options.runs // 2))
        if OURS in small and OURS in large:
            times = large[OURS]["wall"] / small[OURS]["wall"]
            grown = large[OURS]["pages"] / small[OURS]["pages"]
            print(f"\n{grown:.1f} times the pages in {times:.1f} times the time")


main()
