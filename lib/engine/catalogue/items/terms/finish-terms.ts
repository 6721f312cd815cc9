import type { SURFACE_FINISHES } from '../../../design'
import type { Outcome } from '../../../results'
import type { SourceKey } from '../../../sources'
import { BRIEF_PLACE } from '../../checks'
import { decide, makeSourceLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

type Finish = (typeof SURFACE_FINISHES)[number]
type Metal = 'topMetalUm' | 'nickelUm' | 'palladiumUm'

/** What each finish is ordered to besides `named-on-order`, its metals, and the least of the top one that is quoted. */
const FINISHES: Readonly<
  Record<
    Exclude<Finish, 'none'>,
    {
      readonly standard: string | null
      readonly metals: readonly Metal[]
      readonly leastTopUm?: number
      readonly sourceKey: SourceKey
    }
  >
> = {
  'immersion-gold-over-electroless-nickel': {
    standard: 'ipc-4552',
    metals: ['nickelUm', 'topMetalUm'],
    leastTopUm: 0.05,
    sourceKey: 'ipc4552',
  },
  'immersion-gold-over-palladium-nickel': {
    standard: 'ipc-4556',
    metals: ['nickelUm', 'palladiumUm', 'topMetalUm'],
    leastTopUm: 0.025,
    sourceKey: 'ipc4556',
  },
  'electroplated-nickel-gold': {
    standard: 'astm-b488',
    metals: ['nickelUm', 'topMetalUm'],
    sourceKey: 'electroplatedGold',
  },
  'immersion-tin': { standard: 'ipc-4554', metals: ['topMetalUm'], leastTopUm: 1, sourceKey: 'ipc4554' },
  'immersion-silver': { standard: 'ipc-4553', metals: ['topMetalUm'], leastTopUm: 0.12, sourceKey: 'ipc4553' },
  'organic-solderability-preservative': { standard: 'ipc-4555', metals: [], sourceKey: 'ipc4555' },
  'hot-air-solder-levelled': { standard: null, metals: ['topMetalUm'], sourceKey: 'commonPractice' },
}

export const finishTerms = defineItem({
  id: 'finish-terms',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is the surface finish given with specification and thickness of each metal?',
  titles: { meets: 'The finish has its terms', fails: 'The terms of the finish contradict it' },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: [],
  sourceKeys: ['ipc4552', 'ipc4553', 'ipc4554', 'ipc4555', 'ipc4556', 'electroplatedGold'],
  restsOn: ['brief.surfaceFinish', 'brief.finishTerms'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'brief.finishTerms.topMetalUm', worse: 'smaller' }],
  check: ({ design, ...rest }) => {
    const context = { design, ...rest }
    const { surfaceFinish, finishTerms: terms } = design.brief
    if (surfaceFinish === null)
      return [notComputed(['brief', 'surfaceFinish'], 'surface finish', [BRIEF_PLACE], 'typed')]
    if (surfaceFinish === 'none') return [notApplicable('no surface finish is asked for')]
    const { standard, metals, leastTopUm, sourceKey } = FINISHES[surfaceFinish]
    const missing = findUnstated(context, 'finishTerms', ['standard', ...metals])
    const outcomes: Outcome[] = [...askFor(missing)]
    if (terms.standard !== null && terms.standard !== 'named-on-order' && terms.standard !== standard) {
      outcomes.push(
        makeTermOutcome(
          'fails',
          `The finish is ordered to a specification of another finish: ${listTerms(context, 'finishTerms', ['standard'])}.`,
          sourceKey,
        ),
      )
    }
    if (leastTopUm !== undefined && terms.topMetalUm !== null && terms.standard === standard) {
      outcomes.push(
        decide({
          value: terms.topMetalUm,
          limit: makeSourceLimit({
            key: 'leastTopMetalUm',
            value: leastTopUm,
            unit: 'um',
            sense: 'at-least',
            sourceKey,
          }),
          places: [BRIEF_PLACE],
          what: 'top metal of the finish as stated',
          equation: 'as stated, against the specification as quoted',
          isTyped: true,
          cautions: ['Editions differ: check the one in force.'],
        }),
      )
    }
    // Wherever a metal is given as 0, it is not there.
    const zero = metals.filter((metal) => terms[metal] === 0)
    if (zero.length > 0) {
      outcomes.push(
        makeTermOutcome(
          'fails',
          `A metal of the finish is stated as 0: ${listTerms(context, 'finishTerms', zero)}.`,
          sourceKey,
        ),
      )
    }
    return outcomes.length > 0
      ? outcomes
      : [makeTermOutcome('meets', `Finish: ${listTerms(context, 'finishTerms', ['standard', ...metals])}.`, sourceKey)]
  },
})
