import type { Design } from '@/lib/engine'
import { findLengthUnit, getShownUnit, type LengthUnit } from '@/lib/engine/units'
import { readHeading, stateUnit } from './cells'
import { LAYER_COLUMN_KEYS, LAYER_COLUMNS, type LayerColumn } from './columns'
import type { SheetZone } from './rows'
import { writeZoneCell } from './zone-cell'
import { PRESENCE_ROW, readZoneFacts, ZONE_ROW_KEYS, ZONE_ROWS } from './zone-rows'

export type BlockReading =
  | {
      readonly ok: true
      readonly zones: readonly SheetZone[]
      /** Cells of each layer, in the order of the sheet's columns, then its zones. */
      readonly rows: readonly (readonly string[])[]
      /** Headings that were passed over. */
      readonly unknownHeadings: readonly string[]
      /** Unit that bare lengths were taken in, where a heading of a length named none. */
      readonly assumedUnit: LengthUnit | null
    }
  | { readonly ok: false; readonly reasons: readonly string[] }

interface Heading {
  readonly at: number
  readonly text: string
  readonly columns: readonly LayerColumn[]
  readonly unit: string | null
}

/** One column for both sides. */
const BOTH_TOLERANCES = ['tolerance', 'tolerance ±', '±', 'tol', 'tol.']
const ZONE_HEADING = /^zone\s*[:\s]\s*(.+)$/i

/**
 * A table with headings as a whole sheet: layers, and zones where it has columns for them. Lines "Zone kind", "Zone length" and the like
 * above or below the layers state the zones themselves.
 *
 * @param unit  of lengths that carry none and whose heading names none
 * @returns null where the first filled line is no line of headings: then it is a block of cells
 */
export function readLayerBlock(
  design: Design,
  block: readonly (readonly string[])[],
  unit: LengthUnit,
): BlockReading | null {
  const headAt = block.findIndex((row) => row.some((text) => text.trim() !== ''))
  const headings = shareUnit((block[headAt] ?? []).map((text, at) => readColumn(text, at)))
  const find = (column: LayerColumn) => headings.filter(({ columns }) => columns.includes(column))
  const nameAt = find('name')[0]?.at
  if (nameAt === undefined || find('kind').length === 0) return null
  const lines = block
    .map((texts, index) => ({ texts, line: index + 1 }))
    .slice(headAt + 1)
    .filter(({ texts }) => texts.some((text) => text.trim() !== ''))
  const [zoneLines, layerLines] = partition(lines, ({ texts }) => findZoneRow(texts[nameAt] ?? '') !== null)
  const zoneHeadings = headings.filter((heading) => isZoneHeading(design, heading, zoneLines))
  const reasons: string[] = []
  const zones = zoneHeadings.map((heading): SheetZone => {
    const name = ZONE_HEADING.exec(heading.text)?.[1] ?? heading.text
    const cells = new Map(
      zoneLines.map(({ texts }) => {
        const found = findZoneRow(texts[nameAt] ?? '')
        return [found?.key ?? 'kind', stateUnit(texts[heading.at] ?? '', found?.unit ?? null)] as const
      }),
    )
    const facts = readZoneFacts(cells, unit, (fact, reason) =>
      reasons.push(`${ZONE_ROWS[fact].title} of ${name}: ${reason}`),
    )
    const known = design.construction.zones.find((zone) => zone.name.toLowerCase() === name.toLowerCase())
    return { id: known?.id ?? null, name, facts: zoneLines.length === 0 ? null : facts }
  })
  for (const [index, { name }] of zones.entries())
    if (zones.findIndex((zone) => zone.name.toLowerCase() === name.toLowerCase()) !== index)
      reasons.push(`Two columns are zone ${name}: give each zone a name of its own.`)
  if (layerLines.length === 0) reasons.push('There is no layer below the headings.')
  if (reasons.length > 0) return { ok: false, reasons }
  const kept =
    zones.length === 0
      ? keepZones(
          design,
          layerLines.map(({ texts }) => texts[nameAt] ?? ''),
        )
      : null
  const rows = layerLines.map(({ texts }) => {
    const own = LAYER_COLUMN_KEYS.map((column) => {
      const filled = find(column).find(({ at }) => (texts[at] ?? '').trim() !== '')
      return filled === undefined ? '' : stateUnit(texts[filled.at] ?? '', filled.unit).trim()
    })
    const inZones =
      kept === null ? zoneHeadings.map(({ at }) => (texts[at] ?? '').trim()) : kept.writeCells(texts[nameAt] ?? '')
    return [...own, ...inZones]
  })
  const isUnitOpen = headings.some(
    ({ columns, unit: stated }) => stated === null && columns.some((column) => LAYER_COLUMNS[column].isLength),
  )
  return {
    ok: true,
    zones: kept?.zones ?? zones,
    rows,
    unknownHeadings: headings
      .filter((heading) => heading.text !== '' && heading.columns.length === 0 && !zoneHeadings.includes(heading))
      .map(({ text }) => text),
    assumedUnit: isUnitOpen ? getShownUnit('um', unit) : null,
  }
}

function readColumn(text: string, at: number): Heading {
  const { name, unit } = readHeading(text)
  const columns = BOTH_TOLERANCES.includes(name)
    ? (['tolerancePlusUm', 'toleranceMinusUm'] as const)
    : LAYER_COLUMN_KEYS.filter((key) => {
        const { title, otherNames } = LAYER_COLUMNS[key]
        const names: readonly string[] = [readHeading(title).name, key.toLowerCase(), ...otherNames]
        return names.includes(name)
      })
  return { at, text: text.trim(), columns, unit }
}

/** A table that states the unit of its thickness once means it for its tolerances too. */
function shareUnit(headings: readonly Heading[]): readonly Heading[] {
  const stated = headings.find(({ columns }) => columns.includes('thicknessUm'))?.unit ?? null
  if (stated === null || findLengthUnit(stated) === null) return headings
  return headings.map((heading) =>
    heading.unit === null && heading.columns.some((column) => LAYER_COLUMNS[column].isLength)
      ? { ...heading, unit: stated }
      : heading,
  )
}

function findZoneRow(text: string) {
  const { name, unit } = readHeading(text)
  if (name === PRESENCE_ROW.title.toLowerCase()) return { key: 'presence' as const, unit }
  const key = ZONE_ROW_KEYS.find((fact) => ZONE_ROWS[fact].title.toLowerCase() === name)
  return key === undefined ? null : { key, unit }
}

/** By its word, by the name of a zone that there is, or because a line about zones fills its column. */
function isZoneHeading(
  design: Design,
  { text, columns, at }: Heading,
  zoneLines: readonly { readonly texts: readonly string[] }[],
): boolean {
  if (columns.length > 0 || text === '') return false
  return (
    ZONE_HEADING.test(text) ||
    design.construction.zones.some(({ name }) => name.toLowerCase() === text.toLowerCase()) ||
    zoneLines.some(({ texts }) => (texts[at] ?? '').trim() !== '')
  )
}

/** A sheet that says nothing of zones leaves them as they are; a layer that they do not know is put into each, as assumed. */
function keepZones(design: Design, names: readonly string[]) {
  const { layers, zones } = design.construction
  const findLayer = (name: string) => {
    const named = layers.filter((layer) => layer.name.toLowerCase() === name.trim().toLowerCase())
    return named.length === 1 ? named[0] : undefined
  }
  const isAnyNew = names.some((name) => findLayer(name) === undefined)
  return {
    zones: zones.map(({ id, name }) => ({ id, name, facts: isAnyNew ? { assumed: ['presence'] } : null })),
    writeCells: (name: string) => {
      const layer = findLayer(name)
      return zones.map((zone) =>
        layer === undefined ? 'x' : writeZoneCell(zone.presence.find(({ layerId }) => layerId === layer.id) ?? null),
      )
    },
  }
}

function partition<T>(list: readonly T[], isFirst: (entry: T) => boolean): readonly [T[], T[]] {
  return [list.filter(isFirst), list.filter((entry) => !isFirst(entry))]
}
