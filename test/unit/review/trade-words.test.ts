import { describe, expect, it } from 'vitest'
import { BEND_FIELDS, BRIEF_FIELDS } from '@/lib/engine'
import { compareDesigns, formatFieldValue, nameThreadKind } from '@/lib/review'
import { makeSnapshot } from './snapshot-factory'

describe('values in sentences', () => {
  it('spells out words of a list and leaves calendar dates and numbers as they are', () => {
    expect(formatFieldValue('flex-to-install', BEND_FIELDS.use)).toBe('flex to install')
    expect(formatFieldValue('2027-01-29', BRIEF_FIELDS.needDate)).toBe('2027-01-29')
    expect(formatFieldValue(0.075, BEND_FIELDS.insideRadiusMm)).toBe('0.075 mm')
    expect(formatFieldValue(null, BEND_FIELDS.insideRadiusMm)).toBe('not stated')
  })

  it('so a date that was stated reads as a date in a comparison', () => {
    const { design } = makeSnapshot()
    const dated = { ...design, brief: { ...design.brief, layoutFreezeDate: '2027-01-29' } }
    const [change] = compareDesigns({ ...design, brief: { ...design.brief, layoutFreezeDate: null } }, dated)
    expect(change?.sentence).toMatch(/not stated to 2027-01-29$/)
  })

  it('name the kinds of threads as they are spoken of', () => {
    expect(['note', 'should-change', 'must-change', 'engineering-query'].map(nameThreadKind)).toEqual([
      'note',
      'should-change',
      'must-change',
      'engineering query',
    ])
  })
})
