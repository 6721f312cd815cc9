import { expect, it } from 'vitest'
import { asksSomething, countRounds, isLate, type Question, summariseQuestions } from '@/lib/review'

const NOW = '2027-03-31T12:00:00.000Z'
const daysAgo = (days: number) => new Date(Date.parse(NOW) - days * 86_400_000).toISOString()

const question = (changes: Partial<Question> = {}): Question => ({
  state: 'open',
  openedAt: daysAgo(3),
  closedAt: null,
  dueOn: null,
  ownerId: null,
  isLive: true,
  rounds: 0,
  ...changes,
})
const agreed = (rounds: number, closedDaysAgo: number, tookDays: number) =>
  question({
    state: 'closed',
    openedAt: daysAgo(closedDaysAgo + tookDays),
    closedAt: daysAgo(closedDaysAgo),
    rounds,
  })

it('a round is each time that the word passes to the side that answers', () => {
  const asker = { openedById: 'fay', openedByCompanyId: 'fabricator', audienceCompanyId: 'fabricator' }
  const fay = { authorId: 'fay', companyId: 'fabricator' }
  const kim = { authorId: 'kim', companyId: 'fabricator' }
  const lee = { authorId: 'lee', companyId: 'team' }
  const mo = { authorId: 'mo', companyId: 'team' }
  expect(countRounds([], asker)).toBe(0)
  expect(countRounds([fay], asker)).toBe(0)
  expect(countRounds([fay, kim], asker), 'a colleague who asks along is no answer').toBe(0)
  expect(countRounds([fay, lee], asker)).toBe(1)
  expect(countRounds([fay, lee, mo], asker), 'two of the team answer together').toBe(1)
  expect(countRounds([fay, lee, kim, mo], asker)).toBe(2)
  expect(countRounds([fay, fay, lee, fay, lee, lee, fay], asker)).toBe(2)
})

it('within one company the sides are who asked and everybody else', () => {
  const asker = { openedById: 'lee', openedByCompanyId: 'team', audienceCompanyId: null }
  const [lee, mo] = [
    { authorId: 'lee', companyId: 'team' },
    { authorId: 'mo', companyId: 'team' },
  ]
  expect(countRounds([lee, mo], asker)).toBe(1)
  expect(countRounds([lee, mo, lee, mo], asker)).toBe(2)
})

it('a note tells, unless somebody is to answer it; what a proposal says waits for the decision', () => {
  const note = { kind: 'note', anchorKind: 'bend', ownerId: null, dueOn: null }
  expect(asksSomething(note)).toBe(false)
  expect(asksSomething({ ...note, ownerId: 'lee' })).toBe(true)
  expect(asksSomething({ ...note, dueOn: '2027-04-01' })).toBe(true)
  expect(asksSomething({ ...note, kind: 'engineering-query' })).toBe(true)
  expect(asksSomething({ ...note, kind: 'must-change', anchorKind: 'proposal' })).toBe(false)
})

it('is late from the day after the due day, and only while it is open', () => {
  expect(isLate({ state: 'open', dueOn: '2027-03-31' }, '2027-03-31')).toBe(false)
  expect(isLate({ state: 'open', dueOn: '2027-03-30' }, '2027-03-31')).toBe(true)
  expect(isLate({ state: 'answered', dueOn: '2027-03-30' }, '2027-03-31')).toBe(false)
  expect(isLate({ state: 'open', dueOn: null }, '2027-03-31')).toBe(false)
})

it('nothing asked gives counts of zero and no averages', () => {
  expect(summariseQuestions([], NOW)).toEqual({
    open: 0,
    overdue: 0,
    withoutOwner: 0,
    answered: 0,
    oldestOpenDays: null,
    agreed: 0,
    medianDaysUntilAgreed: null,
    roundsUntilAgreed: null,
    roundsThenAndNow: null,
  })
})

it('counts what is open where somebody can still answer, and averages what is agreed', () => {
  const figures = summariseQuestions(
    [
      question({ dueOn: '2027-03-30', ownerId: 'lee' }),
      question({ openedAt: daysAgo(9.5) }),
      question({ openedAt: daysAgo(400), dueOn: '2026-01-01', isLive: false }),
      question({ state: 'answered' }),
      agreed(1, 10, 2),
      agreed(2, 20, 4),
      agreed(3, 100, 12),
      agreed(5, 120, 8),
      agreed(9, 300, 30),
    ],
    NOW,
  )
  expect(figures).toMatchObject({ open: 2, overdue: 1, withoutOwner: 1, answered: 1, oldestOpenDays: 9, agreed: 5 })
  expect(figures.medianDaysUntilAgreed).toBeCloseTo(8)
  expect(figures.roundsUntilAgreed).toBeCloseTo(4)
  expect(figures.roundsThenAndNow, 'of the two spans of 90 days alone').toEqual({ before: 4, now: 1.5 })
})

it('says no trend where one of the spans has nothing in it', () => {
  expect(summariseQuestions([agreed(1, 89, 1)], NOW).roundsThenAndNow).toBeNull()
  expect(summariseQuestions([agreed(1, 90, 1)], NOW).roundsThenAndNow).toBeNull()
  expect(summariseQuestions([agreed(1, 89, 1), agreed(2, 90, 1)], NOW).roundsThenAndNow).toEqual({ before: 2, now: 1 })
})
