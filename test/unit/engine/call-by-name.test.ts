import { describe, expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing/sheet/contents'
import { callByName, type Design, evaluate } from '@/lib/engine'
import { findRemedies } from '@/lib/engine/remedies'
import { findDrawingGaps } from '@/lib/review'
import { makeExampleDesign } from '../catalogue/example-design'

describe('what a sentence calls a named thing', () => {
  test.each([
    ['bend', 'Mirror hinge', 'bend Mirror hinge'],
    ['bend', 'Bend 2', 'Bend 2'],
    ['bend', 'bend round the housing', 'bend round the housing'],
    ['Bend', 'bend round the housing', 'Bend round the housing'],
    ['bend', 'Bending former', 'bend Bending former'],
    ['zone', 'Zone_A', 'Zone_A'],
    ['layer', '', 'layer '],
  ] as const)('%s "%s" is %s', (kind, name, called) => {
    expect(callByName(kind, name)).toBe(called)
  })
})

/** As the editor names what is new: `Bend 2`, `Zone 1`. */
function withNamesOfTheEditor(design: Design): Design {
  const named = structuredClone(design)
  named.bends.forEach((bend, index) => {
    bend.name = `Bend ${index + 1}`
  })
  named.construction.zones.forEach((zone, index) => {
    zone.name = `Zone ${index + 1}`
  })
  named.construction.layers.forEach((layer, index) => {
    layer.name = `${layer.kind === 'stiffener' ? 'Stiffener' : 'Layer'} ${index + 1}`
  })
  return named
}

/** The same with what nobody stated yet, so that sentences about what is missing are there too. */
function withoutInputs(design: Design): Design {
  const open = structuredClone(design)
  for (const bend of open.bends) {
    Object.assign(bend, { use: null, requiredCycles: null, distanceToRigidMm: null, strainReliefAtTransition: null })
  }
  for (const zone of open.construction.zones) Object.assign(zone, { lengthMm: null, widthMm: null })
  return open
}

const TWICE = /\b(bend|zone|layer|stiffener) \1\b/i

test('nothing is called a bend, a zone or a layer twice, in results, remedies, questions and drawing', () => {
  const sound = withNamesOfTheEditor(makeExampleDesign())
  const tight = structuredClone(sound)
  for (const bend of tight.bends) Object.assign(bend, { insideRadiusMm: 0.3, use: 'dynamic', requiredCycles: 1e7 })
  let sentences = 0
  for (const design of [sound, tight, withoutInputs(sound)]) {
    const results = evaluate(design)
    const told = {
      results,
      gaps: findDrawingGaps(design),
      sheet: makeSheetContents(design, results, FILE_UNITS),
      remedies: design.bends.slice(0, 1).map(({ id }) => findRemedies(design, id)),
    }
    JSON.stringify(told, (_, value) => {
      if (typeof value !== 'string') return value
      if (value.includes('Bend 1')) sentences += 1
      expect(value).not.toMatch(TWICE)
      return value
    })
  }
  expect(sentences).toBeGreaterThan(50)
})
