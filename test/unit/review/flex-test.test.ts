import { describe, expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import { evaluate } from '@/lib/engine'
import { findDrawingGaps } from '@/lib/review'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const skua = readDemoDesign('skua-rev-b')
const hinge = skua.bends.findIndex(({ use }) => use === 'dynamic')

function withFlexTest(change: Partial<(typeof skua.bends)[number]['flexTest']>) {
  const design = structuredClone(skua)
  const bend = design.bends[hinge]
  if (bend === undefined) throw new Error('no hinge')
  Object.assign(bend.flexTest, change)
  return design
}

describe('terms of a flex test', () => {
  test('stand on the drawing, each of them', () => {
    const sheet = JSON.stringify(makeSheetContents(skua, evaluate(skua), FILE_UNITS))
    for (const term of ['"30"', '"25"', '"16"', 'Held at the controller board']) expect(sheet).toContain(term)
  })

  test('that are not stated are asked for, with the path of the field', () => {
    const asked = findDrawingGaps(
      withFlexTest({ cyclesPerMinute: null, travelMm: null, mandrelDiameterMm: null, pointsOfApplication: ' ' }),
    ).filter(({ path }) => path.includes('flexTest'))
    expect(asked.map(({ path }) => path.at(-1))).toEqual([
      'cyclesPerMinute',
      'travelMm',
      'mandrelDiameterMm',
      'pointsOfApplication',
    ])
    expect(findDrawingGaps(skua).filter(({ path }) => path.includes('flexTest'))).toEqual([])
  })

  test('a mandrel wider than the bend fails by name; a fast test says so', () => {
    const itemOf = (design: typeof skua) => evaluate(design).items.find(({ itemId }) => itemId === 'flex-test-terms')
    expect(itemOf(skua)?.verdict).toBe('meets')
    const wide = itemOf(withFlexTest({ mandrelDiameterMm: 40 }))
    expect(wide?.verdict).toBe('fails')
    expect(wide?.headline).toContain('gentler')
    const cautions = itemOf(skua)?.outcomes.flatMap((each) => (each.kind === 'decided' ? each.cautions : []))
    expect(cautions?.join()).toContain('30 cycles a minute are more than the 10 of IPC-TM-650 2.4.3')
  })
})
