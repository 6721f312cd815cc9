import type { Design } from '@/lib/engine'
import type { SheetArray } from './model'

/** The array in which parts are delivered; null where none is drawn, or its steps are not known. */
export function makeArray({ plan }: Design): SheetArray | null {
  const array = plan?.array ?? null
  if (plan === null || array === null || plan.outline === null) return null
  const { columns, rows, columnStepMm, rowStepMm } = array
  if ((columns > 1 && columnStepMm === null) || (rows > 1 && rowStepMm === null)) return null
  return { kind: 'array', id: 'array', title: 'Array as delivered, seen on the top face', plan, array, leastMm: 180 }
}
