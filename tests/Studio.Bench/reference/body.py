"""The body of a piece as docs/calculations.md describes it: mould, former and layers as elements, with the films of every face. Lengths in m inside, mm outside.

Three kinds: a body of revolution; half of one side's sector of a regular polygon; a quarter of a rectangle. Every one is a grid of logical bricks whose lines follow
core (the former), resin and wall; where lines meet, nodes are one and bricks without volume are left out.
"""
import numpy as np
from scipy.sparse import coo_matrix

import arcs
import elements as el
from inside import Direction, inner, spec

AIR, WALL, GONE, NOTHING = -3, -1, -9, -2  # any number from 0 is a layer


class Body:
    """Nodes, elements and faces. `fine` is the number of elements through a layer; everything else follows it."""

    def __init__(self, piece, fine):
        self.piece, s = piece, spec(piece)
        m, former, bound = piece["mould"], piece.get("former"), piece.get("boundary", {})
        across, along, sides = inner(m)
        quarter = sides == 4 and (along is not None or (former is not None and former["outerWidthMm"] != former["outerDepthMm"]))
        self.kind = "revolved" if sides == 0 else "quarter" if quarter else "sector"
        along = along or across
        start = former["fromMm"] if former else np.inf
        rise = self.rise(s, fine, start)
        scale = {"revolved": 1.5, "quarter": .75, "sector": 1}[self.kind]
        few = max(1, fine // 3 if quarter else fine // 2)
        width = ([("core", few)] if former else []) + [("resin", max(2, round(fine * scale))), ("wall", few + 1)]
        i = Direction(width)
        j = Direction(width) if quarter else Direction([("sector", max(1, (fine + 1) // 2))], even=1) if self.kind == "sector" else None
        core = self.core(former, sides)

        def lines(half, z, own):
            rim = half(np.clip(z, 0, s["height"])) + s["thick"] if s["shape"] != "sphere" else np.full_like(z, m["diameterMm"] / 2 + s["thick"])
            a = half(np.clip(z, 0, s["height"]))
            held = own * np.minimum(1, a / half(start)) if former else None
            return [np.zeros_like(z)] + ([held] if former else []) + [a, rim]

        def place(q, z, half, own):
            rows = np.stack(lines(half, z, own))
            block = np.minimum(q.astype(int), len(rows) - 2)
            return rows[block, np.arange(len(q))] * (1 - (q - block)) + rows[block + 1, np.arange(len(q))] * (q - block)

        k, heights = rise
        if j is None:
            qi, qk = (a.ravel() for a in np.meshgrid(i.places, k.places, indexing="ij"))
            z = np.interp(qk, np.arange(len(heights)), heights)
            at = arcs.place(m, s, qi, qk, heights, len(width)) if s["shape"] in ("sphere", "dome") else np.stack([place(qi, z, across, core[0]), z], axis=1)
            self.shape, self.dims = (i.count, 1, k.count), 2
            grid_shape = (len(i.places), 1, len(k.places))
        else:
            qi, qj, qk = (a.ravel() for a in np.meshgrid(i.places, j.places, k.places, indexing="ij"))
            z = np.interp(qk, np.arange(len(heights)), heights)
            x = place(qi, z, across, core[0])
            y = place(qj, z, along, core[1]) if quarter else x * np.tan(np.pi / sides) * qj
            at = np.stack([x, y, z], axis=1)
            self.shape, self.dims = (i.count, j.count, k.count), 3
            grid_shape = (len(i.places), len(j.places), len(k.places))
        at = at / 1000
        self.at, merged = np.unique(np.round(at, 9), axis=0, return_inverse=True)
        grid = merged.reshape(grid_shape)
        self.copies = {"revolved": 1, "quarter": 4, "sector": 2 * sides}[self.kind]
        self.make_elements(grid)
        self.name_material(i, j, k, s, start, former)
        self.name_films(s, bound, former)

    @staticmethod
    def core(former, sides):
        if not former:
            return 0.0, 0.0
        w, d = former["outerWidthMm"], former["outerDepthMm"]
        if sides == 4:
            return w / 2, d / 2
        same = np.sqrt(w * d / (np.pi if sides == 0 else sides * np.tan(np.pi / sides)))
        return same, same

    @staticmethod
    def rise(s, fine, start):
        """The blocks upwards and the heights between them [mm]. A round bottom has a block of its own, as arcs.py needs it."""
        cuts = {0.0: None, s["height"]: None} | {t: None for t in s["tops"]}
        if np.isfinite(start):
            cuts[start] = None
        if s["shape"] in ("sphere", "dome"):
            cuts[arcs.low(s)] = None
        cuts = sorted(cuts)
        blocks, heights = [("floor", max(1, fine // 2))], [-s["floor"]]
        for a, b in zip(cuts[:-1], cuts[1:]):
            layer = next((n for n, t in enumerate(s["tops"]) if b <= t + 1e-9), None)
            count = max(1, fine // 2) if layer is None else max(2, round(fine * min(1.0, .4 + (b - a) / 50)))
            blocks.append(((layer if layer is not None else "open", a >= start - 1e-9), count))
            heights.append(a)
        heights.append(s["height"])
        if s["roof"] > 0:
            blocks.append(("roof", max(1, fine // 2)))
            heights.append(s["height"] + s["roof"])
        return Direction(blocks), heights

    def make_elements(self, grid):
        ni, nj, nk = self.shape
        flat = self.dims == 2
        local = [(a, b, c) for a in range(3) for b in range(1 if flat else 3) for c in range(3)]
        cells = np.array([[grid[2 * a + p, (0 if flat else 2 * b) + q, 2 * c + r] for p, q, r in local] for a in range(ni) for b in range(nj) for c in range(nk)])
        self.cells, self.local, where = cells, np.array(local), self.at[cells]
        revolved = flat
        self.size = el.lobatto_size(where, revolved) * self.copies
        self.gone = self.size.sum(axis=1) < 1e-16
        self.stiff = np.zeros((len(cells), len(local), len(local)))
        self.stiff[~self.gone] = el.stiffness(where[~self.gone], revolved) * self.copies
        self.mixing = self.size.copy()
        if self.kind != "quarter":
            first = np.arange(len(cells)) < nj * nk
            self.mixing[first] = el.as_if_on_axis(self.size[first])

    def name_material(self, i, j, k, s, start, former):
        kind = np.full(self.shape, WALL)
        for a, ni in enumerate(i.names):
            for b in range(self.shape[1]):
                nj = j.names[b] if self.kind == "quarter" else ni
                for c, nk in enumerate(k.names):
                    if nk in ("floor", "roof") or "wall" in (ni, nj):
                        continue
                    layer, held = nk
                    if ni == nj == "core" and held:
                        kind[a, b, c] = AIR if former.get("fill", "air") == "air" else WALL
                    else:
                        kind[a, b, c] = NOTHING if layer == "open" else layer
        kind.reshape(-1)[self.gone] = GONE
        self.material = kind

    def name_films(self, s, bound, former):
        """Every face that may look at a room: (element, its nodes, their areas, what lies beyond it, the film when that is empty)."""
        top, side, under, void = (bound.get(n + "WPerM2K", v) for n, v in (("top", 10), ("side", 8), ("bottom", 5), ("void", 5)))
        held = former.get("wPerM2K", 5) if former else 0
        number = np.arange(self.material.size).reshape(self.shape)
        self.faces = []
        for d in (0, 2) if self.kind != "quarter" else (0, 1, 2):
            for way in (-1, 1):
                own = np.flatnonzero(self.local[:, d] == 1 + way)
                for e in np.ndindex(self.shape):
                    n = list(e)
                    n[d] += way
                    out = not 0 <= n[d] < self.shape[d]
                    if self.material[e] in (AIR, NOTHING, GONE) or (out and d < 2 and way < 0):
                        continue
                    beyond = NOTHING if out else self.material[tuple(n)]
                    if beyond in (WALL, GONE):
                        continue
                    roofed = s["roof"] > 0 and not out
                    film = held if beyond == AIR else void if roofed else {(2, 1): top, (2, -1): under if out else side}.get((d, way), side)
                    nodes = self.cells[number[e]][own]
                    if d < 2 and np.all(np.abs(self.at[nodes][:, d]) < 1e-9):
                        continue  # in the plane of symmetry
                    area = el.lobatto_size(self.at[nodes][None], self.dims == 2)[0] * self.copies
                    self.faces.append((number[e], nodes, area, beyond, film))

    def touching(self, layer):
        """Elements of a layer with the side on which the mould stands: (element, direction, -1 or 1)."""
        number = np.arange(self.material.size).reshape(self.shape)
        for e in zip(*np.nonzero(self.material == layer)):
            for d in range(3):
                for way in (-1, 1):
                    n = list(e)
                    n[d] += way
                    if 0 <= n[d] < self.shape[d] and self.material[tuple(n)] == WALL:
                        yield number[e], d, way

    def sampled(self, members, inside=(-1, -.5, 0, .5, 1)):
        """A matrix from nodes to places inside elements; members: (element, direction or None, side)."""
        rows, columns, values, count = [], [], [], 0
        for e, d, way in members:
            points = [[way] if d == n else [0.] if self.dims == 2 and n == 1 else inside for n in range(3)]
            used = (0, 2) if self.dims == 2 else (0, 1, 2)
            weight = el.product(*[el.shapes(points[n])[0] for n in used])
            rows.append(np.repeat(np.arange(count, count + len(weight)), weight.shape[1]))
            columns.append(np.tile(self.cells[e], len(weight)))
            values.append(weight.ravel())
            count += len(weight)
        if not count:
            return None
        return coo_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(columns))), shape=(count, len(self.at))).tocsr()
