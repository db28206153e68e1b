"""Displacement of an upright by a stiffness matrix with explicit bodies and nodes.

A second origin of the compliance of a corner: K u = f is assembled from springs between
points of bodies (upright, a wishbone that carries the rod, rocker) and nodes (pick-ups of
the chassis), rigid connections are Lagrange multipliers, and each of six loads is solved
by itself. Nothing here makes the result symmetric.

Reads corners from standard input, writes a 6x6 matrix for each (numpy, no other module).
"""
import json
import sys

import numpy as np

S = 300.0  # mm: turns times this weigh as shifts
MOST = 60  # unknowns


class Structure:
    def __init__(self):
        self.n, self.springs, self.rigid = 0, [], []

    def body(self, at):
        self.n += 6
        return ("body", self.n - 6, np.array(at, float))

    def node(self):
        self.n += 3
        return ("node", self.n - 3, None)

    def rows(self, owner, at):
        """The three displacements of a point, as rows over all unknowns."""
        out = np.zeros((3, MOST))
        if owner is None:
            return out
        kind, first, origin = owner
        out[:, first:first + 3] = np.eye(3)
        if kind == "body":
            x, y, z = np.array(at) - origin
            out[:, first + 3:first + 6] = np.array([[0, z, -y], [-z, 0, x], [y, -x, 0]]) / S
        return out

    def spring(self, row, k):
        """k None or 0: rigid."""
        if k:
            self.springs.append((row, k))
        else:
            self.rigid.append(row)

    def solve(self, load):
        k = np.zeros((self.n, self.n))
        for row, s in self.springs:
            r = row[:self.n]
            k += s * np.outer(r, r)
        big = np.abs(k).max()
        g = np.array([r[:self.n] for r in self.rigid]).reshape(-1, self.n)
        m = len(g)
        a = np.block([[k / big, g.T], [g, np.zeros((m, m))]])
        f = np.concatenate([load / big, np.zeros(m)])
        u = np.linalg.solve(a, f)
        return u[:self.n]


def basis(d):
    """Three unit vectors, the first along d."""
    q, _ = np.linalg.qr(np.column_stack([d, np.eye(3)[np.argmin(np.abs(d))], np.ones(3) + np.arange(3) * 0.3]))
    return d, q[:, 1], q[:, 2]


def corner(c):
    s = Structure()
    links = c["links"]
    upright = s.body(c["centre"])
    legs = {"upright": (), "upper_wishbone": (0, 1), "lower_wishbone": (2, 3)}[c["carrier"]]
    wishbone = None
    if legs:
        joint = links[legs[0]]["outer"]
        wishbone = s.body(joint)
        for row in s.rows(upright, joint) - s.rows(wishbone, joint):
            s.spring(row, 0)
    rocker = s.body(c["rocker"]["pivot"]) if c["rocker"] else None

    def pick_up(k):
        if not any(k):
            return None
        node = s.node()
        for row, kk in zip(s.rows(node, None), k):
            s.spring(row, kk)
        return node

    for i, link in enumerate(links):
        outer, inner = np.array(link["outer"]), np.array(link["inner"])
        length = np.linalg.norm(inner - outer)
        d = (inner - outer) / length
        owner = wishbone if legs and i == 5 else upright
        holder = rocker if i == 5 and rocker else pick_up(link["pick_up"])
        if i in legs:
            gap = s.rows(holder, inner) - s.rows(wishbone, inner)
            for e, k in zip(basis(d), (link["ea"] / length, 3 * link["ei"] / length**3, 3 * link["ei"] / length**3)):
                s.spring(e @ gap, k)
            continue
        gap = s.rows(holder, inner) - s.rows(owner, outer)
        s.spring(d @ gap, link["ea"] / length)
    if rocker:
        rk = c["rocker"]
        pivot, axis = np.array(rk["pivot"]), np.array(rk["axis"])
        axis = axis / np.linalg.norm(axis)
        _, e1, e2 = basis(axis)
        for sign in (1, -1):
            at = pivot + sign * rk["span"] / 2 * axis
            for e in (e1, e2):
                s.spring(e @ s.rows(rocker, at), rk["bearing"])
        s.spring(axis @ s.rows(rocker, pivot), rk["thrust"])
        if rk["spring"]:
            on, far = np.array(rk["spring"][0]), np.array(rk["spring"][1])
            d = (far - on) / np.linalg.norm(far - on)
            s.spring(d @ (s.rows(pick_up(rk["spring_pick_up"]), far) - s.rows(rocker, on)), rk["stiffness"])
        else:
            row = np.zeros(MOST)
            row[rocker[1] + 3:rocker[1] + 6] = axis / S
            s.spring(row, rk["stiffness"])
    out = np.zeros((6, 6))
    for j in range(6):
        load = np.zeros(s.n)
        load[upright[1] + j] = 1 if j < 3 else 1 / S
        u = s.solve(load)[upright[1]:upright[1] + 6]
        u[3:] /= S
        out[:, j] = u
    return out.tolist()


json.dump([corner(c) for c in json.load(sys.stdin)], sys.stdout)
