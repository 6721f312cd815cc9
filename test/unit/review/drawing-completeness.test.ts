import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type Design, makeBlankDesign, parseDesignText } from '@/lib/engine'
import { findDrawingGaps } from '@/lib/review'

/** Skua B with every answer that a fabricator looks for. */
function makeCompleteDesign(): Design {
  const read = parseDesignText(readFileSync('seed/designs/skua-rev-b.json', 'utf8'))
  if (!read.ok) throw new Error('the demo design does not read')
  const design = structuredClone(read.value)
  Object.assign(design.brief, {
    partNumber: 'QI-1204',
    performanceClass: 'class-3',
    circuitType: 'type-4',
    installationUses: ['use-b'],
    surfaceFinish: 'immersion-silver',
    toleranceScheme: 'Outline ±0.1 mm from datum A.',
    electricalTest: true,
    couponTest: true,
    foldTest: true,
    panelForm: 'single-parts',
    operatingMinDegC: -20,
    operatingMaxDegC: 70,
    solderedAssembly: true,
    bakeBeforeAssembly: 'Two hours at 120 °C.',
    registrationCriticalFeatures: 'The finger.',
    packingAndHandling: 'Flat, between boards.',
    whoToAsk: 'Mara Tolland',
  })
  for (const zone of design.construction.zones) {
    zone.lengthMm ??= 20
    zone.widthMm ??= 10
    if (zone.kind === 'finger') zone.connectorWindow ??= { minUm: 270, maxUm: 330 }
  }
  for (const bend of design.bends) {
    bend.use ??= 'fold-once'
    if (bend.use === 'dynamic') bend.requiredCycles ??= 1e6
    bend.radiusHeldBy ??= 'former'
    bend.distanceToRigidMm ??= 4
    bend.strainReliefAtTransition ??= true
  }
  for (const stiffener of design.features.stiffeners) {
    stiffener.purpose ??= 'connector'
    stiffener.coverlayOverlapMm ??= 1
    stiffener.nearestBend ??= { bendId: design.bends[0]?.id ?? '', distanceMm: 5 }
  }
  for (const hole of design.features.holes) hole.landMm ??= (hole.drillMm ?? 0.3) * 2
  for (const opening of design.features.coverlayOpenings) {
    opening.method ??= 'laser'
    opening.webMm ??= 0.2
  }
  for (const conductor of design.features.conductors) conductor.spaceMm ??= 0.2
  design.features.copperToOutlineMm ??= 0.3
  design.features.outline = {
    verticesMm: [
      [0, 0],
      [80, 0],
      [80, 30],
      [0, 30],
    ],
    rollingDirection: 'along-x',
  }
  return design
}

type Path = readonly (string | number)[]

function setAt(design: Design, path: Path, value: unknown): void {
  let place = design as unknown as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) place = place[key] as Record<string | number, unknown>
  place[path.at(-1) ?? ''] = value
}

const complete = makeCompleteDesign()
const dynamicAt = complete.bends.findIndex(({ use }) => use === 'dynamic')
const fingerAt = complete.construction.zones.findIndex(({ kind }) => kind === 'finger')

/** Each input that a question asks for, and what it is when it is missing. */
const REMOVALS: readonly (readonly [path: Path, missing: unknown])[] = [
  ...(
    [
      'performanceClass',
      'circuitType',
      'installationUses',
      'surfaceFinish',
      'electricalTest',
      'couponTest',
      'foldTest',
      'panelForm',
      'operatingMinDegC',
      'operatingMaxDegC',
      'solderedAssembly',
    ] as const
  ).map((field): [Path, unknown] => [['brief', field], null]),
  ...(
    [
      'partNumber',
      'toleranceScheme',
      'bakeBeforeAssembly',
      'registrationCriticalFeatures',
      'packingAndHandling',
      'whoToAsk',
    ] as const
  ).map((field): [Path, unknown] => [['brief', field], '  ']),
  [['construction', 'zones', 1, 'lengthMm'], null],
  [['construction', 'zones', 1, 'widthMm'], null],
  [['construction', 'zones', fingerAt, 'connectorWindow'], null],
  [['bends', 1, 'use'], null],
  [['bends', dynamicAt, 'requiredCycles'], null],
  [['bends', 0, 'radiusHeldBy'], null],
  [['bends', 0, 'distanceToRigidMm'], null],
  [['bends', 0, 'strainReliefAtTransition'], null],
  [['features', 'stiffeners', 0, 'purpose'], null],
  [['features', 'stiffeners', 0, 'coverlayOverlapMm'], null],
  [['features', 'stiffeners', 0, 'nearestBend'], null],
  [['features', 'stiffeners'], []],
  [['features', 'holes'], []],
  [['features', 'holes', 0, 'landMm'], null],
  [['features', 'coverlayOpenings'], []],
  [['features', 'coverlayOpenings', 0, 'method'], null],
  [['features', 'coverlayOpenings', 0, 'webMm'], null],
  [['features', 'copperToOutlineMm'], null],
  [['features', 'outlineCorners'], []],
  [['features', 'outline'], null],
  [['features', 'outline', 'rollingDirection'], null],
]

describe('what a fabricator would still ask', () => {
  test('nothing of a design that says all', () => {
    expect(findDrawingGaps(complete).map(({ question }) => question)).toEqual([])
  })

  test.each(REMOVALS.map(([path, missing]) => [path.join('.'), path, missing] as const))(
    'asks for %s alone when it is taken out',
    (_name, path, missing) => {
      const design = makeCompleteDesign()
      setAt(design, path, missing)
      const gaps = findDrawingGaps(design)
      expect(gaps.map((gap) => gap.path)).toEqual([path])
      expect(gaps[0]?.target.tab).toBe(path[0] === 'construction' ? 'construction' : path[0])
    },
  )

  test('a material without a specification is asked for once, by its place in the document', () => {
    const design = makeCompleteDesign()
    const layer = design.construction.layers.find(({ kind }) => kind === 'base-film')
    if (layer === undefined || layer.kind === 'unbonded-gap') throw new Error('no base film')
    const library = JSON.parse(JSON.stringify(design.materials[0] ?? null))
    const own = {
      ...(library ?? {}),
      id: 'own-film',
      name: 'Film from the drawer',
      kind: 'polymer-film' as const,
      specification: ' ',
      foil: null,
    }
    design.materials.push(own)
    layer.materialId = 'own-film'
    expect(findDrawingGaps(design).map(({ path, severity }) => [severity, path])).toEqual([
      ['blocking', ['materials', design.materials.length - 1, 'specification']],
    ])
  })

  test('a stiffener that nothing bonds, and a tolerance of nothing', () => {
    const design = makeCompleteDesign()
    const at = design.construction.layers.findIndex(({ kind }) => kind === 'stiffener')
    const stiffener = design.construction.layers[at]
    const holder = design.construction.layers[at - 1]
    if (stiffener === undefined || holder === undefined || holder.kind === 'unbonded-gap')
      throw new Error('no stiffener')
    for (const zone of design.construction.zones) {
      if (!zone.presence.some(({ layerId }) => layerId === stiffener.id)) continue
      zone.presence = zone.presence.filter(({ layerId }) => layerId !== holder.id)
    }
    expect(findDrawingGaps(design).map(({ path }) => path)).toEqual([['construction', 'layers', at]])
    holder.tolerancePlusUm = 0
    holder.toleranceMinusUm = 0
    expect(findDrawingGaps(design).map(({ path }) => path)).toContainEqual([
      'construction',
      'layers',
      at - 1,
      'tolerancePlusUm',
    ])
  })

  test('of a blank design: what stops everything comes first', () => {
    const gaps = findDrawingGaps(makeBlankDesign('Blank'))
    const order = gaps.map(({ severity }) => ['blocking', 'major', 'minor'].indexOf(severity))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(gaps.filter(({ severity }) => severity === 'blocking').map(({ path }) => path)).toEqual([
      ['brief', 'performanceClass'],
      ['brief', 'surfaceFinish'],
      ['construction', 'layers'],
      ['construction', 'zones'],
    ])
  })
})

describe('what cannot be placed from the drawing', () => {
  const questionsOf = (design: Design) =>
    findDrawingGaps(design)
      .filter(({ path }) => path[0] === 'plan')
      .map(({ question }) => question)

  test('is nothing of a part that is drawn whole, and one question where nothing is drawn', () => {
    const drawn = makeCompleteDesign()
    expect(questionsOf(drawn)).toEqual([])
    expect(questionsOf({ ...drawn, plan: null })).toEqual([
      'Where on the part do bends, holes and stiffeners lie? Nothing is drawn in plan.',
    ])
  })

  test('is named: an axis, a hole, datums, the foil’s direction', () => {
    const design = makeCompleteDesign()
    if (design.plan === null) throw new Error('no plan')
    design.plan.bendLines = design.plan.bendLines.filter(({ bendId }) => bendId !== 'fold')
    design.plan.holes = design.plan.holes.filter(({ holeId }) => holeId !== 'mounting')
    design.plan.datums = []
    design.plan.rollingDirectionDeg = null
    expect(questionsOf(design)).toEqual([
      'Where on the part are the features that the plan does not show: the axes of Fold at assembly?',
      'Where on the part are the features that the plan does not show: the holes Mounting holes (datums)?',
      'From which datums is the part measured?',
      'In which direction is the foil rolled?',
    ])
  })
})
