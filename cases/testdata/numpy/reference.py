#!/usr/bin/python3
"""Second-origin solution of suspension corners, in plain numpy.

    reference.py CAR.yaml...               results as JSON: one object, or an array when there are several cars
    reference.py --self-check CAR.yaml...  balances summed again from the results; exit status 1 above 1e-9

Written apart from the Go program, from the same equations but by other routes: moments about the origin of the car, general
solves, the null space by singular values, limits by bisection. N, mm, MPa, N.mm, kg; accelerations in g. ISO 8855 axes.

A calculation aid for tests. A failure of a suspension member can kill: have loads, parts and results reviewed and signed off
by a qualified structural engineer, follow the series' regulations and local law, and prove parts by test and inspection.
"""
import json
import math
import re
import sys

import numpy as np
import yaml

G, KSI = 9.80665, 6.894757        # standard gravity in m/s2; a ksi in MPa
AXLES, SIDES = ("front", "rear"), ("left", "right")
CORNERS = [f"{axle}_{side}" for axle in AXLES for side in SIDES]
MEMBERS = ("upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod")
IMPERFECTION = {"a0": 0.13, "a": 0.21, "b": 0.34, "c": 0.49, "d": 0.76}    # EN 1993-1-1:2005 table 6.1
UNITS = {"length": {"mm": 1, "cm": 10, "m": 1000, "in": 25.4}, "force": {"N": 1, "kN": 1000}, "mass": {"kg": 1},
         "moment": {"": 1000, "N m": 1000, "N·m": 1000}, "speed": {"m/s": 1, "km/h": 1 / 3.6},
         "stress": {"MPa": 1, "GPa": 1000}, "acceleration": {"g": 1, "m/s2": 1 / G}, "ratio": {}}

class Refused(Exception):
    """A car or a case that has no answer; the text says which and why."""

# ---- the car file
def num(value, kind="ratio"):
    """A bare number or a text with a unit, in the internal unit of its kind. A bare moment is in N.m."""
    found = re.fullmatch(r"\s*([-+]?[0-9.]+(?:[eE][-+]?[0-9]+)?)\s*(.*?)\s*", str(value))
    if not found or found[2] and found[2] not in UNITS[kind]:
        raise Refused(f"{value!r} is no {kind}")
    return float(found[1]) * UNITS[kind].get(found[2], 1)

def nums(values, kind="ratio"):
    """A vector of num."""
    return np.array([num(v, kind) for v in values])

def axes_matrix(axes):
    """Rows of ISO 8855, columns of the file's axes: every coordinate is turned by itself, so it may be left-handed."""
    words = dict(zip(("forward", "left", "up", "rearward", "right", "down"), np.vstack([np.eye(3), -np.eye(3)])))
    return np.array([words[axes[letter]] for letter in "xyz"]).T

def tube(raw):
    """Section, material and column rule of one member. E235, E355: EN 10305-1 with EN 1993-1-1 3.2.6; 4130: MIL-HDBK-5J
    table 2.3.1.0, whose strengths step at a wall of 0.188 in. MPa, kg/m3."""
    (od, wall), column = nums(raw["tube"], "length"), raw.get("column", "euler-johnson")
    if raw["material"] == "4130 normalized":
        sy, su = (75 * KSI, 95 * KSI) if wall <= 0.188 * 25.4 else (70 * KSI, 90 * KSI)
        props = dict(E=29000 * KSI, Sy=sy, Su=su, nu=0.32, rho=0.283 * 27680.0)
    else:
        sy, su = {"E355+N": (355.0, 490.0), "E235+N": (235.0, 340.0)}[raw["material"]]
        props = dict(E=210000.0, Sy=sy, Su=su, nu=0.3, rho=7850.0)
    if isinstance(column, dict):
        column = {"crookedness": num(column["crookedness"], "length")}
    return dict(props, name=raw["material"], od=od, wall=wall, A=math.pi / 4 * (od**2 - (od - 2 * wall)**2),
                I=math.pi / 64 * (od**4 - (od - 2 * wall)**4), K=num(raw.get("effective_length_factor", 1)), column=column)

def reflected(raw, turn):
    """The mirror image of what a file says of an axle: every list of three numbers is a vector in its axes."""
    if isinstance(raw, dict):
        return {k: reflected(v, turn) for k, v in raw.items() if k != "right"}
    if isinstance(raw, list) and len(raw) == 3:
        flip = turn.T @ np.diag([1.0, -1, 1]) @ turn
        return list(flip @ nums(raw, "length"))
    return raw

def overlaid(base, given):
    """What is given, laid over a base key by key. A spring and a torsion bar exclude each other, and so do the two forms of a wishbone."""
    if not (isinstance(base, dict) and isinstance(given, dict)):
        return given
    out = dict(base)
    for one, other in ((("spring",), ("torsion_bar",)), (("front_leg", "rear_leg"), ("outer", "front", "rear"))):
        for drop, keep in ((one, other), (other, one)):
            if any(given.get(k) for k in keep):
                out = {k: v for k, v in out.items() if k not in drop}
    for k, v in given.items():
        out[k] = overlaid(base[k], v) if k in base else v
    return out

def load_axle(raw, turn):
    """One corner of an axle in ISO 8855. ends[member] = (outer joint, inner joint)."""
    def pair(r, first, second):
        return turn @ nums(r[first], "length"), turn @ nums(r[second], "length")
    def direction(v):
        return turn @ nums(v) / np.linalg.norm(nums(v))
    ends = {}
    for side in ("upper", "lower"):
        for leg in AXLES:       # a wishbone's ball joint is that of both legs; a link in its place has joints of its own
            r = raw[side + "_wishbone"]
            ends[f"{side}_{leg}_leg"] = pair(r[leg + "_leg"], "outer", "inner") if leg + "_leg" in r else pair(r, "outer", leg)
    ends.update({m: pair(raw[m], "outer", "inner") for m in ("track_rod", "rod")})
    centre, contact = pair(raw["wheel"], "centre", "contact")
    corner = dict(ends=ends, carrier=raw["rod"]["carried_by"].split("_")[0], unsprung=num(raw["unsprung_mass"], "mass"),
                  centre=centre, contact=contact, rocker=None, tubes={m: tube(raw["members"][m]) for m in MEMBERS},
                  spin=direction(raw["wheel"]["spin_axis"]) if "spin_axis" in raw["wheel"] else np.array([0.0, 1, 0]))
    if "rocker" in raw:
        r, roll = raw["rocker"], raw["rocker"].get("anti_roll")
        corner["rocker"] = dict(pivot=turn @ nums(r["pivot"], "length"), axis=direction(r["axis"]),
                                span=num(r["bearing_span"], "length"), share=num(roll["roll_share"]) if roll else 0.0,
                                spring=pair(r["spring"], "rocker", "chassis") if "spring" in r else None,
                                anti_roll_link=pair(roll, "rocker", "link") if roll else None,
                                third=turn @ nums(r["third"]["rocker"], "length") if "third" in r else None,
                                heave=num(r["third"]["heave_share"]) if "third" in r else 0.0)
    return corner

def load_car(path):
    """Reads a car file into ISO 8855 and internal units; load_cases reads the cases."""
    with open(path, encoding="utf-8") as f:
        raw = yaml.safe_load(f)
    turn = axes_matrix(raw.get("axes", {"x": "forward", "y": "left", "z": "up"}))
    v, aero = raw["vehicle"], raw["vehicle"].get("aero", {})
    brakes, drive, h = v["brakes"], v["drive"], num(v["cg_height"], "length")
    car = dict(name=raw["car"], revision=raw.get("revision"), turn=turn, cases=raw["cases"], corners={}, h=h,
               m=num(v["mass"], "mass"), share=num(v["front_weight_share"]), L=num(v["wheelbase"], "length"),
               roll_share=num(v["front_roll_couple_share"]), lift=num(aero.get("lift_area", 0)), drag=num(aero.get("drag_area", 0)),
               aero_share=num(aero.get("front_share", 0)), h_drag=num(aero.get("drag_height", v["cg_height"]), "length"),
               rho=num(aero.get("air_density", 1.225)), brake_share=num(brakes["front_share"]), drive_share=num(drive["front_share"]),
               outboard={a: brakes[a] == "outboard" for a in AXLES}, hub=drive["by"] == "hub",
               factors={k: num(raw["design_factors"][k]) for k in ("yield", "ultimate", "buckling")})
    for axle in AXLES:
        image = reflected(raw[axle], turn)
        image["wheel"].setdefault("spin_axis", list(turn.T @ [0.0, -1, 0]))
        right = overlaid(image, raw[axle].get("right", {}))
        car["corners"].update({axle + "_left": load_axle(raw[axle], turn), axle + "_right": load_axle(right, turn)})
    front, rear = (car["corners"][a + "_left"]["contact"] for a in AXLES)
    if front[0] - rear[0] != car["L"] or min(front[1], rear[1]) <= 0:
        raise Refused(f"{path}: contact points disagree with the wheelbase or are not on the left")
    car["cg"] = front * [1, 0, 1] + [-(1 - car["share"]) * car["L"], 0, h]
    return car

# ---- from the car to the contact forces
def wheel(force, state="rolling", acceleration=None, moment=(0, 0, 0)):
    return dict(force=np.array(force, float), moment=np.array(moment, float), wheel=state, acceleration=acceleration)

def wheel_loads(car, axle, load, couple):
    """Left and right vertical load of an axle that carries a load and a roll couple, the CG being on the centreline."""
    y = [car["corners"][f"{axle}_{side}"]["contact"][1] for side in SIDES]
    return np.linalg.solve([[1, 1], y], [load, -couple])

def roll_couples(car, case, load, couple):
    """Roll couple of each axle, no wheel pulling on the road: what one axle cannot move the other takes. At its limit an axle
    stands on its outer wheel alone, in a left turn the right-hand one."""
    outer = "right" if couple > 0 else "left"
    limit = {a: load[a] * abs(car["corners"][f"{a}_{outer}"]["contact"][1]) for a in AXLES}
    own = {"front": couple * car["roll_share"], "rear": couple * (1 - car["roll_share"])}
    for a, other in (AXLES, AXLES[::-1]):
        if abs(own[a]) > limit[a]:
            own = {a: math.copysign(limit[a], couple), other: couple - math.copysign(limit[a], couple)}
            if abs(own[other]) > limit[other]:
                raise Refused(f"case {case}: the car rolls over")
    return own

def manoeuvre(car, case, name, acc):
    """Contact forces in equilibrium with weight, inertia and air: moments about the CG, two unknowns at a time."""
    ax, ay, v = acc[0] * G, acc[1] * G, num(case.get("speed", 0), "speed")
    m, h, b, s = car["m"], car["h"], car["share"] * car["L"], car["aero_share"]
    a, down, drag = car["L"] - b, 0.5 * car["rho"] * v * v * car["lift"], 0.5 * car["rho"] * v * v * car["drag"]
    pitch = m * ax * h + drag * car["h_drag"] - a * down * s + b * down * (1 - s)
    load = dict(zip(AXLES, np.linalg.solve([[1, 1], [-a, b]], [m * G + down, pitch])))
    if min(load.values()) <= 0:
        raise Refused(f"case {name}: the car pitches over")
    couple, fz = roll_couples(car, name, load, m * ay * h), {}
    for axle in AXLES:
        pair = wheel_loads(car, axle, load[axle], couple[axle])
        pair[np.abs(pair) < 1e-12 * load[axle]] = 0                     # lifted: rounding alone
        fz[axle + "_left"], fz[axle + "_right"] = pair
    total = m * ax + drag
    braked = total < 0 or case.get("wheel") == "braked"
    front = car["brake_share"] if braked else car["drive_share"]
    fx_axle = {"front": total * front, "rear": total * (1 - front)}
    part = {c: fz[c] / load[c.split("_")[0]] for c in CORNERS}
    fx = {c: fx_axle[c.split("_")[0]] * part[c] for c in CORNERS}
    yaw = sum(car["corners"][c]["contact"][1] * fx[c] for c in CORNERS)
    fy_axle = dict(zip(AXLES, np.linalg.solve([[1, 1], [a, -b]], [m * ay, yaw])))
    state = {x: "rolling" if fx_axle[x] == 0 else "braked" if braked else "driven" for x in AXLES}
    return {c: wheel([fx[c], fy_axle[x] * part[c], fz[c]], case.get("wheel", state[x]), np.array([*acc, 0.0]))
            for c in CORNERS for x in [c.split("_")[0]]}

def load_cases(car):
    """Every load case as (name, wheels, (acceleration, speed) of a manoeuvre or None), in the order of the file."""
    for case in car["cases"]:
        name, state, given = case["name"], case.get("wheel", "rolling"), case.get("unsprung_acceleration")
        given = None if given is None else car["turn"] @ nums(given, "acceleration")
        rest = {"front": car["m"] * G * car["share"], "rear": car["m"] * G * (1 - car["share"])}                          # no aero
        static = {f"{a}_{side}": f for a in AXLES for side, f in zip(SIDES, wheel_loads(car, a, rest[a], 0))}
        wheels = {c: wheel([0, 0, static[c]], state) for c in CORNERS}
        if "acceleration" in case:
            acc = (car["turn"] @ np.append(nums(case["acceleration"], "acceleration"), 0.0))[:2]
            turns = [(f"{name}, {side} turn", [acc[0], sign * abs(acc[1])]) for side, sign in zip(SIDES, (1, -1))]
            for title, way in turns if case.get("both_ways") else [(name, acc)]:
                wheels = manoeuvre(car, case, title, way)
                for w in wheels.values():
                    w["acceleration"] = w["acceleration"] if given is None else given
                yield title, wheels, (way, num(case.get("speed", 0), "speed"))
        elif "contact_forces" in case:
            for c, load in case["contact_forces"].items():
                force, moment = nums(load.get("force", (0, 0, 0)), "force"), nums(load.get("moment", (0, 0, 0)), "moment")
                wheels[c] = wheel(car["turn"] @ force, state, given, car["turn"] @ moment)
            yield name, wheels, None
        else:
            f = nums(case["wheel_factors"])
            loaded = {c: wheel(static[c] * f * [1, -1 if c.endswith("left") else 1, 1], state, given) for c in CORNERS}
            for side in SIDES if case.get("one_side") else ():
                yield f"{name}, {side} wheel", {c: (loaded if c.endswith(side) else wheels)[c] for c in CORNERS}, None
            if not case.get("one_side"):
                yield name, loaded, None

# ---- from the contact force to the members
def wrench(point, force):
    """Force, and its moment about the origin in N.m: the two then have like size in the matrices."""
    return np.concatenate([force, np.cross(point, force) / 1000])

def upright_load(car, c, w):
    """What the wheel hands to the upright, as a wrench about the origin; the moment that it keeps back; the inertia."""
    corner = car["corners"][c]
    moment = np.cross(corner["contact"] - corner["centre"], w["force"]) + w["moment"]
    held = w["wheel"] == "braked" and car["outboard"][c.split("_")[0]] or w["wheel"] == "driven" and car["hub"]
    released = np.zeros(3) if held else corner["spin"] * (corner["spin"] @ moment)
    a = np.array([0, 0, -1.0]) if w["acceleration"] is None else w["acceleration"]        # no acceleration: no inertia at all
    inertia = corner["unsprung"] * G * (np.array([0, 0, -1.0]) - a)
    load = wrench(corner["centre"], w["force"] + inertia)
    load[3:] += (moment - released) / 1000
    return load, released, inertia

def span(ends):
    """Length of a line and its direction from the first end to the second."""
    length = np.linalg.norm(ends[1] - ends[0])
    return length, (ends[1] - ends[0]) / length

def corner_matrix(corner):
    """Equilibrium matrix, flexibilities and column names of a corner. Upright carrier: six two-force members. Wishbone
    carrier: twelve equations, thirteen reactions; each leg of the carrier hands its pick-up three components."""
    ends, carrier, zero, columns = corner["ends"], corner["carrier"], np.zeros(6), []
    for m in MEMBERS:
        t, (length, u) = corner["tubes"][m], span(ends[m])
        axial, across = length / t["E"] / t["A"], length**3 / 3 / t["E"] / t["I"]
        if m.startswith(carrier):
            e1, e2 = np.linalg.svd(u[None])[2][1:]
            columns += [(m, k, np.concatenate([zero, wrench(ends[m][1], d)])) for d, k in ((u, axial), (e1, across), (e2, across))]
        elif m == "rod" and carrier != "upright":
            columns.append((m, axial, np.concatenate([zero, wrench(ends[m][0], u)])))
        else:
            columns.append((m, axial, np.concatenate([wrench(ends[m][0], u), zero])))
    if carrier != "upright":
        joint = ends[carrier + "_front_leg"][0]
        columns += [("joint", 0.0, np.concatenate([wrench(joint, e), -wrench(joint, e)])) for e in np.eye(3)]
    names, flex, a = zip(*columns)
    return np.array(a).T[:6 if carrier == "upright" else 12], np.array(flex), names

def least_energy(a, flex, b):
    """The f with a f + b = 0 of least strain energy: a particular solution, then the null space of a by singular values."""
    _, s, vt = np.linalg.svd(a)
    if s[-1] < 1e-9 * s[0]:
        raise Refused("the corner is a mechanism")
    f, free = np.linalg.lstsq(a, -b, rcond=None)[0], vt[len(s):].T
    return f - free @ np.linalg.solve(free.T * flex @ free, free.T @ (flex * f)) if free.size else f

def solve_corner(corner, load):
    """Axial force and apex bending of each member, and its force on whatever holds its inner joint."""
    a, flex, names = corner_matrix(corner)
    b = np.concatenate([load, np.zeros(len(a) - 6)])
    f = np.linalg.solve(a, -b) if len(a) == 6 else least_energy(a, flex, b)
    axial, bending, inner = {}, {}, {}
    for m in MEMBERS:
        at, (length, u) = [i for i, n in enumerate(names) if n == m], span(corner["ends"][m])
        leg = len(at) == 3
        axial[m], bending[m] = f[at[0]], length * math.hypot(f[at[1]], f[at[2]]) if leg else 0.0
        inner[m] = -a[6:9, at] @ f[at] if leg else -axial[m] * u
    return dict(axial=axial, bending=bending, inner=inner, residual=np.abs(a @ f + b).max())

def torque(rocker, point, force):
    return rocker["axis"] @ np.cross(point - rocker["pivot"], force)

def pushed_up(car, c):
    """+1 or -1: the sense about the rocker axis of the rod's torque under a unit upward contact force, wheel rolling."""
    corner = car["corners"][c]
    rod = solve_corner(corner, upright_load(car, c, wheel([0, 0, 1]))[0])["inner"]["rod"]
    return math.copysign(1.0, torque(corner["rocker"], corner["ends"]["rod"][1], rod))

def third_springs(car, senses, tau):
    """The third spring of each axle as a force on each of its two rockers, in one line: where it is compressed by 1 N it
    holds the two wheels with torques p and q, so that of the heave part (l + r)/2 of the rods' torques l, r at the two, a
    share h is held on the mean if its force is S = h (l + r)/(p + q)."""
    out = {}
    for pair in ([f"{axle}_{side}" for side in SIDES] for axle in AXLES):
        rockers = [car["corners"][c]["rocker"] for c in pair]
        if all(r and r["third"] is not None for r in rockers):
            a, b = (r["third"] for r in rockers)
            push = (a - b) / np.linalg.norm(a - b)
            hold = [-senses[c] * torque(r, p, u) for c, r, p, u in zip(pair, rockers, (a, b), (push, -push))]
            force = np.linalg.solve([[1, 0, -hold[0]], [0, 1, -hold[1]], [0.5, 0.5, 0]],
                                    [0, 0, rockers[0]["heave"] * (tau[pair[0]] + tau[pair[1]]) / 2])[2]
            out.update({pair[0]: (force, a, force * push), pair[1]: (force, b, -force * push)})
    return out

def rocker_forces(rocker, sense, rod_point, rod, for_spring, for_roll, third):
    """Balance of one rocker. for_spring, for_roll: the shares of the rod's torque, positive for a wheel pushed up. third:
    force, point and vector of the third spring, or None."""
    n, tension, on_chassis, forces = rocker["axis"], {}, {}, [(rod_point, rod)]
    if third:
        forces.append(third[1:])
        for_spring += sense * torque(rocker, *third[1:])
    for line, share in (("spring", for_spring), ("anti_roll_link", for_roll)):
        if rocker[line]:
            (start, end), u = rocker[line], span(rocker[line])[1]
            tension[line] = -sense * share / torque(rocker, start, u)
            forces.append((start, tension[line] * u))
            on_chassis[line] = (end, -tension[line] * u)
    bar = np.zeros(3) if "spring" in tension else sense * for_spring * n                 # the torque on the chassis
    total = sum(f for _, f in forces)
    moment = sum(np.cross(p - rocker["pivot"], f) for p, f in forces) - bar
    arm = rocker["span"] / 2 * n                  # bearings f, g: f + g = -total; arm x (f - g) = -moment; (f - g).n = 0
    f_minus_g = np.linalg.lstsq(np.vstack([np.cross(arm, np.eye(3)).T, n]), np.append(-moment, 0), rcond=None)[0]
    bearings = [(-total + d) / 2 for d in (f_minus_g, -f_minus_g)]
    on_chassis["rocker"] = (rocker["pivot"], total)
    return dict(spring_force=-tension["spring"] if "spring" in tension else None, anti_roll_force=tension.get("anti_roll_link"),
                torsion_bar_torque=None if "spring" in tension else for_spring, pivot_force=-total, thrust=-total @ n, bar=bar,
                bearing_radial=[np.linalg.norm(r - n * (n @ r)) for r in bearings], on_chassis=on_chassis,
                bearings=[(rocker["pivot"] + d, -r) for d, r in zip((arm, -arm), bearings)])

def run_case(car, wheels, senses):
    """All four corners of one case, rockers joined across each axle by the anti-roll bar."""
    corners, tau = {}, {}
    for c, g in car["corners"].items():
        load, released, inertia = upright_load(car, c, wheels[c])
        corners[c] = dict(solve_corner(g, load), load=load, released=released, inertia=inertia)
        inner = {m: (g["ends"][m][1], f) for m, f in corners[c]["inner"].items()}
        if g["rocker"]:
            tau[c] = senses[c] * torque(g["rocker"], *inner.pop("rod"))
        corners[c]["on_chassis"] = inner
    thirds = third_springs(car, senses, tau)
    for c in tau:
        g, opposite = car["corners"][c], c.split("_")[0] + ("_right" if c.endswith("left") else "_left")
        roll = g["rocker"]["share"] * (tau[c] - tau[opposite]) / 2
        r = rocker_forces(g["rocker"], senses[c], g["ends"]["rod"][1], corners[c]["inner"]["rod"], tau[c] - roll, roll, thirds.get(c))
        corners[c]["rocker"] = dict(r, rod_torque=tau[c], third=thirds.get(c))
        corners[c]["on_chassis"].update(r["on_chassis"])
    return corners

def solve_car(car):
    """Every case as (name, wheels, corners, (acceleration, speed) of a manoeuvre or None)."""
    senses = {c: pushed_up(car, c) for c in CORNERS if car["corners"][c]["rocker"]}
    return [(name, wheels, run_case(car, wheels, senses), way) for name, wheels, way in load_cases(car)]

# ---- from the force to the reserve factor
def bisect(f, high):
    """Root between 0 and high of a rising function."""
    low = 0.0
    for _ in range(200):
        low, high = ((low + high) / 2, high) if f((low + high) / 2) < 0 else (low, (low + high) / 2)
    return (low + high) / 2

def euler(t, length):
    """Euler load between the ends that K stands for, N."""
    return math.pi**2 * t["E"] * t["I"] / (t["K"] * length)**2

def column_capacity(t, length):
    """Greatest compression of the column without design factor, N."""
    critical, squash = euler(t, length), t["A"] * t["Sy"]
    slender = math.sqrt(squash / critical)        # relative: 1 at Euler stress = yield
    if isinstance(t["column"], dict):             # Perry-Robertson: first yield of a half-sine bow
        bow = t["column"]["crookedness"] * t["od"] / 2 / t["I"]
        return bisect(lambda p: p / t["A"] + p * bow / (1 - p / critical) - t["Sy"], critical * (1 - 1e-15))
    if t["column"].startswith("EN 1993-1-1"):     # 6.3.1.2 (6.49)
        phi = 0.5 * (1 + IMPERFECTION[t["column"].split()[-1]] * (slender - 0.2) + slender**2)
        return squash * (1 if slender <= 0.2 else min(1, 1 / (phi + math.sqrt(phi**2 - slender**2))))
    return critical if slender > math.sqrt(2) else squash * (1 - slender**2 / 4)          # Euler above, Johnson below

def wall_stress(t):
    """Axial wall buckling stress, NASA SP-8007 (1968), capped by yield."""
    r = (t["od"] - t["wall"]) / 2
    gamma = 1 - 0.901 * (1 - math.exp(-math.sqrt(r / t["wall"]) / 16))
    return min(t["Sy"], gamma * t["E"] * t["wall"] / (r * math.sqrt(3 * (1 - t["nu"]**2))))

def bending_stress(t, length, axial, moment, multiplier=1.0):
    """|N|/A + M/Z, with M and the moment P·e0 of a stated crookedness amplified in compression, all loads times the multiplier; infinite from the Euler load on."""
    n, critical = multiplier * axial, euler(t, length)
    if isinstance(t["column"], dict):
        moment = moment + max(0, -axial) * t["column"]["crookedness"]
    if -n >= critical:
        return math.inf
    return abs(n) / t["A"] + multiplier * moment * t["od"] / 2 / t["I"] / (1 + min(n, 0) / critical)

def checks(t, length, axial, moment, factors):
    """Rows (check, demand, capacity, reserve factor); only where there is demand."""
    a, rows, sy = t["A"], [], t["Sy"] / factors["yield"]
    if axial > 0:
        rows = [("tension yield", axial, a * sy), ("tension ultimate", axial, a * t["Su"] / factors["ultimate"])]
    if axial < 0:
        rows = [("compression yield", -axial, a * sy), ("column", -axial, column_capacity(t, length) / factors["buckling"]),
                ("wall buckling", -axial, wall_stress(t) * a / factors["buckling"])]
    rows = [(*r, r[2] / r[1]) for r in rows]
    if moment > 0:
        demand, high = bending_stress(t, length, axial, moment), sy / (abs(axial) / a + moment * t["od"] / 2 / t["I"])
        factor = bisect(lambda x: bending_stress(t, length, axial, moment, x) - sy, high * (1 + 1e-12))
        rows.append(("bending yield", demand if math.isfinite(demand) else None, sy, factor))
    return rows

# ---- results
def report(car, solved):
    """The subset of the results format that this solution can stand for."""
    members, chassis, rockers = [], [], []
    for c, g in car["corners"].items():
        for m, t in g["tubes"].items():
            length, f = span(g["ends"][m])[0], [(name, r[c]["axial"][m], r[c]["bending"][m]) for name, _, r, _ in solved]
            rows = [(name, *row) for name, n, b in f for row in checks(t, length, n, b, car["factors"])]
            members.append(dict(corner=c, member=m, length=length, tube=[t["od"], t["wall"]], material=t["name"],
                                mass=t["A"] * length * t["rho"] * 1e-9, forces=[dict(case=k, axial=n, bending=b) for k, n, b in f],
                                checks=[dict(zip(("case", "check", "demand", "capacity", "reserve_factor"), row)) for row in rows]))
        order = [p for p in (*MEMBERS, "rocker", "spring", "anti_roll_link") if p in solved[0][2][c]["on_chassis"]]
        for p in order:
            chassis.append(dict(corner=c, point=p, forces=[dict(case=k, force=r[c]["on_chassis"][p][1]) for k, _, r, _ in solved]))
        keys = ("rod_torque", "spring_force", "torsion_bar_torque", "anti_roll_force", "pivot_force", "bearing_radial", "thrust")
        rows = [dict(case=k, **{key: r[c]["rocker"][key] for key in keys}) for k, _, r, _ in solved if g["rocker"]]
        for row, (_, _, r, _) in zip(rows, solved):
            row.update(third_spring_force=r[c]["rocker"]["third"][0]) if r[c]["rocker"]["third"] else None
        rockers += [dict(corner=c, forces=rows)] if rows else []
    cases = [dict(name=k, wheels={c: dict(
        force=w["force"], moment=w["moment"], wheel=w["wheel"], unsprung_acceleration=w["acceleration"],
        friction_needed=math.hypot(*w["force"][:2]) / w["force"][2] if w["force"][2] > 0 else None)
        for c, w in wheels.items()}) for k, wheels, _, _ in solved]
    return dict(format="sixlink-results/1", car=car["name"], revision=car["revision"], design_factors=car["factors"],
                cases=cases, members=members, rockers=rockers, chassis=chassis)

# ---- self-check
def corner_balance(car, c, w, result):
    """Contact + inertia against everything that reaches the chassis, six components about the origin, relative."""
    g, at_bearings = car["corners"][c], result["rocker"]["bearings"] if "rocker" in result else []
    into = wrench(g["contact"], w["force"]) + wrench(g["centre"], result["inertia"])
    into[3:] += (w["moment"] - result["released"]) / 1000
    if "rocker" in result and result["rocker"]["third"]:
        into += wrench(*result["rocker"]["third"][1:])
    out = sum(wrench(*v) for p, v in result["on_chassis"].items() if p != "rocker") + sum(wrench(*v) for v in at_bearings)
    out[3:] += result["rocker"]["bar"] / 1000 if at_bearings else 0
    return np.abs(into - out).max() / max(1.0, np.linalg.norm(w["force"]) + np.linalg.norm(result["inertia"]))

def car_balance(car, wheels, acc, v):
    """Contact forces, weight, inertia and air on the whole car, six components about the origin, relative to the weight."""
    q, contacts = 0.5 * car["rho"] * v * v, {c: g["contact"] for c, g in car["corners"].items()}
    total = sum(wrench(contacts[c], w["force"]) for c, w in wheels.items())
    total = total + wrench(car["cg"], -car["m"] * G * np.array([*acc, 1.0]))
    total = total + wrench(car["cg"] + [0, 0, car["h_drag"] - car["h"]], np.array([-q * car["drag"], 0, 0]))
    for axle, share in zip(AXLES, (car["aero_share"], 1 - car["aero_share"])):
        total = total + wrench(contacts[axle + "_left"] * [1, 0, 1], np.array([0, 0, -q * car["lift"] * share]))
    return np.abs(total).max() / (car["m"] * G)

def saddle_difference(corner, load):
    """Null-space answer against the 25 x 25 saddle-point system | C A'; A 0 |, relative."""
    a, flex, _ = corner_matrix(corner)
    b = np.concatenate([load, np.zeros(len(a) - 6)])
    k = np.block([[np.diag(flex / flex.max()), a.T], [a, np.zeros((len(a), len(a)))]])
    full = np.linalg.solve(k, np.concatenate([np.zeros(len(flex)), -b]))[:len(flex)]
    return np.abs(full - least_energy(a, flex, b)).max() / max(1.0, np.abs(full).max())

def six_rod_plate():
    """Plate of 576 lb on six rods, ft and lb: class problem "Plate Supported by 6 Rods", Auburn University ME 232 (1997),
    which gives the geometry; the whole-number forces are recomputed from it. Largest difference, relative."""
    feet, tops = [(0, 3), (-4, 3), (-4, -3), (0, -3), (4, -3), (4, 3)], [(7, 9), (-4, 3), (-7, -9), (4, -15), (12, -3), (7, 5)]
    ends = [(np.array([*p, 0.0]), np.array([*t, 6.0])) for p, t in zip(feet, tops)]
    a = np.array([wrench(e[0], span(e)[1]) for e in ends]).T
    return np.abs(np.linalg.solve(a, [0, 0, 576, 0, 0, 0]) - [319, -192, 648, -182, -110, 357]).max() / 576

def residuals(car):
    """Every balance of a car's cases, as (name, relative residual)."""
    for _, wheels, corners, way in solve_car(car):
        if way:
            yield "whole car", car_balance(car, wheels, *way)
        for c, r in corners.items():
            g = car["corners"][c]
            yield "corner to chassis", corner_balance(car, c, wheels[c], r)
            yield "joint equilibrium", r["residual"] / max(1.0, np.linalg.norm(r["load"]))
            if g["carrier"] != "upright":
                yield "saddle point", saddle_difference(g, r["load"])
            for m, t in g["tubes"].items():
                member = t, span(g["ends"][m])[0], r["axial"][m], r["bending"][m]
                for limit, factor in [row[2:] for row in checks(*member, car["factors"]) if row[0] == "bending yield"]:
                    yield "stress at multiplier", abs(bending_stress(*member, factor) / limit - 1)

def self_check(cars):
    worst = {"six-rod plate": six_rod_plate()}
    for key, value in (row for car in cars for row in residuals(car)):
        worst[key] = max(worst.get(key, 0.0), value if math.isfinite(value) else math.inf)
    print(*(f"{key:22s} {value:.2e}" for key, value in worst.items()), sep="\n")
    return 0 if max(worst.values()) <= 1e-9 else 1

def main(arguments):
    paths = [a for a in arguments if a != "--self-check"]
    try:
        cars = [load_car(p) for p in paths]
        if "--self-check" in arguments:
            return self_check(cars)
        results = [report(car, solve_car(car)) for car in cars]
    except Refused as fault:
        sys.exit(str(fault))
    print(json.dumps(results if len(results) != 1 else results[0], indent=1, allow_nan=False, default=lambda v: v.tolist()))

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
