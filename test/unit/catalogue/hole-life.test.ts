import { describe, expect, test } from 'vitest'
import { evaluateItem, getItem } from '@/lib/engine/catalogue'
import { buildContext } from '@/lib/engine/evaluate'
import { makeExampleDesign } from './example-design'

describe('hole life, of several holes', () => {
  test('names what all wait for once, and of each what it lacks itself', () => {
    const design = makeExampleDesign()
    const [via] = design.features.holes
    if (via === undefined) throw new RangeError('the example design has lost its hole')
    for (const id of ['second', 'third']) design.features.holes.push({ ...structuredClone(via), id, name: id })
    Object.assign(design.brief, { temperatureCycles: null, cycleMinDegC: null })
    for (const zone of design.construction.zones) zone.throughModulusGpa = null
    Object.assign(design.features.holes[1] ?? {}, { wallPlatingUm: null })
    const { outcomes } = evaluateItem(getItem('hole-life'), buildContext(design))
    const missing = outcomes.flatMap((outcome) => (outcome.kind === 'not-computed' ? outcome.missing : []))
    expect(missing.map(({ label }) => label)).toEqual([
      'temperature cycles',
      'cold end of the cycles',
      'modulus through the thickness of Board',
      'wall plating of second',
    ])
    expect(outcomes[0]?.places.map(({ id }) => id)).toEqual(['via', 'second', 'third'])
  })
})

// No example of the item: from here less plating is better, and below it worse.
test('plating that fills the drill leaves no ring to crack, and nobody can tell', () => {
  const design = makeExampleDesign()
  for (const hole of design.features.holes) Object.assign(hole, { drillMm: 0.3, wallPlatingUm: 150 })
  expect(evaluateItem(getItem('hole-life'), buildContext(design)).verdict).toBe('cannot-tell')
})
