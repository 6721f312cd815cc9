const MS_PER_DAY = 86_400_000

/** A calendar day so many days later, ISO 8601; earlier for a negative number. */
export function addDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10)
}

export function countDaysTo(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY)
}

/**
 * Within so many days of the latest order date the order is to go out now: quoting and placing it takes about that long.
 * Common practice, no published source.
 */
export const ORDER_NOW_DAYS = 14

export interface OrderDates {
  readonly needDate: string | null
  readonly buildTimeDays: number | null
  readonly today: string
}

/** When a material must be ordered. `no-date` names what is missing. */
export type OrderAdvice =
  | {
      readonly kind: 'in-time' | 'order-now' | 'too-late'
      readonly latestOrderDate: string
      /** Days from today to the latest order date; negative when it has passed. */
      readonly slackDays: number
    }
  | { readonly kind: 'no-date'; readonly reason: string }

/** Latest order date = need date - build time - lead time, in calendar days. */
export function adviseOrder(leadTimeDays: number, { needDate, buildTimeDays, today }: OrderDates): OrderAdvice {
  if (needDate === null) return { kind: 'no-date', reason: 'the brief states no need date' }
  if (buildTimeDays === null) return { kind: 'no-date', reason: 'the fabricator states no build time' }
  const latestOrderDate = addDays(needDate, -(buildTimeDays + leadTimeDays))
  const slackDays = countDaysTo(today, latestOrderDate)
  const kind = slackDays < 0 ? 'too-late' : slackDays <= ORDER_NOW_DAYS ? 'order-now' : 'in-time'
  return { kind, latestOrderDate, slackDays }
}
