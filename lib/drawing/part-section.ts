import type { Construction, LengthUnit, ZoneResult } from '@/lib/engine'
import { digitsOfLength, formatLength, getUnitSymbol } from '@/lib/engine/units'
import { spreadLabels } from './label-spread'
import { drawLayerBody, findFillingKind } from './layer-body'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture } from './picture'
import { wrapText } from './text-metrics'
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

/**
 * All zones side by side in their order, with a common layer at one level throughout, so that one sees what runs
 * through and what stops where. Thickness to scale and magnified; widths are equal and not to scale.
 *
 * @param zones  evaluated zones, in the construction's order
 */
export function drawPartSection(
  construction: Construction,
  zones: readonly ZoneResult[],
  options: PartSectionOptions,
): Picture {
  const { palette, unit, widthPx, designations } = options
  const levels = placeZones(construction, zones)
  const heightUm = levels.totalUm
  const bodyHeightPx = Math.max(
    140,
    Math.min(360, construction.layers.length * 16),
    // However many conductor layers there are, their names stay beside the section.
    designations.size * NAME_SPACING_PX,
  )
  const scale = heightUm > 0 ? bodyHeightPx / heightUm : 0
  const zonesWidth = Math.max(60, widthPx - AXIS_WIDTH_PX - NAME_WIDTH_PX)
  const columnWidth = zones.length === 0 ? zonesWidth : zonesWidth / zones.length
  // A name that is wider than its zone goes on in a further line: none is cut.
  const names = zones.map((zone) =>
    wrapText(options.zoneNames?.get(zone.zoneId) ?? zone.name, columnWidth - 6, FONT_PX, true),
  )
  const topPx = TOP_ONE_LINE_PX + (Math.max(1, ...names.map(({ length }) => length)) - 1) * NAME_LINE_PX
  const nodes: DrawingNode[] = []
  if (heightUm > 0) {
    nodes.push(
      ...drawThicknessAxis({
        xPx: AXIS_WIDTH_PX - 4,
        topPx: topPx,
        heightPx: bodyHeightPx,
        thicknessUm: heightUm,
        unit,
        palette,
        fontSizePx: FONT_PX,
      }),
    )
  }
  zones.forEach((zone, index) => {
    const x = AXIS_WIDTH_PX + index * columnWidth
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
        y1: index === 0 ? topPx : topPx - 14,
        x2: x,
        y2: topPx + bodyHeightPx + 6,
        stroke: palette.inkSoft,
        'stroke-width': 0.75,
        'stroke-dasharray': index === 0 ? undefined : '2 3',
      }),
    )
  })
  nodes.push(...drawConductorNames(construction, zones, levels, options, { scale, topPx }))
  return {
    title: 'Section along the part',
    description: `${zones.length} ${zones.length === 1 ? 'zone' : 'zones'} side by side: ${zones
      .map((zone) => `${zone.name} (${zone.kind}) ${formatLength(zone.thicknessUm, unit)}`)
      .join('; ')}. Thickness to scale, widths not.`,
    widthPx,
    heightPx: topPx + bodyHeightPx + 12,
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

/** Names at the right edge, at the level of the last zone that has the layer. */
function drawConductorNames(
  construction: Construction,
  zones: readonly ZoneResult[],
  levels: Levels,
  { palette, designations, widthPx }: PartSectionOptions,
  { scale, topPx }: { readonly scale: number; readonly topPx: number },
): DrawingNode[] {
  const found: { text: string; middle: number }[] = []
  for (const { id } of construction.layers) {
    const designation = designations.get(id)
    if (designation === undefined) continue
    for (let index = zones.length - 1; index >= 0; index -= 1) {
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
        x1: widthPx - NAME_WIDTH_PX + 3,
        y1: name.middle,
        x2: widthPx - NAME_WIDTH_PX + 16,
        y2: y,
        stroke: palette.hairline,
        'stroke-width': 0.75,
      }),
      makeText(name.text, {
        x: widthPx - NAME_WIDTH_PX + 20,
        y: y + FONT_PX * 0.35,
        fontSizePx: FONT_PX,
        bold: true,
        palette,
      }),
    ]
  })
}
