#!/usr/bin/env python3
"""Second origin of the laminate checks: the same physics by other methods, in numpy.

Writes reference.json beside itself. Change it only from the equations, never to follow
the Go code. Units: N, mm, MPa, degrees.

- Q-bar through the compliance and the rotation of stresses, not through invariants.
- A, B, D by Gauss integration through the thickness, not by closed sums.
- first-ply failure by bisection on the load, not by the root of the criterion.
- buckling of a perfect cylinder by the energy of three displacements (u, v, w) in
  waves of any length and direction (Donnell), minimised on grids that close in.
"""
import json
import os

import numpy as np

PLIES = {
    # T300/5208: Tsai and Hahn (1980), from memory
    "T300/5208": dict(E1=181000.0, E2=10300.0, G12=7170.0, nu12=0.28, t=0.125, X=1500.0, Xc=1500.0, Y=40.0, Yc=246.0, S=68.0),
    # invented: unlike strengths in every direction
    "invented": dict(E1=128000.0, E2=8700.0, G12=4300.0, nu12=0.31, t=0.15, X=1980.0, Xc=1120.0, Y=52.0, Yc=199.0, S=88.0),
}
LAYUPS = {
    "one ply": [0], "cross": [0, 90, 90, 0], "angle": [45, -45, -45, 45], "axial": [0, 0, 45, -45, -45, 45, 0, 0],
    "quasi-isotropic": [0, 45, -45, 90, 90, -45, 45, 0], "sixty": [0, 60, -60, -60, 60, 0], "off axis": [30, 30], "one-sided": [0, 0, 20, -20, 90],
    "antisymmetric": [45, -45], "wound": [15, -15, 15, -15, 90],
}
RADIUS = 20.0


def compliance(p):
    return np.array([[1 / p["E1"], -p["nu12"] / p["E1"], 0], [-p["nu12"] / p["E1"], 1 / p["E2"], 0], [0, 0, 1 / p["G12"]]])


def stress_turn(degrees):
    """T with stress in ply axes = T · stress in wall axes."""
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    return np.array([[c * c, s * s, 2 * c * s], [s * s, c * c, -2 * c * s], [-c * s, c * s, c * c - s * s]])


def q_bar(p, degrees):
    t = stress_turn(degrees)
    return np.linalg.inv(t.T @ compliance(p) @ t)


def abd(p, angles):
    x, w = np.polynomial.legendre.leggauss(4)
    top = -len(angles) * p["t"] / 2
    out = [np.zeros((3, 3)) for _ in range(3)]
    for i, angle in enumerate(angles):
        z = top + p["t"] * (i + (x + 1) / 2)
        for n in range(3):
            out[n] += q_bar(p, angle) * float(np.sum(w * z**n) * p["t"] / 2)
    return out


def fails(p, stress, criterion, interaction):
    if criterion == "max_strain":
        e = compliance(p) @ stress
        high = [p["X"] / p["E1"], p["Y"] / p["E2"], p["S"] / p["G12"]]
        low = [p["Xc"] / p["E1"], p["Yc"] / p["E2"], p["S"] / p["G12"]]
        return any(e > high) or any(-e > low)
    f = np.diag([1 / (p["X"] * p["Xc"]), 1 / (p["Y"] * p["Yc"]), 1 / p["S"] ** 2])
    f[0, 1] = f[1, 0] = interaction * np.sqrt(f[0, 0] * f[1, 1])
    return stress @ f @ stress + stress @ [1 / p["X"] - 1 / p["Xc"], 1 / p["Y"] - 1 / p["Yc"], 0] > 1


def first_ply(p, angles, sign, criterion, interaction):
    strain = np.linalg.solve(abd(p, angles)[0], [sign, 0, 0])
    stresses = [stress_turn(a) @ q_bar(p, a) @ strain for a in angles]
    low, high = 0.0, 1e7
    for _ in range(200):
        mid = (low + high) / 2
        if any(fails(p, mid * s, criterion, interaction) for s in stresses):
            high = mid
        else:
            low = mid
    return low


def wave_load(a, b, d, r, alpha, beta):
    """Line load of a perfect long cylinder in the wave with wave numbers alpha and beta."""
    e = np.array([[alpha, 0, 0], [0, beta, 1 / r], [beta, alpha, 0]])
    k = np.zeros((3, 3))
    k[:, 2] = alpha**2, beta**2, 2 * alpha * beta
    s = e.T @ a @ e + e.T @ b @ k + k.T @ b @ e + k.T @ d @ k
    return (s[2, 2] - s[2, :2] @ np.linalg.solve(s[:2, :2], s[:2, 2])) / alpha**2


def buckling(a, b, d, r):
    """Least line load over all waves: by direction and wave number."""
    best = (np.inf, 0.0, 0.0)
    t0, k0, span_t, span_k = 0.0, 0.0, np.pi / 2 * 0.9999, 6.0  # k0: log of the wave number times sqrt(r · 1 mm)
    for _ in range(24):
        for t in np.linspace(max(t0 - span_t, -np.pi / 2 * 0.9999), min(t0 + span_t, np.pi / 2 * 0.9999), 41):
            for k in np.linspace(k0 - span_k, k0 + span_k, 41):
                w = np.exp(k) / np.sqrt(r)
                n = wave_load(a, b, d, r, w * np.cos(t), w * np.sin(t))
                if n < best[0]:
                    best = (n, t, k)
        t0, k0, span_t, span_k = best[1], best[2], span_t / 4, span_k / 4
    return best[0]


def case(ply, name, angles, interaction):
    p = PLIES[ply]
    a, b, d = abd(p, angles)
    h = len(angles) * p["t"]
    s = np.linalg.inv(a)
    out = dict(ply=ply, layup=name, angles=angles, interaction=interaction, A=a, B=b, D=d,
               Ex=1 / (s[0, 0] * h), Ey=1 / (s[1, 1] * h), Gxy=1 / (s[2, 2] * h), nuxy=-s[0, 1] / s[0, 0],
               radius=RADIUS, buckling=buckling(a, b, d, RADIUS), symmetric=bool(np.abs(b).max() < 1e-9 * a[0, 0] * h))
    for criterion in ("max_strain", "tsai_wu"):
        out[criterion] = [first_ply(p, angles, sign, criterion, interaction) for sign in (1, -1)]
    return out


def main():
    rows = [case(ply, name, angles, i) for ply, i in (("T300/5208", -0.5), ("invented", 0.2)) for name, angles in LAYUPS.items()]
    path = os.path.join(os.path.dirname(os.path.abspath(__file__)), "reference.json")
    with open(path, "w") as f:
        json.dump(dict(plies=PLIES, cases=rows), f, indent=1, default=lambda v: v.tolist())
        f.write("\n")


if __name__ == "__main__":
    main()
