import type { Mover } from './move'
import { nameLayersClearly } from './names'
import { enlargeLand, enterNumber, taperStep } from './numbers'
import { lengthen, moveAway, refillet, squareCrossing, stagger } from './on-plan'
import { refitZone, thickenFiller } from './thickness'

export type { Move } from './move'
export { moveApart } from './on-plan'

/** What is tried on a failure, by what its limit is about; the plan before the number beside it. */
export function listMovers(itemId: string): readonly Mover[] {
  switch (itemId) {
    case 'corner-radius':
      return [refillet, enterNumber]
    case 'crossing-angle':
      return [squareCrossing]
    case 'layer-stagger':
      return [stagger]
    case 'stiffener-overlap':
      return [lengthen, enterNumber]
    case 'finger-thickness':
    case 'fitted-thickness':
    case 'stated-thickness':
      return [refitZone]
    case 'copper-encapsulation':
      return [thickenFiller]
    case 'layer-names':
      return [nameLayersClearly]
    case 'width-step':
      return [taperStep]
    case 'annular-ring':
      return [enlargeLand]
    default:
      return [moveAway, enterNumber]
  }
}
