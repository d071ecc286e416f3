#!/usr/bin/python3
"""Reference conversions for KineticReferenceTests: the clock's equation, integrated by scipy's Radau from reading to reading.

Run with scipy 1.10.1:  /usr/bin/python3 scipy_clock.py > scipy-clock.json
"""
import json

import numpy as np
from scipy.integrate import solve_ivp

R = 8.314462618
USUAL = dict(rateAt23CPerS=1.2e-4, kappa=0.04, m=1.0, n=2.0, activationJPerMol=55000.0, glassStartC=-40.0, glassEndC=55.0, **{"lambda": 0.4},
             vitrificationOffsetK=8.0, vitrificationWidthK=5.0, gelConversion=0.577)
DAY_NIGHT = [(h, 20.0 + (3.5 if 8 <= h % 24 <= 18 else -2.5)) for h in range(0, 73, 2)]
CASES = {
    "day and night, 72 h": (USUAL, DAY_NIGHT, 72.0),
    "slow resin, day and night": ({**USUAL, "rateAt23CPerS": 4e-5, "kappa": 0.02}, DAY_NIGHT, 72.0),
    "fast resin that cools": ({**USUAL, "rateAt23CPerS": 8e-4, "kappa": 0.06}, [(0, 24.0), (1.5, 16.0), (6, 12.0)], 12.0),
    "orders of another form": ({**USUAL, "m": 0.75, "n": 1.6, "glassEndC": 62.0, "lambda": 0.5}, [(0, 21.0), (10, 25.0), (30, 19.0)], 48.0),
    "cold room that stops it": (USUAL, [(0, 5.0), (200, 4.0)], 400.0),
    "warmed again": (USUAL, [(0, 8.0), (60, 8.0), (62, 30.0), (100, 30.0)], 120.0),
}


def rate(a, celsius, k):
    glass = k["glassStartC"] + (k["glassEndC"] - k["glassStartC"]) * k["lambda"] * a / (1 - (1 - k["lambda"]) * a)
    mobile = 1 / (1 + np.exp((glass - celsius - k["vitrificationOffsetK"]) / k["vitrificationWidthK"]))
    speed = k["rateAt23CPerS"] * np.exp(-k["activationJPerMol"] / R * (1 / (celsius + 273.15) - 1 / 296.15))
    return 3600 * speed * (k["kappa"] + max(a, 0) ** k["m"]) * (1 - a) ** k["n"] * mobile


def solve(k, room, until):
    hours, celsius = zip(*room)
    bends = [h for h in hours if 0 < h < until] + [until]
    a, at, gel = 0.0, 0.0, None
    for to in bends:
        done = solve_ivp(lambda t, y: [rate(y[0], np.interp(t, hours, celsius), k)], (at, to), [a], method="Radau", rtol=2.3e-14, atol=1e-14,
                         events=[lambda t, y: y[0] - k["gelConversion"]])
        if len(done.t_events[0]):
            gel = float(done.t_events[0][0])
        a, at = float(done.y[0, -1]), to
    return {"conversion": a, "gelHours": gel}


print(json.dumps([{"name": name, "kinetics": k, "room": [{"hours": h, "celsius": c} for h, c in room], "untilHours": until, **solve(k, room, until)}
                  for name, (k, room, until) in CASES.items()], indent=1))
