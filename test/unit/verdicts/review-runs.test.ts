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
