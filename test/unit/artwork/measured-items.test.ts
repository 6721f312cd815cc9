import { describe, expect, test } from 'vitest'
import { evaluateLive } from '@/app/_components/engineering/draft/evaluate-live'
import { buildCopperStack, gatherFacts, measureOnPlan, readSet } from '@/lib/artwork'
import { evaluate } from '@/lib/engine'
import { DELIVERED_TEMPLATE } from '@/lib/engine/catalogue'
import { findRemedies, type RemedyOptions, searchWayOut } from '@/lib/engine/remedies'
import { type Drawn, drawDrill, drawGerber } from './draw-set'
import { add, at, design, failures, ground, measure, measuredBy, readFacts, straight } from './on-demo'

type Point = readonly [number, number]

const BENT = ['crossing-angle', 'direction-change-in-bend', 'width-change-in-bend', 'ends-in-bend'] as const

describe('items that the artwork shows too', () => {
  test('find nothing in a conductor that runs straight through', () => {
    const found = measure([straight])
    for (const id of BENT) {
      expect(measuredBy(found, id).length, id).toBeGreaterThan(0)
      expect(failures(found, id), id).toEqual([])
    }
  })

  test.each([
    ['crossing-angle', [{ stroke: [at(0.3, -6), at(0.7, 6)], widthMm: 0.2 }]],
    [
      'direction-change-in-bend',
      [
        { stroke: [at(0.4, -6), at(0.4, 0)], widthMm: 0.2 },
        { stroke: [at(0.4, 0), at(0.5, 6)], widthMm: 0.2 },
      ],
    ],
    [
      'width-change-in-bend',
      [
        { stroke: [at(0.4, -6), at(0.4, 0)], widthMm: 0.2 },
        { stroke: [at(0.4, 0), at(0.4, 6)], widthMm: 0.3 },
      ],
    ],
    ['ends-in-bend', [{ stroke: [at(0.4, -6), at(0.4, 0)], widthMm: 0.2 }]],
    ['ends-in-bend', [straight, { pad: at(0.5, 0), sizeMm: 0.6 }]],
    ['conductor-width', [{ stroke: [at(0.5, -6), at(0.5, 6)], widthMm: 0.03 }]],
    ['conductor-space', [straight, { stroke: [add(at(0.5, -6), 0.23), add(at(0.5, 6), 0.23)], widthMm: 0.2 }]],
  ] as [string, Drawn[]][])('%s fails at its place for what is drawn wrong', (id, top) => {
    const [failure] = failures(measure(top), id)
    expect(failure?.summary).toContain('layer-1.gbr, at (')
    // And it alone, of what is asked of bends: a slant or a step ends nowhere.
    for (const other of BENT.filter((each) => each !== id && each !== 'crossing-angle'))
      expect(failures(measure(top), other), other).toEqual([])
  })

  describe('in what nobody has saved', () => {
    const facts = readFacts([{ stroke: [at(0.5, -6), at(0.5, 6)], widthMm: 0.03 }])
    const evaluatedPlain = new Map(evaluate(design).items.map(({ itemId, verdict }) => [itemId, verdict]))

    test('decide on a draft as they do when it is saved', () => {
      const recorded = evaluate(design, { facts })
      const basis = {
        limits: [],
        testedLives: [],
        artworkFacts: facts,
        checkedLimits: [],
        template: DELIVERED_TEMPLATE,
      }
      const answer = evaluateLive(design, { ...basis, design, evaluation: recorded })
      if (!answer.ok) throw new Error('the design of the demonstration is not read')
      const draft = answer.evaluation
      const verdicts = (items: readonly { itemId: string; verdict: string; headline: string }[]) =>
        items.map(({ itemId, verdict, headline }) => [itemId, verdict, headline])
      expect(failures(recorded, 'conductor-width')).toHaveLength(1)
      expect(verdicts(draft.items)).toEqual(verdicts(recorded.items))
    })

    test('are left out of the search for a way out and listed by themselves: no number of the design redraws a file', () => {
      const find = (options: RemedyOptions) => {
        const search = searchWayOut(design, options)
        for (;;) {
          const step = search.next()
          if (step.done === true) return step.value
        }
      }
      const [measured, plain] = [find({ facts }), find({})]
      expect(measured).toEqual({ ...plain, inArtwork: measured.inArtwork })
      expect(plain.inArtwork).toEqual([])
      const failsByArtwork = evaluate(design, { facts }).items.flatMap(({ itemId, verdict }) =>
        verdict === 'fails' && evaluatedPlain.get(itemId) !== 'fails' ? [itemId] : [],
      )
      expect(failsByArtwork).toContain('conductor-width')
      expect(measured.inArtwork.map(({ itemId }) => itemId)).toEqual(expect.arrayContaining(failsByArtwork))
      expect(measured.inArtwork.find(({ itemId }) => itemId === 'conductor-width')?.headline).toContain('layer-1.gbr')
    })

    test('are not what a remedy of a bend is blamed for', () => {
      const [bend] = design.bends
      const report = findRemedies(design, bend?.id ?? '', { facts, mostChanges: 1 })
      expect(report.remedies.length).toBeGreaterThan(0)
      for (const { movedItems } of report.remedies)
        expect(movedItems.map(({ itemId }) => itemId)).not.toContain('conductor-width')
    })
  })

  test('the share of copper in a band that artwork has beside the one that was typed', () => {
    const found = measure([straight]).items.find(({ itemId }) => itemId === 'artwork-agreement')
    const said = found?.outcomes.map(({ summary }) => summary).join(' ') ?? ''
    // One conductor of 0.2 mm across an arm of 12 mm; 35 % was typed.
    expect(said).toMatch(
      /Share of copper on L1 flex, driven guard in the band of Bend round the housing: .*1\.67 %.*35 %/,
    )
  })

  test('teardrop fails where a conductor runs into a land on film without one, at its place', () => {
    const land: Drawn[] = [
      { pad: [12, 20], sizeMm: 0.7 },
      {
        stroke: [
          [12, 20],
          [12, 24],
        ],
        widthMm: 0.2,
      },
    ]
    const [failure] = failures(measure(land), 'teardrop')
    expect(failure).toMatchObject({ value: { value: 1 }, artworkAt: { frame: 'plan' } })
    expect(failure?.artworkAt?.xMm).toBeCloseTo(12, 3)
    expect(failure?.artworkAt?.yMm).toBeCloseTo(20, 3)
    const teardrop: Drawn = {
      area: [
        [11.7, 20],
        [12.3, 20],
        [12.1, 21],
        [11.9, 21],
      ],
    }
    const mended = measure([...land, teardrop])
    expect(measuredBy(mended, 'teardrop').map(({ verdict }) => verdict)).toEqual(['meets'])
  })

  describe('coverlay-web', () => {
    const window = (x: number, y: number): Drawn => ({
      area: [
        [x, y],
        [x + 4, y],
        [x + 4, y + 4],
        [x, y + 4],
      ],
    })
    const asRound = (gapMm: number): Drawn[] => [
      { pad: [10, 20], sizeMm: 1 },
      { pad: [10 + 0.8 * (1 + gapMm), 20 + 0.6 * (1 + gapMm)], sizeMm: 1 },
    ]
    const cover = (objects: readonly Drawn[], unit: 'mm' | 'inch' = 'mm') => [
      drawGerber('part-coverlay-top.gbr', 'Other,User', objects, { unit }),
    ]
    const webOf = (objects: readonly Drawn[], unit?: 'mm' | 'inch') =>
      measuredBy(measure([straight], [], cover(objects, unit)), 'coverlay-web')

    // The demo's openings are held to 0.3 mm, as the stated ones are.
    test.each(['mm', 'inch'] as const)(
      'is the narrowest strip between two openings, square or round, in %s',
      (unit) => {
        const [square] = webOf([window(5, 5), window(9.1, 5), window(5, 15)], unit)
        expect(square).toMatchObject({ verdict: 'fails', limit: { value: 0.3 }, artworkAt: { frame: 'files' } })
        expect(square?.value.value).toBeCloseTo(0.1, 4)
        expect(square?.artworkAt?.xMm).toBeCloseTo(9.05, 3)
        const [round] = webOf(asRound(0.2), unit)
        expect(round?.verdict).toBe('fails')
        expect(round?.value.value).toBeCloseTo(0.2, 2)
        expect(round?.artworkAt?.xMm).toBeCloseTo(10 + 0.8 * 0.6, 1)
      },
    )

    test('holds where strips are wide enough, and is not asked where none is narrower than a millimetre', () => {
      expect(webOf([window(5, 5), window(9.4, 5)]).map(({ verdict }) => verdict)).toEqual(['meets'])
      expect(webOf(asRound(0.35)).map(({ verdict }) => verdict)).toEqual(['meets'])
      expect(webOf([window(5, 5), window(15, 5)])).toEqual([])
    })

    test('is not asked of a file that draws the film itself', () => {
      const film: Drawn = {
        area: [
          [0, 0],
          [109, 0],
          [109, 45],
          [0, 45],
        ],
      }
      expect(
        webOf([
          film,
          {
            area: [
              [0, 45.1],
              [4, 45.1],
              [4, 46],
              [0, 46],
            ],
          },
        ]),
      ).toEqual([])
    })
  })

  test('say nothing once the bend is another one than was measured', () => {
    const other = structuredClone(design)
    for (const bend of other.bends) bend.insideRadiusMm *= 3
    const set = readSet([drawGerber('layer-1.gbr', 'Copper,L1,Top', [straight])])
    const stack = buildCopperStack(set)
    if (ground === null) throw new Error('the demo has no plan')
    const onPlan = measureOnPlan(set, stack, ground)
    const evaluation = evaluate(other, {
      facts: { artworkFileCount: 1, artwork: gatherFacts(set, () => '', stack), onPlan },
    })
    for (const id of BENT) expect(measuredBy(evaluation, id), id).toEqual([])
  })
})

describe('nets against copper', () => {
  const nets = (
    objects: readonly Drawn[],
    bottom: readonly Drawn[] = [],
    holes: readonly Point[] = [],
    isPlated = true,
  ) => {
    const set = readSet([
      drawGerber('top.gbr', 'Copper,L1,Top', objects),
      drawGerber('bottom.gbr', 'Copper,L2,Bot', bottom),
      drawDrill('holes.drl', holes, 0.3, {}, isPlated),
    ])
    return gatherFacts(set, () => '').nets?.sources[0]
  }
  const pad = (x: number, y: number, net: string): Drawn => ({ pad: [x, y], sizeMm: 0.8, net })

  test('an open, a short, and a net that hangs together through a plated hole alone', () => {
    const joined: Drawn = {
      stroke: [
        [0, 0],
        [10, 0],
      ],
      widthMm: 0.2,
    }
    expect(nets([pad(0, 0, 'A'), pad(10, 0, 'A'), joined])).toMatchObject({ openCount: 0, shortCount: 0, netCount: 1 })
    expect(nets([pad(0, 0, 'A'), pad(10, 0, 'A')])).toMatchObject({ openCount: 1, shortCount: 0 })
    expect(nets([pad(0, 0, 'A'), pad(10, 0, 'B'), joined])).toMatchObject({ openCount: 0, shortCount: 1 })
    const through = [pad(0, 0, 'A'), pad(10, 0, 'A')]
    const below: Drawn[] = [joined, { pad: [0, 0], sizeMm: 0.8 }, { pad: [10, 0], sizeMm: 0.8 }]
    const both: Point[] = [
      [0, 0],
      [10, 0],
    ]
    expect(nets(through, below, both)).toMatchObject({ openCount: 0, shortCount: 0 })
    expect(nets(through, below, both, false)).toMatchObject({ openCount: 1 })
  })

  test('an opening round a hole keeps a plane apart from it', () => {
    const plane: Drawn = {
      area: [
        [-5, -5],
        [5, -5],
        [5, 5],
        [-5, 5],
      ],
    }
    const clear: Drawn = {
      area: [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ],
      isClear: true,
    }
    const inPlane: Drawn = { pad: [4, 4], sizeMm: 0.2, net: 'GND' }
    expect(nets([pad(0, 0, 'A')], [plane, inPlane], [[0, 0]])).toMatchObject({ shortCount: 1 })
    expect(nets([pad(0, 0, 'A')], [plane, clear, inPlane], [[0, 0]])).toMatchObject({ shortCount: 0, openCount: 0 })
  })
})
