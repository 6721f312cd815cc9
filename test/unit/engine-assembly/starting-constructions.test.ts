import { describe, expect, test } from 'vitest'
import { parseDesign } from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'

describe('starting constructions', () => {
  test.each(listStartingConstructions().map((each) => [each.id, each] as const))(
    '%s is a valid design document with the conductor layers it announces',
    (_, construction) => {
      const design = construction.makeDesign('Trial')
      const parsed = parseDesign(structuredClone(design))
      expect(parsed).toEqual({ ok: true, value: design })
      expect(design.construction.layers.filter((layer) => layer.kind === 'conductor')).toHaveLength(
        construction.conductorLayerCount,
      )
      expect(design.bends.length).toBeGreaterThan(0)
    },
  )

  test('are made again each time, so that editing one leaves the next untouched', () => {
    for (const { makeDesign } of listStartingConstructions()) {
      const first = makeDesign('First')
      first.construction.layers.pop()
      expect(makeDesign('Second').construction.layers.length).toBe(first.construction.layers.length + 1)
    }
  })
})
