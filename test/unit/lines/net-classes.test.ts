import { expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing/sheet/contents'
import {
  type Design,
  evaluate,
  findNetClass,
  liftDesign,
  parseDesign,
  UNKNOWN_IMPEDANCE,
  withNetClasses,
} from '@/lib/engine'
import { measureDesign } from '@/lib/fabrication'
import { makeLineDesign } from './example-lines'

/** The same needs, stated by the class in place of the conductor. */
function moveToClass(design: Design): Design {
  const moved = structuredClone(design)
  const [conductor] = moved.features.conductors
  if (conductor === undefined) throw new Error('no conductor')
  const { referenceUnbroken: _, ...terms } = conductor.impedance
  const { impedanceOhm } = conductor
  moved.features.netClasses.push({
    id: 'data',
    name: 'Detector data',
    impedanceOhm,
    ...terms,
    crosstalkLimitPct: null,
    riseTimePs: null,
  })
  Object.assign(conductor, { netClassId: 'data', impedanceOhm: null, impedance: UNKNOWN_IMPEDANCE })
  return moved
}

const outcomesOf = (design: Design, itemId: string) =>
  evaluate(design).items.find((item) => item.itemId === itemId)?.outcomes ?? []

const ITEMS = ['impedance-given', 'impedance-value', 'return-path', 'line-crosstalk']

test('a need is decided alike whether the conductor states it or its class', () => {
  for (const kind of ['single', 'pair'] as const) {
    const design = makeLineDesign(kind)
    const moved = moveToClass(design)
    for (const itemId of ITEMS) expect(outcomesOf(moved, itemId), itemId).toEqual(outcomesOf(design, itemId))
  }
})

test('drawing and trade parameters print what the class asks for', () => {
  const design = makeLineDesign('single')
  const moved = moveToClass(design)
  const cellsOf = (of: Design, id: string) => {
    const block = makeSheetContents(of, evaluate(of), FILE_UNITS).find((each) => each.id === id)
    return block?.kind === 'table' ? block.rows.map(({ cells }) => cells) : null
  }
  expect(cellsOf(moved, 'impedances')).toEqual(cellsOf(design, 'impedances'))
  expect(cellsOf(design, 'net-classes')).toBeNull()
  expect(cellsOf(moved, 'net-classes')?.flat().join(' ')).toContain('Detector data')
  expect(cellsOf(moved, 'conductor-needs')?.flat().join(' ')).toContain('net class Detector data')
  const tolerances = (of: Design) =>
    measureDesign(of, { zones: [] }).parameters.find(({ parameter }) => parameter.key === 'impedance-tolerance')?.values
  expect(tolerances(moved)).toEqual(tolerances(design))
  expect(JSON.stringify(tolerances(moved))).toContain('30')
})

test('what a conductor states holds for it, and a class is not asked for its own layer as reference', () => {
  const moved = moveToClass(makeLineDesign('single'))
  const [conductor] = moved.features.conductors
  if (conductor === undefined) throw new Error('no conductor')
  conductor.impedanceOhm = 90
  expect(withNetClasses(moved).features.conductors[0]).toMatchObject({
    impedanceOhm: 90,
    impedance: { tolerancePct: 30 },
  })
  const [netClass] = moved.features.netClasses
  if (netClass === undefined) throw new Error('no class')
  netClass.referenceLayerId = conductor.layerId
  expect(findNetClass(moved, conductor)).toBe(netClass)
  const again = structuredClone(moved)
  expect(withNetClasses(again).features.conductors[0]?.impedance.referenceLayerId).toBeNull()
  expect(parseDesign(again).ok).toBe(true)
})

test('a class that is not there, and a reference that is no conductor layer, are refused with the field', () => {
  const moved = moveToClass(makeLineDesign('single'))
  const broken = structuredClone(moved)
  Object.assign(broken.features.conductors[0] ?? {}, { netClassId: 'gone' })
  Object.assign(broken.features.netClasses[0] ?? {}, { referenceLayerId: 'gone' })
  const parsed = parseDesign(broken)
  expect(parsed.ok ? [] : parsed.issues.map(({ path }) => path.join('.'))).toEqual([
    'features.netClasses.0.referenceLayerId',
    'features.conductors.0.netClassId',
  ])
})

test('a document of format 6 has no classes, and keeps what it says', () => {
  const design = makeLineDesign('single')
  const older = structuredClone(design) as unknown as { formatVersion: number; features: Record<string, unknown> }
  older.formatVersion = 6
  delete older.features.netClasses
  for (const conductor of older.features.conductors as { netClassId?: unknown; impedance: Record<string, unknown> }[]) {
    delete conductor.netClassId
    delete conductor.impedance.referenceUnbroken
  }
  expect(liftDesign(older)).toEqual(design)
})
