"""Solves solutions of acids, salts, calcium, magnesium and a protein with scipy.

Reads one JSON object from standard input, writes the pH and the ionic strength
of each case. The equations are those of the package's description; the reading of
the data files, the arrangement and the solvers share nothing with it: scipy's
brentq for the pH, and inside it root for ionic strength and free metals at once.
"""
import csv
import json
import sys

import numpy as np
from scipy.optimize import brentq, root

LN10 = np.log(10)
R, T0 = 8.314463, 298.15
METALS = ("calcium", "magnesium")


def rows(path):
    with open(path) as f:
        return list(csv.DictReader(line for line in f if not line.startswith("#")))


def thermal(log_k, dh, dcp, T):
    """log10 K over temperature with constant heat capacity of reaction."""
    return log_k + (-dh * 1000 / R * (1 / T - 1 / T0) + dcp / R * (T0 / T - 1 + np.log(T / T0))) / LN10


class Data:
    """Species of every component: charge, log10 of the cumulated constant, metal."""

    def __init__(self, folder):
        self.components = rows(folder + "/components.csv")
        self.steps = rows(folder + "/dissociation.csv")
        self.functions = {(r["component"], r["step"]): r for r in rows(folder + "/functions.csv")}
        self.complexes = rows(folder + "/complexes.csv")

    def constant(self, step, T):
        f = self.functions.get((step["component"], step["step"]))
        if f is None:
            return thermal(-float(step["pk_25c"]), float(step["dh_kj_per_mol"]), float(step["dcp_j_per_mol_k"]), T)
        a, b, c, d, e = (float(f[k]) for k in "abcde")
        log = np.log if f["logarithm"] == "ln" else np.log10
        value = a + b / T + c * log(T) + d * T + e / T**2
        return value / LN10 if f["logarithm"] == "ln" else value

    def species(self, name, T):
        component = next(c for c in self.components if c["name"] == name)
        top, names = int(component["top_charge"]), component["species"].split()
        constants = [self.constant(s, T) for s in self.steps if s["component"] == name]
        free, bound = [], []
        for j, ligand in enumerate(names):
            log_k = sum(constants[:j])
            free.append((top - j, log_k, j))
            for c in self.complexes:
                if c["component"] == name and c["ligand"] == ligand:
                    k = thermal(float(c["log10k_25c"]), float(c["dh_kj_per_mol"]), 0, T)
                    bound.append((top - j + 2, log_k + k, j, METALS.index(c["metal"])))
        return free, bound

    def hydroxide(self, T):
        out = [None, None]
        for c in self.complexes:
            if c["component"] == "hydroxide":
                out[METALS.index(c["metal"])] = thermal(float(c["log10k_25c"]), float(c["dh_kj_per_mol"]), 0, T)
        return out


def protein_charge(groups, pH, I, T):
    inverse, screen = 1 / T0 - 1 / T, 0.5 * np.sqrt(I) / (1 + 1.5 * np.sqrt(I))
    total = 0.0
    for mmol, pk, top, dh in groups:
        p = pk - dh * 1000 / (R * LN10) * inverse + (2 * top - 1) * screen
        total += mmol * (top - 1 / (1 + np.exp(LN10 * (p - pH))))
    return total


class Case:
    def __init__(self, data, case, groups):
        self.T, self.A, self.pkw = case["temperature_c"] + 273.15, case["a"], case["pkw"]
        self.groups, self.protein = groups, case["protein"] / 1000
        self.families, self.ions, self.metal = [], [], [0.0, 0.0]
        for name, m in case["totals"]:
            free, bound = data.species(name, self.T)
            if name in METALS:
                self.metal[METALS.index(name)] += m
            elif len(free) == 1:
                self.ions.append((free[0][0], m))
            else:
                self.families.append((m, free, bound))
        self.oh = data.hydroxide(self.T)

    def balance(self, pH, I, free_metal):
        """Net charge, ionic strength and total metals at activities given."""
        g = lambda z: 10 ** (-self.A * z * z * np.sqrt(I) / (1 + 1.5 * np.sqrt(I)))
        h, oh = 10**-pH / g(1), 10 ** (pH - self.pkw) / g(1)
        species = [(1, h), (-1, oh)] + list(self.ions)
        metal = list(free_metal)
        for i, m in enumerate(free_metal):
            complexed = 10 ** (self.oh[i] + pH - self.pkw) * m * g(2) / g(1)
            species += [(2, m), (1, complexed)]
            metal[i] += complexed
        for total, free, bound in self.families:
            terms = [(z, 10 ** (k + j * pH) / g(z), None) for z, k, j in free]
            terms += [(z, 10 ** (k + j * pH) * free_metal[i] * g(2) / g(z), i) for z, k, j, i in bound]
            whole = sum(w for _, w, _ in terms)
            for z, w, i in terms:
                species.append((z, total * w / whole))
                if i is not None:
                    metal[i] += total * w / whole
        charge = sum(z * m for z, m in species)
        return charge, sum(z * z * m for z, m in species) / 2, metal

    def settle(self, pH):
        """Net charge at pH once ionic strength and free metals stand."""
        live = [i for i in range(2) if self.metal[i] > 0]

        def spread(x):
            free = [0.0, 0.0]
            for n, i in enumerate(live):
                free[i] = np.exp(x[1 + n])
            return np.exp(x[0]), free

        def off(x):
            I, free = spread(x)
            _, ionic, metal = self.balance(pH, I, free)
            return [np.log(ionic) - x[0]] + [np.log(metal[i] / self.metal[i]) for i in live]

        x = np.array([np.log(0.05)] + [np.log(self.metal[i] / 3) for i in live])
        for method in ("hybr", "lm"):
            found = root(off, x, method=method, tol=1e-14)
            if max(abs(np.array(off(found.x)))) < 1e-10:
                break
        I, free = spread(found.x)
        charge, _, _ = self.balance(pH, I, free)
        return charge + self.protein * protein_charge(self.groups, pH, I, self.T), I

    def solve(self):
        pH = brentq(lambda x: self.settle(x)[0], -2, 16, xtol=1e-13, rtol=1e-14)
        return {"ph": pH, "ionic": self.settle(pH)[1]}


def main():
    asked = json.load(sys.stdin)
    data = Data(asked["folder"])
    np.seterr(all="ignore")
    json.dump([Case(data, c, asked["groups"]).solve() for c in asked["cases"]], sys.stdout)


main()
