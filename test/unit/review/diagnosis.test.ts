import { expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { countStanding, type DiagnosedItem, diagnose, THEMES } from '@/lib/review'
import { DEMO_DESIGNS, readDrawnDesign } from '../engine-assembly/demo-design-files'

const diagnoseDrawn = (items: readonly DiagnosedItem[]) => diagnose(items, { hasPlan: true })

const definitions = new Map(CATALOGUE.map((item) => [item.id, item]))

function listItems(name: (typeof DEMO_DESIGNS)[number], waived: readonly string[] = []): DiagnosedItem[] {
  return evaluate(readDrawnDesign(name)).items.map((result) => ({
    itemId: result.itemId,
    result,
    state: waived.includes(result.itemId) ? 'waived' : 'open',
    severity: definitions.get(result.itemId)?.severity ?? 'advice',
    question: definitions.get(result.itemId)?.question ?? '',
    restsOn: definitions.get(result.itemId)?.restsOn ?? [],
    askedOf: [],
  }))
}

test('each item is named by one theme at most, and exists', () => {
  const named = Object.values(THEMES).flatMap(({ itemIds }) => [...itemIds])
  expect(new Set(named).size).toBe(named.length)
  expect(named.filter((id) => !definitions.has(id))).toEqual([])
})

test('the hinge that kills revision A of the demo comes first, as one cause of many rows', () => {
  const causes = diagnoseDrawn(listItems('skua-rev-a'))
  const [first] = causes
  expect(first).toMatchObject({
    title: 'Copper and films in the bend',
    at: 'bend',
    severity: 'blocking',
    lead: { itemId: 'fatigue-life', outcome: { value: { unit: 'cycles' }, limit: { value: 2_000_000 } } },
  })
  expect(first?.places.map(({ name }) => name)).toEqual(['Mirror hinge'])
  expect(first?.because).toContain('copper is plated into the bend')
  expect(first?.because).toContain('the bend carries too many conductor layers')
  expect(first?.rows.map(({ itemId }) => itemId)).toEqual(
    expect.arrayContaining([
      'plating-in-bend',
      'conductor-layers-in-bend',
      'radius-rules',
      'copper-yield',
      'neutral-axis',
    ]),
  )
  // Plating fails at the fold too, which is another bend with remedies of its own.
  const fold = causes.find(({ places }) => places.some(({ name }) => name === 'Fold at assembly'))
  expect(fold?.rows.map(({ itemId }) => itemId)).toContain('plating-in-bend')
})

test('every failing outcome is in one cause and no other, whatever the design', () => {
  for (const name of DEMO_DESIGNS) {
    const items = listItems(name)
    const failing = items
      .filter(({ result }) => result.verdict === 'fails')
      .flatMap(({ result }) => result.outcomes.filter((outcome) => 'verdict' in outcome && outcome.verdict === 'fails'))
    const told = diagnoseDrawn(items).flatMap(({ rows }) => rows.flatMap(({ outcomes }) => outcomes))
    expect(told).toHaveLength(failing.length)
    expect(new Set(told)).toEqual(new Set(failing))
  }
})

test('causes stand by severity, and far fewer than rows', () => {
  const items = listItems('skua-rev-a')
  const causes = diagnoseDrawn(items)
  const rank = { blocking: 0, major: 1, minor: 2, advice: 3 }
  const ranks = causes.map(({ severity }) => (severity === null ? 4 : rank[severity]))
  expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
  expect(causes.length).toBeLessThan(causes.reduce((sum, { rows }) => sum + rows.length, 0) * 0.7)
})

test('two boards in which the same prepreg is too thin are one cause at two places', () => {
  const encapsulation = diagnoseDrawn(listItems('skua-rev-a')).filter(({ rows }) =>
    rows.some(({ itemId }) => itemId === 'copper-encapsulation'),
  )
  expect(encapsulation.map(({ places }) => places.map(({ name }) => name))).toEqual([
    ['Controller board', 'Sensor board'],
  ])
})

test('what is waived leads nothing: its cause comes last and has no severity', () => {
  const items = listItems('skua-rev-a')
  const failing = items.filter(({ result }) => result.verdict === 'fails').map(({ itemId }) => itemId)
  expect(diagnoseDrawn(listItems('skua-rev-a', failing)).every(({ severity }) => severity === null)).toBe(true)
  const drawing = diagnoseDrawn(listItems('skua-rev-a', ['layer-names'])).find(({ id }) => id.startsWith('drawing'))
  expect(drawing?.rows.at(-1)).toMatchObject({ itemId: 'layer-names', isWaived: true })
})

test('each failing row leads somewhere: the bend to its remedies, a field to where it is entered', () => {
  const rows = diagnoseDrawn(listItems('skua-rev-a')).flatMap((cause) => cause.rows.map((row) => ({ cause, row })))
  const kindsOf = (itemId: string) =>
    rows.filter(({ row }) => row.itemId === itemId).map(({ row }) => row.cures.map(({ kind }) => kind))
  expect(kindsOf('fatigue-life')).toEqual([['remedies', 'field', 'waiver', 'question']])
  expect(rows.every(({ row }) => row.cures.some(({ kind }) => kind === 'question'))).toBe(true)
  const tabOf = (itemId: string) =>
    rows.find(({ row }) => row.itemId === itemId)?.row.cures.find((cure) => cure.kind === 'field')
  expect(tabOf('layer-stagger')).toMatchObject({ tab: 'plan' })
  expect(tabOf('copper-encapsulation')).toMatchObject({ tab: 'construction' })
  expect(tabOf('fold-order-model')).toMatchObject({ tab: 'bends', bendId: 'hinge' })
  expect(tabOf('bend-call-out')).toMatchObject({ tab: 'features' })
})

test('an item that no theme names is a cause of its own', () => {
  const own: DiagnosedItem = {
    itemId: 'own-rule',
    question: 'Is the pocket deep enough?',
    severity: 'major',
    restsOn: ['brief'],
    askedOf: ['quality engineer'],
    state: 'open',
    result: {
      verdict: 'fails',
      basis: 'stated',
      headline: '',
      outcomes: [
        { kind: 'said', verdict: 'fails', rests: 'stated', sourceKey: 'x', places: [], summary: 'It is not.' },
      ],
    },
  }
  expect(diagnoseDrawn([own])).toMatchObject([
    { title: 'Is the pocket deep enough?', at: 'document', severity: 'major' },
  ])
})

test('every item is counted once in the standing, and the counts add up', () => {
  for (const name of DEMO_DESIGNS) {
    const items = listItems(name, ['layer-names'])
    const { items: total, failing, ...others } = countStanding(items)
    const sum = [...Object.values(failing), ...Object.values(others)].reduce((all, count) => all + count, 0)
    expect(sum).toBe(total)
    expect(total).toBe(items.length)
  }
})
