/** A thread with what its figures rest on. Times are ISO 8601 in UTC. */
export interface Question {
  readonly state: 'open' | 'answered' | 'closed'
  readonly openedAt: string
  readonly closedAt: string | null
  /** YYYY-MM-DD; null where no day was stated */
  readonly dueOn: string | null
  readonly ownerId: string | null
  /** False once its revision left the path: nobody can answer any more. */
  readonly isLive: boolean
  readonly rounds: number
}

/** The two spans that are compared, each of so many days: our choice, a quarter of a year. */
export const COMPARED_DAYS = 90

/** Which of the questions that are not closed a list holds. */
export const QUESTION_FILTERS = ['all', 'overdue', 'own', 'without-owner', 'answered'] as const
export type QuestionFilter = (typeof QUESTION_FILTERS)[number]

export interface QuestionFigures {
  readonly open: number
  readonly overdue: number
  readonly withoutOwner: number
  /** Answered, and not yet closed by who may close it. */
  readonly answered: number
  /** Whole days since the oldest open one was asked; null where none is open. */
  readonly oldestOpenDays: number | null
  readonly agreed: number
  /** Median from asking to closing; null where none is closed. */
  readonly medianDaysUntilAgreed: number | null
  /** Mean; null where none is closed. */
  readonly roundsUntilAgreed: number | null
  /** Means of those closed in the last span and in the one before; null where either has none. */
  readonly roundsThenAndNow: { readonly before: number; readonly now: number } | null
}

const DAY_MS = 86_400_000

/**
 * A note tells; anything else asks. A note with an owner or a due day asks as well. What a proposal says is settled by the
 * decision on it.
 */
export function asksSomething(thread: {
  readonly kind: string
  readonly anchorKind: string
  readonly ownerId: string | null
  readonly dueOn: string | null
}): boolean {
  if (thread.anchorKind === 'proposal') return false
  return thread.kind !== 'note' || thread.ownerId !== null || thread.dueOn !== null
}

/** The due day itself is not late. */
export function isLate({ state, dueOn }: Pick<Question, 'state' | 'dueOn'>, today: string): boolean {
  return state === 'open' && dueOn !== null && dueOn < today
}

/**
 * How often the word passed from the side that asks to the side that answers: a question that is answered at once took one round, one
 * that was asked back took two. Within the team the sides are the person who opened it and everybody else.
 */
export function countRounds(
  comments: readonly { readonly authorId: string; readonly companyId: string }[],
  asker: {
    readonly openedById: string
    readonly openedByCompanyId: string
    readonly audienceCompanyId: string | null
  },
): number {
  // The team may be of several companies; against a fabricator it is one side.
  const { openedById, openedByCompanyId, audienceCompanyId } = asker
  const isAnswering = comments.map(({ authorId, companyId }) =>
    audienceCompanyId === null
      ? authorId !== openedById
      : (companyId === audienceCompanyId) !== (openedByCompanyId === audienceCompanyId),
  )
  return isAnswering.filter((answers, at) => answers && isAnswering[at - 1] === false).length
}

/** @param now  ISO 8601 in UTC */
export function summariseQuestions(questions: readonly Question[], now: string): QuestionFigures {
  const today = now.slice(0, 10)
  const live = questions.filter(({ isLive }) => isLive)
  const open = live.filter(({ state }) => state === 'open')
  const agreed = questions.flatMap((question) =>
    question.state === 'closed' && question.closedAt !== null ? [{ ...question, closedAt: question.closedAt }] : [],
  )
  const age = (since: string, until: string) => (Date.parse(until) - Date.parse(since)) / DAY_MS
  const closedWithin = (from: number, to: number) =>
    agreed.filter(({ closedAt }) => age(closedAt, now) >= from && age(closedAt, now) < to).map(({ rounds }) => rounds)
  const [recent, earlier] = [mean(closedWithin(0, COMPARED_DAYS)), mean(closedWithin(COMPARED_DAYS, 2 * COMPARED_DAYS))]
  const ages = open.map(({ openedAt }) => Math.floor(age(openedAt, now)))
  return {
    open: open.length,
    overdue: open.filter((question) => isLate(question, today)).length,
    withoutOwner: open.filter(({ ownerId }) => ownerId === null).length,
    answered: live.filter(({ state }) => state === 'answered').length,
    oldestOpenDays: ages.length === 0 ? null : Math.max(...ages),
    agreed: agreed.length,
    medianDaysUntilAgreed: median(agreed.map(({ openedAt, closedAt }) => age(openedAt, closedAt))),
    roundsUntilAgreed: mean(agreed.map(({ rounds }) => rounds)),
    roundsThenAndNow: recent === null || earlier === null ? null : { before: earlier, now: recent },
  }
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length
}

function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b)
  const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.floor(sorted.length / 2)]]
  return low === undefined || high === undefined ? null : (low + high) / 2
}
