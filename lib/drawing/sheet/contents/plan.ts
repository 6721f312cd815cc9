import { type Design, NOT_STATED } from '@/lib/engine'
import type { SheetDrawnPlan, SheetPlan, SheetTable } from './model'
import { makePointTable } from './plan-points'
import type { SheetWords } from './words'

/** The outline in the flat; null where the design has none, as those stored before there were outlines. */
export function makePlan({ features, plan }: Design): SheetPlan | SheetDrawnPlan | null {
  if (plan !== null && plan.outline !== null) {
    return { kind: 'drawn-plan', id: 'plan', title: 'Part in the flat, seen on the top face', plan, leastMm: 260 }
  }
  const outline = features.outline
  if (outline === null) return null
  return {
    kind: 'plan',
    id: 'plan',
    title: 'Outline in the flat, seen on the top face',
    verticesMm: outline.verticesMm,
    rollingDirection: outline.rollingDirection === 'either' ? null : outline.rollingDirection,
    leastMm: 180,
  }
}

/** Corners of the outline by their coordinates, which dimension it without crowding the view. */
export function makeCornerTable({ features, plan }: Design, words: SheetWords): SheetTable | null {
  if (plan !== null && plan.outline !== null) return makePointTable(plan, words)
  const outline = features.outline
  if (outline === null) return null
  const { verticesMm, rollingDirection } = outline
  const rolling = rollingDirection === null ? NOT_STATED : rollingDirection.replace('-', ' ')
  return {
    kind: 'table',
    id: 'outline-corners',
    title: `Corners of the outline; foil rolled ${rolling}`,
    keyColumnCount: 1,
    columns: [
      { label: 'Corner', leastMm: 16, growth: 0, isNumeric: true },
      { label: `x, ${words.planUnit}`, leastMm: 24, growth: 0, isNumeric: true },
      { label: `y, ${words.planUnit}`, leastMm: 24, growth: 0, isNumeric: true },
    ],
    rows: verticesMm.map(([xMm, yMm], index) => ({
      id: String(index),
      cells: [String(index + 1), words.plan(xMm), words.plan(yMm)],
    })),
  }
}
