import { boundsOf } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { areasOf, type PlanProblem } from '../topology/areas'
import { type BandMeasure, measureBands } from './bands'
import { type CornerMeasure, measureCorners } from './corners'
import { measureOverlaps } from './coverlay-ends'
import { type EndMeasure, measureAnchors, measureEnds } from './ends'
import type { PlanFacts } from './facts'
import { measurePlaced, type PlacedMeasures, regionOf } from './placed'
import { measureRoutes, type RouteMeasures } from './routes'
import { measureSlits, type SlitMeasure } from './slits'
import { type AreaMeasure, measureAreas } from './zones'

/** What follows from a plan, drawn to the nanometre: each figure with the thing on the plan that it is of. */
export interface PlanMeasures {
  /** Outline over all, along x and y, without its cut-outs in the area; null where there is no outline. */
  readonly part: { readonly lengthMm: number; readonly widthMm: number; readonly areaMm2: number } | null
  readonly areas: readonly AreaMeasure[]
  readonly bands: readonly BandMeasure[]
  readonly placed: PlacedMeasures
  readonly corners: readonly CornerMeasure[]
  readonly routes: RouteMeasures
  readonly slits: readonly SlitMeasure[]
  readonly ends: readonly EndMeasure[]
  /** Fewest spurs of the lands of a kind, by its id. */
  readonly anchors: ReadonlyMap<string, number>
  /** How far stiffeners reach past the end of a coverlay, by their ids. */
  readonly overlapsMm: ReadonlyMap<string, number>
  readonly problems: readonly PlanProblem[]
}

export function measurePlan(plan: Plan, facts: PlanFacts): PlanMeasures {
  const { part, problems } = areasOf(plan)
  const bands = measureBands(
    plan,
    facts,
    plan.stiffeners.map(({ nodes }) => regionOf(nodes)),
  )
  const box = part === null ? null : boundsOf(part.outer)
  return {
    part:
      part === null || box === null
        ? null
        : {
            lengthMm: (box.maxX - box.minX) / NM_PER_MM,
            widthMm: (box.maxY - box.minY) / NM_PER_MM,
            areaMm2: part.areaNm2 / NM_PER_MM ** 2,
          },
    areas: measureAreas(plan, bands),
    bands,
    placed: measurePlaced(plan, facts, bands),
    corners: measureCorners(plan),
    routes: measureRoutes(plan, facts, bands),
    slits: measureSlits(plan),
    ends: measureEnds(plan),
    anchors: measureAnchors(plan),
    overlapsMm: measureOverlaps(plan),
    problems,
  }
}
