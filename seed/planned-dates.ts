import { readStoredDesign } from '@/lib/engine'
import type { StoryClock } from './story-clock'

interface PlannedDays {
  /** Days before today on which each is planned; negative for a day to come. */
  readonly review: number | null
  readonly freeze: number
  readonly need: number
}

/**
 * What was planned and what was done must fit whenever the scenario is played: Pipit is reviewed, frozen and released in this order, Skua has all of it
 * before it.
 */
export const PIPIT_DAYS: PlannedDays = { review: 105, freeze: 89, need: -78 }
export const SKUA_A_DAYS: PlannedDays = { review: null, freeze: -89, need: -162 }
export const SKUA_B_DAYS: PlannedDays = { ...SKUA_A_DAYS, review: -61 }

/** The design's text with the dates of the story. */
export function withPlannedDates(designText: string, { day }: StoryClock, days: PlannedDays): string {
  const { brief, ...design } = readStoredDesign(designText)
  const dates = {
    manufacturingReviewDate: days.review === null ? null : day(days.review),
    layoutFreezeDate: day(days.freeze),
    needDate: day(days.need),
  }
  return JSON.stringify({ ...design, brief: { ...brief, ...dates } }, null, 2)
}
