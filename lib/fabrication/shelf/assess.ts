import { type Design, findLibraryMaterial } from '@/lib/engine'
import type { ShelfContent } from './content'
import { adviseOrder, type OrderAdvice } from './dates'
import { matchesPurchase } from './matching'
import { describePurchase, listPurchases, type Purchase } from './purchases'
import type { ShelfRow } from './row'

/** A row of the shelf with its place in it. */
export interface HeldRow extends ShelfRow {
  readonly index: number
}

/** `unknown`: the shelf does not list the material, or lists it with neither stock nor lead time. */
export type ShelfState = 'on-shelf' | 'to-order' | 'unknown'

export interface PurchaseAssessment {
  readonly purchase: Purchase
  readonly name: string
  readonly state: ShelfState
  readonly row: HeldRow | null
  /** To be ordered only. */
  readonly order: OrderAdvice | null
  /** In words, why it is unknown. */
  readonly reason: string | null
}

export interface ShelfCounts {
  readonly onShelf: number
  readonly toOrder: number
  readonly unknown: number
}

export interface ShelfAssessment {
  readonly purchases: readonly PurchaseAssessment[]
  readonly counts: ShelfCounts
  /** Of what is to be ordered, the least days left; null where nothing is, or a date is missing. */
  readonly orderSlackDays: number | null
}

/** Every material of a construction against one fabricator's shelf. @param today  calendar day, ISO 8601 */
export function assessShelf(design: Design, shelf: ShelfContent, today: string): ShelfAssessment {
  const rows = shelf.rows.map((row, index): HeldRow => ({ ...row, index }))
  const dates = { needDate: design.brief.needDate, buildTimeDays: shelf.buildTimeDays, today }
  const purchases = listPurchases(design).map((purchase): PurchaseAssessment => {
    const name = describePurchase(design, purchase)
    const row = pickRow(rows.filter((candidate) => matchesPurchase(design, purchase, candidate)))
    const common = { purchase, name, row }
    if (row === null) return { ...common, state: 'unknown', order: null, reason: 'the shelf does not list it' }
    if (row.onShelf) return { ...common, state: 'on-shelf', order: null, reason: null }
    if (row.leadTimeDays === null) {
      return {
        ...common,
        state: 'unknown',
        order: null,
        reason: 'it is not on the shelf, and its lead time is not stated',
      }
    }
    return { ...common, state: 'to-order', order: adviseOrder(row.leadTimeDays, dates), reason: null }
  })
  const count = (state: ShelfState) => purchases.filter((purchase) => purchase.state === state).length
  const orders = purchases.flatMap(({ order }) => order ?? [])
  const slacks = orders.flatMap((order) => (order.kind === 'no-date' ? [] : [order.slackDays]))
  return {
    purchases,
    counts: { onShelf: count('on-shelf'), toOrder: count('to-order'), unknown: count('unknown') },
    orderSlackDays: slacks.length === 0 || slacks.length < orders.length ? null : Math.min(...slacks),
  }
}

/** Lightest foil on the shelf as bought, um, alone or on a clad; null where the shelf holds none. */
export function findLightestHeldFoil({ rows }: ShelfContent): number | null {
  const held = rows.flatMap(({ onShelf, material, thicknessUm, foilUm }) => {
    if (!onShelf) return []
    return findLibraryMaterial(material)?.kind === 'copper-foil' ? [thicknessUm] : (foilUm ?? [])
  })
  return held.length === 0 ? null : Math.min(...held)
}

/** Of several rows for one material: what is on the shelf, then what comes soonest. */
function pickRow(rows: readonly HeldRow[]): HeldRow | null {
  const wait = ({ onShelf, leadTimeDays }: HeldRow) => (onShelf ? -1 : (leadTimeDays ?? Number.POSITIVE_INFINITY))
  return rows.reduce<HeldRow | null>((best, row) => (best === null || wait(row) < wait(best) ? row : best), null)
}

/** A row of the shelf in words: `pi-coverlay, 25 µm, with 25 µm acrylic-adhesive`. */
export function describeShelfRow(row: ShelfRow): string {
  const called = (text: string) => findLibraryMaterial(text)?.name ?? text
  const inText = (name: string) => name.charAt(0).toLowerCase() + name.slice(1)
  const parts = [`${called(row.material)}, ${row.thicknessUm} µm`]
  if (row.foil !== null) {
    const sides = row.foilSides === 2 ? 'both sides' : 'one side'
    parts.push(`with ${row.foilUm} µm ${inText(called(row.foil))} on ${sides}`)
  }
  if (row.adhesive !== null) {
    parts.push(`${row.foil === null ? 'with' : 'over'} ${row.adhesiveUm} µm ${inText(called(row.adhesive))}`)
  }
  return parts.join(' ')
}
