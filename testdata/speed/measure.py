#!/usr/bin/env python3
"""measure.py FOLDER [RUNS]: the table of docs/performance.md, measured on this machine. FOLDER takes the logs (about 600 MB,
made once). Needs Go, numpy and pandas; run it in the top folder of posset, on a machine that does nothing else."""
import os
import subprocess
import sys
import time

HERE = os.path.dirname(os.path.abspath(__file__))


def once(args):
    """Wall seconds, CPU seconds and peak MB of one process."""
    start = time.perf_counter()
    child = subprocess.Popen(args, stdout=subprocess.DEVNULL)
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in (0, 1):
        sys.exit(f"{args}: exit {child.returncode}")
    return time.perf_counter() - start, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def row(what, args, runs, each=None):
    wall, cpu, mb = (min(v) for v in zip(*(once(args) for _ in range(runs))))
    per = f"{wall / each[0] * each[1]:.3g} {each[2]}" if each else ""
    print(f"| {what} | {wall:.3f} | {cpu:.3f} | {mb:.0f} | {per} |", flush=True)


def specs(folder, count):
    os.makedirs(folder, exist_ok=True)
    text = open("testdata/drinks/15-soft-drink.toml").read()
    for i in range(count):
        with open(os.path.join(folder, f"{i:04d}.toml"), "w") as f:
            f.write(text)


def main(folder, runs=5):
    at = lambda name: os.path.join(folder, name)
    os.makedirs(folder, exist_ok=True)
    subprocess.run(["go", "build", "-o", at("posset"), "./cmd/posset"], check=True)
    for form, path in (("long", at("long.csv")), ("many", at("many"))):
        if not os.path.exists(path):
            subprocess.run([sys.executable, os.path.join(HERE, "make_logs.py"), form, path], check=True)
    specs(at("specs"), 1000)
    target, pandas = ["--target", "F0 3 min", "--format", "ndjson"], [sys.executable, os.path.join(HERE, "trapezoid.py")]
    print("| what | wall, s | CPU, s | peak, MB | that is |\n| --- | --- | --- | --- | --- |")
    row("long log: `wc -l`", ["wc", "-l", at("long.csv")], runs)
    row("long log: `sha256sum`", ["sha256sum", at("long.csv")], runs)
    row("long log: posset lethality", [at("posset"), "lethality", at("long.csv"), *target], runs, (40.8e6, 1e9, "ns a reading"))
    row("long log: trapezoid.py (pandas)", [*pandas, at("long.csv")], min(runs, 2), (40.8e6, 1e9, "ns a reading"))
    row("5,000 logs: posset lethality", [at("posset"), "lethality", at("many"), *target], runs, (5000, 1e6, "µs a log"))
    row("5,000 logs: trapezoid.py (pandas)", [*pandas, at("many")], 1, (5000, 1e6, "µs a log"))
    row("1,000 specs: posset check", [at("posset"), "check", at("specs"), "--format", "ndjson"], runs, (1000, 1e3, "ms a spec"))
    row("one spec: posset check", [at("posset"), "check", "testdata/drinks/15-soft-drink.toml"], 4 * runs)
    row("start: posset --version", [at("posset"), "--version"], 4 * runs)


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    main(sys.argv[1], *(int(x) for x in sys.argv[2:3]))
