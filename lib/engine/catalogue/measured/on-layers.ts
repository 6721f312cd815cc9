import type { EvaluationContext } from '../../context'
import type { Limit, Outcome, Place } from '../../results'
import { decide } from '../decide'
import { makeWidthLimits } from '../width-for-copper'
import type { ArtworkInView, MeasuredLayer } from './artwork-in-view'
import { judge, sayPlace, spotIn } from './in-bends'

interface Least {
  readonly mm: number
  readonly atMm: readonly [number, number]
}

/** Arcs are flattened to within 1 um, and two of them may face each other: a figure as near to its limit as that is on it. */
const TOLERANCE_MM = 0.002

const within = (mm: number, limit: Limit): number => (Math.abs(mm - limit.value) <= TOLERANCE_MM ? limit.value : mm)

const placesOf = ({ layer }: MeasuredLayer): Place[] => [{ kind: 'layer', id: layer.id, name: layer.name }]

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
        remark: `Measured in ${measured.file.name}, at ${sayPlace(found.atMm)} of the file.`,
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

/** The strictest of what the cut may be, where nobody says how the outline is cut. */
export function toOutline(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const { outlineCutBy } = context.design.features
  const [fine, coarse] = [context.getLimit('copperToFineOutlineMm'), context.getLimit('copperToOutlineMm')]
  const strict = fine.value >= coarse.value ? fine : coarse
  const limit = outlineCutBy === null ? strict : outlineCutBy === 'laser' || outlineCutBy === 'die' ? fine : coarse
  if (!view.isPlanSame) return []
  return (view.onPlan?.layers ?? []).flatMap(({ fileName, toOutline: least }) => {
    const layer = view.layerOf(fileName)
    // Nearer than any rule asks: there is nothing to say, and nothing to fail.
    if (layer === null || least === null) return []
    const kind = outlineCutBy === null && least.mm >= Math.min(fine.value, coarse.value) && least.mm < strict.value
    // Enough for one cut and not for another: how the outline is cut is asked by the item itself.
    if (kind) return []
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
  })
}
