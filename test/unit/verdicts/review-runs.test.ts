import { describe, expect, test } from 'vitest'
import type { Design, ReviewFacts } from '@/lib/engine'
import { evaluateItem, getItem, type ItemVerdict } from '@/lib/engine/catalogue'
import { buildContext } from '@/lib/engine/evaluate'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

/*
 * Revision B of the Skua with one thing changed, and what an expert would say of it. Nothing outside of the project has these designs: the
 * verdicts are common practice, no published source.
 */

function judge(itemId: string, change: (design: Design) => void, facts: ReviewFacts = {}): ItemVerdict {
  const design = readDemoDesign('skua-rev-b')
  change(design)
  return evaluateItem(getItem(itemId), buildContext(design, { facts })).verdict
}

const unchanged = () => {}

function getLayer(design: Design, id: string) {
  const layer = design.construction.layers.find((each) => each.id === id)
  if (layer?.kind !== 'conductor') throw new RangeError(`no conductor layer ${id}`)
  return layer
}

/** A conductor on rigid L1, as the drive is on L2 in everything else. */
function addOnL1(design: Design, given: Partial<Design['features']['conductors'][number]>): void {
  const [drive] = design.features.conductors
  if (drive === undefined) throw new RangeError('no conductor to copy')
  design.features.conductors.push({ ...drive, id: 'on-l1', name: 'On L1', layerId: 'l1', crossings: [], ...given })
}

/** 70 um of foil and 25 um of plating, less what processing takes: 93.5 um of copper. */
function makeL1Heavy(design: Design): void {
  // The revision's own conductors of L1 are for its own copper.
  design.features.conductors = design.features.conductors.filter(({ layerId }) => layerId !== 'l1')
  getLayer(design, 'l1').thicknessUm = 70
}

describe('R7: 0.1 mm width and space on copper of 94 um', () => {
  const finest = (design: Design) => {
    makeL1Heavy(design)
    addOnL1(design, { widthMm: 0.1, spaceMm: 0.1 })
  }
  test.each(['conductor-width', 'conductor-space'])('%s fails', (itemId) => {
    expect(judge(itemId, finest)).toBe('fails')
    expect(judge(itemId, unchanged)).toBe('meets')
  })
  test('0.25 mm holds there, 0.24 mm does not', () => {
    const at = (widthMm: number) =>
      judge('conductor-width', (design) => {
        makeL1Heavy(design)
        addOnL1(design, { widthMm })
      })
    expect([at(0.24), at(0.25)]).toEqual(['fails', 'meets'])
  })
})

describe('R14: a conductor of 50 mA on rigid L1 of half an ounce', () => {
  test('its foil is no heavier than needed', () => {
    expect(judge('foil-weight', (design) => addOnL1(design, { currentAmp: 0.05, widthMm: 0.2 }))).toBe('meets')
  })
})

describe('R9: uses, temperature and flame class', () => {
  const withUses = (uses: Design['brief']['installationUses'], maxDegC = 70) =>
    judge('bend-use', ({ brief }) => Object.assign(brief, { installationUses: uses, operatingMaxDegC: maxDegC }))
  test('a moving bend with use C alone is short, as is 125 degC with use B', () => {
    expect(withUses(['use-c'])).toBe('fails')
    expect(withUses(['use-c'], 125)).toBe('fails')
    expect(withUses(['use-b'], 125)).toBe('fails')
    expect(withUses(['use-b', 'use-c'], 125)).toBe('meets')
  })
  test('a use that nothing asks for is a contradiction too', () => {
    expect(withUses(['use-b', 'use-c'], 70)).toBe('fails')
    expect(
      judge('bend-use', ({ brief, bends }) => {
        brief.installationUses = ['use-b']
        for (const bend of bends) Object.assign(bend, { use: 'fold-once', requiredCycles: null })
      }),
    ).toBe('fails')
  })
  test('a flame class asks for use D; nothing is said where the class is not', () => {
    const withClass = (flameClass: Design['brief']['acceptance']['flameClass']) =>
      judge('bend-use', ({ brief }) => {
        brief.acceptance.flameClass = flameClass
      })
    expect(['vtm-0', 'not-asked', null].map((each) => withClass(each as 'vtm-0' | 'not-asked' | null))).toEqual([
      'fails',
      'meets',
      'not-computed',
    ])
  })
  test('what is short is short, whatever else is missing', () => {
    expect(
      judge('bend-use', ({ brief }) => Object.assign(brief, { installationUses: ['use-a'], operatingMaxDegC: null })),
    ).toBe('fails')
  })
})

/** The link of two layers becomes two leaves of two layers each, with air between. */
function splitLink(design: Design): void {
  const { layers, zones } = design.construction
  const link = zones.find(({ id }) => id === 'link')
  if (link === undefined) throw new RangeError('no link')
  const inLink = new Set(link.presence.map(({ layerId }) => layerId))
  const second = layers
    .filter(({ id }) => inLink.has(id))
    .map((layer) => ({ ...layer, id: `${layer.id}-2`, name: `${layer.name}, leaf 2` }))
  const at = layers.findLastIndex(({ id }) => inLink.has(id))
  layers.splice(at + 1, 0, { id: 'gap', name: 'Gap', kind: 'unbonded-gap', thicknessUm: 60 }, ...second)
  const copies = link.presence.map((presence) => ({ ...presence, layerId: `${presence.layerId}-2` }))
  link.presence.push({ layerId: 'gap', coverageFraction: null, platedCopper: null, hatch: null }, ...copies)
}

describe('R12: four layers in two leaves that are not bonded', () => {
  const split = (change: (fold: Design['bends'][number]) => void) => (design: Design) => {
    splitLink(design)
    for (const bend of design.bends) if (bend.id === 'fold') change(bend)
  }
  test('the layers are counted leaf by leaf', () => {
    expect(judge('conductor-layers-in-bend', split(unchanged))).toBe('meets')
    expect(judge('unbonded-leaves', split(unchanged))).toBe('meets')
  })
  test('their lengths are asked for, and a field answers', () => {
    const lengths = (given: Partial<Design['bends'][number]>) =>
      judge(
        'leaf-length',
        split((bend) => Object.assign(bend, given)),
      )
    expect(lengths({})).toBe('not-computed')
    expect(lengths({ leafLengths: 'equal' })).toBe('fails')
    expect(lengths({ leafLengths: 'stepped' })).toBe('not-computed')
    expect(lengths({ leafLengths: 'stepped', leafStepMm: 5 })).toBe('fails')
    expect(lengths({ leafLengths: 'equal-free-to-buckle' })).toBe('meets')
    expect(lengths({ leafLengths: 'equal-free-to-buckle', use: 'dynamic', requiredCycles: 1000 })).toBe('cannot-tell')
  })
})

describe('R13: a thickness stated in round figures', () => {
  const stated = (statedThicknessUm: number, thicknessToleranceUm: number | null = null) =>
    judge('stated-thickness', (design) => {
      const link = design.construction.zones.find(({ id }) => id === 'link')
      if (link !== undefined) Object.assign(link, { statedThicknessUm, statedToleranceUm: thicknessToleranceUm })
    })
  const linkUm = () => {
    const zone = buildContext(readDemoDesign('skua-rev-b')).findZoneResult('link')
    return zone?.thicknessUm ?? Number.NaN
  }
  test('agrees with its layers within what rounding explains', () => {
    expect(stated(Math.round(linkUm() / 10) * 10)).toBe('meets')
    expect(stated(linkUm() * 1.2)).toBe('fails')
  })
  test('a tolerance on the drawing goes before the share', () => {
    expect(stated(linkUm() + 4, 5)).toBe('meets')
    expect(stated(linkUm() + 4, 2)).toBe('fails')
  })
})
