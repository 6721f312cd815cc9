import type { ArtworkFileFacts } from '@/lib/artwork'
import type { EvaluationContext } from '../../context'
import type { Limit, Outcome } from '../../results'
import { decide, makeSourceLimit } from '../decide'
import { makeWidthLimits } from '../width-for-copper'
import type { ArtworkInView, MeasuredLayer } from './artwork-in-view'
import { formatPointMm, spotIn } from './in-bends'
import { placesOf, within } from './on-layers'

type Etching = NonNullable<NonNullable<ArtworkFileFacts['copper']>['etching']>

/** Corners are measured within this: arcs are followed to 1 um, and a corner is looked at over 0.05 mm. */
const ANGLE_TOLERANCE_DEG = 2.5

/** The sharpest corner that etches evenly: where hatches and conductors at 45° meet, and no sharper. Our choice; guides ask for no acute angle at all. */
const SHARPEST = makeSourceLimit({
  key: 'etchedCornerDeg',
  value: 45,
  unit: 'deg',
  sense: 'at-least',
  sourceKey: 'ownChoice',
})

/** Copper and gaps too narrow to be etched, and corners that lift or hold etchant, on each layer. */
export function etchTraps(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const widthOf = makeWidthLimits(context, context.getLimit('conductorWidthMm'), 'conductorWidthByCopperMm')
  const spaceOf = makeWidthLimits(context, context.getLimit('conductorSpaceMm'), 'conductorSpaceByCopperMm')
  return view.layers.flatMap((measured): Outcome[] => {
    const { etching } = measured.copper
    const [width, space] = [widthOf(measured.layer.id), spaceOf(measured.layer.id)]
    if (etching === null || width === null || space === null) return []
    return [
      ...judgeWidth(measured, 'narrowest copper', etching.leastCopper, width.limit),
      ...judgeWidth(measured, 'narrowest gap within one piece of copper', etching.leastSlot, space.limit),
      ...judgeCorner(measured, 'sharpest point of copper', etching.sharpestTip),
      ...judgeCorner(measured, 'sharpest gap between edges of copper', etching.sharpestGap),
    ]
  })
}

function judgeWidth(measured: MeasuredLayer, what: string, found: Etching['leastCopper'], limit: Limit): Outcome[] {
  if (found === null) return []
  return [say(measured, what, within(found.mm, limit), limit, found.atMm, 'between edges that face each other')]
}

function judgeCorner(measured: MeasuredLayer, what: string, found: Etching['sharpestTip']): Outcome[] {
  if (found === null) return []
  const value = Math.abs(found.deg - SHARPEST.value) <= ANGLE_TOLERANCE_DEG ? SHARPEST.value : found.deg
  return [say(measured, what, value, SHARPEST, found.atMm, 'angle of the corner, seen 0.05 mm along both edges')]
}

function say(
  measured: MeasuredLayer,
  what: string,
  value: number,
  limit: Limit,
  atMm: readonly [number, number],
  equation: string,
): Outcome {
  return decide({
    value,
    limit,
    places: placesOf(measured),
    what: `${what} on ${measured.layer.name}`,
    equation,
    artworkAt: spotIn('files', atMm),
    remark: `Measured in ${measured.file.name}, at ${formatPointMm(atMm)} of the file.`,
  })
}
