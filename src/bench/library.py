#!/usr/bin/env python3
"""Writes a library of procedures of 60 points each, and the same rows as plain tables.

usage: library.py COUNT FOLDER

FOLDER/sources holds the procedures (each with a device of its own, one analyzer and one lead set for all) and
FOLDER/tables a CSV file for each with mode, setting in W, load in ohm, tolerance in % and in W. Settings and
tolerances differ from procedure to procedure, so that no result can serve twice.
"""
import sys
from pathlib import Path

ANALYZER = """analyzer bench-analyzer "Bench analyzer" {
  jack load-high "HIGH" floating
  jack load-low  "LOW" floating
  key  cut-key   "KEY"

  settle 3 s

  load from load-high to load-low {
    values 100 ohm to 1 kohm step 25 ohm
    error  0.5 %
    power  400 W for 30 s, 100 W continuous
  }

  measure current {
    range      20 mA to 4 A
    resolution 1 mA
    error      0.5 % of reading + 1 mA
  }
}

leads bench-leads "Bench leads" {
  lead red   "red lead",   rated 6 kV, colour red
  lead black "black lead", rated 6 kV, colour black
  lead blue  "blue lead",  rated 600 V, colour blue
}
"""

DEVICE = """device gen-{n} "Generator {n}" {{
  outlet main "Main" {{
    pole    active  "active pin"
    pole    return  "return pin"
    contact trigger "trigger contact"
  }}
{modes}}}
"""

MODE = """
  mode {mode} "{title}" on main {{
    setting  power {first:g} W to {last:g} W step 0.5 W
    load     {load} ohm
    output   power within {percent} % of setting or {watts} W, whichever is greater
    peak-voltage at most 3 kV
    duty     10 s on, 30 s off
    activate by trigger
  }}
"""

PROCEDURE = """use "device-{n}.pband"
use "../bench.pband"

procedure gen-{n}-output "Generator {n}: output" {{
  revision "A" on 2026-10-01
  device   gen-{n}
  analyzer bench-analyzer
  leads    bench-leads
  decision simple

  caution burn      "High-frequency output burns. Touch no lead, pin or jack while the output is on."
  caution authority "The maker's service manual and local rules come first. Qualified staff only."

  section inspection "Before switching on" {{
    confirm "The mains cord, plug and case are undamaged."
    record  serial "Generator serial number"
  }}

  setup load "Into the load" {{
    connect red   from outlet.active  to analyzer.load-high
    connect black from outlet.return  to analyzer.load-low
    connect blue  from outlet.trigger to analyzer.cut-key
  }}

  test output "Output" {{
    outlet main
    setup  load
    accept power from output, read as current
    table {{
      mode  | setting/W | load/ohm
{rows}    }}
  }}
}}
"""

MODES = ("slit", "score", "sear", "mist")
LOADS = (350, 450, 550, 650)
POINTS = 15


def main():
    count, folder = int(sys.argv[1]), Path(sys.argv[2])
    (folder / "tables").mkdir(parents=True, exist_ok=True)
    for n in range(count):
        sources = folder / "sources" / f"{n // 100:03}"
        if n % 100 == 0:
            sources.mkdir(parents=True, exist_ok=True)
        modes, rows, table = "", "", "mode,setting/W,load/ohm,tolerance/%,least/W\n"
        for m, mode in enumerate(MODES):
            percent, watts = 12 + (n + m) % 9, 1 + (n + 3 * m) % 4
            settings = [20 + 15 * i + (n % 20) / 2 for i in range(POINTS)]
            modes += MODE.format(
                mode=mode, title=mode.title(), first=settings[0], last=settings[-1], load=LOADS[m], percent=percent,
                watts=watts,
            )
            for setting in settings:
                rows += f"      {mode:<5} | {setting:<9g} | {LOADS[m]}\n"
                table += f"{mode},{setting:g},{LOADS[m]},{percent},{watts}\n"
        (sources / f"device-{n}.pband").write_text(DEVICE.format(n=n, modes=modes))
        (sources / f"gen-{n}.pband").write_text(PROCEDURE.format(n=n, rows=rows))
        (folder / "tables" / f"gen-{n}.csv").write_text(table)
    (folder / "sources" / "bench.pband").write_text(ANALYZER)


main()
