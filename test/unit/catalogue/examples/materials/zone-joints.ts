import { getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

const without =
  (zoneId: string, ...layerIds: string[]): ItemExample['change'] =>
  (design) => {
    const zone = getZone(design, zoneId)
    zone.presence = zone.presence.filter(({ layerId }) => !layerIds.includes(layerId))
  }

export const zoneJointsExamples: readonly ItemExample[] = [
  { name: 'one flexible layer through board, arm and fingers', expect: 'meets' },
  { name: 'a board without the copper of the flex', change: without('board', 'l2'), expect: 'fails' },
  {
    name: 'two boards that share rigid layers alone',
    change: (design) => {
      const board = structuredClone(getZone(design, 'board'))
      board.presence = board.presence.filter(({ layerId }) => layerId !== 'l2' && layerId !== 'base')
      design.construction.zones.push({ ...board, id: 'board-2', name: 'Board 2' })
    },
    expect: 'cannot-tell',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
