import type { Design } from '@/lib/engine'
import { closedEndsOf, measureCorners, type Plan } from '@/lib/plan'
import type { Point } from './frame'
import { makePlanReferences } from './references'

/** A shape of the border that a sheet may have to show larger: inside corners with a tear stop, and ends of slits. Alike ones are one, with several places. */
export interface DetailPlace {
  readonly kind: 'corner' | 'slit-end'
  readonly name: string
  /** Reference of its tear stop; null where the design states none. */
  readonly tearStop: string | null
  /** Of a corner. */
  readonly insideRadiusMm: number | null
  /** Of a slit; 0 is a cut, null is not known. */
  readonly slitWidthMm: number | null
  readonly reliefDiameterMm: number | null
  /** At least one. */
  readonly placesMm: readonly Point[]
}

/** In the order of the features, which numbers the tear stops; what no plan places is not among them. */
export function listDetailPlaces(design: Design, plan: Plan): DetailPlace[] {
  const { tearStops } = makePlanReferences(design)
  const { outlineCorners, slits } = design.features
  const stopped = outlineCorners.filter(({ id }) => tearStops.has(id))
  // Inside corners are numbered as the outline is drawn, which names those that no entry is placed at.
  const measured = stopped.length === 0 ? [] : measureCorners(plan)
  const corners = stopped.flatMap(({ id, name }) =>
    measured.flatMap(({ cornerId, atMm, radiusMm }, at): DetailPlace[] =>
      cornerId === id || (cornerId === null && `plan-corner-${at + 1}` === id)
        ? [
            {
              kind: 'corner',
              name,
              tearStop: tearStops.get(id) ?? null,
              insideRadiusMm: Math.round(radiusMm * 1e4) / 1e4,
              slitWidthMm: null,
              reliefDiameterMm: null,
              placesMm: [atMm],
            },
          ]
        : [],
    ),
  )
  const ends = plan.slits.flatMap((slit) =>
    closedEndsOf(plan, slit).map(
      ({ atMm, reliefDiameterMm }): DetailPlace => ({
        kind: 'slit-end',
        name: slits.find(({ id }) => id === slit.slitId)?.name ?? slit.name,
        tearStop: slit.slitId === null ? null : (tearStops.get(slit.slitId) ?? null),
        insideRadiusMm: null,
        slitWidthMm: slit.widthMm,
        reliefDiameterMm,
        placesMm: [atMm],
      }),
    ),
  )
  const alike = new Map<string, DetailPlace>()
  for (const place of [...corners, ...ends]) {
    const { placesMm, ...shape } = place
    const key = JSON.stringify(shape)
    alike.set(key, { ...place, placesMm: [...(alike.get(key)?.placesMm ?? []), ...placesMm] })
  }
  return [...alike.values()]
}

/** What has to be seen of it: the greatest of its measures, at least what a cut alone is given. */
export const sizeOfDetail = ({ insideRadiusMm, slitWidthMm, reliefDiameterMm }: DetailPlace): number =>
  Math.max(LEAST_MM, insideRadiusMm ?? 0, slitWidthMm ?? 0, reliefDiameterMm ?? 0)

/** A sharp corner or a cut has no size of its own. Our choice. */
const LEAST_MM = 0.3
