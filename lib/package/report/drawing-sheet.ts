import {
  type DrawingNode,
  drawCrossSection,
  drawPartSection,
  listLayerTable,
  makeNode,
  nameConductorLayers,
  type Picture,
  PRINT_PALETTE,
} from '@/lib/drawing'
import { type Design, type Evaluation, findMaterial } from '@/lib/engine'
import type { PackageContent } from '../content'
import { CAUTIONS } from '../data-files'
import { INK, SOFT } from './style'
import {
  drawLines,
  drawRule,
  drawTable,
  fitLine,
  makeSvgText,
  type SvgBlock,
  type SvgColumn,
  wrapText,
} from './svg-table'
import { sayNumber, sayTime, sayWord, sayYesNo } from './words'

/** A3 lying (ISO 216), in points; a construction with much to say makes the sheet taller. */
const SHEET_WIDTH = 1190.55
const SHEET_HEIGHT = 841.89
const MARGIN = 28
const WIDTH = SHEET_WIDTH - 2 * MARGIN
const GAP = 20
const FONT = 8.5
const TITLE_BLOCK_HEIGHT = 92
const TITLE_BLOCK_WIDTH = 470

/** Longer texts stand in full in the report; a drawing sheet has room for their beginning. */
const LONGEST_NOTE = 260

function shorten(text: string): string {
  const trimmed = text.trim()
  return trimmed.length <= LONGEST_NOTE ? trimmed : `${trimmed.slice(0, LONGEST_NOTE)}… (in full in the report)`
}

/** Named faces first; the rest are for whoever opens the file elsewhere. */
const PALETTE = { ...PRINT_PALETTE, fontFamily: 'DejaVu, DejaVu Sans Condensed, DejaVu Sans, Arial, sans-serif' }

/**
 * The drawing sheet: section through the part, layer table, sections per zone, bend call-outs, notes and title block.
 * Everything on it is generated from the design, so that it cannot disagree with it.
 */
export function drawSheet(content: PackageContent): Picture {
  const { design, evaluation } = content.snapshot
  const results = evaluation?.results ?? null
  const nodes: DrawingNode[] = []
  let y = MARGIN + 8
  const place = (block: SvgBlock) => {
    nodes.push(...block.nodes)
    y += block.heightPx + GAP
  }

  const notesWidth = 370
  const partWidth = WIDTH - notesWidth - GAP
  const notes = drawNotes(design, MARGIN + partWidth + GAP, y, notesWidth)
  const part = drawPart(design, results, y, partWidth)
  nodes.push(...part.nodes, ...notes.nodes)
  y += Math.max(part.heightPx, notes.heightPx) + GAP

  place(drawLayerTable(design, results, y))
  place(drawBendTable(design, y))
  if (results !== null) place(drawZones(design, results, y))

  const heightPx = Math.max(SHEET_HEIGHT, y + TITLE_BLOCK_HEIGHT + MARGIN)
  nodes.push(...drawTitleBlock(content, heightPx), drawFrame(heightPx))
  return {
    title: `Drawing sheet, ${content.snapshot.projectName} revision ${content.snapshot.label}`,
    description: `Layer table, sections and bend call-outs of ${design.name}.`,
    widthPx: SHEET_WIDTH,
    heightPx,
    nodes: [
      makeNode('rect', { x: 0, y: 0, width: SHEET_WIDTH, height: heightPx, fill: PALETTE.paper }),
      makeNode('g', { 'font-family': PALETTE.fontFamily, fill: INK }, nodes),
    ],
    table: listLayerTable(design, results?.zones ?? [], 'um'),
  }
}

function movePicture(picture: Picture, x: number, y: number, scale = 1): DrawingNode {
  return makeNode('g', { transform: `translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${scale})` }, picture.nodes)
}

function drawPart(design: Design, results: Evaluation | null, y: number, widthPx: number): SvgBlock {
  const title = makeSvgText('Section through the part', MARGIN, y + FONT + 2, { fontPx: FONT + 2, isBold: true })
  if (results === null || results.zones.length === 0) {
    const text = makeSvgText('No results are recorded.', MARGIN, y + 32, { fontPx: FONT, fill: SOFT })
    return { nodes: [title, text], heightPx: 48 }
  }
  const designations = nameConductorLayers(design.construction)
  const picture = drawPartSection(design.construction, results.zones, {
    palette: PALETTE,
    unit: 'um',
    widthPx,
    designations,
  })
  return { nodes: [title, movePicture(picture, MARGIN, y + 16)], heightPx: picture.heightPx + 16 }
}

function drawLayerTable(design: Design, results: Evaluation | null, y: number): SvgBlock {
  const table = listLayerTable(design, results?.zones ?? [], 'um')
  const fixed: Readonly<Record<string, number>> = {
    position: 30,
    designation: 62,
    name: 130,
    kind: 92,
    material: 150,
    specification: 150,
    thickness: 62,
    tolerance: 62,
    plating: 78,
  }
  const fixedWidth = Object.values(fixed).reduce((sum, width) => sum + width, 0)
  const zoneCount = table.columns.length - Object.keys(fixed).length
  const zoneWidth = zoneCount === 0 ? 0 : (WIDTH - fixedWidth) / zoneCount
  const columns = table.columns.map(
    ({ key, label, numeric }): SvgColumn => ({
      label,
      isNumeric: numeric,
      widthPx: fixed[key] ?? zoneWidth,
    }),
  )
  const rows = table.rows.map((row) => table.columns.map(({ key }) => row[key] ?? ''))
  return drawTable('Layers, top face first', columns, rows, { x: MARGIN, y, fontPx: FONT })
}

function drawBendTable(design: Design, y: number): SvgBlock {
  const columns: SvgColumn[] = [
    { label: 'Bend', widthPx: 120 },
    { label: 'Zone', widthPx: 100 },
    { label: 'Inside radius, mm', widthPx: 82, isNumeric: true },
    { label: 'Angle', widthPx: 50, isNumeric: true },
    { label: 'Face on the inside', widthPx: 74 },
    { label: 'Length along the axis, mm', widthPx: 90, isNumeric: true },
    { label: 'Use', widthPx: 110 },
    { label: 'Cycles', widthPx: 70, isNumeric: true },
    { label: 'Temperature', widthPx: 90 },
    { label: 'Radius held by', widthPx: 90 },
    { label: 'To the rigid edge, mm', widthPx: 80, isNumeric: true },
    { label: 'Note', widthPx: WIDTH - 956 },
  ]
  const { operatingMinDegC, operatingMaxDegC } = design.brief
  const temperature =
    operatingMinDegC === null || operatingMaxDegC === null
      ? 'not stated'
      : `${operatingMinDegC} to ${operatingMaxDegC} °C`
  const rows = design.bends.map((bend) => [
    bend.name,
    design.construction.zones.find(({ id }) => id === bend.zoneId)?.name ?? bend.zoneId,
    `${bend.insideRadiusMm} ± ${bend.radiusToleranceMm}`,
    `${bend.angleDeg}°`,
    bend.insideFace,
    String(bend.axisLengthMm),
    bend.use === 'dynamic' ? `dynamic, ${sayWord(bend.motion)}` : sayWord(bend.use),
    bend.requiredCycles === null ? '–' : sayNumber(bend.requiredCycles, 'count'),
    temperature,
    sayWord(bend.radiusHeldBy),
    bend.distanceToRigidMm === null ? 'not stated' : String(bend.distanceToRigidMm),
    shorten(bend.note),
  ])
  const body = rows.length === 0 ? [['No bends.', ...columns.slice(1).map(() => '')]] : rows
  return drawTable('Bend call-outs', columns, body, { x: MARGIN, y, fontPx: FONT })
}

/** Sections per zone, three beside each other, reduced so that their type matches the sheet's. */
function drawZones(design: Design, results: Evaluation, y: number): SvgBlock {
  const designations = nameConductorLayers(design.construction)
  const findMaterialName = (materialId: string) => findMaterial(design, materialId)?.name ?? null
  const columnCount = 3
  const scale = 0.82
  const columnWidth = (WIDTH - (columnCount - 1) * GAP) / columnCount
  const widthPx = columnWidth / scale
  const nodes: DrawingNode[] = []
  let top = y
  for (let index = 0; index < results.zones.length; index += columnCount) {
    let rowHeight = 0
    for (const [column, zone] of results.zones.slice(index, index + columnCount).entries()) {
      const x = MARGIN + column * (columnWidth + GAP)
      const { low, high } = zone.worstCaseUm
      const range = `${zone.thicknessUm.toFixed(1)} µm (${low.toFixed(1)} to ${high.toFixed(1)}):`
      nodes.push(
        makeSvgText(
          fitLine(`${range}  ${zone.name}, ${sayWord(zone.kind)}`, columnWidth, FONT + 2),
          x,
          top + FONT + 2,
          {
            fontPx: FONT + 2,
            isBold: true,
          },
        ),
      )
      if (zone.layers.length === 0) continue
      const picture = drawCrossSection(zone, { palette: PALETTE, unit: 'um', widthPx, designations, findMaterialName })
      nodes.push(movePicture(picture, x, top + 16, scale))
      rowHeight = Math.max(rowHeight, picture.heightPx * scale + 16)
    }
    top += rowHeight + GAP
  }
  return { nodes, heightPx: top - y - GAP }
}

function drawNotes(design: Design, x: number, y: number, widthPx: number): SvgBlock {
  const { brief, features } = design
  const stated = (label: string, text: string) => (text.trim() === '' ? [] : [`${label}: ${shorten(text)}`])
  const stiffeners = features.stiffeners.map(
    ({ name, coverlayOverlapMm }) =>
      `${name}, overlap with the coverlay end ${coverlayOverlapMm === null ? 'not stated' : `${coverlayOverlapMm} mm`}`,
  )
  const notes = [
    'Thickness in micrometres, plan dimensions in millimetres. L counts conductor layers from the top face, F those of the flex.',
    `${[brief.performanceClass, brief.circuitType, brief.installationUse].map(sayWord).join(', ')} of IPC-6013.`,
    'Materials by the specification in the layer table; thickness of conductor layers is the foil as bought.',
    `Surface finish: ${sayWord(brief.surfaceFinish)}.`,
    `Electrical test ${sayYesNo(brief.electricalTest)}, coupons ${sayYesNo(brief.couponTest)}, fold test ${sayYesNo(brief.foldTest)}.`,
    `Delivered as ${sayWord(brief.panelForm)}.`,
    ...(stiffeners.length === 0 ? [] : [`Stiffeners: ${stiffeners.join('; ')}.`]),
    ...stated('Tolerances and datums', brief.toleranceScheme),
    ...stated('Registration-critical', brief.registrationCriticalFeatures),
    ...stated('Bake before assembly', brief.bakeBeforeAssembly),
    ...stated('Packing and handling', brief.packingAndHandling),
    ...stated('In doubt ask', brief.whoToAsk),
    'Where this sheet, the artwork and the order disagree, ask before building.',
    ...CAUTIONS,
  ]
  const nodes: DrawingNode[] = [makeSvgText('Notes', x, y + FONT + 2, { fontPx: FONT + 2, isBold: true })]
  let top = y + 17
  notes.forEach((note, index) => {
    nodes.push(makeSvgText(`${index + 1}`, x, top + FONT, { fontPx: FONT, fill: SOFT }))
    const block = drawLines(wrapText(note, widthPx - 18, FONT), x + 18, top, { fontPx: FONT })
    nodes.push(...block.nodes)
    top += block.heightPx + 2
  })
  return { nodes, heightPx: top - y }
}

/** Fields after ISO 7200 (2004), Data fields in title blocks; bottom right. */
function drawTitleBlock(content: PackageContent, sheetHeight: number): DrawingNode[] {
  const { snapshot, release } = content
  const { brief, name } = snapshot.design
  const x = SHEET_WIDTH - MARGIN - TITLE_BLOCK_WIDTH
  const y = sheetHeight - MARGIN - TITLE_BLOCK_HEIGHT
  const half = TITLE_BLOCK_WIDTH / 2
  const cells: [string, string, number, number][] = [
    ['Legal owner', content.workspaceName, 0, 0],
    ['Title', name, half, 0],
    ['Part number', brief.partNumber || 'not stated', 0, 1],
    ['Project, revision', `${snapshot.projectName}, ${snapshot.label}`, half, 1],
    ['Released', `${sayTime(release.at)}, ${release.byName}`, 0, 2],
    ['Document', 'Drawing sheet 1 of 1, not to scale', half, 2],
  ]
  const rowHeight = TITLE_BLOCK_HEIGHT / 3
  const nodes: DrawingNode[] = [
    makeNode('rect', {
      x,
      y,
      width: TITLE_BLOCK_WIDTH,
      height: TITLE_BLOCK_HEIGHT,
      fill: PALETTE.paper,
      stroke: INK,
      'stroke-width': 1,
    }),
    makeNode('line', {
      x1: x + half,
      y1: y,
      x2: x + half,
      y2: y + TITLE_BLOCK_HEIGHT,
      stroke: INK,
      'stroke-width': 0.5,
    }),
    drawRule(x, y + rowHeight, TITLE_BLOCK_WIDTH, true),
    drawRule(x, y + 2 * rowHeight, TITLE_BLOCK_WIDTH, true),
  ]
  for (const [label, text, offset, row] of cells) {
    const top = y + row * rowHeight
    const shown = fitLine(text, half - 12, FONT + 1)
    nodes.push(
      makeSvgText(label, x + offset + 6, top + 10, { fontPx: 6.5, fill: SOFT }),
      makeSvgText(shown, x + offset + 6, top + 23, { fontPx: FONT + 1, isBold: true }),
    )
  }
  return nodes
}

function drawFrame(sheetHeight: number): DrawingNode {
  const inset = MARGIN - 12
  return makeNode('rect', {
    x: inset,
    y: inset,
    width: SHEET_WIDTH - 2 * inset,
    height: sheetHeight - 2 * inset,
    fill: 'none',
    stroke: INK,
    'stroke-width': 1,
  })
}
