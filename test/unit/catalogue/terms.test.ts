import { describe, expect, test } from 'vitest'
import { type Design, evaluate, makeBlankDesign, parseDesign } from '@/lib/engine'
import { CATALOGUE, evaluateItem, getItem } from '@/lib/engine/catalogue'
import { DELIVERED_PROFILES } from '@/lib/engine/catalogue/profiles'
import { liftDesign } from '@/lib/engine/design'
import { buildContext } from '@/lib/engine/evaluate'
import { compareDesigns, findDrawingGaps } from '@/lib/review'
import { makeExampleDesign } from './example-design'

const judge = (id: string, design: Design) => evaluateItem(getItem(id), buildContext(design))

/** A board of six conductor layers with the holes that are given by the positions of their ends. */
function makeSixLayers(spans: readonly (readonly [number, number])[]): Design {
  const design = makeExampleDesign()
  const board = design.construction.zones.find(({ id }) => id === 'board')
  const inner = design.construction.layers.find(({ id }) => id === 'l2')
  const hole = design.features.holes[0]
  if (board === undefined || inner === undefined || hole === undefined) throw new Error('the example design changed')
  for (const number of [4, 5, 6]) {
    const at = design.construction.layers.findIndex(({ id }) => id === 'core-bottom')
    design.construction.layers.splice(at, 0, { ...inner, id: `x${number}`, name: `Inner ${number}` })
    board.presence.push({ layerId: `x${number}`, coverageFraction: null, platedCopper: null, hatch: null })
  }
  const order = design.construction.layers.filter(({ kind }) => kind === 'conductor').map(({ id }) => id)
  design.features.holes = spans.map(([from, to], index) => ({
    ...hole,
    id: `hole-${index}`,
    name: `Hole ${index}`,
    fromLayerId: order[from - 1] ?? '',
    toLayerId: order[to - 1] ?? '',
  }))
  return design
}

describe('laminations that the holes of a zone call for', () => {
  const readLeast = (spans: readonly (readonly [number, number])[]) => {
    const design = makeSixLayers(spans)
    const parsed = parseDesign(design)
    expect(parsed.ok ? [] : parsed.issues).toEqual([])
    const { verdict, outcomes } = judge('via-structure', design)
    expect(verdict).toBe('meets')
    return /at least (\d+) lamination/.exec(outcomes[0]?.summary ?? '')?.[1]
  }

  // Exact counting; common practice, no published source.
  test.each([
    ['through holes', [[1, 6]], '1'],
    [
      'blind holes, which may be drilled to depth',
      [
        [1, 2],
        [1, 6],
      ],
      '1',
    ],
    [
      'a buried core',
      [
        [3, 4],
        [1, 6],
      ],
      '1',
    ],
    [
      'a buried pack around a buried core',
      [
        [3, 4],
        [2, 5],
        [1, 6],
      ],
      '2',
    ],
    [
      'the same written from below',
      [
        [4, 3],
        [5, 2],
        [6, 1],
      ],
      '2',
    ],
  ] as const)('%s', (_, spans, least) => expect(readLeast(spans)).toBe(least))
})

describe('what is not stated never meets', () => {
  // Compare what is stated, much besides among it, with each other or a fabricator's matrix; what is not, the items of the terms ask.
  const COMPARE_WHAT_IS_STATED = ['statements-agree', 'requirement-range', 'plan-agreement', 'capability-match']
  const usual = CATALOGUE.filter(
    ({ id, restsOn }) =>
      !COMPARE_WHAT_IS_STATED.includes(id) &&
      restsOn.some((path) => /^brief\.(acceptance|finishTerms|marking|agreements|exposure|outgassing)/.test(path)),
  )

  test.each(usual.map(({ id }) => [id] as const))('%s', (id) => {
    const design = makeExampleDesign()
    const blank = makeBlankDesign('Blank').brief
    const { acceptance, finishTerms, marking, agreements, exposure, outgassing } = blank
    Object.assign(design.brief, { acceptance, finishTerms, marking, agreements, exposure, outgassing })
    expect(judge(id, design).verdict).toBe('not-computed')
  })
})

test('numbers at the edge of the schema are compared, and those beyond it are refused with field and reason', () => {
  const design = makeExampleDesign()
  design.brief.acceptance.bowAndTwistPct = 100
  design.brief.acceptance.continuityOhm = 1e-9
  expect(judge('bow-and-twist', design).verdict).toBe('fails')
  expect(judge('test-terms', design).verdict).toBe('fails')
  design.brief.acceptance.bowAndTwistPct = -1
  const parsed = parseDesign(design)
  expect(parsed.ok ? [] : parsed.issues).toMatchObject([
    { path: ['brief', 'acceptance', 'bowAndTwistPct'], message: 'must not be negative' },
  ])
})

test('a hole that names a layer which is not there, and a material weighed twice, are refused', () => {
  const design = makeExampleDesign()
  const [hole] = design.features.holes
  if (hole !== undefined) hole.toLayerId = 'nowhere'
  design.brief.outgassing.push({ materialId: 'pi-coverlay', totalLossPct: null, condensablePct: null })
  const parsed = parseDesign(design)
  expect(parsed.ok ? [] : parsed.issues.map(({ path }) => path.join('.'))).toEqual([
    'features.holes.0.toLayerId',
    'brief.outgassing.7.materialId',
  ])
})

test('a design of format 3 says nothing of terms, and keeps what it says', () => {
  const { acceptance: _, outgassing: __, ...brief } = makeExampleDesign().brief
  const lifted = liftDesign({
    ...makeExampleDesign(),
    formatVersion: 3,
    brief: { ...brief, marking: { ...brief.marking, method: 'laser' } },
  }) as Design
  expect(lifted.brief.acceptance.flameClass).toBeNull()
  expect(lifted.brief.outgassing).toEqual([])
  expect(lifted.brief.marking.method).toBe('laser')
})

test('the drawing asks for what is not stated, one question for what belongs together', () => {
  const ask = (design: Design) => findDrawingGaps(design).map(({ question }) => question)
  const design = makeExampleDesign()
  expect(ask(design).filter((question) => /flame|marked|flat must|solderings/.test(question))).toEqual([])
  const { acceptance, marking } = makeBlankDesign('Blank').brief
  Object.assign(design.brief, { acceptance, marking })
  expect(ask(design)).toEqual(
    expect.arrayContaining([
      'Which flame class must the construction have, or is none asked for?',
      'What is marked on the part or its packing?',
      'How flat must rigid and stiffened areas be?',
      'How many solderings and removals must a land withstand?',
      'At which voltage is every part tested, and within which limits of continuity and isolation?',
    ]),
  )
})

test('a comparison names a changed term in the words of the form', () => {
  const [before, after] = [makeExampleDesign(), makeExampleDesign()]
  after.brief.acceptance.testVoltageVolt = 250
  after.brief.agreements.siteChange = 'free'
  expect(compareDesigns(before, after).map(({ sentence }) => sentence)).toEqual([
    'brief: test voltage 100 V to 250 V',
    'brief: change of site after approval to at any time',
  ])
})

describe('items of exposure', () => {
  const only = CATALOGUE.filter(({ onlyWithProfile }) => onlyWithProfile === true).map(({ id }) => id)

  test('are not asked without a profile', () => {
    const asked = evaluate(makeExampleDesign()).items.map(({ itemId }) => itemId)
    expect(only.filter((id) => asked.includes(id))).toEqual([])
  })

  test('each is switched on by a delivered profile', () => {
    const on = DELIVERED_PROFILES.flatMap(({ items }) =>
      items.filter(({ asked }) => asked === 'on').map(({ itemId }) => itemId),
    )
    expect(only.filter((id) => !on.includes(id))).toEqual([])
  })
})
