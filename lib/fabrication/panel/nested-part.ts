import { type Design, toWholeOutline } from '@/lib/engine'
import { countOf } from '@/lib/engine/units'
import type { Polygon } from '@/lib/geometry'
import { readDrawnPart } from './drawn-part'
import { toWholeUm } from './format'
import type { NestedPart } from './nest-part'

/** What a design gives to be laid on panels. */
export type PartReading =
  | {
      readonly ok: true
      readonly part: NestedPart
      readonly basis: 'outline' | 'zones'
      /** What was taken for granted; empty for an outline. */
      readonly note: string
    }
  | {
      readonly ok: false
      /** What is missing, as a path of the design document. */
      readonly missingPath: readonly (string | number)[]
      readonly reason: string
    }

const NO_DIRECTION = 'The foil’s rolling direction is not stated: the part is laid along and across the foil alike.'

/**
 * The part's outline, or the rectangle that its zones make where they leave no doubt about it: one zone, or zones of one
 * width that follow one another.
 */
export function readNestedPart(design: Design): PartReading {
  const drawn = readDrawnPart(design)
  if (drawn !== null) {
    const notes = [drawn.note, drawn.part.rollingDirection === null ? NO_DIRECTION : '']
    return { ok: true, part: drawn.part, basis: 'outline', note: notes.filter((note) => note !== '').join(' ') }
  }
  // Designs that were stored before there was an outline do not have the field.
  const outline = design.features.outline
  if (outline !== null) {
    const rollingDirection = outline.rollingDirection === 'either' ? null : outline.rollingDirection
    const note = outline.rollingDirection === null ? NO_DIRECTION : ''
    return { ok: true, part: { outline: toWholeOutline(outline), rollingDirection }, basis: 'outline', note }
  }
  const { zones } = design.construction
  const missing = (reason: string): PartReading => ({ ok: false, missingPath: ['features', 'outline'], reason })
  if (zones.length === 0) return missing('There is neither an outline nor a zone.')
  const [first] = zones
  const unmeasured = zones.findIndex(({ lengthMm, widthMm }) => lengthMm === null || widthMm === null)
  if (unmeasured !== -1) {
    const zone = zones[unmeasured]
    return {
      ok: false,
      missingPath: ['construction', 'zones', unmeasured, zone?.lengthMm === null ? 'lengthMm' : 'widthMm'],
      reason: `There is no outline, and zone “${zone?.name}” states no ${zone?.lengthMm === null ? 'length' : 'width'}.`,
    }
  }
  if (zones.some(({ widthMm }) => widthMm !== first?.widthMm)) {
    return missing('There is no outline, and the zones differ in width: how they lie to one another is not known.')
  }
  const lengthUm = zones.reduce((sum, { lengthMm }) => sum + toWholeUm(lengthMm ?? 0), 0)
  const widthUm = toWholeUm(first?.widthMm ?? 0)
  return {
    ok: true,
    part: { outline: makeRectangle(lengthUm, widthUm), rollingDirection: null },
    basis: 'zones',
    note:
      zones.length === 1
        ? 'There is no outline: the part is taken as the rectangle of its one zone.'
        : `There is no outline: the part is taken as a strip of its ${countOf(zones.length, 'zone')}, equally wide, in a row.`,
  }
}

function makeRectangle(widthUm: number, heightUm: number): Polygon {
  return [
    [0, 0],
    [widthUm, 0],
    [widthUm, heightUm],
    [0, heightUm],
  ]
}
