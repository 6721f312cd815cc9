import { measurePlan, type Plan, type PlanFacts, type PlanMeasures } from '@/lib/plan'
import type { Design, Drawing } from '../../design'
import { type DesignIndex, indexDesign } from '../design-index'
import { drawCorners } from './corners'
import { drawFeatures } from './features'
import { drawFurther } from './further'
import { makePen } from './pen'
import { listPlanFacts } from './plan-facts'
import { drawZonesAndBends } from './zones-and-bends'

/** Puts what the plan draws in place of what was stated: the better source decides, before anything looks at it. */
export function drawDimensions(design: Design): Drawing {
  const { plan } = design
  if (plan === null) return { design, stated: design, measures: null, values: [] }
  const index = indexDesign(design)
  const measures = measureOnce(plan, index)
  const pen = makePen()
  let drawn = drawZonesAndBends(design, measures, pen)
  drawn = drawFeatures(drawn, plan, measures, pen)
  drawn = drawCorners(drawn, plan, measures, pen)
  drawn = drawFurther(drawn, plan, measures, pen)
  return { design: drawn, stated: design, measures, values: pen.values }
}

const known = new WeakMap<Plan, Map<string, PlanMeasures>>()
/** Remedies try many designs on one plan; only the widths of bands tell them apart. */
const MOST_KEPT = 50

function measureOnce(plan: Plan, index: DesignIndex): PlanMeasures {
  const facts = listPlanFacts(index)
  const key = keyOf(facts)
  const kept = known.get(plan) ?? new Map<string, PlanMeasures>()
  known.set(plan, kept)
  const found = kept.get(key) ?? measurePlan(plan, facts)
  if (kept.size >= MOST_KEPT) kept.clear()
  kept.set(key, found)
  return found
}

const keyOf = (facts: PlanFacts): string =>
  JSON.stringify(Object.values(facts).map((value) => [...(value as Iterable<unknown>)]))
