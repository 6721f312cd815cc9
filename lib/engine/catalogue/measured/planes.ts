import type { OnPlanHatch } from '@/lib/artwork'
import type { EvaluationContext } from '../../context'
import type { Bend } from '../../design'
import type { Outcome } from '../../results'
import { inSentence } from '../../units'
import { makeNoneAllowed } from '../decide'
import { type ArtworkInView, findArtworkInView } from './artwork-in-view'
import { checkBandLayers } from './in-bends'

/** Copper over nearly all of a bend is a plane without gaps. Our choice: hatches cover 30 to 80 %. */
const SOLID_FRACTION = 0.95
/** A plane whose solid patches take half of a bend bends as a sheet there; a twentieth may be a wide conductor or a land. Our choice. */
const SOLID_PATCH_FRACTION = 0.5
const SMALL_PATCH_FRACTION = 0.05

export const planesInBends = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkPlanes(context, view, (use) => use !== 'fold-once')

export const planesInFolds = (context: EvaluationContext, view: ArtworkInView): Outcome[] =>
  checkPlanes(context, view, (use) => use === 'fold-once')

/** Whether a plane is hatched or split where it bends, as it is drawn. */
function checkPlanes(context: EvaluationContext, view: ArtworkInView, isAsked: (use: Bend['use']) => boolean) {
  return checkBandLayers(context, view, ({ copperFraction, fileName, hatch, solid }, where, { bendId }) => {
    const layer = view.layerOf(fileName)
    const bend = context.design.bends.find(({ id }) => id === bendId)
    if (bend === undefined || !isAsked(bend.use)) return null
    if (layer?.kind !== 'conductor' || layer.role === 'signal' || layer.planePattern === 'none') return null
    if (copperFraction === 0) return null
    // Strips of a split plane may be as wide as they like.
    const patchFraction = layer.planePattern === 'split' ? 0 : (solid?.fraction ?? 0)
    const isSolid = copperFraction >= SOLID_FRACTION || patchFraction >= SOLID_PATCH_FRACTION
    const isOpen = !isSolid && patchFraction >= SMALL_PATCH_FRACTION
    // What is neither solid nor hatched may be split, or conductors alone: a pattern that nobody stated stays to be stated.
    if (!isSolid && !isOpen && hatch === null && layer.planePattern === null) return null
    return {
      value: isSolid ? 1 : 0,
      limit: makeNoneAllowed('solidPlanesInBendCount', 'guideDesignRules'),
      what: `solid planes in ${where}, of which copper covers ${inSentence(copperFraction * 100, 'pct')}${hatch === null ? '' : `, ${sayHatch(hatch)}`}`,
      atMm: isSolid || isOpen ? (solid?.atMm ?? null) : (hatch?.atMm ?? null),
      equation: 'copper over nearly all of the bend, or more than 2 mm wide every way over half of it',
      ...(isOpen
        ? {
            open: {
              because: `copper more than 2 mm wide every way covers ${inSentence(patchFraction * 100, 'pct')} of the bend, and may be a wide conductor or plane that is not hatched`,
              decidedBy: 'look at that place',
            },
          }
        : {}),
    }
  })
}

/** `hatched with bars of 0.2 mm at a pitch of 0.5 mm, at 45°`. */
export const sayHatch = ({ barMm, pitchMm, angleDeg }: OnPlanHatch): string =>
  `hatched with bars of ${inSentence(roundTo(barMm, 1000), 'mm')} at a pitch of ${inSentence(roundTo(pitchMm, 1000), 'mm')}, at ${inSentence(roundTo(angleDeg, 10), 'deg')}`

/** Finer digits are those of the coordinates. */
const roundTo = (value: number, parts: number): number => Math.round(value * parts) / parts

/** The hatch that artwork draws on a layer in a zone, as the plan and the construction are now; null where it draws none, or nobody can tell. */
export function findDrawnHatch(context: EvaluationContext, zoneId: string, layerId: string): OnPlanHatch | null {
  const view = findArtworkInView(context)
  if (view === null || !view.isPlanSame || view.onPlan?.registration?.isUnique !== true) return null
  const measured = view.onPlan.layers.find(({ fileName }) => view.layerOf(fileName)?.id === layerId)
  return measured?.zones.find((zone) => zone.zoneId === zoneId)?.hatch ?? null
}
