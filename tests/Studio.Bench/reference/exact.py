"""The reference beside what is known exactly: bodies that cool (the series of Carslaw and Jaeger, Heisler's charts), the adiabatic rise, and the public cases."""
import json
import pathlib

import numpy as np
from scipy.optimize import brentq
from scipy.special import j0, j1

from cure import DEFAULTS
from watch import solve

FILM, CONDUCT, DENSE, CAPACITY = 10.0, .25, 1150.0, 1300.0
INERT = dict(rateAt23CPerS=1e-30, kappa=.03, activationJPerMol=55000, heatJPerKg=1.0)
SAME = dict(densityKgPerM3=DENSE, heatCapacityJPerKgK=CAPACITY, conductivityWPerMK=CONDUCT)


def slab(biot, fourier):
    roots = [brentq(lambda x: x * np.sin(x) - biot * np.cos(x), n * np.pi + 1e-9, n * np.pi + np.pi / 2 - 1e-12) for n in range(12)]
    return sum(4 * np.sin(x) / (2 * x + np.sin(2 * x)) * np.exp(-x * x * fourier) for x in roots)


def cylinder(biot, fourier):
    x = np.linspace(1e-6, 40, 40001)
    f = x * j1(x) - biot * j0(x)
    roots = [brentq(lambda y: y * j1(y) - biot * j0(y), x[k], x[k + 1]) for k in np.flatnonzero(f[:-1] * f[1:] < 0)][:12]
    return sum(2 / y * j1(y) / (j0(y) ** 2 + j1(y) ** 2) * np.exp(-y * y * fourier) for y in roots)


def cools(mould, fine, ends):
    """The middle of a body of one material, 40 deg C in a room of 20, after 1 h: its share of the first 20 K."""
    mould = mould | dict(wall=SAME | dict(thicknessMm=10, floorMm=10, startCelsius=40))
    piece = dict(mould=mould, room=[dict(hours=0, celsius=20)], resins=dict(a=dict(kinetics=INERT) | SAME), untilHours=1.0,
                 boundary=dict(sideWPerM2K=FILM, topWPerM2K=FILM if ends else 1e-9, bottomWPerM2K=FILM if ends else 1e-9),
                 layers=[dict(resin="a", thicknessMm=(mould["heightMm"] - 10) / 2, pouredAtHours=0, pouredCelsius=40), dict(resin="a", toMm=mould["heightMm"], pouredAtHours=1e-9, pouredCelsius=40)])
    made = solve(piece, fine)
    at = made["body"].at * 1000
    middle = np.array([0] * (at.shape[1] - 1) + [(mould["heightMm"] - 10) / 2])
    near = np.abs(at - middle).sum(axis=1).argmin()
    if np.abs(at[near] - middle).max() > 1e-6:
        raise ValueError("There is no node in the middle.")
    return (made["temperatures"][near] - 20) / 20


def adiabatic():
    """No film lets anything out: what the resin released is what resin and mould hold."""
    piece = dict(mould=dict(shape="pyramid", sides=3, baseMm=100, heightMm=40, tipMm=20, wall=dict(thicknessMm=5)), room=[dict(hours=0, celsius=20)],
                 resins=dict(a=dict(kinetics=dict(rateAt23CPerS=3e-4, kappa=.03, activationJPerMol=55000, heatJPerKg=60000.))),
                 boundary=dict(topWPerM2K=1e-9, sideWPerM2K=1e-9, bottomWPerM2K=1e-9), layers=[dict(resin="a", thicknessMm=40, pouredAtHours=0)], untilHours=300)
    made = solve(piece, 4)
    body, kind = made["body"], made["body"].material.reshape(-1)
    resin, wall = body.size[kind == 0].sum(), body.size[kind == -1].sum()
    held = resin * DEFAULTS["densityKgPerM3"] * DEFAULTS["heatCapacityJPerKgK"] + wall * 1150 * 1300
    rise = resin * DEFAULTS["densityKgPerM3"] * 60000 * made["layers"][0]["meanConversion"] / held
    return float(np.ptp(made["temperatures"])), float(made["temperatures"].mean() - 20), rise, resin * 1e6, wall * 1e6


def public():
    file = pathlib.Path(__file__).parents[2] / "Studio.Engine.Tests/Heat/heat-public.json"
    for case in json.loads(file.read_text(encoding="utf-8"))["cases"]:
        m, r = case["mould"], case["resins"]
        size = dict(heightMm=m["height_mm"])
        mould = {"cylinder": dict(shape="cone", bottomDiameterMm=m["width_mm"], topDiameterMm=m["width_mm"]) | size, "cube": dict(shape="prism", sides=4, edgeMm=m["width_mm"]) | size,
                 "inverted_square_pyramid": dict(shape="pyramid", baseMm=m["width_mm"], tipMm=m["tip_flat_width_mm"]) | size}.get(m["shape"])
        if mould is None:
            continue  # its sphere has its caps cut off
        mould["wall"] = dict(thicknessMm=m["wall_thickness_mm"], floorMm=m["floor_thickness_mm"], startCelsius=case["initial_mould_temperature_C"])
        resins = {k: dict(kinetics=dict(rateAt23CPerS=v["rate_at_23C_per_s"], kappa=v["kappa"], m=v["m"], n=v["n"], activationJPerMol=v["activation_energy_J_per_mol"], heatJPerKg=v["heat_of_reaction_J_per_kg"],
                                        glassStartC=v["Tg0_C"], glassEndC=v["Tg_inf_C"], gelConversion=v["gel_conversion"]), densityKgPerM3=v["density_kg_per_m3"],
                          heatCapacityJPerKgK=v["specific_heat_J_per_kgK"], conductivityWPerMK=v["conductivity_W_per_mK"]) for k, v in r.items()}
        layers = [dict(resin=l["resin"], thicknessMm=l["depth_mm"], pouredAtHours=l["pour_time_h"], pouredCelsius=l["pour_temperature_C"]) for l in case["layers"]]
        piece = dict(mould=mould, room=[dict(hours=0, celsius=case["room"]["temperature_C"][0])], resins=resins, layers=layers, untilHours=case["end_time_h"])
        for own, known in zip(solve(piece, 6)["layers"], case["reference"]["layers"]):
            yield f"{case['id']}, layer {known['layer']}", own["peakBeforeNextPourCelsius"], known["peak_temperature_C"], own["firstGelAfterHours"], known["first_gel_after_pour_h"]


def run():
    heat, seconds = CONDUCT / (DENSE * CAPACITY), 3600
    def worth(shape, half):
        return shape(FILM * half / CONDUCT, heat * seconds / half ** 2)
    checks = []
    for fine in (4, 6):
        checks += [
            (f"cylinder of 60 mm, {fine}", cools(dict(shape="cone", bottomDiameterMm=40, topDiameterMm=40, heightMm=60), fine, False), worth(cylinder, .03)),
            (f"square rod of 60 mm (an eighth), {fine}", cools(dict(shape="prism", sides=4, edgeMm=40, heightMm=60), fine, False), worth(slab, .03) ** 2),
            (f"rod of 60 x 80 mm (a quarter), {fine}", cools(dict(shape="cuboid", widthMm=40, depthMm=60, heightMm=60), fine, False), worth(slab, .03) * worth(slab, .04)),
        ]
    wrong = 0
    for name, got, exact in checks:
        if exact is not None:
            wrong += abs(got - exact) > 5e-4
            print(f"{name:44} {got:.6f}, exactly {exact:.6f}, apart {got - exact:+.1e}")
    spread, rise, exact, resin, wall = adiabatic()
    full = np.sqrt(3) / 4 * 40 * (20 ** 2 + 20 * 100 + 100 ** 2) / 3 / 1000
    wrong += abs(rise - exact) > 2e-3 * exact or abs(resin - full) > 1e-6 * full
    print(f"adiabatic rise {rise:.4f} K of {exact:.4f}, apart {rise - exact:+.1e}; evened out within {spread:.1e} K; volume {resin:.4f} ml of {full:.4f}")
    for name, peak, known, gel, gelled in public():
        wrong += abs(peak - known) > .1 or abs(gel / gelled - 1) > .005
        print(f"{name:44} peak {peak:.3f}, told {known:.3f}; first gel {gel:.3f} h, told {gelled:.3f}")
    return 1 if wrong else 0
