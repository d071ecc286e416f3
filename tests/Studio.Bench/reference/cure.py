"""Cure and conduction of a body from pour to pour by scipy's BDF (rtol 1e-6), and what each layer showed. Seconds and deg C inside, hours outside."""
import numpy as np
from scipy.integrate import BDF
from scipy.sparse import coo_matrix, csc_matrix, diags
from scipy.sparse.linalg import splu

from body import WALL

GAS = 8.314462618
DEFAULTS = dict(m=1, n=2, glassStartC=-40, glassEndC=55, vitrificationOffsetK=8, vitrificationWidthK=5, gelConversion=.577, densityKgPerM3=1100, heatCapacityJPerKgK=1900, conductivityWPerMK=.19)
DEFAULTS["lambda"] = .4
WALL_DEFAULTS = dict(conductivityWPerMK=.25, densityKgPerM3=1150, heatCapacityJPerKgK=1300)


def resin(piece, layer):
    given = piece["resins"][layer["resin"]]
    return DEFAULTS | {k: v for k, v in given.items() if k != "kinetics"} | given["kinetics"]


def rates(p, a, t):
    left, lam = np.maximum(0, 1 - a), p["lambda"]
    k = p["rateAt23CPerS"] * np.exp(-p["activationJPerMol"] / GAS * (1 / (t + 273.15) - 1 / 296.15))
    glass = p["glassStartC"] + (p["glassEndC"] - p["glassStartC"]) * lam * a / (1 - (1 - lam) * a)
    slow = 1 / (1 + np.exp(np.clip((glass - t - p["vitrificationOffsetK"]) / p["vitrificationWidthK"], -300, 300)))
    return k * (p["kappa"] + np.maximum(0, a) ** p["m"]) * left ** p["n"] * slow


class Slope:
    """The Jacobian kept as its parts, so that scipy's `I - c * J` needs no matrix of temperatures and conversions together."""
    __array_ufunc__ = None

    def __init__(self, by_t, by_a, c=None):
        self.by_t, self.by_a, self.c = by_t, by_a, c

    def __rmul__(self, c):
        return Slope(self.by_t, self.by_a, c)

    def __rsub__(self, _):
        return self


class Stage:
    """What stands from one pour to the next."""

    def __init__(self, body, piece, poured):
        self.kinds = body.material.reshape(-1)
        active = (self.kinds == WALL) | ((self.kinds >= 0) & (self.kinds <= poured))
        wall = WALL_DEFAULTS | piece["mould"]["wall"]
        resins = [resin(piece, l) for l in piece["layers"]]
        of = [wall if k < 0 else resins[k] for k in self.kinds]
        conduct = np.array([o["conductivityWPerMK"] for o in of])
        dense = np.array([o["densityKgPerM3"] * o["heatCapacityJPerKgK"] for o in of])
        cells, n = body.cells[active], len(body.at)
        width = cells.shape[1]
        values = body.stiff[active] * conduct[active][:, None, None]
        whole = coo_matrix((values.ravel(), (np.repeat(cells, width, axis=1).ravel(), np.tile(cells, (1, width)).ravel())), shape=(n, n)).tocsr()
        film, capacity, mixed, fresh = np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n)
        for e, nodes, area, beyond, h in body.faces:
            if active[e] and not 0 <= beyond <= poured:
                np.add.at(film, nodes, h * area)
        np.add.at(capacity, cells, body.size[active] * dense[active][:, None])
        np.add.at(mixed, cells, body.mixing[active] * dense[active][:, None])
        new = self.kinds == poured
        np.add.at(fresh, body.cells[new], body.mixing[new] * dense[new][:, None])
        self.share = fresh / np.where(mixed > 0, mixed, 1)  # of the fresh resin in each node's heat
        tip = np.setdiff1d(body.cells[new], np.flatnonzero(mixed))
        self.share[tip] = 1
        self.nodes = np.unique(cells)
        self.stiff = (whole + diags(film)).tocsr()[self.nodes][:, self.nodes]
        self.film, self.c = film[self.nodes], capacity[self.nodes]
        self.c = np.maximum(self.c, 1e-6 * self.c.mean())  # an axis and a tip without volume
        point, layer, volume = [], [], []
        for k in range(poured + 1):
            own = np.zeros(n)
            np.add.at(own, body.cells[self.kinds == k], body.size[self.kinds == k])
            members = np.unique(body.cells[self.kinds == k])
            point.append(members), layer.append(np.full(len(members), k)), volume.append(own[members])
        self.point, self.layer, self.volume = np.concatenate(point), np.concatenate(layer), np.concatenate(volume)
        place = np.full(n, -1)
        place[self.nodes] = np.arange(len(self.nodes))
        self.row = place[self.point]
        self.kinetics = {k: np.array([r[k] for r in resins])[self.layer] for k in resins[0] if not isinstance(resins[0][k], str)}
        self.heat = self.kinetics["densityKgPerM3"] * self.kinetics["heatJPerKg"] * self.volume
        self.factors = 0

    def solver(self, y0, begin, end, room, most):
        n, rows, count = len(self.nodes), self.row, len(self.nodes)

        def gather(x):
            return np.bincount(rows, x, count)

        def fun(seconds, y):
            r = rates(self.kinetics, y[n:], y[:n][rows])
            return np.concatenate([(gather(self.heat * r) - self.stiff @ y[:n] + self.film * room(seconds)) / self.c, r])

        def slope(_, y):
            t, a = y[:n][rows], y[n:]
            return Slope((rates(self.kinetics, a, t + 1e-3) - rates(self.kinetics, a, t - 1e-3)) / 2e-3, (rates(self.kinetics, a + 1e-6, t) - rates(self.kinetics, a - 1e-6, t)) / 2e-6)

        def factor(s):
            self.factors += 1
            own = 1 - s.c * s.by_a
            coupled = s.c * self.heat * s.by_t / own
            lu = splu((csc_matrix(self.stiff) * s.c + diags(self.c - gather(coupled))).tocsc(), permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
            return lu, s, own

        def solve(made, b):
            lu, s, own = made
            t = lu.solve(self.c * b[:n] + gather(s.c * self.heat * s.by_a * b[n:] / own))
            return np.concatenate([t, (b[n:] + s.c * s.by_t * t[rows]) / own])

        made = BDF(fun, begin, y0, end, rtol=1e-6, atol=np.concatenate([np.full(n, 1e-5), np.full(len(rows), 1e-7)]), max_step=most, jac=csc_matrix((len(y0), len(y0))))
        made.J, made.I, made.jac, made.lu, made.solve_lu = slope(0, y0), None, slope, factor, solve
        return made
