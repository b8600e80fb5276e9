"""Perimeters of ellipses by SciPy's complete elliptic integral of the second kind.

P = 4 a E(m), m = 1 - (b/a)^2 (Abramowitz and Stegun 1964, 17.3.3).
Prints half axes and perimeter, as recorded in ellipse_perimeter.csv:

    python3 ellipse_perimeter.py > ellipse_perimeter.csv
"""

import platform

import scipy
from scipy.special import ellipe

print(f"# SciPy {scipy.__version__}, Python {platform.python_version()}")
print("long,short,perimeter")
for long, short in [
    (1, 1), (1, 0.999), (1, 0.9), (6, 4), (20, 15), (7, 5), (1, 0.5), (3, 1), (10, 1),
    (100, 1), (1000, 1), (12.5, 12.4), (0.75, 0.0625),
]:
    print(f"{long},{short},{4 * long * ellipe(1 - (short / long) ** 2):.15g}")
