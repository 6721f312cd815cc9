import { listStateFigures, listStateRows } from '@/lib/drawing'
import type {
  BendResult,
  ContactResult,
  Design,
  Evaluation,
  ItemResult,
  Outcome,
  QuantityRange,
  ZoneResult,
} from '@/lib/engine'
import {
  BASIS_WORDS,
  CANNOT_TELL,
  CAUTIONS,
  describeLimitOrigin,
  describeOwnTests,
  explainNoMinRadius,
  findMaterial,
  formatComputedDigits,
  formatComputedReading,
  ITEM_BASES,
  ITEM_SECTION_WORDS,
  ITEM_SECTIONS,
  type ItemBasis,
  type ItemSection,
  LIFE_CAUTION_SHORT,
  RANGE_OVER,
  readBendLife,
  readBendLifeRange,
  readConductorLife,
  readDamage,
  TALLY_WORDS,
  tallyVerdicts,
  VERDICT_WORDS,
} from '@/lib/engine'
import {
  CATALOGUE,
  describeLimit,
  type ItemDefinition,
  type ItemVerdict,
  type WorkspaceCatalogue,
} from '@/lib/engine/catalogue'
import type { ComputedFigure } from '@/lib/engine/units'
import { asComputed, asEntered, digitsAsComputed, digitsAsEntered, inSentence } from '@/lib/engine/units'
import type { FlexTestFile } from './flex-test-file'
import { formatFlexTests } from './flex-test-report'
import { type Column, formatTable, wrapText } from './text-table'

const WIDTH = 118
const left = (title: string): Column => ({ title, align: 'left' })
const right = (title: string): Column => ({ title, align: 'right' })

const VERDICT_ORDER = Object.keys(VERDICT_WORDS) as ItemVerdict[]
const TALLY_ORDER = Object.keys(TALLY_WORDS) as (keyof typeof TALLY_WORDS)[]
/** What asks for attention stands out without colour. */
const LOUD: readonly ItemVerdict[] = ['fails', 'cannot-tell']

function formatVerdict(verdict: ItemVerdict): string {
  const { word } = VERDICT_WORDS[verdict]
  return LOUD.includes(verdict) ? word.toUpperCase() : word
}

const formatFollows = (count: number) => TALLY_WORDS.follows[count === 1 ? 'ofOne' : 'ofMany']

/** Did every computed item hold? Items that wait for a person's judgment do not count; an input that is missing does. */
export function isAllMet(evaluation: Evaluation): boolean {
  return evaluation.items.every(
    (item) => ['meets', 'not-applicable', 'needs-judgment'].includes(item.verdict) || lacksFactsAlone(item),
  )
}

/** What rests on artwork or on the course of the review cannot be had from a file of the design. */
const lacksFactsAlone = ({ verdict, outcomes }: Evaluation['items'][number]): boolean =>
  verdict === 'not-computed' &&
  outcomes.every(
    (outcome) => outcome.kind !== 'not-computed' || outcome.missing.every(({ path }) => path[0] === 'facts'),
  )

/** The whole evaluation as text, as a person would read it. */
export function formatReport(
  design: Design,
  evaluation: Evaluation,
  {
    items,
    profiles,
    flexTests = [],
  }: Pick<WorkspaceCatalogue, 'items' | 'profiles'> & { readonly flexTests?: readonly FlexTestFile[] } = {
    items: CATALOGUE,
    profiles: [],
  },
): string {
  const { brief } = design
  const lines = [
    evaluation.designName,
    // The label is the revision's own, which a design file does not know: what the brief once held may be another's.
    [brief.partNumber, `engine ${evaluation.engineVersion}`].filter((part) => part !== '').join(', '),
    ...(profiles.length === 0 ? [] : [`profiles: ${profiles.map(({ name }) => name).join('; ')}`]),
    ...formatSummary(evaluation),
    ...heading('Zones'),
    ...formatZones(evaluation.zones),
    ...evaluation.zones.flatMap((zone) => formatLayers(design, zone)),
    ...(evaluation.bends.length === 0 ? [] : heading('Bends')),
    ...evaluation.bends.flatMap(formatBend),
    ...(flexTests.length === 0 ? [] : heading('Flex tests')),
    ...formatFlexTests(flexTests, evaluation, WIDTH),
    ...formatDamage(design, evaluation),
    ...formatConductors(evaluation),
    ...ITEM_SECTIONS.flatMap((section) => formatItems(section, evaluation.items, items)),
    ...heading('Cautions'),
    ...CAUTIONS.flatMap((caution) => wrapText(caution, WIDTH, '')),
  ]
  return `${lines.join('\n')}\n`
}

function heading(title: string): string[] {
  return ['', title, '='.repeat(title.length)]
}

const BASIS_WIDTH = Math.max(...ITEM_BASES.map((basis) => BASIS_WORDS[basis].length))

/** Before the headline of an item that no calculation decided. */
const BASIS_LEADS: Readonly<Record<ItemBasis, string>> = {
  computed: '',
  typed: 'Typed: ',
  stated: 'Stated: ',
  judgment: '',
}

/** What was typed, stated or judged is never counted with what was calculated. */
function formatSummary({ items }: Evaluation): string[] {
  const tally = tallyVerdicts(items)
  return [
    `${items.length} items`,
    ...ITEM_BASES.flatMap((basis) => {
      const counts = TALLY_ORDER.flatMap((verdict) => {
        const count = tally[basis][verdict] ?? 0
        return count === 0 ? [] : [`${count} ${verdict === 'follows' ? formatFollows(count) : formatVerdict(verdict)}`]
      })
      return counts.length === 0 ? [] : [`  ${BASIS_WORDS[basis].padEnd(BASIS_WIDTH)}  ${counts.join(', ')}`]
    }),
  ]
}

const range = ({ low, high }: QuantityRange, figure: ComputedFigure): string =>
  `${digitsAsComputed(low, figure)} to ${digitsAsComputed(high, figure)}`

function formatZones(zones: readonly ZoneResult[]): string[] {
  return formatTable(
    [
      left('zone'),
      left('kind'),
      right('layers'),
      right('thickness µm'),
      right('worst case µm'),
      right('root sum square µm'),
    ],
    zones.flatMap((zone) => [
      [
        zone.name,
        zone.kind,
        String(zone.layers.length),
        digitsAsComputed(zone.thicknessUm, 'thicknessUm'),
        range(zone.worstCaseUm, 'thicknessUm'),
        range(zone.rootSumSquareUm, 'thicknessUm'),
      ],
      ...(zone.contact === null ? [] : [formatContact(zone.contact)]),
    ]),
  )
}

function formatContact({ thicknessUm, worstCaseUm, missing }: ContactResult): string[] {
  return missing.length > 0
    ? ['  over its contacts', '', '', 'not computed', '', '']
    : [
        '  over its contacts',
        '',
        '',
        digitsAsComputed(thicknessUm, 'thicknessUm'),
        range(worstCaseUm, 'thicknessUm'),
        '',
      ]
}

function formatLayers(design: Design, zone: ZoneResult): string[] {
  const table = formatTable(
    [
      left('layer'),
      left('kind'),
      left('material'),
      right('bought µm'),
      right('plating µm'),
      right('finished µm'),
      right('range µm'),
      right('coverage'),
      right('variance %'),
    ],
    zone.layers.map((layer) => [
      layer.name,
      layer.kind,
      layer.materialId === null ? '-' : (findMaterial(design, layer.materialId)?.name ?? layer.materialId),
      digitsAsEntered(layer.asBoughtUm),
      layer.copper === null ? '' : digitsAsComputed(layer.copper.platingUm, 'thicknessUm'),
      digitsAsComputed(layer.nominalUm, 'thicknessUm'),
      range({ low: layer.minUm, high: layer.maxUm }, 'thicknessUm'),
      layer.coverageFraction === null ? '' : digitsAsComputed(layer.coverageFraction, 'loadFraction'),
      digitsAsComputed(layer.varianceShareFraction * 100, 'sharePct'),
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
    ['section thickness', asComputed(bend.sectionThicknessUm, 'thicknessUm')],
    [
      'neutral axis, from the inside face',
      bend.leaves
        .map(
          (leaf) =>
            `${asComputed(leaf.formedAxisDepthUm, 'thicknessUm')} (${asComputed(leaf.neutralAxisDepthUm, 'thicknessUm')} while nothing yields)`,
        )
        .join(', ') || '-',
    ],
    [
      'copper strain',
      bend.peakStrainPct === null
        ? '-'
        : bend.modelLimits.length > 0
          ? CANNOT_TELL
          : `${asComputed(bend.peakStrainPct, 'strainPct')}, ${bend.peakRangePct === null ? '' : `${range(bend.peakRangePct, 'strainPct')} % ${RANGE_OVER.both}`}`,
    ],
    ['strain in the first bend', asComputed(bend.firstBendStrainPct, 'strainPct')],
    ['strain range of a cycle', asComputed(bend.cycleRangePct, 'strainPct')],
    [
      'allowable',
      `${asComputed(bend.allowablePct, 'strainPct')}${bend.allowableRangePct === null ? '' : `, ${range(bend.allowableRangePct, 'strainPct')} % ${RANGE_OVER.constants}`}`,
    ],
    ['minimum radius by strain', explainNoMinRadius(bend) ?? asComputed(bend.minRadiusByStrainMm, 'minRadiusMm')],
    [
      'minimum radius by handbook',
      handbook.minRadiusMm === null
        ? '-'
        : `${asComputed(handbook.minRadiusMm, 'minRadiusMm')}  (${handbook.formula} at ${inSentence(handbook.deformationPct ?? 0, 'pct')})`,
    ],
    [
      'minimum radius by ratio',
      `${asComputed(ratio.minRadiusMm, 'minRadiusMm')}  (ratio ${digitsAsComputed(ratio.actual, 'radiusRatio')}, ${ratio.required === null ? 'none stated' : `asked ${inSentence(ratio.required)}`}; ${ratio.tableName})`,
    ],
  ]
  const lifeRange = readBendLifeRange(bend)
  if (bend.survivalLifeCycles !== null) {
    facts.push(
      ['required life', bend.requiredCycles === null ? 'not stated' : asEntered(bend.requiredCycles, 'cycles')],
      ['median life', `${formatComputedReading(readBendLife(bend, 'median'), 'lifeCycles')} (${LIFE_CAUTION_SHORT})`],
      [
        `life at ${asEntered(bend.survivalPct, 'pct')} survival`,
        `${formatComputedReading(readBendLife(bend), 'lifeCycles')}${lifeRange === null ? '' : `, ${formatComputedDigits(lifeRange.low, 'lifeCycles')} to ${formatComputedDigits(lifeRange.high, 'lifeCycles')} ${RANGE_OVER.both}`} (${LIFE_CAUTION_SHORT})`,
      ],
    )
  }
  const tests = describeOwnTests(bend)
  if (tests !== null) facts.push(['life rests on', tests])
  facts.push(
    [
      'moment; holding force',
      `${asComputed(bend.momentNmm, 'momentNmm')}; ${asComputed(bend.holdingForceN, 'forceN')}`,
    ],
    [
      'set after release',
      bend.springback === null
        ? '-'
        : bend.springback.relaxedRadiusMm === null
          ? 'none: it springs back flat'
          : `${asComputed(bend.springback.relaxedAngleDeg, 'angleDeg')} at ${asComputed(bend.springback.relaxedRadiusMm, 'minRadiusMm')}`,
    ],
    [
      'developed length',
      `${asComputed(bend.developedLengthMm, 'developedLengthMm')}${bend.leaves.length > 1 ? `; leaves differ by ${asComputed(bend.leafLengthDifferenceMm, 'developedLengthMm')}` : ''}`,
    ],
  )
  facts.push(
    ...listStateFigures(bend).map(([label, value]): [string, string] => [
      `${label.charAt(0).toLowerCase()}${label.slice(1)}`,
      value,
    ]),
  )
  const labelWidth = Math.max(...facts.map(([label]) => label.length))
  const states = listStateRows(bend)
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
        digitsAsComputed(conductor.innerStrainPct, 'strainPct'),
        digitsAsComputed(conductor.outerStrainPct, 'strainPct'),
        range(conductor.peakRangePct, 'strainPct'),
        digitsAsComputed(conductor.allowablePct, 'strainPct'),
        digitsAsComputed(conductor.yieldStrainPct, 'strainPct'),
        formatComputedDigits(readConductorLife(conductor, bend), 'lifeCycles'),
      ]),
    ).map((line) => `  ${line}`),
    ...(states === null
      ? []
      : formatTable(
          states.columns.map(({ label, numeric }) => (numeric ? right : left)(label)),
          states.rows.map((row) => states.columns.map(({ key }) => row[key] ?? '')),
        ).map((line) => `  ${line}`)),
    ...bend.missing.map(({ label }) => `  Missing: ${label}`),
    ...bend.modelLimits.flatMap(({ because, decidedBy }) =>
      wrapText(`Cannot tell: ${because}; ${decidedBy}. The other figures of this bend are rough.`, WIDTH - 2, '').map(
        (line) => `  ${line}`,
      ),
    ),
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
      damage.map(({ conductorLayerId, contributions, ...sums }) => [
        layerNames.get(conductorLayerId) ?? conductorLayerId,
        formatComputedDigits(readDamage(sums), 'damageFraction'),
        contributions
          .map(
            ({ bendId, damage: share }) =>
              `${bendNames.get(bendId) ?? bendId} ${digitsAsComputed(share, 'damageFraction')}`,
          )
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
        right('copper µm'),
        right('at °C'),
        right('Ω'),
        right('drop V'),
        right('rise °C'),
        right('carries A'),
        right('lightest foil µm'),
      ],
      conductors.map((conductor) => [
        conductor.name,
        digitsAsComputed(conductor.finishedThicknessUm, 'thicknessUm'),
        digitsAsComputed(conductor.temperatureDegC, 'temperatureDegC'),
        digitsAsComputed(conductor.resistanceOhm, 'resistanceOhm'),
        digitsAsComputed(conductor.dropVolt, 'dropVolt'),
        digitsAsComputed(conductor.riseDegC, 'riseDegC'),
        digitsAsComputed(conductor.capacityAmp, 'currentAmp'),
        digitsAsComputed(conductor.lightestFoilUm, 'thicknessUm'),
      ]),
    ),
  ]
}

/** Items of one section, those that deserve attention first; the inapplicable ones are only counted. */
function formatItems(
  section: ItemSection,
  items: readonly ItemResult[],
  definitions: readonly ItemDefinition[],
): string[] {
  const byId = new Map(definitions.map((item) => [item.id, item]))
  const ofSection = items.filter(({ itemId }) => byId.get(itemId)?.section === section)
  const shown = VERDICT_ORDER.filter((verdict) => verdict !== 'not-applicable').flatMap((verdict) =>
    ofSection.filter((item) => item.verdict === verdict),
  )
  const idWidth = Math.max(0, ...shown.map(({ itemId }) => itemId.length))
  const verdictWidth = Math.max(...VERDICT_ORDER.map((verdict) => formatVerdict(verdict).length))
  const indent = ' '.repeat(verdictWidth + idWidth + 4)
  const skipped = ofSection.length - shown.length
  return [
    ...heading(ITEM_SECTION_WORDS[section]),
    ...shown.flatMap(({ itemId, verdict, headline, basis, outcomes, followsFrom }) => [
      ...wrapText(
        `${BASIS_LEADS[basis]}${headline}${followsFrom === undefined ? '' : ` Follows from ${followsFrom.join(' and ')}.`}`,
        WIDTH - indent.length,
        '',
      ).map((line, at) =>
        at === 0 ? `${formatVerdict(verdict).padEnd(verdictWidth)}  ${itemId.padEnd(idWidth)}  ${line}` : indent + line,
      ),
      ...[...listLimits(outcomes), ...(byId.get(itemId)?.becauseOf ?? [])].flatMap((line) =>
        wrapText(line, WIDTH - indent.length - 2, '  ').map((line) => indent + line),
      ),
    ]),
    ...(skipped === 0 ? [] : [`${skipped} more are not applicable to this design.`]),
  ]
}

/** Each limit that an item was held against, with whose it is and where it comes from. */
function listLimits(outcomes: readonly Outcome[]): string[] {
  const said = outcomes.flatMap((outcome) => {
    if (outcome.kind !== 'decided' && outcome.kind !== 'cannot-tell') return []
    const { limit } = outcome
    if (limit === undefined) return []
    return [`Limit ${describeLimit(limit)}: ${describeLimitOrigin(limit)}.`]
  })
  return [...new Set(said)]
}
