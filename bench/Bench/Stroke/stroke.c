/* One stroke between closing dies, by SUNDIALS CVODE (BDF, dense, roots): the equations of src/Hydraulics/Strokes written out once more.
 * stroke PARAMETERS BLOCKS STROKES ORDER TOLERANCE...  -> order of the method at most; one line a tolerance: tolerance, best processor seconds of one stroke, steps, refused, slopes, events.
 * Slope and Jacobian are apart, so that a slope pays for no derivative. SI units. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

enum { SPEED, PRESSURE, POSITION, VELOCITY, DRAWN, LIFT, READING, STATES };
enum { STANDING, LIMITED, FREE, STALLED, BRAKING };
enum { HOME, OUT, STUCK, BACK };
enum { CURRENT, STANDSTILL, RELIEF, RAM_OUT, RAM_BACK, DIES, RESERVOIR, DELIVERY, GAUGES };
enum { RAM_MOVES, DIES_CLOSED, RELIEF_OPENED, DIES_PARTED, RELIEF_CLOSED, RAM_HOME, KINDS };

#define PARAMETERS(X) X(volts) X(ohms) X(torque) X(motorFriction) X(inertia) X(gear) X(efficiency) X(limitAmperes) X(limitEnds) X(stall) X(filled) X(chamber) \
    X(deliveryLeak) X(chamberLeak) X(standingLeak) X(bypass) X(usable) X(modulus) X(modulusSlope) X(air) X(exponent) X(density) X(dead) X(area) X(stroke) X(mass) \
    X(viscous) X(dry) X(seal) X(preload) X(spring) X(frame) X(opens) X(closing) X(reliefArea) X(delay) X(reliefSeconds) X(sensor) X(stop) X(lead) X(settle) X(longestReturn) X(giveUp)
static struct { double
#define X(name) name,
PARAMETERS(X)
#undef X
last; } p;

static struct { int drive, ram, dies, open, lifts, empty, delivering; } m;
static long slopes;

static const double Atmosphere = 101325, Least = 20000, Rounded = 2000;

static int turns(void) { return m.drive == LIMITED || m.drive == FREE || m.drive == BRAKING; }

static double modulus(double gauge, double *slope)
{
    double absolute = fmax(gauge + Atmosphere, Least), oil = p.modulus + p.modulusSlope * fmax(gauge, 0), oilSlope = gauge > 0 ? p.modulusSlope : 0;
    if (p.air <= 0) {
        if (slope) *slope = oilSlope;
        return oil;
    }
    double gas = p.air * pow(Atmosphere / absolute, 1 / p.exponent), whole = 1 - p.air + gas, share = gas / whole;
    double softness = (1 - share) / oil + share / (p.exponent * absolute);
    if (slope) {
        double moves = gauge + Atmosphere > Least, shareSlope = -moves * gas / (p.exponent * absolute) * (1 - p.air) / (whole * whole);
        *slope = -(-shareSlope / oil - (1 - share) * oilSlope / (oil * oil) + shareSlope / (p.exponent * absolute) - moves * share / (p.exponent * absolute * absolute)) / (softness * softness);
    }
    return 1 / softness;
}

static double squeeze(double gauge, double *slope)
{
    if (gauge <= 0) {
        if (slope) *slope = 0;
        return 0;
    }
    double ratio = 1 + p.modulusSlope * gauge / p.modulus, oil = p.modulusSlope > 0 ? pow(ratio, -1 / p.modulusSlope) : exp(-gauge / p.modulus);
    if (slope) *slope = oil / (p.modulus * ratio);
    return 1 - oil;
}

static double perRadian(void) { return 1 / (2 * M_PI * p.gear); }

static double delivery(const double *y, double *perTurn)
{
    double each = p.filled - (p.chamber + p.filled) * squeeze(y[PRESSURE], NULL);
    if (perTurn) *perTurn = each;
    return perRadian() * y[SPEED] * each - p.chamberLeak * y[PRESSURE];
}

static double jet(double pressure) { return p.reliefArea * sqrt(2 / p.density) * pressure / sqrt(fabs(pressure) + Rounded); }

static double flowIfFilled(const double *y)
{
    double flow = turns() ? -0.5 * p.deliveryLeak * y[PRESSURE] + (m.delivering ? delivery(y, NULL) : 0) : -p.standingLeak * y[PRESSURE];
    return flow - p.bypass * y[PRESSURE] - y[LIFT] * jet(y[PRESSURE]);
}

static double push(const double *y)
{
    return p.area * y[PRESSURE] - p.preload - p.spring * y[POSITION] - (m.dies ? p.frame * (y[POSITION] - p.stroke) : 0);
}

static double friction(const double *y) { return p.dry + p.seal * p.area * fmax(y[PRESSURE], 0); }

static double load(const double *y) { return m.empty || y[PRESSURE] <= 0 ? 0 : p.filled / (2 * M_PI * p.gear * p.efficiency) * y[PRESSURE]; }

static double motor(const double *y)
{
    double damping = p.torque * p.torque / p.ohms;
    return m.drive == LIMITED ? p.torque * p.limitAmperes : m.drive == FREE ? p.torque * p.volts / p.ohms - damping * y[SPEED] : m.drive == BRAKING ? -damping * y[SPEED] : p.torque * p.stall;
}

static double stallTorqueLeft(const double *y) { return p.torque * p.stall - p.motorFriction - load(y); }

static int slope(realtype t, N_Vector vector, N_Vector out, void *unused)
{
    const double *y = N_VGetArrayPointer(vector);
    double *f = N_VGetArrayPointer(out), flow = m.empty ? 0 : flowIfFilled(y);
    (void)t, (void)unused, slopes++;
    f[SPEED] = turns() ? (motor(y) - p.motorFriction - load(y)) / p.inertia : 0;
    f[PRESSURE] = modulus(y[PRESSURE], NULL) / (p.dead + p.area * fmax(y[POSITION], 0)) * (flow - p.area * y[VELOCITY]);
    f[POSITION] = f[VELOCITY] = 0;
    if (m.ram == OUT || m.ram == BACK) {
        f[POSITION] = y[VELOCITY];
        f[VELOCITY] = (push(y) - (m.ram == BACK ? -1 : 1) * friction(y) - p.viscous * y[VELOCITY]) / p.mass;
    }
    f[DRAWN] = flow;
    f[LIFT] = (m.lifts - y[LIFT]) / p.reliefSeconds;
    f[READING] = (y[PRESSURE] - y[READING]) / p.sensor;
    return 0;
}

static int jacobian(realtype t, N_Vector vector, N_Vector fy, SUNMatrix j, void *unused, N_Vector a, N_Vector b, N_Vector c)
{
    const double *y = N_VGetArrayPointer(vector);
    (void)t, (void)fy, (void)unused, (void)a, (void)b, (void)c;
    SUNMatZero(j);
#define J(row, column) SM_ELEMENT_D(j, row, column)
    double bulkSlope, squeezeSlope, perTurn, bulk = modulus(y[PRESSURE], &bulkSlope), volume = p.dead + p.area * fmax(y[POSITION], 0), stiff = bulk / volume;
    squeeze(y[PRESSURE], &squeezeSlope);
    delivery(y, &perTurn);
    if (turns()) {
        J(SPEED, SPEED) = m.drive == LIMITED ? 0 : -p.torque * p.torque / p.ohms / p.inertia;
        J(SPEED, PRESSURE) = m.empty || y[PRESSURE] <= 0 ? 0 : -p.filled / (2 * M_PI * p.gear * p.efficiency) / p.inertia;
    }
    double byS = 0, byP = 0, byL = 0, flow = m.empty ? 0 : flowIfFilled(y);
    if (!m.empty) {
        byP = turns() ? -0.5 * p.deliveryLeak : -p.standingLeak;
        if (turns() && m.delivering) {
            byS = perRadian() * perTurn;
            byP -= perRadian() * y[SPEED] * (p.chamber + p.filled) * squeezeSlope + p.chamberLeak;
        }
        double rounded = fabs(y[PRESSURE]) + Rounded;
        byP -= p.bypass + y[LIFT] * p.reliefArea * sqrt(2 / p.density) * (0.5 * fabs(y[PRESSURE]) + Rounded) / (rounded * sqrt(rounded));
        byL = -jet(y[PRESSURE]);
    }
    double net = flow - p.area * y[VELOCITY];
    J(PRESSURE, SPEED) = stiff * byS;
    J(PRESSURE, PRESSURE) = bulkSlope / volume * net + stiff * byP;
    J(PRESSURE, POSITION) = -stiff / volume * p.area * net;
    J(PRESSURE, VELOCITY) = -stiff * p.area;
    J(PRESSURE, LIFT) = stiff * byL;
    if (m.ram == OUT || m.ram == BACK) {
        J(POSITION, VELOCITY) = 1;
        J(VELOCITY, PRESSURE) = (p.area - (m.ram == BACK ? -1 : 1) * (y[PRESSURE] > 0 ? p.seal * p.area : 0)) / p.mass;
        J(VELOCITY, POSITION) = (-p.spring - (m.dies ? p.frame : 0)) / p.mass;
        J(VELOCITY, VELOCITY) = -p.viscous / p.mass;
    }
    J(DRAWN, SPEED) = byS, J(DRAWN, PRESSURE) = byP, J(DRAWN, LIFT) = byL;
    J(LIFT, LIFT) = -1 / p.reliefSeconds;
    J(READING, PRESSURE) = 1 / p.sensor, J(READING, READING) = -1 / p.sensor;
    return 0;
}

static int gauges(realtype t, N_Vector vector, realtype *g, void *unused)
{
    const double *y = N_VGetArrayPointer(vector);
    (void)t, (void)unused;
    for (int i = 0; i < GAUGES; i++) g[i] = -1;
    if (m.drive == LIMITED) g[CURRENT] = y[SPEED] - p.limitEnds;
    else if (m.drive == FREE && p.limitEnds > 0) g[CURRENT] = p.limitEnds - y[SPEED];
    if (m.drive != STANDING) g[STANDSTILL] = m.drive == STALLED ? stallTorqueLeft(y) : -y[SPEED];
    g[RELIEF] = m.open ? p.closing * p.opens - y[PRESSURE] : y[PRESSURE] - p.opens;
    if (m.ram == HOME || m.ram == STUCK) g[RAM_OUT] = push(y) - friction(y);
    if (m.ram == STUCK) g[RAM_BACK] = -push(y) - friction(y);
    if (m.ram == OUT) g[RAM_BACK] = -y[VELOCITY];
    if (m.ram == BACK) g[RAM_OUT] = y[VELOCITY], g[RAM_BACK] = -y[POSITION];
    g[DIES] = m.dies ? p.stroke - y[POSITION] : y[POSITION] - p.stroke;
    g[RESERVOIR] = m.empty ? -flowIfFilled(y) : y[DRAWN] - p.usable;
    if (turns()) g[DELIVERY] = m.delivering ? -delivery(y, NULL) : delivery(y, NULL);
    return 0;
}

static void pull(double *y)
{
    m.drive = y[SPEED] < p.limitEnds ? LIMITED : FREE;
    m.delivering = delivery(y, NULL) >= 0;
    if (y[SPEED] <= 0 && stallTorqueLeft(y) <= 0) m.drive = STALLED;
}

static int moved(int gauge, double *y)
{
    int was = m.ram;
    if (was == BACK && gauge == RAM_BACK) {
        y[POSITION] = y[VELOCITY] = 0, m.ram = HOME;
        return RAM_HOME;
    }
    y[VELOCITY] = 0;
    m.ram = was == HOME || was == STUCK ? (gauge == RAM_OUT ? OUT : BACK) : was == OUT ? (push(y) < -friction(y) ? BACK : STUCK) : push(y) > friction(y) ? OUT : STUCK;
    return was == HOME ? RAM_MOVES : KINDS;
}

static int happened(int gauge, double *y)
{
    switch (gauge) {
    case CURRENT: m.drive = m.drive == LIMITED ? FREE : LIMITED; return KINDS;
    case STANDSTILL:
        if (m.drive == STALLED) pull(y);
        else y[SPEED] = 0, m.drive = m.drive == BRAKING ? STANDING : STALLED;
        return KINDS;
    case RELIEF: m.open = !m.open, m.lifts &= m.open; return m.open ? RELIEF_OPENED : RELIEF_CLOSED;
    case DIES: m.dies = !m.dies; return m.dies ? DIES_CLOSED : DIES_PARTED;
    case RESERVOIR: m.empty = !m.empty, y[DRAWN] = p.usable; return KINDS;
    case DELIVERY: m.delivering = !m.delivering; return KINDS;
    default: return moved(gauge, y);
    }
}

typedef struct { void *cvode; N_Vector y; long steps, refused; double first[KINDS]; } Run;

/* From rest to a moment after the ram is home, or null at a failure. */
static int stroke(Run *run)
{
    double *y = N_VGetArrayPointer(run->y), now = 0, pullAt = p.lead, liftAt = INFINITY, offAt = INFINITY, endAt = INFINITY;
    memset(y, 0, STATES * sizeof *y), memset(&m, 0, sizeof m), m.delivering = 1;
    for (int i = 0; i < KINDS; i++) run->first[i] = NAN;
    run->steps = run->refused = 0;
    for (int part = 0; part < 2000; part++) {
        double until = fmin(fmin(fmin(pullAt, offAt), fmin(endAt, liftAt)), p.lead + p.giveUp);
        if (CVodeReInit(run->cvode, now, run->y) || CVodeSetStopTime(run->cvode, until)) return 0;
        int answer = CVode(run->cvode, until, run->y, &now, CV_NORMAL), found[GAUGES];
        long steps, refused;
        CVodeGetNumSteps(run->cvode, &steps), CVodeGetNumErrTestFails(run->cvode, &refused);
        run->steps += steps, run->refused += refused;
        if (answer == CV_ROOT_RETURN) {
            CVodeGetRootInfo(run->cvode, found);
            for (int gauge = 0; gauge < GAUGES; gauge++) {
                if (!found[gauge]) continue;
                int kind = happened(gauge, y);
                if (kind == RELIEF_OPENED) {
                    liftAt = now + p.delay;
                    if (isnan(run->first[kind])) offAt = now + p.stop;
                }
                if (kind == RAM_HOME && !isnan(run->first[RELIEF_OPENED])) endAt = fmin(endAt, now + p.settle);
                if (kind < KINDS && isnan(run->first[kind])) run->first[kind] = now;
                break; /* one at a time, the first gauge first */
            }
        } else if (answer < 0) return 0;
        else if (until == endAt) return 1;
        else if (now >= liftAt) liftAt = INFINITY, m.lifts = m.open;
        else if (now >= pullAt) pullAt = INFINITY, pull(y);
        else if (now < offAt) return 0; /* given up: not the stroke that is asked for */
        else offAt = INFINITY, endAt = fmin(endAt, now + p.longestReturn), m.drive = y[SPEED] > 0 ? BRAKING : STANDING;
    }
    return 0;
}

static int readParameters(const char *path)
{
    FILE *file = fopen(path, "r");
    int ok = file != NULL;
#define X(name) ok = ok && fscanf(file, #name " %lf ", &p.name) == 1;
    PARAMETERS(X)
#undef X
    if (file) fclose(file);
    return ok;
}

static double processorSeconds(void)
{
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return at.tv_sec + 1e-9 * at.tv_nsec;
}

int main(int count, char **words)
{
    static const double absolute[STATES] = { 0.2, 2e3, 1e-7, 1e-4, 1e-10, 1e-3, 2e3 }; /* at a relative tolerance of 1e-4, and along with it */
    int rising[GAUGES];
    SUNContext context;
    if (count < 6 || !readParameters(words[1]) || SUNContext_Create(NULL, &context)) return 2;
    for (int i = 0; i < GAUGES; i++) rising[i] = 1;
    for (int word = 5; word < count; word++) {
        double relative = atof(words[word]), best = INFINITY;
        Run run = { .cvode = CVodeCreate(CV_BDF, context), .y = N_VNew_Serial(STATES, context) };
        N_Vector tolerance = N_VNew_Serial(STATES, context);
        SUNMatrix matrix = SUNDenseMatrix(STATES, STATES, context);
        SUNLinearSolver solver = SUNLinSol_Dense(run.y, matrix, context);
        for (int i = 0; i < STATES; i++) NV_Ith_S(tolerance, i) = absolute[i] * relative / 1e-4, NV_Ith_S(run.y, i) = 0;
        if (CVodeInit(run.cvode, slope, 0, run.y) || CVodeSVtolerances(run.cvode, relative, tolerance) || CVodeSetLinearSolver(run.cvode, solver, matrix) ||
            CVodeSetJacFn(run.cvode, jacobian) || CVodeRootInit(run.cvode, GAUGES, gauges) || CVodeSetRootDirection(run.cvode, rising) || CVodeSetMaxNumSteps(run.cvode, 1000000) || CVodeSetMaxOrd(run.cvode, atoi(words[4])) ||
            CVodeSetNoInactiveRootWarn(run.cvode)) return 70;
        int ok = 1, strokes = atoi(words[3]);
        for (int block = 0; block < atoi(words[2]) && ok; block++) {
            double before = processorSeconds();
            for (int i = 0; i < strokes && ok; i++) slopes = 0, ok = stroke(&run);
            best = fmin(best, (processorSeconds() - before) / strokes);
        }
        printf("%.17g %.9g %ld %ld %ld", relative, ok ? best : NAN, run.steps, run.refused, slopes);
        for (int i = 0; i < KINDS; i++) printf(" %.15g", ok ? run.first[i] : NAN);
        printf("\n");
        N_VDestroy(run.y), N_VDestroy(tolerance), SUNMatDestroy(matrix), SUNLinSolFree(solver), CVodeFree(&run.cvode);
    }
    return 0;
}
