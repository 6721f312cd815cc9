import type { Content } from 'pdfmake/interfaces'
import {
  BEND_FIELDS,
  BRIEF_FIELDS,
  CANNOT_TELL,
  CAUTIONS,
  ITEM_BASES,
  type ItemBasis,
  LIFE_CAUTION_SHORT,
  readBendLife,
  readBendStrain,
  sayChoice,
  sayComputed,
  VERDICT_WORDS,
} from '@/lib/engine'
import { asComputed, asEntered } from '@/lib/engine/units'
import { type ItemStanding, listStandings, STAGE_LABELS } from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, level2, makeEmptyPart, makeFacts, makeTable, mono } from './style'
import { sayQuantity, sayStated, sayText, sayTime, sayWord, sayYesNo } from './words'

/** Title block: what this is a report on, from which state, released by whom. */
export function makeTitleBlock(content: PackageContent, contentHash: string): Content[] {
  const { snapshot, edition, release } = content
  const { brief } = snapshot.design
  const signers = snapshot.signatures
    .filter(({ voided }) => voided === null)
    .map(({ name, capacity }) => `${name}, ${capacity}`)
  return [
    { text: 'Manufacturability review', style: 'title' },
    {
      text: `${snapshot.projectName}, revision ${snapshot.label}: ${snapshot.design.name}`,
      fontSize: 11,
      margin: [0, 0, 0, 8],
    },
    makeFacts([
      ['Part number, revision', `${sayText(brief.partNumber)}, ${snapshot.label}`],
      ['Workspace', content.workspaceName],
      ['Stage', snapshot.stage === 'awaiting-signature' ? STAGE_LABELS.released : STAGE_LABELS[snapshot.stage]],
      ['Released', `${sayTime(release.at)} by ${release.byName}`],
      ['Signed by', signers.length === 0 ? 'nobody' : signers.join('; ')],
      ['Edition', edition.kind === 'team' ? 'team, complete' : `for ${edition.companyName}`],
      [
        'Results',
        snapshot.evaluation === null
          ? 'none recorded'
          : `engine ${snapshot.evaluation.engineVersion}, recorded ${sayTime(snapshot.evaluation.evaluatedAt)}`,
      ],
      ['SHA-256 of what was signed', mono(contentHash)],
    ]),
    {
      table: {
        widths: ['*'],
        body: [[{ stack: CAUTIONS.map((text) => ({ text, style: 'caution', margin: [0, 1, 0, 1] as const })) }]],
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
  const standings = listStandings(snapshot)
  const count = (state: string) => standings.filter((standing) => standing.state === state).length
  const results = snapshot.evaluation?.results ?? null
  const parts: Content[] = [
    makeFacts(
      [
        [
          'Checklist',
          `${standings.length} items: ${count('meets')} met, ${count('concern')} of concern, ${count('waived')} waived, ` +
            `${count('not-applicable')} not applicable, ${count('open')} open`,
        ],
        ...ITEM_BASES.map((basis) => [BASIS_TITLES[basis], sayBasis(standings, basis)] as const),
        ['Catalogue', sayTemplate(snapshot.template)],
        ...(results?.headlineQuantities ?? []).map(
          ({ label, quantity, because }) =>
            [label, quantity === null ? (because ?? CANNOT_TELL) : sayQuantity(quantity)] as const,
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
            sayChoice(BEND_FIELDS.use, bend.use),
            sayStated(design?.insideRadiusMm, 'mm'),
            bend.peakStrainPct === null ? 'not computed' : sayComputed(readBendStrain(bend), 'strainPct'),
            asComputed(bend.allowablePct, 'strainPct'),
            sayComputed(readBendLife(bend), 'lifeCycles'),
            bend.requiredCycles === null ? '–' : asEntered(bend.requiredCycles, 'cycles'),
          ]
        }),
        level2('Bends'),
      ),
    )
  }
  const concerns = standings.filter(({ state }) => state === 'concern' || state === 'waived' || state === 'open')
  parts.push(
    concerns.length === 0
      ? makeEmptyPart(level2('Concerns and waivers'), 'None: every applicable item is met.')
      : makeTable(
          [
            { label: 'Item', width: '*' },
            { label: 'Calculation', width: 68 },
            { label: 'Answer', width: 58 },
          ],
          concerns.map(({ item, result, state }) => [
            { stack: [item.question, ...(result === null ? [] : [{ text: result.headline, style: 'small' }])] },
            result === null ? '–' : VERDICT_WORDS[result.verdict].word,
            sayWord(state),
          ]),
          level2('Concerns and waivers'),
        ),
  )
  return parts
}

const BASIS_TITLES = {
  computed: 'of these computed',
  stated: 'stated by somebody',
  judgment: 'judged by a person',
} as const

/** Calculations, typed statements and judgments are never one number. */
function sayBasis(standings: readonly ItemStanding[], basis: ItemBasis): string {
  const own = standings.filter((standing) => standing.basis === basis && standing.state !== 'not-applicable')
  const count = (state: ItemStanding['state']) => own.filter((standing) => standing.state === state).length
  return `${own.length}: ${count('meets')} met, ${count('concern')} of concern, ${count('waived')} waived, ${count('open')} open`
}

function sayTemplate({ version, switchedOff }: PackageContent['snapshot']['template']): string {
  if (version === 0) return 'as delivered'
  const off = switchedOff.length === 0 ? '' : `; ${switchedOff.length} delivered items switched off, named in section 6`
  return `version ${version} of the workspace${off}`
}

/** The brief as stated; what is not stated says so. */
export function makeBrief({ snapshot }: PackageContent): Content[] {
  const { brief } = snapshot.design
  const temperature =
    brief.operatingMinDegC === null && brief.operatingMaxDegC === null
      ? 'not stated'
      : `${sayStated(brief.operatingMinDegC, 'degC')} to ${sayStated(brief.operatingMaxDegC, 'degC')}`
  return [
    makeFacts(
      [
        [BRIEF_FIELDS.purpose.label, sayText(brief.purpose)],
        [
          'Class, type, use (IPC-6013)',
          [
            sayChoice(BRIEF_FIELDS.performanceClass, brief.performanceClass),
            sayChoice(BRIEF_FIELDS.circuitType, brief.circuitType),
            sayChoice(BRIEF_FIELDS.installationUse, brief.installationUse),
          ].join('; '),
        ],
        ['Operating temperature', temperature],
        [BRIEF_FIELDS.quantityPerYear.label, sayStated(brief.quantityPerYear, 'parts-per-year')],
        [BRIEF_FIELDS.surfaceFinish.label, sayChoice(BRIEF_FIELDS.surfaceFinish, brief.surfaceFinish)],
        [BRIEF_FIELDS.solderedAssembly.label, sayYesNo(brief.solderedAssembly)],
        [BRIEF_FIELDS.bakeBeforeAssembly.label, sayText(brief.bakeBeforeAssembly)],
        [BRIEF_FIELDS.packingAndHandling.label, sayText(brief.packingAndHandling)],
        [BRIEF_FIELDS.panelForm.label, sayChoice(BRIEF_FIELDS.panelForm, brief.panelForm)],
        [BRIEF_FIELDS.toleranceScheme.label, sayText(brief.toleranceScheme)],
        [
          'Electrical, coupon and fold test',
          [brief.electricalTest, brief.couponTest, brief.foldTest].map(sayYesNo).join(', '),
        ],
        [BRIEF_FIELDS.registrationCriticalFeatures.label, sayText(brief.registrationCriticalFeatures)],
        [BRIEF_FIELDS.whoToAsk.label, sayText(brief.whoToAsk)],
        [BRIEF_FIELDS.manufacturingReviewDate.label, brief.manufacturingReviewDate ?? 'not stated'],
        [BRIEF_FIELDS.layoutFreezeDate.label, brief.layoutFreezeDate ?? 'not stated'],
        [BRIEF_FIELDS.needDate.label, brief.needDate ?? 'not stated'],
        [
          BRIEF_FIELDS.lifeSurvivalPct.label,
          brief.lifeSurvivalPct === null ? 'default of the engine' : sayStated(brief.lifeSurvivalPct, 'pct'),
        ],
        [
          'Weibull slope',
          brief.lifeWeibullSlope === null ? 'default of the engine' : asEntered(brief.lifeWeibullSlope),
        ],
      ],
      level1('2  Brief'),
    ),
  ]
}
