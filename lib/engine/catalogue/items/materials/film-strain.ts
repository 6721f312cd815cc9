import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import type { FaceFilmResult, Outcome } from '../../../results'
import { type BendUnderCheck, isDynamic, listBends, notComputedSection, notComputedUse, placeOf } from '../../checks'
import { cannotTell, decide, makeSourceLimit, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'
import { AS_BOUND, AT_LEAST_RADIUS, withinModel } from '../../model-reach'
import { MORE_STATES, TIGHTER_BEND } from '../../monotone'

export const filmStrain = defineItem({
  id: 'film-strain',
  section: 'materials',
  severity: 'major',
  question: 'Can the films at both faces of each bend take its strain?',
  titles: { meets: 'Films bear the strain of each bend', fails: 'A film yields in a dynamic bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: ['filmFoldStrainPct'],
  sourceKeys: ['plasticBending', 'finiteElementBending', 'ownChoice'],
  restsOn: [...SECTION_INPUTS, 'bends', ...TEMPERATURE_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [...TIGHTER_BEND, ...MORE_STATES],
  check: (context) =>
    listBends(context).flatMap((each): Outcome | Outcome[] => {
      const { bend, result, place } = each
      const films = result.leaves.flatMap((leaf) => leaf.faceFilms)
      const unknown = notComputedSection(each)
      if (unknown !== null) return unknown
      if (result.conductors.length === 0 || films.length === 0) {
        return notApplicable(`no film lies at a face of ${callByName('bend', bend.name)}`, [place])
      }
      if (bend.use === null) return notComputedUse(each)
      return films.flatMap((film) => [
        withinModel(result, judge(context, each, film), ({ faceFilms }) => {
          const known = faceFilms.find(({ layerId, side }) => layerId === film.layerId && side === film.side)
          return known === undefined ? null : judge(context, each, known, true)
        }),
        ...(film.fold === null
          ? []
          : [withinModel(result, judgeFoldBefore(context, each, film, film.fold), () => null)]),
      ])
    }),
})

/** The film in a fold that was made before, against what a film may take in a fold. */
function judgeFoldBefore(
  context: EvaluationContext,
  { bend, result, place }: BendUnderCheck,
  film: FaceFilmResult,
  { strainPct, rangePct }: NonNullable<FaceFilmResult['fold']>,
): Outcome {
  const places = [place, placeOf('layer', { id: film.layerId, name: film.name })]
  const what = `strain of ${film.name} at the ${film.side === 'inner' ? 'inside' : 'outside'} of the fold before ${callByName('bend', bend.name)}`
  const decided = decide({
    value: strainPct,
    range: rangePct,
    rangeOver: 'both',
    limit: context.getLimit('filmFoldStrainPct'),
    places,
    what,
    equation: 'e = (y - y_0) / (R_fold + y_0) at the face, y_0 of the formed section',
    sourceKey: 'plasticBending',
    cautions: result.cautions,
  })
  return decided.verdict === 'meets'
    ? decided
    : cannotTell(what, HARD_FOLD, places, { value: decided.value, limit: decided.limit })
}

const HARD_FOLD = {
  because: 'no published figure says whether a film folded this tightly creases, tears or comes off',
  decidedBy: 'fold samples, or use a larger radius',
}

/** Flexing must not yield a film; a fold may, as long as it stays far from tearing, and past that nobody can tell. */
function judge(
  context: EvaluationContext,
  { bend, result, place }: BendUnderCheck,
  film: FaceFilmResult,
  isAtLeast = false,
): Outcome {
  const isFlexed = isDynamic(bend)
  const places = [place, placeOf('layer', { id: film.layerId, name: film.name })]
  const what = `strain of ${film.name} at the ${film.side === 'inner' ? 'inside' : 'outside'} of ${callByName('bend', bend.name)}`
  const decided = decide({
    value: film.strainPct,
    ...(isAtLeast ? AS_BOUND : { range: film.strainRangePct, rangeOver: 'both' }),
    limitRange: isFlexed && !isAtLeast ? film.yieldRangePct : undefined,
    limitRangeOver: 'constants',
    limit: isFlexed
      ? makeSourceLimit({
          key: 'filmYieldStrainPct',
          value: film.yieldStrainPct,
          unit: 'pct',
          sense: 'at-most',
          sourceKey: 'ownChoice',
        })
      : context.getLimit('filmFoldStrainPct'),
    places,
    what,
    equation: 'e = (y - y_0) / (R + y_0) at the face, y_0 of the formed section',
    sourceKey: 'plasticBending',
    cautions: result.cautions,
    remark: isAtLeast
      ? AT_LEAST_RADIUS
      : !isFlexed && film.strainRangePct.high > film.yieldRangePct.low
        ? `Past its yield of some ${film.yieldStrainPct} % it keeps a set.`
        : undefined,
  })
  if (isFlexed || decided.verdict === 'meets') return decided
  return cannotTell(what, HARD_FOLD, places, { value: decided.value, limit: decided.limit })
}
