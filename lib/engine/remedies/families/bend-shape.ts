import { roundTo, tidy } from '../../numerics'
import { editBend, freshId, setZoneCoverage } from '../edits'
import { type Family, writePct } from '../subject'

/** Most of the width that is cut out, and least that is worth a cut. Common practice, no published source. */
const MOST_CUT_FRACTION = 0.3
const LEAST_CUT_FRACTION = 0.05
/** Copper keeps this share of the film that is left at most, so that every conductor keeps film beside it. */
const MOST_COVERAGE_AFTER_FRACTION = 0.8
/** Plan dimensions are drawn to this, mm. */
const DRAWN_STEP_MM = 0.1
/** A whole number of steps must not be lost to its last binary digit. */
const ROUNDING_STEPS = 1e-9

/**
 * Cut-outs between the conductors along the bend: the width that is bent shrinks, and with it moment and force. Strain at
 * the copper stays nearly what it was. Only where the zone has no other bend, since the film is missing over its length.
 */
export const cutOuts: Family = ({ design, bend, zone, conductors, getLimit }) => {
  if (design.bends.some((other) => other.id !== bend.id && other.zoneId === zone.id)) return []
  const coverage = Math.max(0, ...conductors.map(({ coverageFraction }) => coverageFraction))
  const roomFraction = Math.min(MOST_CUT_FRACTION, 1 - coverage / MOST_COVERAGE_AFTER_FRACTION)
  const steps = Math.floor((roomFraction * bend.axisLengthMm) / DRAWN_STEP_MM + ROUNDING_STEPS)
  const cutMm = roundTo(steps * DRAWN_STEP_MM, 1)
  const cutFraction = cutMm / bend.axisLengthMm
  if (conductors.length === 0 || cutFraction < LEAST_CUT_FRACTION) return []
  const leftMm = tidy(bend.axisLengthMm - cutMm)
  const { slits } = design.features
  let edited = editBend(design, bend.id, (each) => ({ ...each, axisLengthMm: leftMm }))
  for (const { layer, coverageFraction } of conductors) {
    edited = setZoneCoverage(edited, zone.id, layer.id, Math.min(1, coverageFraction / (1 - cutFraction)))
  }
  return [
    {
      id: 'cut-outs:bend',
      family: 'cut-outs',
      title: 'Cut-outs in the bend',
      detail: `${zone.name}: ${cutMm} mm of the width cut out (${writePct(cutFraction)}), ${leftMm} mm left to bend`,
      cautions: ['Cut-outs lower moment and force, hardly strain. Round their ends.'],
      forbiddenBy: [],
      edited: {
        ...edited,
        features: {
          ...edited.features,
          none: edited.features.none.filter((list) => list !== 'slits'),
          slits: [
            ...slits,
            {
              id: freshId(`cut-out-${bend.id}`, slits),
              name: `Cut-out in ${bend.name}`.slice(0, 120),
              endReliefDiameterMm: getLimit('slitEndReliefDiameterMm').value,
              widthMm: cutMm,
              tearStop: null,
            },
          ],
        },
      },
      touches: ['cut-outs'],
    },
  ]
}
