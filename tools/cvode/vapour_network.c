/*
 * The equations of a vapour network in C, integrated by CVODE (Debian's libsundials-dev), for comparing speed.
 * Reads a flat problem from a file that bench/speed/simulation.ts writes; prints one JSON line.
 *
 *   cc -O2 -march=native -o vapour_network vapour_network.c -lsundials_cvode -lsundials_nvecserial -lm
 *   vapour_network PROBLEM RTOL REPEATS
 */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

#define R_GAS 8.31446261815324
#define R_AIR (R_GAS / 0.0289647)
#define CP_AIR (3.5 * R_AIR)
#define CV_AIR (2.5 * R_AIR)
#define CP_VAPOUR 1680.0
#define LATENT 355e3
#define LAMINAR (5.0 / 101325.0)
#define PSI 6894.757293168361
#define Q_SAT 0.47
#define AFFINITY 2e-4
#define HEAT_ADS 40e3
#define MAX 64

typedef struct { int kind, base; double v[16]; } Space;      /* 0 gas, 1 tank, 2 bed */
typedef struct { int kind, from, to; double v[8]; } Passage; /* 0 orifice, 1 bed, 2 relief */

typedef struct {
  int n, spaces, passages, sensors, stages, samples;
  Space space[MAX];
  Passage passage[MAX];
  int sensor_space[8];
  double sensor_lag[8];
  double ambient, ambient_k, manifold, mv;
  double stage_end[MAX];
  double area[MAX][MAX]; /* by stage and passage */
  double draw;
  double *x0, *atol, *sample, *reference;
  int watch; /* space compared with the reference */
  int stage;
  long evaluations;
  /* gas of the nodes; boundaries after the spaces */
  double p[MAX], t[MAX], w[MAX], rs[MAX], g[MAX];
} Problem;

static double flow_factor(double x, double g) {
  double r = 1 - x;
  if (r < 0.6066 && r <= pow(2 / (g + 1), g / (g - 1))) return sqrt(g) * pow(2 / (g + 1), (g + 1) / (2 * (g - 1)));
  double l = log1p(-x), q = exp(l / g);
  return sqrt(2 * g / (g - 1) * q * (x + expm1(l / g)));
}

static double orifice(double a, double p1, double p2, double t, double rs, double g) {
  double hi = p1 > p2 ? p1 : p2, lo = p1 > p2 ? p2 : p1, x = (hi - lo) / hi, f;
  if (x >= LAMINAR) f = flow_factor(x, g);
  else {
    double f0 = flow_factor(LAMINAR, g), k = 2 * g / (g - 1), r = 1 - LAMINAR, q = pow(r, 1 / g);
    double s0 = 0.5 * k * q * ((g + 1) / g - 2 / g * q / r) / f0 * LAMINAR / f0, u = x / LAMINAR;
    f = f0 * u * (0.5 * (3 - s0) + 0.5 * (s0 - 1) * u * u);
  }
  double m = a * hi / sqrt(rs * t) * f;
  return p1 >= p2 ? m : -m;
}

static double smooth(double v, double a, double b) {
  double u = (v - a) / (b - a);
  return u <= 0 ? 0 : u >= 1 ? 1 : u * u * (3 - 2 * u);
}

static double room(const Space *s, const double *x) {
  return s->kind == 1 ? s->v[0] - x[s->base + 3] / s->v[1] : s->v[0];
}

static void read_gas(Problem *q, const double *x) {
  double rv = R_GAS / q->mv, cvv = CP_VAPOUR - rv;
  for (int i = 0; i < q->spaces; i++) {
    const Space *s = &q->space[i];
    double a = x[s->base], v = x[s->base + 1], t = q->ambient_k;
    if (s->kind == 1) t = x[s->base + 2] / (a * CV_AIR + v * cvv);
    else if (s->kind == 2) t = x[s->base + 3];
    double w = v / (a + v), rs = R_AIR + w * (rv - R_AIR), cp = (1 - w) * CP_AIR + w * CP_VAPOUR;
    q->t[i] = t; q->w[i] = w; q->rs[i] = rs; q->g[i] = cp / (cp - rs);
    q->p[i] = (a * R_AIR + v * rv) * t / room(s, x);
  }
  for (int k = 0; k < 2; k++) {
    int i = q->spaces + k;
    q->p[i] = k == 0 ? q->ambient : q->manifold;
    q->t[i] = q->ambient_k; q->w[i] = 0; q->rs[i] = R_AIR; q->g[i] = 1.4;
  }
}

static int rhs(realtype time, N_Vector nx, N_Vector ndx, void *data) {
  (void)time;
  Problem *q = data;
  const double *x = N_VGetArrayPointer(nx);
  double *dx = N_VGetArrayPointer(ndx), rv = R_GAS / q->mv;
  q->evaluations++;
  read_gas(q, x);
  memset(dx, 0, sizeof(double) * q->n);
  for (int k = 0; k < q->passages; k++) {
    const Passage *c = &q->passage[k];
    int i = c->from, j = c->to;
    double p1 = q->p[i], p2 = q->p[j], m;
    int up = p1 >= p2 ? i : j;
    if (c->kind == 1) {
      double dp = p1 - p2;
      m = 2 * dp / (c->v[0] + sqrt(c->v[0] * c->v[0] + 4 * c->v[1] * fabs(dp)));
    } else {
      double area = q->area[q->stage][k];
      if (c->kind == 2) {
        double from = p1 >= p2 ? c->v[0] : c->v[1];
        area = c->v[4] + (c->v[3] - c->v[4]) * smooth(fabs(p1 - p2), from, from + c->v[2]);
      }
      if (area <= 0) continue;
      m = orifice(area, p1, p2, q->t[up], q->rs[up], q->g[up]);
    }
    double v = m * q->w[up], a = m - v;
    int ends[2] = {i, j};
    for (int e = 0; e < 2; e++) {
      if (ends[e] >= q->spaces) continue;
      const Space *s = &q->space[ends[e]];
      double sign = e ? 1 : -1;
      dx[s->base] += sign * a;
      dx[s->base + 1] += sign * v;
      if (s->kind == 1) dx[s->base + 2] += sign * (a * CP_AIR + v * CP_VAPOUR) * q->t[up];
    }
  }
  for (int i = 0; i < q->spaces; i++) {
    const Space *s = &q->space[i];
    int b = s->base;
    if (s->kind == 1) {
      /* v: room, density, kA, factor, antoine a, antoine b, wall, fuel, ambient, shell heat, fuel cp */
      double tl = x[b + 4], tg = q->t[i], pv = x[b + 1] * rv * tg / room(s, x);
      double ps = s->v[3] * PSI * exp(s->v[4] - s->v[5] / (tl * 1.8 - 0.07));
      double ev = s->v[2] * (ps - pv) * q->mv / (R_GAS * tl), qf = s->v[7] * (tl - tg);
      double cap = x[b + 3] * s->v[10] + s->v[9];
      dx[b + 1] += ev;
      dx[b + 3] -= ev + s->v[1] * q->draw;
      dx[b + 2] += ev * CP_VAPOUR * tl + s->v[6] * (q->ambient_k - tg) + qf - q->p[i] * q->draw;
      dx[b + 4] += (s->v[8] * (q->ambient_k - tl) - qf - ev * LATENT) / cap;
    } else if (s->kind == 2) {
      /* v: room, carbon, rate, heat capacity, to ambient */
      double t = x[b + 3], pv = x[b + 1] * rv * t / s->v[0];
      double a = AFFINITY * exp(HEAT_ADS / R_GAS * (1 / t - 1 / 298.15)) * pv;
      double take = s->v[2] * (s->v[1] * Q_SAT * a / (1 + a) - x[b + 2]);
      dx[b + 1] -= take;
      dx[b + 2] += take;
      dx[b + 3] += (take * HEAT_ADS / q->mv + s->v[4] * (q->ambient_k - t)) / s->v[3];
    }
  }
  for (int k = 0; k < q->sensors; k++) {
    int r = q->n - q->sensors + k;
    dx[r] = (q->p[q->sensor_space[k]] - q->ambient - x[r]) / q->sensor_lag[k];
  }
  return 0;
}

static double number(FILE *f) {
  double v;
  if (fscanf(f, "%lf", &v) != 1) { fprintf(stderr, "problem file: a number is missing\n"); exit(2); }
  return v;
}

static double seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc != 4) { fprintf(stderr, "usage: vapour_network PROBLEM RTOL REPEATS\n"); return 2; }
  FILE *f = fopen(argv[1], "r");
  if (!f) { perror(argv[1]); return 2; }
  static Problem q;
  q.n = number(f); q.spaces = number(f); q.passages = number(f); q.sensors = number(f); q.stages = number(f); q.samples = number(f);
  q.ambient = number(f); q.ambient_k = number(f); q.manifold = number(f); q.mv = number(f); q.draw = number(f); q.watch = number(f);
  for (int i = 0; i < q.spaces; i++) { q.space[i].kind = number(f); q.space[i].base = number(f); for (int k = 0; k < 11; k++) q.space[i].v[k] = number(f); }
  for (int i = 0; i < q.passages; i++) { q.passage[i].kind = number(f); q.passage[i].from = number(f); q.passage[i].to = number(f); for (int k = 0; k < 5; k++) q.passage[i].v[k] = number(f); }
  for (int k = 0; k < q.sensors; k++) { q.sensor_space[k] = number(f); q.sensor_lag[k] = number(f); }
  for (int s = 0; s < q.stages; s++) { q.stage_end[s] = number(f); for (int k = 0; k < q.passages; k++) q.area[s][k] = number(f); }
  q.x0 = malloc(sizeof(double) * q.n); q.atol = malloc(sizeof(double) * q.n);
  q.sample = malloc(sizeof(double) * q.samples); q.reference = malloc(sizeof(double) * q.samples);
  for (int i = 0; i < q.n; i++) { q.x0[i] = number(f); q.atol[i] = number(f); }
  for (int i = 0; i < q.samples; i++) { q.sample[i] = number(f); q.reference[i] = number(f); }
  fclose(f);
  double rtol = atof(argv[2]), best = 1e99, worst = 0;
  int repeats = atoi(argv[3]);
  long steps = 0;
  for (int r = 0; r < repeats; r++) {
    double begin = seconds();
    SUNContext context;
    SUNContext_Create(NULL, &context);
    N_Vector x = N_VNew_Serial(q.n, context), atol = N_VNew_Serial(q.n, context);
    memcpy(N_VGetArrayPointer(x), q.x0, sizeof(double) * q.n);
    memcpy(N_VGetArrayPointer(atol), q.atol, sizeof(double) * q.n);
    void *cv = CVodeCreate(CV_BDF, context);
    q.stage = 0; q.evaluations = 0; worst = 0; steps = 0;
    CVodeInit(cv, rhs, 0, x);
    CVodeSVtolerances(cv, rtol, atol);
    CVodeSetUserData(cv, &q);
    CVodeSetMaxNumSteps(cv, 100000);
    SUNMatrix a = SUNDenseMatrix(q.n, q.n, context);
    SUNLinearSolver ls = SUNLinSol_Dense(x, a, context);
    CVodeSetLinearSolver(cv, ls, a);
    int k = 0;
    realtype t = 0;
    for (q.stage = 0; q.stage < q.stages; q.stage++) {
      double end = q.stage_end[q.stage];
      if (q.stage > 0) CVodeReInit(cv, t, x);
      CVodeSetStopTime(cv, end);
      while (k < q.samples && q.sample[k] <= t + 1e-9) k++; /* a sample on a stop belongs to the stretch before */
      for (;;) {
        double next = k < q.samples && q.sample[k] < end ? q.sample[k] : end;
        int flag = CVode(cv, next, x, &t, CV_NORMAL);
        if (flag < 0) { fprintf(stderr, "CVODE: flag %d at %g\n", flag, t); return 1; }
        if (next >= end) break;
        read_gas(&q, N_VGetArrayPointer(x));
        double error = fabs(q.p[q.watch] - q.ambient - q.reference[k]);
        if (error > worst) worst = error;
        k++;
      }
      long n;
      CVodeGetNumSteps(cv, &n);
      steps += n;
    }
    CVodeFree(&cv); SUNLinSolFree(ls); SUNMatDestroy(a); N_VDestroy(x); N_VDestroy(atol); SUNContext_Free(&context);
    double spent = seconds() - begin;
    if (spent < best) best = spent;
  }
  printf("{\"method\": \"CVODE in C\", \"seconds\": %.9g, \"simulatedS\": %.9g, \"evaluations\": %ld, \"steps\": %ld, \"errorPa\": %.4g}\n",
         best, q.stage_end[q.stages - 1], q.evaluations, steps, worst);
  return 0;
}
