import { describe, expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing/sheet/contents'
import { type Design, evaluate } from '@/lib/engine'
import { findDrawingGaps } from '@/lib/review'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const getTable = (design: Design, id: string) => {
  const block = makeSheetContents(design, evaluate(design), FILE_UNITS).find((candidate) => candidate.id === id)
  return block?.kind === 'table' ? block : null
}

describe('drawing sheet', () => {
  test('says for each zone which copper is plated, and what nobody said', () => {
    const design = readDemoDesign('skua-rev-b')
    const rows = getTable(design, 'copper-by-zone')?.rows.map(({ cells }) => cells.join(' | ')) ?? []
    expect(rows.some((row) => row.includes('L2') && row.includes('pads only'))).toBe(true)
    const finger = design.construction.zones.find(({ kind }) => kind === 'finger')
    for (const presence of finger?.presence ?? []) if (presence.layerId === 'l2') presence.platedCopper = null
    const open = getTable(design, 'copper-by-zone')?.rows.map(({ cells }) => cells.join(' | ')) ?? []
    expect(open.some((row) => row.includes('not stated'))).toBe(true)
  })

  test('states the terms of a flex test for dynamic bends, and the fabricator is not left to ask', () => {
    const design = readDemoDesign('skua-rev-b')
    expect(getTable(design, 'flex-test')?.rows).toHaveLength(1)
    const asked = (d: Design) =>
      findDrawingGaps(d)
        .filter(({ path }) => path.includes('flexTest'))
        .map(({ path }) => path.at(-1))
    expect(asked(design)).toEqual([])
    for (const bend of design.bends) {
      bend.flexTest = { cyclesPerMinute: null, travelMm: null, mandrelDiameterMm: null, pointsOfApplication: ' ' }
    }
    expect(asked(design)).toEqual(['cyclesPerMinute', 'travelMm', 'mandrelDiameterMm', 'pointsOfApplication'])
    expect(getTable(readDemoDesign('pipit-rev-a'), 'flex-test')).toBeNull()
  })
})
