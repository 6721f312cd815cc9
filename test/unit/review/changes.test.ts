import { describe, expect, test } from 'vitest'
import type { Design } from '@/lib/engine'
import {
  buildSignedContent,
  compareDesigns,
  describeChanges,
  findSignaturesToVoid,
  hashPresentSubstance,
  hashSignedContent,
  listLiveSignatures,
  listVerdictMoves,
  type ReviewSnapshot,
} from '@/lib/review'
import { makeDesign, makeEvaluation, makeResult, makeSnapshot } from './snapshot-factory'

const sentences = (change: (design: Design) => void): string[] =>
  compareDesigns(makeDesign(), makeDesign(change)).map(({ sentence }) => sentence)

function firstConductor(design: Design) {
  const layer = design.construction.layers.find(({ kind }) => kind === 'conductor')
  if (layer === undefined || layer.kind !== 'conductor') throw new Error('no conductor layer')
  return layer
}

describe('comparison of designs', () => {
  test('equal designs differ in nothing', () => {
    expect(sentences(() => {})).toEqual([])
  })

  test('a lighter foil, in the words of the trade', () => {
    const from = firstConductor(makeDesign()).thicknessUm
    const changed = sentences((design) => {
      firstConductor(design).thicknessUm = 9
    })
    expect(changed).toEqual([`L1 foil ${from} µm to 9 µm`])
  })

  test.each<[string, (design: Design) => void, RegExp]>([
    [
      'brief',
      (d) => {
        d.brief.operatingMaxDegC = 105
      },
      /^brief: highest operating temperature 60 °C to 105 °C$/,
    ],
    [
      'an enumerated word',
      (d) => {
        d.brief.surfaceFinish = 'immersion-silver'
      },
      /surface finish immersion tin to immersion silver/,
    ],
    [
      'an emptied field',
      (d) => {
        d.brief.quantityPerYear = null
      },
      /quantity per year 200 per year to not stated/,
    ],
    [
      'a bend',
      (d) => {
        Object.assign(d.bends[0] ?? {}, { insideRadiusMm: 0.5 })
      },
      /^Bend .* inside radius [\d.]+ mm to 0.5 mm$/,
    ],
    [
      'a bend that goes',
      (d) => {
        d.bends.splice(0, 1)
      },
      /^Bend .* removed$/,
    ],
    [
      'plating',
      (d) => {
        firstConductor(d).plating.toleranceUm = 7
      },
      /^L1 plating tolerance [\d.]+ µm to 7 µm$/,
    ],
    [
      'where plating covers a zone',
      (d) => {
        const presence = d.construction.zones[0]?.presence.find(({ layerId }) => layerId === firstConductor(d).id)
        Object.assign(presence ?? {}, { platedCopper: 'pads-only' })
      },
      /^zone .*: L1 plated copper .* to pads only$/,
    ],
    [
      'a hatch',
      (d) => {
        const presence = d.construction.zones[0]?.presence.find(({ layerId }) => layerId === firstConductor(d).id)
        Object.assign(presence ?? {}, { hatch: { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 } })
      },
      /^zone .*: L1 hatch not stated to bar: 0.2 mm, pitch: 0.5 mm, angle: 45°$/,
    ],
    [
      'a yes or no',
      (d) => {
        d.features.routing.cornersCurved = false
      },
      /corners curved .* to no$/,
    ],
  ])('%s', (_name, change, sentence) => {
    const changed = sentences(change)
    expect(changed).toHaveLength(1)
    expect(changed[0]).toMatch(sentence)
  })

  test('layers that change places are told once', () => {
    const changed = sentences((design) => design.construction.layers.reverse())
    expect(changed).toHaveLength(1)
    expect(changed[0]).toMatch(/^order of layers from the top face: /)
  })

  test('a layer that leaves a zone', () => {
    const changed = sentences((design) => {
      design.construction.zones[0]?.presence.splice(0, 1)
    })
    expect(changed).toHaveLength(1)
    expect(changed[0]).toMatch(/^zone .*: .* removed$/)
  })

  test('every single changed number of a design is named', () => {
    // Walks the whole document: a field that the comparison overlooks would let a signature lapse without a word.
    const base = makeDesign()
    const visit = (value: unknown, path: (string | number)[]): void => {
      if (typeof value === 'number') {
        const copy = structuredClone(base)
        let holder = copy as unknown as Record<string | number, unknown>
        for (const key of path.slice(0, -1)) holder = holder[key] as Record<string | number, unknown>
        holder[path.at(-1) ?? ''] = value + 0.125
        if (path[0] !== 'formatVersion') expect(compareDesigns(base, copy), path.join('.')).toHaveLength(1)
      } else if (Array.isArray(value)) {
        value.forEach((entry, index) => {
          visit(entry, [...path, index])
        })
      } else if (typeof value === 'object' && value !== null) {
        for (const [key, entry] of Object.entries(value)) visit(entry, [...path, key])
      }
    }
    visit(base, [])
  })
})

describe('what voids a signature', () => {
  const signed = (): ReviewSnapshot => {
    const base = makeSnapshot()
    return {
      ...base,
      signatures: [
        {
          id: 's1',
          userId: 'lead',
          name: 'Ines Calder',
          capacity: 'lead engineer',
          statement: 'Reviewed.',
          signedAt: '2027-03-03T09:00:00.000Z',
          contentHash: hashSignedContent(base),
          substanceHash: hashPresentSubstance(base),
          voided: null,
        },
      ],
    }
  }

  test('nothing, while the content is the same; comments and stage are not content', () => {
    const before = signed()
    expect(findSignaturesToVoid(before, { ...before, version: 8, stage: 'released' })).toEqual([])
  })

  test('nothing, where only the application asks in other words', () => {
    const before = signed()
    const after = {
      ...before,
      items: before.items.map((item) => ({ ...item, question: `${item.question} (reworded)` })),
    }
    expect(hashSignedContent(after)).not.toBe(hashSignedContent(before))
    expect(listLiveSignatures(after)).toHaveLength(1)
    expect(findSignaturesToVoid(before, after)).toEqual([])
    const answered = after.answers.map((answer) => ({ ...answer, reason: 'looked again' }))
    expect(listLiveSignatures({ ...after, answers: answered })).toEqual([])
  })

  test('an edit, with the fields that changed', () => {
    const before = signed()
    const after = {
      ...before,
      design: makeDesign((design) => {
        firstConductor(design).thicknessUm = 9
      }),
    }
    const [voided] = findSignaturesToVoid(before, after)
    expect(voided?.signatureId).toBe('s1')
    expect(voided?.changes).toEqual([{ sentence: expect.stringMatching(/^L1 foil [\d.]+ µm to 9 µm$/) }])
  })

  test('artwork, answers, limits and engine count as content', () => {
    const before = signed()
    const said = (change: Partial<ReviewSnapshot>) =>
      describeChanges(buildSignedContent(before), buildSignedContent({ ...before, ...change })).map(
        ({ sentence }) => sentence,
      )
    expect(said({ artwork: [] })).toEqual(['artwork top.gbr removed'])
    expect(said({ artwork: before.artwork.map((file) => ({ ...file, sha256: 'b'.repeat(64) })) })).toEqual([
      'artwork top.gbr replaced',
    ])
    expect(said({ answers: [] })).toEqual(['answer meets to open: Are packing and handling stated?'])
    const { evaluation } = before
    if (evaluation === null) throw new Error('no evaluation')
    expect(said({ evaluation: { ...evaluation, engineVersion: '1.1.0' } })).toEqual(['engine 1.0.0 to 1.1.0'])
    expect(said({ evaluation: { ...evaluation, limitsHash: 'x' } })).toEqual([
      'limits in force, or sheets of a fabricator, changed',
    ])
  })
})

test('verdicts that moved, appeared or went', () => {
  const before = makeEvaluation([makeResult('a', 'meets'), makeResult('b', 'fails'), makeResult('c', 'meets')])
  const after = makeEvaluation([makeResult('a', 'meets'), makeResult('b', 'meets'), makeResult('d', 'fails')])
  expect(listVerdictMoves(before, after).map(({ itemId, before: a, after: b }) => [itemId, a, b])).toEqual([
    ['b', 'fails', 'meets'],
    ['d', null, 'fails'],
    ['c', 'meets', null],
  ])
})
