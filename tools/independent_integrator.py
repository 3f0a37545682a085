#!/usr/bin/env python3
"""An independent integrator for the vapour networks of this project.

The equations of a network (docs in src/simulation) are written down here a second time, in another language, from
the formulas, and handed to scipy's integrators. Its results are committed as goldens in test/integrator/goldens;
the test there compares the project's own integrator with them.

Needs Debian's python3-scipy.

  tools/independent_integrator.py golden SCENARIO.json OUT.json      tight tolerance, Radau
  tools/independent_integrator.py time SCENARIO.json RTOL REFERENCE.json   LSODA and BDF timed, one JSON line each
"""
import json
import math
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

R = 8.31446261815324
M_AIR = 0.0289647
R_AIR = R / M_AIR
CP_AIR = 1.4 / 0.4 * R_AIR
CV_AIR = CP_AIR - R_AIR
CP_VAPOUR = 1680.0
LATENT = 355e3
PSI = 0.45359237 * 9.80665 / 0.0254 ** 2
LAMINAR = 5 / 101325
# Carbon: Langmuir with van 't Hoff
Q_SAT, AFFINITY, HEAT_ADS, T_REF = 0.47, 2e-4, 40e3, 298.15
BOUNDARIES = ("ambient", "manifold", "ejector")


def psi(x, g):
    """Dimensionless isentropic flow at relative drop x."""
    r = 1 - x
    critical = (2 / (g + 1)) ** (g / (g - 1))
    if r <= critical:
        return math.sqrt(g) * (2 / (g + 1)) ** ((g + 1) / (2 * (g - 1)))
    return math.sqrt(2 * g / (g - 1) * (r ** (2 / g) - r ** ((g + 1) / g)))


def psi_slope(x, g):
    r = 1 - x
    inside = 2 * g / (g - 1) * (r ** (2 / g) - r ** ((g + 1) / g))
    d_inside = 2 * g / (g - 1) * (2 / g * r ** (2 / g - 1) - (g + 1) / g * r ** (1 / g))
    return -0.5 * d_inside / math.sqrt(inside)


def orifice(area, p1, p2, t_up, r_up, g):
    """Signed mass flow; odd cubic below the laminar drop, joined in value and slope."""
    hi, lo = max(p1, p2), min(p1, p2)
    x = (hi - lo) / hi
    if x >= LAMINAR:
        factor = psi(x, g)
    else:
        f0 = psi(LAMINAR, g)
        s0 = psi_slope(LAMINAR, g) * LAMINAR / f0
        u = x / LAMINAR
        factor = f0 * (0.5 * (3 - s0) * u + 0.5 * (s0 - 1) * u ** 3)
    m = area * hi / math.sqrt(r_up * t_up) * factor
    return m if p1 >= p2 else -m


def smooth(v, a, b):
    u = min(1.0, max(0.0, (v - a) / (b - a)))
    return u * u * (3 - 2 * u)


def above_crest(f, crest):
    d, w = f - crest, 0.005
    return 0.0 if d <= -w else d if d >= w else (d + w) ** 2 / (4 * w)


def series(s, t):
    return float(s) if isinstance(s, (int, float)) else float(np.interp(t, s["timeS"], s["value"]))


def open_fraction(duty, pulse):
    f, od, cd = pulse["frequencyHz"], pulse["openDelayS"], pulse["closeDelayS"]
    if duty <= 0 or duty >= 1:
        return min(1.0, max(0.0, duty))
    if duty <= od * f:
        return 0.0
    return min(1.0, max(0.0, duty + (cd - od) * f))


class Car:
    def __init__(self, scenario):
        self.s = scenario
        self.net = scenario["network"]
        self.cond = scenario["conditions"]
        self.spaces = self.net["spaces"]
        tank = next(s for s in self.spaces if s["kind"] == "tank")
        self.mv = tank["fuel"]["vapourMolarMassKgPerMol"]
        self.rv = R / self.mv
        self.cvv = CP_VAPOUR - self.rv
        self.base, n = {}, 0
        for s in self.spaces:
            self.base[s["id"]] = n
            n += {"gas": 2, "tank": 5, "bed": 4}[s["kind"]]
        self.sensor_base = n
        n += len(self.net["sensors"])
        self.n = n
        self.cmd = {}
        self.running = False
        self.areas()
        for s in self.spaces:
            if s["kind"] == "tank":
                rvp, root = s["fuel"]["reidVapourPressurePa"] / PSI, math.sqrt(3)
                ln = math.log(rvp)
                s["_a"] = 15.64 - 1.854 * root - (0.8742 - 0.328 * root) * ln
                s["_b"] = 8742 - 1042 * root - (1049 - 179.4 * root) * ln

    def c(self, name):
        return self.cmd.get(name, 0.0)

    def areas(self):
        self.area = {}
        for p in self.net["passages"]:
            if p["kind"] != "orifice":
                continue
            act = p.get("actuation")
            if act is None:
                self.area[p["id"]] = p["openAreaM2"]
                continue
            u = self.c(act["command"])
            u = u if act["opens"] else 1 - u
            if "pulse" in p:
                u = open_fraction(u, p["pulse"])
            self.area[p["id"]] = p["shutAreaM2"] + u * (p["openAreaM2"] - p["shutAreaM2"])

    def psat(self, s, t):
        rankine = t * 1.8 - 459.67 + 459.6
        return s["fuel"]["vapourPressureFactor"] * PSI * math.exp(s["_a"] - s["_b"] / rankine)

    def outside(self, t):
        c = self.cond
        amb, ta = series(c["ambientAbsPa"], t), series(c["ambientTemperatureK"], t)
        man = series(c["manifoldAbsPa"], t) if self.running and "manifoldAbsPa" in c else amb
        ej = amb - self.net["ejectorSuctionPerBoost"] * max(0.0, man - amb)
        return amb, ta, {"ambient": amb, "manifold": man, "ejector": ej}

    def volume(self, s, x):
        if s["kind"] != "tank":
            return s["volumeM3"]
        return s["shellVolumeM3"] + s["neckVolumeM3"] - x[self.base[s["id"]] + 3] / s["fuel"]["densityKgPerM3"]

    def gas(self, x, t):
        """Node name -> (pressure, temperature, vapour mass fraction, gas constant, gamma)."""
        amb, ta, boundary = self.outside(t)
        out = {}
        for s in self.spaces:
            b = self.base[s["id"]]
            ma, mv = x[b], x[b + 1]
            if s["kind"] == "tank":
                temp = x[b + 2] / (ma * CV_AIR + mv * self.cvv)
            elif s["kind"] == "bed":
                temp = x[b + 3]
            else:
                temp = ta
            w = mv / (ma + mv)
            rs = (1 - w) * R_AIR + w * self.rv
            cp = (1 - w) * CP_AIR + w * CP_VAPOUR
            p = (ma * R_AIR + mv * self.rv) * temp / self.volume(s, x)
            out[s["id"]] = (p, temp, w, rs, cp / (cp - rs))
        for name, p in boundary.items():
            out[name] = (p, ta, 0.0, R_AIR, 1.4)
        return amb, ta, out

    def flow(self, p, g):
        one, two = g[p["from"]], g[p["to"]]
        p1, p2 = one[0], two[0]
        if p["kind"] == "bed":
            lin, quad, dp = p["linearPaSPerKg"], p["quadraticPaS2PerKg2"], p1 - p2
            if quad == 0:
                return dp / lin
            return math.copysign((-lin + math.sqrt(lin * lin + 4 * quad * abs(dp))) / (2 * quad), dp)
        if p["kind"] == "pump":
            if self.c(p["command"]) <= 0:
                return 0.0
            q = p["freeFlowM3PerS"] * (1 - (p2 - p1) / p["stallPa"])
            src = one if q >= 0 else two
            return q * src[0] / (src[3] * src[1])
        if p["kind"] == "orifice":
            area = self.area[p["id"]]
        elif p["kind"] == "check":
            area = p["shutAreaM2"] + (p["openAreaM2"] - p["shutAreaM2"]) * smooth(p1 - p2, p["crackingPa"], p["fullyOpenPa"])
        else:
            start = p["pressureSettingPa"] if p1 >= p2 else p["vacuumSettingPa"]
            area = p["shutAreaM2"] + (p["openAreaM2"] - p["shutAreaM2"]) * smooth(abs(p1 - p2), start, start + p["openingSpanPa"])
        if area <= 0:
            return 0.0
        src = one if p1 >= p2 else two
        return orifice(area, p1, p2, src[1], src[3], src[4])

    def rhs(self, t, x):
        amb, ta, g = self.gas(x, t)
        dx = np.zeros(self.n)
        tanks = [s for s in self.spaces if s["kind"] == "tank"]
        kinds = {s["id"]: s for s in self.spaces}
        for p in self.net["passages"]:
            m = self.flow(p, g)
            if m == 0.0:
                continue
            src = g[p["from"]] if m >= 0 else g[p["to"]]
            w, temp = src[2], src[1]
            for end, sign in ((p["from"], -1.0), (p["to"], 1.0)):
                if end in BOUNDARIES:
                    continue
                b = self.base[end]
                dx[b] += sign * m * (1 - w)
                dx[b + 1] += sign * m * w
                if kinds[end]["kind"] == "tank":
                    dx[b + 2] += sign * m * ((1 - w) * CP_AIR + w * CP_VAPOUR) * temp
        heat = series(self.cond.get("fuelHeatW", 0), t) / len(tanks)
        for s in tanks:
            b = self.base[s["id"]]
            tg, tl = g[s["id"]][1], x[b + 4]
            pv = x[b + 1] * self.rv * tg / self.volume(s, x)
            k = s["massTransferFillingMPerS"] if self.c("nozzleOn") > 0 else s["massTransferMPerS"]
            ev = k * s["surfaceAreaM2"] * (self.psat(s, tl) - pv) * self.mv / (R * tl)
            qf = s["gasToFuelWPerK"] * (tl - tg)
            dx[b + 1] += ev
            dx[b + 3] -= ev
            dx[b + 2] += ev * CP_VAPOUR * tl + s["gasToWallWPerK"] * (ta - tg) + qf
            dx[b + 4] += (heat + s["fuelToAmbientWPerK"] * (ta - tl) - qf - ev * LATENT) / self.capacity(s, x)
        for s in self.spaces:
            if s["kind"] != "bed":
                continue
            b, mc = self.base[s["id"]], s["carbonKg"]
            temp = x[b + 3]
            pv = x[b + 1] * self.rv * temp / s["volumeM3"]
            aff = AFFINITY * math.exp(HEAT_ADS / R * (1 / temp - 1 / T_REF))
            take = s["rateHz"] * (mc * Q_SAT * aff * pv / (1 + aff * pv) - x[b + 2]) if mc > 0 else 0.0
            dx[b + 1] -= take
            dx[b + 2] += take
            dx[b + 3] += (take * HEAT_ADS / self.mv + s["toAmbientWPerK"] * (ta - temp)) / s["heatCapacityJPerK"]
        fill = self.c("nozzleOn") * series(self.cond.get("fillFlowM3PerS", 0), t)
        if fill:
            s = kinds[self.net["fillSpace"]]
            b, fuel = self.base[s["id"]], s["fuel"]
            tf = series(self.cond["fillTemperatureK"], t) if "fillTemperatureK" in self.cond else ta
            air = self.net["airEntrainment"] * fill * amb / (R_AIR * ta)
            dx[b] += air
            dx[b + 2] += air * CP_AIR * ta + g[s["id"]][0] * fill
            dx[b + 3] += fuel["densityKgPerM3"] * fill
            dx[b + 4] += fuel["densityKgPerM3"] * fill * fuel["heatCapacityJPerKgK"] * (tf - x[b + 4]) / self.capacity(s, x)
        draw = series(self.cond.get("fuelDrawM3PerS", 0), t) if self.running else 0.0
        if draw:
            s = kinds[self.net["drawSpace"]]
            b = self.base[s["id"]]
            dx[b + 3] -= s["fuel"]["densityKgPerM3"] * draw
            dx[b + 2] -= g[s["id"]][0] * draw
        for w in self.net["weirs"]:
            i, j = (kinds[k] for k in w["between"])
            q = w["flowM3PerS"] * (above_crest(self.fill(i, x), w["heightFraction"]) - above_crest(self.fill(j, x), w["heightFraction"]))
            self.move(x, dx, g, i, j, q)
        for p in self.net["transferPumps"]:
            i, j = kinds[p["from"]], kinds[p["to"]]
            q = self.c(p["command"]) * p["flowM3PerS"] * smooth(self.fill(i, x), p["unusableFraction"], p["unusableFraction"] + 0.01)
            self.move(x, dx, g, i, j, q)
        for k, sensor in enumerate(self.net["sensors"]):
            r = self.sensor_base + k
            dx[r] = (g[sensor["space"]][0] - amb - x[r]) / max(sensor["lagS"], 1e-3)
        return dx

    def capacity(self, s, x):
        return x[self.base[s["id"]] + 3] * s["fuel"]["heatCapacityJPerKgK"] + s["shellHeatCapacityJPerK"]

    def fill(self, s, x):
        return x[self.base[s["id"]] + 3] / (s["fuel"]["densityKgPerM3"] * s["shellVolumeM3"])

    def move(self, x, dx, g, i, j, q):
        if q == 0:
            return
        a, b, fuel = self.base[i["id"]], self.base[j["id"]], i["fuel"]
        m = q * fuel["densityKgPerM3"]
        dx[a + 3] -= m
        dx[b + 3] += m
        dx[a + 2] -= g[i["id"]][0] * q
        dx[b + 2] += g[j["id"]][0] * q
        if q > 0:
            dx[b + 4] += m * fuel["heatCapacityJPerKgK"] * (x[a + 4] - x[b + 4]) / self.capacity(j, x)
        else:
            dx[a + 4] += -m * fuel["heatCapacityJPerKgK"] * (x[b + 4] - x[a + 4]) / self.capacity(i, x)

    def start(self):
        amb, ta, _ = self.outside(0.0)
        st = self.cond["start"]
        tl = st["fuelTemperatureK"]
        pt = amb + st.get("tankGaugePa", 0.0)
        x = np.zeros(self.n)
        first = next(s for s in self.spaces if s["kind"] == "tank")

        def tank_vapour(s):
            return min(0.98 * pt, max(0.0, self.psat(s, tl) + st.get("vapourDeficitPa", 0.0)))

        for s in self.spaces:
            b, total, temp = self.base[s["id"]], amb, ta
            if s["kind"] == "tank":
                x[b + 3] = s["fillFraction"] * s["shellVolumeM3"] * s["fuel"]["densityKgPerM3"]
                x[b + 4] = tl
                w, f = s["gasToWallWPerK"], s["gasToFuelWPerK"]
                temp = (w * ta + f * tl) / (w + f) if w + f > 0 else ta
                total, pv = pt, tank_vapour(s)
            elif s["kind"] == "bed":
                load = min(0.999, s["loadingFraction"])
                aff = AFFINITY * math.exp(HEAT_ADS / R * (1 / ta - 1 / T_REF))
                x[b + 2] = load * Q_SAT * s["carbonKg"]
                x[b + 3] = ta
                pv = min(0.9 * amb, load / (aff * (1 - load))) if s["carbonKg"] > 0 else 0.0
            else:
                share = st.get("lineShare", 0.0) if s["id"] in ("vapourLine", "head") else 0.0
                pv = share * tank_vapour(first) * amb / pt
            v = self.volume(s, x)
            x[b] = (total - pv) * v / (R_AIR * temp)
            x[b + 1] = pv * v / (self.rv * temp)
            if s["kind"] == "tank":
                x[b + 2] = (x[b] * CV_AIR + x[b + 1] * self.cvv) * temp
        return x

    def watched(self, cond, t, x):
        what = cond["what"]
        if what["kind"] == "reading":
            k = next(i for i, s in enumerate(self.net["sensors"]) if s["id"] == what["sensor"])
            s = self.net["sensors"][k]
            return s["gain"] * x[self.sensor_base + k] + s["offsetPa"]
        if what["kind"] == "gaugePa":
            amb, _, g = self.gas(x, t)
            return g[what["space"]][0] - amb
        s = next(s for s in self.spaces if s["id"] == what.get("space", self.net["fillSpace"]))
        if what["kind"] == "fillFraction":
            return self.fill(s, x)
        raise SystemExit(f"not watched here: {what}")



def stops(car, start, end, step):
    times = {start, end}
    for plan in (step.get("commands") or {}).values():
        if isinstance(plan, list):
            times |= {start + p["atS"] for p in plan}
    for s in car.cond.values():
        if isinstance(s, dict) and "timeS" in s:
            times |= set(s["timeS"])
    return sorted(t for t in times if start <= t <= end)


def run(car, method, rtol, atol_scale, want):
    """Integrates all steps; returns states at the wanted times and how the steps ended."""
    x, t = car.start(), 0.0
    rows, ends, evaluations = {}, [], 0
    atol = np.maximum(np.abs(x), 1e-6) * atol_scale
    for b in (car.sensor_base + k for k in range(len(car.net["sensors"]))):
        atol[b] = 1e5 * atol_scale
    float_on = False
    for step in car.s["procedure"]["steps"]:
        car.running = step["engineRunning"]
        begin, end, outcome = t, t + step["longestS"], None
        while t < end - 1e-9 and outcome is None:
            for name, plan in (step.get("commands") or {}).items():
                if isinstance(plan, list):
                    for p in plan:
                        if begin + p["atS"] <= t + 1e-9:
                            car.cmd[name] = p["value"]
                else:
                    car.cmd[name] = plan
            car.cmd["fillLimitShut"] = 1.0 if float_on else 0.0
            car.areas()
            stop = next((s for s in stops(car, begin, end, step) if s > t + 1e-9), end)
            conditions = list(step.get("endsWhen", []))
            lim = car.net["fillLimit"]
            if "stuck" not in lim:
                key = ("openFraction", "below") if float_on else ("shutFraction", "above")
                conditions.append({"what": {"kind": "fillFraction", "space": car.net["fillSpace"]}, "is": key[1], "value": lim[key[0]], "outcome": "float"})
            conditions = [c for c in conditions if c["what"]["kind"] != "dispensedM3"]

            def g(c, tt, xx):
                d = car.watched(c, tt, xx) - c["value"]
                return d if c["is"] == "above" else -d

            hit = next((c for c in conditions if c["outcome"] != "float" and g(c, t, x) >= 0), None)
            if hit is not None:
                outcome = hit["outcome"]
                break
            events = []
            for c in conditions:
                f = lambda tt, xx, c=c: g(c, tt, xx)
                f.terminal, f.direction = True, 1
                events.append(f)
            sol = solve_ivp(car.rhs, (t, stop), x, method=method, rtol=rtol, atol=atol, events=events or None, dense_output=True)
            evaluations += sol.nfev
            if not sol.success:
                raise SystemExit(f"{method}: {sol.message} at {sol.t[-1]}")
            for w in want:
                if t <= w <= sol.t[-1] and w not in rows:
                    rows[w] = sol.sol(w)
            t, x = float(sol.t[-1]), sol.y[:, -1].copy()
            if sol.status == 1:
                k = next(i for i, e in enumerate(sol.t_events) if len(e))
                t, x = float(sol.t_events[k][0]), sol.y_events[k][0].copy()
                if conditions[k]["outcome"] == "float":
                    float_on = not float_on
                else:
                    outcome = conditions[k]["outcome"]
        ends.append({"phase": step["phase"], "toS": t, **({"outcome": outcome} if outcome else {})})
    return rows, ends, x, evaluations


def golden(scenario, out):
    car = Car(scenario)
    want = scenario["golden"]["timesS"]
    rows, ends, x, _ = run(car, "Radau", 1e-9, 1e-11, want)
    watch = scenario["golden"]["spaces"]
    data = {"timesS": [], "gaugePa": {k: [] for k in watch}, "temperatureK": {k: [] for k in watch}, "vapourMassFraction": {k: [] for k in watch}}
    for w in want:
        if w not in rows:
            continue
        amb, _, g = car.gas(rows[w], w)
        data["timesS"].append(w)
        for k in watch:
            data["gaugePa"][k].append(g[k][0] - amb)
            data["temperatureK"][k].append(g[k][1])
            data["vapourMassFraction"][k].append(g[k][2])
    result = {
        "madeBy": "tools/independent_integrator.py, scipy Radau, rtol 1e-9",
        "tolerance": {"gaugePa": 0.05, "temperatureK": 1e-4, "vapourMassFraction": 1e-6, "stepEndS": 2e-4},
        "stepEnds": ends,
        **data,
    }
    with open(out, "w") as f:
        json.dump(result, f, indent=1)
        f.write("\n")


def timing(scenario, rtol, reference):
    space = scenario["golden"]["spaces"][0]
    want = scenario["golden"]["timesS"]
    known = dict(zip((round(t, 6) for t in reference["timesS"]), reference["gaugePa"]))
    for method in ("LSODA", "BDF"):
        car = Car(scenario)
        begin = time.perf_counter()
        rows, ends, _, evaluations = run(car, method, rtol, rtol * 0.1, want)
        elapsed = time.perf_counter() - begin
        error = 0.0
        for w, x in rows.items():
            if round(w, 6) in known:
                amb, _, g = car.gas(x, w)
                error = max(error, abs(g[space][0] - amb - known[round(w, 6)]))
        print(json.dumps({"method": f"scipy {method}", "seconds": elapsed, "simulatedS": ends[-1]["toS"], "evaluations": evaluations, "errorPa": error}))


if __name__ == "__main__":
    if len(sys.argv) == 4 and sys.argv[1] == "golden":
        golden(json.load(open(sys.argv[2])), sys.argv[3])
    elif len(sys.argv) == 5 and sys.argv[1] == "time":
        timing(json.load(open(sys.argv[2])), float(sys.argv[3]), json.load(open(sys.argv[4])))
    else:
        raise SystemExit(__doc__)
