import { describe, expect, it } from 'vitest'
import { makeRuns } from '@/lib/package/report/stand-in-font'

const has = (codePoint: number) => codePoint < 0x80
const runs = (content: unknown) => makeRuns(content, has, 'Other')

describe('characters that the font of a report lacks', () => {
  it('are set in another, and the text round them stays', () => {
    expect(runs('hole \u2300 3 mm')).toEqual({ text: ['hole ', { text: '\u2300', font: 'Other' }, ' 3 mm'] })
    expect(runs({ text: 'a \u2300', bold: true })).toEqual({
      text: ['a ', { text: '\u2300', font: 'Other' }],
      bold: true,
    })
  })

  it('are found in every part of a document', () => {
    const marked = { text: [{ text: '\u05d0', font: 'Other' }] }
    expect(
      runs([{ stack: ['\u05d0'] }, { columns: ['\u05d0'] }, { ul: ['\u05d0'] }, { table: { body: [['\u05d0']] } }]),
    ).toEqual([{ stack: [marked] }, { columns: [marked] }, { ul: [marked] }, { table: { body: [[marked]] } }])
    expect(runs({ svg: '<text x="1">R \u05d0</text>' })).toEqual({
      svg: '<text x="1">R <tspan font-family="Other">\u05d0</tspan></text>',
    })
  })

  it('leave a text alone that needs none, and points at which a word may break', () => {
    const content = [{ text: 'Thickness', style: 'head' }, 'one\u200btwo', { svg: '<text>10</text>' }]
    expect(runs(content)).toEqual(content)
  })
})
