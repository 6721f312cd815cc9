import type { Plan, PlanMeasures } from '@/lib/plan'
import type { Design, Features } from '../../design'
import { asMm, type Pen, withFields } from './pen'

type Corner = Features['outlineCorners'][number]

/** Inside corners of the drawn outline. One that no entry of the features is placed at is an entry of its own, with what only people know open. */
export function drawCorners(design: Design, plan: Plan, measures: PlanMeasures, pen: Pen): Design {
  const { outlineCorners } = design.features
  const isFlex = (zoneId: string) => design.construction.zones.find(({ id }) => id === zoneId)?.kind === 'flex'
  // What borders a corner is known where each area round it has a zone.
  const areZonesKnown = measures.areas.length > 0 && measures.areas.every(({ zoneId }) => zoneId !== null)
  const bordersFlexOf = (zoneIds: readonly string[]): boolean | null => (areZonesKnown ? zoneIds.some(isFlex) : null)
  const placed = new Set(plan.corners.map(({ cornerId }) => cornerId))
  // A design that was made from a drawn one has them already.
  const known = new Set(outlineCorners.map(({ id }) => id))
  const kept = outlineCorners.map((corner, index): Corner => {
    const found = measures.corners.filter(({ cornerId }) => cornerId === corner.id)
    if (found.length === 0) return corner
    const drawn = asMm(Math.min(...found.map(({ radiusMm }) => radiusMm)))
    pen.note({
      path: ['features', 'outlineCorners', index, 'insideRadiusMm'],
      what: `inside radius of ${corner.name}`,
      unit: 'mm',
      stated: corner.insideRadiusMm,
      drawn,
      places: [{ kind: 'corner', id: corner.id, name: corner.name }],
    })
    const bordersFlex = bordersFlexOf(found.flatMap(({ zoneIds }) => zoneIds)) ?? corner.bordersFlex
    const isSame = corner.insideRadiusMm === drawn && corner.bordersFlex === bordersFlex
    return withFields(corner, isSame ? {} : { insideRadiusMm: drawn, bordersFlex })
  })
  const added = measures.corners.flatMap(({ cornerId, atMm, radiusMm, zoneIds }, at): Corner[] =>
    (cornerId !== null && placed.has(cornerId)) || known.has(`plan-corner-${at + 1}`)
      ? []
      : [
          {
            id: `plan-corner-${at + 1}`,
            name: `corner ${at + 1} of the plan at (${atMm.map((mm) => Math.round(mm * 1000) / 1000).join(', ')})`,
            insideRadiusMm: asMm(radiusMm),
            bordersFlex: bordersFlexOf(zoneIds),
            isPulled: null,
            tearStop: null,
          },
        ],
  )
  return { ...design, features: { ...design.features, outlineCorners: [...kept, ...added] } }
}
