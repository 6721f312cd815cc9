import { type Piece, writeDxf } from '@/lib/drawing-files'
import type { NestedPart, Nesting, PanelFormat } from '@/lib/fabrication'
import { getBounds, type Polygon, translate, turnBy } from '@/lib/geometry'

/** A panel with what lies on it. */
export interface LaidPanel {
  readonly part: Pick<NestedPart, 'outline' | 'array'>
  readonly nesting: Pick<Nesting, 'placements'>
  readonly format: PanelFormat
  /** What registration adds to the format's margins. */
  readonly extraMarginMm: number
}

interface PlacedPiece {
  readonly polygon: Polygon
  readonly isFrame: boolean
}

/** A part where it lies, in whole micrometres from the panel's lower left corner; of an array its frame, then each of its parts. */
export function listPlaced(
  { outline, array }: LaidPanel['part'],
  { xUm, yUm, rotationDeg }: Nesting['placements'][number],
): readonly PlacedPiece[] {
  const turned = turnBy(outline, rotationDeg)
  const { minX, minY } = getBounds(turned)
  const place = (polygon: Polygon) => translate(polygon, [xUm - minX, yUm - minY])
  return [
    { polygon: place(turned), isFrame: array !== undefined },
    ...(array?.parts ?? []).map((each) => ({ polygon: place(turnBy(each, rotationDeg)), isFrame: false })),
  ]
}

/** Layers of the files: the panel, what of it is usable, frames of arrays, parts. Colours are of the index of DXF. */
const LAYERS = {
  PANEL: { colour: 7, stroke: '#000' },
  USABLE: { colour: 8, stroke: '#777' },
  ARRAY: { colour: 5, stroke: '#00f' },
  PART: { colour: 1, stroke: '#d00' },
} as const
type LayerName = keyof typeof LAYERS
const LAYER_NAMES = Object.keys(LAYERS) as LayerName[]

type CornersMm = readonly (readonly [number, number])[]

/** Every closed way on a panel, in mm from its lower left corner. */
function listWays({ part, nesting, format, extraMarginMm }: LaidPanel): { layer: LayerName; cornersMm: CornersMm }[] {
  const { widthMm, heightMm } = format
  const [left, bottom] = [format.marginLeftMm + extraMarginMm, format.marginBottomMm + extraMarginMm]
  const [right, top] = [widthMm - format.marginRightMm - extraMarginMm, heightMm - format.marginTopMm - extraMarginMm]
  const pieces = nesting.placements.flatMap((placement) => listPlaced(part, placement))
  return [
    { layer: 'PANEL', cornersMm: rectangle(0, 0, widthMm, heightMm) },
    ...(left < right && bottom < top
      ? [{ layer: 'USABLE' as const, cornersMm: rectangle(left, bottom, right, top) }]
      : []),
    ...pieces.map(({ polygon, isFrame }) => ({
      layer: isFrame ? ('ARRAY' as const) : ('PART' as const),
      cornersMm: polygon.map(([x, y]): [number, number] => [x / 1000, y / 1000]),
    })),
  ]
}

const rectangle = (left: number, bottom: number, right: number, top: number): CornersMm => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
]

/** DXF in mm: a closed polyline for each part, on a layer for each kind of line. */
export function writePanelDxf(panel: LaidPanel): string {
  return writeDxf({
    layers: LAYER_NAMES.map((name) => ({ name, colour: LAYERS[name].colour })),
    strokes: listWays(panel).map(({ layer, cornersMm }) => ({
      layer,
      isClosed: true,
      pieces: cornersMm.flatMap((from, at): Piece[] => {
        const to = cornersMm[(at + 1) % cornersMm.length]
        return to === undefined ? [] : [{ from, via: null, to }]
      }),
    })),
    circles: [],
  })
}

/** A picture at true size, of lines alone: user units are mm, y is turned over as SVG counts it downwards. */
export function writePanelSvg(panel: LaidPanel): string {
  const { widthMm, heightMm } = panel.format
  const ways = listWays(panel)
  const groups = LAYER_NAMES.flatMap((name) => {
    const own = ways.filter(({ layer }) => layer === name)
    if (own.length === 0) return []
    const polygons = own.map(({ cornersMm }) => {
      const points = cornersMm.map(([x, y]) => `${inMm(x)},${inMm(heightMm - y)}`).join(' ')
      return `<polygon points="${points}"/>`
    })
    return [`<g id="${name}" stroke="${LAYERS[name].stroke}">`, ...polygons, '</g>']
  })
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}" fill="none" stroke-width="0.2">`,
    ...groups,
    '</svg>',
    '',
  ].join('\n')
}

/** To the micrometre that parts are laid to, without the last bits of a difference. */
const inMm = (mm: number): string => String(Math.round(mm * 1000) / 1000 + 0)

const CSV_HEAD = ['Piece', 'Part', 'x, mm', 'y, mm', 'Width, mm', 'Height, mm', 'Turn, °'] as const

/**
 * Every part by the lower left corner of its bounds from the panel's lower left corner, its bounds as it lies, and its turn, counter-clockwise. Of an
 * array the frame comes first, as part 0 of its piece.
 */
export function writePanelCsv({ part, nesting }: LaidPanel): string {
  const rows = nesting.placements.flatMap((placement, piece) =>
    listPlaced(part, placement).map(({ polygon, isFrame }, at) => {
      const { minX, minY, maxX, maxY } = getBounds(polygon)
      const number = isFrame ? 0 : part.array === undefined ? 1 : at
      const sizes = [minX, minY, maxX - minX, maxY - minY].map((um) => inMm(um / 1000))
      return [piece + 1, number, ...sizes, placement.rotationDeg].join(',')
    }),
  )
  return [CSV_HEAD.map((title) => `"${title}"`).join(','), ...rows, ''].join('\r\n')
}
