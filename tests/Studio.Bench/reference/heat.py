"""An independent reference for the heat of a piece: the same mesh and matrices, integrated by scipy's BDF (variable order, rtol 1e-6, sparse Jacobian).

Reads what `Studio.Bench heat` writes and prints, as JSON, the peak of each layer [deg C], the seconds spent in solve_ivp and the steps taken.
It shares no code with the engine; kinetics are written down again from docs/calculations.md.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import bmat, coo_matrix, diags

GAS = 8.314462618


def rates(points, alpha, celsius):
    left = np.maximum(0, 1 - alpha)
    order = (points["kappa"] + np.maximum(0, alpha) ** points["m"]) * left ** points["n"]
    k = points["rate"] * np.exp(-points["energy"] / GAS * (1 / (celsius + 273.15) - 1 / 296.15))
    glass = points["glassStart"] + (points["glassEnd"] - points["glassStart"]) * points["lambda"] * alpha / (1 - (1 - points["lambda"]) * alpha)
    return k * order / (1 + np.exp((glass - celsius - points["offset"]) / points["width"]))


def stage(case, s, whole, cured):
    nodes, node, layer, volume = (np.array(s[k]) for k in ("nodes", "pointNode", "pointLayer", "pointVolume"))
    capacity, film = np.array(s["capacity"]), np.array(s["film"])
    n, p = len(nodes), len(node)
    points = {k: np.array([case["layers"][l][k] for l in layer]) for k in case["layers"][0]}
    stiff = coo_matrix((s["value"], (s["row"], s["column"])), shape=(n, n)).tocsr()
    stiff = stiff + stiff.T - diags(stiff.diagonal()) + diags(film)
    gather = coo_matrix((np.ones(p), (node, np.arange(p))), shape=(n, p)).tocsr()
    heat = points["density"] * points["heat"] * volume
    room_h, room_c = np.array(case["roomHours"]), np.array(case["roomC"])

    fresh = np.zeros(n)
    poured = s["poured"] - 1
    new = layer == poured
    np.add.at(fresh, node[new], (volume * points["density"] * points["capacity"])[new])
    t0 = whole[nodes]
    t0 = np.where(fresh > 0, ((capacity - fresh) * t0 + fresh * case["layers"][poured]["pouredC"]) / capacity, t0)
    a0 = np.array([cured[l][nodes[m]] for l, m in zip(layer, node)])

    def fun(seconds, y):
        t, a = y[:n], y[n:]
        r = rates(points, a, t[node])
        room = np.interp(s["fromHours"] + seconds / 3600, room_h, room_c)
        return np.concatenate([(gather @ (heat * r) - stiff @ t + film * room) / capacity, r])

    def jac(seconds, y):
        t, a = y[:n][node], y[n:]
        by_t = (rates(points, a, t + 1e-4) - rates(points, a, t - 1e-4)) / 2e-4
        by_a = (rates(points, a + 1e-6, t) - rates(points, a - 1e-6, t)) / 2e-6
        c = diags(1 / capacity)
        return bmat([
            [c @ (gather @ diags(heat * by_t) @ gather.T - stiff), c @ gather @ diags(heat * by_a)],
            [diags(by_t) @ gather.T, diags(by_a)]], format="csc")

    begun = time.perf_counter()
    end = (s["toHours"] - s["fromHours"]) * 3600
    made = solve_ivp(fun, (0, end), np.concatenate([t0, a0]), method="BDF", rtol=1e-6, atol=1e-8, jac=jac)
    took = time.perf_counter() - begun
    if not made.success:
        raise SystemExit("scipy's BDF failed: " + made.message)

    hot = made.y[:n][np.unique(node[new])].max(axis=0)
    k = int(hot.argmax())
    peak = hot[k]
    if 0 < k < len(hot) - 1:  # the vertex of the parabola through three steps
        a, b, _ = np.polyfit(made.t[k - 1:k + 2] - made.t[k], hot[k - 1:k + 2], 2)
        peak = hot[k] - b * b / (4 * a) if a < 0 else hot[k]
    whole[nodes] = made.y[:n, -1]
    for q in range(p):
        cured[layer[q]][nodes[node[q]]] = made.y[n + q, -1]
    return float(peak), took, len(made.t) - 1


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        case = json.load(file)
    whole = np.full(case["nodeCount"], float(case["startC"]))
    cured = np.zeros((len(case["layers"]), case["nodeCount"]))
    done = [stage(case, s, whole, cured) for s in case["stages"]]
    print(json.dumps({"peaks": [d[0] for d in done], "seconds": sum(d[1] for d in done), "steps": sum(d[2] for d in done)}))


main()
