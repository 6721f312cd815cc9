import type { Content } from 'pdfmake/interfaces'
import { listStateFigures, listStateRows } from '@/lib/drawing'
import {
  BEND_FIELDS,
  BEND_STATE_KEYS,
  type Bend,
  type BendResult,
  callByName,
  describeCounted,
  describeOwnTests,
  type FieldNode,
  formatComputedReading,
  getChoiceWord,
  LIFE_CAUTION_SHORT,
  RANGE_OVER,
  readBendLife,
  readDamage,
} from '@/lib/engine'
import { asComputed, asEntered, digitsAsComputed } from '@/lib/engine/units'
import { formatFieldValue } from '@/lib/review'
import type { PackageContent } from '../content'
import type { Pictures } from './pictures'
import {
  empty,
  keepTogether,
  level1,
  level2,
  makeEmptyPart,
  makeFacts,
  makeTable,
  PICTURE_SCALE,
  showPicture,
  TEXT_WIDTH_PT,
} from './style'
import { formatStated, formatText, formatYesNo } from './words'

const PLOT_GAP_PT = 12

export function makeBends({ snapshot }: PackageContent, pictures: Pictures | null): Content[] {
  const { design, evaluation } = snapshot
  if (design.bends.length === 0) return [makeEmptyPart(level1('4  Bends'), 'The design has no bends.')]
  const parts: Content[] = []
  for (const [index, bend] of design.bends.entries()) {
    const result = evaluation?.results.bends.find(({ bendId }) => bendId === bend.id) ?? null
    const zone = design.construction.zones.find(({ id }) => id === bend.zoneId)
    parts.push(...makeBend(bend, zone?.name ?? bend.zoneId, result, pictures, index === 0))
  }
  const damage = evaluation?.results.damage ?? []
  if (damage.some(({ contributions }) => contributions.length > 1)) {
    parts.push(
      makeTable(
        [
          { label: 'Conductor layer', width: '*' },
          { label: 'Bends', width: '*' },
          { label: 'Sum', width: 70, isNumeric: true },
        ],
        damage.map(({ conductorLayerId, contributions, ...sums }) => [
          design.construction.layers.find(({ id }) => id === conductorLayerId)?.name ?? conductorLayerId,
          contributions
            .map(
              ({ bendId, damage: used }) =>
                `${design.bends.find(({ id }) => id === bendId)?.name ?? bendId} ${asComputed(used, 'damageFraction')}`,
            )
            .join(', '),
          formatComputedReading(readDamage(sums), 'damageFraction'),
        ]),
        level2('Bends that share conductors: sum of life used (Miner)'),
      ),
    )
  }
  return parts
}

function makeBend(
  bend: Bend,
  zoneName: string,
  result: BendResult | null,
  pictures: Pictures | null,
  isFirst: boolean,
): Content[] {
  const heading = isFirst ? level1(`4  Bends: ${bend.name}`) : level2(callByName('Bend', bend.name))
  const callOut: [string, Content][] = [
    [BEND_FIELDS.zoneId.label, zoneName],
    [
      'Call-out',
      `inside radius ${formatStated(bend.insideRadiusMm, 'mm')} ± ${formatStated(bend.radiusToleranceMm, 'mm')}, angle ` +
        `${formatStated(bend.angleDeg, 'deg')}, ${getChoiceWord(BEND_FIELDS.insideFace, bend.insideFace)} inside, length along the axis ${formatStated(bend.axisLengthMm, 'mm')}`,
    ],
    [
      BEND_FIELDS.use.label,
      bend.use === 'dynamic'
        ? `dynamic, ${getChoiceWord(BEND_FIELDS.motion, bend.motion)}, ${formatStated(bend.requiredCycles, 'cycles')} required`
        : getChoiceWord(BEND_FIELDS.use, bend.use),
    ],
    [
      'Radius held by; strain relief; tried on a model',
      `${getChoiceWord(BEND_FIELDS.radiusHeldBy, bend.radiusHeldBy)}; ${formatYesNo(bend.strainReliefAtTransition)}; ${formatYesNo(bend.triedOnModel)}`,
    ],
  ]
  if (bend.use === 'dynamic') callOut.push([BEND_FIELDS.flexTest.label, describeFlexTest(bend)])
  if (bend.distanceToRigidMm !== null)
    callOut.push([BEND_FIELDS.distanceToRigidMm.label, formatStated(bend.distanceToRigidMm, 'mm')])
  callOut.push(...listFurtherFields(bend))
  if (bend.note.trim() !== '') callOut.push([BEND_FIELDS.note.label, bend.note])
  if (result === null) {
    return [makeFacts(callOut, heading), empty('No results are recorded for this bend.')]
  }
  const parts: Content[] = [keepTogether([makeFacts([...callOut, ...listNumbers(result)], heading)])]
  if (result.conductors.length > 0) parts.push(makeStrains(result))
  parts.push(...makeStates(result))
  if (pictures !== null) parts.push(...makePlots(bend, pictures))
  const counted = describeCounted(result)
  if (pictures !== null && counted !== null && result.lifeCurve.length > 0) {
    parts.push({
      text: `Life over inside radius: ${counted.charAt(0).toLowerCase()}${counted.slice(1)}.`,
      margin: [0, 1, 0, 2],
    })
  }
  for (const { label } of result.missing) parts.push({ text: `Not computed: ${label} missing.`, margin: [0, 1, 0, 1] })
  for (const sentence of result.disagreement) parts.push({ text: sentence, margin: [0, 1, 0, 2] })
  for (const { because, decidedBy } of result.modelLimits) {
    parts.push({ text: `Cannot tell: ${because}; ${decidedBy}.`, style: 'caution', margin: [0, 1, 0, 2] })
  }
  for (const caution of result.cautions) parts.push({ text: caution, style: 'caution', margin: [0, 1, 0, 2] })
  return parts
}

/** Fields that the lines above put together; any other field of the dictionary has a line of its own. */
const IN_CALL_OUT: ReadonlySet<string> = new Set<keyof Bend>([
  'id',
  'name',
  'zoneId',
  'insideRadiusMm',
  'radiusToleranceMm',
  'angleDeg',
  'insideFace',
  'axisLengthMm',
  'use',
  'motion',
  'requiredCycles',
  'radiusHeldBy',
  'strainReliefAtTransition',
  'triedOnModel',
  'distanceToRigidMm',
  'flexTest',
  'note',
])

const WHERE_STATED: ReadonlySet<string> = new Set(BEND_STATE_KEYS)

function listFurtherFields(bend: Bend): [string, Content][] {
  return (Object.entries(BEND_FIELDS) as [keyof Bend, FieldNode][])
    .filter(([key]) => !IN_CALL_OUT.has(key) && (bend[key] !== null || !WHERE_STATED.has(key)))
    .map(([key, words]) => [words.label, formatFieldValue(bend[key], words)])
}

function describeFlexTest({ flexTest }: Bend): string {
  const { cyclesPerMinute, travelMm, mandrelDiameterMm, pointsOfApplication } = flexTest
  return [
    formatStated(cyclesPerMinute, 'cycles-per-minute'),
    `travel ${formatStated(travelMm, 'mm')}`,
    `mandrel diameter ${formatStated(mandrelDiameterMm, 'mm')}`,
    `points of application: ${formatText(pointsOfApplication)}`,
  ].join('; ')
}

function listNumbers(result: BendResult): [string, Content][] {
  const numbers: [string, Content][] = [['Section thickness', asComputed(result.sectionThicknessUm, 'thicknessUm')]]
  const axes = result.leaves
    .map(
      ({ formedAxisDepthUm, neutralAxisDepthUm }) =>
        `${asComputed(formedAxisDepthUm, 'thicknessUm')} (${asComputed(neutralAxisDepthUm, 'thicknessUm')} while nothing yields)`,
    )
    .join(', ')
  if (axes !== '') numbers.push(['Neutral axis from the inside face', axes])
  if (result.peakStrainPct !== null) {
    const range = result.peakRangePct
    const span =
      range === null
        ? ''
        : ` (${asComputed(range.low, 'strainPct')} to ${asComputed(range.high, 'strainPct')} ${RANGE_OVER.both})`
    const least = result.allowableRangePct
    const leastAllowed =
      least === null || least.low === least.high
        ? ''
        : ` (${asComputed(least.low, 'strainPct')} to ${asComputed(least.high, 'strainPct')} ${RANGE_OVER.constants})`
    const allowed =
      result.allowablePct === null ? '' : `, allowable ${asComputed(result.allowablePct, 'strainPct')}${leastAllowed}`
    numbers.push(['Copper strain', `${asComputed(result.peakStrainPct, 'strainPct')}${span}${allowed}`])
    if (result.cycleRangePct !== null && result.firstBendStrainPct !== null) {
      numbers.push([
        'Strain range of a cycle',
        `${asComputed(result.cycleRangePct, 'strainPct')}; ${asComputed(result.firstBendStrainPct, 'strainPct')} in the first bend`,
      ])
    }
    const governing = result.conductors.find(({ layerId }) => layerId === result.governingLayerId)
    if (governing?.governingMaterial != null) {
      numbers.push(['Governing copper', `${governing.name}, ${governing.governingMaterial.name}`])
    }
  }
  const radii = [
    result.minRadiusByStrainMm === null ? null : `${asComputed(result.minRadiusByStrainMm, 'minRadiusMm')} by strain`,
    result.minRadiusByLifeMm === null ? null : `${asComputed(result.minRadiusByLifeMm, 'minRadiusMm')} by life`,
    result.handbook.minRadiusMm === null
      ? null
      : `${asComputed(result.handbook.minRadiusMm, 'minRadiusMm')} by the handbook`,
    result.ratio.minRadiusMm === null
      ? null
      : `${asComputed(result.ratio.minRadiusMm, 'minRadiusMm')} by ratio (${result.ratio.tableName})`,
  ].filter((text) => text !== null)
  if (radii.length > 0) numbers.push(['Minimum inside radius', radii.join('; ')])
  numbers.push([
    'Radius to thickness',
    `${asComputed(result.ratio.actual, 'radiusRatio')}${result.ratio.required === null ? '' : `, table asks for ${asEntered(result.ratio.required, 'ratio')}`}; surface strain ${asComputed(result.ratio.surfaceStrainPct, 'surfaceStrainPct')}`,
  ])
  if (result.handbook.warning !== null) numbers.push(['Handbook formula', result.handbook.warning])
  if (result.medianLifeCycles !== null && result.survivalLifeCycles !== null) {
    numbers.push([
      'Life',
      `median ${formatComputedReading(readBendLife(result, 'median'), 'lifeCycles')}; ${asEntered(result.survivalPct, 'pct')} survive ${formatComputedReading(readBendLife(result), 'lifeCycles')} (${LIFE_CAUTION_SHORT})`,
    ])
    const tests = describeOwnTests(result)
    if (tests !== null) numbers.push(['Life rests on', tests])
  }
  if (result.springback !== null) {
    numbers.push([
      'After release (springback)',
      result.springback.relaxedRadiusMm === null
        ? 'springs back flat'
        : `radius ${asComputed(result.springback.relaxedRadiusMm, 'minRadiusMm')}, angle ${asComputed(result.springback.relaxedAngleDeg, 'angleDeg')}`,
    ])
  }
  if (result.momentNmm !== null) {
    const force = result.holdingForceN === null ? '' : `; holding force ${asComputed(result.holdingForceN, 'forceN')}`
    numbers.push(['Moment to bend', `${asComputed(result.momentNmm, 'momentNmm')}${force}`])
  }
  numbers.push(...listStateFigures(result))
  numbers.push(['Developed length', asComputed(result.developedLengthMm, 'developedLengthMm')])
  if (result.leaves.length > 1)
    numbers.push(['Difference between leaves', asComputed(result.leafLengthDifferenceMm, 'developedLengthMm')])
  return numbers
}

function makeStrains(result: BendResult): Content {
  return makeTable(
    [
      { label: 'Conductor layer', width: '*' },
      { label: 'Depth, µm', width: 74, isNumeric: true },
      { label: 'Inner face', width: 58, isNumeric: true },
      { label: 'Outer face', width: 58, isNumeric: true },
      { label: 'Over tolerances', width: 86, isNumeric: true },
      { label: 'Allowable', width: 52, isNumeric: true },
      { label: 'Past yield', width: 48 },
    ],
    result.conductors.map((conductor) => [
      conductor.name,
      `${digitsAsComputed(conductor.innerDepthUm, 'thicknessUm')} to ${digitsAsComputed(conductor.outerDepthUm, 'thicknessUm')}`,
      asComputed(conductor.innerStrainPct, 'strainPct'),
      asComputed(conductor.outerStrainPct, 'strainPct'),
      `${digitsAsComputed(conductor.peakRangePct.low, 'strainPct')} to ${asComputed(conductor.peakRangePct.high, 'strainPct')}`,
      conductor.allowablePct === null ? '–' : asComputed(conductor.allowablePct, 'strainPct'),
      conductor.pastYield ? 'yes' : 'no',
    ]),
  )
}

/** What strain is made of, where a second state or a load is stated. */
function makeStates(result: BendResult): Content[] {
  const table = listStateRows(result)
  if (table === null) return []
  return [
    makeTable(
      table.columns.map(({ label, numeric }, at) => ({ label, width: at === 0 ? '*' : 'auto', isNumeric: numeric })),
      table.rows.map((row) => table.columns.map(({ key }) => row[key] ?? '')),
      level2(table.caption),
    ),
  ]
}

/** Two plots side by side, a third below them; one alone takes the left half. */
function makePlots(bend: Bend, pictures: Pictures): Content[] {
  const width = (TEXT_WIDTH_PT - PLOT_GAP_PT) / 2
  const drawn = Math.round(width * PICTURE_SCALE)
  const plots = [
    pictures.drawStrain(bend, drawn),
    pictures.drawStates(bend, drawn),
    pictures.drawLife(bend, drawn),
  ].filter((picture) => picture !== null)
  const rows = [plots.slice(0, 2), plots.slice(2)].filter((row) => row.length > 0)
  return rows.map(
    (row): Content => ({
      columns: row.map((picture) => ({
        stack: [{ text: picture.title, style: 'label' }, showPicture(picture, width)],
        width,
      })),
      columnGap: PLOT_GAP_PT,
      unbreakable: true,
      margin: [0, 4, 0, 4],
    }),
  )
}
