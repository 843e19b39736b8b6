"""An independent solution of the kettle and its pieces, for the tests of app/heat.

Reads a list of cases as JSON on standard input and writes one answer for each
on standard output. The piece is cut into shells of equal thickness (second
order), the water is one lump, and scipy's stiff integrator marches both: the
same equations as the closed form in app/heat, solved another way.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

CELLS = 240


def solve(case, rtol=1e-8):
    n, radius = case["dims"], case["sizeM"]
    k, rho, c, h = case["k"], case["rho"], case["c"], case["h"]
    mass, capacity = case["massKg"], case["capacityJPK"]
    boil, power = case["boilC"], case["powerW"]
    step = radius / CELLS
    edge = np.linspace(0, radius, CELLS + 1)
    middle = 0.5 * (edge[1:] + edge[:-1])
    volume = (edge[1:] ** n - edge[:-1] ** n) / radius**n  # shares of the piece
    area = n * edge ** (n - 1) / radius**n  # of a face, per volume of the piece
    heat = rho * c

    def rates(temps, water):
        flux = np.empty(CELLS + 1)
        flux[0] = 0.0
        flux[1:-1] = k * (temps[1:] - temps[:-1]) / step  # inwards
        flux[-1] = (water - temps[-1]) / (1 / h + 0.5 * step / k)
        gained = area[1:] * flux[1:] - area[:-1] * flux[:-1]
        return gained / (heat * volume), area[-1] * flux[-1]  # K/s, W per m³ of piece

    def heating(_, y):
        slopes, taken = rates(y[:-1], y[-1])
        return np.append(slopes, (power - mass / rho * taken) / capacity)

    def boiling(_, y):
        return rates(y, boil)[0]

    band = dict(lband=1, uband=1)
    y = np.append(np.full(CELLS, case["startC"]), case["waterC"])
    dip, back = case["waterC"], 0.0
    if case["waterC"] < boil or heating(0, y)[-1] < 0:
        again = lambda _, y: y[-1] - boil
        again.terminal, again.direction = True, 1
        run = solve_ivp(heating, (0, 20000), y, method="BDF", rtol=rtol, atol=1e-8, events=again, dense_output=True)
        back = float(run.t_events[0][0])
        y = run.y_events[0][0]
        at = np.unique(np.concatenate([np.linspace(0, back, 4000), run.t[run.t <= back]]))
        dip = float(min(np.min(run.sol(at)[-1]), dip))
    run = solve_ivp(boiling, (0, case["blanchS"]), y[:-1], method="LSODA", rtol=rtol, atol=1e-8, **band)
    temps = run.y[:, -1]
    # the centre: a parabola through the two inner shells' means
    square = [n / (n + 2) * (edge[i + 1] ** (n + 2) - edge[i] ** (n + 2)) / (edge[i + 1] ** n - edge[i] ** n) for i in (0, 1)]
    centre = (square[1] * temps[0] - square[0] * temps[1]) / (square[1] - square[0])
    return dict(backS=back, dipC=dip, centreC=float(centre), meanC=float(np.dot(volume, temps)))


if __name__ == "__main__":
    cases = json.load(sys.stdin)
    started = time.perf_counter()
    answers = [solve(case) for case in cases]
    json.dump(dict(answers=answers, seconds=time.perf_counter() - started), sys.stdout)
