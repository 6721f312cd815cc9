import type { EvaluationContext } from '../context'
import { type FoldableDesign, listChains, prepareFolding } from '../folding'
import type { Outcome } from '../results'
import { inSentence } from '../units'
import { DESIGN_PLACE, placeOf } from './checks'
import { cannotTell, computeMargin, makeSourceLimit, notComputedFrom } from './decide'

/** What a drawn plan is taken to be true to, as where stated dimensions are held against it. Our choice. */
export const CHAIN_LIMITS = {
  offset: makeSourceLimit({ key: 'chainOffset', value: 0.05, unit: 'mm', sense: 'at-most', sourceKey: 'ownChoice' }),
  turn: makeSourceLimit({ key: 'chainTurn', value: 0.5, unit: 'deg', sense: 'at-most', sourceKey: 'ownChoice' }),
} as const

/** Rings of areas that their bends do not bring back to themselves: there is no folded state to look at. */
export const listOpenChains = (folding: FoldableDesign) =>
  listChains(folding).filter(
    ({ offsetMm, turnDeg }) => offsetMm > CHAIN_LIMITS.offset.value || turnDeg > CHAIN_LIMITS.turn.value,
  )

/**
 * What rests on the folded state, where there is one. What stands in its way is judged by the item on folded clearance; others say that they wait for it.
 *
 * @param what  is looked for in the folded state: `the room that the folded part takes`
 */
export function onFolded(
  { design, zones, bends }: EvaluationContext,
  what: string,
  judge: (folding: FoldableDesign) => readonly Outcome[],
): readonly Outcome[] {
  const folding = prepareFolding(design, zones, bends)
  switch (folding.kind) {
    case 'missing':
      return [notComputedFrom(folding.missing, [DESIGN_PLACE])]
    case 'impossible':
      return [
        cannotTell(
          what,
          {
            because: 'the part cannot be folded as drawn',
            decidedBy: 'correct what the item on folded clearance names',
          },
          [DESIGN_PLACE],
        ),
      ]
    case 'foldable': {
      if (listOpenChains(folding.value).length === 0) return judge(folding.value)
      return [
        cannotTell(
          what,
          {
            because: 'a ring of areas does not close when it is folded',
            decidedBy: 'correct what the item on folded clearance names',
          },
          [DESIGN_PLACE],
        ),
      ]
    }
  }
}

/**
 * Leaves that are longer than their path by more than the limit on their lengths buckle off it, and nobody computes how far: what rests on where they lie is then not known.
 *
 * @param what  is looked for: `the room that the folded part takes`
 */
export function judgeLeafSlack(
  { design, getLimit }: EvaluationContext,
  { leafRuns }: FoldableDesign,
  what: string,
): readonly Outcome[] {
  const limit = getLimit('leafLengthDifferenceMm')
  return leafRuns.flatMap(({ bendIds, slackMm }) => {
    const most = Math.max(...slackMm)
    if (computeMargin(most, limit) >= 0) return []
    const loose = design.bends.filter(({ id }) => bendIds.includes(id))
    return [
      cannotTell(
        what,
        {
          because: `a leaf of ${loose.map(({ name }) => name).join(', ')} is ${inSentence(most, 'mm')} longer than its path, and how far it buckles off it is not computed`,
          decidedBy: 'step the lengths of the leaves, or try it with a model of film',
        },
        loose.map((bend) => placeOf('bend', bend)),
      ),
    ]
  })
}
