"""Random pieces for `studio calc heat`, from a seed: every shape it takes, one to five layers, and on purpose what is extreme.

A card says what a piece is about; the numbers are drawn. A layer's resin is made for its depth: the rate at which a Frank-Kamenetskii number of its depth and width is
`push` (about 1 to 1.5 still cures quietly, 3 and more runs away; our rule, from trying).
"""
import numpy as np

GAS = 8.314462618

# shape, how many layers, what is extreme about it
CARDS = [
    ("cylinder", 1, "deepest"), ("pyramid", 5, "early"), ("sphere", 3, "mixed"), ("box", 2, "former"), ("cone", 4, "thin"),
    ("prism", 2, "cold"), ("dome", 2, "mixed"), ("square", 3, "former"), ("cylinder", 2, "runaway"), ("point", 3, "hot"),
    ("triangle", 2, "mixed"), ("box", 1, "deep"), ("cone", 3, "former"), ("sphere", 1, "roof"), ("tray", 2, "thin"),
    ("pyramid", 2, "runaway"), ("hexagon", 3, "early"), ("dome", 3, "cold"), ("square", 2, "plug"), ("cylinder", 5, "early"),
]


def round_to(x, step):
    return float(np.round(np.round(x / step) * step, 6))


def mould(draw, shape, height):
    across = round_to(draw.uniform(50, 150), 1)
    if shape == "cylinder":
        return dict(shape="cone", bottomDiameterMm=across, topDiameterMm=across, heightMm=height), across / 2
    if shape == "cone":
        return dict(shape="cone", bottomDiameterMm=round_to(across * draw.uniform(.4, .8), 1), topDiameterMm=across, heightMm=height), across * .4
    if shape == "point":
        return dict(shape="cone", bottomDiameterMm=0, topDiameterMm=across, heightMm=height), across * .25
    if shape in ("box", "tray"):
        return dict(shape="cuboid", widthMm=across, depthMm=round_to(across * draw.uniform(.5, .95), 1), heightMm=height, draftDegrees=round_to(draw.uniform(0, 12), .5)), across * .37
    if shape == "prism":
        sides = int(draw.choice([3, 5, 8, 12]))
        return dict(shape="prism", sides=sides, edgeMm=round_to(across * np.tan(np.pi / sides), 1), heightMm=height), across / 2
    sides = {"pyramid": 4, "square": 4, "triangle": 3, "hexagon": 6}[shape]
    tip = 0 if draw.random() < .5 and shape != "square" else round_to(draw.uniform(4, 40), 1)
    return dict(shape="pyramid", sides=sides, baseMm=round_to(across * np.tan(np.pi / sides), 1), heightMm=height, tipMm=tip), across * .3


def depths(draw, count, about):
    if about == "deep":
        return [round_to(draw.uniform(60, 110), 1)]
    if about == "deepest":
        return [150.0]
    if about == "roof":
        return [round_to(draw.uniform(30, 70), 1)]
    if about == "thin":
        return [round_to(draw.uniform(25, 60), 1)] + [round_to(draw.uniform(2, 4), .5) for _ in range(count - 2)] + [2.0]
    if about in ("former", "plug"):
        return [round_to(draw.uniform(15, 30), 1) for _ in range(count)]
    return [round_to(draw.choice([draw.uniform(4, 12), draw.uniform(12, 35)]), .5) for _ in range(count)]


def resin(draw, depth, half, warm, push):
    """Kinetics for a layer of this depth and half width [mm] in this warmth."""
    energy, heat, kappa = round_to(draw.uniform(48000, 62000), 500), round_to(draw.uniform(290000, 400000), 5000), round_to(draw.uniform(.02, .06), .001)
    m, n = (1, 2) if draw.random() < .6 else (round_to(draw.uniform(.9, 1.3), .05), round_to(draw.uniform(1.6, 2.2), .05))
    conduct, dense = round_to(draw.uniform(.16, .24), .01), round_to(draw.uniform(1050, 1180), 10)
    a = np.linspace(0, 1, 200)
    most = ((kappa + a ** m) * (1 - a) ** n).max()
    z, x = depth / 2000, half / 1000
    size = 1 / (1 / (z * z + 2 * z * conduct / 20) + 2 / (x * x + 2 * x * conduct / 12))
    kelvin = warm + 273.15
    rate = push * conduct * GAS * kelvin ** 2 / (energy * dense * heat * most * size)
    rate *= np.exp(energy / GAS * (1 / kelvin - 1 / 296.15))
    rate = float(f"{min(max(rate, 4e-6), 1.5e-3):.3g}")
    return dict(kinetics=dict(rateAt23CPerS=rate, kappa=kappa, m=m, n=n, activationJPerMol=energy, heatJPerKg=heat, glassEndC=round_to(draw.uniform(45, 65), 1)),
                densityKgPerM3=dense, heatCapacityJPerKgK=round_to(draw.uniform(1700, 2100), 50), conductivityWPerMK=conduct)


def gel_hours(r, celsius):
    """Of a film that stays this warm, without vitrification."""
    k = r["kinetics"]
    a = np.linspace(0, .577, 400)
    whole = np.trapz(1 / ((k["kappa"] + a ** k["m"]) * (1 - a) ** k["n"]), a)
    return whole / (k["rateAt23CPerS"] * np.exp(-k["activationJPerMol"] / GAS * (1 / (celsius + 273.15) - 1 / 296.15))) / 3600


def piece(seed, number):
    draw = np.random.default_rng([seed, number])
    shape, count, about = CARDS[number % len(CARDS)]
    warm = {"cold": 8.0, "hot": 35.0}.get(about, round_to(draw.uniform(16, 28), .5))
    deep = depths(draw, count, about)
    filled = sum(deep)
    if shape in ("sphere", "dome"):
        across = round_to(max(filled * (1.15 if shape == "sphere" else 2.2), 60) * draw.uniform(1, 1.3), 1)
        body, half = dict(shape=shape, diameterMm=across), across * .4
        if shape == "sphere":
            body["openingDiameterMm"] = round_to(across * draw.uniform(.2, .45), 1)
    else:
        body, half = mould(draw, shape, round_to(filled + draw.choice([0, draw.uniform(2, 25)]), 1))
        body["heightMm"] = max(body["heightMm"], np.ceil(filled))
    wall = dict(thicknessMm={"hot": 3.0, "roof": 25.0}.get(about, round_to(draw.uniform(3, 25), 1)), floorMm=round_to(draw.uniform(4, 25), 1))
    if about == "roof":
        wall["roofMm"] = round_to(draw.uniform(5, 20), 1)
    if draw.random() < .3:
        wall |= dict(conductivityWPerMK=round_to(draw.uniform(.15, 1.2), .05), densityKgPerM3=round_to(draw.uniform(950, 1500), 50), heatCapacityJPerKgK=round_to(draw.uniform(1000, 1700), 50))
    body["wall"] = wall
    made = dict(mould=body, resins={}, layers=[])
    if about in ("former", "plug"):
        widths = [round_to(half * draw.uniform(.25, .6), 1) for _ in range(2)]
        if shape == "square":
            widths[1] = widths[0]
        made["former"] = dict(outerWidthMm=widths[0], outerDepthMm=widths[1], fromMm=deep[0] if draw.random() < .5 else round_to(deep[0] * .6, 1), wallMm=2,
                              fill="silicone" if about == "plug" or draw.random() < .3 else "air")
    if draw.random() < .3:
        made["boundary"] = dict(topWPerM2K=round_to(draw.uniform(6, 14), 1), sideWPerM2K=round_to(draw.uniform(5, 12), 1), bottomWPerM2K=round_to(draw.uniform(3, 10), 1))
    at, wait = 0.0, 0.0
    for number_of, depth in enumerate(deep):
        poured = warm + (0 if draw.random() < .4 else round_to(draw.uniform(-6, 10), .5))
        push = draw.uniform(4, 9) if about == "runaway" and number_of == count - 1 else draw.uniform(.4, 1.6)
        name = f"r{number_of}"
        made["resins"][name] = resin(draw, depth, half, max(warm, poured), push)
        wait = gel_hours(made["resins"][name], warm)
        made["layers"].append(dict(resin=name, thicknessMm=depth, pouredAtHours=round_to(at, .05), pouredCelsius=poured))
        at += wait * (draw.uniform(.25, .6) if about == "early" and draw.random() < .6 else draw.uniform(.8, 2.2))
    last = made["layers"][-1]["pouredAtHours"]
    made["untilHours"] = min(4000.0, np.ceil(last + 2.5 * wait))
    readings = [dict(hours=0, celsius=warm)]
    if draw.random() < .4:  # a room that changes, up to a day and a night
        step = max(4.0, round_to(made["untilHours"] / 12, 1))
        readings = [dict(hours=h, celsius=round_to(min(35, max(8, warm + 4 * np.sin(h * .7) + draw.uniform(-3, 3))), .5) if h else warm) for h in np.arange(0, made["untilHours"] + step, step)]
    made["room"] = readings
    made["about"] = f"{shape}, {count} layers, {about}"
    return made
