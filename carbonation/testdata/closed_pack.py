"""Closed packs solved apart from the Go code: three unknown partial pressures, three
balances of gas, by scipy. Reads a list of packs as JSON, writes absolute kPa for each
temperature, null where the liquid needs the whole pack. Same published equations,
another formulation and another solver."""
import json
import sys

import numpy as np
from scipy.optimize import least_squares

R, ATM = 8.314463, 101.325
V_MOL = 22.2605      # L/mol of real CO2 at 0 °C and 1 atm
V_DISSOLVED = 0.0323  # L/mol in water
M_WATER = 18.01528


def density(t):  # kg/L, Kell 1975
    c = [-280.54253e-12, 105.56302e-9, -46.170461e-6, -7.9870401e-3, 16.945176, 999.83952]
    return np.polyval(c, t) / (1 + 16.879850e-3 * t) / 1000


def vapour(t):  # kPa, Wagner and Pruss 1993
    tau = 1 - (t + 273.15) / 647.096
    a = zip([-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502], [1, 1.5, 3, 3.5, 4, 7.5])
    return 22064 * np.exp(647.096 / (t + 273.15) * sum(k * tau**n for k, n in a))


def weiss(t):
    h = (t + 273.15) / 100
    return np.exp(-60.2409 + 93.4517 / h + 23.3585 * np.log(h)) / ATM


def carroll(t):
    x = 1 / (t + 273.15)
    return 1000 / M_WATER / (1000 * np.exp(-6.8346 + 1.2817e4 * x - 3.7668e6 * x**2 + 2.997e8 * x**3))


def co2_solubility(t):  # mol/(kg kPa of fugacity)
    return weiss(t) if t <= 40 else min(weiss(t), carroll(t))


def inert_solubility(t, a, b, c):  # mol/(kg kPa), IAPWS G7-04
    tr = (t + 273.15) / 647.096
    tau = 1 - tr
    return 1000 / M_WATER / (vapour(t) * np.exp(a / tr + b * tau**0.355 / tr + c * tr**-0.41 * np.exp(tau)))


N2 = (-9.67578, 4.72162, 11.70585)
O2 = (-9.44833, 4.43822, 11.42005)


def virial(t):  # L/mol, Weiss 1974; above 60 °C the form of Kaye and Laby shifted to meet it
    w = lambda k: np.polyval([3.16528e-5, -0.0327957, 12.0408, -1636.75], k) / 1000
    kl = lambda k: (137.6 - 87.7 * np.exp(325.7 / k)) / 1000
    k = t + 273.15
    return w(k) if t <= 60 else kl(k) + w(333.15) - kl(333.15)


class Pack:
    def __init__(self, p):
        self.__dict__.update(p)
        self.litres20 = self.fill_l * density(self.fill_c) / density(20)
        self.water_kg = self.litres20 * density(20) * (1 - 0.73 * self.other_kg_per_l)
        self.water_kg *= 1 - self.volumes / V_MOL * V_DISSOLVED
        self.count()

    def room(self, t, p):
        inside = self.brimful_l * (1 + self.expansion_per_k * (t - 20))
        gauge_bar = max(0.0, (p - self.standing_kpa) / 100)
        return inside * (1 + self.give_per_bar * gauge_bar) - self.litres20 * density(20) / density(t)

    def count(self):
        t, dry = self.fill_c, self.sealing_kpa - vapour(self.fill_c)
        shut = dry * self.room(t, 0) / (R * (t + 273.15))
        self.n = np.zeros(3)  # CO2, N2, O2
        if self.gas in ("", "air"):
            self.n += [0, 0.7905 * shut, 0.2095 * shut]
        elif self.gas == "nitrogen":
            self.n[1] += shut
        elif self.gas == "CO2" and self.volumes == 0:
            self.n[0] += shut
        if self.volumes == 0 and not self.deaerated:
            self.n[1] += self.water_kg * 0.7905 * dry * inert_solubility(t, *N2)
            self.n[2] += self.water_kg * 0.2095 * dry * inert_solubility(t, *O2)
        self.n[1] += self.nitrogen_g / 28.0134
        if self.volumes > 0:
            self.n[0] = self.co2_of_volumes()

    def co2_of_volumes(self):
        dissolved = self.volumes / V_MOL * self.litres20
        if self.room(20, 0) <= 0:
            return dissolved
        fugacity = dissolved / (self.water_kg * co2_solubility(20))

        def lack(parts):  # of what a sample at 20 °C holds beside the air shut in
            p = parts.sum() + vapour(20)
            inert = self.inert(20, parts, p) - self.n[1:]
            return np.concatenate([[self.fugacity(20, parts[0], p) / fugacity - 1], inert / np.maximum(self.n[1:], 1e-3)])

        parts = least_squares(lack, [fugacity, 20.0, 5.0], bounds=(0, np.inf), xtol=1e-15, ftol=1e-15, gtol=1e-15).x
        return dissolved + self.gaseous(20, parts[0], parts.sum() + vapour(20))

    def inert(self, t, parts, p):  # mol of nitrogen and of oxygen, as ideal gases
        per_kpa = np.array([inert_solubility(t, *N2), inert_solubility(t, *O2)])
        return parts[1:] * (self.room(t, p) / (R * (t + 273.15)) + self.water_kg * per_kpa)

    def fugacity(self, t, part, p):  # with the effect of pressure on the liquid
        other, rt = 1 - part / p, R * (t + 273.15)
        cross = (57.7 - 0.118 * (t + 273.15)) / 1000
        return part * np.exp(p * (virial(t) + 2 * other**2 * cross) / rt - (p - ATM) * V_DISSOLVED / rt)

    def gaseous(self, t, part, p):
        y, rt = part / p, R * (t + 273.15)
        cross = (57.7 - 0.118 * (t + 273.15)) / 1000
        z = 1 + p * (y * y * virial(t) + 2 * y * (1 - y) * (cross + virial(t) / 2)) / rt
        return part * self.room(t, p) / (z * rt)

    def kpa(self, t):
        if self.room(t, 0) <= 0:
            return None
        scale = np.where(self.n > 0, self.n, 1)

        def lack(log_parts):
            parts = np.where(self.n > 0, np.exp(log_parts), 0)
            p = parts.sum() + vapour(t)
            co2 = self.gaseous(t, parts[0], p) + self.water_kg * co2_solubility(t) * self.fugacity(t, parts[0], p)
            held = np.concatenate([[co2], self.inert(t, parts, p)])
            return (held - self.n) / scale

        found = least_squares(lack, np.log([150.0, 30.0, 10.0]), xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=2000)
        parts = np.where(self.n > 0, np.exp(found.x), 0)
        if np.abs(found.fun).max() > 1e-8:
            sys.exit(f"no solution at {t} °C: {found}")
        return float(parts.sum() + vapour(t))


print(json.dumps([[Pack(p).kpa(t) for t in p["temps_c"]] for p in json.load(sys.stdin)]))
