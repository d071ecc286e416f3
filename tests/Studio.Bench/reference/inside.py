"""The inside of a mould as docs/calculations.md gives it: heights and half widths [mm], and how a direction is cut into elements."""
import numpy as np


class Direction:
    """Blocks one after another, each cut into elements that are finer towards its ends; a node's place is its block + its share of it."""

    def __init__(self, blocks, even=.5):
        self.names, places = [], [0.0]
        for number, (name, count) in enumerate(blocks):
            self.names += [name] * count
            share = np.linspace(0, 1, count + 1)
            share = even * share + (1 - even) * (1 - np.cos(np.pi * share)) / 2
            for a, b in zip(share[:-1], share[1:]):
                places += [number + (a + b) / 2, number + b]
        self.places, self.count = np.array(places), len(self.names)


def spec(piece):
    """Heights, half widths and films that every kind of body needs."""
    m, wall = piece["mould"], piece["mould"]["wall"]
    shape = m["shape"]
    if shape == "sphere":
        radius = m["diameterMm"] / 2
        height = radius + np.sqrt(radius ** 2 - (m["openingDiameterMm"] / 2) ** 2)
    else:
        height = m["diameterMm"] / 2 if shape == "dome" else m["heightMm"]
    tops, z = [], 0.0
    for layer in piece["layers"]:
        z = layer["toMm"] if "toMm" in layer else z + layer["thicknessMm"]
        tops.append(z)
    return dict(shape=shape, height=height, tops=tops, thick=wall["thicknessMm"], floor=wall.get("floorMm", wall["thicknessMm"]), roof=wall.get("roofMm", 0))


def inner(m):
    """Half widths of the inside across and (a rectangle) along, as functions of the height [mm]; and the sides of a polygon."""
    if m["shape"] == "cuboid":
        lean = np.tan(np.radians(m.get("draftDegrees", 0)))
        return (lambda z: m["widthMm"] / 2 + lean * z), (lambda z: m["depthMm"] / 2 + lean * z), 4
    if m["shape"] == "cone":
        a, b = m["bottomDiameterMm"] / 2, m["topDiameterMm"] / 2
        return (lambda z: a + (b - a) * z / m["heightMm"]), None, 0
    if m["shape"] in ("sphere", "dome"):
        r = m["diameterMm"] / 2
        return (lambda z: np.sqrt(np.maximum(0, r * r - (z - r) ** 2))), None, 0
    sides = m.get("sides", 4)
    a, b = (m["edgeMm"],) * 2 if m["shape"] == "prism" else (m.get("tipMm", 0), m["baseMm"])
    f = .5 / np.tan(np.pi / sides)
    return (lambda z: f * (a + (b - a) * z / m["heightMm"])), None, sides
