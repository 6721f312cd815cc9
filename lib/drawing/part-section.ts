import type { Construction, LengthUnit, ZoneResult } from '@/lib/engine'
import { countOf, digitsOfLength, formatLength, getUnitSymbol } from '@/lib/engine/units'
import { spreadLabels } from './label-spread'
import { drawLayerBody, findFillingKind } from './layer-body'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture } from './picture'
import { measureText, wrapText } from './text-metrics'
import { drawThicknessAxis, makeText } from './thickness-axis'

export interface PartSectionOptions {
  readonly palette: Palette
  readonly unit: LengthUnit
  readonly widthPx: number
  readonly designations: ReadonlyMap<string, LayerDesignation>
  /** References that stand for the zones' names, which a table beside it gives. */
  readonly zoneNames?: ReadonlyMap<string, string>
}

const FONT_PX = 11
const AXIS_WIDTH_PX = 52
/** Above the section where a zone's name takes one line. */
const TOP_ONE_LINE_PX = 60
const NAME_LINE_PX = 13
const NAME_WIDTH_PX = 80
const NAME_SPACING_PX = 13

/** Between the labels of neighbouring zones, and between two strips. */
const LABEL_GAP_PX = 6
const STRIP_GAP_PX = 18
/** A word longer than this is broken rather than given a zone as wide. */
const LONGEST_WORD_PX = 90

interface Strip {
  /** Indices of its first zone, and of the one after its last. */
  readonly from: number
  readonly to: number
  readonly topPx: number
}

/** Where a strip lies, and what it shares with the others. */
interface StripPlace extends Strip {
  readonly columnWidth: number
  readonly bodyHeightPx: number
  readonly scale: number
}

/**
 * All zones side by side in their order, with a common layer at one level throughout, so that one sees what runs
 * through and what stops where. Thickness to scale and magnified; widths are equal and not to scale. Where they would be
 * narrower than their labels, the zones go on in a further strip below, at the same scale and level.
 *
 * @param zones  evaluated zones, in the construction's order
 */
export function drawPartSection(
  construction: Construction,
  zones: readonly ZoneResult[],
  options: PartSectionOptions,
): Picture {
  const { unit, widthPx, designations } = options
  const levels = placeZones(construction, zones)
  const bodyHeightPx = Math.max(
    140,
    Math.min(360, construction.layers.length * 16),
    // However many conductor layers there are, their names stay beside the section.
    designations.size * NAME_SPACING_PX,
  )
  const scale = levels.totalUm > 0 ? bodyHeightPx / levels.totalUm : 0
  const zonesWidth = Math.max(60, widthPx - AXIS_WIDTH_PX - NAME_WIDTH_PX)
  const perStrip = countZonesPerStrip(zones, zonesWidth, options)
  const columnWidth = zonesWidth / Math.max(1, perStrip)
  // A name that is wider than its zone goes on in a further line: none is cut.
  const names = zones.map((zone) => wrapText(nameOf(zone, options), columnWidth - LABEL_GAP_PX, FONT_PX, true))
  const headPx = TOP_ONE_LINE_PX + (Math.max(1, ...names.map(({ length }) => length)) - 1) * NAME_LINE_PX
  const stripHeightPx = headPx + bodyHeightPx + 12
  const strips = Array.from({ length: Math.max(1, Math.ceil(zones.length / perStrip)) }, (_, index): StripPlace => {
    const from = index * perStrip
    const topPx = index * (stripHeightPx + STRIP_GAP_PX) + headPx
    return { from, to: Math.min(zones.length, from + perStrip), topPx, columnWidth, bodyHeightPx, scale }
  })
  const nodes = strips.flatMap((strip) => [
    ...drawStrip(strip, zones, names, levels, options),
    ...drawConductorNames(construction, zones, levels, options, strip),
  ])
  return {
    title: 'Section along the part',
    description: `${countOf(zones.length, 'zone')} side by side${
      strips.length === 1 ? '' : `, in ${strips.length} strips at one scale`
    }: ${zones
      .map((zone) => `${zone.name} (${zone.kind}) ${formatLength(zone.thicknessUm, unit)}`)
      .join('; ')}. Thickness to scale, widths not.`,
    widthPx,
    heightPx: strips.length * stripHeightPx + (strips.length - 1) * STRIP_GAP_PX,
    nodes,
    table: {
      caption: 'Finished thickness by zone',
      columns: [
        { key: 'zone', label: 'Zone', numeric: false },
        { key: 'kind', label: 'Kind', numeric: false },
        { key: 'layers', label: 'Layers', numeric: true },
        { key: 'nominal', label: `Finished, ${getUnitSymbol(unit)}`, numeric: true },
        { key: 'least', label: `Least, ${getUnitSymbol(unit)}`, numeric: true },
        { key: 'greatest', label: `Greatest, ${getUnitSymbol(unit)}`, numeric: true },
      ],
      rows: zones.map((zone) => ({
        zone: zone.name,
        kind: zone.kind,
        layers: String(zone.layers.length),
        nominal: bare(zone.thicknessUm, unit),
        least: bare(zone.worstCaseUm.low, unit),
        greatest: bare(zone.worstCaseUm.high, unit),
      })),
    },
  }
}

const nameOf = (zone: ZoneResult, { zoneNames }: PartSectionOptions) => zoneNames?.get(zone.zoneId) ?? zone.name

/** As many as the widest label allows, in strips that are filled alike. */
function countZonesPerStrip(zones: readonly ZoneResult[], zonesWidth: number, options: PartSectionOptions): number {
  const neededPx = Math.max(
    0,
    ...zones.flatMap((zone) => [
      measureText(zone.kind, FONT_PX),
      measureText(formatLength(zone.thicknessUm, options.unit), FONT_PX),
      ...nameOf(zone, options)
        .split(/\s+/u)
        .map((word) => Math.min(LONGEST_WORD_PX, measureText(word, FONT_PX, true))),
    ]),
  )
  const most = Math.max(1, Math.floor(zonesWidth / (neededPx + LABEL_GAP_PX)))
  const stripCount = Math.max(1, Math.ceil(zones.length / most))
  return Math.max(1, Math.ceil(zones.length / stripCount))
}

function drawStrip(
  { from, to, topPx, columnWidth, bodyHeightPx, scale }: StripPlace,
  zones: readonly ZoneResult[],
  names: readonly (readonly string[])[],
  levels: Levels,
  { palette, unit }: PartSectionOptions,
): DrawingNode[] {
  const nodes: DrawingNode[] = []
  if (levels.totalUm > 0) {
    nodes.push(
      ...drawThicknessAxis({
        xPx: AXIS_WIDTH_PX - 4,
        topPx,
        heightPx: bodyHeightPx,
        thicknessUm: levels.totalUm,
        unit,
        palette,
        fontSizePx: FONT_PX,
      }),
    )
  }
  zones.slice(from, to).forEach((zone, place) => {
    const index = from + place
    const x = AXIS_WIDTH_PX + place * columnWidth
    const topUm = levels.zoneTopUm[index] ?? 0
    zone.layers.forEach((layer, at) => {
      nodes.push(
        ...drawLayerBody(
          layer,
          {
            x,
            y: topPx + (topUm + layer.topDepthUm) * scale,
            width: columnWidth,
            height: layer.nominalUm * scale,
          },
          findFillingKind(zone.layers, at),
          palette,
        ),
      )
    })
    const middle = x + columnWidth / 2
    const label = (text: string, y: number, bold: boolean) =>
      makeText(text, {
        x: middle,
        y,
        anchor: 'middle',
        fontSizePx: FONT_PX,
        bold,
        palette,
      })
    nodes.push(
      ...(names[index] ?? []).map((text, line, lines) =>
        label(text, topPx - 48 - (lines.length - 1 - line) * NAME_LINE_PX, true),
      ),
      label(zone.kind, topPx - 35, false),
      label(formatLength(zone.thicknessUm, unit), topPx - 22, false),
      makeNode('line', {
        x1: x,
        y1: place === 0 ? topPx : topPx - 14,
        x2: x,
        y2: topPx + bodyHeightPx + 6,
        stroke: palette.inkSoft,
        'stroke-width': 0.75,
        'stroke-dasharray': place === 0 ? undefined : '2 3',
      }),
    )
  })
  return nodes
}

function bare(valueUm: number, unit: LengthUnit): string {
  return digitsOfLength(valueUm, unit)
}

interface Levels {
  /** Depth of each zone's top face below the highest one, in the order of the zones. */
  readonly zoneTopUm: readonly number[]
  readonly totalUm: number
}

/**
 * Stands the zones beside each other so that one layer runs straight through: the one that most zones have, and of
 * several such the one nearest the middle. Zones without it are centred.
 */
function placeZones(construction: Construction, zones: readonly ZoneResult[]): Levels {
  const middle = (construction.layers.length - 1) / 2
  let common: { id: string; count: number; offset: number } | null = null
  construction.layers.forEach(({ id }, index) => {
    const count = zones.filter((zone) => zone.layers.some((layer) => layer.layerId === id)).length
    const offset = Math.abs(index - middle)
    if (common === null || count > common.count || (count === common.count && offset < common.offset)) {
      common = { id, count, offset }
    }
  })
  const commonId = (common as { id: string } | null)?.id
  const depths = zones.map((zone) => {
    const layer = zone.layers.find((candidate) => candidate.layerId === commonId)
    return layer === undefined ? zone.thicknessUm / 2 : layer.topDepthUm
  })
  const deepest = Math.max(0, ...depths)
  const zoneTopUm = depths.map((depth) => deepest - depth)
  const bottoms = zones.map((zone, index) => (zoneTopUm[index] ?? 0) + zone.thicknessUm)
  return { zoneTopUm, totalUm: Math.max(0, ...bottoms) }
}

/** Names at the right edge of a strip, at the level of the last of its zones that has the layer. */
function drawConductorNames(
  construction: Construction,
  zones: readonly ZoneResult[],
  levels: Levels,
  { palette, designations }: PartSectionOptions,
  { from, to, scale, topPx, columnWidth }: StripPlace,
): DrawingNode[] {
  const edgePx = AXIS_WIDTH_PX + (to - from) * columnWidth
  const found: { text: string; middle: number }[] = []
  for (const { id } of construction.layers) {
    const designation = designations.get(id)
    if (designation === undefined) continue
    for (let index = to - 1; index >= from; index -= 1) {
      const layer = zones[index]?.layers.find((candidate) => candidate.layerId === id)
      if (layer === undefined) continue
      const depthUm = (levels.zoneTopUm[index] ?? 0) + layer.topDepthUm + layer.nominalUm / 2
      found.push({ text: formatDesignation(designation), middle: topPx + depthUm * scale })
      break
    }
  }
  found.sort((a, b) => a.middle - b.middle)
  const at = spreadLabels(
    found.map((name) => name.middle),
    NAME_SPACING_PX,
    topPx,
    topPx + levels.totalUm * scale,
  )
  return found.flatMap((name, index) => {
    const y = at[index] ?? name.middle
    return [
      makeNode('line', {
        x1: edgePx + 3,
        y1: name.middle,
        x2: edgePx + 16,
        y2: y,
        stroke: palette.hairline,
        'stroke-width': 0.75,
      }),
      makeText(name.text, {
        x: edgePx + 20,
        y: y + FONT_PX * 0.35,
        fontSizePx: FONT_PX,
        bold: true,
        palette,
      }),
    ]
  })
}
