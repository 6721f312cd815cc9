import type { Bend } from '../../design'
import { roundTo, tidy } from '../../numerics'
import { asComputed } from '../../units'
import type { BendAssessment } from '../assess'
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
          slits: [
            ...slits,
            {
              id: freshId(`cut-out-${bend.id}`, slits),
              name: `Cut-out in ${bend.name}`.slice(0, 120),
              endReliefDiameterMm: getLimit('slitEndReliefDiameterMm').value,
              widthMm: cutMm,
            },
          ],
        },
      },
      touches: ['cut-outs'],
    },
  ]
}

/** Steps in which a radius is put on a drawing: tenths below 5 mm, halves below 20 mm, whole mm above. */
function roundUpRadiusMm(radiusMm: number): { radiusMm: number; stepMm: number } {
  const stepMm = radiusMm < 5 ? 0.1 : radiusMm < 20 ? 0.5 : 1
  // A radius that is a step already must not be rounded up by its last binary digit.
  return { radiusMm: roundTo(Math.ceil(radiusMm / stepMm - ROUNDING_STEPS) * stepMm, 1), stepMm }
}

/** The schema's largest radius. */
const MOST_RADIUS_MM = 1000
/** The first estimate is right to a step or two; past that the verdict does not hang on the radius. */
const MOST_STEPS = 8

/** What copper past yield says of a larger radius is too much, and less so where it yields less: each estimate is made at the last one. */
const MOST_ESTIMATES = 4

/** Radius at which the worst corner should just hold: strain falls with the radius of the axis while nothing yields. */
function estimateRadius(
  nominal: ReturnType<typeof roundUpRadiusMm>,
  { radiusToleranceMm }: Bend,
  assessAt: (insideRadiusMm: number) => BendAssessment | null,
): ReturnType<typeof roundUpRadiusMm> | null {
  let found = nominal
  for (let round = 0; round < MOST_ESTIMATES; round += 1) {
    const at = assessAt(found.radiusMm)
    if (at === null || at.state.marginFraction === null) return null
    if (round === 0 && at.state.verdict === 'meets') return nominal
    const axisMm = Math.min(...at.result.leaves.map((leaf) => leaf.formedAxisDepthUm)) / 1000
    const tightestMm = found.radiusMm - radiusToleranceMm + axisMm
    const estimateMm = (1 - at.state.marginFraction) * tightestMm - axisMm + radiusToleranceMm
    const next = roundUpRadiusMm(Math.min(MOST_RADIUS_MM, Math.max(estimateMm, nominal.radiusMm)))
    if (next.radiusMm === found.radiusMm) break
    found = next
  }
  return found
}

/** The radius at which the verdict holds at the worst corner of tolerances and constants, rounded up to one that would be drawn. */
export const largerRadius: Family = ({ design, bend, zone, assessment, assess }) => {
  const { state } = assessment
  if (state.verdict === 'meets' || state.minRadiusMm === null || state.allowablePct === null) return []
  const nominal = roundUpRadiusMm(Math.max(state.minRadiusMm, bend.insideRadiusMm))
  const assessed = new Map<number, BendAssessment | null>()
  const assessAt = (insideRadiusMm: number): BendAssessment | null => {
    const known = assessed.get(insideRadiusMm)
    if (known !== undefined) return known
    const found = assess(editBend(design, bend.id, (each) => ({ ...each, insideRadiusMm })))
    assessed.set(insideRadiusMm, found)
    return found
  }
  const from = estimateRadius(nominal, bend, assessAt)
  if (from === null) return []
  let { radiusMm } = from
  for (let step = 0; step < MOST_STEPS && radiusMm <= MOST_RADIUS_MM; step += 1) {
    const insideRadiusMm = radiusMm
    const after = assessAt(insideRadiusMm)
    if (after !== null && after.state.verdict === 'meets') {
      const arcMm = after.result.developedLengthMm
      const isTooLong = zone.lengthMm !== null && arcMm > zone.lengthMm
      return [
        {
          id: 'larger-radius:meets',
          family: 'larger-radius',
          title: 'Larger radius',
          detail: `${bend.name}: inside radius ${bend.insideRadiusMm} mm to ${insideRadiusMm} mm`,
          cautions: ['Check that the assembly has room for the radius, and that something holds it.'],
          forbiddenBy: isTooLong
            ? [
                {
                  kind: 'zone-length',
                  name: zone.name,
                  because: `At ${insideRadiusMm} mm the bend takes ${asComputed(arcMm, 'developedLengthMm')} of length; ${zone.name} has ${zone.lengthMm} mm.`,
                },
              ]
            : [],
          edited: after.design,
          touches: ['radius'],
        },
      ]
    }
    radiusMm = roundTo(radiusMm + from.stepMm, 1)
  }
  return []
}
