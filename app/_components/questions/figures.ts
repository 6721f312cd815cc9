import { countOf, digitsAsComputed, withSign } from '@/lib/engine/units'
import type { QuestionFigures } from '@/lib/review'
import type { Columns } from '../ui/data-table'

export const QUESTION_COLUMNS = {
  open: { head: 'Open', isNumeric: true },
  overdue: { head: 'Overdue', isNumeric: true },
  withoutOwner: { head: 'No owner', isNumeric: true },
  oldest: { head: 'Oldest open', isNumeric: true },
  answered: { head: 'Answered, not closed', isNumeric: true },
  agreed: { head: 'Agreed', isNumeric: true },
  days: { head: 'Days until agreed, median', isNumeric: true },
  rounds: { head: 'Rounds until agreed, mean', isNumeric: true },
  trend: { head: 'Trend of rounds' },
} satisfies Columns

const NONE = '–'

/** Figures as cells, in the one way they are written. */
export function writeFigures(figures: QuestionFigures): { readonly [Id in keyof typeof QUESTION_COLUMNS]: string } {
  const { oldestOpenDays, medianDaysUntilAgreed, roundsUntilAgreed } = figures
  return {
    open: String(figures.open),
    overdue: String(figures.overdue),
    withoutOwner: String(figures.withoutOwner),
    oldest: oldestOpenDays === null ? NONE : countOf(oldestOpenDays, 'day'),
    answered: String(figures.answered),
    agreed: String(figures.agreed),
    days: medianDaysUntilAgreed === null ? NONE : digitsAsComputed(medianDaysUntilAgreed, 'daysUntilAgreed'),
    rounds: roundsUntilAgreed === null ? NONE : digitsAsComputed(roundsUntilAgreed, 'roundsPerQuestion'),
    trend: writeTrend(figures.roundsThenAndNow),
  }
}

/** `2.4 to 1.2 (−50 %)` */
function writeTrend(trend: QuestionFigures['roundsThenAndNow']): string {
  if (trend === null) return NONE
  const { before, now } = trend
  const figures = `${digitsAsComputed(before, 'roundsPerQuestion')} to ${digitsAsComputed(now, 'roundsPerQuestion')}`
  if (before === 0) return figures
  const pct = digitsAsComputed((100 * (now - before)) / before, 'roughSharePct')
  return `${figures} (${withSign(pct)} %)`
}
