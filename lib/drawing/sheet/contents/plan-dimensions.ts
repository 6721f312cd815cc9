import { asDeviation } from '@/lib/engine/units'
import { measureDimension, type Plan } from '@/lib/plan'
import type { SheetWords } from './words'

type Dimension = Plan['dimensions'][number]

/** `D1`: dimensions in the plan's order; an overall size that the sheet adds has none. */
export const nameDimensions = (plan: Plan): ReadonlyMap<string, string> =>
  new Map(plan.dimensions.map(({ id }, index) => [id, `D${index + 1}`]))

/** `52 ±0.1`, `(7)` for a reference, as ISO 129-1 writes them (from memory). */
export function writeDimension(dimension: Dimension, words: SheetWords): string {
  const value = words.plan(measureDimension(dimension))
  return dimension.isReference ? `(${value})` : `${value}${writeTolerance(dimension, words, ' ')}`
}

export function writeTolerance({ plusMm, minusMm }: Dimension, words: SheetWords, before = ''): string {
  if (plusMm === null && minusMm === null) return ''
  return `${before}${asDeviation(words.plan(plusMm), words.plan(minusMm))}`
}
