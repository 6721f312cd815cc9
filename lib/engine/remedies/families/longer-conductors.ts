import { type Design, withNetClasses } from '../../design'
import { roundTo } from '../../numerics'
import { setZoneCoverage } from '../edits'
import type { Subject } from '../subject'

type Conductor = Design['features']['conductors'][number]

/** A conductor that was made wider, with what it was. */
export interface Widened {
  readonly name: string
  readonly widthMm: number
  readonly widerMm: number
}

/** Widths are drawn to this, mm. Our choice. */
const DRAWN_STEP_MM = 0.01
/** Lengths are stated to whole micrometres. */
const MM_DECIMALS = 3
/** Shares of copper are kept to a tenth of a per cent. Our choice. */
const COVERAGE_DECIMALS = 3

/**
 * Conductors through a zone that gets longer: each as much longer, and as wide as its voltage drop then asks for, since resistance goes with length over width. One
 * of a stated impedance, its own or its class's, keeps its width. The copper of the bend grows by what they take of its width, each conductor of the list counted once.
 *
 * @param byMm  length that the zone gains
 */
export function lengthenConductors(
  subject: Subject,
  byMm: number,
): { readonly edited: Design; readonly widened: readonly Widened[] } {
  const { design, zone, conductors: layers } = subject
  const bendIds = new Set(design.bends.filter(({ zoneId }) => zoneId === zone.id).map(({ id }) => id))
  const runsThrough = ({ crossings }: Conductor) => crossings.some(({ bendId }) => bendIds.has(bendId))
  const drops = readDrops(subject)
  const widened: (Widened & { readonly layerId: string | null })[] = []
  const needed = withNetClasses(design).features.conductors
  const conductors = design.features.conductors.map((conductor, at): Conductor => {
    const { id, name, lengthMm, widthMm, layerId } = conductor
    if (lengthMm === null || !runsThrough(conductor)) return conductor
    const longer = { ...conductor, lengthMm: roundTo(lengthMm + byMm, MM_DECIMALS) }
    const ofAllowed = (drops.get(id) ?? 0) * (longer.lengthMm / lengthMm)
    if (ofAllowed <= 1 || widthMm === null || (needed[at]?.impedanceOhm ?? null) !== null) return longer
    const widerMm = roundTo(Math.ceil((widthMm * ofAllowed) / DRAWN_STEP_MM) * DRAWN_STEP_MM, MM_DECIMALS)
    widened.push({ name, widthMm, widerMm, layerId })
    return { ...longer, widthMm: widerMm }
  })
  const edited = layers.reduce((copper, { layer, coverageFraction }) => {
    const addedMm = widened
      .filter(({ layerId }) => layerId === layer.id)
      .reduce((sum, { widthMm, widerMm }) => sum + widerMm - widthMm, 0)
    if (addedMm === 0) return copper
    const covered = roundTo(coverageFraction + addedMm / subject.bend.axisLengthMm, COVERAGE_DECIMALS)
    return setZoneCoverage(copper, zone.id, layer.id, Math.max(coverageFraction, Math.min(1, covered)))
  }, design)
  return { edited: { ...edited, features: { ...edited.features, conductors } }, widened }
}

/** Each conductor's voltage drop at the worst corner as a share of what is allowed, where the checklist tells both. */
function readDrops({ assessment }: Subject): ReadonlyMap<string, number> {
  return new Map(
    assessment.check('voltage-drop').flatMap((outcome): [string, number][] => {
      const [place] = outcome.places
      if (outcome.kind !== 'decided' || place === undefined) return []
      return [[place.id, (outcome.range?.high ?? outcome.value.value) / outcome.limit.value]]
    }),
  )
}
