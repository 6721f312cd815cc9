import type { OnPlanBand, OnPlanBandLayer } from '@/lib/artwork'
import type { EvaluationContext } from '../../context'
import type { ArtworkSpot, Limit, Outcome, Place } from '../../results'
import { inSentence } from '../../units'
import { cannotTell, decide, makeNoneAllowed, makeSourceLimit } from '../decide'
import type { ArtworkInView } from './artwork-in-view'

type PointMm = readonly [number, number]

/** A figure that artwork has in a bend, with the place in the plan where it was found. */
export interface FoundInBend {
  readonly value: number
  readonly limit: Limit
  /** `angle of a conductor to the axis of Hinge on L1`. */
  readonly what: string
  readonly atMm: PointMm | null
  readonly equation: string
  /** Why the figure decides nothing; left out where it does. */
  readonly open?: { readonly because: string; readonly decidedBy: string }
}

/** One outcome for each layer in each bend of which the artwork shows something. */
export function checkBandLayers(
  context: EvaluationContext,
  view: ArtworkInView,
  find: (layer: OnPlanBandLayer, where: string, bandOf: OnPlanBand) => FoundInBend | null,
): Outcome[] {
  return view.bands.flatMap((band) =>
    band.layers.flatMap((layer) => {
      const { name, place } = nameBend(context, band)
      const own = view.layerOf(layer.fileName)
      const where = `${name} on ${own?.name ?? layer.fileName}`
      const found = find(layer, where, band)
      const places: Place[] = [place, ...(own === null ? [] : [{ kind: 'layer', id: own.id, name: own.name } as const])]
      return found === null ? [] : [judge(view, found, places, layer.fileName)]
    }),
  )
}

export function nameBend({ design }: EvaluationContext, { bendId }: OnPlanBand): { name: string; place: Place } {
  const name = design.bends.find(({ id }) => id === bendId)?.name ?? bendId
  return { name, place: { kind: 'bend', id: bendId, name } }
}

const SEVERAL_POSITIONS = {
  because: 'the outline of the artwork fits the plan in several positions, and nothing says which one is meant',
  decidedBy: 'draw the holes in plan, or use one set of coordinates for plan and artwork',
}

/** A place is said as it stands in the plan. Where the set may lie on the plan in another way too, what fails cannot be told. */
export function judge(view: ArtworkInView, found: FoundInBend, places: readonly Place[], fileName: string): Outcome {
  const { value, limit, what, atMm, equation, open } = found
  const artworkAt = atMm === null ? undefined : spotIn('plan', atMm)
  const decided = decide({
    value,
    limit,
    places,
    what,
    equation,
    artworkAt,
    remark: `Measured in ${fileName}${atMm === null ? '' : `, at ${formatPointMm(atMm)} of the plan`}.`,
  })
  const unsure = view.onPlan?.registration?.isUnique === false ? SEVERAL_POSITIONS : (open ?? null)
  if (unsure === null) return decided
  return cannotTell(what, unsure, places, {
    value: decided.value,
    limit,
    ...(artworkAt === undefined ? {} : { artworkAt }),
  })
}

export const spotIn = (frame: ArtworkSpot['frame'], [xMm, yMm]: PointMm): ArtworkSpot => ({ frame, xMm, yMm })

export const formatPointMm = ([x, y]: PointMm): string => `(${inSentence(x)}, ${inSentence(y)}) mm`

export function angles(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limit = context.getLimit('crossingAngleDeg')
  return checkBandLayers(context, view, ({ leastAngle }, where) =>
    leastAngle === null
      ? null
      : {
          // Coordinates in whole nanometres turn a right angle by less than this.
          value: leastAngle.deg > 89.999 ? 90 : leastAngle.deg,
          limit,
          what: `least angle of a conductor to the axis of ${where}`,
          atMm: leastAngle.atMm,
          equation: 'direction of the stroke against the axis',
        },
  )
}

export const turns = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkBandLayers(context, view, ({ pieceCount, turnCount, largestTurn }, where) =>
    pieceCount === 0
      ? null
      : {
          value: turnCount,
          limit: makeNoneAllowed('turnsInBendCount', 'guideCircuitConstruction'),
          what: `changes of direction inside ${where}`,
          atMm: largestTurn?.atMm ?? null,
          equation: 'strokes that meet at an angle of 2° and more, and arcs',
        },
  )

export const widthChanges = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkBandLayers(context, view, ({ pieceCount, widthChangeCount, widthChange }, where) =>
    pieceCount === 0
      ? null
      : {
          value: widthChangeCount,
          limit: makeNoneAllowed('widthChangesInBendCount', 'guideCircuitConstruction'),
          what: `changes of width inside ${where}`,
          atMm: widthChange?.atMm ?? null,
          equation: 'strokes of different width that meet',
        },
  )

/** Ends, junctions and pads: anything but conductors that run through. */
export const interruptions = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkBandLayers(context, view, ({ ends, junctions, pads }, where) => {
    const all = [
      { ...ends, word: 'end' },
      { ...junctions, word: 'junction' },
      { ...pads, word: 'pad' },
    ].filter(({ count }) => count > 0)
    const [first] = all
    return {
      value: all.reduce((sum, { count }) => sum + count, 0),
      limit: makeNoneAllowed('interruptionsInBendCount', 'commonPractice'),
      what: `conductor ends, junctions and pads inside ${where}`,
      atMm: first?.firstAtMm ?? null,
      equation: 'strokes that end or branch, and flashes that reach into the bend',
    }
  })

/** Less of the lesser conductor than this over its neighbour is a crossing of edges, or rounding. Our choice. */
const LEAST_SHARE_PCT = 1

export function stacked(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  return view.bands.flatMap((band) => {
    const { name, place } = nameBend(context, band)
    return band.stacked.map(({ upper, lower, shareFraction }) => {
      const pct = shareFraction * 100
      return judge(
        view,
        {
          value: pct < LEAST_SHARE_PCT ? 0 : pct,
          limit: makeSourceLimit({
            key: 'stackedSharePct',
            value: 0,
            unit: 'pct',
            sense: 'at-most',
            sourceKey: 'guideCircuitConstruction',
          }),
          what: `share of the lesser copper that lies over its neighbour in ${name}`,
          atMm: null,
          equation: 'area in common over the lesser area',
        },
        [place],
        `${upper} and ${lower}`,
      )
    })
  })
}

export function holesToBends(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limit = context.getLimit('holeToBendMm')
  return view.bands.flatMap((band) => {
    const { name, place } = nameBend(context, band)
    const { holes, nearestHole } = band
    if (holes.count === 0 && nearestHole === null) return []
    return [
      judge(
        view,
        {
          value: holes.count > 0 ? 0 : (nearestHole?.mm ?? 0),
          limit,
          what:
            holes.count > 0
              ? `holes that reach into ${name}, ${holes.count} of them: distance`
              : `nearest drilled hole to ${name}`,
          atMm: holes.count > 0 ? holes.firstAtMm : (nearestHole?.atMm ?? null),
          equation: 'from the wall of the hole to the border of the bend',
        },
        [place],
        'the drill files',
      ),
    ]
  })
}
