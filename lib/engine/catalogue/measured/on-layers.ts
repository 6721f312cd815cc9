import type { EvaluationContext } from '../../context'
import { roundToDigits } from '../../numerics'
import { DESIGN_PLACE, type Limit, type Outcome, type Place } from '../../results'
import { inSentence } from '../../units'
import { decide, makeNoneAllowed } from '../decide'
import { findUnmetNeed } from '../needs'
import { makeWidthLimits } from '../width-for-copper'
import type { ArtworkInView, MeasuredLayer } from './artwork-in-view'
import { formatPointMm, judge, spotIn } from './in-bends'

interface Least {
  readonly mm: number
  readonly atMm: readonly [number, number]
}

/** Arcs are flattened to within 1 um, and two of them may face each other: a figure as near to its limit as that is on it. */
const TOLERANCE_MM = 0.002

export const within = (mm: number, limit: Limit): number =>
  Math.abs(mm - limit.value) <= TOLERANCE_MM ? limit.value : mm

export const placesOf = ({ layer }: MeasuredLayer): Place[] => [{ kind: 'layer', id: layer.id, name: layer.name }]

function checkLayers(
  view: ArtworkInView,
  what: string,
  equation: string,
  read: (layer: MeasuredLayer) => Least | null,
  limitOf: (layer: MeasuredLayer) => { readonly limit: Limit } | null,
): Outcome[] {
  return view.layers.flatMap((measured) => {
    const [found, held] = [read(measured), limitOf(measured)]
    if (found === null || held === null) return []
    return [
      decide({
        value: within(found.mm, held.limit),
        limit: held.limit,
        places: placesOf(measured),
        what: `${what} ${measured.layer.name}`,
        equation,
        artworkAt: spotIn('files', found.atMm),
        remark: `Measured in ${measured.file.name}, at ${formatPointMm(found.atMm)} of the file.`,
      }),
    ]
  })
}

export function widths(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limitOf = makeWidthLimits(context, context.getLimit('conductorWidthMm'), 'conductorWidthByCopperMm')
  return checkLayers(
    view,
    'narrowest conductor on',
    'width of the stroke; strokes that only fill planes are left out',
    ({ copper }) => copper.narrowest,
    ({ layer }) => limitOf(layer.id),
  )
}

export function spaces(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limitOf = makeWidthLimits(context, context.getLimit('conductorSpaceMm'), 'conductorSpaceByCopperMm')
  return checkLayers(
    view,
    'least space on',
    'between pieces of copper that do not hang together',
    ({ copper }) => copper.leastSpace,
    ({ layer }) => limitOf(layer.id),
  )
}

export function rings(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const limit = context.getLimit('annularRingMm')
  return checkLayers(
    view,
    'least land round a plated hole on',
    "from the drill's wall to the nearest edge of copper",
    ({ copper }) => copper.leastRing,
    () => ({ limit }),
  )
}

/** Strokes that differ in width and meet without a taper, on film. */
export function widthSteps(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  if (!view.isPlanSame) return []
  const films = context.design.construction.zones.filter(({ kind }) => kind !== 'rigid')
  return (view.onPlan?.layers ?? []).flatMap(({ fileName, zones }) =>
    zones.flatMap(({ zoneId, widthSteps: { count, abruptCount, worst } }): Outcome[] => {
      const zone = films.find(({ id }) => id === zoneId)
      const layer = view.layerOf(fileName)
      if (zone === undefined || layer === null || count === 0) return []
      const most =
        worst === null
          ? ''
          : `, the largest from ${inSentence(roundToDigits(worst.wideMm, 4), 'mm')} to ${inSentence(roundToDigits(worst.narrowMm, 4), 'mm')}`
      return [
        judge(
          view,
          {
            value: abruptCount,
            limit: makeNoneAllowed('abruptWidthStepsCount', 'commonPractice'),
            what: `changes of width on ${layer.name} in ${zone.name} without a taper, of ${count}${most}`,
            atMm: worst?.atMm ?? null,
            equation:
              'strokes that meet, one wider than the other by a fifth and more, with no copper in the corners between them',
          },
          [
            { kind: 'zone', id: zone.id, name: zone.name },
            { kind: 'layer', id: layer.id, name: layer.name },
          ],
          fileName,
        ),
      ]
    }),
  )
}

/** An item of each of two classes asks the same. */
export const transitionsOf =
  (need: 'class-three' | 'below-class-three') =>
  (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
    findUnmetNeed([need], context) === null ? transitions(context, view) : []

/** Holes and lands without one beside the borders of rigid zones. */
function transitions(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const found = view.isPlanSame ? (view.onPlan?.transitions ?? null) : null
  if (found === null) return []
  const limit = context.getLimit('transitionStripMm')
  const say = (what: string, { mm, atMm }: Least, equation: string, fileName: string) =>
    judge(view, { value: mm, limit, what, atMm, equation }, [DESIGN_PLACE], fileName)
  return [
    ...(found.hole === null
      ? []
      : [say('nearest drilled hole to a rigid edge', found.hole, 'from the wall of the hole', 'the drill files')]),
    ...(found.land === null
      ? []
      : [
          say(
            'nearest land without a hole to a rigid edge',
            found.land,
            'from the rim of the land',
            found.land.fileName,
          ),
        ]),
  ]
}

const HALF_HOLE = {
  because: 'the outline cuts a plated hole, which is how half holes at an edge are drawn',
  decidedBy: 'say on the drawing that it is one, or move the hole',
}

/** The strictest of what the cut may be, where nobody says how the outline is cut. */
export function toOutline(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const { outlineCutBy } = context.design.features
  const [fine, coarse] = [context.getLimit('copperToFineOutlineMm'), context.getLimit('copperToOutlineMm')]
  const strict = fine.value >= coarse.value ? fine : coarse
  const limit = outlineCutBy === null ? strict : outlineCutBy === 'laser' || outlineCutBy === 'die' ? fine : coarse
  if (!view.isPlanSame) return []
  // Enough for one cut and not for another: how the outline is cut is asked by the item itself.
  const isOpen = ({ mm }: Least) =>
    outlineCutBy === null && mm >= Math.min(fine.value, coarse.value) && mm < strict.value
  const hole = view.onPlan?.platedHoleToOutline ?? null
  const holes =
    hole === null || isOpen(hole)
      ? []
      : [
          judge(
            view,
            {
              value: within(hole.mm, limit),
              limit,
              what: 'copper in the wall of a plated hole to the outline',
              atMm: hole.atMm,
              equation: 'from the wall of the hole to outline and cut-outs',
              ...(hole.mm === 0 ? { open: HALF_HOLE } : {}),
            },
            [DESIGN_PLACE],
            'the drill files',
          ),
        ]
  return [
    ...holes,
    ...(view.onPlan?.layers ?? []).flatMap(({ fileName, toOutline: least }) => {
      const layer = view.layerOf(fileName)
      // Farther than any rule asks: there is nothing to say, and nothing to fail.
      if (layer === null || least === null || isOpen(least)) return []
      return [
        judge(
          view,
          {
            value: within(least.mm, limit),
            limit,
            what: `copper of ${layer.name} to the outline`,
            atMm: least.atMm,
            equation: 'nearest edge of copper to outline and cut-outs, connector ends left out',
          },
          [{ kind: 'layer', id: layer.id, name: layer.name }],
          fileName,
        ),
      ]
    }),
  ]
}
