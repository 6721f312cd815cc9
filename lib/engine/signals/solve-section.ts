import { addBetweenPlanes } from './between-planes'
import { factor, solveColumns, subtractProduct } from './dense'
import { addInfluence, type Influence, MOST_ORDER, makeInfluence, pointsOnPanel } from './influence'
import { type MeshFineness, makePanels, type Panel } from './panels'
import { findSectionFaults, getHeightUm, type LineConductor, type LineSection } from './section'

/** Permittivity of vacuum, F/m, and speed of light, m/s: CODATA 2018 and exact. */
export const VACUUM_PERMITTIVITY = 8.8541878128e-12
export const SPEED_OF_LIGHT = 299_792_458
export const VACUUM_IMPEDANCE_OHM = 1 / (VACUUM_PERMITTIVITY * SPEED_OF_LIGHT)

/**
 * Within 0.04 % of the exact values in test/standards/signals for conductors with thickness, most of it from copper that stands bare on a film;
 * `npm run bench` prints its time.
 */
export const USUAL_FINENESS: MeshFineness = { cornerShare: 0.003, growth: 2.2, cornerGrowth: 8, order: 4 }

/** A few parts in a thousand, for searches that end with a solution of the usual fineness. */
export const ROUGH_FINENESS: MeshFineness = { cornerShare: 0.02, growth: 3, cornerGrowth: 8, order: 3 }

export interface SectionSolution {
  readonly ok: true
  /** Lines that carry signals, in the order of the section; grounded conductors are left out. */
  readonly names: readonly string[]
  /** Maxwell capacitances by line and line, F/m, and those without dielectrics. */
  readonly capacitance: readonly (readonly number[])[]
  readonly capacitanceInAir: readonly (readonly number[])[]
  /** Of the largest system that was solved. */
  readonly unknowns: number
}

export interface SectionRefusal {
  readonly ok: false
  readonly faults: readonly string[]
}

/** Charge without a sign for what it stands on: flux of vacuum, so that potentials carry no units. */
interface Blocks {
  /** Potential at points of conductors from charge of conductors, and from charge of faces. */
  readonly byConductors: Float64Array
  readonly byFaces: Float64Array
  /** Normal field at points of faces, and at points of strips between two dielectrics. */
  readonly fieldByConductors: Float64Array
  readonly fieldByFaces: Float64Array
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
    const [whole = null] = solveCharges(section, fineness, lines, ['whole'])
    return whole === null ? NO_SOLUTION : { ok: true, names, ...whole }
  }
  if (mirror.kind === 'through-lines') {
    const [half = null] = solveCharges(mirror.section, fineness, lines, ['even'])
    if (half === null) return NO_SOLUTION
    const twice = (matrix: readonly (readonly number[])[]) => matrix.map((row) => row.map((value) => 2 * value))
    return {
      ok: true,
      names,
      capacitance: twice(half.capacitance),
      capacitanceInAir: twice(half.capacitanceInAir),
      unknowns: half.unknowns,
    }
  }
  const [even = null, odd = null] = solveCharges(mirror.section, fineness, [mirror.line], ['even', 'odd'])
  if (even === null || odd === null) return NO_SOLUTION
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

const NO_SOLUTION: SectionRefusal = { ok: false, faults: ['The section has no unique solution.'] }

/** Whether a system stands for the whole section, or for the half on the right of its mirror plane, with potentials alike or opposite there. */
type Part = 'whole' | 'even' | 'odd'

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
  const line = moved.conductors.findIndex(({ centreUm }) => centreUm > 0)
  return conductors.length === 2 && section.hasPlaneBelow ? { kind: 'between-lines', section: moved, line } : null
}

type Charges = Pick<SectionSolution, 'capacitance' | 'capacitanceInAir' | 'unknowns'>

/** @returns for each of the parts, null where it has no unique solution; what pieces do to each other is worked out once for all */
function solveCharges(
  section: LineSection,
  fineness: MeshFineness,
  lines: readonly number[],
  parts: readonly Part[],
): (Charges | null)[] {
  const scaleUm = findScaleUm(section)
  // Faces that reach across the mirror plane are cut in their middle by the mesh.
  const panels = makePanels(section, fineness, true, scaleUm).filter(({ x }) => parts[0] === 'whole' || x > 0)
  const conductorPanels = panels.filter(({ conductor }) => conductor >= 0)
  const facePanels = panels.filter(({ conductor }) => conductor < 0)
  const floats = !section.hasPlaneBelow
  const spacing = section.hasPlaneBelow && section.hasPlaneAbove ? getHeightUm(section) / scaleUm : null

  const starts: number[] = []
  let unknowns = 0
  for (const { order } of conductorPanels) {
    starts.push(unknowns)
    unknowns += order
  }
  // The potential far away is an unknown of its own where no plane fixes it; the whole charge is then zero.
  const size = unknowns + (floats ? 1 : 0)
  const faceSize = facePanels.reduce((sum, { order }) => sum + order, 0)
  const system = { conductorPanels, facePanels, size, faceSize, hasPlane: section.hasPlaneBelow, spacing, floats }
  return fillBlocks(system, parts).map((blocks, at) =>
    solveBlocks(system, blocks, { lines, starts, part: parts[at] ?? 'whole' }),
  )
}

function solveBlocks(
  { conductorPanels, facePanels, size, faceSize, hasPlane, spacing }: ToFill,
  blocks: Blocks,
  {
    lines,
    starts,
    part,
  }: { readonly lines: readonly number[]; readonly starts: readonly number[]; readonly part: Part },
): Charges | null {
  const potentials = new Float64Array(size * lines.length)
  conductorPanels.forEach(({ conductor, order }, at) => {
    const line = lines.indexOf(conductor)
    if (line < 0) return
    for (let row = 0; row < order; row += 1) potentials[((starts[at] as number) + row) * lines.length + line] = 1
  })
  const factors = factor(blocks.byConductors, size)
  if (factors === null) return null
  const air = solveColumns(factors, potentials, lines.length)

  let charge = air
  let faceCharge = new Float64Array(0)
  if (faceSize > 0) {
    const answered = solveColumns(factors, blocks.byFaces, faceSize)
    // Schur complement of the faces: what they do to each other by way of the conductors.
    const system = blocks.fieldByFaces
    subtractProduct(system, blocks.fieldByConductors, answered, faceSize, size, faceSize)
    const right = new Float64Array(faceSize * lines.length)
    subtractProduct(right, blocks.fieldByConductors, air, faceSize, size, lines.length)
    const faceFactors = factor(system, faceSize)
    if (faceFactors === null) return null
    faceCharge = solveColumns(faceFactors, right, lines.length) as Float64Array<ArrayBuffer>
    charge = Float64Array.from(air)
    subtractProduct(charge, answered, faceCharge, size, faceSize, lines.length)
  }
  const sum = (of: Float64Array, inAir: boolean) =>
    lines.map((conductor) =>
      lines.map((_, line) => {
        let total = 0
        conductorPanels.forEach((panel, at) => {
          if (panel.conductor !== conductor) return
          const mean = of[(starts[at] as number) * lines.length + line] as number
          const permittivity = inAir ? 1 : (panel.below + panel.above) / 2
          total += permittivity * 2 * panel.halfLength * mean
        })
        return total * VACUUM_PERMITTIVITY
      }),
    )
  const capacitance = sum(charge, false)
  addFieldOfStrips(capacitance, {
    conductorPanels,
    facePanels,
    lines,
    charge,
    faceCharge,
    starts,
    hasPlane,
    spacing,
    part,
  })
  return { capacitance, capacitanceInAir: sum(air, true), unknowns: size + faceSize }
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

/** Logarithms of lengths near 1 keep the equations well conditioned: the unit is far longer than any part of the section. */
function findScaleUm(section: LineSection): number {
  if (section.hasPlaneBelow) return getHeightUm(section)
  const ends = section.conductors.flatMap(({ centreUm, bottomWidthUm, topWidthUm }) => [
    Math.abs(centreUm) + Math.max(bottomWidthUm, topWidthUm),
  ])
  return 4 * Math.max(...ends, getHeightUm(section))
}

interface ToFill {
  readonly conductorPanels: readonly Panel[]
  readonly facePanels: readonly Panel[]
  readonly size: number
  readonly faceSize: number
  readonly hasPlane: boolean
  readonly spacing: number | null
  readonly floats: boolean
}

function fillBlocks(
  { conductorPanels, facePanels, size, faceSize, hasPlane, spacing, floats }: ToFill,
  parts: readonly Part[],
): Blocks[] {
  const blocks = parts.map(() => ({
    byConductors: new Float64Array(size * size),
    byFaces: new Float64Array(size * faceSize),
    fieldByConductors: new Float64Array(faceSize * size),
    fieldByFaces: new Float64Array(faceSize * faceSize),
  }))
  const room = makeRoom(parts)
  const around = { hasPlane, spacing }
  const potentials = room.byPart.map(({ potential }) => potential)
  const fields = room.byPart.map(({ fieldY }) => fieldY)
  const [byConductors, byFaces, fieldByConductors, fieldByFaces] = [
    blocks.map((block) => block.byConductors),
    blocks.map((block) => block.byFaces),
    blocks.map((block) => block.fieldByConductors),
    blocks.map((block) => block.fieldByFaces),
  ]
  let row = 0
  for (const panel of conductorPanels) {
    forEachPoint(panel, (x, y) => {
      let column = 0
      for (const source of conductorPanels) {
        takeInfluence(source, x, y, around, room, false)
        writeScaled(byConductors, row * size + column, potentials, source.order, 1)
        column += source.order
      }
      if (floats) for (const matrix of byConductors) matrix[row * size + column] = 1
      column = 0
      for (const source of facePanels) {
        takeInfluence(source, x, y, around, room, false)
        writeScaled(byFaces, row * faceSize + column, potentials, source.order, 1)
        column += source.order
      }
      row += 1
    })
  }
  if (floats) {
    let column = 0
    for (const source of conductorPanels) {
      for (const matrix of byConductors) matrix[row * size + column] = 2 * source.halfLength
      column += source.order
    }
    column = 0
    for (const source of facePanels) {
      for (const matrix of byFaces) matrix[row * faceSize + column] = 2 * source.halfLength
      column += source.order
    }
  }
  row = 0
  for (const panel of facePanels) {
    const { below, above } = panel
    // Divided by the difference of permittivities, so that rows are of one size.
    const step = (above - below) / ((above + below) / 2)
    forEachPoint(panel, (x, y, node) => {
      let column = 0
      for (const source of conductorPanels) {
        takeInfluence(source, x, y, around, room, true)
        writeScaled(fieldByConductors, row * size + column, fields, source.order, step)
        column += source.order
      }
      column = 0
      for (const source of facePanels) {
        takeInfluence(source, x, y, around, room, true)
        writeScaled(fieldByFaces, row * faceSize + column, fields, source.order, step)
        if (source === panel) {
          const { polynomials } = pointsOnPanel(panel.order)
          for (const matrix of fieldByFaces) {
            for (let n = 0; n < source.order; n += 1) {
              const at = row * faceSize + column + n
              matrix[at] = (matrix[at] as number) + (polynomials[node * MOST_ORDER + n] as number)
            }
          }
        }
        column += source.order
      }
      row += 1
    })
  }
  return blocks
}

/** Into a row of each part's matrix, from its values. */
function writeScaled(
  matrices: readonly Float64Array[],
  from: number,
  values: readonly Float64Array[],
  count: number,
  scale: number,
): void {
  for (let part = 0; part < matrices.length; part += 1) {
    const [matrix, of] = [matrices[part] as Float64Array, values[part] as Float64Array]
    for (let n = 0; n < count; n += 1) matrix[from + n] = scale * (of[n] as number)
  }
}

function forEachPoint(panel: Panel, use: (x: number, y: number, node: number, weight: number) => void): void {
  const { nodes, weights } = pointsOnPanel(panel.order)
  nodes.forEach((node, index) => {
    use(panel.x + node * panel.halfX, panel.y + node * panel.halfY, index, weights[index] as number)
  })
}

/** Sign of what the mirror image of a panel adds. */
const MIRRORED: Readonly<Record<Part, number>> = { whole: 0, even: 1, odd: -1 }

/** Where influences are worked out: of the panel itself, of its mirror image, and together by part. */
interface Room {
  readonly parts: readonly Part[]
  readonly own: Influence
  readonly mirrored: Influence
  readonly byPart: readonly Influence[]
}

const makeRoom = (parts: readonly Part[]): Room => ({
  parts,
  own: makeInfluence(),
  mirrored: makeInfluence(),
  byPart: parts.map(makeInfluence),
})

interface Around {
  readonly hasPlane: boolean
  readonly spacing: number | null
}

/** Potential and field of a panel and its images in the planes, for each part. */
function takeInfluence(
  source: Panel,
  x: number,
  y: number,
  { hasPlane, spacing }: Around,
  { parts, own, mirrored, byPart }: Room,
  withField: boolean,
): void {
  const [first, second] = byPart
  if (first === undefined) return
  // A charge on the left has the same potential where its mirror image on the right is asked at the mirrored point.
  if (second === undefined) {
    clear(first, withField)
    addWithImages(source, x, y, 1, hasPlane, spacing, first, withField)
    const sign = MIRRORED[parts[0] ?? 'whole']
    if (sign !== 0) addWithImages(source, -x, y, sign, hasPlane, spacing, first, withField)
    return
  }
  clear(own, withField)
  clear(mirrored, withField)
  addWithImages(source, x, y, 1, hasPlane, spacing, own, withField)
  addWithImages(source, -x, y, 1, hasPlane, spacing, mirrored, withField)
  for (let at = 0; at < parts.length; at += 1) {
    const into = byPart[at] as Influence
    const sign = MIRRORED[parts[at] as Part]
    for (let n = 0; n < source.order; n += 1) {
      into.potential[n] = (own.potential[n] as number) + sign * (mirrored.potential[n] as number)
      if (withField) into.fieldY[n] = (own.fieldY[n] as number) + sign * (mirrored.fieldY[n] as number)
    }
  }
}

function clear({ potential, fieldY }: Influence, withField: boolean): void {
  potential.fill(0)
  if (withField) fieldY.fill(0)
}

function addWithImages(
  source: Panel,
  x: number,
  y: number,
  sign: number,
  hasPlane: boolean,
  spacing: number | null,
  into: Influence,
  withField: boolean,
): void {
  addInfluence(source, x, y, sign, false, into, withField)
  if (hasPlane) addInfluence(source, x, -y, -sign, true, into, withField)
  if (spacing === null) return
  addInfluence(source, x, 2 * spacing - y, -sign, true, into, withField)
  addBetweenPlanes(source, x, y, sign, spacing, into, withField)
}

interface Solved {
  readonly conductorPanels: readonly Panel[]
  readonly facePanels: readonly Panel[]
  readonly lines: readonly number[]
  readonly charge: Float64Array
  readonly faceCharge: Float64Array
  readonly starts: readonly number[]
  readonly hasPlane: boolean
  readonly spacing: number | null
  readonly part: Part
}

/** A strip between two dielectrics has charge of either kind on both faces; which of it is free follows from the field beside it. */
function addFieldOfStrips(capacitance: number[][], solved: Solved): void {
  const { conductorPanels, facePanels, lines, charge, faceCharge, part } = solved
  const room = makeRoom([part])
  const influence = room.byPart[0] as Influence
  for (const panel of conductorPanels) {
    const line = lines.indexOf(panel.conductor)
    if (panel.below === panel.above || line < 0) continue
    forEachPoint(panel, (x, y, _, weight) => {
      const fields = lines.map(() => 0)
      const add = (sources: readonly Panel[], coefficients: Float64Array) => {
        let at = 0
        for (const source of sources) {
          takeInfluence(source, x, y, solved, room, true)
          for (let n = 0; n < source.order; n += 1) {
            lines.forEach((__, column) => {
              fields[column] =
                (fields[column] ?? 0) +
                (influence.fieldY[n] as number) * (coefficients[(at + n) * lines.length + column] as number)
            })
          }
          at += source.order
        }
      }
      add(conductorPanels, charge)
      add(facePanels, faceCharge)
      fields.forEach((field, column) => {
        const row = capacitance[line] as number[]
        row[column] =
          (row[column] ?? 0) + VACUUM_PERMITTIVITY * (panel.above - panel.below) * field * weight * panel.halfLength
      })
    })
  }
}
