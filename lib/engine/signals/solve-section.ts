import type { MeshFineness } from './panels'
import { findSectionFaults, getHeightUm, type LineConductor, type LineSection } from './section'
import { type Charges, type ChargesFault, solveCharges } from './solve-charges'

/**
 * Within 0.04 % of the exact values in test/standards/signals for conductors with thickness, most of it from copper that stands bare on a film;
 * `npm run bench` prints its time.
 */
export const USUAL_FINENESS: MeshFineness = {
  cornerShare: 0.006,
  growth: 2.2,
  cornerGrowth: 8,
  order: 4,
  mostUnknowns: 2_000,
}

/** A few parts in a thousand, for searches that end with a solution of the usual fineness. */
export const ROUGH_FINENESS: MeshFineness = {
  cornerShare: 0.02,
  growth: 3,
  cornerGrowth: 8,
  order: 3,
  mostUnknowns: 2_000,
}

export interface SectionSolution extends Charges {
  readonly ok: true
  /** Lines that carry signals, in the order of the section; grounded conductors are left out. */
  readonly names: readonly string[]
}

export interface SectionRefusal {
  readonly ok: false
  readonly faults: readonly string[]
}

/**
 * Capacitances of a section by boundary elements: charge on conductors and, as total charge, on faces between dielectrics; planes by
 * images. Quasi-static, lossless, thick or thin conductors alike. Method: Wei, Harrington, Mautz, Sarkar, IEEE Trans. MTT 32 (1984) 439 (from
 * memory); piecewise polynomials in place of its pulses. Held against exact values in test/standards/signals.
 * @returns the capacitances, or why there are none
 */
export function solveSection(
  given: LineSection,
  fineness: MeshFineness = USUAL_FINENESS,
): SectionSolution | SectionRefusal {
  const faults = findSectionFaults(given)
  if (faults.length > 0) return { ok: false, faults }
  const section = given.hasPlaneAbove && !given.hasPlaneBelow ? turnOver(given) : given
  const lines = section.conductors.flatMap(({ isGrounded }, index) => (isGrounded === true ? [] : [index]))
  const names = lines.map((index) => section.conductors[index]?.name ?? '')
  const mirror = findMirror(section)
  if (mirror === null) {
    const [whole = 'not-unique'] = solveCharges(section, fineness, lines, ['whole'])
    if (typeof whole === 'string') return REFUSALS[whole]
    const { capacitance, capacitanceInAir, unknowns } = whole
    return { ok: true, names, capacitance, capacitanceInAir, unknowns }
  }
  if (mirror.kind === 'through-lines') {
    const [half = 'not-unique'] = solveCharges(mirror.section, fineness, lines, ['even'])
    if (typeof half === 'string') return REFUSALS[half]
    const twice = (matrix: readonly (readonly number[])[]) => matrix.map((row) => row.map((value) => 2 * value))
    return {
      ok: true,
      names,
      capacitance: twice(half.capacitance),
      capacitanceInAir: twice(half.capacitanceInAir),
      unknowns: half.unknowns,
    }
  }
  const [even = 'not-unique', odd = 'not-unique'] = solveCharges(
    mirror.section,
    fineness,
    [mirror.line],
    ['even', 'odd'],
  )
  if (typeof even === 'string') return REFUSALS[even]
  if (typeof odd === 'string') return REFUSALS[odd]
  const join = (key: 'capacitance' | 'capacitanceInAir') => {
    const [e, o] = [even[key][0]?.[0] ?? Number.NaN, odd[key][0]?.[0] ?? Number.NaN]
    return [
      [(e + o) / 2, (e - o) / 2],
      [(e - o) / 2, (e + o) / 2],
    ]
  }
  return {
    ok: true,
    names,
    capacitance: join('capacitance'),
    capacitanceInAir: join('capacitanceInAir'),
    unknowns: even.unknowns,
  }
}

const refuse = (fault: string): SectionRefusal => ({ ok: false, faults: [fault] })

const REFUSALS: Readonly<Record<ChargesFault, SectionRefusal>> = {
  'not-unique': refuse('The section has no unique solution.'),
  'too-many-unknowns': refuse(
    'The section is too wide for its height to be solved in a reasonable time. Copper that wide is a plate: take its impedance as that of parallel plates, or state the width of the line itself.',
  ),
}

/** Where a section is its own mirror image, with the mirror plane at 0: a half has an eighth of the work. */
function findMirror(
  section: LineSection,
):
  | { kind: 'through-lines'; section: LineSection }
  | { kind: 'between-lines'; section: LineSection; line: number }
  | null {
  const { conductors } = section
  const ends = conductors.map(({ centreUm }) => centreUm)
  const middle = (Math.min(...ends) + Math.max(...ends)) / 2
  const moved = { ...section, conductors: conductors.map((each) => ({ ...each, centreUm: each.centreUm - middle })) }
  const isImage = (one: LineConductor, other: LineConductor) =>
    Math.abs(one.centreUm + other.centreUm) <= 1e-9 * (1 + Math.abs(one.centreUm)) &&
    one.bottomUm === other.bottomUm &&
    one.bottomWidthUm === other.bottomWidthUm &&
    one.topWidthUm === other.topWidthUm &&
    one.thicknessUm === other.thicknessUm &&
    one.isGrounded === other.isGrounded
  const hasImages = moved.conductors.every((one) => moved.conductors.some((other) => isImage(one, other)))
  if (!hasImages) return null
  if (moved.conductors.every((one) => one.isGrounded === true || isImage(one, one)))
    return { kind: 'through-lines', section: moved }
  // Two lines that are images of each other; guards are images of each other, or of themselves.
  const lines = moved.conductors.flatMap(({ isGrounded }, index) => (isGrounded === true ? [] : [index]))
  const line = lines.findIndex((index) => (moved.conductors[index]?.centreUm ?? 0) > 0)
  return lines.length === 2 && section.hasPlaneBelow
    ? { kind: 'between-lines', section: moved, line: lines[line] ?? 0 }
    : null
}

/** The same section with its one plane below. */
function turnOver(section: LineSection): LineSection {
  const height = getHeightUm(section)
  return {
    slabs: section.slabs.toReversed(),
    hasPlaneBelow: true,
    hasPlaneAbove: false,
    conductors: section.conductors.map((each) => ({
      ...each,
      bottomUm: height - each.bottomUm - each.thicknessUm,
      bottomWidthUm: each.topWidthUm,
      topWidthUm: each.bottomWidthUm,
    })),
  }
}
