import { describe, expect, test } from 'vitest'
import { formatReport } from '@/lib/cli/evaluation-report'
import { citeSource, type Design, describeLimitOwner, evaluate, makePresence, type SourceKey } from '@/lib/engine'
import { describeLimit } from '@/lib/engine/catalogue'
import { explainFinish } from '@/lib/engine/catalogue/process-figures'
import { readDemoDesign } from '../engine-assembly/demo-design-files'
import { listOutcomes, listVerdicts, makeOneBend } from './one-bend'

describe('heat of conductors', () => {
  const make = (): Design => {
    const design = readDemoDesign('skua-rev-b')
    design.brief.operatingMaxDegC = 40
    for (const conductor of design.features.conductors) {
      conductor.currentAmp = 0.05
      conductor.allowedRiseDegC ??= 20
      conductor.lengthMm ??= 50
    }
    return design
  }

  test('that nobody listed is not counted as none', () => {
    const design = make()
    expect(new Set(listVerdicts(design, 'operating-temperature'))).toEqual(new Set(['meets']))
    design.features.conductors = []
    const outcomes = listOutcomes(evaluate(design), 'operating-temperature')
    expect(outcomes.some(({ kind }) => kind === 'not-computed')).toBe(true)
    expect(outcomes.every((each) => each.kind !== 'decided')).toBe(true)
  })
})

describe('copper that a zone does not have', () => {
  test('has no adhesive of its clad either', () => {
    const design = makeOneBend()
    const glue = design.construction.layers[1]
    if (glue === undefined) throw new Error('no adhesive')
    // Cover, adhesive, foil, adhesive, base: an adhesive-bonded clad.
    design.construction.layers.splice(3, 0, { ...glue, id: 'bond', name: 'bond' })
    const presence = design.construction.zones[0]?.presence
    presence?.splice(3, 0, makePresence('bond'))
    expect(listVerdicts(design, 'clad-adhesive')).toEqual(['fails'])
    if (presence !== undefined) presence[2] = makePresence('foil', 0)
    expect(listVerdicts(design, 'clad-adhesive')).toEqual(['meets'])
  })
})

describe('a finish that is typed', () => {
  test('is held against what its standard is quoted with', () => {
    const enig = 'immersion-gold-over-electroless-nickel'
    expect(explainFinish(enig, { thicknessUm: 4, toleranceUm: 1 })).toBe(null)
    expect(explainFinish(enig, { thicknessUm: 0.5, toleranceUm: 0.1 })).toMatch(/less than .* nickel 3 to 6/)
    expect(explainFinish('immersion-silver', { thicknessUm: 3, toleranceUm: 0 })).toMatch(/more than .* silver 0.12/)
    expect(explainFinish('none', { thicknessUm: 3, toleranceUm: 0 })).toMatch(/one of the two is wrong/)
    expect(explainFinish('none', { thicknessUm: 0, toleranceUm: 0 })).toBe(null)
    expect(explainFinish(null, { thicknessUm: 3, toleranceUm: 0 })).toBe(null)
  })

  test('stands with the thickness of a connector end', () => {
    const design = readDemoDesign('skua-rev-b')
    design.brief.surfaceFinish = 'immersion-silver'
    const cautionsOf = () =>
      listOutcomes(evaluate(design), 'finger-thickness').flatMap((each) =>
        each.kind === 'decided' ? each.cautions : [],
      )
    expect(cautionsOf().join(' ')).toContain('more than its standard is quoted with: silver 0.12 to 0.4 um')
    for (const zone of design.construction.zones) {
      if (zone.contactFinish !== null) zone.contactFinish = { thicknessUm: 0.3, toleranceUm: 0.1 }
    }
    expect(cautionsOf()).toEqual([])
  })
})

describe('the text of an evaluation', () => {
  test('names owner and source of each limit that an item was held against', () => {
    const design = readDemoDesign('skua-rev-a')
    const owner = { kind: 'workspace', name: 'Quillmoor workspace' } as const
    const evaluation = evaluate(design, { limits: [{ key: 'cornerInsideRadiusMm', value: 1, owner }] })
    const text = formatReport(design, evaluation).replaceAll(/\s+/g, ' ')
    let held = 0
    for (const { outcomes } of evaluation.items) {
      for (const outcome of outcomes) {
        if (outcome.kind !== 'decided') continue
        held += 1
        const { limit } = outcome
        const source = citeSource(limit.sourceKey as SourceKey)
        const isOwn = ['design', 'workspace', 'fabricator'].includes(limit.owner.kind)
        const whose = isOwn ? `${describeLimitOwner(limit.owner)}; ${source}` : source
        expect(text).toContain(`Limit ${describeLimit(limit)}: ${whose}.`)
      }
    }
    expect(held).toBeGreaterThan(20)
    expect(text).toContain('as quoted by')
    expect(text).toContain('Quillmoor workspace')
  })
})

/** What rests on how the section bends, and what counts its layers. */
const ON_THE_SECTION = [
  'bend-strain',
  'copper-yield',
  'damage-sum',
  'fatigue-life',
  'film-strain',
  'leaf-length',
  'neutral-axis',
  'radius-rules',
  'shield-stiffness',
] as const
const ON_THE_LAYERS = [
  'clad-adhesive',
  'conductor-layers-in-bend',
  'foil-type',
  'plating-in-bend',
  'solder-mask-in-bend',
  'plane-in-bend',
] as const

describe('a bend whose section nobody knows', () => {
  const bends = [{}, { insideRadiusMm: 6 }]

  test.each([...ON_THE_SECTION, ...ON_THE_LAYERS])(
    '%s is neither met nor inapplicable in a zone without layers',
    (itemId) => {
      const design = makeOneBend({ bends })
      const [zone] = design.construction.zones
      if (zone !== undefined) zone.presence = []
      const result = evaluate(design).items.find((item) => item.itemId === itemId)
      expect(result?.verdict).toBe('not-computed')
    },
  )

  test.each(ON_THE_SECTION)('%s is not computed where a material is not known', (itemId) => {
    const design = makeOneBend({ bends })
    const [cover] = design.construction.layers
    if (cover?.kind === 'coverlay-film') cover.materialId = 'nobody-knows'
    if (itemId === 'shield-stiffness') {
      if (cover?.kind === 'coverlay-film') {
        design.construction.layers.unshift({ ...cover, id: 'shield', name: 'shield', kind: 'shield-film' })
        design.construction.zones[0]?.presence.unshift(makePresence('shield'))
      }
    }
    const result = evaluate(design).items.find((item) => item.itemId === itemId)
    expect(result?.verdict).toBe('not-computed')
  })
})

test.each(['rigid', 'stiffened'] as const)('a bend in a %s zone does not fit it', (kind) => {
  const design = makeOneBend({ insideRadiusMm: 8 })
  const [zone] = design.construction.zones
  expect(new Set(listVerdicts(design, 'bend-fit'))).toEqual(new Set(['meets']))
  if (zone !== undefined) zone.kind = kind
  expect(listVerdicts(design, 'bend-fit')).toContain('fails')
})
