import type { Content } from 'pdfmake/interfaces'
import { FEATURE_FIELDS, type Features, type FieldNode, getFieldInText } from '@/lib/engine'
import { asComputed } from '@/lib/engine/units'
import { FEATURE_LISTS, formatFieldValue } from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, level2, makeEmptyPart, makeTable } from './style'
import { formatStated } from './words'

/** Dimensions as typed in or measured, one line per feature, and what the conductors carry. */
export function makeFeatures({ snapshot }: PackageContent): Content[] {
  const { features } = snapshot.design
  const parts: Content[] = []
  const rows: Content[][] = FEATURE_LISTS.flatMap((key) =>
    features[key].map((feature): Content[] => [
      FEATURE_FIELDS[key].label,
      feature.name,
      Object.entries(feature)
        .filter(([field]) => field !== 'id' && field !== 'name')
        .map(([field, value]) => {
          const words: FieldNode = (FEATURE_FIELDS[key].entry as Readonly<Record<string, FieldNode>>)[field] ?? {
            label: field,
          }
          return `${getFieldInText(words)} ${formatFieldValue(nameLayer(snapshot.design, field, value), words)}`
        })

        .join('; ')
        .replaceAll('nearest bend bend ', 'nearest bend '),
    ]),
  )
  const { routing } = features
  const observed = Object.entries(routing).map(
    ([field, value]) =>
      `${getFieldInText(FEATURE_FIELDS.routing.fields[field as keyof Features['routing']])} ${formatFieldValue(value, null)}`,
  )
  rows.push([
    'Whole part',
    getFieldInText(FEATURE_FIELDS.copperToOutlineMm),
    formatStated(features.copperToOutlineMm, 'mm'),
  ])
  rows.push(['Whole part', 'routing', observed.join('; ')])
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

/** Ids of layers and bends mean nothing on paper: their names do. */
function nameLayer(design: PackageContent['snapshot']['design'], field: string, value: unknown): unknown {
  if (field === 'layerId') return design.construction.layers.find(({ id }) => id === value)?.name ?? value
  return JSON.parse(JSON.stringify(value), (key, inner: unknown) =>
    key === 'bendId' ? (design.bends.find(({ id }) => id === inner)?.name ?? inner) : inner,
  )
}
