"""Least cost over several shops by SciPy's HiGHS, recorded for tests/plan/buy/recorded.rs.

    python3 tests/reference/least_cost.py

The programme is written down here on its own, as one mixed-integer programme with binary
variables for "used" and "free delivery"; nothing of the Rust code is shared. Shops are
[delivery, free from, minimum], offers [shop, size, price, multiple, from]. Amounts and
sizes are whole numbers and prices whole cents, so that both sides mean the same. Versions,
seeds and optima stand in the file.
"""

import json
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp

SEEDS = range(1, 37)


def instance(seed):
    rng = np.random.default_rng(seed)
    shops = []
    for _ in range(rng.integers(2, 5)):
        delivery = int(rng.choice([0, 495, 750, 1200]))
        free = int(rng.choice([0, 4000, 7500, 12000]))
        least = int(rng.choice([0, 0, 1500, 2500]))
        shops.append({"delivery": delivery, "free_from": free or None, "minimum": least or None})
    items = []
    for _ in range(int(rng.integers(8, 33))):
        amount = int(rng.integers(20, 1500))
        offers = []
        for shop in range(len(shops)):
            if shop and rng.random() < 0.35:
                continue
            for size in rng.choice([59, 118, 237, 473, 946, 1893], rng.integers(1, 4), replace=False):
                price = int(round(float(size) ** 0.8 * rng.uniform(5.0, 9.0)))
                offer = {"shop": shop, "size": int(size), "price": price, "multiple": 1, "from": 1}
                offers.append(offer)
                if rng.random() < 0.15:
                    offers.append({**offer, "price": max(1, price * 9 // 10), "from": 3})
                if rng.random() < 0.1:
                    offer["multiple"] = 2
        items.append({"amount": amount, "offers": offers})
    return {"seed": seed, "shops": shops, "items": items}


def optimum(data):
    shops, items = data["shops"], data["items"]
    flat = [(i, o) for i, item in enumerate(items) for o in item["offers"]]
    n, s = len(flat), len(shops)
    # Columns: multiples bought, offer used, shop used, delivery free.
    x, y, z, f = 0, n, 2 * n, 2 * n + s
    width = 2 * n + 2 * s
    cost = np.zeros(width)
    upper = np.ones(width)
    rows, low, high = [], [], []

    def row(entries, lowest, highest):
        line = np.zeros(width)
        for at, value in entries:
            line[at] += value
        rows.append(line)
        low.append(lowest)
        high.append(highest)

    goods = [[] for _ in shops]
    for j, (i, o) in enumerate(flat):
        most = -(-items[i]["amount"] // (o["size"] * o["multiple"])) + 60
        upper[x + j] = most
        packs = o["multiple"]
        cost[x + j] = o["price"] * packs
        goods[o["shop"]].append((x + j, o["price"] * packs))
        row([(x + j, packs), (y + j, -most * packs)], -np.inf, 0)
        row([(x + j, packs), (y + j, -o["from"])], 0, np.inf)
    for i, item in enumerate(items):
        cover = [(x + j, o["size"] * o["multiple"]) for j, (k, o) in enumerate(flat) if k == i]
        row(cover, item["amount"], np.inf)
    for k, shop in enumerate(shops):
        cost[z + k] = shop["delivery"]
        cost[f + k] = -shop["delivery"]
        # More than the goods of any optimum here, and no more than the tolerance bears.
        big = 400_000
        row(goods[k] + [(z + k, -big)], -np.inf, 0)
        row(goods[k] + [(z + k, -(shop["minimum"] or 0))], 0, np.inf)
        if shop["free_from"] is None:
            upper[f + k] = 0
        else:
            row(goods[k] + [(f + k, -shop["free_from"])], 0, np.inf)
        row([(f + k, 1), (z + k, -1)], -np.inf, 0)
    result = milp(
        cost,
        integrality=np.ones(width),
        bounds=Bounds(np.zeros(width), upper),
        constraints=LinearConstraint(np.array(rows), low, high),
        options={"mip_rel_gap": 0.0, "time_limit": 120},
    )
    return result.status, result.fun


recorded = []
for seed in SEEDS:
    data = instance(seed)
    status, value = optimum(data)
    if status != 0 or abs(value - round(value)) > 1e-4:
        print(f"seed {seed}: left out, status {status}", file=sys.stderr)
        continue
    offers = [[list(o.values()) for o in item["offers"]] for item in data["items"]]
    recorded.append(
        {
            "seed": seed,
            "shops": [list(shop.values()) for shop in data["shops"]],
            "amounts": [item["amount"] for item in data["items"]],
            "offers": offers,
            "optimum": round(value),
        }
    )
record = {"scipy": scipy.__version__, "numpy": np.__version__, "instances": recorded}
# To a file of its own: the solver prints to the standard output.
Path(__file__).with_suffix(".json").write_text(json.dumps(record, separators=(",", ":")) + "\n")
