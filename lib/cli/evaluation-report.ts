import type {
  BendResult,
  ContactResult,
  Design,
  Evaluation,
  ItemBasis,
  ItemResult,
  QuantityRange,
  ZoneResult,
} from '@/lib/engine'
import { CAUTIONS, findMaterial, ITEM_BASES, LIFE_CAUTION_SHORT, tallyVerdicts } from '@/lib/engine'
import { findItem, formatValue, type ItemVerdict, SECTIONS } from '@/lib/engine/catalogue'
import { type Column, formatTable, wrapText } from './text-table'

const WIDTH = 118
const left = (title: string): Column => ({ title, align: 'left' })
const right = (title: string): Column => ({ title, align: 'right' })

const VERDICT_WORDS: Record<ItemVerdict, string> = {
  fails: 'FAILS',
  'cannot-tell': 'CANNOT TELL',
  'thin-margin': 'thin margin',
  'not-computed': 'not computed',
  'needs-judgment': 'to be judged',
  meets: 'meets',
  'not-applicable': 'not applicable',
}
const VERDICT_ORDER = Object.keys(VERDICT_WORDS) as ItemVerdict[]

const SECTION_TITLES = {
  materials: 'Materials',
  geometry: 'Geometry',
  fabrication: 'Fabrication communication',
} as const

/** Did every computed item hold? Items that wait for a person's judgment do not count; an input that is missing does. */
export function isAllMet(evaluation: Evaluation): boolean {
  return evaluation.items.every(({ verdict }) => ['meets', 'not-applicable', 'needs-judgment'].includes(verdict))
}

/** The whole evaluation as text, as a person would read it. */
export function formatReport(design: Design, evaluation: Evaluation): string {
  const { brief } = design
  const lines = [
    evaluation.designName,
    // The label is the revision's own, which a design file does not know: what the brief once held may be another's.
    [brief.partNumber, `engine ${evaluation.engineVersion}`].filter((part) => part !== '').join(', '),
    ...formatSummary(evaluation),
    ...heading('Zones'),
    ...formatZones(evaluation.zones),
    ...evaluation.zones.flatMap((zone) => formatLayers(design, zone)),
    ...(evaluation.bends.length === 0 ? [] : heading('Bends')),
    ...evaluation.bends.flatMap(formatBend),
    ...formatDamage(design, evaluation),
    ...formatConductors(evaluation),
    ...SECTIONS.flatMap((section) => formatItems(section, evaluation.items)),
    ...heading('Cautions'),
    ...CAUTIONS.flatMap((caution) => wrapText(caution, WIDTH, '')),
  ]
  return `${lines.join('\n')}\n`
}

function heading(title: string): string[] {
  return ['', title, '='.repeat(title.length)]
}

const BASIS_WORDS: Record<ItemBasis, string> = { computed: 'computed', stated: 'stated', judgment: 'judged' }

/** A typed yes or no is never counted with what was calculated. */
function formatSummary({ items }: Evaluation): string[] {
  const tally = tallyVerdicts(items)
  return [
    `${items.length} items`,
    ...ITEM_BASES.flatMap((basis) => {
      const counts = VERDICT_ORDER.flatMap((verdict) => {
        const count = tally[basis][verdict] ?? 0
        return count === 0 ? [] : [`${count} ${VERDICT_WORDS[verdict]}`]
      })
      return counts.length === 0 ? [] : [`  ${BASIS_WORDS[basis].padEnd(8)}  ${counts.join(', ')}`]
    }),
  ]
}

const fixed = (value: number, digits: number): string => value.toFixed(digits)
const range = ({ low, high }: QuantityRange, digits: number): string =>
  `${fixed(low, digits)} .. ${fixed(high, digits)}`
const orDash = (value: number | null, digits: number): string => (value === null ? '-' : fixed(value, digits))
const significant = (value: number | null): string => (value === null ? '-' : formatValue(value))

function formatZones(zones: readonly ZoneResult[]): string[] {
  return formatTable(
    [
      left('zone'),
      left('kind'),
      right('layers'),
      right('thickness um'),
      right('worst case um'),
      right('root sum square um'),
    ],
    zones.flatMap((zone) => [
      [
        zone.name,
        zone.kind,
        String(zone.layers.length),
        fixed(zone.thicknessUm, 1),
        range(zone.worstCaseUm, 1),
        range(zone.rootSumSquareUm, 1),
      ],
      ...(zone.contact === null ? [] : [formatContact(zone.contact)]),
    ]),
  )
}

function formatContact({ thicknessUm, worstCaseUm, missing }: ContactResult): string[] {
  return missing.length > 0
    ? ['  over its contacts', '', '', 'not computed', '', '']
    : ['  over its contacts', '', '', fixed(thicknessUm, 1), range(worstCaseUm, 1), '']
}

function formatLayers(design: Design, zone: ZoneResult): string[] {
  const table = formatTable(
    [
      left('layer'),
      left('kind'),
      left('material'),
      right('bought um'),
      right('plating um'),
      right('finished um'),
      right('range um'),
      right('coverage'),
      right('variance %'),
    ],
    zone.layers.map((layer) => [
      layer.name,
      layer.kind,
      layer.materialId === null ? '-' : (findMaterial(design, layer.materialId)?.name ?? layer.materialId),
      fixed(layer.asBoughtUm, 1),
      layer.copper === null ? '' : fixed(layer.copper.platingUm, 1),
      fixed(layer.nominalUm, 1),
      range({ low: layer.minUm, high: layer.maxUm }, 1),
      layer.coverageFraction === null ? '' : fixed(layer.coverageFraction, 2),
      fixed(layer.varianceShareFraction * 100, 1),
    ]),
  )
  const notes = [
    ...zone.encapsulation
      .filter((outcome) => outcome.kind !== 'decided' || outcome.verdict !== 'meets')
      .map(({ summary }) => summary),
    ...zone.defaultsUsed.map((note) => `Default used. ${note}.`),
  ]
  return ['', `${zone.name}, from the top face down`, ...table, ...notes.flatMap((note) => wrapText(note, WIDTH, '  '))]
}

function formatBend(bend: BendResult): string[] {
  const { handbook, ratio } = bend
  const facts: [string, string][] = [
    ['use', bend.use ?? 'not stated'],
    ['section thickness', `${fixed(bend.sectionThicknessUm, 1)} um`],
    [
      'neutral axis, from the inside face',
      bend.leaves
        .map(
          (leaf) =>
            `${fixed(leaf.formedAxisDepthUm, 1)} um (${fixed(leaf.neutralAxisDepthUm, 1)} um while nothing yields)`,
        )
        .join(', ') || '-',
    ],
    [
      'copper strain',
      bend.peakStrainPct === null
        ? '-'
        : `${fixed(bend.peakStrainPct, 4)} %, ${bend.peakRangePct === null ? '' : `${range(bend.peakRangePct, 4)} % over tolerances`}`,
    ],
    ['strain in the first bend', bend.firstBendStrainPct === null ? '-' : `${fixed(bend.firstBendStrainPct, 4)} %`],
    ['strain range of a cycle', bend.cycleRangePct === null ? '-' : `${fixed(bend.cycleRangePct, 4)} %`],
    ['allowable', bend.allowablePct === null ? '-' : `${fixed(bend.allowablePct, 4)} %`],
    ['least radius by strain', bend.minRadiusByStrainMm === null ? '-' : `${fixed(bend.minRadiusByStrainMm, 3)} mm`],
    [
      'least radius by handbook',
      handbook.minRadiusMm === null
        ? '-'
        : `${fixed(handbook.minRadiusMm, 3)} mm  (${handbook.formula} at ${formatValue(handbook.deformationPct ?? 0)} %)`,
    ],
    [
      'least radius by ratio',
      `${ratio.minRadiusMm === null ? '-' : `${fixed(ratio.minRadiusMm, 3)} mm`}  (ratio ${fixed(ratio.actual, 1)}, ${ratio.required === null ? 'none stated' : `asked ${formatValue(ratio.required)}`}; ${ratio.tableName})`,
    ],
  ]
  if (bend.survivalLifeCycles !== null) {
    facts.push(
      ['required life', bend.requiredCycles === null ? 'not stated' : `${formatValue(bend.requiredCycles)} cycles`],
      ['median life', `${significant(bend.medianLifeCycles)} cycles (${LIFE_CAUTION_SHORT})`],
      [
        `life at ${formatValue(bend.survivalPct)} % survival`,
        `${formatValue(bend.survivalLifeCycles)} cycles${bend.survivalLifeRangeCycles === null ? '' : `, ${formatValue(bend.survivalLifeRangeCycles.low)} .. ${formatValue(bend.survivalLifeRangeCycles.high)} over tolerances`} (${LIFE_CAUTION_SHORT})`,
      ],
    )
  }
  facts.push(
    [
      'moment; holding force',
      `${orDash(bend.momentNmm, 2)} N mm; ${bend.holdingForceN === null ? '-' : `${fixed(bend.holdingForceN, 2)} N`}`,
    ],
    [
      'let go, it keeps',
      bend.springback === null
        ? '-'
        : bend.springback.relaxedRadiusMm === null
          ? 'nothing: it springs back flat'
          : `${fixed(bend.springback.relaxedAngleDeg, 1)} deg at ${fixed(bend.springback.relaxedRadiusMm, 2)} mm`,
    ],
    [
      'developed length',
      `${fixed(bend.developedLengthMm, 3)} mm${bend.leaves.length > 1 ? `; leaves differ by ${fixed(bend.leafLengthDifferenceMm, 3)} mm` : ''}`,
    ],
  )
  const labelWidth = Math.max(...facts.map(([label]) => label.length))
  return [
    '',
    bend.name,
    ...facts.map(([label, value]) => `  ${label.padEnd(labelWidth)}  ${value}`.trimEnd()),
    ...formatTable(
      [
        left('conductor layer'),
        right('inner face %'),
        right('outer face %'),
        right('range of peak %'),
        right('allowable %'),
        right('yield %'),
        right(`life cycles, ${LIFE_CAUTION_SHORT}`),
      ],
      bend.conductors.map((conductor) => [
        conductor.name,
        fixed(conductor.innerStrainPct, 4),
        fixed(conductor.outerStrainPct, 4),
        range(conductor.peakRangePct, 4),
        orDash(conductor.allowablePct, 4),
        fixed(conductor.yieldStrainPct, 4),
        significant(conductor.survivalLifeCycles),
      ]),
    ).map((line) => `  ${line}`),
    ...bend.missing.map(({ label }) => `  Missing: ${label}`),
    ...bend.disagreement.flatMap((sentence) =>
      wrapText(`  ${sentence}`, WIDTH - 2, '    ').map((line) => `  ${line.trimStart()}`),
    ),
    ...bend.cautions.flatMap((sentence) => wrapText(`Caution: ${sentence}`, WIDTH - 2, '').map((line) => `  ${line}`)),
  ]
}

function formatDamage(design: Design, { damage, bends }: Evaluation): string[] {
  if (!damage.some(({ contributions }) => contributions.length > 1)) return []
  const layerNames = new Map(design.construction.layers.map(({ id, name }) => [id, name]))
  const bendNames = new Map(bends.map(({ bendId, name }) => [bendId, name]))
  return [
    ...heading('Life used up by all bends together'),
    ...formatTable(
      [left('conductor layer'), right('share'), left('from')],
      damage.map(({ conductorLayerId, damageSum, contributions }) => [
        layerNames.get(conductorLayerId) ?? conductorLayerId,
        formatValue(damageSum),
        contributions
          .map(({ bendId, damage: share }) => `${bendNames.get(bendId) ?? bendId} ${formatValue(share)}`)
          .join(', '),
      ]),
    ),
  ]
}

function formatConductors({ conductors }: Evaluation): string[] {
  if (conductors.length === 0) return []
  return [
    ...heading('Conductors'),
    ...formatTable(
      [
        left('conductor'),
        right('copper um'),
        right('at degC'),
        right('ohm'),
        right('drop V'),
        right('rise degC'),
        right('carries A'),
        right('lightest foil um'),
      ],
      conductors.map((conductor) => [
        conductor.name,
        fixed(conductor.finishedThicknessUm, 1),
        orDash(conductor.temperatureDegC, 1),
        significant(conductor.resistanceOhm),
        significant(conductor.dropVolt),
        significant(conductor.riseDegC),
        significant(conductor.capacityAmp),
        orDash(conductor.lightestFoilUm, 1),
      ]),
    ),
  ]
}

/** Items of one section, those that deserve attention first; the inapplicable ones are only counted. */
function formatItems(section: (typeof SECTIONS)[number], items: readonly ItemResult[]): string[] {
  const ofSection = items.filter(({ itemId }) => findItem(itemId)?.section === section)
  const shown = VERDICT_ORDER.filter((verdict) => verdict !== 'not-applicable').flatMap((verdict) =>
    ofSection.filter((item) => item.verdict === verdict),
  )
  const idWidth = Math.max(0, ...shown.map(({ itemId }) => itemId.length))
  const verdictWidth = Math.max(...VERDICT_ORDER.map((verdict) => VERDICT_WORDS[verdict].length))
  const indent = ' '.repeat(verdictWidth + idWidth + 4)
  const skipped = ofSection.length - shown.length
  return [
    ...heading(SECTION_TITLES[section]),
    ...shown.flatMap(({ itemId, verdict, headline, basis }) =>
      wrapText(basis === 'stated' ? `Stated: ${headline}` : headline, WIDTH - indent.length, '').map((line, at) =>
        at === 0 ? `${VERDICT_WORDS[verdict].padEnd(verdictWidth)}  ${itemId.padEnd(idWidth)}  ${line}` : indent + line,
      ),
    ),
    ...(skipped === 0 ? [] : [`${skipped} more do not apply to this design.`]),
  ]
}
