import { describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { DEMO_DESIGNS, readDrawnDesign } from './demo-design-files'
import { makeDigest } from './golden-digest'

/** Last digits of pow, exp and trigonometry differ between machines; nine digits are far inside any tolerance here. */
const DIGITS = 9

function serialise(value: unknown): string {
  const rounded = (_: string, each: unknown): unknown =>
    typeof each === 'number' && !Number.isInteger(each) ? Number(each.toPrecision(DIGITS)) : each
  return `${JSON.stringify(value, rounded, 1)}\n`
}

describe('full results of the demo designs', () => {
  test.each(DEMO_DESIGNS)('%s gives the recorded numbers and verdicts', async (name) => {
    const evaluation = evaluate(readDrawnDesign(name), {
      facts: {
        evaluatedOn: '2026-11-23',
        fabricatorsInvited: 2,
        openEngineeringQueries: 1,
        openMustChangeThreads: 0,
        daysSinceFabricatorLooked: 4,
        changesSinceFabricatorLooked: 0,
        artworkFileCount: 9,
      },
      limits: [
        { key: 'cornerInsideRadiusMm', value: 0.5, owner: { kind: 'fabricator', name: 'Brackenfold Circuits' } },
        { key: 'bendToRigidMm', value: 3, owner: { kind: 'workspace', name: 'Quillmoor Instruments' } },
      ],
    })
    await expect(makeDigest(evaluation)).toMatchFileSnapshot(`../../fixtures/golden/${name}.digest.txt`)
    await expect(serialise(evaluation)).toMatchFileSnapshot(`../../fixtures/golden/${name}.json`)
  })

  test('are the same when computed again, and leave the design as it was', () => {
    for (const name of DEMO_DESIGNS) {
      const design = readDrawnDesign(name)
      const before = JSON.stringify(design)
      const first = evaluate(design)
      expect(evaluate(design)).toEqual(first)
      expect(JSON.stringify(design)).toBe(before)
      expect(structuredClone(first)).toEqual(first)
    }
  })
})
