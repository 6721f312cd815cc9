import { describe, expect, it } from 'vitest'
import { formatReport } from '@/lib/cli/evaluation-report'
import { FILE_UNITS, listLayerTable, makeSheetContents } from '@/lib/drawing'
import { type Design, evaluate } from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import { composeMail } from '@/lib/mail'
import type { PackageContent } from '@/lib/package'
import { makeBends } from '@/lib/package/report/bends'
import { makeConstruction } from '@/lib/package/report/construction'
import { makeFeatures } from '@/lib/package/report/features'
import { makeBrief, makeSummary } from '@/lib/package/report/opening'
import { compareDesigns, type ReviewSnapshot } from '@/lib/review'
import { makeSnapshot } from '../review/snapshot-factory'
import { FIELDS, fieldName, full, type Path, results, withNumber } from './full-design'

/*
 * What somebody typed reads the same at every exit, to the last digit. Each numeric field of a design is set to values that
 * rounding would change; wherever an exit shows the field, it has to show exactly that number.
 */

const AWKWARD = [12.345, 0.0125, 1e-3, 304.8]
/** Stands in no design, and is the same rounded or not: where it appears, the exit shows the field. */
const PROBE = 7919

const snapshot: ReviewSnapshot = { ...makeSnapshot(), design: full }
const content = (design: Design): PackageContent =>
  ({
    snapshot: {
      ...snapshot,
      design,
      evaluation: { results, engineVersion: results.engineVersion, evaluatedAt: '2026-11-28T00:00:00Z' },
    },
  }) as unknown as PackageContent

const EXITS: Readonly<Record<string, (design: Design) => unknown>> = {
  report: (design) => [
    makeSummary(content(design)),
    makeBrief(content(design)),
    makeConstruction(content(design), null),
    makeBends(content(design), null),
    makeFeatures(content(design)),
  ],
  drawing: (design) => makeSheetContents(design, results, FILE_UNITS),
  'layer table': (design) => listLayerTable(design, results.zones, 'um'),
  comparison: (design) => compareDesigns(full, design).map(({ sentence }) => sentence),
  mail: (design) =>
    composeMail({
      kind: 'proposal',
      event: 'made',
      place: {
        projectName: 'Skua',
        revisionLabel: 'A',
        href: 'http://localhost:3000/projects/p/revisions/r/proposals/q',
      },
      title: 'A change',
      by: 'Bram Tolley',
      changes: compareDesigns(full, design).map(({ sentence }) => sentence),
      text: '',
      mayDecide: false,
      wanted: null,
    }).text,
  command: (design) => formatReport(design, results),
}

/** Numbers of a text, as often as they stand in it. */
function countNumbers(exit: unknown): Map<string, number> {
  const counts = new Map<string, number>()
  for (const [found] of JSON.stringify(exit).matchAll(/\d+(\.\d+)?( × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?/g)) {
    counts.set(found, (counts.get(found) ?? 0) + 1)
  }
  return counts
}

/** Fields that an exit may not leave out. */
const SHOWN: Readonly<Record<string, readonly string[]>> = {
  report: [
    'bends.insideRadiusMm',
    'bends.radiusToleranceMm',
    'bends.angleDeg',
    'bends.axisLengthMm',
    'bends.requiredCycles',
    'bends.distanceToRigidMm',
    'bends.flexTest.cyclesPerMinute',
    'bends.flexTest.travelMm',
    'bends.flexTest.mandrelDiameterMm',
    'brief.operatingMinDegC',
    'brief.operatingMaxDegC',
    'brief.quantityPerYear',
    'brief.lifeSurvivalPct',
    'brief.lifeWeibullSlope',
    'construction.layers.thicknessUm',
    'construction.layers.tolerancePlusUm',
    'construction.layers.plating.thicknessUm',
    'construction.zones.statedThicknessUm',
    'construction.zones.connectorWindow.minUm',
    'construction.zones.connectorWindow.maxUm',
    'features.conductors.widthMm',
    'features.conductors.spaceMm',
    'features.holes.drillMm',
    'features.copperToOutlineMm',
    'features.slits.widthMm',
    'features.widthSteps.taperLengthMm',
  ],
  drawing: [
    'bends.insideRadiusMm',
    'bends.radiusToleranceMm',
    'bends.angleDeg',
    'bends.axisLengthMm',
    'bends.requiredCycles',
    'bends.distanceToRigidMm',
    'bends.flexTest.cyclesPerMinute',
    'bends.flexTest.travelMm',
    'bends.flexTest.mandrelDiameterMm',
    'brief.operatingMinDegC',
    'brief.operatingMaxDegC',
    'construction.layers.thicknessUm',
    'construction.layers.tolerancePlusUm',
    'construction.layers.toleranceMinusUm',
    'construction.layers.plating.thicknessUm',
    'construction.zones.lengthMm',
    'construction.zones.widthMm',
    'construction.zones.statedThicknessUm',
    'construction.zones.connectorWindow.minUm',
    'features.holes.drillMm',
    'features.holes.landMm',
    'features.copperToOutlineMm',
    'features.conductors.widthMm',
    'features.conductors.currentAmp',
    'features.slits.widthMm',
  ],
  'layer table': ['construction.layers.thicknessUm', 'construction.layers.tolerancePlusUm'],
}

describe.each(Object.keys(EXITS))('%s', (name) => {
  const write = EXITS[name] ?? (() => '')
  const plain = countNumbers(write(full))
  const shows = (path: Path, value: number) => {
    const digits = digitsAsEntered(value)
    return (countNumbers(write(withNumber(path, value))).get(digits) ?? 0) > (plain.get(digits) ?? 0)
  }
  const shown = FIELDS.filter((path) => shows(path, PROBE))

  it('shows the fields that it is to show', () => {
    const names = new Set(shown.map(fieldName))
    expect((SHOWN[name] ?? []).filter((field) => !names.has(field))).toEqual([])
  })

  it.each(AWKWARD)('shows %d as it was typed, in every field', (value) => {
    expect(shown.filter((path) => !shows(path, value)).map(fieldName)).toEqual([])
  })
})

it('a comparison shows every field of the design', () => {
  const missing = FIELDS.filter((path) => {
    const digits = digitsAsEntered(12.345)
    const sentences = compareDesigns(full, withNumber(path, 12.345)).map(({ sentence }) => sentence)
    return !sentences.some((sentence) => sentence.includes(digits))
  })
  expect(missing.map((path) => path.join('.'))).toEqual([])
  expect(FIELDS.length).toBeGreaterThan(60)
})

it('what the engine says of a stated value has its digits', () => {
  for (const value of [12.345, 304.8]) {
    const said = JSON.stringify(evaluate(withNumber(['bends', 0, 'distanceToRigidMm'], value)).items)
    expect(said).toContain(`${value} mm`)
  }
  for (const value of AWKWARD) {
    const said = JSON.stringify(evaluate(withNumber(['features', 'copperToOutlineMm'], value)).items)
    expect(said).toContain(`${value} mm`)
  }
})
