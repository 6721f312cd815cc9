import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Design, parseDesign } from '@/lib/engine'
import { applyGuardedPatch, describeOperations, hashJson, makeDesignPatch } from '@/lib/review'

const readDesign = (name: string): Design => {
  const text = readFileSync(new URL(`../../../seed/designs/${name}.json`, import.meta.url), 'utf8')
  const parsed = parseDesign(JSON.parse(text))
  if (!parsed.ok) throw new Error(`${name} is no design`)
  return parsed.value
}
const SKUA = readDesign('skua-rev-a')

/** A copy with an edit. */
function edit(design: Design, change: (copy: Design) => void): Design {
  const copy = structuredClone(design)
  change(copy)
  return copy
}
const must = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error('the demo design lacks it')
  return value
}
const firstConductor = (design: Design) => must(design.construction.layers.find((layer) => layer.kind === 'conductor'))

/** Edits of the kinds that the editor makes, each on a place that a number picks. */
const EDITS: readonly ((copy: Design, pick: number) => void)[] = [
  (copy, pick) => {
    must(copy.bends[pick % copy.bends.length]).insideRadiusMm += 0.25
  },
  (copy, pick) => {
    const layer = must(copy.construction.layers[pick % copy.construction.layers.length])
    layer.thicknessUm += 3
  },
  (copy, pick) => {
    const layer = must(copy.construction.layers[pick % copy.construction.layers.length])
    copy.construction.layers.splice(pick % copy.construction.layers.length, 0, {
      ...layer,
      id: `layer-new-${pick}`,
      name: `New ${pick}`,
    })
  },
  (copy, pick) => {
    const zone = must(copy.construction.zones[pick % copy.construction.zones.length])
    if (zone.presence.length > 1) zone.presence.splice(pick % zone.presence.length, 1)
  },
  (copy, pick) => {
    const bend = must(copy.bends[pick % copy.bends.length])
    copy.bends.push({ ...bend, id: `bend-new-${pick}`, name: `New ${pick}` })
  },
  (copy, pick) => {
    if (copy.bends.length > 1) copy.bends.splice(pick % copy.bends.length, 1)
  },
  (copy, pick) => {
    const [layer] = copy.construction.layers.splice(pick % copy.construction.layers.length, 1)
    if (layer !== undefined) copy.construction.layers.splice((pick * 7) % copy.construction.layers.length, 0, layer)
  },
  (copy, pick) => {
    if (copy.features.holes.length > 0) copy.features.holes.splice(pick % copy.features.holes.length, 1)
  },
]
const edits = fc.array(fc.tuple(fc.nat({ max: EDITS.length - 1 }), fc.nat({ max: 60 })), { minLength: 1, maxLength: 6 })
const applyEdits = (design: Design, list: readonly (readonly [number, number])[]) =>
  edit(design, (copy) => {
    for (const [kind, pick] of list) must(EDITS[kind])(copy, pick)
  })

describe('a guarded patch', () => {
  test('makes of its base exactly the design that was proposed, and changes neither', () => {
    fc.assert(
      fc.property(edits, (list) => {
        const hash = hashJson(SKUA)
        const proposed = applyEdits(SKUA, list)
        const patch = makeDesignPatch(SKUA, proposed)
        const patched = applyGuardedPatch(SKUA, patch, SKUA)
        expect(patched.ok && hashJson(patched.document)).toBe(hashJson(proposed))
        expect(hashJson(SKUA)).toBe(hash)
      }),
      { numRuns: 100, seed: 20261125 },
    )
  }, 60_000)

  test('either applies whole to a design that moved on, or leaves it as it is and names what stands in the way', () => {
    fc.assert(
      fc.property(edits, edits, (mine, theirs) => {
        const patch = makeDesignPatch(SKUA, applyEdits(SKUA, mine))
        const present = applyEdits(SKUA, theirs)
        const hash = hashJson(present)
        const patched = applyGuardedPatch(present, patch, SKUA)
        expect(hashJson(present)).toBe(hash)
        if (patched.ok) return
        expect(patched.problems.length).toBeGreaterThan(0)
        for (const problem of patched.problems) {
          expect(patch[problem.operation - 1]?.path).toBe(problem.path)
          expect(problem.sentence).not.toBe('')
        }
      }),
      { numRuns: 100, seed: 20261126 },
    )
  }, 60_000)

  test('of equal designs is empty', () => {
    expect(makeDesignPatch(SKUA, structuredClone(SKUA))).toEqual([])
  })

  test('tests the value that it replaces, and which entry of the list it is', () => {
    const proposed = edit(SKUA, (copy) => {
      firstConductor(copy).thicknessUm = 9
    })
    const index = SKUA.construction.layers.findIndex(({ id }) => id === firstConductor(SKUA).id)
    const path = `/construction/layers/${index}`
    expect(makeDesignPatch(SKUA, proposed)).toEqual([
      { op: 'test', path: `${path}/id`, value: firstConductor(SKUA).id },
      { op: 'test', path: `${path}/thicknessUm`, value: firstConductor(SKUA).thicknessUm },
      { op: 'replace', path: `${path}/thicknessUm`, value: 9 },
    ])
    expect(describeOperations(makeDesignPatch(SKUA, proposed), SKUA).at(-1)).toBe('replace L1 foil')
  })
})

test('a patch between designs of four hundred bends takes well under a second', () => {
  const bend = must(SKUA.bends[0])
  const many = edit(SKUA, (copy) => {
    copy.bends = Array.from({ length: 400 }, (_, index) => ({ ...bend, id: `bend-${index}`, name: `Bend ${index}` }))
  })
  const proposed = edit(many, (copy) => {
    for (const each of copy.bends) each.insideRadiusMm += 1
    copy.bends.shift()
  })
  const patch = makeDesignPatch(many, proposed)
  const patched = applyGuardedPatch(many, patch, many)
  expect(patched.ok && hashJson(patched.document)).toBe(hashJson(proposed))
  expect(patch.filter(({ op }) => op !== 'test')).toHaveLength(400)
}, 5_000)

describe('a patch on a design that moved on', () => {
  const thinner = edit(SKUA, (copy) => {
    firstConductor(copy).thicknessUm = 9
  })
  const patch = makeDesignPatch(SKUA, thinner)
  const sentencesOn = (present: Design, of = patch) => {
    const patched = applyGuardedPatch(present, of, SKUA)
    return patched.ok ? [] : patched.problems.map(({ sentence }) => sentence)
  }

  test('still applies where something else changed', () => {
    const present = edit(SKUA, (copy) => {
      copy.brief.quantityPerYear = 77
      must(copy.bends[0]).insideRadiusMm += 1
    })
    const patched = applyGuardedPatch(present, patch, SKUA)
    const expected = edit(present, (copy) => {
      firstConductor(copy).thicknessUm = 9
    })
    expect(patched.ok && hashJson(patched.document)).toBe(hashJson(expected))
  })

  test('says which number it was made on and which is there now', () => {
    const present = edit(SKUA, (copy) => {
      firstConductor(copy).thicknessUm = 12
    })
    expect(sentencesOn(present)).toEqual([
      `L1 foil: the proposal was made on ${firstConductor(SKUA).thicknessUm} µm, the design now has 12 µm`,
    ])
  })

  test('says that the design already has what it asks for', () => {
    expect(sentencesOn(thinner)).toEqual(['L1 foil is already 9 µm, as proposed'])
  })

  test('does not reach into another layer that has moved to the same place', () => {
    const present = edit(SKUA, (copy) => {
      copy.construction.layers.reverse()
    })
    expect(sentencesOn(present)).toHaveLength(1)
    expect(sentencesOn(present)[0]).toMatch(/^where the proposal has L1, the design now has /)
  })

  test('says that a bend is gone', () => {
    const last = must(SKUA.bends.at(-1))
    const wider = edit(SKUA, (copy) => {
      must(copy.bends.at(-1)).insideRadiusMm += 1
    })
    const present = edit(SKUA, (copy) => {
      copy.bends.pop()
    })
    expect(sentencesOn(present, makeDesignPatch(SKUA, wider))).toEqual([
      `bend ${last.name} is no longer in the design at the place where the proposal has it`,
    ])
  })

  test('names each part that stands in the way, not only the first', () => {
    const both = edit(thinner, (copy) => {
      must(copy.bends[0]).insideRadiusMm += 1
    })
    const present = edit(SKUA, (copy) => {
      firstConductor(copy).thicknessUm = 12
      must(copy.bends[0]).insideRadiusMm += 2
    })
    const sentences = sentencesOn(present, makeDesignPatch(SKUA, both))
    expect(sentences).toHaveLength(2)
    expect(sentences.join('\n')).toContain('inside radius: the proposal was made on')
  })
})
