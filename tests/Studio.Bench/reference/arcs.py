"""Where the nodes of a sphere or a dome stand: lines along arcs, and under the lowest level a patch whose bottom and right-hand edges are both the arc. Lengths in mm."""
import numpy as np


def low(s):
    """The height of the patch's top: inside the first layer."""
    return min(s["tops"][0], .3 * s["height"])


def place(m, s, qi, qk, heights, blocks):
    """(r, z) of nodes at qi (0 to 1 resin, to 2 wall) and qk (0 to 1 floor, to 2 the patch, then level by level)."""
    if blocks != 2:
        raise ValueError("A former in a sphere or a dome has no grid here.")
    radius, thick, floor = m["diameterMm"] / 2, s["thick"], s["floor"]
    block = m["shape"] == "sphere"  # a round block; a dome's wall follows it at a level distance

    def arc(angle):
        return np.stack([radius * np.sin(angle), radius * (1 - np.cos(angle))], axis=-1)

    def height_angle(z):
        return np.arccos(np.clip(1 - np.asarray(z) / radius, -1, 1))

    end = height_angle(heights[2])
    turn = end / 2 if block else min(end / 2, np.arcsin(min(1, thick / radius)))
    corner, top = arc(turn), arc(end)
    foot = radius + thick if block else thick

    def outer(share):  # of the patch's height
        angle = end * share
        return np.stack([np.full_like(angle, foot) if block else arc(angle)[..., 0] + thick, arc(angle)[..., 1]], axis=-1)

    def patch(a, b):
        bottom, right = arc(a * turn), arc(turn + b * (end - turn))
        upper = np.stack([a * top[0], np.full_like(a, top[1])], axis=-1)
        left = np.stack([np.zeros_like(b), b * top[1]], axis=-1)
        a, b = a[..., None], b[..., None]
        return ((1 - b) * bottom + b * upper + (1 - a) * left + a * right
                - a * (1 - b) * corner - a * b * top - (1 - a) * b * np.array([0, top[1]]))

    out = np.zeros((len(qi), 2))
    for n, (x, y) in enumerate(zip(qi, qk)):
        if y <= 1:
            over = patch(np.array(min(x, 1.0)), np.array(0.0))
            if x > 1:
                over = (2 - x) * corner + (x - 1) * outer(np.array(0.0))
            flat = min(corner[0], .8 * foot)
            below = np.array([x * flat if x <= 1 else (2 - x) * flat + (x - 1) * foot, -floor])
            out[n] = y * over + (1 - y) * below
        elif y <= 2:
            out[n] = patch(np.array(min(x, 1.0)), np.array(y - 1)) if x <= 1 else (2 - x) * arc(turn + (y - 1) * (end - turn)) + (x - 1) * outer(np.array(y - 1))
        else:
            k = min(int(y), len(heights) - 2)
            top_angle = height_angle(min(s["height"], heights[k + 1]))
            if heights[k] >= s["height"] - 1e-9:  # the roof
                inside, z = arc(height_angle(s["height"]))[0], heights[k] + (y - k) * (heights[k + 1] - heights[k])
            else:
                a = height_angle(heights[k])
                inside, z = arc(a + (y - k) * (top_angle - a))
            rim = foot if block else inside + thick
            out[n] = x * inside if x <= 1 else (2 - x) * inside + (x - 1) * rim, z
    return out
