import type { Design } from '@/lib/engine'
import { edgesOfLoop, edgesOfPath, flattenEdges, type LineOrArc } from '@/lib/geometry'
import { NM_PER_MM, type Plan, pathInNm } from '@/lib/plan'
import { FILE_FONTS, type Palette } from '../palette'
import { type DrawingNode, makeNode, type Picture, roundPx } from '../picture'
import { boundsOfPlan, type Point } from '../plan/frame'
import { setLabels, type WantedLabel } from '../plan/label-room'
import { makePlanReferences } from '../plan/references'
import type { Room } from '../plan/room-index'
import { FONT_MM, makeLine, makeSheetText } from '../sheet/marks'
import { measureText } from '../text-metrics'
import { clipLine, clipPath } from './clip'
import { FOOT_MM, listPages, OVERLAP_MM, type Page, type Pages, type Paper } from './pages'

export interface PaperModelOptions {
  readonly paper: Paper
  readonly palette: Palette
  /** Project and revision, as the foot of each sheet says them. */
  readonly name: string
  /** Flat length of each bend's arc, which paper is rolled over; a bend that is not here shows its axis alone. */
  readonly bandWidthsMm: ReadonlyMap<string, number>
}

/** The line that is measured after printing, in mm. */
export const CHECK_LENGTH_MM = 100

const CUT_MM = 0.35
const FOLD_MM = 0.3
const FINE_MM = 0.15
/** Ridges (mountain folds) dash-dotted, valleys dashed: the usual notation of paper folding, from memory. */
const RIDGE_DASHES = '6 1.2 0.8 1.2'
const VALLEY_DASHES = '2.4 1.4'
/** Arcs as chords that stray from them by no more. */
const FLATTEN_NM = 5000

/**
 * The part at its true size on sheets of paper, to be cut out and folded: outline and cut-outs, slits, folds, zones by their names. Seen on
 * the top face. Empty where the plan has no outline.
 */
export function drawPaperModel(design: Design, options: PaperModelOptions): Picture[] {
  const { plan } = design
  const bounds = plan === null ? null : boundsOfPlan(plan)
  if (plan === null || bounds === null) return []
  const pages = listPages(options.paper, bounds.minMm, bounds.maxMm)
  return pages.list.map((page, index) => drawPage(design, plan, page, index + 1, pages, options))
}

function drawPage(
  design: Design,
  plan: Plan,
  page: Page,
  number: number,
  pages: Pages,
  { palette, name, bandWidthsMm }: PaperModelOptions,
): Picture {
  const { window, upperLeftMm, paper } = page
  const place = ([x, y]: Point): Point => [window.x + x - upperLeftMm[0], window.y + upperLeftMm[1] - y]
  const points = (edges: readonly LineOrArc[], isClosed: boolean): Point[] => {
    const last = edges.at(-1)?.to
    const flat = [...flattenEdges(edges, FLATTEN_NM), ...(isClosed || last === undefined ? [] : [last])]
    const all = isClosed ? [...flat, ...flat.slice(0, 1)] : flat
    return all.map(([x, y]) => place([x / NM_PER_MM, y / NM_PER_MM]))
  }
  const nodes: DrawingNode[] = []
  const stroke = (line: readonly Point[], widthMm: number, dashes?: string) => {
    const d = clipPath(line, window)
    if (d === '') return
    nodes.push(
      makeNode('path', { d, fill: 'none', stroke: palette.ink, 'stroke-width': widthMm, 'stroke-dasharray': dashes }),
    )
  }
  for (const loop of [plan.outline ?? [], ...plan.cutOuts.map((cutOut) => cutOut.nodes)]) {
    stroke(points(edgesOfLoop(pathInNm(loop)), true), CUT_MM)
  }
  for (const slit of plan.slits) stroke(points(edgesOfPath(pathInNm(slit.nodes)), false), CUT_MM)
  for (const stiffener of plan.stiffeners) {
    stroke(points(edgesOfLoop(pathInNm(stiffener.nodes)), true), FINE_MM)
  }
  for (const { nodes: line } of plan.dividingLines) stroke(points(edgesOfPath(pathInNm(line)), false), FINE_MM)
  for (const { bendId, fromMm, toMm } of plan.bendLines) {
    const bend = design.bends.find(({ id }) => id === bendId)
    stroke([place(fromMm), place(toMm)], FOLD_MM, bend?.insideFace === 'top' ? VALLEY_DASHES : RIDGE_DASHES)
    const widthMm = bandWidthsMm.get(bendId)
    if (widthMm === undefined) continue
    const length = Math.hypot(toMm[0] - fromMm[0], toMm[1] - fromMm[1])
    const across: Point = [
      (-(toMm[1] - fromMm[1]) / length) * (widthMm / 2),
      ((toMm[0] - fromMm[0]) / length) * (widthMm / 2),
    ]
    for (const side of [1, -1]) {
      const shift = ([x, y]: Point): Point => place([x + side * across[0], y + side * across[1]])
      stroke([shift(fromMm), shift(toMm)], FINE_MM, '0.3 0.9')
    }
  }
  const labels = drawLabels(design, plan, place, window, palette)
  return {
    title: `Paper model, sheet ${number} of ${pages.list.length}`,
    description: `${design.name} at its true size, column ${page.column} of ${pages.columns}, row ${page.row} of ${pages.rows}, to be cut out and folded.`,
    widthPx: paper[0],
    heightPx: paper[1],
    nodes: [
      makeNode('rect', { x: 0, y: 0, width: paper[0], height: paper[1], fill: palette.paper }),
      makeNode('g', { 'font-family': FILE_FONTS, fill: palette.ink }, [
        ...nodes,
        ...labels,
        ...drawMatchMarks(page, pages, palette),
        ...drawFoot(page, `${name}: sheet ${number} of ${pages.list.length}`, palette),
      ]),
    ],
    table: {
      caption: 'Bends of the model',
      columns: [
        { key: 'bend', label: 'Bend', numeric: false },
        { key: 'fold', label: 'Fold', numeric: false },
        { key: 'angle', label: 'Angle, °', numeric: true },
      ],
      rows: design.bends.map(({ name: bend, insideFace, angleDeg }) => ({
        bend,
        fold: insideFace === 'top' ? 'valley' : 'mountain',
        angle: String(angleDeg),
      })),
    },
  }
}

function drawLabels(
  design: Design,
  plan: Plan,
  place: (point: Point) => Point,
  window: Page['window'],
  palette: Palette,
): DrawingNode[] {
  const names = makePlanReferences(design)
  const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const wanted = [
    ...plan.bendLines.map(({ bendId, fromMm, toMm }): WantedLabel => {
      const bend = design.bends.find(({ id }) => id === bendId)
      const fold = bend?.insideFace === 'top' ? 'valley' : 'mountain'
      return {
        text: `${names.bends.get(bendId) ?? ''} ${fold} ${bend?.angleDeg ?? '?'}°, radius ${bend?.insideRadiusMm ?? '?'} mm`,
        at: place(middle(fromMm, toMm)),
      }
    }),
    ...plan.areas.map(({ name, markMm }): WantedLabel => ({ text: name, at: place(markMm), isOnPlace: true })),
  ].filter(({ at: [x, y] }) => clipLine([x, y], [x + 1e-3, y], window) !== null)
  const room: Room = {
    left: window.x,
    right: window.x + window.width,
    top: window.y,
    bottom: window.y + window.height,
  }
  return setLabels(wanted, room, [], FONT_MM.body).set.flatMap(({ text, x, y, box }) => [
    makeNode('rect', {
      x: box.left,
      y: box.top,
      width: box.right - box.left,
      height: box.bottom - box.top,
      fill: palette.paper,
    }),
    makeSheetText(text, x, y, { fontMm: FONT_MM.body, isSoft: true }, palette),
  ])
}

/** Crosses in the middle of each overlap, at both ends: laid over each other, two sheets fit. */
function drawMatchMarks({ window, column, row }: Page, { columns, rows }: Pages, palette: Palette): DrawingNode[] {
  const half = OVERLAP_MM / 2
  const cross = (x: number, y: number) => [
    makeLine([x - 3, y], [x + 3, y], FINE_MM, palette.ink),
    makeLine([x, y - 3], [x, y + 3], FINE_MM, palette.ink),
  ]
  const [right, bottom] = [window.x + window.width, window.y + window.height]
  return [
    ...(column > 1 ? [window.y + half, bottom - half].flatMap((y) => cross(window.x + half, y)) : []),
    ...(column < columns ? [window.y + half, bottom - half].flatMap((y) => cross(right - half, y)) : []),
    ...(row > 1 ? [window.x + half, right - half].flatMap((x) => cross(x, window.y + half)) : []),
    ...(row < rows ? [window.x + half, right - half].flatMap((x) => cross(x, bottom - half)) : []),
  ]
}

function drawFoot({ window, paper, column, row }: Page, name: string, palette: Palette): DrawingNode[] {
  const top = window.y + window.height
  const fontMm = FONT_MM.body
  const left = window.x + 2
  const write = (text: string, x: number, y: number) => makeSheetText(text, x, y, { fontMm }, palette)
  const scaleY = top + 9
  const sample = (y: number, words: string, dashes: string | null, widthMm: number) => [
    makeNode('line', {
      x1: left,
      y1: y - 0.9,
      x2: left + 20,
      y2: y - 0.9,
      stroke: palette.ink,
      'stroke-width': widthMm,
      'stroke-dasharray': dashes,
    }),
    write(words, left + 23, y),
  ]
  const room = paper[0] - 2 * left
  const full = `${name}, column ${column}, row ${row}`
  const shown = measureText(full, fontMm) <= room ? full : name.slice(-Math.floor(room / fontMm))
  return [
    makeLine([left, scaleY], [left + CHECK_LENGTH_MM, scaleY], FOLD_MM, palette.ink),
    makeLine([left, scaleY - 1.5], [left, scaleY + 1.5], FOLD_MM, palette.ink),
    makeLine([left + CHECK_LENGTH_MM, scaleY - 1.5], [left + CHECK_LENGTH_MM, scaleY + 1.5], FOLD_MM, palette.ink),
    write(
      `${CHECK_LENGTH_MM} mm: measure it. If it is not, print at 100 % without fitting.`,
      left + CHECK_LENGTH_MM + 3,
      scaleY + 1,
    ),
    ...sample(top + 15, 'cut', null, CUT_MM),
    ...sample(top + 19, 'mountain fold: both sides away from you', RIDGE_DASHES, FOLD_MM),
    ...sample(top + 23, 'valley fold: both sides towards you', VALLEY_DASHES, FOLD_MM),
    write('Between dotted lines, roll the paper over the radius.', left + 92, top + 15),
    write('Lay crosses of neighbouring sheets over each other.', left + 92, top + 19),
    write('Thin lines: borders of areas and stiffeners.', left + 92, top + 23),
    write(shown, left, top + FOOT_MM - 3),
    makeNode('path', {
      d: `M${roundPx(window.x)},${roundPx(top + 3)}H${roundPx(window.x + window.width)}`,
      stroke: palette.hairline,
      'stroke-width': FINE_MM,
      fill: 'none',
    }),
  ]
}
