import { describe, expect, it } from 'vitest'
import { makeBlankDesign } from '@/lib/engine'
import {
  decide,
  evaluateCatalogue,
  evaluateItem,
  getDefaultLimit,
  getItem,
  makeDesignLimit,
  USUAL_ITEMS,
} from '@/lib/engine/catalogue'
import { buildContext } from '@/lib/engine/evaluate'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { makeExampleDesign } from './example-design'
import { findResultProblems } from './result-problems'

describe('the verdict rule', () => {
  const limit = getDefaultLimit('holeToBendMm')
  const verdictOf = (value: number, low: number, high: number) =>
    decide({ value, range: { low, high }, limit, places: [], what: 'hole to bend', equation: 'distance' }).verdict

  it('meets when it holds over the whole range', () => expect(verdictOf(1.5, 1.3, 1.7)).toBe('meets'))
  it('has a thin margin when it holds at nominal only', () => expect(verdictOf(1.5, 1.2, 1.8)).toBe('thin-margin'))
  it('fails when it does not hold at nominal', () => expect(verdictOf(1.2, 1.1, 1.4)).toBe('fails'))
  it('counts the limit itself as met, rounding included', () => {
    const third = decide({
      value: 0.1 + 0.2,
      limit: makeDesignLimit({
        key: 'allowedDropVolt',
        value: 0.3,
        unit: 'volt',
        sense: 'at-most',
        sourceKey: 'exactArithmetic',
        name: 'stated allowance',
      }),
      places: [],
      what: 'drop',
      equation: 'sum',
    })
    expect(third).toMatchObject({ verdict: 'meets', margin: 0 })
  })
  it('keeps a window closed at both ends', () => {
    const window = makeDesignLimit({
      key: 'connectorWindowUm',
      value: 270,
      upperValue: 330,
      unit: 'um',
      sense: 'within',
      sourceKey: 'exactArithmetic',
      name: 'connector window',
    })
    const at = (value: number) => decide({ value, limit: window, places: [], what: 'thickness', equation: 'sum' })
    expect([269, 270, 300, 330, 331].map((value) => at(value).verdict)).toEqual([
      'fails',
      'meets',
      'meets',
      'meets',
      'fails',
    ])
    expect(at(300)).toMatchObject({ margin: 30, summary: 'Thickness: 300 µm; 270 to 330 µm.' })
  })
  it('names the end of a window that decides, and not the one that does not', () => {
    const window = makeDesignLimit({
      key: 'connectorWindowUm',
      value: 270,
      upperValue: 330,
      unit: 'um',
      sense: 'within',
      sourceKey: 'exactArithmetic',
      name: 'connector window',
    })
    const at = (value: number, low: number, high: number) =>
      decide({ value, range: { low, high }, limit: window, places: [], what: 'thickness', equation: 'sum' })
    const ends = [at(293, 265.8, 320.2), at(310, 285, 335), at(340, 330, 350), at(293, 280, 306), at(300, 260, 345)]
    expect(ends.map(({ verdict, decidingEnd }) => [verdict, decidingEnd?.end, decidingEnd?.value])).toEqual([
      ['thin-margin', 'lower', 265.8],
      ['thin-margin', 'upper', 335],
      // The nominal value misses already.
      ['fails', 'upper', 340],
      ['meets', 'lower', 280],
      ['thin-margin', 'upper', 345],
    ])
    expect(ends[0]?.decidingEnd?.margin).toBeCloseTo(-4.2, 9)
    expect(ends[0]?.limit).toMatchObject({ value: 270, upperValue: 330 })
    expect(ends[0]?.summary).toBe(
      'Thickness: 293 µm (265.8 to 320.2 µm over tolerances); 270 to 330 µm. At the lower end, 265.8 is below 270 µm.',
    )
    // A range wider than the window misses both ends, and says both.
    expect(ends[4]?.summary).toContain('At the upper end, 345 is above 330 µm; at the lower end, 260 is below 270 µm.')
  })
})

describe('a design in which nothing is decided', () => {
  const results = evaluateCatalogue(buildContext(makeBlankDesign('Empty')))

  it('gets an answer for every item, and none of them is a verdict on numbers', () => {
    expect(results.map(({ itemId }) => itemId)).toEqual(USUAL_ITEMS.map(({ id }) => id))
    expect(new Set(results.map(({ verdict }) => verdict))).toEqual(new Set(['not-computed', 'needs-judgment']))
  })

  it('is not taken for one without holes and bends', () => {
    const holes = results.find(({ itemId }) => itemId === 'hole-to-bend')
    expect(holes).toMatchObject({
      verdict: 'not-computed',
      outcomes: [{ kind: 'not-computed', summary: 'Not computed: the construction has no layers yet.' }],
    })
  })

  it('names missing inputs by path', () => {
    const review = results.find(({ itemId }) => itemId === 'manufacturing-review')
    expect(review?.outcomes[0]).toMatchObject({
      kind: 'not-computed',
      missing: [{ path: ['brief', 'manufacturingReviewDate'] }, { path: ['brief', 'layoutFreezeDate'] }],
      summary: 'Not computed: date of the manufacturing review, date of the layout freeze are missing.',
    })
  })
})

describe('starting constructions', () => {
  it.each(listStartingConstructions().map((start) => [start.id, start] as const))(
    '%s gets results that are fit to be shown',
    (_id, start) => {
      const results = evaluateCatalogue(buildContext(start.makeDesign('Start')))
      expect(
        results.flatMap((each) => findResultProblems(each).map((problem) => `${each.itemId}: ${problem}`)),
      ).toEqual([])
    },
  )
})

describe('a foil without a published allowable', () => {
  it('leaves strain and the handbook rule of an install bend open, and names the foil', () => {
    const design = makeExampleDesign()
    for (const layer of design.construction.layers)
      if (layer.id === 'l2' && layer.kind === 'conductor') layer.materialId = 'copper-ed'
    for (const bend of design.bends) if (bend.id === 'fold') bend.use = 'flex-to-install'
    const context = buildContext(design)
    for (const id of ['bend-strain', 'radius-rules']) {
      const open = evaluateItem(getItem(id), context).outcomes.filter(({ kind }) => kind === 'not-computed')
      expect(open, id).toMatchObject([{ missing: [{ path: ['construction', 'layers', 6, 'materialId'] }] }])
    }
    expect(evaluateItem(getItem('foil-type'), context).verdict).toBe('fails')
  })
})

describe('judgment', () => {
  it('waits for a person, and names what the design does not say yet', () => {
    const design = makeExampleDesign()
    // A text is a remark: the facts are what counts.
    design.brief.packingAndHandling = '-'
    design.brief.assembly.storageMonths = null
    const result = evaluateItem(getItem('packing'), buildContext(design))
    expect(result).toMatchObject({ basis: 'typed', verdict: 'not-computed' })
    expect(result.outcomes).toMatchObject([
      { kind: 'not-computed', missing: [{ path: ['brief', 'assembly', 'storageMonths'] }] },
    ])
  })

  it('is not reached while what it is about is not stated; a dash states nothing', () => {
    const verdictOf = (itemId: string, change: (brief: ReturnType<typeof makeExampleDesign>['brief']) => void) => {
      const design = makeExampleDesign()
      change(design.brief)
      return evaluateItem(getItem(itemId), buildContext(design)).verdict
    }
    expect(verdictOf('performance-class', () => {})).toBe('needs-judgment')
    expect(verdictOf('performance-class', (brief) => Object.assign(brief, { performanceClass: null }))).toBe(
      'not-computed',
    )
    expect(verdictOf('contact-person', (brief) => Object.assign(brief, { whoToAsk: '-' }))).toBe('not-computed')
    // What only the review can know is still a person's turn.
    expect(verdictOf('buildable-construction', () => {})).toBe('needs-judgment')
  })

  it('type 2 without plated holes is taken by both readings, with a caution that names them', () => {
    const design = makeExampleDesign()
    const { construction, features } = design
    design.brief.circuitType = 'type-2'
    features.holes = []
    construction.zones = construction.zones.filter(({ kind }) => kind !== 'rigid')
    construction.layers = construction.layers.filter(({ id }) => id !== 'l3')
    for (const layer of construction.layers) if (layer.kind === 'conductor') layer.plating.process = 'none'
    const [outcome] = evaluateItem(getItem('circuit-type'), buildContext(design)).outcomes
    expect(outcome).toMatchObject({ kind: 'decided', verdict: 'meets' })
    expect(outcome?.kind === 'decided' && outcome.cautions.join(' ')).toMatch(
      /MIL-PRF-50884F.*type 2.*IPC-6013 has type 5/,
    )
  })

  it('follows a calculation that holds, and gives way to one that fails', () => {
    const design = makeExampleDesign()
    const evaluate = () => evaluateItem(getItem('radius-holder'), buildContext(design))
    expect(evaluate()).toMatchObject({ basis: 'judgment', verdict: 'needs-judgment' })
    for (const bend of design.bends) bend.radiusHeldBy = 'nothing'
    expect(evaluate()).toMatchObject({ basis: 'stated', verdict: 'fails' })
  })

  it('stands in for facts from outside the design only while they are not at hand', () => {
    const evaluate = (openEngineeringQueries?: number) =>
      evaluateItem(
        getItem('engineering-queries'),
        buildContext(makeExampleDesign(), {
          facts: openEngineeringQueries === undefined ? {} : { openEngineeringQueries, daysSinceFabricatorLooked: 1 },
        }),
      )
    expect(evaluate()).toMatchObject({ basis: 'judgment', verdict: 'needs-judgment' })
    expect(evaluate(0)).toMatchObject({ basis: 'computed', verdict: 'meets' })
    expect(evaluate(2)).toMatchObject({ basis: 'computed', verdict: 'fails' })
  })
})

describe('features', () => {
  it('get one outcome each, with the place of each', () => {
    const design = makeExampleDesign()
    const [hole] = design.features.holes
    if (hole === undefined) throw new Error('the example design has lost its hole')
    design.features.holes.push(
      { ...hole, id: 'near', name: 'Near via', nearestBend: { bendId: 'hinge', distanceMm: 0.4 } },
      { ...hole, id: 'unknown', name: 'Unmeasured via', nearestBend: null },
    )
    const result = evaluateItem(getItem('hole-to-bend'), buildContext(design))
    expect(result.verdict).toBe('fails')
    expect(result.headline).toBe('A hole lies in or too near a bend. Near via to bend Hinge: 0.4 mm; at least 1.27 mm.')
    expect(result.outcomes.map((outcome) => [outcome.kind, outcome.places[0]?.id])).toEqual([
      ['decided', 'via'],
      ['decided', 'near'],
      ['not-computed', 'unknown'],
    ])
    expect(result.outcomes[2]).toMatchObject({ missing: [{ path: ['features', 'holes', 2, 'nearestBend'] }] })
  })
})
