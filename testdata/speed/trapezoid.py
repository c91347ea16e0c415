#!/usr/bin/env python3
"""trapezoid.py FILE | FOLDER: F0 of each probe as a person at home with pandas would reckon it, by the trapezoid of lethal
rates, with no tolerance, no check of a fault and no cold spot. What the reading of logs is timed against."""
import pathlib
import sys

import numpy as np
import pandas as pd

given = pathlib.Path(sys.argv[1])
for path in sorted(given.iterdir()) if given.is_dir() else [given]:
    log = pd.read_csv(path, parse_dates=["Time"])
    minutes = (log["Time"] - log["Time"].iloc[0]).dt.total_seconds().to_numpy() / 60
    rates = 10 ** ((log.iloc[:, 1:].to_numpy() - 121.1) / 10)
    f0 = (np.diff(minutes)[:, None] * (rates[1:] + rates[:-1]) / 2).sum(axis=0)
    print(path.name, *(f"{v:.6g}" for v in f0), sep="\t")
