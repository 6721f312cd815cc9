import { VACUUM_PERMITTIVITY } from './constants'
import { factor, solveColumns, subtractProduct } from './dense'
import { type Blocks, fillBlocks, type ToFill } from './fill-blocks'
import type { Influence } from './influence'
import { type MeshFineness, makePanels, type Panel } from './panels'
import { forEachPoint, makeRoom, type Part, takeInfluence } from './part-influence'
import { getHeightUm, type LineSection } from './section'

export interface Charges {
  /** Maxwell capacitances by line and line, F/m, and those without dielectrics. */
  readonly capacitance: readonly (readonly number[])[]
  readonly capacitanceInAir: readonly (readonly number[])[]
  /** Of the largest system that was solved. */
  readonly unknowns: number
}

/** A piece of a conductor's face. Lengths in units of the scale. */
export interface FaceCharge extends Pick<Panel, 'x' | 'y' | 'halfX' | 'halfY' | 'conductor'> {
  /** Mean free charge per area by line at 1 V, with the permittivity of vacuum and the scale as units. */
  readonly densities: readonly number[]
  readonly scaleUm: number
}

interface SolvedCharges extends Charges {
  /** Worked out when asked for. */
  readonly listFaces: () => readonly FaceCharge[]
}

/** Why there are none. */
export type ChargesFault = 'not-unique' | 'too-many-unknowns'

/** @returns for each of the parts, or why it has none; what pieces do to each other is worked out once for all */
export function solveCharges(
  section: LineSection,
  fineness: MeshFineness,
  lines: readonly number[],
  parts: readonly Part[],
): (SolvedCharges | ChargesFault)[] {
  const scaleUm = findScaleUm(section)
  const mesh = makePanels(section, fineness, true, scaleUm)
  // Of the whole section, of which a mirror image saves half.
  const count = mesh.reduce((sum, { order }) => sum + order, 0)
  if (count > (fineness.mostUnknowns ?? Infinity)) return parts.map(() => 'too-many-unknowns')
  // Faces that reach across the mirror plane are cut in their middle by the mesh.
  const panels = mesh.filter(({ x }) => parts[0] === 'whole' || x > 0)
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
  return fillBlocks(system, parts).map(
    (blocks, at) => solveBlocks(system, blocks, { lines, starts, part: parts[at] ?? 'whole', scaleUm }) ?? 'not-unique',
  )
}

/** Logarithms of lengths near 1 keep the equations well conditioned: the unit is far longer than any part of the section. */
function findScaleUm(section: LineSection): number {
  const heightUm = getHeightUm(section)
  // Lines in air over a plane have no dielectric to measure by.
  if (section.hasPlaneBelow && heightUm > 0) return heightUm
  const ends = section.conductors.flatMap(({ centreUm, bottomWidthUm, topWidthUm }) => [
    Math.abs(centreUm) + Math.max(bottomWidthUm, topWidthUm),
  ])
  return 4 * Math.max(...ends, getHeightUm(section))
}

function solveBlocks(
  { conductorPanels, facePanels, size, faceSize, hasPlane, spacing }: ToFill,
  blocks: Blocks,
  {
    lines,
    starts,
    part,
    scaleUm,
  }: {
    readonly lines: readonly number[]
    readonly starts: readonly number[]
    readonly part: Part
    readonly scaleUm: number
  },
): SolvedCharges | null {
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
  const listFaces = () =>
    conductorPanels.map(({ x, y, halfX, halfY, conductor, below, above }, at) => ({
      x,
      y,
      halfX,
      halfY,
      conductor,
      densities: lines.map(
        (_, line) => ((below + above) / 2) * (charge[(starts[at] as number) * lines.length + line] as number),
      ),
      scaleUm,
    }))
  return { capacitance, capacitanceInAir: sum(air, true), unknowns: size + faceSize, listFaces }
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
