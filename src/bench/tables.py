#!/usr/bin/env python3
"""The peer: limits of every row of a folder of tables by plain decimal arithmetic, 28 digits, one CSV file each.

usage: tables.py FOLDER OUT

For each row the tolerance of the power, its limits as currents through the load, rounded inward to 1 mA, the expanded
uncertainty (k = 2) of a reading at each limit from 0.5 % + 1 mA, a resolution of 1 mA and a load error of 0.5 %, and the
accuracy ratio: what Passband's limits.csv holds, and no check, no drawing and no sheet.
"""
import csv
import sys
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from pathlib import Path

MILLI = Decimal("0.001")
HUNDRED = Decimal(100)
THREE = Decimal(3)


def uncertainty(amps):
    error = amps / 200 + MILLI
    resolution = MILLI / 2
    load = amps / 200 / 2
    return 2 * ((error * error + resolution * resolution + load * load) / THREE).sqrt()


def row_of(mode, setting, load, percent, least):
    power, ohms = Decimal(setting), Decimal(load)
    tolerance = max(power * Decimal(percent) / HUNDRED, Decimal(least))
    nominal = (power / ohms).sqrt()
    low, high = ((power - tolerance) / ohms).sqrt(), ((power + tolerance) / ohms).sqrt()
    u_low, u_high = uncertainty(low), uncertainty(high)
    ratio = min((nominal - low) / u_low, (high - nominal) / u_high)
    return (
        mode, setting, load,
        low.quantize(MILLI, ROUND_CEILING) * 1000, high.quantize(MILLI, ROUND_FLOOR) * 1000,
        +low, +high, max(u_low, u_high), round(ratio, 2),
    )


def main():
    folder, out = Path(sys.argv[1]), Path(sys.argv[2])
    out.mkdir(parents=True, exist_ok=True)
    for path in sorted(folder.glob("*.csv")):
        with path.open(newline="") as source, (out / path.name).open("w", newline="") as target:
            rows = csv.reader(source)
            next(rows)
            writer = csv.writer(target)
            writer.writerow(("mode", "setting/W", "load/ohm", "low/mA", "high/mA", "low/A", "high/A", "U/A", "ratio"))
            writer.writerows(row_of(*row) for row in rows)


main()
