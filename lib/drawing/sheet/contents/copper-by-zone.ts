import { type ConductorLayer, type Design, getChoiceWord, NOT_STATED, ZONE_FIELDS, type Zone } from '@/lib/engine'
import { asEntered } from '@/lib/engine/units'
import type { SheetColumn, SheetTable } from './model'
import type { SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

/** Where plating and hatches are, zone by zone; null where no layer is plated or hatched. */
export function makeCopperByZoneTable({ construction }: Design, words: SheetWords): SheetTable | null {
  const rows = construction.zones.flatMap((zone) =>
    construction.layers.flatMap((layer) => {
      if (layer.kind !== 'conductor') return []
      if (layer.plating.process === 'none' && layer.planePattern !== 'hatched') return []
      const presence = zone.presence.find(({ layerId }) => layerId === layer.id)
      if (presence === undefined) return []
      const cells = [
        words.zone(zone.id),
        layer.name,
        describePlatedCopper(layer, presence),
        describeHatch(layer, presence, words),
      ]
      return [{ id: `${zone.id} ${layer.id}`, cells }]
    }),
  )
  if (rows.length === 0) return null
  return {
    kind: 'table',
    id: 'copper-by-zone',
    title: 'Plating and hatch by zone',
    keyColumnCount: 1,
    columns: [
      column('Zone', 11),
      column('Layer', 28, 1),
      column(ZONE_FIELDS.presence.entry.platedCopper.label, 24),
      column('Hatch', 40, 1),
    ],
    rows,
  }
}

function describePlatedCopper({ plating }: ConductorLayer, { platedCopper }: Zone['presence'][number]): string {
  if (plating.process === 'none') return 'none'
  if (platedCopper === null)
    return plating.process === 'button' ? NOT_STATED : getChoiceWord(ZONE_FIELDS.presence.entry.platedCopper, 'whole')
  return getChoiceWord(ZONE_FIELDS.presence.entry.platedCopper, platedCopper)
}

function describeHatch(
  { planePattern }: ConductorLayer,
  { hatch }: Zone['presence'][number],
  words: SheetWords,
): string {
  if (planePattern !== 'hatched') return '–'
  if (hatch === null) return `bar and pitch ${NOT_STATED}`
  return `bar ${words.plan(hatch.barMm)}, pitch ${words.plan(hatch.pitchMm)} ${words.planUnit}, ${asEntered(hatch.angleDeg, 'deg')}`
}
