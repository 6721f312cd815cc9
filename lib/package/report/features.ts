import type { Content } from 'pdfmake/interfaces'
import { FEATURE_FIELDS, type Features, type FieldNode } from '@/lib/engine'
import { asComputed } from '@/lib/engine/units'
import { FEATURE_LISTS, formatFieldValue } from '@/lib/review'
import type { PackageContent } from '../content'
import { describeRecord } from './records'
import { level1, level2, makeEmptyPart, makeTable } from './style'

/** Dimensions as typed in or measured, one line per feature, and what the conductors carry. */
export function makeFeatures({ snapshot }: PackageContent): Content[] {
  const { features } = snapshot.design
  const parts: Content[] = []
  const rows: Content[][] = FEATURE_LISTS.flatMap((key) =>
    features[key].map((feature): Content[] => [
      FEATURE_FIELDS[key].label,
      feature.name,
      describeRecord(snapshot.design, feature, FEATURE_FIELDS[key].entry, ['name']),
    ]),
  )
  const wholePart: Readonly<Record<string, unknown>> = features
  for (const [key, words] of Object.entries(FEATURE_FIELDS) as [string, FieldNode][]) {
    if (words.entry !== undefined) continue
    const value = wholePart[key] ?? null
    rows.push([
      'Whole part',
      words.label,
      words.fields === undefined || value === null
        ? formatFieldValue(key === 'none' ? nameMarkedLists(features) : value, words)
        : describeRecord(snapshot.design, value, words.fields),
    ])
  }
  parts.push(
    makeTable(
      [
        { label: 'Kind', width: 78 },
        { label: 'Name', width: 110 },
        { label: 'Dimensions', width: '*' },
      ],
      rows,
      level1('5  Features'),
    ),
  )
  const conductors = snapshot.evaluation?.results.conductors ?? []
  parts.push(
    conductors.length === 0
      ? makeEmptyPart(level2('Conductors, computed'), 'No conductors entered.')
      : makeTable(
          [
            { label: 'Conductor', width: '*' },
            { label: 'Finished copper', width: 56, isNumeric: true },
            { label: 'Resistance', width: 60, isNumeric: true },
            { label: 'Drop', width: 52, isNumeric: true },
            { label: 'Rise', width: 46, isNumeric: true },
            { label: 'Capacity', width: 52, isNumeric: true },
            { label: 'Lightest foil', width: 56, isNumeric: true },
          ],
          conductors.map((conductor) => {
            return [
              conductor.name,
              asComputed(conductor.finishedThicknessUm, 'thicknessUm'),
              asComputed(conductor.resistanceOhm, 'resistanceOhm'),
              asComputed(conductor.dropVolt, 'dropVolt'),
              asComputed(conductor.riseDegC, 'riseDegC'),
              asComputed(conductor.capacityAmp, 'currentAmp'),
              asComputed(conductor.lightestFoilUm, 'thicknessUm'),
            ]
          }),
          level2('Conductors, computed'),
        ),
  )
  const cautions = new Set(conductors.flatMap((conductor) => conductor.cautions))
  for (const caution of cautions) parts.push({ text: caution, style: 'caution', margin: [0, 1, 0, 2] })
  return parts
}

/** Lists that somebody marked as having none of their kind; what crosses bends is no list of its own. */
function nameMarkedLists({ none }: Features): string[] {
  const words: Readonly<Record<string, FieldNode>> = FEATURE_FIELDS
  const others: Readonly<Record<string, string>> = {
    bends: 'bends',
    crossings: FEATURE_FIELDS.conductors.entry.crossings.label,
  }
  return none.map((list) => words[list]?.label ?? others[list] ?? list)
}
