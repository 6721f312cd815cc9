import { beforeAll, describe, expect, test } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import { applyDesignPatch, searchWayOut, type WayOut } from '@/lib/engine/remedies'
import { findRouteClashes } from '@/lib/plan'
import { readDemoDesign, readDrawnDesign } from '../engine-assembly/demo-design-files'

function find(design: Design): WayOut {
  const search = searchWayOut(design)
  for (;;) {
    const step = search.next()
    if (step.done === true) return step.value
  }
}

const listFailing = (design: Design) => evaluate(design).items.filter(({ verdict }) => verdict === 'fails')

describe('out of revision A of the demo, as it is drawn', () => {
  const design = readDrawnDesign('skua-rev-a')
  let way: WayOut
  let after: Design
  beforeAll(() => {
    way = find(design)
    after = applyDesignPatch(design, way.patch)
  }, 120_000)

  test('a whole evaluation of the draft finds nothing that fails by calculation or by a typed number', () => {
    expect(listFailing(design).filter(({ basis }) => basis !== 'stated').length).toBeGreaterThan(15)
    expect(listFailing(after).filter(({ basis }) => basis === 'computed' || basis === 'typed')).toEqual([])
    expect(way.failing.before).toBeGreaterThan(15)
    expect(way.failing.after).toBe(0)
    expect(way.left).toEqual([])
  })

  test('nothing that was known before is unknown after it, and nothing comes to fail', () => {
    const before = new Map(evaluate(design).items.map(({ itemId, verdict }) => [itemId, verdict]))
    for (const { itemId, verdict } of evaluate(after).items) {
      if (verdict === 'cannot-tell') expect(before.get(itemId), itemId).toBe('cannot-tell')
      if (verdict === 'fails') expect(before.get(itemId), itemId).toBe('fails')
    }
  })

  test('the need that is given up is named with its numbers, and the required cycles are not among them', () => {
    expect(way.changes.flatMap(({ relaxes }) => relaxes ?? [])).toEqual([
      expect.stringMatching(/^Inside radius that the assembly sets\. Mirror hinge: inside radius 8 mm to \d+ mm/),
    ])
    expect(after.bends.map(({ requiredCycles }) => requiredCycles)).toEqual(
      design.bends.map((bend) => bend.requiredCycles),
    )
    expect(after.features.conductors.map(({ currentAmp }) => currentAmp)).toEqual(
      design.features.conductors.map(({ currentAmp }) => currentAmp),
    )
  })

  test('conductors that came to one layer are not drawn over each other', () => {
    expect(after.plan && findRouteClashes(after.plan, after.features.conductors)).toEqual([])
  })

  test('what somebody stated is left to people, unchanged', () => {
    const stated = listFailing(after).filter(({ basis }) => basis === 'stated')
    expect(stated.length).toBeGreaterThan(5)
    expect(way.forPeople.map(({ itemId }) => itemId)).toEqual(stated.map(({ itemId }) => itemId))
    expect(after.features.routing).toEqual(design.features.routing)
  })

  test('each effect is told, and the way back leads to the very design', () => {
    expect(way.moved.find(({ itemId }) => itemId === 'fatigue-life')).toMatchObject({
      before: 'fails',
      after: expect.stringMatching(/^(meets|thin-margin)$/),
    })
    expect(way.moved.every(({ before, after: is }) => before !== is)).toBe(true)
    expect(applyDesignPatch(after, way.undoPatch)).toEqual(design)
  })
})

test('numbers of a design without a plan get their limits', () => {
  const design = readDemoDesign('skua-rev-a')
  const way = find(design)
  const after = applyDesignPatch(design, way.patch)
  expect(way.changes.map(({ id }) => id)).toContain('insideRadiusMm:hinge-corner')
  expect(
    listFailing(after)
      .filter(({ basis }) => basis === 'computed' || basis === 'typed')
      .map(({ itemId }) => itemId),
  ).toEqual(way.left.map(({ itemId }) => itemId))
}, 120_000)

test('where nothing fails nothing is changed', () => {
  const way = find(readDrawnDesign('skua-rev-b'))
  expect(way).toMatchObject({ changes: [], patch: [], left: [], failing: { before: 0, after: 0 } })
}, 120_000)

test('a search that is stopped at once keeps the design, and says that it was stopped', () => {
  const search = searchWayOut(readDrawnDesign('skua-rev-a'))
  search.next()
  let step = search.next(true)
  while (step.done !== true) step = search.next(true)
  expect(step.value).toMatchObject({ isStopped: true })
  expect(step.value.left.length).toBeGreaterThan(0)
})
