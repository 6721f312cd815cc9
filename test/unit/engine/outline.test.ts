import { describe, expect, it } from 'vitest'
import {
  type Design,
  findOutlineIssue,
  makeBlankDesign,
  type Outline,
  parseDesign,
  readStoredDesign,
} from '@/lib/engine'
import { applyGuardedPatch, compareDesigns, makeDesignPatch } from '@/lib/review'

const outline = (...verticesMm: Outline['verticesMm']): Outline => ({ verticesMm, rollingDirection: null })
const SQUARE = outline([0, 0], [10, 0], [10, 10], [0, 10])
const withOutline = (value: Outline | null): Design => {
  const blank = makeBlankDesign('Trial')
  return { ...blank, features: { ...blank.features, outline: value } }
}

describe('outline of the part', () => {
  it('documents from before there was one still read, as not known yet', () => {
    const { outline: _, ...features } = makeBlankDesign('Trial').features
    const parsed = parseDesign({ ...makeBlankDesign('Trial'), features })
    expect(parsed).toMatchObject({ ok: true, value: { features: { outline: null } } })
  })

  it('names the two edges that cross, with their corners', () => {
    const parsed = parseDesign(withOutline(outline([0, 0], [10, 10], [10, 0], [0, 10])))
    expect(parsed).toMatchObject({
      ok: false,
      issues: [
        {
          code: 'outline',
          path: ['features', 'outline', 'verticesMm', 2],
          message:
            'the edge from corner 3 (10, 0) to corner 4 (0, 10) meets the edge from corner 1 (0, 0) to corner 2 (10, 10)',
        },
      ],
    })
  })

  it.each([
    [outline([0, 0], [5, 0], [10, 0]), /runs back along|lie in one line/],
    [outline([0, 0], [0, 0], [10, 0]), /corner 1 \(0, 0\) to corner 2 \(0, 0\) has no length/],
    [outline([0, 0], [10, 0], [4, 0], [4, 8]), /runs back along/],
  ])('refuses what encloses nothing or folds back', (value, message) => {
    expect(findOutlineIssue(value)?.message).toMatch(message)
  })

  it('takes either direction and refuses fewer than three corners', () => {
    expect(findOutlineIssue(SQUARE)).toBeNull()
    expect(findOutlineIssue({ ...SQUARE, verticesMm: [...SQUARE.verticesMm].reverse() })).toBeNull()
    expect(parseDesign(withOutline(outline([0, 0], [1, 1])))).toMatchObject({
      ok: false,
      issues: [{ message: 'an outline has at least 3 corners' }],
    })
  })
})

describe('outlines compared', () => {
  it('say what became of the shape in one sentence, however many corners moved', () => {
    const longer = outline([0, 0], [20, 0], [20, 10], [5, 12], [0, 10])
    expect(compareDesigns(withOutline(SQUARE), withOutline(longer)).map(({ sentence }) => sentence)).toEqual([
      'outline 4 vertices, 10 × 10 mm to 5 vertices, 20 × 12 mm',
    ])
    expect(compareDesigns(withOutline(null), withOutline(SQUARE))[0]).toMatchObject({
      sentence: 'outline not stated to 4 vertices, 10 × 10 mm',
      path: ['features', 'outline', 'verticesMm'],
    })
    const along = { ...SQUARE, rollingDirection: 'along-x' as const }
    expect(compareDesigns(withOutline(SQUARE), withOutline(along)).map(({ sentence }) => sentence)).toEqual([
      'outline rolling direction not stated to along x',
    ])
  })

  it('an absent outline of an older document is no change against one not known', () => {
    const { outline: _, ...older } = makeBlankDesign('Trial').features
    const stored = JSON.stringify({ ...makeBlankDesign('Trial'), features: older })
    expect(compareDesigns(readStoredDesign(stored), withOutline(null))).toEqual([])
  })

  it('travel in a proposal as one thing, and not onto another outline', () => {
    const changed = outline([0, 0], [20, 0], [20, 10], [0, 10])
    const patch = makeDesignPatch(withOutline(SQUARE), withOutline(changed))
    expect(patch.filter(({ op }) => op !== 'test')).toEqual([
      { op: 'replace', path: '/features/outline/verticesMm', value: changed.verticesMm },
    ])
    expect(applyGuardedPatch(withOutline(SQUARE), patch, withOutline(SQUARE))).toEqual({
      ok: true,
      document: withOutline(changed),
    })
    const moved = withOutline(outline([0, 0], [9, 0], [9, 9], [0, 9]))
    expect(applyGuardedPatch(moved, patch, withOutline(SQUARE)).ok).toBe(false)
  })
})
