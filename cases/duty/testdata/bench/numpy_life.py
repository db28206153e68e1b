"""The work of `sixlink life` on a log of accelerations, vectorised in numpy: rows of text to numbers, the equilibrium of the
whole car, member forces, rainflow cycles, damage of one weld per member end (EN 1993-1-9, category 71, two slopes and cut-off).

Run by run.sh; prints one JSON line. The car is the push-rod example: geometry is read from the car file. Bent legs are followed at 16
fibres, as the program does. Rainflow is done by passes that take out, all at once, the ranges that are no larger than both of their
neighbours: the four-point rule, which needs no loop over samples.
"""

import json
import sys
import time

import numpy as np
import yaml

G = 9.80665
LINKS = ["upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod"]
JOINTS = [("upper_wishbone", "outer", "front"), ("upper_wishbone", "outer", "rear"), ("lower_wishbone", "outer", "front"),
          ("lower_wishbone", "outer", "rear"), ("track_rod", "outer", "inner"), ("rod", "outer", "inner")]
FIBRES = 16


def gauges(car, axle, side):
    """Rows from (force at, moment about the wheel centre) to the stresses followed, MPa; and arm and spin axis."""
    a = car[axle]
    flip = np.array([1.0, 1.0 if side == 0 else -1.0, 1.0])
    centre, contact = (np.array(a["wheel"][k], float) * flip for k in ("centre", "contact"))
    outer = np.array([a[p][o] for p, o, _ in JOINTS], float) * flip
    inner = np.array([a[p][i] for p, _, i in JOINTS], float) * flip
    length = np.linalg.norm(inner - outer, axis=1)
    u = (inner - outer) / length[:, None]
    tube = np.array([a["members"][m]["tube"] for m in LINKS], float)
    od, wall = tube[:, 0], tube[:, 1]
    area, bore = np.pi * wall * (od - wall), od - 2 * wall
    inertia = np.pi * (od**4 - bore**4) / 64
    rows = []
    if a["rod"]["carried_by"] == "upright":
        m = np.vstack([u.T, np.cross(outer - centre, u).T])
        axial = -np.linalg.inv(m)
        rows = [axial[i] / area[i] for i in range(6)]
    else:
        e = 210000.0
        unknowns = [("axial", i) for i in range(6)] + [("shear", i, k) for i in (2, 3) for k in (0, 1)] + [("joint", k) for k in range(3)]
        across = {}
        for i in (2, 3):
            e1 = np.cross(u[2], u[3])  # square to the plane of the legs, wherever the wishbone stands
            e1 /= np.linalg.norm(e1)
            across[i] = (e1, np.cross(u[i], e1))
        eq, soft = np.zeros((12, len(unknowns))), np.zeros(len(unknowns))
        for j, x in enumerate(unknowns):
            if x[0] == "axial":
                i = x[1]
                at, d, soft[j] = (inner[i] if i in (2, 3) else outer[i]), u[i], length[i] / (e * area[i])
                body = 1 if i in (2, 3, 5) else 0
            elif x[0] == "shear":
                i = x[1]
                at, d, soft[j], body = inner[i], across[i][x[2]], length[i] ** 3 / (3 * e * inertia[i]), 1
            else:
                at, d, body = outer[2], np.eye(3)[x[1]], 0
            w = np.concatenate([d, np.cross(at - centre, d) / 300])
            eq[6 * body:6 * body + 6, j] += w
            if x[0] == "joint":
                eq[6:12, j] -= w
        n = len(unknowns)
        k = np.block([[np.diag(soft / soft.max()), eq.T], [eq, np.zeros((12, 12))]])
        rhs = np.zeros((n + 12, 6))
        rhs[n:n + 6] = -np.diag([1, 1, 1, 1 / 300, 1 / 300, 1 / 300])
        x = np.linalg.solve(k, rhs)[:n]
        for i in range(6):
            rows.append(x[i] / area[i])
        for s, i in enumerate((2, 3)):
            modulus = 2 * inertia[i] / od[i]
            b1, b2 = x[6 + 2 * s] * length[i] / modulus, x[7 + 2 * s] * length[i] / modulus
            for f in range(FIBRES):
                phi = 2 * np.pi * f / FIBRES
                rows.append(x[i] / area[i] + (np.cos(phi) * b1 + np.sin(phi) * b2) / np.cos(np.pi / FIBRES))  # no direction falls short
    return np.array(rows), contact - centre, np.array([0.0, 1.0, 0.0])


def contact_forces(car, ax, ay, v):
    """Contact forces of the four wheels, (4, 3, n): rigid car, steady state, one inner wheel may lift."""
    k, aero = car["vehicle"], car["vehicle"]["aero"]
    m, lw, h, share = k["mass"], k["wheelbase"], k["cg_height"], k["front_weight_share"]
    q = aero["air_density"] * v * v / 2
    down, drag = q * aero["lift_area"], q * aero["drag_area"]
    pitch = (m * G * ax * h + drag * aero.get("drag_height", h)) / lw
    zf = m * G * share + down * aero["front_share"] - pitch
    z = [zf, m * G + down - zf]
    track = [2 * car[a]["wheel"]["contact"][1] for a in ("front", "rear")]
    couple, roll = m * G * ay * h, k["front_roll_couple_share"]
    want = [roll * couple / track[0], (1 - roll) * couple / track[1]]
    move = [np.clip(want[i], -z[i] / 2, z[i] / 2) for i in (0, 1)]
    over = [want[i] - move[i] for i in (0, 1)]
    move = [move[0] + over[1] * track[1] / track[0], move[1] + over[0] * track[0] / track[1]]
    x = m * G * ax + drag
    brake = x < 0
    xf = np.where(brake, k["brakes"]["front_share"], k["drive"]["front_share"]) * x
    xs = [xf, x - xf]
    force = np.zeros((4, 3, ax.size))
    for c in range(4):
        a, s = c // 2, 1 - 2 * (c % 2)
        force[c, 2] = z[a] / 2 - s * move[a]
        force[c, 0] = xs[a] * force[c, 2] / z[a]
    yaw = -sum((1 - 2 * (c % 2)) * track[c // 2] / 2 * force[c, 0] for c in range(4))
    yf = share * m * G * ay - yaw / lw
    ys = [yf, m * G * ay - yf]
    for c in range(4):
        force[c, 1] = ys[c // 2] * force[c, 2] / z[c // 2]
    return force, [(~brake) | (xs[a] == 0) for a in (0, 1)]  # released: driven by shafts, or rolling


def reversals(x):
    d = np.diff(x)
    x = np.concatenate([x[:1], x[1:][d != 0]])
    d = np.sign(np.diff(x))
    return np.concatenate([x[:1], x[1:-1][d[1:] != d[:-1]], x[-1:]]) if x.size > 2 else x


def cycles(x):
    """Ranges closed by the four-point rule, and the residue."""
    x, out = reversals(x), []
    while x.size >= 4:
        r = np.abs(np.diff(x))
        inner = np.flatnonzero((r[1:-1] <= r[:-2]) & (r[1:-1] <= r[2:])) + 1
        if inner.size == 0:
            break
        keep = np.concatenate([[True], np.diff(inner) > 2])  # not two that share a point
        if not keep.all():  # of a run, every other one
            keep = np.ones(inner.size, bool)
            last = -3
            gap = np.diff(inner, prepend=-9)
            run = np.cumsum(gap > 1)
            first = np.concatenate([[0], np.flatnonzero(np.diff(run)) + 1])
            keep = (np.arange(inner.size) - first[run - 1]) % 2 == 0
        inner = inner[keep]
        out.append(r[inner])
        gone = np.ones(x.size, bool)
        gone[inner] = gone[inner + 1] = False
        x = x[gone]
        x = reversals(x)
    return (np.concatenate(out) if out else np.zeros(0)), x


def damage(r):
    c = 71 / 1.35
    knee = (2 / 5) ** (1 / 3) * c
    cut = (5 / 100) ** 0.2 * knee
    r = r[r >= cut]
    return np.where(r >= knee, (r / c) ** 3 / 2e6, (r / knee) ** 5 / 5e6).sum()


def main():
    car, name, chunk = yaml.safe_load(open(sys.argv[1])), sys.argv[2], int(sys.argv[3])
    solved = [gauges(car, ("front", "rear")[c // 2], c % 2) for c in range(4)]
    unsprung = [car["front"]["unsprung_mass"], car["rear"]["unsprung_mass"]]
    wall, cpu = time.perf_counter(), time.process_time()
    total, rows = None, 0
    residues = [[np.zeros(0)] * len(s[0]) for s in solved]
    parts = dict(parse=0.0, forces=0.0, count=0.0)
    with open(name, "rb") as f:
        f.readline()
        while True:
            t = time.process_time()
            text = f.read(chunk)
            if not text:
                break
            text += f.readline()
            data = np.fromstring(text.replace(b"\n", b",").rstrip(b","), sep=",").reshape(-1, 4)
            rows += len(data)
            parts["parse"] += time.process_time() - t
            t = time.process_time()
            ax, ay, v = data[:, 1], data[:, 2], data[:, 3]
            force, released = contact_forces(car, ax, ay, v)
            signals = []
            for c, (a, arm, spin) in enumerate(solved):
                moment = np.cross(arm[:, None], force[c], axis=0)
                moment[1] -= np.where(released[c // 2], moment[1], 0)
                inertia = unsprung[c // 2] * G * np.array([-ax, -ay, -np.ones_like(ax)])
                signals.append(a @ np.vstack([force[c] + inertia, moment]))
            parts["forces"] += time.process_time() - t
            t = time.process_time()
            if total is None:
                total = [np.zeros(len(s[0])) for s in solved]
            for c, s in enumerate(signals):
                for g in range(len(s)):
                    closed, residues[c][g] = cycles(np.concatenate([residues[c][g], s[g]]))
                    total[c][g] += damage(closed)
            parts["count"] += time.process_time() - t
    for c in range(4):
        for g in range(len(total[c])):  # run again and again: the residue after itself
            r = residues[c][g]
            closed, _ = cycles(np.concatenate([r, r]))
            total[c][g] += damage(closed)
    wall, cpu = time.perf_counter() - wall, time.process_time() - cpu
    print(json.dumps(dict(rows=rows, wall=wall, cpu=cpu, per_minute=rows / wall * 60, parts=parts, damage=[[float(x) for x in d] for d in total])))


main()
