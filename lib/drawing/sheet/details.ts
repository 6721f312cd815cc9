import type { Design } from '@/lib/engine'
import type { Plan } from '@/lib/plan'
import type { Palette } from '../palette'
import { drawDetailFigure } from '../plan/detail-figure'
import { type DetailPlace, sizeOfDetail } from '../plan/detail-places'
import type { DetailCircle } from '../plan/lay-figure'
import { wrapText } from '../text-metrics'
import type { SheetWords } from './contents/words'
import { FONT_MM, getLinesHeightMm, makeLines } from './marks'
import { SCALES } from './scales'
import type { Strip } from './strips'

/** A place that the view shows too small to be built from, drawn at a larger standard scale. */
export interface SheetDetail extends DetailCircle {
  readonly place: DetailPlace
  readonly scale: string
  readonly factor: number
}

/** Our choices, in mm of paper: what is smaller is drawn larger, and up to this; the circle in which it is drawn. */
const READABLE_MM = 5
const LARGEST_MM = 12
const RADIUS_MM = 15
const GAP_MM = 4
const TOP_MM = 3
const CELL_MM = 2 * RADIUS_MM + 22
/** More details than these would make a book of a sheet: their sizes stand in the tables. */
const MOST_DETAILS = 12

/** Twice as large as views are drawn. */
const DETAIL_SCALES: typeof SCALES = [['20:1', 20], ...SCALES]

/** @param factor  paper over part, of the view */
export function chooseDetails(
  places: readonly DetailPlace[],
  factor: number,
): { readonly shown: readonly SheetDetail[]; readonly left: readonly DetailPlace[] } {
  const small = places.flatMap((place) => {
    const sizeMm = sizeOfDetail(place)
    const found = DETAIL_SCALES.find(([, each]) => sizeMm * each <= LARGEST_MM)
    const [atMm] = place.placesMm
    if (sizeMm * factor >= READABLE_MM || found === undefined || found[1] <= factor || atMm === undefined) return []
    return [{ place, atMm, radiusMm: RADIUS_MM / found[1], scale: found[0], factor: found[1] }]
  })
  return {
    shown: small.slice(0, MOST_DETAILS).map((each, index) => ({ ...each, reference: `D${index + 1}` })),
    left: small.slice(MOST_DETAILS).map(({ place }) => place),
  }
}

/** What the marks of tear stops mean, and which details there was no room for. */
export function describeTearStops(places: readonly DetailPlace[], left: readonly DetailPlace[]): string[] {
  const stops = [...new Set(places.flatMap(({ tearStop }) => tearStop ?? []))]
  return [
    ...(stops.length === 0
      ? []
      : [`Squares (${stops.join(', ')}): a tear stop is required here; its shape is not stated on this drawing.`]),
    ...(left.length === 0 ? [] : [`Sizes in the tables alone, without a detail: ${left.length} more.`]),
  ]
}

interface DetailSheet {
  readonly places: readonly DetailPlace[]
  readonly design: Design
  readonly plan: Plan
  readonly widthMm: number
  readonly words: SheetWords
  readonly palette: Palette
}

/** Rows of details, each with its reference and scale above it and its sizes below. */
export function layDetails(details: readonly SheetDetail[], sheet: DetailSheet): Strip[] {
  const { widthMm } = sheet
  const perRow = Math.max(1, Math.floor((widthMm + GAP_MM) / (CELL_MM + GAP_MM)))
  const cellMm = Math.min(CELL_MM, widthMm)
  const stopsMm = sheet.places.flatMap(({ tearStop, placesMm }) => (tearStop === null ? [] : placesMm))
  const rows: Strip[] = []
  for (let first = 0; first < details.length; first += perRow) {
    const cells = details.slice(first, first + perRow).map((detail) => ({
      detail,
      title: wrapText(`${detail.reference}, scale ${detail.scale}`, cellMm, FONT_MM.body, true),
      lines: wrapText(describeDetail(detail.place, sheet.words), cellMm, FONT_MM.body),
    }))
    const titleMm = TOP_MM + getLinesHeightMm(1, FONT_MM.body) + 1
    const circleMm = 2 * RADIUS_MM + 1
    const textMm = Math.max(...cells.map(({ lines }) => getLinesHeightMm(lines.length, FONT_MM.body)))
    rows.push({
      heightMm: titleMm + circleMm + textMm + GAP_MM,
      draw: (x, y) =>
        cells.flatMap(({ detail, title, lines }, index) => {
          const left = x + index * (CELL_MM + GAP_MM)
          const centre = [left + RADIUS_MM + 1, y + titleMm + RADIUS_MM] as const
          const { atMm: centreMm, factor } = detail
          const frame = { centreMm, centre, radius: RADIUS_MM, factor, perMm: 1, palette: sheet.palette }
          return [
            ...drawDetailFigure(sheet.design, sheet.plan, frame, stopsMm),
            ...makeLines(title, left, y + TOP_MM, { fontMm: FONT_MM.body, isBold: true }, sheet.palette),
            ...makeLines(lines, left, y + titleMm + circleMm, { fontMm: FONT_MM.body }, sheet.palette),
          ]
        }),
    })
  }
  return rows
}

/** `Slit of the arm, T2: end at (12.5, 3); width 0.3 mm; relief ⌀ 1 mm; tear stop.` */
export function describeDetail(place: DetailPlace, words: SheetWords): string {
  const { kind, name, tearStop, insideRadiusMm, slitWidthMm, reliefDiameterMm, placesMm } = place
  const size = (mm: number | null) => (mm === null ? words.plan(null) : `${words.plan(mm)} ${words.planUnit}`)
  const at = placesMm.map(([x, y]) => `(${words.plan(x)}, ${words.plan(y)})`).join(', ')
  const stop = tearStop === null ? 'no tear stop stated' : `tear stop ${tearStop}`
  if (kind === 'corner') return `${name}: inside radius ${size(insideRadiusMm)}, ${stop}; at ${at}.`
  const width = slitWidthMm === 0 ? 'a cut without width' : `width ${size(slitWidthMm)}`
  const relief = reliefDiameterMm === 0 ? 'ends without relief' : `relief diameter ${size(reliefDiameterMm)}`
  return `${name}: ${width}, ${relief}, ${stop}; ${placesMm.length > 1 ? 'ends' : 'end'} at ${at}.`
}
