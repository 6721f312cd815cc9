import { type Design, NOT_STATED, type Outcome, withNetClasses } from '@/lib/engine'
import { asComputed, digitsAsComputed, digitsAsEntered, withUnitInHead } from '@/lib/engine/units'
import type { SheetColumn, SheetResults, SheetTable } from './model'
import { formatObserved } from './words'

const ITEM_ID = 'impedance-value'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

/**
 * What the stated build gives for each stated impedance, by zone, as the checklist found it: what a coupon is measured against. Null where no impedance is stated, or nothing
 * was computed.
 */
export function makeImpedanceTable(design: Design, results: SheetResults | null): SheetTable | null {
  const { features } = withNetClasses(design)
  const outcomes = results?.items?.find(({ itemId }) => itemId === ITEM_ID)?.outcomes ?? []
  const rows = outcomes.flatMap((outcome) => {
    const placed = (kind: string) => outcome.places.find((place) => place.kind === kind)
    const conductor = features.conductors.find(({ id }) => id === placed('conductor')?.id)
    if (conductor === undefined || conductor.impedanceOhm === null) return []
    const { tolerancePct, coupon } = conductor.impedance
    const zone = placed('zone')
    return [
      {
        id: `${conductor.id} ${zone?.id ?? ''}`,
        cells: [
          conductor.name,
          zone?.name ?? '–',
          digitsAsEntered(conductor.impedanceOhm),
          tolerancePct === null ? NOT_STATED : `±${digitsAsEntered(tolerancePct)} %`,
          describeNominal(outcome),
          describeRange(outcome),
          formatObserved(coupon),
        ],
      },
    ]
  })
  if (rows.length === 0) return null
  return {
    kind: 'table',
    id: 'impedances',
    title: 'Impedances as computed from the stated build; measure on the coupon',
    keyColumnCount: 2,
    columns: [
      column('Name', 28, 1),
      column('Zone', 20),
      column(withUnitInHead('Stated', 'ohm'), 16, 0, true),
      column('Tolerance', 18),
      column(withUnitInHead('Computed', 'ohm'), 22, 0, true),
      column('Over tolerances and constants', 34, 1),
      column('Coupon', 16),
    ],
    rows,
  }
}

function describeNominal(outcome: Outcome): string {
  if (outcome.kind === 'decided') return digitsAsComputed(outcome.value.value, 'impedanceOhm')
  return outcome.kind === 'not-computed' ? 'not computed' : 'cannot tell'
}

function describeRange(outcome: Outcome): string {
  if (outcome.kind !== 'decided' || outcome.range === undefined || outcome.range === null) return '–'
  const { low, high } = outcome.range
  return `${digitsAsComputed(low, 'impedanceOhm')} to ${asComputed(high, 'impedanceOhm')}`
}
