import type { FlatPartOfPlan } from '@/lib/fold'
import { areasOf } from '@/lib/plan'
import type { Design } from '../design'
import { DESIGN_PLACE, type Place, placeOf } from '../results'

/** What a body of the folded part is in the design: its bend, its component, or the area that it is. */
export function placeOfBody(
  { plan, bends, features, construction }: Design,
  flat: FlatPartOfPlan,
  bodyId: string,
): Place {
  const bend = bends.find(({ id }) => id === flat.bendOfBand.get(bodyId))
  if (bend !== undefined) return placeOf('bend', bend)
  const drawn = plan?.components.find(({ id }) => id === bodyId)
  const component = features.components.find(({ id }) => id === drawn?.componentId)
  if (component !== undefined) return placeOf('component', component)
  const piece = flat.pieces.find(({ id }) => id === bodyId)
  const area = plan === null || piece === undefined ? undefined : areasOf(plan).areas[piece.area]
  const zone = construction.zones.find(({ id }) => id === area?.zoneId)
  return zone === undefined ? DESIGN_PLACE : placeOf('zone', { id: zone.id, name: area?.name ?? zone.name })
}
