import type { ArtworkFileFacts, OnPlanBand, OnPlanFacts } from '@/lib/artwork'
import { groundOfDrawing } from '../../artwork-check/ground'
import type { EvaluationContext } from '../../context'
import type { Layer } from '../../design'

/** A copper file that was worked out, with the conductor layer of the construction that it draws. */
export interface MeasuredLayer {
  readonly file: ArtworkFileFacts
  readonly copper: NonNullable<ArtworkFileFacts['copper']>
  readonly layer: Layer
}

/** What was measured in the artwork and still holds for this design. */
export interface ArtworkInView {
  readonly layers: readonly MeasuredLayer[]
  /** Files of a coverlay. */
  readonly covers: readonly ArtworkFileFacts[]
  /** Every conductor layer was read whole and worked out. */
  readonly areLayersWhole: boolean
  readonly onPlan: OnPlanFacts | null
  /** Bends as they are now: one whose axis or width has changed since is not among them. */
  readonly bands: readonly OnPlanBand[]
  /** Each bend is drawn, and was measured on every layer. */
  readonly areBandsWhole: boolean
  /** Outline, zones and holes are still those that artwork was laid over. */
  readonly isPlanSame: boolean
  readonly layerOf: (fileName: string) => Layer | null
}

const known = new WeakMap<EvaluationContext, ArtworkInView | null>()

/** Null where no artwork was read. Worked out once for each evaluation. */
export function findArtworkInView(context: EvaluationContext): ArtworkInView | null {
  const found = known.get(context)
  if (found !== undefined) return found
  const made = lookAtArtwork(context)
  known.set(context, made)
  return made
}

function lookAtArtwork(context: EvaluationContext): ArtworkInView | null {
  const { artwork = null, onPlan = null } = context.facts
  if (artwork === null) return null
  const conductors = context.design.construction.layers.filter(({ kind }) => kind === 'conductor')
  const copper = artwork.files.filter(({ role }) => role.role === 'copper')
  // Which file is which layer is known where there are as many, in an order that the files say.
  const ordered = orderFiles(copper, onPlan, conductors.length)
  const layerOf = (fileName: string): Layer | null =>
    ordered === null ? null : (conductors[ordered.indexOf(fileName)] ?? null)
  const layers = copper.flatMap((file): MeasuredLayer[] => {
    const layer = layerOf(file.name)
    return file.copper === null || layer === null ? [] : [{ file, copper: file.copper, layer }]
  })
  const areLayersWhole =
    layers.length === conductors.length &&
    conductors.length > 0 &&
    copper.every(({ errorCount, questions }) => errorCount === 0 && questions.length === 0)
  const ground = onPlan === null ? null : groundOfDrawing(context.drawing)
  const bands = (onPlan?.bands ?? []).filter(({ lineId, basis }) =>
    ground?.bands.some((band) => band.lineId === lineId && band.basis === basis),
  )
  const lines = context.design.plan?.bendLines ?? []
  return {
    layers,
    covers: artwork.files.filter(({ role }) => role.role === 'coverlay'),
    areLayersWhole,
    onPlan,
    bands,
    areBandsWhole:
      areLayersWhole &&
      onPlan?.registration?.isUnique === true &&
      context.design.bends.length > 0 &&
      context.design.bends.every(({ id }) => lines.some(({ bendId }) => bendId === id)) &&
      lines.every(({ id }) => bands.some(({ lineId }) => lineId === id)) &&
      // Each strip that a line bends, as it is now.
      (ground?.bands ?? []).every(({ lineId, basis }) =>
        bands.some((band) => band.lineId === lineId && band.basis === basis),
      ),
    isPlanSame: onPlan !== null && ground !== null && onPlan.planBasis === ground.basis,
    layerOf,
  }
}

/** Names of the copper files from the top down; null where there are not as many as layers, or their order is not known. */
function orderFiles(
  copper: readonly ArtworkFileFacts[],
  onPlan: OnPlanFacts | null,
  layerCount: number,
): string[] | null {
  if (copper.length !== layerCount || layerCount === 0) return null
  const placeOf = ({ role }: ArtworkFileFacts): number | null =>
    role.side === 'top' ? 1 : role.side === 'bottom' ? layerCount : role.layerNumber
  const places = copper.map((file) => ({ name: file.name, place: placeOf(file) }))
  const isKnown =
    places.every(({ place }) => place !== null) && new Set(places.map(({ place }) => place)).size === layerCount
  if (isKnown) return places.sort((one, other) => (one.place ?? 0) - (other.place ?? 0)).map(({ name }) => name)
  if (onPlan === null || onPlan.unorderedReason !== null || onPlan.layers.length !== layerCount) return null
  return [...onPlan.layers].sort((one, other) => one.place - other.place).map(({ fileName }) => fileName)
}
