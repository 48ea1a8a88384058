"""Makes expected.csv: centiles of sizes at birth, worked out by SciPy from the parameters in core/domain/growth.

    pip install scipy==1.17.1
    python3 expected.py

Nothing of the program is called. The formulas are written out here, and each INTERGROWTH-21st centile is held against a
numerical integral of the density, so that the two forms of one distribution have to agree.

Skew-t type 3 (Fernandez and Steel 1998, JASA 93:359-371; ST3 of the R package gamlss.dist), with z = (y - mu)/sigma and
Student's t with tau degrees of freedom, density f and distribution F:
    density       2/(sigma (nu + 1/nu)) * (f(nu z) below mu, f(z/nu) from there on)
    distribution  2/(1 + nu^2) * F(nu z) below mu, (1 + 2 nu^2 (F(z/nu) - 1/2))/(1 + nu^2) from there on
LMS (Cole and Green 1992, Stat Med 11:1305-1319): z = boxcox(y/M, L)/S, standard normal.
"""

import csv
from pathlib import Path

import numpy as np
from scipy import __version__, integrate, special, stats

HERE = Path(__file__).parent
DATA = HERE / "../../growth"
SIZES = {"weight": ("intergrowth21-weight-kg.csv", 1000), "length": ("intergrowth21-length-cm.csv", 10), "head": ("intergrowth21-head-cm.csv", 10)}
DAYS = {*range(231, 300, 7), 300}
SHARES = [0.0005, 0.004, 0.03, 0.1, 0.25, 0.5, 0.75, 0.9, 0.97, 0.996, 0.9995]


def rows(name):
    with open(DATA / name) as file:
        yield from csv.DictReader(line for line in file if not line.startswith("#"))


def distribution(y, mu, sigma, nu, tau):
    z = (y - mu) / sigma
    if z < 0:
        return 2 / (1 + nu**2) * stats.t.cdf(nu * z, tau)
    return (1 + 2 * nu**2 * (stats.t.cdf(z / nu, tau) - 0.5)) / (1 + nu**2)


def density(y, mu, sigma, nu, tau):
    z = (y - mu) / sigma
    return 2 / (sigma * (nu + 1 / nu)) * stats.t.pdf(nu * z if z < 0 else z / nu, tau)


def by_integral(y, mu, *others):
    below, _ = integrate.quad(density, -np.inf, min(y, mu), (mu, *others), epsabs=1e-12, epsrel=1e-10)
    above = integrate.quad(density, mu, y, (mu, *others), epsabs=1e-12, epsrel=1e-10)[0] if y > mu else 0
    return below + above


def quantile(share, mu, sigma, nu, tau):
    """Only to pick values that spread over all centiles; they are rounded to the unit of the record."""
    if share < 1 / (1 + nu**2):
        return mu + sigma / nu * stats.t.ppf(share * (1 + nu**2) / 2, tau)
    return mu + sigma * nu * stats.t.ppf((share * (1 + nu**2) - 1) / (2 * nu**2) + 0.5, tau)


def intergrowth():
    for size, (name, per_unit) in SIZES.items():
        for row in rows(name):
            if int(row["ga_days"]) not in DAYS:
                continue
            parameters = [float(row[key]) for key in ("mu", "sigma", "nu", "tau")]
            for share in SHARES:
                value = round(quantile(share, *parameters) * per_unit)
                expected = distribution(value / per_unit, *parameters)
                assert abs(expected - by_integral(value / per_unit, *parameters)) < 1e-8, (size, row, value)
                yield "intergrowth", size, row["sex"], row["ga_days"], value, 100 * expected, stats.norm.ppf(expected)


def who():
    for row in rows("who2006-birth-weight-kg.csv"):
        l, m, s = (float(row[key]) for key in ("l", "m", "s"))
        for value in range(1500, 5300, 75):
            z = special.boxcox(value / 1000 / m, l) / s
            yield "who", "weight", row["sex"], "", value, 100 * stats.norm.cdf(z), z


with open(HERE / "expected.csv", "w", newline="\n") as file:
    file.write(f"# Made by expected.py with SciPy {__version__} from the parameters in core/domain/growth; values in g and mm.\n")
    file.write("standard,size,sex,days,value,centile,z\n")
    for *names, centile, z in [*intergrowth(), *who()]:
        file.write(",".join(map(str, names)) + f",{centile:.7f},{z:.6f}\n")
