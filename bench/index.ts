import { readFileSync } from 'node:fs'
import {
  computeTornado,
  type Design,
  evaluate,
  evaluateDraft,
  MAX_BEND_LAYERS,
  parseDesign,
  parseDesignText,
  simulateZoneThickness,
} from '@/lib/engine'
import { findRemedies } from '@/lib/engine/remedies'
import {
  estimateByBasis,
  makeCostBasis,
  makeNester,
  makeRates,
  nestPart,
  type PanelFormat,
  readNestedPart,
} from '@/lib/fabrication'
import type { Polygon } from '@/lib/geometry'
import { applyEdit, type PlanEdit } from '@/lib/plan/edit'
import { hitsAt, snapAt } from '@/lib/plan/pick'
import { measureBundleBytes, measureScreenBytes } from './bundle-size'
import { makeCrowdedPlan } from './crowded-plan'
import { prepareFolding } from './folded-part'
import { LINE_TARGET_MS, prepareLines } from './lines'
import { ROOT } from './root'
import { prepareSheets } from './sheets'
import { makeStackedDesign } from './stacked-design'
import { measure, type Timing } from './timing'

const EVALUATION_TARGET_MS = 3
const REMEDIES_TARGET_MS = 50
/** What a server spends on one evaluation at most. */
const LONGEST_EVALUATION_MS = 5000
/** Of what a screen of the editor waits for. */
const BUNDLE_TARGET_KB = 60
const NESTING_TARGET_MS = 2000
/** Reading, folding and judging a draft whose bend was moved. */
const PLAN_EDIT_TARGET_MS = 100
const FOLD_TARGET_MS = 50
const CLASHES_TARGET_MS = 500

function printLine(text: string): void {
  process.stdout.write(`${text}\n`)
}

function print(label: string, { medianMs, undisturbedMs, processorMs }: Timing, remark: string): void {
  printLine(
    `${label.padEnd(40)} ${medianMs.toFixed(3).padStart(10)} ${undisturbedMs.toFixed(3).padStart(12)} ${processorMs.toFixed(3).padStart(12)}   ${remark}`,
  )
}

/** One series over sizes, each printed with its ratio to the size before. */
function printSeries(sizes: readonly number[], what: string, makeDesign: (size: number) => Design): void {
  let previous: { size: number; timing: Timing } | null = null
  for (const size of sizes) {
    const design = makeDesign(size)
    const timing = measure(() => evaluate(design))
    const growth: string =
      previous === null
        ? ''
        : `${(timing.undisturbedMs / previous.timing.undisturbedMs).toFixed(1)} times the time for ${size / previous.size} times as many`
    print(`${size} ${what}`, timing, growth)
    previous = { size, timing }
  }
}

function readDesign(name: string): Design {
  const parsed = parseDesignText(readFileSync(new URL(`seed/designs/${name}.json`, ROOT), 'utf8'))
  if (!parsed.ok) throw new Error(`${name}: ${JSON.stringify(parsed.issues)}`)
  return parsed.value
}

printLine(`Milliseconds, warm, Node ${process.version}\n`)
printLine(`${''.padEnd(40)} ${'median'.padStart(10)} ${'undisturbed'.padStart(12)} ${'processor'.padStart(12)}`)

for (const name of ['skua-rev-a', 'skua-rev-b', 'pipit-rev-a']) {
  const design = readDesign(name)
  const timing = measure(() => evaluateDraft(design))
  print(
    `a draft of ${name}`,
    timing,
    `${(timing.medianMs / EVALUATION_TARGET_MS).toFixed(2)} of the target of ${EVALUATION_TARGET_MS} ms`,
  )
  print(
    `${name}, as recorded`,
    measure(() => evaluate(design)),
    'with what follows from what',
  )
}

for (const name of ['skua-rev-a', 'skua-rev-b']) {
  // As the editor works: the draft as it came out of the edit is read, then evaluated with its whole checklist.
  const design = readDesign(name)
  const { plan } = design
  const [line] = plan?.bendLines ?? []
  if (plan === null || line === undefined) continue
  let moves = 0
  const timing = measure(() => {
    moves += 1
    // Another place each time, so that nothing is remembered.
    const alongMm = (moves % 400) / 1000
    const edited = applyEdit(plan, { act: 'move', of: { list: 'bendLines', id: line.id }, byMm: [alongMm, 0] })
    if (!edited.ok) throw new Error(edited.reason)
    const parsed = parseDesign({ ...design, plan: edited.plan })
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    return evaluateDraft(parsed.value)
  })
  print(
    `edit of the plan to verdicts, ${name}`,
    timing,
    `${(timing.medianMs / PLAN_EDIT_TARGET_MS).toFixed(2)} of the target of ${PLAN_EDIT_TARGET_MS} ms`,
  )
}

{
  const design = readDesign('skua-rev-b')
  print(
    'tornado of skua-rev-b, hinge',
    measure(() => computeTornado(design, 'hinge', 'l2')),
    'on demand',
  )
}

{
  const plan = makeCrowdedPlan(2000)
  const options = { toleranceMm: 0.5, gridMm: 1 }
  print(
    'pointer on a plan of 2,000 shapes',
    measure(() => [hitsAt(plan, [101.3, 44.7], options), snapAt(plan, [101.3, 44.7], options)]),
    'met and snapped, each time it moves',
  )
  const moved: PlanEdit = { act: 'move', of: { list: 'coverlayOpenings', id: 'c-700' }, byMm: [0.1, 0] }
  print(
    'a step of a drag on it',
    measure(() => applyEdit(plan, moved)),
    '',
  )
}

printLine('')
printSeries([4, 40, 400], 'layers in leaves of seven', (size) => makeStackedDesign(size, { bonded: false }))
printLine('')
printSeries([4, 40, 400], 'layers, one bonded leaf', (size) => makeStackedDesign(size, { bonded: true }))
printLine('')
const skua = readDesign('skua-rev-b')
printSeries([4, 40, 400], 'bends', (size) => ({
  ...skua,
  bends: Array.from({ length: size }, (_, at) => skua.bends.slice(at % 2, (at % 2) + 1))
    .flat()
    .map((bend, at) => ({ ...bend, id: `bend-${at}` })),
}))

// The costliest documents that are read: the bound on layers times bends used up in one bonded leaf, or by many bends.
const [stackedBend] = makeStackedDesign(4, { bonded: true }).bends
if (stackedBend === undefined) throw new Error('a stacked design has no bend')
for (const [layerCount, bendCount] of [
  [500, 1],
  [10, MAX_BEND_LAYERS / 10],
] as const) {
  const largest: Design = {
    ...makeStackedDesign(layerCount, { bonded: true }),
    bends: Array.from({ length: bendCount }, (_, at) => ({ ...stackedBend, id: `bend-${at}` })),
  }
  if (!parseDesign(largest).ok) throw new Error('the costliest document is not read')
  const timing = measure(() => evaluate(largest))
  print(
    `costliest document, ${bendCount} bends through ${layerCount} layers`,
    timing,
    `${(timing.medianMs / LONGEST_EVALUATION_MS).toFixed(2)} of the bound of ${LONGEST_EVALUATION_MS} ms; results ${(JSON.stringify(evaluate(largest)).length / 1e6).toFixed(1)} MB`,
  )
}

printLine('')
for (const [name, bendId] of [
  ['skua-rev-a', 'hinge'],
  ['skua-rev-a-alternative', 'hinge'],
  ['skua-rev-b', 'hinge'],
] as const) {
  const design = readDesign(name)
  const { tried, remedies } = findRemedies(design, bendId)
  const timing = measure(() => findRemedies(design, bendId))
  print(
    `remedies of ${name}, ${bendId}`,
    timing,
    `${(timing.medianMs / REMEDIES_TARGET_MS).toFixed(2)} of the target of ${REMEDIES_TARGET_MS} ms; ${tried.alone} alone, ${tried.inPairs} pairs, ${remedies.length} kept`,
  )
}

printLine('')
/** 18 x 24 in, every turn allowed. */
const PANEL: PanelFormat = {
  id: 'panel',
  name: 'Panel',
  widthMm: 457.2,
  heightMm: 609.6,
  marginLeftMm: 20,
  marginRightMm: 20,
  marginTopMm: 20,
  marginBottomMm: 20,
  spacingMm: 2.5,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}
const makeStar = (vertexCount: number, radiusMm: (index: number) => number): Polygon =>
  Array.from({ length: vertexCount }, (_, index) => {
    const angle = (2 * Math.PI * index) / vertexCount
    return [Math.round(1000 * radiusMm(index) * Math.cos(angle)), Math.round(1000 * radiusMm(index) * Math.sin(angle))]
  })
const toOutline = (name: string): Polygon => {
  const reading = readNestedPart(readDesign(name))
  if (!reading.ok) throw new Error(reading.reason)
  return reading.part.array?.part ?? reading.part.outline
}
for (const [what, outline] of [
  ['skua-rev-a, 19 corners', toOutline('skua-rev-a')],
  ['pipit-rev-a, 8 corners', toOutline('pipit-rev-a')],
  ['lobed outline of 200 corners', makeStar(200, (at) => 35 + 10 * Math.cos((10 * Math.PI * at) / 200))],
  ['spiked outline of 200 corners', makeStar(200, (at) => (at % 2 === 0 ? 35 : 45))],
  ['small lobed outline of 200 corners', makeStar(200, (at) => 8 + 3 * Math.cos((10 * Math.PI * at) / 200))],
] as const) {
  const { count, mixedGridCount } = nestPart({ outline, rollingDirection: null }, PANEL)
  const timing = measure(() => nestPart({ outline, rollingDirection: null }, PANEL))
  print(
    `nesting, ${what}`,
    timing,
    `${(timing.medianMs / NESTING_TARGET_MS).toFixed(2)} of the target of ${NESTING_TARGET_MS} ms; ${count} parts, ${mixedGridCount} by rectangles`,
  )
}

printLine('')
const skuaA = readDesign('skua-rev-a')
const reading = readNestedPart(skuaA)
if (!reading.ok) throw new Error(reading.reason)
const basis = makeCostBasis(reading.part, [PANEL], makeRates(null), makeNester())
print(
  'cost of one construction',
  measure(() => estimateByBasis(skuaA, basis)),
  '',
)
for (const { what, run, remark } of prepareLines()) {
  const timing = measure(run)
  print(
    what,
    timing,
    `${(timing.medianMs / LINE_TARGET_MS).toFixed(2)} of the target of ${LINE_TARGET_MS} ms; ${remark}`,
  )
}
const folding = prepareFolding()
printLine('')
for (const [what, run, targetMs] of [
  ['areas in plan', folding.areas, null],
  ['cut into plates and bands, areas included', folding.cut, FOLD_TARGET_MS],
  ['folded', folding.fold, FOLD_TARGET_MS],
  ['clashes, folded', folding.check, CLASHES_TARGET_MS],
] as const) {
  const timing = measure(run)
  print(
    `${folding.what}: ${what}`,
    timing,
    targetMs === null ? '' : `${(timing.medianMs / targetMs).toFixed(2)} of the target of ${targetMs} ms`,
  )
}

const priced = {
  costOf: (design: Design) => estimateByBasis(design, basis)?.indexPerGoodPart ?? null,
  partsPerPanelOf: (design: Design) => estimateByBasis(design, basis)?.partsPerPanel ?? null,
}
const pricedTiming = measure(() => findRemedies(skuaA, 'hinge', priced))
print(
  'remedies of skua-rev-a, hinge, with cost',
  pricedTiming,
  `${(pricedTiming.medianMs / REMEDIES_TARGET_MS).toFixed(2)} of the target of ${REMEDIES_TARGET_MS} ms`,
)

printLine('')
const [zone] = skua.construction.zones
if (zone === undefined) throw new Error('the design has no zone')
const draws = measure(() => simulateZoneThickness(skua, zone.id, { draws: 100_000, seed: 1 }))
print('100,000 draws of a zone thickness', draws, `${(draws.medianMs / 100).toFixed(2)} of the target of 100 ms`)

printLine('')
const SHEET_ROWS = 5000
const sheets = await prepareSheets(skuaA, SHEET_ROWS)
print('capability against 5,000 rows', measure(sheets.assess), 'all values of skua-rev-a')
print('CSV of 5,000 rows', measure(sheets.readCsv), 'read and checked, row by row')
print('XLSX of 5,000 rows', measure(sheets.readXlsx), 'unpacked, read and checked')

printLine('')
for (const [what, entry, external] of [
  ['engine, without zod', '@/lib/engine', ['zod']],
  ['engine and remedies, without zod', '@/lib/engine/remedies', ['zod']],
  ['engine with zod', '@/lib/engine', []],
] as const) {
  const kilobytes = (await measureBundleBytes(entry, external)) / 1000
  printLine(
    `${`gzip, ${what}`.padEnd(40)} ${kilobytes.toFixed(1).padStart(10)} kB, all of it, most after the page is there`,
  )
}
for (const [what, entry] of [
  ['bends', '@/app/_components/engineering/bends/bends-screen'],
  ['construction', '@/app/_components/engineering/construction/construction-screen'],
] as const) {
  const { all, engine } = await measureScreenBytes(entry)
  printLine(
    `${`gzip, screen of ${what}`.padEnd(40)} ${(all / 1000).toFixed(1).padStart(10)} kB, of it the engine about ${(engine / 1000).toFixed(1)} kB: ${(engine / 1000 / BUNDLE_TARGET_KB).toFixed(2)} of the target of ${BUNDLE_TARGET_KB} kB`,
  )
}
