import { describe, expect, test } from 'vitest'
import {
  DELIVERED_TEMPLATE,
  findEarlierQuestion,
  findItem,
  findPresentItemId,
  isLimitKey,
  LIMITS,
  passLimitsOn,
  passTemplateOn,
} from '@/lib/engine/catalogue'
import { LIMIT_SUCCESSORS, SUCCESSORS } from '@/lib/engine/catalogue/successors'
import { getItemState } from '@/lib/review'
import { ITEMS, makeResult } from '../review/snapshot-factory'
import { makeExampleDesign } from './example-design'

describe('items and limits that are gone', () => {
  test('are not in the catalogue, and what replaces them is', () => {
    for (const [id, { itemId }] of Object.entries(SUCCESSORS)) {
      expect(findItem(id), id).toBeNull()
      if (itemId !== null) expect(findItem(itemId), itemId).not.toBeNull()
      expect(findPresentItemId(id)).toBe(itemId ?? id)
      expect(findEarlierQuestion(id)).not.toBeNull()
    }
    for (const [key, next] of Object.entries(LIMIT_SUCCESSORS)) {
      expect(isLimitKey(key), key).toBe(false)
      expect(isLimitKey(next.key), next.key).toBe(true)
    }
    expect(findPresentItemId('constructor')).toBe('constructor')
  })

  test('the strain of bends that all move is asked by their life; one that stands, or was folded before, keeps its own', () => {
    const example = makeExampleDesign()
    const [bend] = example.bends
    if (bend === undefined) throw new Error('no bend')
    const find = (...bends: Partial<typeof bend>[]) =>
      findPresentItemId('bend-strain', { ...example, bends: bends.map((each) => ({ ...bend, ...each })) })
    expect(find({ use: 'dynamic', foldedToRadiusMm: null })).toBe('fatigue-life')
    expect(find({ use: 'dynamic', foldedToRadiusMm: 3 })).toBe('bend-strain')
    expect(find({ use: 'dynamic', foldedToRadiusMm: null }, { use: 'fold-once' })).toBe('bend-strain')
    expect(find({ use: null })).toBe('bend-strain')
    expect(find()).toBe('bend-strain')
    expect(findPresentItemId('bend-strain')).toBe('bend-strain')
    expect(findEarlierQuestion('bend-strain')).toMatch(/copper strain/)
  })

  test('what class, bends and fits decide goes to the item that asks now, from older ids too', () => {
    const design = makeExampleDesign()
    const find = (itemId: string, change: Partial<typeof design.brief> = {}) =>
      findPresentItemId(itemId, { ...design, brief: { ...design.brief, ...change } })
    expect(find('transition-strip')).toBe('transition-strip')
    for (const id of ['transition-strip', 'hole-to-transition', 'component-to-transition']) {
      expect(find(id, { performanceClass: 'class-3' }), id).toBe('transition-strip-class-three')
    }
    expect(find('flexible-adhesive-in-rigid', { performanceClass: 'class-3' })).toBe(
      'flexible-adhesive-in-rigid-class-three',
    )
    expect(find('fold-model')).toBe('fold-order-model')
    expect(findPresentItemId('fold-model', { ...design, bends: design.bends.slice(0, 1) })).toBe('fold-model')
    expect(find('thickness-tolerance')).toBe('fitted-thickness')
  })

  test('the strictest limit passes on, a laxer one than delivered waits, and one that was set for the successor goes first', () => {
    const delivered = LIMITS.transitionStripMm.value
    const hole = { key: 'holeToTransitionMm', value: 2, note: 'House rule.' }
    const component = { key: 'componentToTransitionMm', value: 3, note: '' }
    expect(passLimitsOn([hole, component])).toEqual([
      {
        key: 'transitionStripMm',
        value: 3,
        note: 'To confirm: set for "Component to the rigid-to-flex transition".',
      },
    ])
    expect(passLimitsOn([{ ...hole, value: delivered - 0.5 }])).toEqual([])
    const own = { key: 'transitionStripMm', value: 1, note: '' }
    expect(passLimitsOn([hole, own])).toEqual([own])
    expect(passLimitsOn([own])).toEqual([own])
  })

  test('a change of a workspace passes on as a remark: neither its words nor that the item was switched off', () => {
    const change = {
      itemId: 'hole-to-transition',
      isOff: true,
      reason: 'No holes in our parts.',
      question: 'Are vias clear?',
      why: null,
      howToCheck: null,
      answeredBy: ['lead' as const],
    }
    const passed = passTemplateOn({ ...DELIVERED_TEMPLATE, itemChanges: [change] })
    expect(passed.itemChanges).toMatchObject([
      { itemId: 'transition-strip', isOff: false, question: null, answeredBy: ['lead'] },
    ])
    expect(passed.itemChanges[0]?.reason).toMatch(/^To confirm: .*which was switched off\. No holes in our parts\.$/)
    const gone = { ...change, itemId: 'tight-bend-cut-outs' }
    expect(passTemplateOn({ ...DELIVERED_TEMPLATE, itemChanges: [gone] }).itemChanges).toEqual([])
  })

  test.each(['fails', 'thin-margin', 'not-computed', 'cannot-tell', 'needs-judgment'] as const)(
    'an answer "meets" from before never makes an item that %s meet',
    (verdict) => {
      const [item] = ITEMS
      if (item === undefined) throw new Error('no items')
      const answer = {
        itemId: item.id,
        state: 'meets' as const,
        reason: 'measured',
        answeredBy: 'member',
        answeredByName: 'Mara Tolland',
        answeredAt: '2027-03-01T10:00:00.000Z',
        evidence: [],
        earlierQuestion: 'Are holes kept away?',
      }
      const given = getItemState(item, makeResult(item.id, verdict), answer, [])
      expect(given.state).not.toBe('meets')
      expect(given.setAside).toMatch(/^to confirm/)
    },
  )
})
