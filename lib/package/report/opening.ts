import type { Content } from 'pdfmake/interfaces'
import { makeProductMarkSvg, PRINT_PALETTE } from '@/lib/drawing'
import {
  BEND_FIELDS,
  BRIEF_FIELDS,
  CANNOT_TELL,
  CAUTIONS,
  type FieldNode,
  formatComputedReading,
  getChoiceWord,
  ITEM_BASES,
  type ItemBasis,
  LIFE_CAUTION_SHORT,
  readBendLife,
  readBendStrain,
  TALLY_WORDS,
} from '@/lib/engine'
import { asComputed, asEntered, countOf } from '@/lib/engine/units'
import { describeFollows, formatFieldValue, type ItemState, listItemStates } from '@/lib/review'
import type { PackageContent } from '../content'
import { listLoosenedFacts } from './sign-off'
import { level1, level2, makeEmptyPart, makeFacts, makeTable, mono } from './style'
import { formatQuantity, formatStated, formatText, formatTime, formatWord, formatYesNo } from './words'

/** About as high as the title's line. */
const MARK_PT = 22

/** Title block: what this is a report on, from which state, released by whom. */
export function makeTitleBlock(content: PackageContent, contentHash: string): Content[] {
  const { snapshot, edition } = content
  const { brief } = snapshot.design
  return [
    {
      columns: [
        { svg: makeProductMarkSvg(MARK_PT, PRINT_PALETTE), width: MARK_PT },
        { text: 'Manufacturability review', style: 'title', width: '*' },
      ],
      columnGap: 8,
    },
    {
      text: `${snapshot.projectName}, revision ${snapshot.label}: ${snapshot.design.name}`,
      fontSize: 11,
      margin: [0, 0, 0, 8],
    },
    makeFacts([
      ['Part number, revision', `${formatText(brief.partNumber)}, ${snapshot.label}; ${content.workspaceName}`],
      ...listLoosenedFacts(content),
      ['Edition', edition.kind === 'team' ? 'team, complete' : `for ${edition.companyName}`],
      ['SHA-256 of what was signed', mono(contentHash)],
    ]),
    {
      table: {
        widths: ['*'],
        body: [
          [{ fontSize: 8, stack: CAUTIONS.map((text) => ({ text, style: 'caution', margin: [0, 1, 0, 1] as const })) }],
        ],
      },
      layout: {
        hLineWidth: () => 0.8,
        vLineWidth: () => 0,
        paddingLeft: () => 0,
        paddingTop: () => 4,
        paddingBottom: () => 4,
      },
      margin: [0, 8, 0, 0],
    } as Content,
  ]
}

/** Where the review came out, on one page: counts, bends, and what was released against. */
export function makeSummary({ snapshot }: PackageContent): Content[] {
  const itemStates = listItemStates(snapshot)
  const count = (state: string) =>
    itemStates.filter((itemState) => itemState.state === state && itemState.follows.length === 0).length
  const results = snapshot.evaluation?.results ?? null
  const parts: Content[] = [
    makeFacts(
      [
        [
          'Checklist',
          `${itemStates.length} items: ${count('meets')} met, ${count('concern')} of concern, ${count('waived')} waived, ` +
            `${count('not-applicable')} not applicable, ${count('open')} open${describeFollowing(itemStates)}`,
        ],
        ...ITEM_BASES.map((basis) => [BASIS_TITLES[basis], describeBasis(itemStates, basis)] as const),
        ['Catalogue', describeTemplate(snapshot.template)],
        [
          'Results',
          snapshot.evaluation === null
            ? 'none recorded'
            : `engine ${snapshot.evaluation.engineVersion}, recorded ${formatTime(snapshot.evaluation.evaluatedAt)}`,
        ] as const,
        ...(results?.headlineQuantities ?? []).map(
          ({ label, quantity, because }) =>
            [label, quantity === null ? (because ?? CANNOT_TELL) : formatQuantity(quantity)] as const,
        ),
      ],
      level1('1  Summary'),
    ),
  ]
  if (results === null || results.bends.length === 0)
    parts.push(makeEmptyPart(level2('Bends'), 'The design has no bends.'))
  else {
    parts.push(
      makeTable(
        [
          { label: 'Bend', width: '*' },
          { label: 'Use', width: 'auto' },
          { label: 'Inside radius', width: 'auto', isNumeric: true },
          { label: 'Copper strain', width: 'auto', isNumeric: true },
          { label: 'Allowable', width: 'auto', isNumeric: true },
          { label: `Life at survival, ${LIFE_CAUTION_SHORT}`, width: 'auto', isNumeric: true },
          { label: 'Required', width: 'auto', isNumeric: true },
        ],
        results.bends.map((bend) => {
          const design = snapshot.design.bends.find(({ id }) => id === bend.bendId)
          return [
            bend.name,
            getChoiceWord(BEND_FIELDS.use, bend.use),
            formatStated(design?.insideRadiusMm, 'mm'),
            bend.peakStrainPct === null ? 'not computed' : formatComputedReading(readBendStrain(bend), 'strainPct'),
            asComputed(bend.allowablePct, 'strainPct'),
            formatComputedReading(readBendLife(bend), 'lifeCycles'),
            bend.requiredCycles === null ? '–' : asEntered(bend.requiredCycles, 'cycles'),
          ]
        }),
        level2('Bends'),
      ),
    )
  }
  const concerns = itemStates.filter(({ state }) => state === 'concern' || state === 'waived' || state === 'open')
  parts.push(
    concerns.length === 0
      ? makeEmptyPart(level2('Concerns and waivers'), 'None: every applicable item is met.')
      : makeTable(
          [
            { label: 'Item', width: '*' },
            { label: 'Calculation', width: 68 },
            { label: 'Answer', width: 58 },
          ],
          concerns.map(({ item, result, state, follows }) => [
            {
              stack: [
                item.question,
                ...(result === null ? [] : [{ text: result.headline, style: 'small' }]),
                ...(follows.length === 0 ? [] : [{ text: `${describeFollows(follows)}.`, style: 'small' }]),
              ],
            },
            result === null ? '–' : TALLY_WORDS[follows.length > 0 ? 'follows' : result.verdict].word,
            formatWord(state),
          ]),
          level2('Concerns and waivers'),
        ),
  )
  return parts
}

const BASIS_TITLES = {
  computed: 'of these calculated',
  typed: 'typed and compared',
  stated: 'stated by somebody',
  judgment: 'judged by a person',
} as const

/** Calculations, typed statements and judgments are never one number. */
function describeBasis(itemStates: readonly ItemState[], basis: ItemBasis): string {
  const own = itemStates.filter((itemState) => itemState.basis === basis && itemState.state !== 'not-applicable')
  const count = (state: ItemState['state']) =>
    own.filter((itemState) => itemState.state === state && itemState.follows.length === 0).length
  return `${own.length}: ${count('meets')} met, ${count('concern')} of concern, ${count('waived')} waived, ${count('open')} open${describeFollowing(own)}`
}

/** A cause counts once: what follows from another item is counted apart. */
function describeFollowing(itemStates: readonly ItemState[]): string {
  const count = itemStates.filter(({ follows }) => follows.length > 0).length
  return count === 0 ? '' : `, and ${count} that ${count === 1 ? 'follows' : 'follow'}`
}

function describeTemplate({ version, switchedOff, profiles = [] }: PackageContent['snapshot']['template']): string {
  const off = switchedOff.length === 0 ? '' : `; ${countOf(switchedOff.length, 'item')} not asked, named in section 6`
  const names = profiles.length === 0 ? '' : `; profiles: ${profiles.map(({ name }) => name).join(', ')}`
  return `${version === 0 ? 'as delivered' : `version ${version} of the workspace`}${names}${off}`
}

const TERMS_IN_REPORT = [
  'assembly',
  'tolerances',
  'array',
  'acceptance',
  'finishTerms',
  'marking',
  'agreements',
  'exposure',
] as const

/** Records of terms, each in a line of what is stated in it; what a part meets in service only where something is. */
function listTerms(brief: PackageContent['snapshot']['design']['brief']): [string, string][] {
  const lines = TERMS_IN_REPORT.flatMap((record): [string, string][] => {
    const values: Readonly<Record<string, unknown>> = brief[record]
    const stated = Object.entries(BRIEF_FIELDS[record].fields).flatMap(([field, node]: [string, FieldNode]) =>
      values[field] === null || values[field] === undefined
        ? []
        : [`${node.label}: ${formatFieldValue(values[field], node)}`],
    )
    if (stated.length === 0 && record === 'exposure') return []
    return [[BRIEF_FIELDS[record].label, stated.length === 0 ? 'not stated' : stated.join('; ')]]
  })
  const { outgassing } = brief
  return outgassing.length === 0
    ? lines
    : [...lines, [BRIEF_FIELDS.outgassing.label, formatFieldValue(outgassing, BRIEF_FIELDS.outgassing)]]
}

function describeDefaultSlope({ evaluation }: PackageContent['snapshot']): string {
  const isTested = evaluation?.results.bends.some(({ ownTests }) =>
    ownTests.some(({ usedSlope }) => usedSlope !== null),
  )
  return isTested === true
    ? 'own flex tests where a bend names them, elsewhere the default of the engine'
    : 'default of the engine'
}

/** Temperatures beside those in service, with what plated holes have to outlast. */
const HEAT_FIELDS = [
  'flatAtDegC',
  'cycleMinDegC',
  'cycleMaxDegC',
  'temperatureCycles',
  'holePlatingQuality',
] as const satisfies readonly (keyof typeof BRIEF_FIELDS)[]

/** The brief as stated; what is not stated says so. */
export function makeBrief({ snapshot }: PackageContent): Content[] {
  const { brief } = snapshot.design
  const temperature =
    brief.operatingMinDegC === null && brief.operatingMaxDegC === null
      ? 'not stated'
      : `${formatStated(brief.operatingMinDegC, 'degC')} to ${formatStated(brief.operatingMaxDegC, 'degC')}`
  return [
    makeFacts(
      [
        [BRIEF_FIELDS.partNumber.label, formatText(brief.partNumber)],
        [BRIEF_FIELDS.revisionLabel.label, formatText(brief.revisionLabel)],
        [BRIEF_FIELDS.purpose.label, formatText(brief.purpose)],
        [
          'Class, type, use (IPC-6013)',
          [
            getChoiceWord(BRIEF_FIELDS.performanceClass, brief.performanceClass),
            getChoiceWord(BRIEF_FIELDS.circuitType, brief.circuitType),
            brief.installationUses.length === 0
              ? 'not stated'
              : brief.installationUses.map((use) => getChoiceWord(BRIEF_FIELDS.installationUses, use)).join(', '),
          ].join('; '),
        ],
        ['Operating temperature', temperature],
        ...HEAT_FIELDS.map(
          (field) => [BRIEF_FIELDS[field].label, formatFieldValue(brief[field], BRIEF_FIELDS[field])] as const,
        ),
        [BRIEF_FIELDS.quantityPerYear.label, formatStated(brief.quantityPerYear, 'parts-per-year')],
        [BRIEF_FIELDS.surfaceFinish.label, getChoiceWord(BRIEF_FIELDS.surfaceFinish, brief.surfaceFinish)],
        [BRIEF_FIELDS.solderedAssembly.label, formatYesNo(brief.solderedAssembly)],
        [BRIEF_FIELDS.bakeBeforeAssembly.label, formatText(brief.bakeBeforeAssembly)],
        [BRIEF_FIELDS.packingAndHandling.label, formatText(brief.packingAndHandling)],
        [BRIEF_FIELDS.panelForm.label, getChoiceWord(BRIEF_FIELDS.panelForm, brief.panelForm)],
        [BRIEF_FIELDS.toleranceScheme.label, formatText(brief.toleranceScheme)],
        [
          'Electrical, coupon and fold test',
          [brief.electricalTest, brief.couponTest, brief.foldTest].map(formatYesNo).join(', '),
        ],
        [BRIEF_FIELDS.registrationCriticalFeatures.label, formatText(brief.registrationCriticalFeatures)],
        ...listTerms(brief),
        [BRIEF_FIELDS.whoToAsk.label, formatText(brief.whoToAsk)],
        [BRIEF_FIELDS.manufacturingReviewDate.label, brief.manufacturingReviewDate ?? 'not stated'],
        [BRIEF_FIELDS.layoutFreezeDate.label, brief.layoutFreezeDate ?? 'not stated'],
        [BRIEF_FIELDS.needDate.label, brief.needDate ?? 'not stated'],
        [
          BRIEF_FIELDS.lifeSurvivalPct.label,
          brief.lifeSurvivalPct === null ? 'default of the engine' : formatStated(brief.lifeSurvivalPct, 'pct'),
        ],
        [
          'Weibull slope',
          brief.lifeWeibullSlope === null ? describeDefaultSlope(snapshot) : asEntered(brief.lifeWeibullSlope),
        ],
        [
          BRIEF_FIELDS.ratioTableKey.label,
          brief.ratioTableKey === null
            ? 'default of the engine'
            : formatFieldValue(brief.ratioTableKey, BRIEF_FIELDS.ratioTableKey),
        ],
      ],
      level1('2  Brief'),
    ),
  ]
}
