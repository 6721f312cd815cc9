import type { Clash } from '@/lib/fold'
import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import { checkFold, type FoldableDesign, findOrder, listBendsOver, placeOfBody, prepareFolding } from '../../../folding'
import type { Limit, Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { cannotTell, decide, makeNoneAllowed, makeSourceLimit } from '../../decide'
import { defineItem } from '../../define-item'
import { CHAIN_LIMITS, judgeLeafSlack, listOpenChains, onFolded } from '../../folding-ground'
import { BEND_PLACE_INPUTS, SECTION_INPUTS } from '../../item-inputs'

const EQUATION = 'least distance of the folded solids'

export const foldedClearance = defineItem({
  id: 'folded-clearance',
  section: 'geometry',
  severity: 'major',
  question: 'Do areas, bends and components keep clear of each other when folded, and during folding?',
  titles: {
    meets: 'Everything keeps clear when folded',
    fails: 'Parts of the folded circuit come too near to each other',
  },
  appliesTo: { needs: ['bends', 'bend-lines'], says: 'designs whose plan has the axis of a bend' },
  limits: ['foldedClearanceMm', 'leafLengthDifferenceMm'],
  sourceKeys: [],
  restsOn: [
    'plan',
    ...SECTION_INPUTS,
    ...BEND_PLACE_INPUTS,
    'bends.*.insideFace',
    'bends.*.leafLengths',
    'bends.*.leafStepMm',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => {
    const { design, zones, bends } = context
    const folding = prepareFolding(design, zones, bends)
    const limit = context.getLimit('foldedClearanceMm')
    if (folding.kind === 'impossible') {
      return folding.reasons.map(({ bendId, reason }) => {
        const bend = design.bends.find(({ id }) => id === bendId)
        return decide({
          value: 1,
          limit: makeNoneAllowed('foldContradictions', 'commonPractice'),
          places: [bend === undefined ? DESIGN_PLACE : placeOf('bend', bend)],
          what: 'contradictions in what is to be folded',
          equation: 'plan cut along its dividing lines and bends',
          summary: `The part cannot be folded as drawn: ${bend === undefined ? '' : `bend ${bend.name}: `}${reason}.`,
        })
      })
    }
    if (folding.kind !== 'foldable') return onFolded(context, 'the folded part', () => [])
    const open = judgeChains(context, folding.value)
    if (open.length > 0) return open
    const state = checkFold(folding.value, limit.value)
    const folded = [
      ...state.clashes.map((clash) => judge(context, folding.value, limit, clash, 'Folded')),
      ...judgeBendsOver(context, folding.value, limit),
    ]
    // Where the end state certainly clashes, the way there cannot be free.
    return state.clashes.some(({ kind }) => kind !== 'cannot-tell')
      ? folded
      : [
          ...folded,
          ...judgeLeast(context, folding.value, limit, state.least),
          ...judgeWay(context, folding.value, limit),
          ...judgeLeafSlack(context, folding.value, 'the gaps that loose leaves keep'),
        ]
  },
})

/** A ring of areas that its bends do not bring back to itself would have to tear or buckle: there is no folded state to look at. */
function judgeChains(context: EvaluationContext, folding: FoldableDesign): Outcome[] {
  return listOpenChains(folding).map(({ bendId, offsetMm, turnDeg }): Outcome => {
    const bend = context.design.bends.find(({ id }) => id === bendId)
    const places = [bend === undefined ? DESIGN_PLACE : placeOf('bend', bend)]
    const name = bend?.name ?? bendId
    const isOff = offsetMm > CHAIN_LIMITS.offset.value
    return decide({
      value: isOff ? offsetMm : turnDeg,
      limit: isOff ? CHAIN_LIMITS.offset : CHAIN_LIMITS.turn,
      places,
      what: `what is left at bend ${name}, which closes a ring of areas`,
      equation: 'ring followed one way round, neutral lengths kept',
      summary: `The ring of areas that bend ${name} closes does not close when it is folded: its ends are ${inSentence(offsetMm, 'mm')} apart and turned by ${inSentence(turnDeg, 'deg')} to each other.`,
    })
  })
}

function judge(context: EvaluationContext, folding: FoldableDesign, limit: Limit, clash: Clash, when: string): Outcome {
  const places = clash.bodyIds.map((id) => placeOfBody(context.design, folding.flat, id))
  const [first, second] = places.map(({ name }) => name)
  const what = `gap between ${first} and ${second}`
  if (clash.kind === 'cannot-tell') {
    return cannotTell(
      what,
      {
        because: `it lies between ${inSentence(clash.lowerMm, 'mm')} and ${inSentence(clash.upperMm, 'mm')}, which is all that is known`,
        decidedBy: 'try it with a model of film',
      },
      places,
      { limit },
    )
  }
  const gapMm = (clash.lowerMm + clash.upperMm) / 2
  return decide({
    value: clash.kind === 'touches' ? 0 : gapMm,
    range: { low: clash.lowerMm, high: clash.upperMm },
    limit: clash.allowedMm === limit.value ? limit : makeOwnGap(clash.allowedMm),
    places,
    what,
    equation: EQUATION,
    summary:
      clash.kind === 'touches'
        ? `${when}, ${first} and ${second} meet.`
        : `${when}, ${first} and ${second} come within ${inSentence(gapMm, 'mm')} of each other; at least ${inSentence(clash.allowedMm, 'mm')}.`,
  })
}

/** A bend that lies over another one with the clearance between them presses on nothing; how hard a nearer one presses is not computed. */
function judgeBendsOver({ design }: EvaluationContext, folding: FoldableDesign, limit: Limit): Outcome[] {
  return listBendsOver(design, folding).map((pair) => {
    const places = [placeOf('bend', pair.over), placeOf('bend', pair.under)]
    const apart = `${inSentence(pair.gapMm, 'mm')} between them`
    return pair.gapMm >= limit.value
      ? decide({
          value: pair.gapMm,
          limit,
          places,
          what: 'gap between bends that lie over each other',
          equation: 'distance of the outer bend from the axis of the inner one, less its outside radius',
          sourceKey: 'exactArithmetic',
          summary: `${callByName('Bend', pair.over.name)} lies over ${callByName('bend', pair.under.name)}, with ${apart}.`,
        })
      : cannotTell(
          `whether ${callByName('bend', pair.under.name)} is creased`,
          {
            because: `${callByName('bend', pair.over.name)} lies over it with ${apart}, and how hard it is pressed is not computed`,
            decidedBy: 'hold both radii by a former, or try it with a model of film',
          },
          places,
          { limit },
        )
  })
}

/** Pieces that lie near each other along the part keep what lies between them there: no clearance that anybody sets. */
const makeOwnGap = (value: number): Limit =>
  makeSourceLimit({ key: 'gapAlongPart', value, unit: 'mm', sense: 'at-least', sourceKey: 'commonPractice' })

function judgeLeast(
  context: EvaluationContext,
  folding: FoldableDesign,
  limit: Limit,
  least: ReturnType<typeof checkFold>['least'],
): Outcome[] {
  if (least === null) return []
  const places = least.bodyIds.map((id) => placeOfBody(context.design, folding.flat, id))
  return [
    decide({
      value: (least.lowerMm + least.upperMm) / 2,
      range: { low: least.lowerMm, high: least.upperMm },
      limit,
      places,
      what: `least gap of the folded part, between ${places.map(({ name }) => name).join(' and ')}`,
      equation: EQUATION,
    }),
  ]
}

function judgeWay(context: EvaluationContext, folding: FoldableDesign, limit: Limit): Outcome[] {
  const found = findOrder(folding, limit.value)
  const places = [DESIGN_PLACE]
  const nameStep = (bands: readonly string[]) =>
    context.design.bends.find(({ id }) => id === folding.flat.bendOfBand.get(bands[0] ?? ''))?.name ?? ''
  if (found.kind === 'found') {
    return [
      decide({
        value: 0,
        limit: makeNoneAllowed('clashesOnTheWay', 'commonPractice'),
        places,
        what: 'collisions during folding',
        equation: 'every bend from flat to its angle, one after the other',
        summary: `Nothing collides when it is folded in this order: ${found.order.map(nameStep).join(', ')}.`,
      }),
    ]
  }
  const clashes = found.clashes.map(({ clash, step }) =>
    judge(context, folding, limit, clash, `While ${callByName('bend', nameStep(folding.order[step] ?? []))} is made`),
  )
  if (found.kind === 'none') return clashes.filter(({ kind }) => kind === 'decided')
  if (found.kind === 'cannot-tell') {
    return [
      cannotTell(
        'clearance during folding',
        {
          because: `no order is known in which nothing meets, and in the order ${found.order.map(nameStep).join(', ')} nothing certainly does`,
          decidedBy: 'try it with a model of film',
        },
        places,
      ),
    ]
  }
  return [
    cannotTell(
      'clearance during folding',
      {
        because: found.clashes.some(({ clash }) => clash.kind !== 'cannot-tell')
          ? 'it clashes in the order in which the bends stand, and there are too many bends to try every order'
          : 'in the order in which the bends stand nobody can tell whether something meets, and there are too many bends to try every order',
        decidedBy: 'try it with a model of film',
      },
      places,
    ),
  ]
}
