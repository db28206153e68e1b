#!/usr/bin/python3
"""The envelope of many variants of a car in vectorised numpy: what the engine of cases/variants is measured against.

    numpy_variants.py CAR.yaml --time N [--chunk C] [--shortcuts]   seconds for N variants, as JSON
    numpy_variants.py CAR.yaml --check NAMES [--shortcuts]          rows of numbers in, envelopes out, both raw float64; NAMES: of checks

The work is that of the engine's benchmark: every hardpoint, tube, strength and load of the car moved a little, then geometry, contact
forces of all cases, member forces at four corners, all checks of round tubes, and what governs. It leaves out what the engine does
besides: the condition of the equations, the rocker's levers, refusals. Variants are arrays' first axis; a chunk of them fits the cache;
the solves are batched (LAPACK), all cases of a corner as right-hand sides; capacities are worked out once for a member, and every check is
made in every case. With --shortcuts it also knows what the engine knows: the right-hand side of the car is solved with the left-hand
matrices and mirrored loads, and what is linear in the load is judged at its extremes alone. N, mm, MPa, kg.

A calculation aid for tests. A failure of a suspension member can kill: have loads, parts and results reviewed and signed off
by a qualified structural engineer, follow the series' regulations and local law, and prove parts by test and inspection.
"""
import argparse
import json
import os
import sys
import time

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "../../../testdata/numpy"))
import reference as ref

G, SIZE, MM, REL = ref.G, 400, 2.0, 0.03
CHECKS = ["tension yield", "tension ultimate", "compression yield", "column", "wall buckling",
          "bending yield", "bending ultimate", "beam column", "wall buckling in bending"]
SIGN = np.array([1.0, -1.0])                                   # left, right
MIRROR = np.array([[1.0, 1, 1], [1.0, -1, 1]])                 # of a force
MIRROR_MOMENT = np.array([[1.0, 1, 1], [-1.0, 1, -1]])
OUTER = [0, 0, 1, 1, 2, 3]                                     # of each link: legs share theirs


def dot(a, b):
    return np.einsum("...i,...i->...", a, b)


def cross(a, b):
    """np.cross, without its overhead."""
    out = np.empty(np.broadcast_shapes(a.shape, b.shape))
    for i, j, k in ((0, 1, 2), (1, 2, 0), (2, 0, 1)):
        out[..., i] = a[..., j] * b[..., k] - a[..., k] * b[..., j]
    return out


class Car:
    """The numbers of a car as arrays: axles first, then links."""

    def __init__(self, path):
        car = self.raw = ref.load_car(path)
        left = [car["corners"][a + "_left"] for a in ref.AXLES]
        self.inner = np.array([[c["ends"][m][1] for m in ref.MEMBERS] for c in left])
        outer = np.array([[c["ends"][m][0] for m in ref.MEMBERS] for c in left])
        self.outer = outer[:, [0, 2, 4, 5]]
        self.centre, self.contact = (np.array([c[k] for c in left]) for k in ("centre", "contact"))
        self.spin = np.array([c["spin"] for c in left])
        self.unsprung = np.array([c["unsprung"] for c in left])
        self.od, self.wall, self.E, self.Sy, self.Su, self.nu, self.rho, self.K = (
            np.array([[c["tubes"][m][k] for m in ref.MEMBERS] for c in left]) for k in ("od", "wall", "E", "Sy", "Su", "nu", "rho", "K"))
        self.carrier = [c["carrier"] for c in left]
        self.rocker = [(1 + 2 * bool(r["spring"]) + 2 * bool(r["anti_roll_link"])) if r else 0 for r in (c["rocker"] for c in left)]
        self.cases()

    def cases(self):
        """Cases as stated, and those into which they unfold: index and sign of the lateral acceleration."""
        raw = self.raw["cases"]
        self.factors = np.array([ref.nums(c.get("wheel_factors", [0, 0, 0])) for c in raw])
        self.acceleration = np.array([ref.nums(c.get("acceleration", [0, 0])) for c in raw])
        self.speed = np.array([ref.num(c.get("speed", 0), "speed") for c in raw])
        unfolded = [(i, w) for i, c in enumerate(raw) for w in ((1, -1) if c.get("both_ways") else (0,))]
        self.index, self.way = (np.array(v) for v in zip(*unfolded))
        manoeuvre = np.array(["acceleration" in c for c in raw])
        self.manoeuvre = manoeuvre[self.index]
        self.stated = [raw[i].get("wheel") for i in self.index]
        given = [raw[i].get("unsprung_acceleration") for i in self.index]
        self.moves = self.manoeuvre | np.array([g is not None for g in given])
        self.given = np.array([g is not None for g in given])
        self.given_acceleration = np.array([ref.nums(g, "acceleration") if g else np.zeros(3) for g in given])


class Draws:
    """Hands out the columns of x in the order in which the benchmark's scatter takes them."""

    def __init__(self, x):
        self.x, self.at = x, 0

    def take(self, n=1):
        self.at += n
        return self.x[:, self.at - n:self.at]

    def number(self, v):
        v = np.ravel(v)
        return v * (1 + REL * self.take(v.size))


def vary(car, x):
    """The numbers of each variant."""
    d, n, raw, v = Draws(x), len(x), car.raw, {}
    body = d.number([raw[k] for k in ("m", "h", "L", "share", "roll_share", "lift", "drag")])
    v.update(zip(("m", "h", "L", "share", "roll_share", "lift", "drag"), body.T))
    inner, outer = np.empty((n, 2, 6, 3)), np.empty((n, 2, 4, 3))
    od, wall, E, Sy, Su = np.empty((5, n, 2, 6))
    centre, contact, unsprung = np.empty((n, 2, 3)), np.empty((n, 2, 3)), np.empty((n, 2))
    contact[:] = car.contact
    for a in range(2):
        unsprung[:, a] = d.number(car.unsprung[a])[:, 0]
        centre[:, a] = car.centre[a] + MM * d.take(3)
        contact[:, a, 1] = d.number(car.contact[a, 1])[:, 0]
        for j in range(6):
            inner[:, a, j] = car.inner[a, j] + MM * d.take(3)
            if j not in (1, 3):
                outer[:, a, OUTER[j]] = car.outer[a, OUTER[j]] + MM * d.take(3)
            part = d.number([car.Sy[a, j], car.Su[a, j], car.E[a, j], car.od[a, j], car.wall[a, j]])
            Sy[:, a, j], Su[:, a, j], E[:, a, j], od[:, a, j], wall[:, a, j] = part.T
        d.take(3 * car.rocker[a])
    stated = np.concatenate([car.factors, car.acceleration, car.speed[:, None]], axis=1)
    stated = d.number(stated).reshape(n, len(stated), 6)[:, car.index]
    ay = np.where(car.way, car.way * np.abs(stated[..., 4]), stated[..., 4])
    return dict(v, inner=inner, outer=outer[:, :, OUTER], od=od, wall=wall, E=E, Sy=Sy, Su=Su, centre=centre, contact=contact,
                unsprung=unsprung, factors=stated[..., :3], ax=stated[..., 3], ay=ay, speed=stated[..., 5])


def contact_forces(car, v):
    """Forces (n, case, axle, side, 3), the acceleration of the unsprung mass (n, case, 3) and whether wheels are braked (n, case)."""
    col = {k: v[k][:, None] for k in ("m", "h", "L", "share", "roll_share", "lift", "drag")}
    raw, man = car.raw, car.manoeuvre
    weight = v["m"] * G
    static = np.stack([weight * v["share"] / 2, weight * (1 - v["share"]) / 2], axis=1)
    force = np.empty((len(weight), len(man), 2, 2, 3))
    f, ax, ay, speed = v["factors"][:, ~man], v["ax"][:, man], v["ay"][:, man], v["speed"][:, man]
    w = static[:, None, :, None]
    still, moving = np.empty((*f.shape[:2], 2, 2, 3)), np.empty((*ax.shape, 2, 2, 3))
    still[..., 0] = w * f[..., 0, None, None]
    still[..., 1] = -w * f[..., 1, None, None] * SIGN
    still[..., 2] = w * f[..., 2, None, None]
    q = 0.5 * raw["rho"] * speed**2
    drag, down, mg = q * col["drag"], q * col["lift"], col["m"] * G
    front = mg * col["share"] + down * raw["aero_share"] - (mg * ax * col["h"] + drag * raw["h_drag"]) / col["L"]
    axle = np.stack([front, mg + down - front], axis=-1)
    track = 2 * v["contact"][:, None, :, 1]
    couple = mg * ay * col["h"]
    shares = np.stack([col["roll_share"], 1 - col["roll_share"]], axis=-1)
    limit = axle * track / 2
    own = np.clip(shares * couple[..., None], -limit, limit)
    own = np.clip(own + (couple - own.sum(-1))[..., None], -limit, limit)    # what one axle cannot take the other does
    fz = axle[..., None] / 2 - SIGN * (own / track)[..., None]
    part = fz / axle[..., None]
    total = mg * ax + drag
    held = np.array([s == "braked" for s in car.stated])[man]
    braked = (total < 0) | held
    share = np.where(braked, raw["brake_share"], raw["drive_share"])
    fx = (np.stack([share, 1 - share], axis=-1) * total[..., None])[..., None] * part
    yaw = -(fx * SIGN * track[..., None] / 2).sum((-1, -2))
    lateral = mg * ay
    yf = col["share"] * lateral - yaw / col["L"]
    fy = np.stack([yf, lateral - yf], axis=-1)[..., None] * part
    moving[..., 0], moving[..., 1], moving[..., 2] = fx, fy, fz
    force[:, ~man], force[:, man] = still, moving
    acceleration = np.where(car.given[:, None], car.given_acceleration, np.stack([v["ax"], v["ay"], np.zeros_like(v["ax"])], axis=-1))
    return force, acceleration, (braked, total)


def upright_loads(car, v, force, acceleration, braking):
    """Force and moment about the wheel centre of each upright, mirrored to the left: (n, axle, case · side, 6)."""
    n, cases = force.shape[:2]
    moment = cross((v["contact"] - v["centre"])[:, None, :, None] * MIRROR, force)
    braked, total = braking
    held = np.zeros((n, cases, 2), bool)
    for a, name in enumerate(ref.AXLES):
        share = np.where(braked, car.raw["brake_share"] if a == 0 else 1 - car.raw["brake_share"],
                         car.raw["drive_share"] if a == 0 else 1 - car.raw["drive_share"])
        held[:, car.manoeuvre, a] = (share * total != 0) & np.where(braked, car.raw["outboard"][name], car.raw["hub"])
        for k, s in enumerate(car.stated):
            if s:
                held[:, k, a] = s == "braked" and car.raw["outboard"][name] or s == "driven" and car.raw["hub"]
    spin = car.spin[:, None] * MIRROR
    released = np.where(held[..., None, None], 0, dot(spin, moment)[..., None] * spin)
    own = np.where(car.moves[:, None], np.array([0, 0, -1.0]) - acceleration, 0)
    inertia = (v["unsprung"] * G)[:, None, :, None, None] * own[:, :, None, None, :]
    load = np.concatenate([(force + inertia) * MIRROR, (moment - released) * MIRROR_MOMENT], axis=-1)
    return load.transpose(0, 2, 1, 3, 4).reshape(n, 2, 2 * cases, 6)


def sections(car, v, length):
    """What the tubes carry, each once for a member: (n, axle, link)."""
    f, od, t = car.raw["factors"], v["od"], v["wall"]
    A = np.pi * t * (od - t)
    r2 = (od**2 + (od - 2 * t)**2) / 16
    I = A * r2
    kl = car.K * length
    euler, squash = np.pi**2 * v["E"] * I / kl**2, A * v["Sy"]
    column = np.where(squash > 2 * euler, euler, squash * (1 - squash / (4 * euler))) / f["buckling"]
    R = (od - t) / 2
    loss = 1 - np.exp(-np.sqrt(R / t) / 16)
    perfect = v["E"] * t / (R * np.sqrt(3 * (1 - car.nu**2)))
    axial, bent = (1 - 0.901 * loss) * perfect, (1 - 0.731 * loss) * perfect
    sy = v["Sy"] / f["yield"]
    return dict(A=A, I=I, Z=2 * I / od, euler=euler, column=column, sy=sy, su=v["Su"] / f["ultimate"],
                tension=np.stack([squash / f["yield"], A * v["Su"] / f["ultimate"]]),
                compression=np.stack([squash / f["yield"], column, np.minimum(axial, v["Sy"]) * A / f["buckling"]]),
                wall=np.minimum(axial / f["buckling"], sy), wall_bent=np.minimum(bent / f["buckling"], sy),
                mass=car.rho * 1e-9 * A * length)


def solve_upright(outer, u, centre, load):
    """Axial forces (n, load, 6) of an upright on six links."""
    a = np.empty((len(u), 6, 6))
    a[:, :3] = u.transpose(0, 2, 1)
    a[:, 3:] = cross(outer - centre[:, None], u).transpose(0, 2, 1) / 300
    b = load * np.array([-1, -1, -1, -1 / 300, -1 / 300, -1 / 300])
    return np.linalg.solve(a, b.transpose(0, 2, 1)).transpose(0, 2, 1)


def solve_wishbone(legs, outer, inner, u, length, ea, ei, centre, load):
    """Axial forces (n, load, 6) and forces across the legs' tips (n, load, 2): twelve equations and that of least energy."""
    n, a = len(u), np.zeros((len(u), 13, 13))
    rest = [j for j in range(5) if j not in legs]

    def put(col, body, at, direction):
        a[:, 6 * body:6 * body + 3, col] = direction
        a[:, 6 * body + 3:6 * body + 6, col] = cross(at - centre, direction) / 300
    for col, j in enumerate(rest):
        put(col, 0, outer[:, j], u[:, j])
    joint, eye = outer[:, legs[0]], np.eye(3)
    for k in range(3):
        put(3 + k, 0, joint, np.broadcast_to(eye[k], (n, 3)))
        a[:, 6:12, 3 + k] = -a[:, :6, 3 + k]
        for i, j in enumerate(legs):
            put(6 + 3 * i + k, 1, inner[:, j], np.broadcast_to(eye[k], (n, 3)))
    put(12, 1, outer[:, 5], u[:, 5])
    line = inner[:, legs[1]] - inner[:, legs[0]]
    line /= np.sqrt(dot(line, line))[:, None]
    scale = None
    for i, j in enumerate(legs):                               # the self-stress does no work: line . C . F, of front less rear
        soft, stiff = length[:, j]**3 / (3 * ei[:, j]), length[:, j] / ea[:, j]
        scale = soft if scale is None else scale
        row = soft[:, None] * line + ((stiff - soft) * dot(u[:, j], line))[:, None] * u[:, j]
        a[:, 12, 6 + 3 * i:9 + 3 * i] = (row if i == 0 else -row) / scale[:, None]
    b = np.zeros((n, 13, load.shape[1]))
    b[:, :6] = (load * np.array([-1, -1, -1, -1 / 300, -1 / 300, -1 / 300])).transpose(0, 2, 1)
    f = np.linalg.solve(a, b).transpose(0, 2, 1)
    axial, shear = np.empty((n, load.shape[1], 6)), np.empty((n, load.shape[1], 2))
    axial[..., rest], axial[..., 5] = f[..., :3], f[..., 12]
    for i, j in enumerate(legs):
        tip = f[..., 6 + 3 * i:9 + 3 * i]
        along = dot(tip, u[:, None, j])
        axial[..., j] = along
        across = tip - along[..., None] * u[:, None, j]
        shear[..., i] = np.sqrt(dot(across, across))
    return axial, shear


def multiplier(n, m, a, c):
    return 2 * c / (n + m + c * a + np.sqrt((n + m - c * a)**2 + 4 * m * a * c))


def evaluate(car, x, shortcuts):
    """Envelope of each variant: tension, compression, reserve factor, check, case, mass, each (n, corner · link)."""
    v = vary(car, x)
    n = len(x)
    along = v["inner"] - v["outer"]
    length = np.sqrt(dot(along, along))
    u = along / length[..., None]
    s = sections(car, v, length)
    force, acceleration, braking = contact_forces(car, v)
    load = upright_loads(car, v, force, acceleration, braking)
    cases = force.shape[1]
    out = {k: np.empty((n, 2, 2, 6)) for k in ("tension", "compression", "reserve", "check", "case")}
    for a in range(2):
        legs = {"upright": (), "upper": (0, 1), "lower": (2, 3)}[car.carrier[a]]
        numbers = length[:, a], v["E"][:, a] * s["A"][:, a], v["E"][:, a] * s["I"][:, a]
        points = v["outer"][:, a], v["inner"][:, a], u[:, a], v["centre"][:, a]
        if shortcuts:
            axial, shear = solve(legs, points, numbers, load[:, a])
            axial, shear = axial.reshape(n, cases, 2, 6), shear.reshape(n, cases, 2, -1)
        else:
            each = load[:, a].reshape(n, cases, 2, 6)
            left = solve(legs, points, numbers, each[:, :, 0])
            right = solve(legs, [p * MIRROR[1] for p in points], numbers, each[:, :, 1] * np.concatenate([MIRROR[1], MIRROR_MOMENT[1]]))
            axial, shear = (np.stack(pair, axis=2) for pair in zip(left, right))
        axial = np.where(np.abs(axial) < 1e-13 * np.abs(axial).max(), 0, axial)
        (judge if shortcuts else judge_all)(out, a, axial, {k: w[..., a, :] for k, w in s.items()})
        for i, j in enumerate(legs):
            moment = shear[..., i] * length[:, a, j][:, None, None]
            judge_leg(out, a, j, axial[..., j], moment, {k: w[..., a, j] for k, w in s.items()}, car.raw["factors"]["buckling"])
    out = {k: w.reshape(n, 24) for k, w in out.items()}
    out["mass"] = np.repeat(s["mass"], 2, axis=1).reshape(n, 24)
    return out


def solve(legs, points, numbers, load):
    """Axial forces (n, load, 6) and forces across the legs of a carrying wishbone (n, load, 2 or 0)."""
    outer, inner, u, centre = points
    if not legs:
        axial = solve_upright(outer, u, centre, load)
        return axial, np.empty((*axial.shape[:2], 0))
    return solve_wishbone(legs, outer, inner, u, *numbers, centre, load)


def judge_all(out, a, axial, s):
    """The checks in proportion to the axial force, each in every case."""
    tension, compression = np.maximum(axial, 0), np.maximum(-axial, 0)
    out["tension"][:, a], out["compression"][:, a] = tension.max(axis=1), compression.max(axis=1)
    with np.errstate(divide="ignore"):
        rf = np.concatenate([s["tension"][:, :, None, None] / tension, s["compression"][:, :, None, None] / compression])
    rf = np.moveaxis(rf, 0, 1).reshape(len(axial), -1, 2, 6)
    at = rf.argmin(axis=1)
    out["reserve"][:, a] = np.take_along_axis(rf, at[:, None], axis=1)[:, 0]
    out["check"][:, a], out["case"][:, a] = np.divmod(at, axial.shape[1])


def judge(out, a, axial, s):
    """The checks in proportion to the axial force, at its extremes."""
    most, least = axial.max(axis=1), axial.min(axis=1)
    at = np.stack([axial.argmax(axis=1), axial.argmin(axis=1)])
    rt, rc = s["tension"].argmin(axis=0), s["compression"].argmin(axis=0)
    with np.errstate(divide="ignore"):
        t = np.where(most > 0, s["tension"].min(axis=0)[:, None] / most, np.inf)
        c = np.where(least < 0, s["compression"].min(axis=0)[:, None] / -least, np.inf)
    compressed = c < t
    out["tension"][:, a], out["compression"][:, a] = np.maximum(most, 0), np.maximum(-least, 0)
    out["reserve"][:, a] = np.where(compressed, c, t)
    out["check"][:, a] = np.where(compressed, 2 + rc[:, None], rt[:, None])
    out["case"][:, a] = np.where(compressed, at[1], at[0])


def judge_leg(out, a, j, axial, moment, s, fb):
    """The checks with bending of a leg of a carrying wishbone, in every case: (n, case, side)."""
    s = {k: w[..., None, None] for k, w in s.items() if w.ndim == 1}
    p = np.maximum(-axial, 0)
    stress, bent, share = np.abs(axial) / s["A"], moment / s["Z"], p / s["euler"]
    rf = np.stack([multiplier(stress, bent, share, s["sy"]), multiplier(stress, bent, share, s["su"]),
                   np.where(p > 0, multiplier(p / s["column"], bent / s["sy"], fb * share, 1), np.inf),
                   multiplier(p / s["A"] / s["wall"], bent / s["wall_bent"], share, 1)], axis=1)
    rf = np.where((moment > 0)[:, None], rf, np.inf).reshape(len(axial), -1, axial.shape[-1])
    at = rf.argmin(axis=1)
    least = np.take_along_axis(rf, at[:, None], axis=1)[:, 0]
    lower = least < out["reserve"][:, a, :, j]
    check, case = np.divmod(at, axial.shape[1])
    for key, value in (("reserve", least), ("check", 5 + check), ("case", case)):
        out[key][:, a, :, j] = np.where(lower, value, out[key][:, a, :, j])


def main():
    p = argparse.ArgumentParser()
    p.add_argument("car")
    p.add_argument("--time", type=int)
    p.add_argument("--chunk", type=int, default=500)
    p.add_argument("--check")
    p.add_argument("--shortcuts", action="store_true")
    args = p.parse_args()
    car = Car(args.car)
    if args.check:
        names = args.check.split(",")
        x = np.frombuffer(sys.stdin.buffer.read()).reshape(-1, SIZE)
        e = evaluate(car, x, args.shortcuts)
        e["check"] = np.array([names.index(c) for c in CHECKS])[e["check"].astype(int)]
        keys = ("tension", "compression", "reserve", "check", "case", "mass")
        sys.stdout.buffer.write(np.stack([e[k] for k in keys], axis=1).astype(float).tobytes())
        return
    x = np.random.default_rng(1).uniform(-1, 1, (args.chunk, SIZE))
    evaluate(car, x, args.shortcuts)                           # once to warm up
    start, cpu, least = time.perf_counter(), time.process_time(), np.inf
    for _ in range(max(1, args.time // args.chunk)):
        least = min(least, evaluate(car, x, args.shortcuts)["reserve"].min())
    seconds, cpu = time.perf_counter() - start, time.process_time() - cpu
    done = max(1, args.time // args.chunk) * args.chunk
    print(json.dumps(dict(variants=done, seconds=seconds, per_second=done / seconds, cpu_ns=1e9 * cpu / done, least=least)))


main()
