'use client'

import { useMemo } from 'react'
import { areasOf, EMPTY_PLAN, measurePlan, type PlanMeasures } from '@/lib/plan'
import { useDraft } from '../draft'

export interface MeasuredPlan {
  readonly areas: ReturnType<typeof areasOf>['areas']
  readonly problems: ReturnType<typeof areasOf>['problems']
  readonly measures: PlanMeasures | null
}

/** Areas and bands of the last plan that holds together: those that its verdicts belong to. */
export function useMeasuredPlan(): MeasuredPlan {
  const { live } = useDraft()
  const { evaluatedDesign, evaluation } = live
  const { plan } = evaluatedDesign
  return useMemo(() => {
    if (plan === null) return { areas: [], problems: [], measures: null }
    // What is asked here is the areas and the bands alone: all else of the plan is left to the engine.
    const bare = { ...EMPTY_PLAN, outline: plan.outline, cutOuts: plan.cutOuts, dividingLines: plan.dividingLines }
    const measures = measurePlan(
      { ...bare, areas: plan.areas, bendLines: plan.bendLines },
      {
        bandWidthsMm: new Map(
          evaluation.bends.map(({ bendId, leaves }) => [
            bendId,
            leaves.length === 0 ? null : Math.max(...leaves.map(({ developedLengthMm }) => developedLengthMm)),
          ]),
        ),
        zoneOfBend: new Map(evaluatedDesign.bends.map(({ id, zoneId }) => [id, zoneId])),
        flatZoneIds: new Set(),
        drillsMm: new Map(),
        conductors: new Map(),
        conductorLayerIds: [],
      },
    )
    const { areas, problems } = areasOf(plan)
    return { areas, problems, measures }
  }, [plan, evaluation, evaluatedDesign.bends])
}
