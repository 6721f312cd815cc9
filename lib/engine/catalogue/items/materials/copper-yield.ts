import { type Bend, callByName } from '../../../design'
import type { ConductorStrainResult, CopperPartResult, DecidedOutcome, Place } from '../../../results'
import { checkDynamicBends, placeOf } from '../../checks'
import { decide, makeSourceLimit } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { AS_BOUND, AT_LEAST_RADIUS, withinModel } from '../../model-reach'
import { MORE_STATES, TIGHTER_BEND, WIDER_TOLERANCES } from '../../monotone'

export const copperYield = defineItem({
  id: 'copper-yield',
  section: 'materials',
  severity: 'advice',
  question: 'Does the copper of each dynamic bend stay below its yield point?',
  titles: { meets: 'Copper stays elastic in dynamic bends', fails: 'Copper yields in a dynamic bend' },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['plasticBending'],
  restsOn: [...SECTION_INPUTS, 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...WIDER_TOLERANCES, ...MORE_STATES],
  check: (context) =>
    checkDynamicBends(context, ({ bend, result, place }) =>
      result.conductors.map((conductor) =>
        withinModel(result, judge(conductor, bend, place), ({ conductors }) => {
          const known = conductors.find(({ layerId }) => layerId === conductor.layerId)
          return known === undefined ? null : judge(known, bend, place, true)
        }),
      ),
    ),
})

type Copper = Pick<CopperPartResult, 'firstBendStrainPct' | 'peakRangePct' | 'yieldStrainPct' | 'yieldRangePct'> &
  Partial<Pick<CopperPartResult, 'firstBendRangePct' | 'isPlating'>>

/**
 * Foil and plating yield each by its own strength: the one nearest to it decides, or the other where that one yields at its worst corner
 * alone. Yield begins in the first bend.
 */
function judge(conductor: ConductorStrainResult, bend: Bend, place: Place, isAtLeast = false): DecidedOutcome {
  const parts: readonly Copper[] = conductor.parts.length > 0 ? conductor.parts : [conductor]
  const share = (part: Copper) => part.firstBendStrainPct / part.yieldStrainPct
  const [nearest, ...others] = parts
    .toSorted((a, b) => share(b) - share(a))
    .map((part) => compare(part, conductor, bend, place, isAtLeast))
  if (nearest === undefined) throw new RangeError(`no copper in ${conductor.name}`)
  return nearest.verdict === 'meets' ? (others.find(({ verdict }) => verdict !== 'meets') ?? nearest) : nearest
}

function compare(
  { isPlating, firstBendStrainPct, firstBendRangePct, peakRangePct, yieldStrainPct, yieldRangePct }: Copper,
  conductor: ConductorStrainResult,
  bend: Bend,
  place: Place,
  isAtLeast: boolean,
): DecidedOutcome {
  // The range is that of a cycle, which copper past yield sets apart from the first bend.
  const range = firstBendRangePct ?? {
    low: Math.min(peakRangePct.low, firstBendStrainPct),
    high: Math.max(peakRangePct.high, firstBendStrainPct),
  }
  return decide({
    value: firstBendStrainPct,
    ...(isAtLeast
      ? { ...AS_BOUND, remark: AT_LEAST_RADIUS }
      : { range, rangeOver: 'both', limitRange: yieldRangePct ?? undefined }),
    limitRangeOver: 'constants',
    limit: makeSourceLimit({
      key: 'yieldStrainPct',
      value: yieldStrainPct,
      unit: 'pct',
      sense: 'at-most',
      sourceKey: 'plasticBending',
    }),
    places: [place, placeOf('layer', { id: conductor.layerId, name: conductor.name })],
    what: `first-bend strain of the ${isPlating === undefined ? 'copper' : isPlating ? 'plating' : 'foil'} of ${conductor.name} in ${callByName('bend', bend.name)}`,
    equation: 'yield strain = yield strength / modulus',
    sourceKey: 'plasticBending',
    cautions: conductor.pastYield
      ? ['Strain is that of the formed section, whose axis moves as copper yields; the bend keeps some set.']
      : [],
  })
}
