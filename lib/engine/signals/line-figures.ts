import { SPEED_OF_LIGHT, VACUUM_IMPEDANCE_OHM, VACUUM_PERMITTIVITY } from './constants'

/** What a line alone shows to a fast edge. */
export interface LineFigures {
  readonly impedanceOhm: number
  readonly effectivePermittivity: number
  readonly delayPsPerMm: number
}

type Capacitances = readonly (readonly number[])[]
interface Solved {
  readonly capacitance: Capacitances
  readonly capacitanceInAir: Capacitances
}

/** √(permittivity)/c. Exact. */
export function delayPsPerMm(effectivePermittivity: number): number {
  return (Math.sqrt(effectivePermittivity) / SPEED_OF_LIGHT) * 1e9
}

/** Z = 1/(c √(C C_air)), ε = C/C_air, exact in the quasi-static limit. */
export function getLineFigures({ capacitance, capacitanceInAir }: Solved): LineFigures {
  return figuresOf(capacitance[0]?.[0] ?? Number.NaN, capacitanceInAir[0]?.[0] ?? Number.NaN)
}

function figuresOf(capacitance: number, inAir: number): LineFigures {
  const effectivePermittivity = capacitance / inAir
  return {
    impedanceOhm: (VACUUM_IMPEDANCE_OHM * VACUUM_PERMITTIVITY) / Math.sqrt(capacitance * inAir),
    effectivePermittivity,
    delayPsPerMm: delayPsPerMm(effectivePermittivity),
  }
}

export interface PairFigures {
  /** Both lines driven alike, and against each other; each as one line of the pair shows it. Means of the two where they differ. */
  readonly even: LineFigures
  readonly odd: LineFigures
  /** Between the two lines, and both together against the planes. */
  readonly differentialOhm: number
  readonly commonOhm: number
  /** Of one line with the other ended in its own impedance: of the impedance matrix, its diagonal's geometric mean. */
  readonly selfOhm: number
  /** C_m/C and L_m/L with C, L the whole capacitance and inductance of a line. */
  readonly capacitiveCoupling: number
  readonly inductiveCoupling: number
  /** (Z_even - Z_odd)/(Z_even + Z_odd); the same by the impedance matrix where the lines differ. */
  readonly couplingCoefficient: number
}

/**
 * Two coupled lines. With L = C_air⁻¹/c², the impedance matrix is √(LC) C⁻¹, of which the differential impedance is Z11+Z22-2Z12 and the common
 * one the lines in parallel. Exact in the quasi-static limit, equal lines or not.
 */
export function getPairFigures({ capacitance, capacitanceInAir }: Solved): PairFigures {
  const c = asPair(capacitance)
  const air = asPair(capacitanceInAir)
  const l = inverse(air, 1 / SPEED_OF_LIGHT ** 2)
  // Capacitances come out symmetric to solution error only; the product is taken as it is, its root by Cayley and Hamilton.
  const product = multiply(l, c)
  const determinantRoot = Math.sqrt(product.a * product.d - product.b * product.c)
  const divisor = Math.sqrt(product.a + product.d + 2 * determinantRoot)
  const root: Matrix = {
    a: (product.a + determinantRoot) / divisor,
    b: product.b / divisor,
    c: product.c / divisor,
    d: (product.d + determinantRoot) / divisor,
  }
  const z = multiply(root, inverse(c, 1))
  const mutual = (z.b + z.c) / 2
  const selfOhm = Math.sqrt(z.a * z.d)
  const differentialOhm = z.a + z.d - 2 * mutual
  const even = figuresOf((c.a + c.d + c.b + c.c) / 2, (air.a + air.d + air.b + air.c) / 2)
  const odd = figuresOf((c.a + c.d - c.b - c.c) / 2, (air.a + air.d - air.b - air.c) / 2)
  return {
    even,
    odd,
    differentialOhm,
    commonOhm: (z.a * z.d - mutual * mutual) / differentialOhm,
    selfOhm,
    capacitiveCoupling: -(c.b + c.c) / (2 * Math.sqrt(c.a * c.d)),
    inductiveCoupling: (l.b + l.c) / (2 * Math.sqrt(l.a * l.d)),
    couplingCoefficient: mutual / selfOhm,
  }
}

interface Matrix {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
}

function asPair([first, second]: Capacitances): Matrix {
  return {
    a: first?.[0] ?? Number.NaN,
    b: first?.[1] ?? Number.NaN,
    c: second?.[0] ?? Number.NaN,
    d: second?.[1] ?? Number.NaN,
  }
}

function inverse({ a, b, c, d }: Matrix, factor: number): Matrix {
  const share = factor / (a * d - b * c)
  return { a: d * share, b: -b * share, c: -c * share, d: a * share }
}

function multiply(one: Matrix, two: Matrix): Matrix {
  return {
    a: one.a * two.a + one.b * two.c,
    b: one.a * two.b + one.b * two.d,
    c: one.c * two.a + one.d * two.c,
    d: one.c * two.b + one.d * two.d,
  }
}
