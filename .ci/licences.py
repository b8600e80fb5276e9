"""The licence of every crate that the program is built from, held against those that it may have.

    python3 .ci/licences.py                 LICENCES.md is as Cargo.lock has it, all are allowed
    python3 .ci/licences.py --write         writes LICENCES.md
    python3 .ci/licences.py --texts FILE    collects what has to go with a binary
"""

import json
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
KEPT = ROOT / "LICENCES.md"

# Permissive: notices have to be kept, nothing else is asked. Those of None ask for no notice.
TEXT = "its text and the names of its authors go with a binary"
ALLOWED = {
    "MIT": TEXT,
    "Apache-2.0": "its text and a NOTICE file, where there is one, go with a binary",
    "BSD-2-Clause": TEXT,
    "BSD-3-Clause": TEXT,
    "ISC": TEXT,
    "Unicode-3.0": TEXT,
    "Zlib": None,
    "BSL-1.0": None,
    "0BSD": None,
    "MIT-0": None,
    "CC0-1.0": None,
    "Unlicense": None,
}
EXCEPTIONS = {"LLVM-exception"}
RULE = "=" * 79

BSD = """The 3-clause BSD licence:

Redistribution and use in source and binary forms, with or without modification, are permitted
provided that the following conditions are met: 1. Redistributions of source code must retain the
copyright notice, this list of conditions and the following disclaimer. 2. Redistributions in binary
form must reproduce the copyright notice, this list of conditions and the following disclaimer in the
documentation and/or other materials provided with the distribution. 3. Neither the name of the
copyright holder nor the names of its contributors may be used to endorse or promote products derived
from this software without specific prior written permission.

THIS SOFTWARE IS PROVIDED BY THE COPYRIGHT HOLDERS AND CONTRIBUTORS "AS IS" AND ANY EXPRESS OR IMPLIED
WARRANTIES, INCLUDING, BUT NOT LIMITED TO, THE IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS FOR A
PARTICULAR PURPOSE ARE DISCLAIMED. IN NO EVENT SHALL THE COPYRIGHT HOLDER OR CONTRIBUTORS BE LIABLE FOR
ANY DIRECT, INDIRECT, INCIDENTAL, SPECIAL, EXEMPLARY, OR CONSEQUENTIAL DAMAGES (INCLUDING, BUT NOT
LIMITED TO, PROCUREMENT OF SUBSTITUTE GOODS OR SERVICES; LOSS OF USE, DATA, OR PROFITS; OR BUSINESS
INTERRUPTION) HOWEVER CAUSED AND ON ANY THEORY OF LIABILITY, WHETHER IN CONTRACT, STRICT LIABILITY, OR
TORT (INCLUDING NEGLIGENCE OR OTHERWISE) ARISING IN ANY WAY OUT OF THE USE OF THIS SOFTWARE, EVEN IF
ADVISED OF THE POSSIBILITY OF SUCH DAMAGE.
"""

HEAD = """# Licences

puddlebook itself is under MIT or Apache-2.0, at your choice. This is what else goes into it;
`python3 .ci/licences.py --write` makes this file from `Cargo.lock`, and `.ci/run` fails when it is
out of date, when a crate names no licence, or one that is not allowed below (copyleft among them).
Where a crate offers several, one of those allowed is taken.

## What has to go with a binary

Source archives carry every text already. Who passes on a **binary** has to put these beside it:

- the licences of the crates in it. `python3 .ci/licences.py --texts licences.txt` collects their
  texts, notices and names into one file, and fails when one has none.
- `fonts/OFL.txt`. The Lato faces are compiled in; the SIL Open Font License wants its text and their
  copyright with every copy. They are not changed, and not sold by themselves. The subsets in PDFs
  are part of a document, of which it asks nothing.
- for a static binary of the gnu target, nothing of ours but the terms of the GNU C library (LGPL) for
  what is linked in: they are met by this source, from which anybody can link it anew. The musl
  target has a C library under MIT instead.
- the notices of the patterns for dividing words, which `hypher` compiles in and its archive does not
  bring; the same file has them:

"""

# hypher is built from hyph-en-us.tex and hyph-es.tex of TeX's hyph-utf8.
PATTERNS = """    Hyphenation patterns for American English (hyph-en-us.tex)
    Copyright (C) 1990, 2004, 2005 Gerard D.C. Kuiken
    Copying and distribution of this file, with or without modification,
    are permitted in any medium without royalty provided the copyright
    notice and this notice are preserved.

    Hyphenation patterns for Spanish (hyph-es.tex), under MIT
    Copyright (c) 1993, 1997 Javier Bezos
    Copyright (c) 2001-2015 Javier Bezos and CervanTeX
"""


def metadata():
    """Packages by id, and for each the ids that it depends on by kind."""
    command = ["cargo", "metadata", "--locked", "--format-version", "1"]
    data = json.loads(subprocess.run(command, cwd=ROOT, check=True, capture_output=True).stdout)
    packages = {package["id"]: package for package in data["packages"]}
    edges = {}
    for node in data["resolve"]["nodes"]:
        kinds = [(dep["pkg"], {kind["kind"] or "normal" for kind in dep["dep_kinds"]})
                 for dep in node["deps"]]
        edges[node["id"]] = kinds
    return packages, edges, data["resolve"]["root"]


def is_macro(package):
    return any("proc-macro" in target["kind"] for target in package["targets"])


def sorts():
    """The crates in the binary, those that only build it, and those that only test it."""
    packages, edges, root = metadata()

    def reach(starts, kinds, stop):
        seen, rest = set(), list(starts)
        while rest:
            crate = rest.pop()
            if crate in seen or stop(crate):
                continue
            seen.add(crate)
            rest += [other for other, of in edges[crate] if of & kinds]
        return seen

    def next_to(crates, kinds):
        return {other for crate in crates for other, of in edges[crate] if of & kinds}

    # A procedural macro runs in the compiler; nothing of it is linked in.
    shipped = reach([root], {"normal"}, lambda crate: is_macro(packages[crate]))
    macros = {crate for crate in next_to(shipped, {"normal"}) if is_macro(packages[crate])}
    tools = reach(macros | next_to(shipped, {"build"}), {"normal", "build"}, lambda _: False) - shipped
    tests = reach(next_to([root], {"dev"}), {"normal", "build"}, lambda _: False) - shipped - tools
    pick = lambda ids: sorted((packages[crate] for crate in ids), key=lambda it: (it["name"], it["version"]))
    return pick(shipped - {root}), pick(tools), pick(tests)


def choices(expression):
    """The sets of licences that an SPDX expression lets one choose from."""
    tokens = re.findall(r"[()]|[^\s()]+", expression.replace("/", " OR "))
    at = 0

    def take():
        nonlocal at
        at += 1
        return tokens[at - 1] if at <= len(tokens) else None

    def peek():
        return tokens[at] if at < len(tokens) else None

    def one():
        token = take()
        if token == "(":
            inner = either()
            if take() != ")":
                raise ValueError(expression)
            return inner
        if token is None or token in (")", "OR", "AND", "WITH"):
            raise ValueError(expression)
        if peek() == "WITH":
            take()
            exception = take()
            token = token if exception in EXCEPTIONS else f"{token} WITH {exception}"
        return [{token}]

    def both():
        sets = one()
        while peek() == "AND":
            take()
            more = one()
            sets = [left | right for left in sets for right in more]
        return sets

    def either():
        sets = both()
        while peek() == "OR":
            take()
            sets = sets + both()
        return sets

    sets = either()
    if at != len(tokens):
        raise ValueError(expression)
    return sets


def refused(crates):
    """What is wrong with the licences of crates."""
    for crate in crates:
        name, licence = f"{crate['name']} {crate['version']}", crate["license"]
        if not licence:
            yield f"{name} names no licence"
            continue
        try:
            sets = choices(licence)
        except ValueError:
            yield f"{name}: {licence} cannot be understood"
            continue
        if not any(all(one in ALLOWED for one in chosen) for chosen in sets):
            yield f"{name}: {licence} is not allowed"


# The judge is judged first.
TRIED = {
    "MIT": True,
    "MIT/Apache-2.0": True,
    "MIT OR GPL-3.0": True,
    "(MIT OR Apache-2.0) AND Unicode-3.0": True,
    "Apache-2.0 WITH LLVM-exception OR (Zlib AND LGPL-2.1)": True,
    "GPL-3.0-only": False,
    "MIT AND GPL-3.0": False,
    "GPL-2.0 WITH Classpath-exception-2.0": False,
    "MPL-2.0": False,
    "MIT OR": False,
    "(MIT": False,
    None: False,
}


def misjudged():
    for expression, fine in TRIED.items():
        crate = {"name": "a crate", "version": "1.0.0", "license": expression}
        if any(refused([crate])) == fine:
            yield f"{expression} is judged wrongly"


def table(crates):
    rows = [f"| `{crate['name']}` | {crate['version']} | {crate['license']} |" for crate in crates]
    return "\n".join(["| crate | version | licence |", "| --- | --- | --- |", *rows])


def page(shipped, tools, tests):
    allowed = [f"- {name}: {asks or 'asks for nothing beside a binary'}" for name, asks in ALLOWED.items()]
    parts = [
        HEAD + PATTERNS,
        "## Allowed\n\n" + "\n".join(allowed) + "\n",
        f"## In the binary: {len(shipped)}\n\nOn any system; one system needs a part of them.\n\n{table(shipped)}\n",
        f"## Only to build it: {len(tools)}\n\nMacros and build scripts run in the compiler; nothing of them is linked in.\n\n{table(tools)}\n",
        f"## Only to test it: {len(tests)}\n\n{table(tests)}\n",
    ]
    return "\n".join(parts)


def texts(crates):
    """The texts of the licences of crates one after the other, equal ones once; those without."""
    by_text, without = {}, []
    for crate in crates:
        folder = Path(crate["manifest_path"]).parent
        wanted = re.compile(r"^(licen[cs]e|copying|notice|copyright|unlicense)", re.IGNORECASE)
        files = [path for path in sorted(folder.rglob("*")) if path.is_file() and wanted.match(path.name)
                 and path.suffix not in (".rs", ".toml", ".json")]
        name = f"{crate['name']} {crate['version']} ({crate['license']}), {', '.join(crate['authors']) or 'its authors'}"
        if not files:
            without.append(name)
        for path in files:
            by_text.setdefault(path.read_text(encoding="utf-8", errors="replace").strip(), []).append(name)
    parts = []
    for text, names in by_text.items():
        parts.append("\n".join([RULE, *dict.fromkeys(names), RULE, "", text, ""]))
    return parts, without


def main(arguments):
    shipped, tools, tests = sorts()
    wrong = [*misjudged(), *refused(shipped + tools + tests)]
    for line in wrong:
        print(line)
    if wrong:
        return 1
    if arguments[:1] == ["--texts"] and len(arguments) == 2:
        parts, without = texts(shipped)
        # Crates without a text, and the patterns, have the texts that stand in this repository.
        own = [path.read_text(encoding="utf-8") for path in (ROOT / "LICENSE-MIT", ROOT / "LICENSE-APACHE")]
        said = "No text comes with these; the licences that they name follow.\n\n" + "\n\n".join([*own, BSD])
        parts.append("\n".join([RULE, *without, RULE, "", PATTERNS, said]))
        lato = (ROOT / "fonts/OFL.txt").read_text(encoding="utf-8")
        parts.append("\n".join([RULE, "The Lato faces", RULE, "", lato]))
        strange = [name for name in without if not re.search(r"MIT|Apache-2.0|BSD-3-Clause", name)]
        if strange:
            print("no text for:", *strange, sep="\n  ")
            return 1
        Path(arguments[1]).write_text("\n".join(parts), encoding="utf-8")
        print(f"{arguments[1]}: texts for {len(shipped)} crates, {len(without)} of them without one of their own")
        return 0
    wanted = page(shipped, tools, tests)
    if arguments == ["--write"]:
        KEPT.write_text(wanted, encoding="utf-8")
    elif arguments:
        print(__doc__)
        return 2
    elif not KEPT.exists() or KEPT.read_text(encoding="utf-8") != wanted:
        print("LICENCES.md is out of date: python3 .ci/licences.py --write")
        return 1
    print(f"{len(shipped)} crates in the binary, {len(tools)} to build it, {len(tests)} to test it: all allowed")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
