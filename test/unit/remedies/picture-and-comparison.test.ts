import { describe, expect, it } from 'vitest'
import { listMovedVerdicts } from '@/app/_components/engineering/remedies/moved-verdicts'
import { formatStrainShare, nameRemedy } from '@/app/_components/engineering/remedies/words'
import { drawRemedyPlot, listRemedyRows, PRINT_PALETTE, toSvg } from '@/lib/drawing'
import { evaluate } from '@/lib/engine'
import { DELIVERED_TEMPLATE, makeCatalogue } from '@/lib/engine/catalogue'
import { applyDesignPatch } from '@/lib/engine/remedies'
import { makeDocument } from '../drawing/demo-design'
import { findPairs, getRemedy, readDemo } from './demo'

const skua = readDemo('skua-rev-a')
const report = findPairs(skua, 'hinge')
const frame = {
  document: makeDocument(),
  palette: PRINT_PALETTE,
  widthPx: 520,
  heightPx: 340,
  unit: 'um',
  chosen: 1,
} as const

/** Remedies that come to the same place share one label: `3, 7 to 9`. */
function readNumbers(label: string): number[] {
  return label.split(', ').flatMap((run) => {
    const [from = 0, to = from] = run.split(' to ').map(Number)
    return Array.from({ length: to - from + 1 }, (_, at) => from + at)
  })
}

describe('remedy plot', () => {
  it.each(['thickness', 'radius', 'moment'] as const)('draws a mark and a number per remedy against %s', (effect) => {
    const picture = drawRemedyPlot(report, { ...frame, effect })
    const svg = toSvg(picture)
    expect(svg).not.toMatch(/class=|<style|currentColor|var\(|NaN|undefined|Infinity|aria-/)
    const numbers = [...svg.matchAll(/>(\d+(?:(?:, | to )\d+)*)<\/text>/g)].flatMap(([, label = '']) =>
      readNumbers(label),
    )
    for (const [at] of report.remedies.entries()) expect(numbers).toContain(at + 1)
    expect(svg).toContain('as it is')
    expect(svg).toContain('holds below this line')
  })

  it('says in words how many meet, and how many a need forbids', () => {
    const allowed = report.remedies.filter(({ forbiddenBy }) => forbiddenBy.length === 0)
    const meeting = allowed.filter(({ after }) => after.verdict === 'meets')
    expect(drawRemedyPlot(report, { ...frame, effect: 'thickness' }).description).toContain(
      `${report.remedies.length} remedies, numbered as in the list: ${meeting.length} of them meet and nothing stands against them; ${report.remedies.length - allowed.length} are forbidden`,
    )
  })

  it('has a table with the design as it is and every remedy', () => {
    const { rows } = listRemedyRows(report, 'um')
    expect(rows).toHaveLength(report.remedies.length + 1)
    expect(rows[0]).toMatchObject({
      name: 'as it is',
      thickness: report.before.bendZoneThicknessUm.toPrecision(4),
      radius: '8',
    })
    expect(rows.some(({ against }) => against === 'Hinge')).toBe(true)
  })

  it('draws a report without remedies', () => {
    const empty = { ...report, remedies: [] }
    expect(toSvg(drawRemedyPlot(empty, { ...frame, effect: 'radius', chosen: null }))).toContain('as it is')
  })
})

describe('comparison of a design with and without a remedy', () => {
  it('lists the items of the checklist that move, and no other', () => {
    const remedy = getRemedy(skua, 'hinge', 'one-layer-in-bend:l2+pads-only-plating:bend')
    const reworded = {
      ...DELIVERED_TEMPLATE,
      itemChanges: [
        {
          itemId: 'conductor-layers-in-bend',
          isOff: false,
          reason: 'our words',
          question: 'Is the bend on one layer?',
          why: null,
          howToCheck: null,
          answeredBy: null,
        },
      ],
    }
    const { items } = makeCatalogue(reworded)
    const before = evaluate(skua, { items })
    const after = evaluate(applyDesignPatch(skua, remedy.patch), { items })
    const moved = listMovedVerdicts(before, after, items)
    expect(moved).toContainEqual(
      expect.objectContaining({
        itemId: 'conductor-layers-in-bend',
        question: 'Is the bend on one layer?',
        before: 'fails',
      }),
    )
    expect(moved.every((each) => each.before !== each.after)).toBe(true)
    expect(listMovedVerdicts(before, before, items)).toEqual([])
  })

  it('names a pair in one breath and shows strain as a multiple of what is allowed', () => {
    expect(nameRemedy(getRemedy(skua, 'hinge', 'one-layer-in-bend:l2+pads-only-plating:bend'))).toBe(
      'Conductors on one layer in the bend and pads-only plating',
    )
    expect([formatStrainShare(0.25), formatStrainShare(-1), formatStrainShare(null)]).toEqual(['0.75', '2.00', '–'])
  })
})
