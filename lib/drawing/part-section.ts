import type { Construction, LengthUnit, ZoneResult } from '@/lib/engine'
import { drawLayerBody } from './layer-body'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture } from './picture'
import { drawThicknessAxis, fitText, formatThickness, getUnitLabel, makeText } from './thickness-axis'

export interface PartSectionOptions {
  readonly palette: Palette
  readonly unit: LengthUnit
  readonly widthPx: number
  readonly designations: ReadonlyMap<string, LayerDesignation>
}

const FONT_PX = 11
const AXIS_WIDTH_PX = 52
const TOP_PX = 48
const NAME_WIDTH_PX = 92

/**
 * All zones side by side in their order, each layer at one level throughout, so that one sees what runs through and
 * what stops where. Thickness to scale and magnified; widths are equal and not to scale.
 *
 * @param zones  evaluated zones, in the construction's order
 */
export function drawPartSection(
  construction: Construction,
  zones: readonly ZoneResult[],
  options: PartSectionOptions,
): Picture {
  const { palette, unit, widthPx } = options
  const levels = placeLayers(construction, zones)
  const heightUm = levels.totalUm
  const bodyHeightPx = Math.max(140, Math.min(360, construction.layers.length * 16))
  const scale = heightUm > 0 ? bodyHeightPx / heightUm : 0
  const zonesWidth = Math.max(60, widthPx - AXIS_WIDTH_PX - NAME_WIDTH_PX)
  const columnWidth = zones.length === 0 ? zonesWidth : zonesWidth / zones.length
  const nodes: DrawingNode[] = []
  if (heightUm > 0) {
    nodes.push(
      ...drawThicknessAxis({
        xPx: AXIS_WIDTH_PX - 4,
        topPx: TOP_PX,
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
    for (const layer of zone.layers) {
      const top = levels.topUm.get(layer.layerId) ?? 0
      nodes.push(
        ...drawLayerBody(
          layer,
          { x, y: TOP_PX + top * scale, width: columnWidth, height: layer.nominalUm * scale },
          palette,
        ),
      )
    }
    const middle = x + columnWidth / 2
    const label = (text: string, y: number, bold: boolean) =>
      makeText(fitText(text, columnWidth - 6, FONT_PX), {
        x: middle,
        y,
        anchor: 'middle',
        fontSizePx: FONT_PX,
        bold,
        palette,
      })
    nodes.push(
      label(zone.name, TOP_PX - 34, true),
      label(`${zone.kind}, ${formatThickness(zone.thicknessUm, unit)}`, TOP_PX - 20, false),
      makeNode('line', {
        x1: x,
        y1: TOP_PX - 14,
        x2: x,
        y2: TOP_PX + bodyHeightPx + 6,
        stroke: palette.inkSoft,
        'stroke-width': 0.75,
        'stroke-dasharray': index === 0 ? undefined : '2 3',
      }),
    )
  })
  nodes.push(...drawConductorNames(construction, levels, options, scale))
  return {
    title: 'Section along the part',
    description: `${zones.length} ${zones.length === 1 ? 'zone' : 'zones'} side by side: ${zones
      .map((zone) => `${zone.name} (${zone.kind}) ${formatThickness(zone.thicknessUm, unit)}`)
      .join('; ')}. Thickness to scale, widths not.`,
    widthPx,
    heightPx: TOP_PX + bodyHeightPx + 12,
    nodes,
    table: {
      caption: 'Finished thickness by zone',
      columns: [
        { key: 'zone', label: 'Zone', numeric: false },
        { key: 'kind', label: 'Kind', numeric: false },
        { key: 'layers', label: 'Layers', numeric: true },
        { key: 'nominal', label: `Finished, ${getUnitLabel(unit)}`, numeric: true },
        { key: 'least', label: `Least, ${getUnitLabel(unit)}`, numeric: true },
        { key: 'greatest', label: `Greatest, ${getUnitLabel(unit)}`, numeric: true },
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
  return formatThickness(valueUm, unit).replace(/\s.*$/u, '')
}

interface Levels {
  readonly topUm: ReadonlyMap<string, number>
  readonly thicknessUm: ReadonlyMap<string, number>
  readonly totalUm: number
}

/** Each layer gets one level for all zones: as thick as it is in the zone where it is thickest. */
function placeLayers(construction: Construction, zones: readonly ZoneResult[]): Levels {
  const thicknessUm = new Map<string, number>()
  for (const zone of zones) {
    for (const layer of zone.layers) {
      thicknessUm.set(layer.layerId, Math.max(thicknessUm.get(layer.layerId) ?? 0, layer.nominalUm))
    }
  }
  const topUm = new Map<string, number>()
  let depth = 0
  for (const layer of construction.layers) {
    topUm.set(layer.id, depth)
    depth += thicknessUm.get(layer.id) ?? 0
  }
  return { topUm, thicknessUm, totalUm: depth }
}

function drawConductorNames(
  construction: Construction,
  levels: Levels,
  { palette, designations, widthPx }: PartSectionOptions,
  scale: number,
): DrawingNode[] {
  const nodes: DrawingNode[] = []
  let lastY = Number.NEGATIVE_INFINITY
  for (const layer of construction.layers) {
    const designation = designations.get(layer.id)
    if (designation === undefined) continue
    const middle = ((levels.topUm.get(layer.id) ?? 0) + (levels.thicknessUm.get(layer.id) ?? 0) / 2) * scale + TOP_PX
    const y = Math.max(middle, lastY + 13)
    lastY = y
    nodes.push(
      makeNode('line', {
        x1: widthPx - NAME_WIDTH_PX + 3,
        y1: middle,
        x2: widthPx - NAME_WIDTH_PX + 16,
        y2: y,
        stroke: palette.hairline,
        'stroke-width': 0.75,
      }),
      makeText(formatDesignation(designation), {
        x: widthPx - NAME_WIDTH_PX + 20,
        y: y + FONT_PX * 0.35,
        fontSizePx: FONT_PX,
        bold: true,
        palette,
      }),
    )
  }
  return nodes
}
