import { type Design, getChoiceWord, getConnectorThickness, NOT_STATED, ZONE_FIELDS } from '@/lib/engine'
import type { CrossSectionBlock, SheetColumn, SheetResults, SheetTable } from './model'
import type { SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

/** Zones with their plan dimensions and finished thickness: the worst case of the layers' tolerances beside the tolerance that is stated. */
export function makeZoneTable({ construction }: Design, results: SheetResults | null, words: SheetWords): SheetTable {
  const um = words.thicknessUnit
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'zones',
    title: 'Zones and finished thickness',
    keyColumnCount: 1,
    columns: [
      column('Zone', 11),
      column('Name', 30, 1),
      column('Kind', 16),
      column(`Length, ${mm}`, 17, 0, true),
      column(`Width, ${mm}`, 17, 0, true),
      column('Layers', 13, 0, true),
      column(`Finished, ${um}`, 17, 0, true),
      column(`Worst case, ${um}`, 20, 0, true),
      column(`Tolerance, ${um}`, 18, 0, true),
      column(`Stated elsewhere, ${um}`, 18, 0, true),
    ],
    rows: construction.zones.map((zone) => {
      const result = results?.zones.find(({ zoneId }) => zoneId === zone.id)
      return {
        id: zone.id,
        cells: [
          words.zone(zone.id),
          zone.name,
          zone.kind,
          words.plan(zone.lengthMm),
          words.plan(zone.widthMm),
          String(zone.presence.length),
          result === undefined ? 'not computed' : words.thickness(result.thicknessUm),
          result === undefined
            ? ''
            : words.computedDeviation(
                result.worstCaseUm.high - result.thicknessUm,
                result.thicknessUm - result.worstCaseUm.low,
              ),
          zone.statedToleranceUm === null ? NOT_STATED : `±${words.enteredThickness(zone.statedToleranceUm)}`,
          zone.statedThicknessUm === null ? '–' : words.enteredThickness(zone.statedThicknessUm),
        ],
      }
    }),
  }
}

/** Zones that go into a connector; null where there are none. */
export function makeConnectorTable(
  { construction }: Design,
  results: SheetResults | null,
  words: SheetWords,
): SheetTable | null {
  const zones = construction.zones.filter(({ kind, connectorWindow }) => kind === 'finger' || connectorWindow !== null)
  if (zones.length === 0) return null
  const um = words.thicknessUnit
  return {
    kind: 'table',
    id: 'connectors',
    title: 'Connector ends: thickness window',
    keyColumnCount: 1,
    columns: [
      column('Zone', 11),
      column('Name', 28, 1),
      column(`Connector accepts, ${um}`, 30, 0, true),
      column(`${ZONE_FIELDS.contactFinish.label}, ${um}`, 22, 0, true),
      column(`Over contacts, ${um}`, 22, 0, true),
      column(`Over tolerances, ${um}`, 30, 0, true),
    ],
    rows: zones.map((zone) => {
      const result = results?.zones.find(({ zoneId }) => zoneId === zone.id)
      // A connector takes the end where its contacts are; a figure that lacks an input stands on no drawing.
      const isKnown = result !== undefined && (result.contact === null || result.contact.missing.length === 0)
      const contact = isKnown ? getConnectorThickness(result) : null
      const window = zone.connectorWindow
      return {
        id: zone.id,
        cells: [
          words.zone(zone.id),
          zone.name,
          window === null
            ? NOT_STATED
            : `${words.enteredThickness(window.minUm)} to ${words.enteredThickness(window.maxUm)}`,
          zone.contactFinish === null
            ? NOT_STATED
            : `${words.enteredThickness(zone.contactFinish.thicknessUm)} ±${words.enteredThickness(zone.contactFinish.toleranceUm)}`,
          contact === null ? 'not computed' : words.thickness(contact.thicknessUm),
          contact === null
            ? ''
            : `${words.thickness(contact.worstCaseUm.low)} to ${words.thickness(contact.worstCaseUm.high)}`,
        ],
      }
    }),
  }
}

/** Side by side no more than this, so that each keeps room for its kind and thickness. */
const ZONES_PER_PART_SECTION = 8

export function makeSections(results: SheetResults | null, words: SheetWords): CrossSectionBlock[] {
  const zones = (results?.zones ?? []).filter(({ layers }) => layers.length > 0)
  const parts: CrossSectionBlock[] = []
  for (let first = 0; first < zones.length; first += ZONES_PER_PART_SECTION) {
    const shown = zones.slice(first, first + ZONES_PER_PART_SECTION)
    const from = words.zone(shown[0]?.zoneId ?? '')
    const to = words.zone(shown.at(-1)?.zoneId ?? '')
    parts.push({
      kind: 'section',
      id: `part-${first}`,
      title: from === to ? `Section through the part, ${from}` : `Section through the part, ${from} to ${to}`,
      of: 'part',
      zones: shown,
      leastMm: 180,
    })
  }
  return [
    ...parts,
    ...zones.map((zone): CrossSectionBlock => {
      const { low, high } = zone.worstCaseUm
      const range = `${words.thickness(low)} to ${words.thickness(high)}`
      return {
        kind: 'section',
        id: `zone-${zone.zoneId}`,
        title: `${words.zone(zone.zoneId)} ${zone.name} (${getChoiceWord(ZONE_FIELDS.kind, zone.kind)}): ${words.thickness(zone.thicknessUm)} ${words.thicknessUnit} (${range})`,
        of: 'zone',
        zones: [zone],
        leastMm: 118,
      }
    }),
  ]
}
