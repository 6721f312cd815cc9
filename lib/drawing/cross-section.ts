import {
  type BendResult,
  callByName,
  type LengthUnit,
  nameLayerKind,
  type ZoneLayerResult,
  type ZoneResult,
} from '@/lib/engine'
import { digitsAsComputed, digitsOfLength, formatLength, getUnitSymbol } from '@/lib/engine/units'
import { spreadLabels } from './label-spread'
import { drawLayerBody, findFillingKind } from './layer-body'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture, type PictureTable } from './picture'
import { wrapText } from './text-metrics'
import { drawThicknessAxis, makeText } from './thickness-axis'

export interface CrossSectionOptions {
  readonly palette: Palette
  readonly unit: LengthUnit
  readonly widthPx: number
  readonly designations: ReadonlyMap<string, LayerDesignation>
  /** Name of a material by id, for the call-out; null where it is not known. */
  readonly findMaterialName: (materialId: string) => string | null
  /** Labels layers by these numbers, designation and kind in place of their names, which a layer table beside it gives. */
  readonly layerNumbers?: ReadonlyMap<string, string>
  /** How large a pixel comes out; 1/96 inch, as in CSS, unless the picture is set into something else. */
  readonly mmPerPx?: number
  /** Draws the axis of each leaf of a bend in this zone that its strain is measured from, the elastic one beside it, and its inside face. */
  readonly bend?: { readonly result: BendResult; readonly insideFace: 'top' | 'bottom' }
}

const FONT_PX = 11
const MM_PER_CSS_PX = 25.4 / 96
const LABEL_SPACING_PX = 15
const AXIS_WIDTH_PX = 52
const TOP_PX = 34
const FOOT_PX = 24
/** More room below where the inside of a bend is named there. */
const BEND_FOOT_PX = 38
/** Below this width only name and thickness fit beside the section. */
const WIDE_PX = 560
/** From the section to its labels. */
const LEADER_PX = 26
/** Room for a finished thickness. */
const THICKNESS_WIDTH_PX = 62
/** A label narrower than this would be a column of syllables. */
const MIN_LABEL_PX = 70
/** Line to line within a label. */
const LINE_PX = 13

/**
 * Section through one zone: thickness to scale and magnified, width schematic. Every layer carries its name, so that
 * colour adds nothing that text and pattern do not say.
 *
 * @param zone  evaluated zone with at least one layer
 * @returns a picture whose table lists every layer, top face first
 */
export function drawCrossSection(zone: ZoneResult, options: CrossSectionOptions): Picture {
  const { palette, unit, widthPx } = options
  const columnX = AXIS_WIDTH_PX
  const columnWidth = Math.max(90, Math.min(240, (widthPx - AXIS_WIDTH_PX) * 0.36))
  const labels = wrapLabels(zone, options, columnX + columnWidth)
  // Loose while it fits a page; beyond that as tall as its labels need.
  const bodyHeightPx = Math.max(
    150,
    Math.min(900, zone.layers.length * (labels.spacingPx + 5)),
    zone.layers.length * labels.spacingPx + 8,
  )
  const scalePxPerUm = bodyHeightPx / zone.thicknessUm
  const legend =
    options.bend === undefined ? [] : wrapText(nameAxes(options.bend.result), widthPx - columnX - 4, FONT_PX - 1)
  const note = wrapText(
    `Thickness to scale, about ${formatMagnification(scalePxPerUm * 1000 * (options.mmPerPx ?? MM_PER_CSS_PX))} times; width not to scale`,
    widthPx - columnX - 4,
    FONT_PX - 1,
  )
  const footPx = options.bend === undefined ? FOOT_PX : BEND_FOOT_PX
  // The foot has room for one line of the note.
  const heightPx = TOP_PX + bodyHeightPx + footPx + (legend.length + note.length - 1) * LINE_PX

  const bodies = zone.layers.flatMap((layer, index) =>
    drawLayerBody(
      layer,
      {
        x: columnX,
        y: TOP_PX + layer.topDepthUm * scalePxPerUm,
        width: columnWidth,
        height: layer.nominalUm * scalePxPerUm,
      },
      findFillingKind(zone.layers, index),
      palette,
    ),
  )
  const nodes: DrawingNode[] = [
    ...drawThicknessAxis({
      xPx: columnX - 4,
      topPx: TOP_PX,
      heightPx: bodyHeightPx,
      thicknessUm: zone.thicknessUm,
      unit,
      palette,
      fontSizePx: FONT_PX,
    }),
    ...bodies,
    ...drawLabels(zone, options, labels, { columnX, columnWidth, bodyHeightPx, scalePxPerUm }),
    ...drawNeutralAxes(zone, options, { columnX, columnWidth, scalePxPerUm }),
    ...legend.map((text, line) =>
      makeText(text, {
        x: columnX,
        y: heightPx - 6 - (note.length - 1 + legend.length - line) * LINE_PX,
        fill: palette.axis,
        fontSizePx: FONT_PX - 1,
        palette,
      }),
    ),
    ...note.map((text, line) =>
      makeText(text, {
        x: columnX,
        y: heightPx - 6 - (note.length - 1 - line) * LINE_PX,
        fill: palette.inkSoft,
        fontSizePx: FONT_PX - 1,
        palette,
      }),
    ),
  ]
  return {
    title: `Section of ${callByName('zone', zone.name)}`,
    description: describeSection(zone, options),
    widthPx,
    heightPx,
    nodes,
    table: listCrossSectionRows(zone, options),
  }
}

interface Frame {
  readonly columnX: number
  readonly columnWidth: number
  readonly scalePxPerUm: number
}

interface LayerLabel {
  readonly name: readonly string[]
  /** Kind and material; empty where there is no room beside the section, or a table says it. */
  readonly material: readonly string[]
}

/**
 * Every label whole: what is too long for the room beside the section goes on in a further line, and all labels then
 * stand further apart.
 */
function wrapLabels(
  zone: ZoneResult,
  options: CrossSectionOptions,
  edgePx: number,
): { readonly labels: readonly LayerLabel[]; readonly spacingPx: number } {
  const roomPx = Math.max(MIN_LABEL_PX, options.widthPx - 4 - THICKNESS_WIDTH_PX - (edgePx + LEADER_PX))
  const isWide = options.widthPx >= WIDE_PX && options.layerNumbers === undefined
  const labels = zone.layers.map((layer) => ({
    name: wrapText(getDrawnLabel(layer, options), roomPx, FONT_PX, layer.kind === 'conductor'),
    material: isWide ? wrapText(getMaterialLabel(layer, options), roomPx, FONT_PX) : [],
  }))
  const lines = Math.max(1, ...labels.map(({ name, material }) => name.length + material.length))
  return { labels, spacingPx: LABEL_SPACING_PX + (lines - 1) * LINE_PX }
}

function drawLabels(
  zone: ZoneResult,
  options: CrossSectionOptions,
  { labels, spacingPx }: ReturnType<typeof wrapLabels>,
  frame: Frame & { readonly bodyHeightPx: number },
): DrawingNode[] {
  const { palette, unit, widthPx } = options
  const middles = zone.layers.map((layer) => TOP_PX + (layer.topDepthUm + layer.nominalUm / 2) * frame.scalePxPerUm)
  // The middle of the first and last label keeps half a label from the ends.
  const inset = 4 + (spacingPx - LABEL_SPACING_PX) / 2
  const at = spreadLabels(middles, spacingPx, TOP_PX + inset, TOP_PX + frame.bodyHeightPx - inset)
  const edge = frame.columnX + frame.columnWidth
  const nameX = edge + LEADER_PX
  const thicknessX = widthPx - 4
  const heading = (text: string, x: number, anchor: 'start' | 'end') =>
    makeText(text, { x, y: TOP_PX - 16, anchor, fill: palette.inkSoft, fontSizePx: FONT_PX - 1, palette })
  const nodes: DrawingNode[] = [
    heading(labels.some(({ material }) => material.length > 0) ? 'layer, kind and material' : 'layer', nameX, 'start'),
    heading('finished thickness', thicknessX, 'end'),
  ]
  zone.layers.forEach((layer, index) => {
    const y = at[index] ?? 0
    const middle = middles[index] ?? 0
    const { name, material } = labels[index] ?? { name: [], material: [] }
    const lines = [...name, ...material]
    const firstBaseline = y + FONT_PX * 0.35 - ((lines.length - 1) * LINE_PX) / 2
    nodes.push(
      makeNode('path', {
        d: `M${edge + 2},${round(middle)}L${edge + 12},${round(middle)}L${edge + 20},${round(y)}L${edge + 24},${round(y)}`,
        fill: 'none',
        stroke: palette.hairline,
        'stroke-width': 0.75,
      }),
      ...lines.map((text, line) =>
        makeText(text, {
          x: nameX,
          y: firstBaseline + line * LINE_PX,
          fontSizePx: FONT_PX,
          ...(line < name.length ? {} : { fill: palette.inkSoft }),
          bold: line < name.length && layer.kind === 'conductor',
          palette,
        }),
      ),
      makeText(formatLength(layer.nominalUm, unit), {
        x: thicknessX,
        y: y + FONT_PX * 0.35,
        anchor: 'end',
        fontSizePx: FONT_PX,
        palette,
      }),
    )
  })
  return nodes
}

/** Depth below the zone's top face of a depth that a bend counts from its inside face. */
export function getDepthFromTopUm(depthUm: number, sectionThicknessUm: number, insideFace: 'top' | 'bottom'): number {
  return insideFace === 'top' ? depthUm : sectionThicknessUm - depthUm
}

/** Axes of a leaf nearer than this are drawn as one, um. */
const SAME_AXIS_UM = 0.05

interface DrawnAxis {
  readonly mark: string
  readonly depthUm: number
  readonly isDeciding: boolean
}

/** The axis that the strain is measured from, and the elastic one where copper past yield moved it. */
function listAxes({ leaves }: BendResult): DrawnAxis[] {
  return leaves.flatMap(({ decidingAxisDepthUm, neutralAxisDepthUm }): DrawnAxis[] => {
    const deciding = { mark: 'N', depthUm: decidingAxisDepthUm, isDeciding: true }
    return Math.abs(decidingAxisDepthUm - neutralAxisDepthUm) < SAME_AXIS_UM
      ? [deciding]
      : [{ mark: 'E', depthUm: neutralAxisDepthUm, isDeciding: false }, deciding]
  })
}

/** What the marks at the axes stand for. */
function nameAxes(result: BendResult): string {
  const cycle = result.cycleRangePct !== null && result.conductors.some(({ pastYield }) => pastYield)
  const deciding = `N: neutral axis${cycle ? ' of a cycle' : ''}, which strain is measured from`
  return listAxes(result).some(({ isDeciding }) => !isDeciding) ? `${deciding}; E: while nothing yields` : deciding
}

function drawNeutralAxes(zone: ZoneResult, options: CrossSectionOptions, frame: Frame): DrawingNode[] {
  if (options.bend === undefined) return []
  const { palette } = options
  const { result, insideFace } = options.bend
  const nodes: DrawingNode[] = []
  for (const { mark, depthUm, isDeciding } of listAxes(result)) {
    const y = TOP_PX + getDepthFromTopUm(depthUm, zone.thicknessUm, insideFace) * frame.scalePxPerUm
    // Side by side: the two axes may lie closer than their marks are high.
    const markX = frame.columnX + frame.columnWidth - (isDeciding ? 15 : 31)
    nodes.push(
      makeNode('line', {
        x1: frame.columnX - 3,
        y1: y,
        x2: frame.columnX + frame.columnWidth + 3,
        y2: y,
        stroke: palette.axis,
        'stroke-width': isDeciding ? 1.6 : 0.9,
        'stroke-dasharray': isDeciding ? '12 3 2 3' : '1 3',
      }),
      makeNode('rect', {
        x: markX,
        y: y - 7,
        width: 13,
        height: 14,
        fill: palette.paper,
        stroke: palette.axis,
        'stroke-width': 0.75,
      }),
      makeText(mark, {
        x: markX + 6.5,
        y: y + FONT_PX * 0.36,
        anchor: 'middle',
        fill: palette.axis,
        fontSizePx: FONT_PX,
        bold: isDeciding,
        palette,
      }),
    )
  }
  const insideY = insideFace === 'top' ? TOP_PX - 3 : TOP_PX + zone.thicknessUm * frame.scalePxPerUm + 12
  nodes.push(
    makeText('inside of the bend', {
      x: frame.columnX + frame.columnWidth / 2 + 20,
      y: insideY,
      anchor: 'middle',
      fill: palette.axis,
      fontSizePx: FONT_PX - 1,
      palette,
    }),
  )
  return nodes
}

export function getLayerLabel(
  layer: Pick<ZoneLayerResult, 'layerId' | 'name'>,
  designations: ReadonlyMap<string, LayerDesignation>,
): string {
  const designation = designations.get(layer.layerId)
  return designation === undefined ? layer.name : `${formatDesignation(designation)} ${layer.name}`
}

function getDrawnLabel(layer: ZoneLayerResult, options: CrossSectionOptions): string {
  const number = options.layerNumbers?.get(layer.layerId)
  if (number === undefined) return getLayerLabel(layer, options.designations)
  const designation = options.designations.get(layer.layerId)
  const kind = nameLayerKind(layer.kind)
  return `${number}  ${designation === undefined ? kind : `${formatDesignation(designation)}, ${kind.toLowerCase()}`}`
}

function getMaterialLabel(layer: ZoneLayerResult, options: CrossSectionOptions): string {
  const kind = nameLayerKind(layer.kind)
  if (layer.materialId === null) return kind
  return `${kind}, ${options.findMaterialName(layer.materialId) ?? layer.materialId}`
}

/** The table behind a cross-section: one row per layer from the top face down. */
export function listCrossSectionRows(zone: ZoneResult, options: CrossSectionOptions): PictureTable {
  const unitLabel = getUnitSymbol(options.unit)
  const bare = (valueUm: number) => digitsOfLength(valueUm, options.unit)
  return {
    caption: `Layers of ${callByName('zone', zone.name)}, top face first`,
    columns: [
      { key: 'layer', label: 'Layer', numeric: false },
      { key: 'kind', label: 'Kind', numeric: false },
      { key: 'material', label: 'Material', numeric: false },
      { key: 'depth', label: `Depth of upper face, ${unitLabel}`, numeric: true },
      { key: 'nominal', label: `Finished, ${unitLabel}`, numeric: true },
      { key: 'least', label: `Least, ${unitLabel}`, numeric: true },
      { key: 'greatest', label: `Greatest, ${unitLabel}`, numeric: true },
      { key: 'coverage', label: 'Copper share, %', numeric: true },
    ],
    rows: zone.layers.map((layer) => ({
      layer: getLayerLabel(layer, options.designations),
      kind: nameLayerKind(layer.kind),
      material: layer.materialId === null ? '' : (options.findMaterialName(layer.materialId) ?? layer.materialId),
      depth: bare(layer.topDepthUm),
      nominal: bare(layer.nominalUm),
      least: bare(layer.minUm),
      greatest: bare(layer.maxUm),
      coverage: layer.coverageFraction === null ? '' : digitsAsComputed(layer.coverageFraction * 100, 'roughSharePct'),
    })),
  }
}

function describeSection(zone: ZoneResult, options: CrossSectionOptions): string {
  const { unit } = options
  const range = `${formatLength(zone.worstCaseUm.low, unit)} to ${formatLength(zone.worstCaseUm.high, unit)}`
  const count = zone.layers.length
  let text = `${count} ${count === 1 ? 'layer' : 'layers'}, ${formatLength(zone.thicknessUm, unit)} thick in all (${range} over tolerances).`
  if (options.bend !== undefined) {
    const { result, insideFace } = options.bend
    const depthsOf = (read: (leaf: BendResult['leaves'][number]) => number) =>
      result.leaves.map((leaf) => formatLength(read(leaf), unit)).join(', ')
    const elastic = listAxes(result).some(({ isDeciding }) => !isDeciding)
      ? `, ${depthsOf((leaf) => leaf.neutralAxisDepthUm)} while nothing yields`
      : ''
    text += ` Neutral axis of ${callByName('bend', result.name)} that strain is measured from at ${depthsOf((leaf) => leaf.decidingAxisDepthUm)} from the ${insideFace} face, which is inside${elastic}.`
  }
  return text
}

function formatMagnification(times: number): string {
  return digitsAsComputed(times, 'times')
}

function round(value: number): number {
  return Math.round(value * 100) / 100
}
