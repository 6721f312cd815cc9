import type { Plan } from '@/lib/plan'
import type { Point } from './frame'
import { placesOfHole } from './plan-figure'

/**
 * The plan without what lies off the part, which would leave the sheet. How many things that are is handed back: the picture says it, and
 * the review finds them.
 */
export function keepNear(plan: Plan, minMm: Point, maxMm: Point, reachMm: number): { plan: Plan; offCount: number } {
  let offCount = 0
  const isNear = ([x, y]: Point) =>
    x >= minMm[0] - reachMm && x <= maxMm[0] + reachMm && y >= minMm[1] - reachMm && y <= maxMm[1] + reachMm
  const keep = <T>(list: readonly T[], pointsOf: (entry: T) => readonly Point[]): T[] => {
    const kept = list.filter((entry) => pointsOf(entry).every(isNear))
    offCount += list.length - kept.length
    return kept
  }
  const ofNodes = ({ nodes }: { readonly nodes: Plan['stiffeners'][number]['nodes'] }) =>
    nodes.flatMap(({ atMm, viaMm }): Point[] => (viaMm === null ? [atMm] : [atMm, viaMm]))
  const ofEnds = ({ fromMm, toMm }: { readonly fromMm: Point; readonly toMm: Point | null }) =>
    toMm === null ? [fromMm] : [fromMm, toMm]
  return {
    plan: {
      ...plan,
      slits: keep(plan.slits, ofNodes),
      dividingLines: keep(plan.dividingLines, ofNodes),
      bendLines: keep(plan.bendLines, ofEnds),
      stiffeners: keep(plan.stiffeners, ofNodes),
      connectorEnds: keep(plan.connectorEnds, ofEnds),
      coverlayOpenings: keep(plan.coverlayOpenings, ofNodes),
      holes: keep(plan.holes, placesOfHole),
      pads: keep(plan.pads, ({ atMm }) => [atMm]),
      components: keep(plan.components, ofNodes),
      routes: keep(plan.routes, ofNodes),
      datums: keep(plan.datums, ofEnds),
      dimensions: keep(plan.dimensions, ofEnds),
      notes: keep(plan.notes, ({ atMm }) => (atMm === null ? [] : [atMm])),
      markings: keep(plan.markings, ({ atMm }) => [atMm]),
    },
    offCount,
  }
}
