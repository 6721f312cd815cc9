import { describe, expect, it } from 'vitest'
import { type Design, evaluate, evaluateDraft, type LimitOverride } from '@/lib/engine'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { findMarginBand, markCheckedWhenSaved, markDraftCheckedWhenSaved, withholdLimits } from '@/lib/review'
import { makeDesign } from './snapshot-factory'

const KEY = 'conductorWidthMm'
const OWNER = { kind: 'fabricator', name: 'Brackenfold Circuits' } as const
const CHECKED = [{ key: KEY, ownerName: OWNER.name }]
const limitOf = (value: number): LimitOverride[] => [{ key: KEY, value, owner: OWNER }]

function makeWide(widthMm: number): Design {
  return makeDesign((design) => {
    design.features.conductors.splice(1)
    for (const conductor of design.features.conductors) conductor.widthMm = widthMm
  })
}

const design = makeWide(0.2)
const shown = evaluate(design)
const told = (value: number) =>
  withholdLimits(shown, evaluate(design, { limits: limitOf(value) }), CATALOGUE, CHECKED).items.find(
    ({ itemId }) => itemId === 'conductor-width',
  )

describe('a limit that is not shown', () => {
  it.each([
    [0.1, 'meets', 'well-inside'],
    [0.19, 'meets', 'near-limit'],
    [0.21, 'fails', 'outside'],
  ] as const)('of %d mm gives a width of 0.2 mm the verdict %s and the band %s', (value, verdict, band) => {
    const item = told(value)
    expect(item).toMatchObject({ verdict, outcomes: [{ kind: 'withheld', verdict, band, value: { value: 0.2 } }] })
    // Two limits in one band are told in the same words: nothing else can be read off.
    expect(JSON.stringify(told(value))).toBe(JSON.stringify(told(value + 0.001)))
    expect(JSON.stringify(item)).not.toContain(`${value}`)
  })

  it('leaves everything else as it is without it', () => {
    const full = evaluate(design, { limits: limitOf(0.19) })
    const handedOut = withholdLimits(shown, full, CATALOGUE, CHECKED)
    const others = (each: typeof shown) => each.items.filter(({ itemId }) => itemId !== 'conductor-width')
    expect(others(handedOut)).toEqual(others(shown))
    expect({ ...handedOut, items: [] }).toEqual({ ...shown, items: [] })
  })

  it('gives a value only where that is the design’s own', () => {
    const full = evaluate(makeWide(0.25), { limits: limitOf(0.19) })
    const item = withholdLimits(shown, full, CATALOGUE, CHECKED).items.find(
      ({ itemId }) => itemId === 'conductor-width',
    )
    expect(item?.outcomes).toMatchObject([{ kind: 'withheld', value: null }])
  })
})

describe('a draft that nobody saved', () => {
  it('says of items that rest on such a limit that they are checked when saved', () => {
    const draft = markCheckedWhenSaved(shown, CATALOGUE, CHECKED)
    const item = draft.items.find(({ itemId }) => itemId === 'conductor-width')
    expect(item).toMatchObject({ verdict: 'not-computed', outcomes: [{ kind: 'not-computed', missing: [] }] })
    expect(item?.headline).toMatch(/^Checked when saved: Brackenfold Circuits/)
    expect(markCheckedWhenSaved(shown, CATALOGUE, [])).toBe(shown)
  })

  it('takes them from the recorded results where it is the saved design', () => {
    const recorded = withholdLimits(shown, evaluate(design, { limits: limitOf(0.21) }), CATALOGUE, CHECKED)
    const draft = markDraftCheckedWhenSaved(evaluateDraft(design), CATALOGUE, CHECKED, recorded)
    expect(draft.items.find(({ itemId }) => itemId === 'conductor-width')?.verdict).toBe('fails')
    const unsaved = markDraftCheckedWhenSaved(evaluateDraft(design), CATALOGUE, CHECKED)
    expect(unsaved.items.find(({ itemId }) => itemId === 'conductor-width')?.verdict).toBe('not-computed')
  })
})

it('a band has three words, and a thin margin is near', () => {
  const outcome = shown.items.flatMap(({ outcomes }) => outcomes).find(({ kind }) => kind === 'decided')
  if (outcome?.kind !== 'decided') throw new Error('nothing is decided')
  expect(findMarginBand({ ...outcome, verdict: 'thin-margin' })).toBe('near-limit')
  expect(findMarginBand({ ...outcome, verdict: 'fails' })).toBe('outside')
  const limit = { ...outcome.limit, value: 0 }
  expect(findMarginBand({ ...outcome, verdict: 'meets', margin: 1, limit })).toBe('well-inside')
})
