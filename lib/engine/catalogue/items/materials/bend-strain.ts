import type { EvaluationContext } from '../../../context'
import { type Bend, callByName } from '../../../design'
import type { BendResult, ConductorStrainResult, DecidedOutcome, Limit, Outcome, Place } from '../../../results'
import { SOURCES, type SourceKey } from '../../../sources'
import { type BendUnderCheck, isDynamic, listBends, notComputedSection, placeOf } from '../../checks'
import { decide, notApplicable, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { getSourceOwner } from '../../limits'
import { AT_LEAST_RADIUS, nameCopper, withinModel } from '../../model-reach'
import { MORE_STATES, TIGHTER_BEND, WIDER_TOLERANCES } from '../../monotone'
import { withinStatedUse } from '../../stated-cycles'

export const bendStrain = defineItem({
  id: 'bend-strain',
  section: 'materials',
  severity: 'blocking',
  question: 'Does the copper strain in each bend that stands still in service stay below what its foil and use allow?',
  titles: { meets: 'Copper strain is within the allowable', fails: 'Copper strain exceeds the allowable' },
  appliesTo: {
    needs: ['bends', 'conductor-layers'],
    says: 'bends that stand still in service, and folds made before a bend moves',
  },
  limits: [],
  sourceKeys: ['compositeBeam', 'plasticBending', 'reversedYield', 'finiteElementBending', 'ipc2223'],
  restsOn: [...SECTION_INPUTS, 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...WIDER_TOLERANCES, ...MORE_STATES],
  check: (context) =>
    listBends(context).flatMap(({ bend, result, index, place }): Outcome[] => [
      withinStatedUse(
        bend,
        withinModel(result, judge(context, { bend, result, index, place }), ({ conductors }) =>
          judgeAtLeast(context, bend, { ...result, conductors }, place),
        ),
        place,
      ),
      ...judgeFoldBefore(context, { bend, result, index, place }).map((outcome) =>
        withinModel(result, outcome, () => null),
      ),
    ]),
})

/** A fold that was made before the bend takes its radius is a fold of its own: its copper stands against one fold. */
function judgeFoldBefore(
  context: EvaluationContext,
  { bend, result, index, place }: Pick<BendUnderCheck, 'bend' | 'result' | 'index' | 'place'>,
): Outcome[] {
  return result.conductors.flatMap((conductor): Outcome[] => {
    const fold = conductor.states?.fold ?? null
    if (fold === null) return []
    const what = `strain of ${conductor.name} in the fold before ${callByName('bend', bend.name)}`
    if (fold.allowablePct === null) {
      return [
        notComputed(
          ['bends', index, 'foldedToRadiusMm'],
          `allowable strain of the foil in the fold before ${callByName('bend', bend.name)}`,
          [place],
        ),
      ]
    }
    return [
      decide({
        value: fold.strainPct,
        range: fold.strainRangePct,
        rangeOver: 'both',
        limit: makeStrainLimit(context, { ...bend, use: 'fold-once' }, conductor, fold.allowablePct),
        limitRange: fold.allowableRangePct ?? undefined,
        limitRangeOver: 'constants',
        places: [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })],
        what,
        equation: 'e = (y - y_0) / (R_fold + y_0), y_0 of the formed section',
        sourceKey: 'plasticBending',
        cautions: result.cautions,
      }),
    ]
  })
}

function judge(
  context: EvaluationContext,
  { bend, result, index, place }: Pick<BendUnderCheck, 'bend' | 'result' | 'index' | 'place'>,
): Outcome {
  const unknown = notComputedSection({ bend, result, index, place })
  if (unknown !== null) return unknown
  if (result.conductors.length === 0)
    return notApplicable(`no conductor runs through ${callByName('bend', bend.name)}`, [place])
  if (bend.use === null) return notComputed(['bends', index, 'use'], `use of ${callByName('bend', bend.name)}`, [place])
  // What a moving bend may strain is its life solved for strain: one inequality, asked once.
  if (isDynamic(bend))
    return notApplicable(`${callByName('bend', bend.name)} moves, and its strain is judged by its life`, [place])
  const worst = findMostStrained(result.conductors)
  if (worst === null || worst.allowablePct === null) {
    return result.missing.length > 0
      ? notComputedFrom(result.missing, [place])
      : notComputed(['bends', index, 'zoneId'], `allowable strain of the foil in ${callByName('bend', bend.name)}`, [
          place,
        ])
  }
  return compareAll(context, bend, result, worst, worst.allowablePct, place)
}

/** At the least radius that can be told, the copper that strains most for what it may: a bound of what a tighter bend does. */
function judgeAtLeast(context: EvaluationContext, bend: Bend, result: BendResult, place: Place): Outcome | null {
  const worst = findMostStrained(result.conductors)
  const allowedPct = worst?.allowablePct ?? null
  if (worst === null || allowedPct === null) return null
  return decide({
    ...describeComparison(context, bend, result, worst, allowedPct, place),
    bound: 'more-than',
    remark: AT_LEAST_RADIUS,
  })
}

/** Another layer than the one nearest its allowable at nominal may be over it at the worst end of its own range. */
function compareAll(
  context: EvaluationContext,
  bend: Bend,
  result: BendResult,
  worst: ConductorStrainResult,
  allowablePct: number,
  place: Place,
): DecidedOutcome {
  const decided = compare(context, bend, result, worst, allowablePct, place)
  if (decided.verdict !== 'meets') return decided
  for (const other of [...result.conductors, ...result.conductors.flatMap(listParts)]) {
    if (other === worst || other.allowablePct === null) continue
    const outcome = compare(context, bend, result, other, other.allowablePct, place)
    if (outcome.verdict !== 'meets') return outcome
  }
  return decided
}

/** So may foil where plating has less to spare at nominal, and the other way round. */
function listParts(conductor: ConductorStrainResult): ConductorStrainResult[] {
  return conductor.parts.flatMap(
    ({ materialId, name, peakStrainPct, peakRangePct, allowablePct, allowableRangePct }) =>
      materialId === conductor.governingMaterial?.materialId && peakStrainPct === conductor.peakStrainPct
        ? []
        : [
            {
              ...conductor,
              governingMaterial: { materialId, name },
              peakStrainPct,
              peakRangePct,
              allowablePct,
              allowableRangePct,
            },
          ],
  )
}

function compare(
  context: EvaluationContext,
  bend: Bend,
  result: BendResult,
  conductor: ConductorStrainResult,
  allowablePct: number,
  place: Place,
): DecidedOutcome {
  return decide({
    ...describeComparison(context, bend, result, conductor, allowablePct, place),
    range: conductor.peakRangePct,
    rangeOver: 'both',
    limitRange: conductor.allowableRangePct ?? undefined,
    limitRangeOver: 'constants',
    remark: result.hangsOn?.sentence,
  })
}

function describeComparison(
  context: EvaluationContext,
  bend: Bend,
  { cautions, states }: BendResult,
  conductor: ConductorStrainResult,
  allowablePct: number,
  place: Place,
): Parameters<typeof decide>[0] {
  return {
    value: conductor.peakStrainPct,
    limit: makeStrainLimit(context, bend, conductor, allowablePct),
    places: [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })],
    what: `strain of ${nameCopper(conductor)} in ${callByName('bend', bend.name)}`,
    equation: describeEquation(states),
    sourceKey: 'plasticBending',
    cautions,
  }
}

const describeEquation = (states: BendResult['states']): string => {
  if (states === null) return 'e = (y - y_0) / (R + y_0), y_0 of the formed section'
  const isLoaded = states.pullN > 0 || states.twistDeg > 0
  const radius = states.equivalentRadiusMm === null ? 'R' : 'R_eq'
  const bending = `(y - y_0) / (${radius} + y_0)`
  return [
    isLoaded ? `e^2 = (${bending} + pull + twist at the edge)^2 + shear^2 / 3` : `e = ${bending}`,
    'y_0 of the formed section',
    ...(states.equivalentRadiusMm === null ? [] : ['1 / (R_eq + y) = 1 / (R + y) - 1 / (R_from + y)']),
  ].join(', ')
}

/** A layer without an allowable counts as worst: nobody can say that it holds. */
function findMostStrained(conductors: readonly ConductorStrainResult[]): ConductorStrainResult | null {
  let worst: ConductorStrainResult | null = null
  let worstShare = -1
  for (const conductor of conductors) {
    const { allowablePct } = conductor
    const share = allowablePct === null ? Number.POSITIVE_INFINITY : conductor.peakStrainPct / allowablePct
    if (share > worstShare) {
      worst = conductor
      worstShare = share
    }
  }
  return worst
}

/** What the foil's record allows in one fold, or in flexing to install. */
function makeStrainLimit(
  context: EvaluationContext,
  bend: Bend,
  conductor: ConductorStrainResult,
  allowablePct: number,
): Limit {
  const { governingMaterial } = conductor
  const foil = governingMaterial === null ? null : context.findMaterial(governingMaterial.materialId)?.foil
  const record = bend.use === 'fold-once' ? foil?.allowableFoldOncePct : foil?.allowableInstallPct
  const sourceKey = record?.sourceKey ?? 'ipc2223'
  return {
    key: 'allowableStrainPct',
    value: allowablePct,
    unit: 'pct',
    sense: 'at-most',
    sourceKey,
    owner: isSourceKey(sourceKey) ? getSourceOwner(sourceKey) : { kind: 'design', name: 'material record' },
  }
}

function isSourceKey(key: string): key is SourceKey {
  return Object.hasOwn(SOURCES, key)
}
