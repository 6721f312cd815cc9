import { describe, expect, test } from 'vitest'
import { buildCopperStack, readSet } from '@/lib/artwork'
import { findHatch } from '@/lib/artwork/copper/hatch'
import { listRealFiles, readWholeSet } from './real-sets'

const areThere = listRealFiles().length > 0

/*
 * Hatches of the openly licensed sets, against what SOURCE.md measured with a program that shares no code with this one: strokes of 0.2032 mm at 45 and 135 degrees at a pitch
 * of 0.508 mm, copper 64 %.
 */
describe.skipIf(!areThere)('hatched planes of real sets', () => {
  test.each(['flex-breakout'])('%s: bar, pitch, angle and opening of both layers', (name) => {
    const { layers } = buildCopperStack(readSet(readWholeSet(name)))
    expect(layers).toHaveLength(2)
    for (const { edges } of layers) {
      const hatch = findHatch(
        edges,
        Array.from({ length: edges.count }, (_, at) => at),
      )
      expect((hatch?.barNm ?? 0) / 1e6).toBeCloseTo(0.2032, 4)
      expect((hatch?.pitchNm ?? 0) / 1e6).toBeCloseTo(0.508, 4)
      expect(hatch?.turnDeg).toBeCloseTo(45, 2)
      expect(hatch?.openFraction).toBeCloseTo(0.36, 3)
    }
  })
})
