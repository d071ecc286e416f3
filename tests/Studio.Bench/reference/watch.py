"""A piece solved from its first pour to its end: what `calc heat` tells of each layer, told by the reference. Hours from the layer's own pour."""
import time

import numpy as np
from scipy.optimize import brentq

from body import Body
from cure import Stage, resin


class Layer:
    """Watches one layer. Between nodes a field is told by its own quadratic functions, save in the instant of a pour, where it has a leap."""

    def __init__(self, body, number, poured, gel):
        own = body.material.reshape(-1) == number
        self.number, self.poured, self.gel = number, poured, gel
        self.nodes = np.unique(body.cells[own])
        self.inside = body.sampled([(e, None, 0) for e in np.flatnonzero(own)])
        touching = list(body.touching(number))
        on = body.sampled(touching, (-1, 0, 1))
        self.face_nodes = np.unique(on.indices[np.abs(on.data) > .5]) if on is not None else self.nodes[:0]
        self.face = body.sampled(touching)
        self.peak = self.face_peak = (-np.inf, 0.0)
        self.first = self.last = None
        self.curve = []

    def see(self, hours, t):
        """t: every node's temperature."""
        since = hours - self.poured
        for name, nodes, between in (("peak", self.nodes, self.inside), ("face_peak", self.face_nodes, self.face)):
            if not len(nodes):
                continue
            hot = t[nodes].max()
            if name == "peak":
                self.curve.append((since, hot))
            if hot > getattr(self, name)[0] - 1.5 and since > 1e-3:
                hot = max(hot, (between @ t).max())
            if hot > getattr(self, name)[0]:
                setattr(self, name, (float(hot), float(since)))

    def gelled(self, hours_from, hours_to, cure_at):
        """cure_at(hours): every node's conversion of this layer."""
        for name, least in (("first", lambda h: (self.inside @ cure_at(h)).max()), ("last", lambda h: cure_at(h)[self.nodes].min())):
            if getattr(self, name) is None and least(hours_to) >= self.gel:
                at = brentq(lambda h: least(h) - self.gel, hours_from, hours_to, xtol=1e-6) if least(hours_from) < self.gel else hours_from
                setattr(self, name, float(at - self.poured))


def near(layer, kelvin=.5):
    """Between which hours the layer is within this of its peak: a flat top has no hour that is better than another."""
    hours, hot = np.array(layer.curve).T
    edge = np.flatnonzero(np.diff(np.concatenate([[0], (hot >= layer.peak[0] - kelvin).astype(int), [0]])))
    return [[round(float(hours[max(0, a - 1)]), 4), round(float(hours[min(b, len(hours) - 1)]), 4)] for a, b in zip(edge[::2], edge[1::2])]


def solve(piece, fine):
    begun = time.perf_counter()
    body, layers = Body(piece, fine), piece["layers"]
    room_h, room_c = (np.array(x) for x in zip(*sorted((r["hours"], r["celsius"]) for r in piece["room"])))

    def room(hours):
        return np.interp(hours, room_h, room_c)

    first = layers[0]["pouredAtHours"]
    whole = np.full(len(body.at), float(piece["mould"]["wall"].get("startCelsius", room(first))))
    cured, seen, told, factors, steps = np.zeros((len(layers), len(body.at))), [], [], 0, 0
    least = 12.0 if len(room_h) < 2 else 1.0
    for p, layer in enumerate(layers):
        at = layer["pouredAtHours"]
        end = layers[p + 1]["pouredAtHours"] if p + 1 < len(layers) else first + piece["untilHours"]
        stage = Stage(body, piece, p)
        whole = whole * (1 - stage.share) + stage.share * layer.get("pouredCelsius", room(at))
        seen.append(Layer(body, p, at, resin(piece, layer)["gelConversion"]))
        n = len(stage.nodes)
        y = np.concatenate([whole[stage.nodes], cured[stage.layer, stage.point]])
        for s in seen:
            s.see(at, whole)
        solver = stage.solver(y, 0, (end - at) * 3600, lambda s: room(at + s / 3600), least * 3600)
        before = 0.0
        while solver.status == "running":
            message = solver.step()
            if solver.status == "failed":
                raise RuntimeError(message)
            steps += 1
            made, now = solver.dense_output(), solver.t
            for part in (.25, .5, .75, 1):
                seconds = before + part * (now - before)
                y = solver.y if part == 1 else made(seconds)
                whole[stage.nodes] = y[:n]
                for s in seen:
                    s.see(at + seconds / 3600, whole)
            for s in seen:
                if s.last is None:
                    own = stage.layer == s.number

                    def cure_at(hours):
                        field = np.zeros(len(body.at))
                        field[stage.point[own]] = made((hours - at) * 3600)[n:][own]
                        return field
                    s.gelled(at + before / 3600, at + now / 3600, cure_at)
            before = now
        cured[stage.layer, stage.point] = solver.y[n:]
        factors += stage.factors
        own = stage.layer == p
        told.append(dict(before=seen[p].peak, least=float(solver.y[n:][own].min()), mean=float(np.average(solver.y[n:][own], weights=stage.volume[own]))))
    out = []
    for s, t in zip(seen, told):
        out.append(dict(peakCelsius=s.peak[0], peakAfterHours=s.peak[1], peakBeforeNextPourCelsius=t["before"][0], mouldFacePeakCelsius=s.face_peak[0] if len(s.face_nodes) else None,
                        firstGelAfterHours=s.first, lastGelAfterHours=s.last, leastConversion=t["least"], meanConversion=t["mean"], nearPeakHours=near(s)))
    return dict(layers=out, nodes=len(body.at), steps=steps, factors=factors, seconds=time.perf_counter() - begun, kind=body.kind, cureAtEnd=cured, temperatures=whole, body=body)
