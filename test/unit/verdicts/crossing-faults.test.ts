import { describe, expect, test } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import { makeExampleDesign } from '../catalogue/example-design'

/*
 * Width, direction and angle of a conductor inside a bend are three faults with three cures: each is named by an item of its own, and by no other.
 * Common practice, no published source.
 */

const ITEMS = ['crossing-angle', 'width-change-in-bend', 'direction-change-in-bend'] as const

type Crossing = Design['features']['conductors'][number]['crossings'][number]

function judge(change: Partial<Crossing>): Record<string, string | undefined> {
  const design = makeExampleDesign()
  const [conductor] = design.features.conductors
  const [crossing] = conductor?.crossings ?? []
  if (crossing === undefined) throw new RangeError('the example design has lost its crossing')
  Object.assign(crossing, { angleToAxisDeg: 90, widthChangesInside: false, directionChangesInside: false }, change)
  const { items } = evaluate(design)
  return Object.fromEntries(ITEMS.map((id) => [id, items.find(({ itemId }) => itemId === id)?.verdict]))
}

/** A yes or no about a drawing is a statement that somebody stands by; the angle is a number. */
const AS_IT_SHOULD_BE = {
  'crossing-angle': 'meets',
  'width-change-in-bend': 'needs-judgment',
  'direction-change-in-bend': 'needs-judgment',
}

describe('a conductor inside a bend', () => {
  test.each([
    ['crossing-angle', { angleToAxisDeg: 45 }, { angleToAxisDeg: null }],
    ['width-change-in-bend', { widthChangesInside: true }, { widthChangesInside: null }],
    ['direction-change-in-bend', { directionChangesInside: true }, { directionChangesInside: null }],
  ] as const)('%s fails by itself, and is asked by itself', (itemId, fault, unknown) => {
    expect(judge({})).toEqual(AS_IT_SHOULD_BE)
    expect(judge(fault)).toEqual({ ...AS_IT_SHOULD_BE, [itemId]: 'fails' })
    expect(judge(unknown)).toEqual({ ...AS_IT_SHOULD_BE, [itemId]: 'not-computed' })
  })
})
