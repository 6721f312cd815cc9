import { tidy } from '../../numerics'
import { countOf } from '../../units'
import { editBend, editLayers } from '../edits'
import type { Family } from '../subject'

/** Half of a stated tolerance is what is asked for at most without another process. Our choice. */
const CLOSER_FRACTION = 0.5
/** A radius is held no closer than this by a former that is machined without special care, mm. Our choice. */
const CLOSEST_RADIUS_MM = 0.05

/** Sheets of the bend's zone at half their tolerance: the verdict is at their worst corner. */
export const sheetTolerance: Family = ({ design, layers }) => {
  const wide = layers.flatMap(({ layer }) =>
    layer.kind !== 'unbonded-gap' && layer.tolerancePlusUm + layer.toleranceMinusUm > 0 ? [layer.id] : [],
  )
  if (wide.length === 0) return []
  const ids = new Set(wide)
  return [
    {
      id: 'sheet-tolerance:half',
      family: 'sheet-tolerance',
      title: 'Closer sheet tolerances',
      detail: `${countOf(wide.length, 'layer')} of the bend at half ${wide.length === 1 ? 'its' : 'their'} stated tolerance`,
      cautions: ['Sheets are sold to the tolerances of their specification: ask whether closer ones can be had.'],
      forbiddenBy: [],
      edited: editLayers(design, (layer) =>
        layer.kind !== 'unbonded-gap' && ids.has(layer.id)
          ? {
              ...layer,
              tolerancePlusUm: tidy(layer.tolerancePlusUm * CLOSER_FRACTION),
              toleranceMinusUm: tidy(layer.toleranceMinusUm * CLOSER_FRACTION),
            }
          : layer,
      ),
      touches: ['sheet-tolerance'],
    },
  ]
}

/** The radius held to half its tolerance. */
export const radiusTolerance: Family = ({ design, bend }) => {
  const closerMm = Math.max(CLOSEST_RADIUS_MM, tidy(bend.radiusToleranceMm * CLOSER_FRACTION))
  if (closerMm >= bend.radiusToleranceMm) return []
  return [
    {
      id: 'radius-tolerance:half',
      family: 'radius-tolerance',
      title: 'Closer tolerance of the radius',
      detail: `${bend.name}: ±${bend.radiusToleranceMm} mm to ±${closerMm} mm`,
      cautions: ['Something has to hold the radius that closely: a former, a channel or a bond.'],
      forbiddenBy: [],
      edited: editBend(design, bend.id, (each) => ({ ...each, radiusToleranceMm: closerMm })),
      touches: ['radius-tolerance'],
    },
  ]
}
