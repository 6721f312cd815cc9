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
