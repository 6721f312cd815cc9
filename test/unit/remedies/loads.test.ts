import { describe, expect, it, vi } from 'vitest'
import type { Bend } from '@/lib/engine'
import { findRemedies, type RemedyFamily } from '@/lib/engine/remedies'
import { RANKED_FAMILIES } from '@/lib/engine/remedies/families'
import { change, getEntry, readDemo } from './demo'
import { listAllSets, meets } from './every-set'

// Hundreds of evaluations per search: a busy machine needs more than the usual seconds.
vi.setConfig({ testTimeout: 120_000 })

const skua = readDemo('skua-rev-b')
/** The hinge of Skua B meets as it is: what it fails on is the load that is given. */
const withHinge = (given: Partial<Bend>) =>
  change(skua, (d) => {
    Object.assign(getEntry(d.bends, 'hinge'), given)
  })
const only = (...families: RemedyFamily[]) => ({
  leftOutFamilies: RANKED_FAMILIES.map(({ family }) => family).filter((family) => !families.includes(family)),
})

describe.each([
  ['a pull', { pullN: 5 }],
  ['a twist', { twistDeg: 10, twistLengthMm: 20 }],
  ['both', { pullN: 5, twistDeg: 20, twistLengthMm: 20 }],
] as const)('a bend that fails by %s', (_, given) => {
  const options = only('less-pull', 'less-twist', 'longer-twist', 'larger-radius')

  it('is brought to where it meets by the smallest set that does, as brute force finds it', () => {
    const design = withHinge(given)
    const report = findRemedies(design, 'hinge', options)
    const sizes = listAllSets(design, 'hinge', options, 3)
      .filter(meets)
      .map(({ changeCount }) => changeCount)
    expect(sizes.length).toBeGreaterThan(0)
    expect(report.arrival).toMatchObject({ kind: 'meets', changeCount: Math.min(...sizes) })
    expect(report.remedies[0]?.id).toBe(report.arrival.kind === 'meets' ? report.arrival.remedyId : '')
  })

  it('has remedies that take no more away than what helps: each keeps the rest of the design', () => {
    const design = withHinge(given)
    const { remedies } = findRemedies(design, 'hinge', { ...options, mostChanges: 1 })
    const loads = remedies.filter(({ changes }) => changes.some(({ family }) => family.startsWith('less-')))
    expect(loads.length).toBeGreaterThan(0)
    for (const { patch } of loads) {
      expect(patch.map(({ path }) => path.replace(/\d+/, '#'))).toEqual([
        expect.stringMatching(/^\/bends\/#\/(pullN|twistDeg)$/),
      ])
    }
  })
})

describe('a load that a stated need asks for', () => {
  it('is not taken off where the brief states a pull and nothing made for it', () => {
    const design = change(withHinge({ pullN: 5 }), (d) => {
      Object.assign(d.brief.exposure, { pullForceNewton: 5, pullFeature: 'nothing' })
    })
    const { remedies } = findRemedies(design, 'hinge', { ...only('less-pull'), mostChanges: 1 })
    expect(remedies.length).toBeGreaterThan(0)
    for (const { forbiddenBy } of remedies) {
      expect(forbiddenBy).toEqual([expect.objectContaining({ kind: 'pull', because: expect.stringContaining('5 N') })])
    }
  })

  it('is not taken off where the product is stated to twist the bend', () => {
    const design = change(withHinge({ twistDeg: 10, twistLengthMm: 20 }), (d) => {
      getEntry(d.bends, 'hinge').inProduct.furtherMotion = 'twist'
    })
    const { remedies } = findRemedies(design, 'hinge', { ...only('less-twist'), mostChanges: 1 })
    expect(remedies.length).toBeGreaterThan(0)
    for (const { forbiddenBy } of remedies) expect(forbiddenBy).toMatchObject([{ kind: 'twist' }])
  })

  it('leaves nothing to offer where none is stated, and no length where the twist has all of the zone', () => {
    const none = withHinge({ pullN: 0, twistDeg: 0, twistLengthMm: 20 })
    expect(findRemedies(none, 'hinge', only('less-pull', 'less-twist', 'longer-twist')).tried.alone).toBe(0)
    const { lengthMm } = getEntry(skua.construction.zones, getEntry(skua.bends, 'hinge').zoneId)
    const whole = withHinge({ twistDeg: 10, twistLengthMm: lengthMm ?? 0 })
    expect(findRemedies(whole, 'hinge', only('longer-twist')).tried.alone).toBe(0)
  })
})

describe('a fold between two faces that is too tight', () => {
  it('is offered a larger radius with the gap that gives it', () => {
    const design = change(skua, (d) => {
      Object.assign(getEntry(d.bends, 'hinge'), {
        radiusHeldBy: 'between-faces',
        angleDeg: 180,
        insideRadiusMm: 3,
        radiusToleranceMm: 0.2,
        faceGapMm: 8,
      })
      getEntry(d.construction.zones, getEntry(d.bends, 'hinge').zoneId).lengthMm = 300
    })
    const { before, remedies } = findRemedies(design, 'hinge', { ...only('larger-radius'), mostChanges: 1 })
    expect(before.verdict).not.toBe('meets')
    const [larger] = remedies
    expect(larger?.after.verdict).toBe('meets')
    expect(larger?.changes[0]?.detail).toMatch(/faces 8 mm to [\d.]+ mm apart/)
    expect(larger?.patch.map(({ path }) => path)).toContain('/bends/0/faceGapMm')
  })
})
