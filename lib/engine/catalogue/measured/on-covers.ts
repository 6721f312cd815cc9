import type { EvaluationContext } from '../../context'
import { DESIGN_PLACE, type Outcome, type Place } from '../../results'
import { decide, makeNoneAllowed } from '../decide'
import { findMethodLimit } from '../method-limits'
import type { ArtworkInView } from './artwork-in-view'
import { judge, sayPlace, spotIn } from './in-bends'

/** A file of a coverlay that covers more of the part than this draws the film itself, and no openings. Our choice. */
const MOST_OPEN_FRACTION = 0.5
/** Arcs are flattened to within 1 um, and two of them may face each other. */
const TOLERANCE_MM = 0.002

/** The narrowest strip between two openings of each coverlay. Where openings are made in several ways, only what holds or fails for each of them is said. */
export function webs(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  const { design, drawing } = context
  const partMm2 = drawing.measures?.part?.areaMm2 ?? null
  if (partMm2 === null) return []
  const { coverlayOpenings } = design.features
  const methods = coverlayOpenings.length === 0 ? [null] : [...new Set(coverlayOpenings.map(({ method }) => method))]
  const limits = methods
    .map((method) => findMethodLimit(context, 'coverlayWeb', method))
    .sort((one, other) => one.value - other.value)
  const [loosest, strictest] = [limits[0], limits.at(-1)]
  if (loosest === undefined || strictest === undefined) return []
  return view.covers.flatMap(({ name, role, openings }): Outcome[] => {
    if (openings?.leastWeb == null || openings.areaMm2 > MOST_OPEN_FRACTION * partMm2) return []
    const { mm, atMm } = openings.leastWeb
    const isBetween = mm < strictest.value - TOLERANCE_MM && mm >= loosest.value - TOLERANCE_MM
    // Nobody said how the openings are made, and a method that asks for more may be meant.
    const isOpen = methods.includes(null) && mm < context.getLimit('coverlayWebPunchMm').value && mm >= loosest.value
    if (isBetween || isOpen) return []
    const value = Math.abs(mm - strictest.value) <= TOLERANCE_MM ? strictest.value : mm
    return [
      decide({
        value,
        limit: strictest,
        places: [coverOf(context, role.side)],
        what: `narrowest strip of coverlay between openings${role.side === null ? '' : ` at the ${role.side}`}`,
        equation: 'between openings that do not hang together',
        artworkAt: spotIn('files', atMm),
        remark: `Measured in ${name}, at ${sayPlace(atMm)} of the file.`,
      }),
    ]
  })
}

/** The outermost coverlay of that side; the design where there is none, or no side is said. */
function coverOf({ design }: EvaluationContext, side: 'top' | 'bottom' | 'inner' | null): Place {
  const films = design.construction.layers.filter(({ kind }) => kind === 'coverlay-film')
  const film = side === 'top' ? films[0] : side === 'bottom' ? films.at(-1) : undefined
  return film === undefined ? DESIGN_PLACE : { kind: 'layer', id: film.id, name: film.name }
}

/** Lands on film into which a conductor runs without growing wider. */
export function teardrops(context: EvaluationContext, view: ArtworkInView): Outcome[] {
  if (!view.isPlanSame) return []
  const films = context.design.construction.zones.filter(({ kind }) => kind !== 'rigid')
  return (view.onPlan?.layers ?? []).flatMap(({ fileName, zones }) =>
    zones.flatMap(({ zoneId, joinedLands: { count, bareCount, firstBareAtMm } }): Outcome[] => {
      const zone = films.find(({ id }) => id === zoneId)
      const layer = view.layerOf(fileName)
      if (zone === undefined || layer === null || count === 0) return []
      return [
        judge(
          view,
          {
            value: bareCount,
            limit: makeNoneAllowed('landsWithoutTeardropCount', 'guideDesignRules'),
            what: `lands of ${layer.name} in ${zone.name} without a teardrop, of ${count} that a conductor runs into`,
            atMm: firstBareAtMm,
            equation: "copper beside the conductor just outside of the land's edge",
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
