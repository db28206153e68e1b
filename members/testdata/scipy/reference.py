#!/usr/bin/env python3
"""A second origin for the sections and for bending with compression.

Run by hand, with numpy and scipy (Debian: python3-numpy, python3-scipy):

    /usr/bin/python3 reference.py > reference.csv

A test reads reference.csv. Change this file only from the equations, never to follow
the Go code. Nothing here uses a closed form that the Go code uses:
 - ellipses: dense polygons of the outer contour and of its inner parallel curve, by
   Green's theorem; lenses: strips along the chord by adaptive quadrature;
 - rounded rectangles: strips by adaptive quadrature;
 - the secant formula: the load at which it reaches yield, by Brent's method;
 - eccentric beam-columns: the differential equation as a boundary value problem.
"""
import sys
import numpy as np
from scipy.integrate import quad, solve_bvp
from scipy.optimize import brentq

rows = []


def row(kind, inputs, outputs):
    rows.append([kind] + [repr(float(v)) for v in list(inputs) + list(outputs)])


def polygon(x, y):
    """Area and second moments of a closed polygon by Green's theorem."""
    x2, y2 = np.roll(x, -1), np.roll(y, -1)
    cross = x * y2 - x2 * y
    a = cross.sum() / 2
    ix = (cross * (y * y + y * y2 + y2 * y2)).sum() / 12
    iy = (cross * (x * x + x * x2 + x2 * x2)).sum() / 12
    return np.array([a, ix, iy])


def ellipse_at(c, d, t, n):
    th = np.linspace(0, 2 * np.pi, n, endpoint=False)
    p, q = c / 2, d / 2
    x, y = p * np.cos(th), q * np.sin(th)
    g = np.hypot(p * np.sin(th), q * np.cos(th))
    nx, ny = q * np.cos(th) / g, p * np.sin(th) / g
    return polygon(x, y) - polygon(x - t * nx, y - t * ny)


def ellipse(c, d, t):
    # polygons err as 1/n²: one step of Richardson's extrapolation
    rough, fine = ellipse_at(c, d, t, 200_000), ellipse_at(c, d, t, 400_000)
    return (4 * fine - rough) / 3


def strips(width, top, split=None):
    """Area and second moments of a section symmetrical about both axes from the
    widths of its right half: pieces (inner, outer) at the height y."""
    def integral(f):
        v, _ = quad(f, 0, top, epsabs=0, epsrel=1e-12, limit=500, points=split)
        return v
    def span(y, k):
        inner, outer = width(y)
        return (outer**k - inner**k) / k
    a = 4 * integral(lambda y: span(y, 1))
    ix = 4 * integral(lambda y: y * y * span(y, 1))
    iy = 4 * integral(lambda y: span(y, 3))
    return a, ix, iy


def lens(c, d, t):
    # the circle through both ends of the chord and the crown
    radius = brentq(lambda r: (r - d / 2)**2 + (c / 2)**2 - r * r, d / 4, 100 * c * c / d, xtol=1e-14, rtol=1e-15)
    off = radius - d / 2
    def at(r, y):
        s = r * r - (y + off)**2
        return np.sqrt(s) if s > 0 else 0.0
    return strips(lambda y: (at(radius - t, y), at(radius, y)), d / 2, [d / 2 - t])


def rounded(b, h, t):
    """Corners of radius 2t outside and t inside about one centre."""
    def half(b, h, r, y):
        if y >= h / 2:
            return 0.0
        if y <= h / 2 - r:
            return b / 2
        return b / 2 - r + np.sqrt(max(0.0, r * r - (y - h / 2 + r)**2))
    def width(y):
        return half(b - 2 * t, h - 2 * t, t, y), half(b, h, 2 * t, y)
    return strips(width, h / 2, [h / 2 - 2 * t, h / 2 - t])


def secant(e_mod, sy, area, inertia, modulus, length, ecc):
    r2, c = inertia / area, inertia / modulus
    def excess(p):
        return p / area * (1 + ecc * c / r2 / np.cos(length / (2 * np.sqrt(r2)) * np.sqrt(p / (e_mod * area)))) - sy
    euler = np.pi**2 * e_mod * inertia / length**2
    return brentq(excess, 0, euler * (1 - 1e-13), xtol=1e-9, rtol=1e-15)


def beam_column(ei, length, p, ecc, q):
    """Greatest moment: EI·y'' + p·(y + ecc) + q·x·(l − x)/2 = 0, y = 0 at both ends."""
    u = length
    def rhs(s, y):  # s = x/l
        x = s * u
        m = p * (y[0] + ecc) + q * x * (u - x) / 2
        return np.vstack([y[1], -m * u * u / ei])
    def ends(ya, yb):
        return np.array([ya[0], yb[0]])
    s = np.linspace(0, 1, 2001)
    sol = solve_bvp(rhs, ends, s, np.zeros((2, s.size)), tol=1e-10, max_nodes=200_000)
    if not sol.success:
        sys.exit(sol.message)
    return p * (sol.sol(0.5)[0] + ecc) + q * u * u / 8


for c, d, t in [(40, 20, 1.5), (30, 30, 2), (60, 20, 1.2), (36.5, 14.1, 0.9), (48, 8.0001, 0.5)]:
    row("ellipse_tube", (c, d, t), ellipse(c, d, t))
for c, d, t in [(40, 20, 1.5), (30, 30, 2), (60, 20, 1.2), (36.5, 14.1, 0.9), (48, 8, 0.5)]:
    row("lens_tube", (c, d, t), lens(c, d, t))
for b, h, t in [(20, 20, 1.5), (30, 15, 1), (15, 30, 2), (40, 40, 3)]:
    row("rectangular_tube", (b, h, t), rounded(b, h, t))

tube = lambda od, t: (np.pi * (od**2 - (od - 2 * t)**2) / 4, np.pi * (od**4 - (od - 2 * t)**4) / 64)
for od, t, length, ecc, sy in [(25, 2, 400, 1.5, 355), (16, 1.5, 350, 0.2, 355), (20, 1.5, 900, 5, 700), (30, 2, 150, 0.01, 250)]:
    a, i = tube(od, t)
    row("secant", (od, t, length, ecc, sy), [secant(210e3, sy, a, i, 2 * i / od, length, ecc)])
for od, t, length, ecc, share, q in [(25, 2, 400, 1.5, 0.2, 0), (25, 2, 400, 1.5, 0.8, 0), (16, 1.5, 350, 3, 0.5, 0), (16, 1.5, 350, 0, 0.5, 0.7), (20, 1.5, 500, 2, 0.6, 1.1)]:
    a, i = tube(od, t)
    p = share * np.pi**2 * 210e3 * i / length**2
    row("beam_column", (od, t, length, ecc, p, q), [beam_column(210e3 * i, length, p, ecc, q)])

print("# written by reference.py; see there. kind, inputs …, outputs …")
for r in rows:
    print(",".join(r))
