import { describe, expect, it } from 'vitest'
import { describeTerms, findTermIssues, type ReleaseTerms } from '@/lib/review'

/** That a concession has a limit in quantity or time is ISO 9000:2015, 3.12.5, note 1 (from memory); the rest is a choice of ours. */
const terms = (change: Partial<ReleaseTerms> = {}): ReleaseTerms => ({
  isConditional: false,
  purpose: 'series',
  quantityLimit: null,
  validUntil: null,
  conditions: '',
  changeNumber: '',
  reason: '',
  effectivity: '',
  ...change,
})
const conditional = (change: Partial<ReleaseTerms>) => terms({ isConditional: true, ...change })
const context = { day: '2027-03-01', replaces: null }
const fields = (given: ReleaseTerms, waivers: Parameters<typeof findTermIssues>[1] = []) =>
  findTermIssues(given, waivers, context).map(({ field }) => field)

describe('the terms of a release', () => {
  it('reach no further in number than the least of the waivers that it rests on', () => {
    const waivers = [{ quantityLimit: 200 }, { quantityLimit: 50 }, {}]
    expect(fields(terms(), waivers)).toEqual(['quantityLimit'])
    expect(fields(conditional({ quantityLimit: 51 }), waivers)).toEqual(['quantityLimit'])
    expect(fields(conditional({ quantityLimit: 50 }), waivers)).toEqual([])
    // A last day is no number of parts.
    expect(fields(conditional({ validUntil: '2027-04-01' }), waivers)).toEqual(['quantityLimit'])
  })

  it('reach no further in time than the first of them that ends', () => {
    const waivers = [{ validUntil: '2027-06-30' }, { validUntil: '2027-03-31' }]
    expect(fields(terms(), waivers)).toEqual(['validUntil'])
    expect(fields(conditional({ validUntil: '2027-04-01' }), waivers)).toEqual(['validUntil'])
    expect(fields(conditional({ validUntil: '2027-03-31' }), waivers)).toEqual([])
    expect(fields(conditional({ quantityLimit: 5 }), waivers)).toEqual(['validUntil'])
  })

  it('are bound by both, where one waiver ends and another is for so many parts', () => {
    const waivers = [{ quantityLimit: 50 }, { validUntil: '2027-03-31' }]
    expect(fields(conditional({ quantityLimit: 60, validUntil: '2027-04-01' }), waivers)).toEqual([
      'quantityLimit',
      'validUntil',
    ])
  })

  it('are not over on the day of the release, and say why they replace another', () => {
    expect(fields(conditional({ validUntil: '2027-02-28' }))).toEqual(['validUntil'])
    expect(fields(conditional({ validUntil: '2027-03-01' }))).toEqual([])
    const replacing = { ...context, replaces: 'A' }
    expect(findTermIssues(terms(), [], replacing).map(({ field }) => field)).toEqual(['reason'])
  })

  /** A choice of ours: a release for series says that series may be made, and an action due before it that it may not yet. */
  it('come before nothing that has to wait for them, but as a conditional release', () => {
    const due = (change: object) => ({
      number: 3,
      state: 'open' as const,
      due: 'before-series' as const,
      dueOn: null,
      isAfterRelease: false,
      ...change,
    })
    const withAction = (given: ReleaseTerms, change: object) =>
      findTermIssues(given, [], { ...context, actions: [due(change)] }).map(({ field }) => field)
    expect(withAction(terms(), {})).toEqual(['isConditional'])
    expect(withAction(terms(), { state: 'reported' })).toEqual(['isConditional'])
    for (const state of ['closed', 'dropped']) expect(withAction(terms(), { state })).toEqual([])
    expect(withAction(terms({ purpose: 'first-articles' }), {})).toEqual([])
    expect(withAction(conditional({ quantityLimit: 50 }), {})).toEqual([])
    const firstArticle = { due: 'before-first-article' }
    for (const purpose of ['series', 'first-articles'] as const)
      expect(withAction(terms({ purpose }), firstArticle)).toEqual(['isConditional'])
    expect(withAction(terms({ purpose: 'prototypes' }), firstArticle)).toEqual([])
    // Its day is the last on which it is in time.
    expect(withAction(terms(), { due: 'date', dueOn: '2027-02-28' })).toEqual(['isConditional'])
    expect(withAction(terms(), { due: 'date', dueOn: '2027-03-01' })).toEqual([])
  })

  it('say nothing of a purpose that a release from before did not state', () => {
    expect(describeTerms(terms({ purpose: null }))).toBe('')
    expect(describeTerms(conditional({ purpose: 'prototypes', quantityLimit: 50 }))).toBe(
      'for prototypes, at most 50 parts',
    )
  })
})
