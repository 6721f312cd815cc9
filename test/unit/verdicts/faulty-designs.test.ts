import { describe, expect, test } from 'vitest'
import { evaluate, parseDesign, type Verdict } from '@/lib/engine'
import { getItem } from '@/lib/engine/catalogue'
import { readDemoDesign } from '../engine-assembly/demo-design-files'
import { BEND_FAULTS } from './faults/bend-faults'
import { BRIEF_FAULTS } from './faults/brief-faults'
import { CONDUCTOR_FAULTS } from './faults/conductor-faults'
import { CONNECTOR_FAULTS } from './faults/connector-faults'
import { CONSTRUCTION_FAULTS } from './faults/construction-faults'
import type { Change } from './faults/fault'
import { HOLE_AND_EDGE_FAULTS } from './faults/hole-and-edge-faults'

/*
 * Designs that an expert would send back: revision B of the Skua with one fault each, besides those of gross-changes.test.ts. What must speak
 * is named; it must not meet, nor call itself not applicable. The faults are common practice, no published source.
 */

const FAULTS = [
  ...CONSTRUCTION_FAULTS,
  ...BEND_FAULTS,
  ...CONDUCTOR_FAULTS,
  ...HOLE_AND_EDGE_FAULTS,
  ...CONNECTOR_FAULTS,
  ...BRIEF_FAULTS,
]

const BAD: readonly Verdict[] = ['fails', 'cannot-tell', 'not-computed', 'thin-margin']

function verdictOf(itemId: string, change: Change) {
  const design = readDemoDesign('skua-rev-b')
  change(design)
  const parsed = parseDesign(design)
  if (!parsed.ok) throw new Error(`no valid design: ${parsed.issues.map(({ message }) => message).join('; ')}`)
  const found = evaluate(parsed.value, { facts: { daysSinceFabricatorLooked: 3 } }).items.find(
    (item) => item.itemId === itemId,
  )
  return found ?? null
}

describe('a design that an expert would send back', () => {
  test.each(FAULTS)('%s: %s', (_, itemId, says, change) => {
    const found = verdictOf(itemId, change)
    const wanted = says === 'fails' ? ['fails'] : ['cannot-tell', 'not-computed', 'fails']
    expect(wanted, found?.headline).toContain(found?.verdict)
  })

  test('the design without the fault is not sent back for it', () => {
    const ids = [...new Set(FAULTS.map(([, itemId]) => itemId))]
    const sentBack = ids.filter((id) => BAD.includes((verdictOf(id, () => {})?.verdict ?? 'meets') as Verdict))
    expect(sentBack).toEqual([])
    expect(FAULTS.length).toBeGreaterThanOrEqual(40)
    expect(ids.filter((id) => ['blocking', 'major'].includes(getItem(id).severity)).length).toBeGreaterThan(25)
  })
})
