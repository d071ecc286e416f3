"""Random pieces of every shape: `studio calc heat` beside a reference that shares nothing with it but docs/calculations.md.

    pieces.py [COUNT [SEED]] [--solve] [--studio studio.dll]     compares; without --solve the reference's answers come from pieces-COUNT.json where it is there
    pieces.py --verify                                           the reference beside exact cases (exact.py)

The reference: quadratic elements on a mapped grid of its own (body.py, arcs.py, elements.py; ours are linear), the whole coupled system integrated by scipy's BDF,
rtol 1e-6, from pour to pour (cure.py; ours splits reaction and conduction), watched between the nodes as well (watch.py). Its own error is that of Richardson for second
order from two grids, 1 : 1.5, and a floor for BDF's own scatter. Before it judges, it was judged (--verify): a rod, a box and a cylinder that cool (Heisler), the adiabatic rise, and the
public cases of tests/Studio.Engine.Tests/Heat/heat-public.json.

Exit 1 where a difference is above its tolerance: peaks max(1.5 K, 3 % of the rise), peak time 4 %, gel 3 %, mean conversion 0.012, least 0.02, each at least twice the reference's
own error. Permissive is what is cooler, gels earlier or is further cured than the reference by more than its error and 0.3 K, 0.5 % or 0.003.
"""
import argparse
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

HERE = pathlib.Path(__file__).parent
TEMPERATURES = ["peakCelsius", "peakBeforeNextPourCelsius", "mouldFacePeakCelsius"]
GELS = ["firstGelAfterHours", "lastGelAfterHours"]
CURES = ["leastConversion", "meanConversion"]
ALL = TEMPERATURES + ["peakAfterHours"] + GELS + CURES
FLOOR = dict.fromkeys(TEMPERATURES, .01) | dict.fromkeys(CURES, 2e-4)
HEADS = dict(zip(ALL, ["peak K", "before K", "face K", "at %", "first %", "last %", "least", "mean"]))


def reference(count, seed):
    """Solves every piece on two grids; one process, one piece after another."""
    import made
    from watch import solve
    out = []
    for number in range(count):
        piece = made.piece(seed, number)
        about = piece.pop("about")
        begun = time.perf_counter()
        round_mould = piece["mould"]["shape"] in ("cone", "sphere", "dome")
        coarse, fine = (solve(piece, f) for f in ((8, 12) if round_mould else (4, 6)))
        for a, b in zip(coarse["layers"], fine["layers"]):
            b["error"] = {q: None if a[q] is None or b[q] is None else abs(a[q] - b[q]) * .8 + FLOOR.get(q, 1e-3 * abs(b[q])) for q in ALL}
        out.append(dict(about=about, input=piece, kind=fine["kind"], nodes=[coarse["nodes"], fine["nodes"]], layers=fine["layers"]))
        print(f"solved {number + 1} of {count}: {about} ({fine['kind']}, {fine['nodes']} nodes, {time.perf_counter() - begun:.0f} s)", file=sys.stderr, flush=True)
    return dict(seed=seed, pieces=out)


def asked(studio, piece):
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder, "piece.json")
        file.write_text(json.dumps(piece), encoding="utf-8")
        done = subprocess.run(["dotnet", studio, "calc", "heat", str(file)], capture_output=True, text=True, check=False)
    try:
        said = json.loads(done.stdout)
    except ValueError:
        return None, f"exit {done.returncode}, no JSON: {(done.stderr or done.stdout)[:200]}"
    if done.returncode != 0:
        return None, "; ".join(e["path"] + ": " + e["message"] for e in said["errors"])
    for layer in said["layers"]:
        layer["leastConversion"], layer["meanConversion"] = layer["conversion"]["min"], layer["conversion"]["mean"]
    return said["layers"], None


def judge(q, ours, theirs, error, layer, piece, ref):
    """Difference (ours - theirs; % for times), the reference's error in the same unit, whether it is too far, whether it is permissive. None where there is nothing to compare."""
    until = piece["untilHours"] + piece["layers"][0]["pouredAtHours"] - layer["pouredAtHours"]
    if q in TEMPERATURES:
        if ours is None or theirs is None:
            return None  # above 120: the flag is judged instead
        start = layer.get("pouredCelsius", piece["room"][0]["celsius"])
        away = ours - theirs
        return away, error, abs(away) > max(1.5, .03 * abs(theirs - start), 2 * error), away < -(error + .3)
    if q in CURES:
        away = ours - theirs
        return away, error, abs(away) > max(.02 if q == CURES[0] else .012, 2 * error), away > error + .003
    if ours is None and theirs is None:
        return None
    gel = q in GELS
    away = ((until if ours is None else ours) - (until if theirs is None else theirs)) / max(1e-3, until if theirs is None else theirs) * 100
    own = 0 if theirs is None or error is None else error / max(1e-3, theirs) * 100
    flat = not gel and any(a <= ours <= b for a, b in ref["nearPeakHours"])
    return away, own, not flat and abs(away) > max(3 if gel else 4, 2 * own), gel and away < -(own + .5)


def compare(known, studio):
    broken, worst, permissive, slow = [], dict.fromkeys(ALL, (0.0, "")), {q: [] for q in ALL}, 0.0
    print("ours - reference (reference's own error); ! above its tolerance, * permissive; a peak's hour within a flat top is let pass\n")
    print(f"{'piece, layer':38}{'°C':>8} " + "".join(f"{HEADS[q]:>18}" for q in ALL))
    for number, ref in enumerate(known["pieces"]):
        piece = ref["input"]
        begun = time.perf_counter()
        ours, fault = asked(studio, piece)
        slow = max(slow, time.perf_counter() - begun)
        if fault:
            print(f"{number} {ref['about']}: NO ANSWER: {fault}")
            broken.append(f"{number}: no answer")
            continue
        for n, (own, their, layer) in enumerate(zip(ours, ref["layers"], piece["layers"])):
            name = f"{number} {ref['about']}, {n + 1}: {layer['thicknessMm']:g} mm"
            line, error = "", their["error"]
            hot = their["peakCelsius"] > 120
            if hot != own.get("runaway", False):
                line += f"  run-away: ours {own.get('runaway', False)}, reference {their['peakCelsius']:.1f}"
                if abs(their["peakCelsius"] - 120) > max(1.5, 2 * error["peakCelsius"], .03 * (their["peakCelsius"] - 20)):
                    broken.append(f"{name}: run-away")
                if hot and their["peakCelsius"] - error["peakCelsius"] - .3 > 120:
                    permissive["peakCelsius"].append((own["peakCelsius"] - their["peakCelsius"], name))
            for q in ALL:
                judged = judge(q, own.get(q), their[q], error[q], layer, piece, their)
                if judged is None or (hot and q in TEMPERATURES + ["peakAfterHours"] and their[q] > (120 if q in TEMPERATURES else -1)):
                    line = f"{line}{'-':>18}"
                    continue
                away, unsure, far, kind = judged
                digits = 4 if q in CURES else 2
                line += f"{f'{away:+.{digits}f} ({unsure:.{digits}f})' + ('!' if far else '*' if kind else ' '):>18}"
                if far:
                    broken.append(f"{name}: {q} {away:+.4g}")
                if kind:
                    permissive[q].append((away, name))
                towards = away if q in CURES else -away
                if q != "peakAfterHours" and towards > abs(worst[q][0]):
                    worst[q] = (away, name)
            print(f"{name:38}{their['peakCelsius']:8.1f} {line}")
    print(f"\n{'quantity':28}{'most on the permissive side':32}{'beyond error and margin':26}")
    for q in ALL:
        if q == "peakAfterHours":
            continue
        unit = " K" if q in TEMPERATURES else "" if q in CURES else " %"
        print(f"{q:28}{f'{worst[q][0]:+.4f}{unit}':14}{worst[q][1]:42}{len(permissive[q])}" + "".join(f"\n{'':30}{a:+.4f}{unit}  {n}" for a, n in sorted(permissive[q], key=lambda p: -abs(p[0]))))
    print(f"\nabove a tolerance: {len(broken)}" + "".join("\n  " + b for b in broken))
    print(f"ours: at most {slow:.1f} s a piece, the start of the program included")
    return 1 if broken else 0


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("count", nargs="?", type=int, default=20)
    ask.add_argument("seed", nargs="?", type=int, default=1)
    ask.add_argument("--solve", action="store_true")
    ask.add_argument("--verify", action="store_true")
    ask.add_argument("--studio")
    said = ask.parse_args()
    if said.verify:
        import exact
        return exact.run()
    file = HERE / (f"pieces-{said.count}.json" if said.seed == 1 else f"pieces-{said.count}-{said.seed}.json")
    if said.solve or not file.exists():
        os.nice(10)
        file.write_text(json.dumps(reference(said.count, said.seed), indent=1), encoding="utf-8")
    built = sorted((HERE / "../../../src/Studio/bin/Release").glob("net*/**/studio.dll"), key=lambda p: p.stat().st_mtime)
    studio = said.studio or (str(built[-1]) if built else None)
    if studio is None:
        raise SystemExit("There is no built studio.dll: dotnet build -c Release src/Studio, or say where it is with --studio.")
    return compare(json.loads(file.read_text(encoding="utf-8")), studio)


if __name__ == "__main__":
    sys.exit(main())
