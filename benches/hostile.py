#!/usr/bin/env python3
"""How long the program takes to refuse a megabyte of nonsense.

    cargo build --release && python3 benches/hostile.py target/release/puddlebook [SECONDS [CASE…]]

Writes files of many kinds, each up to the largest that is read, and counts what `check` (for
tables `learn`) takes of the processor, the best of three. Fails when that is longer than a second
(or than so many), or when the exit code is another than 1. Prints how long the answer is, too, for nobody reads a
megabyte.
"""
import os, random, resource, subprocess, sys, tempfile

SIZE = 1024 * 1024
random.seed(7)
HEAD = """title: A small class
class: {students: 2}
canvases:
  square: {shape: rectangle, width: 10 in, height: 10 in, depth: 0, technique: straight pour, consistency: medium, palette: plain}
palettes:
  plain:
    colour: {blue: 40 %, white: the rest}
colours:
  blue: {swatch: "#1F5A7A"}
  white: {swatch: "#F4F2EC"}
"""
KEYS = "title subtitle teacher place date note language units paper print use class canvases palettes practices timetable exercises colours materials mixes techniques finishes sizes room washing mixing reserve supplies shops stock jars money cautions".split()


def spent():
    """Seconds of the processor that all runs have taken so far: a busy machine adds nothing."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def fill(one, head=""):
    """Lines of `one(number)` up to the size."""
    out, size, number = [head], len(head.encode()), 0
    while True:
        line = one(number)
        size += len(line.encode())
        if size > SIZE:
            return "".join(out)
        out.append(line)
        number += 1


def slip(word):
    at = random.randrange(len(word))
    return word[:at] + random.choice("abcdefghij") + word[at + 1 :]


def name(number, letters="abcdefghijklmnopqrst"):
    out = ""
    while True:
        out += letters[number % len(letters)]
        number //= len(letters)
        if not number:
            return out


LESSONS = {
    "brackets": "[" * SIZE,
    "braces": "{" * SIZE,
    "braces with keys": fill(lambda n: "{a: "),
    "brackets closed": "a: " + "[" * 400_000 + "]" * 400_000,
    "deep by indent": "".join(" " * n + "a:\n" for n in range(1_440)),
    "deep lists": "- " * (SIZE // 2),
    "questions": "? " * (SIZE // 2),
    "one key": "a" * (SIZE - 2) + ": ",
    "one value": HEAD.replace("A small class", "a" * (SIZE - 600)),
    "one name": HEAD.replace("square:", "s" * (SIZE - 600) + ":"),
    "keys almost right": fill(lambda n: f"{slip(random.choice(KEYS))}{name(n)}: 1\n", HEAD),
    "sections almost right": fill(lambda n: f"{random.choice(KEYS)}{name(n)}: {{a: 1}}\n", HEAD),
    "canvas keys almost right": fill(lambda n: f"    {random.choice(['widht','heigth','dept','shap','pallete'])}{name(n)}: 1\n", "canvases:\n  other:\n"),
    "colours almost right": fill(lambda n: f"      {slip('harbour blue')}{name(n)}: 1 %\n", HEAD.replace("palettes:\n  plain:\n    colour: {blue: 40 %, white: the rest}\n", "") + "palettes:\n  plain:\n    colour:\n"),
    "many colours, a palette of slips": fill(lambda n: f"  harbour blue {name(n)}: {{swatch: \"#1F5A7A\"}}\n", HEAD.replace("colours:\n", "x:\n").replace("blue: 40 %, white: the rest", ", ".join(f"harbuor bleu {name(n)}: 1 %" for n in range(40))) + "colours:\n"),
    "many canvases": fill(lambda n: f"  c{n}: {{shape: rectangle, width: 10 in, height: 10 in, depth: 0, technique: strait pour, consistency: medum, palette: plan}}\n", HEAD.replace("canvases:\n", "canvases:\n", 1).split("palettes:")[0]),
    "many techniques, slips of them": fill(lambda n: f"  pour {name(n)}: {{layers: {{}}}}\n", HEAD.replace("technique: straight pour", "technique: poor aaaa") + "techniques:\n"),
    "many palettes": fill(lambda n: f"  p{n}: {{colour: {{blue: 41 %, white: 60 %}}}}\n", HEAD.split("palettes:")[0] + "colours:\n  blue: {swatch: \"#1F5A7A\"}\n  white: {swatch: \"#F4F2EC\"}\npalettes:\n  plain: {colour: {blue: 100 %}}\n"),
    "many students": HEAD.replace("{students: 2}", "{students: [" + ", ".join(f"Ana {name(n)}" for n in range(60_000)) + "]}"),
    "students of one name": HEAD.replace("{students: 2}", "{students: [" + ", ".join("Ana" for n in range(150_000)) + "]}"),
    "many shops": fill(lambda n: f"  shop {n}: {{currency: USD, packs: [{{item: blue, size: 1 oz, price: x}}]}}\n", HEAD + "shops:\n"),
    "many packs": fill(lambda n: f"      - {{item: blue acrylic {name(n)}, size: {n % 99 + 1} fl oz, price: 1.25}}\n", HEAD + "shops:\n  One (invented):\n    currency: USD\n    packs:\n"),
    "many packs of one paint": fill(lambda n: f"      - {{item: blue acrylic, size: {n % 9999 + 1} mL, price: {n}.25}}\n", HEAD + "shops:\n  One (invented):\n    currency: USD\n    packs:\n"),
    "many stock": fill(lambda n: f"  blue acrylic {name(n)}: 1 fl oz\n", HEAD + "stock:\n"),
    "many cautions": fill(lambda n: f"  c{n}: {{when: torch, sign: flam}}\n", HEAD + "cautions:\n"),
    "many files": HEAD + "use: [" + ", ".join(f"f{n}.yaml" for n in range(90_000)) + "]\n",
    "duplicate keys": fill(lambda n: f"k{n % 300}: 1\n", HEAD),
    "duplicate keys far apart": HEAD + "".join(f"k{n}: 1\n" for n in range(200)) + "# filler\n" * 100_000 + "".join(f"k{n}: 1\n" for n in range(200)),
    "one duplicate key": "a: 1\n" * (SIZE // 5),
    "duplicate sections": fill(lambda n: "canvases: {a: {width: 1}}\n", HEAD),
    "aliases": "a: &a {x: 1}\nb: [" + "*a, " * 200_000 + "]\n",
    "100k anchors and aliases": fill(lambda n: f"k{n}: &a{n} 1\nl{n}: *a{n}\n", ""),
    "growing aliases": "a: &a [1, 2]\n" + "".join(f"{chr(n + 1)}: &{chr(n + 1)} [*{chr(n)}, *{chr(n)}, *{chr(n)}]\n" for n in range(97, 121)),
    "aliases of nothing": fill(lambda n: f"k{n}: *nobody{n}\n", ""),
    "merge keys": fill(lambda n: f"k{n}: {{<<: *a}}\n", "a: &a {x: 1}\n"),
    "huge numbers": HEAD.replace("10 in", "9" * 500_000 + " in", 1),
    "huge exponents": fill(lambda n: f"  c{n}: {{width: 1e{n}99999 in}}\n", "canvases:\n"),
    "huge fraction": HEAD.replace("10 in", "1/" + "3" * 900_000 + " in", 1),
    "quotes": "'" * SIZE,
    "double quotes": '"' * SIZE,
    "escapes": 'title: "' + "\\u00e9" * 170_000 + '"',
    "folded text": "title: >\n" + "  a\n" * 250_000,
    "literal text": "title: |\n" + "  a\n" * 250_000,
    "lines of comment": "# a\n" * (SIZE // 4),
    "empty lines": "\n" * SIZE,
    "old line ends": "\r" * SIZE,
    "spaces": " " * SIZE,
    "tabs": "\t" * SIZE,
    "colons": ":" * SIZE,
    "colons and spaces": ": " * (SIZE // 2),
    "hyphens": "-" * SIZE,
    "hash": "#" * SIZE,
    "tags": "!" * SIZE,
    "tags apart": fill(lambda n: f"k{n}: !t{n} 1\n", ""),
    "documents": "---\n" * (SIZE // 4),
    "emoji": "🎨" * (SIZE // 4),
    "emoji keys": fill(lambda n: f"🎨{n}: 🖌️\n", HEAD),
    "combining marks": "title: a" + "\u0301" * (SIZE // 2 - 10),
    "right to left": fill(lambda n: f"\u202e{n}: ש\u05b8לום\n", HEAD),
    "byte-order marks": "\ufeff" * (SIZE // 3),
    "a long line of errors": "canvases: {" + ", ".join(f"c{n}: {{w: 1}}" for n in range(60_000)) + "}\n",
    "a long line, nested": HEAD.replace("{students: 2}", "{students: 2, x: " + "a" * 900_000 + "}"),
    "letters": "".join(random.choice("abcdef :-{}[]#&*!|>'\"%@,\n\t") for _ in range(SIZE)),
    "noise": "".join(chr(random.choice([random.randrange(32, 127), random.randrange(160, 0x2000), 10])) for _ in range(SIZE // 2)),
}
COLUMNS = "lesson,date,student,canvas,piece,technique,consistency,layer,colour,before,after,tray,scale,checked,note"
ROW = "small.yaml,2026-04-11,{s},square,,,,,blue,{b},{a},,1 g,,\n"
TABLES = {
    "rows of slips": fill(lambda n: ROW.format(s=f"x{n}", b="a", a="b"), COLUMNS + "\n"),
    "rows of one cup": fill(lambda n: ROW.format(s=1, b=50, a=5), COLUMNS + "\n"),
    "rows of many lessons": fill(lambda n: ROW.format(s=1, b=50, a=5).replace("small", f"s{n}"), COLUMNS + "\n"),
    "commas": "," * SIZE,
    "rows of commas": ("," * 14 + "\n") * (SIZE // 15),
    "quotes in a table": COLUMNS + "\n" + '"' * (SIZE - 200),
    "open quotes": COLUMNS + "\n" + 'a,"' * ((SIZE - 200) // 3),
    "cells of quotes": fill(lambda n: '"a""b",' * 15 + "\n", COLUMNS + "\n"),
    "one cell": COLUMNS + "\n" + "a" * (SIZE - 200),
    "columns": ",".join(f"befor{name(n)}" for n in range(90_000)),
    "semicolons": (COLUMNS.replace(",", ";") + "\n") * 8_000,
    "old line ends in a table": (COLUMNS + "\r") * 8_000,
}


def main():
    program = os.path.abspath(sys.argv[1])
    most = float(sys.argv[2]) if len(sys.argv) > 2 else 1.0
    wanted = sys.argv[3:]
    slow = []
    with tempfile.TemporaryDirectory() as folder:
        with open(os.path.join(folder, "small.yaml"), "w") as file:
            file.write(HEAD)
        cases = [(name, text, "yaml", "check") for name, text in LESSONS.items()]
        cases += [(name, text, "csv", "learn") for name, text in TABLES.items()]
        for name_, text, ending, command in cases:
            if wanted and name_ not in wanted:
                continue
            path = os.path.join(folder, "x." + ending)
            with open(path, "wb") as file:
                file.write(text.encode("utf-8", "surrogatepass")[:SIZE])
            best, took = 99.0, []
            for _ in range(3):
                start = spent()
                try:
                    done = subprocess.run([program, command, path], capture_output=True, timeout=20, cwd=folder)
                except subprocess.TimeoutExpired:
                    took.append(20.0)
                    done = None
                    break
                took.append(spent() - start)
            best = min(took)
            code = done.returncode if done else "none"
            said = len(done.stderr) + len(done.stdout) if done else 0
            wrong = best > most or code not in (0, 1) or said > 300_000
            print(f"{best:7.3f} s  code {code}  says {said:8} bytes  {name_}{'   <-- WRONG' if wrong else ''}", flush=True)
            if wrong:
                slow.append(name_)
                if done and code not in (0, 1):
                    print(done.stderr[:600].decode("utf-8", "replace"))
    sys.exit(f"too slow, too long or not answered: {', '.join(slow)}" if slow else 0)


main()
