// The few special functions that distributions need, in double precision: normal distribution and its inverse
// (Wichura 1988, Applied Statistics 37:477, algorithm AS 241), log gamma (Lanczos), incomplete beta by its
// continued fraction and its inverse by bisection. Checked by round trips and published tables.

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Standard normal distribution: chance of a value up to x. */
export function normalCdf(x: number): number {
  if (x < -6) return upperTail(-x);
  if (x > 6) return 1 - upperTail(x);
  let [term, sum] = [x, x];
  for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum); k += 2) {
    term *= (x * x) / k;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / ROOT_TWO_PI;
}

/** Laplace's continued fraction, for x > 6. */
function upperTail(x: number): number {
  let fraction = x;
  for (let k = 60; k >= 1; k--) fraction = x + k / fraction;
  return Math.exp((-x * x) / 2) / (ROOT_TWO_PI * fraction);
}

function horner(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let at = coefficients.length - 1; at >= 0; at--) sum = sum * x + coefficients[at]!;
  return sum;
}

const CENTRE = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
];
const CENTRE_UNDER = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852854,
];
const NEAR = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
];
const NEAR_UNDER = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
const FAR = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
];
const FAR_UNDER = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
  1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
];

/** The value below which a standard normal falls with chance p. */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * horner(CENTRE, r)) / horner(CENTRE_UNDER, r);
  }
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const size =
    r <= 5
      ? horner(NEAR, r - 1.6) / horner(NEAR_UNDER, r - 1.6)
      : horner(FAR, r - 5) / horner(FAR_UNDER, r - 5);
  return q < 0 ? -size : size;
}

const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406,
  12.507343278686905, -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
];

/** Natural logarithm of gamma, for x > 0. */
export function logGamma(x: number): number {
  const z = x - 1;
  const sum = LANCZOS.reduce((all, next, at) => (at === 0 ? next : all + next / (z + at)), 0);
  const t = z + 7.5;
  return Math.log(ROOT_TWO_PI * sum) + (z + 0.5) * Math.log(t) - t;
}

/** Beta distribution: chance of a value up to x, 0 to 1. */
export function betaCdf(x: number, alpha: number, beta: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const logFront = logGamma(alpha + beta) - logGamma(alpha) - logGamma(beta);
  const front = Math.exp(logFront + alpha * Math.log(x) + beta * Math.log1p(-x));
  return x < (alpha + 1) / (alpha + beta + 2)
    ? (front * betaFraction(x, alpha, beta)) / alpha
    : 1 - (front * betaFraction(1 - x, beta, alpha)) / beta;
}

/** Lentz's evaluation of the continued fraction of the incomplete beta. */
function betaFraction(x: number, a: number, b: number): number {
  const away = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return fraction;
}

/** The value below which a beta falls with chance p; bisection, for shapes may be far below 1. */
export function betaQuantile(p: number, alpha: number, beta: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let [low, high] = [0, 1];
  for (let i = 0; i < 2000 && high - low > 1e-15 * high; i++) {
    const middle = low < high / 1e3 ? Math.sqrt(Math.max(low, 1e-300) * high) : (low + high) / 2;
    if (betaCdf(middle, alpha, beta) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
