#!/usr/bin/env python3
"""Invented logs to measure speed on; the same arguments give the same bytes. Needs numpy.

  make_logs.py long FILE [ROWS]          one log of 24 probes at 1 Hz (1,700,000 rows: about 300 MB)
  make_logs.py many DIR [FILES [ROWS]]   logs of 4 probes (5,000 of 1,500 rows)

Retort batches of 25 minutes follow one another. Each probe lags behind the retort by its own time constant and carries a
noise of 0.05 C; two decimals are written. There is no fault in them."""
import os
import sys

import numpy as np

BATCH_S = 1500
COME_UP_S, HOLD_S = 360, 780
COLD_C, COOLING_C_PER_S = 24.0, 0.45


def retort(batches, rng):
    s = np.arange(BATCH_S, dtype=float)
    out = []
    for _ in range(batches):
        top = 121.4 + rng.normal(0, 0.15)
        rising = COLD_C + (top - COLD_C) * np.minimum(1.0, s / COME_UP_S)
        falling = np.maximum(COLD_C, top - (s - COME_UP_S - HOLD_S) * COOLING_C_PER_S)
        out.append(np.where(s < COME_UP_S + HOLD_S, rising, falling))
    return np.concatenate(out)


def probe(medium, lag_s, start_c):
    share = 1.0 - np.exp(-1.0 / lag_s)
    out, c = np.empty_like(medium), start_c
    for i, m in enumerate(medium):
        c += (m - c) * share
        out[i] = c
    return out


def write(path, start, lags_s, rows, seed, chunk=100_000):
    rng = np.random.default_rng(seed)
    medium = retort(-(-rows // BATCH_S), rng)
    probes = [probe(medium, lag, COLD_C) for lag in lags_s]
    times = np.datetime_as_string(np.datetime64(start, "s") + np.arange(rows), unit="s")
    with open(path, "w", newline="\n") as f:
        f.write("Time," + ",".join(f"Can {i + 1} (C)" for i in range(len(lags_s))) + "\n")
        for a in range(0, rows, chunk):
            b = min(rows, a + chunk)
            columns = [times[a:b]] + [np.char.mod("%.2f", p[a:b] + rng.normal(0, 0.05, b - a)) for p in probes]
            f.writelines(",".join(row) + "\n" for row in zip(*columns))


def main(form, path, *numbers):
    n = [int(x) for x in numbers]
    if form == "long":
        write(path, "2026-01-05T06:00:00", [20.0 + 9.0 * i for i in range(24)], n[0] if n else 1_700_000, 1)
        return
    os.makedirs(path, exist_ok=True)
    files, rows = (n + [5000, 1500][len(n):])[:2]
    for k in range(files):
        start = np.datetime64("2026-01-05T06:00:00", "s") + 3600 * k
        write(os.path.join(path, f"run-{k + 1:05d}.csv"), start, [25.0 + k % 7, 60.0, 110.0, 150.0 + k % 11], rows, 2 + k)


if __name__ == "__main__":
    if len(sys.argv) < 3 or sys.argv[1] not in ("long", "many"):
        sys.exit(__doc__)
    main(*sys.argv[1:])
