import { MOST_ORDER, pointsOnPanel } from './influence'
import type { Panel } from './panels'
import { forEachPoint, makeRoom, type Part, takeInfluence } from './part-influence'

/** Charge without a sign for what it stands on: flux of vacuum, so that potentials carry no units. */
export interface Blocks {
  /** Potential at points of conductors from charge of conductors, and from charge of faces. */
  readonly byConductors: Float64Array
  readonly byFaces: Float64Array
  /** Normal field at points of faces, and at points of strips between two dielectrics. */
  readonly fieldByConductors: Float64Array
  readonly fieldByFaces: Float64Array
}

export interface ToFill {
  readonly conductorPanels: readonly Panel[]
  readonly facePanels: readonly Panel[]
  readonly size: number
  readonly faceSize: number
  readonly hasPlane: boolean
  readonly spacing: number | null
  readonly floats: boolean
}

export function fillBlocks(
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
