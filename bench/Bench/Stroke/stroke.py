# One stroke between closing dies by scipy.integrate.solve_ivp: the equations of src/Hydraulics/Strokes written out once more, as plain Python.
# stroke.py PARAMETERS BLOCKS METHOD:TOLERANCE... -> one line each: tolerance, best processor seconds, steps, slopes, events. SI units.
import sys, time
from math import exp, inf, nan, isnan, pi, sqrt
import numpy as np
from scipy.integrate import solve_ivp

P = {name: float(value) for name, value in (line.split() for line in open(sys.argv[1]))}
globals().update(P)
STANDING, LIMITED, FREE, STALLED, BRAKING = range(5)
HOME, OUT, STUCK, BACK = range(4)
SPEED, PRESSURE, POSITION, VELOCITY, DRAWN, LIFT, READING = range(7)
KINDS = ["ram moves", "dies closed", "relief opened", "dies parted", "relief closed", "ram home"]
ATMOSPHERE, LEAST, ROUNDED = 101325.0, 20000.0, 2000.0
ABSOLUTE = np.array([0.2, 2e3, 1e-7, 1e-4, 1e-10, 1e-3, 2e3]) / 1e-4  # by relative tolerance

drive = ram = dies = opened = lifts = empty = 0
delivering = 1
damping, per_radian = torque * torque / ohms, 1 / (2 * pi * gear)
by_load, orifice = filled / (2 * pi * gear * efficiency), reliefArea * sqrt(2 / density)

def bulk(gauge):
    oil = modulus + modulusSlope * gauge if gauge > 0 else modulus
    if air <= 0:
        return oil
    absolute = max(gauge + ATMOSPHERE, LEAST)
    gas = air * (ATMOSPHERE / absolute) ** (1 / exponent)
    share = gas / (1 - air + gas)
    return 1 / ((1 - share) / oil + share / (exponent * absolute))

def squeeze(gauge):
    if gauge <= 0:
        return 0.0
    return 1 - ((1 + modulusSlope * gauge / modulus) ** (-1 / modulusSlope) if modulusSlope > 0 else exp(-gauge / modulus))

def turns():
    return drive in (LIMITED, FREE, BRAKING)

def delivery(speed, pressure):
    return per_radian * speed * (filled - (chamber + filled) * squeeze(pressure)) - chamberLeak * pressure

def flow_if_filled(speed, pressure, lift):
    flow = -standingLeak * pressure
    if turns():
        flow = -0.5 * deliveryLeak * pressure + (delivery(speed, pressure) if delivering else 0)
    return flow - bypass * pressure - lift * orifice * pressure / sqrt(abs(pressure) + ROUNDED)

def push(pressure, x):
    return area * pressure - preload - spring * x - (frame * (x - stroke) if dies else 0)

def friction(pressure):
    return dry + seal * area * pressure if pressure > 0 else dry

def load(pressure):
    return 0 if empty or pressure <= 0 else by_load * pressure

def slope(t, y):
    speed, pressure, x, v, drawn, lift, shown = y.tolist()
    flow = 0 if empty else flow_if_filled(speed, pressure, lift)
    turning = 0
    if turns():
        motor = torque * limitAmperes if drive == LIMITED else (torque * volts / ohms if drive == FREE else 0) - damping * speed
        turning = (motor - motorFriction - load(pressure)) / inertia
    moving = pushed = 0
    if ram == OUT or ram == BACK:
        moving, pushed = v, (push(pressure, x) - (-1 if ram == BACK else 1) * friction(pressure) - viscous * v) / mass
    return [turning, bulk(pressure) / (dead + area * max(x, 0)) * (flow - area * v), moving, pushed, flow, (lifts - lift) / reliefSeconds, (pressure - shown) / sensor]

def jacobian(t, y):
    """Differences where the laws bend, as SciPy would take them, but only for the one state that needs them; the rest is constant."""
    speed, pressure, x, v, drawn, lift, shown = y.tolist()
    j = np.zeros((7, 7))
    by_speed = by_pressure = by_lift = flow = 0
    if not empty:
        flow = flow_if_filled(speed, pressure, lift)
        h = 1e-6 * max(abs(pressure), 1e5)
        by_pressure = (flow_if_filled(speed, pressure + h, lift) - flow_if_filled(speed, pressure - h, lift)) / (2 * h)
        if turns() and delivering:
            by_speed = per_radian * (filled - (chamber + filled) * squeeze(pressure))
        by_lift = -orifice * pressure / sqrt(abs(pressure) + ROUNDED)
    if turns():
        j[SPEED, SPEED] = 0 if drive == LIMITED else -damping / inertia
        j[SPEED, PRESSURE] = 0 if empty or pressure <= 0 else -by_load / inertia
    h, volume = 1e-6 * max(abs(pressure), 1e5), dead + area * max(x, 0)
    stiff, net = bulk(pressure) / volume, flow - area * v
    j[PRESSURE] = [stiff * by_speed, (bulk(pressure + h) - bulk(pressure - h)) / (2 * h) / volume * net + stiff * by_pressure, -stiff / volume * area * net, -stiff * area, 0, stiff * by_lift, 0]
    if ram == OUT or ram == BACK:
        sign = -1 if ram == BACK else 1
        j[POSITION, VELOCITY] = 1
        j[VELOCITY, PRESSURE] = (area - sign * (seal * area if pressure > 0 else 0)) / mass
        j[VELOCITY, POSITION] = (-spring - (frame if dies else 0)) / mass
        j[VELOCITY, VELOCITY] = -viscous / mass
    j[DRAWN, SPEED], j[DRAWN, PRESSURE], j[DRAWN, LIFT] = by_speed, by_pressure, by_lift
    j[LIFT, LIFT] = -1 / reliefSeconds
    j[READING, PRESSURE], j[READING, READING] = 1 / sensor, -1 / sensor
    return j

def stall_left(y):
    return torque * stall - motorFriction - load(y[PRESSURE])

def gauges():
    """Only those that are watched now: (name, rising function)."""
    if drive == LIMITED:
        yield "current", lambda t, y: y[SPEED] - limitEnds
    elif drive == FREE and limitEnds > 0:
        yield "current", lambda t, y: limitEnds - y[SPEED]
    if drive == STALLED:
        yield "standstill", lambda t, y: stall_left(y)
    elif drive != STANDING:
        yield "standstill", lambda t, y: -y[SPEED]
    yield ("relief", (lambda t, y: closing * opens - y[PRESSURE]) if opened else (lambda t, y: y[PRESSURE] - opens))
    if ram in (HOME, STUCK):
        yield "ram out", lambda t, y: push(y[PRESSURE], y[POSITION]) - friction(y[PRESSURE])
    if ram == STUCK:
        yield "ram back", lambda t, y: -push(y[PRESSURE], y[POSITION]) - friction(y[PRESSURE])
    elif ram == OUT:
        yield "ram back", lambda t, y: -y[VELOCITY]
    elif ram == BACK:
        yield "ram out", lambda t, y: y[VELOCITY]
        yield "ram back", lambda t, y: -y[POSITION]
    yield ("dies", (lambda t, y: stroke - y[POSITION]) if dies else (lambda t, y: y[POSITION] - stroke))
    yield ("reservoir", (lambda t, y: -flow_if_filled(y[SPEED], y[PRESSURE], y[LIFT])) if empty else (lambda t, y: y[DRAWN] - usable))
    if turns():
        yield "delivery", (lambda t, y: -delivery(y[SPEED], y[PRESSURE])) if delivering else (lambda t, y: delivery(y[SPEED], y[PRESSURE]))

def pull(y):
    global drive, delivering
    drive = LIMITED if y[SPEED] < limitEnds else FREE
    delivering = delivery(y[SPEED], y[PRESSURE]) >= 0
    if y[SPEED] <= 0 and stall_left(y) <= 0:
        drive = STALLED

def happened(name, y):
    global drive, ram, dies, opened, lifts, empty, delivering
    if name == "current":
        drive = FREE if drive == LIMITED else LIMITED
    elif name == "standstill":
        if drive == STALLED:
            pull(y)
        else:
            y[SPEED], drive = 0, STANDING if drive == BRAKING else STALLED
    elif name == "relief":
        opened = not opened
        lifts = lifts and opened
        return "relief opened" if opened else "relief closed"
    elif name == "dies":
        dies = not dies
        return "dies closed" if dies else "dies parted"
    elif name == "reservoir":
        empty, y[DRAWN] = not empty, usable
    elif name == "delivery":
        delivering = not delivering
    elif ram == BACK and name == "ram back":
        y[POSITION], y[VELOCITY], ram = 0, 0, HOME
        return "ram home"
    else:
        was, y[VELOCITY] = ram, 0
        pushed, held = push(y[PRESSURE], y[POSITION]), friction(y[PRESSURE])
        ram = (OUT if name == "ram out" else BACK) if was in (HOME, STUCK) else (BACK if pushed < -held else STUCK) if was == OUT else OUT if pushed > held else STUCK
        return "ram moves" if was == HOME else None

def one_stroke(method, relative):
    global drive, ram, dies, opened, lifts, empty, delivering
    drive = ram = dies = opened = lifts = empty = 0
    delivering = 1
    y, now, first, steps, slopes = np.zeros(7), 0.0, dict.fromkeys(KINDS, nan), 0, 0
    pull_at, lift_at, off_at, end_at = lead, inf, inf, inf
    for part in range(2000):
        until = min(pull_at, lift_at, off_at, end_at, lead + giveUp)
        names, functions = zip(*gauges())
        for function in functions:
            function.terminal, function.direction = True, 1
        solved = solve_ivp(slope, (now, until), y, method=method, events=functions, rtol=relative, atol=ABSOLUTE * relative, jac=jacobian)
        y, now, steps, slopes = solved.y[:, -1].copy(), float(solved.t[-1]), steps + len(solved.t) - 1, slopes + solved.nfev
        if solved.status < 0:
            break
        if solved.status == 1:
            kind = happened(next(name for name, at in zip(names, solved.t_events) if len(at)), y)
            if kind == "relief opened":
                lift_at = now + delay
                if isnan(first[kind]):
                    off_at = now + stop
            if kind == "ram home" and not isnan(first["relief opened"]):
                end_at = min(end_at, now + settle)
            if kind and isnan(first[kind]):
                first[kind] = now
        elif until == end_at:
            return steps, slopes, first
        elif now >= lift_at:
            lift_at, lifts = inf, opened
        elif now >= pull_at:
            pull_at = inf
            pull(y)
        elif now < off_at:
            break  # given up: not the stroke that is asked for
        else:
            off_at, end_at, drive = inf, min(end_at, now + longestReturn), BRAKING if y[SPEED] > 0 else STANDING
    return steps, slopes, dict.fromkeys(KINDS, nan)

for word in sys.argv[3:]:
    method, relative = word.split(":")
    best = inf
    for block in range(int(sys.argv[2])):
        before = time.process_time()
        steps, slopes, first = one_stroke(method, float(relative))
        best = min(best, time.process_time() - before)
    print(float(relative), best, steps, 0, slopes, *(first[kind] for kind in KINDS), flush=True)
