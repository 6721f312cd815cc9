import type { LengthUnit } from '@/lib/engine'
import { type FoldStep, normalOf, type RoomSide, type ShapeBody, type ShapeRole } from '@/lib/engine/folding'
import {
  asEntered,
  countOf,
  digitsOfResultLength,
  formatEnteredLength,
  getShownUnit,
  withUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode, type Picture, roundPx } from '../picture'
import { orderByDepth, type SeenPoint } from './depth-order'
import { type FoldedView, makeSeen } from './folded-view'

/** Which colour of the palette a body takes. Its name stands in the table, and what it is made as beside it. */
const FILLS: Record<ShapeRole, keyof Palette> = {
  rigid: 'laminate',
  flex: 'film',
  // A bend is of the same film; its borders are drawn.
  bend: 'film',
  stiffened: 'stiffener',
  finger: 'shield',
  component: 'mask',
}
const LEGEND: readonly { readonly roles: readonly ShapeRole[]; readonly words: string }[] = [
  { roles: ['rigid'], words: 'rigid area' },
  { roles: ['flex', 'bend'], words: 'flex area and bend' },
  { roles: ['stiffened'], words: 'stiffened area' },
  { roles: ['finger'], words: 'contact end' },
  { roles: ['component'], words: 'component' },
]

const EDGE_PX = 12
const HIGHEST_SHARE = 0.75
/** A face that looks away from the light is as much nearer to the ink, in per cent. */
const SHADE_PCT = 34

export interface FoldedPictureOptions {
  readonly palette: Palette
  readonly widthPx: number
  readonly view: FoldedView
  readonly unit?: LengthUnit
}

/** What is drawn: the bodies after so many steps of the fold. */
export interface FoldedState {
  readonly bodies: readonly ShapeBody[]
  readonly steps: readonly FoldStep[]
  /** As `shapeFold`. */
  readonly made: number
  /** Box and room of the part folded whole, as the checklist measures them. */
  readonly room: readonly RoomSide[]
}

/** The folded part in parallel projection: what is in front hides what is behind. Null where there is nothing to draw. */
export function drawFolded(
  state: FoldedState,
  { palette, widthPx, view, unit: chosen = 'mm' }: FoldedPictureOptions,
): Picture | null {
  const { bodies, steps, made } = state
  const seen = makeSeen(view)
  const faces = bodies.flatMap(({ role, faces: all }) =>
    all.flatMap(({ corners, isEdge }) => {
      const points = corners.map(seen)
      const facing = doubledAreaOf(points)
      // Corners turn left from outside; with y pointing down the sign is the other way round.
      return facing < -1e-6 ? [{ role, points, isEdge, light: lightOf(points) }] : []
    }),
  )
  if (faces.length === 0) return null
  const all = faces.flatMap(({ points }) => points)
  const bound = (axis: 0 | 1, pick: (a: number, b: number) => number) =>
    all.reduce((found, point) => pick(found, point[axis]), all[0]?.[axis] ?? 0)
  const [left, right, top, bottom] = [bound(0, Math.min), bound(0, Math.max), bound(1, Math.min), bound(1, Math.max)]
  const room = widthPx - 2 * EDGE_PX
  const scale = Math.min(room / Math.max(right - left, 1e-6), (widthPx * HIGHEST_SHARE) / Math.max(bottom - top, 1e-6))
  const heightPx = Math.ceil((bottom - top) * scale) + 2 * EDGE_PX
  const offX = (widthPx - (right - left) * scale) / 2
  const place = ([x, y]: SeenPoint) => [(x - left) * scale + offX, (y - top) * scale + EDGE_PX] as const
  const nodes = orderByDepth(faces.map(({ points }) => points)).flatMap((at): DrawingNode[] => {
    const face = faces[at]
    if (face === undefined) return []
    const ring = face.points.map(place)
    const fill = mix(palette[FILLS[face.role]], palette.ink, SHADE_PCT * (1 - face.light))
    const path = ring.map(([x, y]) => `${roundPx(x)} ${roundPx(y)}`).join(' ')
    const edges = ring.flatMap(([x, y], side) => {
      const [u, v] = ring[(side + 1) % ring.length] ?? [x, y]
      return face.isEdge[side] === true ? [`M${roundPx(x)} ${roundPx(y)}L${roundPx(u)} ${roundPx(v)}`] : []
    })
    return [
      // Its own colour round it closes the hairline between two pieces of one face.
      makeNode('polygon', { points: path, fill, stroke: fill, 'stroke-width': 0.8, 'stroke-linejoin': 'round' }),
      ...(edges.length === 0
        ? []
        : [
            makeNode('path', {
              d: edges.join(''),
              fill: 'none',
              stroke: palette.ink,
              'stroke-width': 0.6,
              'stroke-linecap': 'round',
            }),
          ]),
    ]
  })
  const unit = getShownUnit('mm', chosen)
  return {
    title: 'Part folded',
    description: `${describeFoldState(steps, made)} ${describeBox(state, unit)} Parallel projection; bends are true arcs.`,
    widthPx,
    heightPx,
    nodes,
    table: {
      caption: 'Bends in the order of the fold',
      columns: [
        { key: 'step', label: 'Step', numeric: true },
        { key: 'name', label: 'Bend', numeric: false },
        { key: 'angle', label: withUnitInHead('Angle', 'deg'), numeric: true },
        { key: 'state', label: 'State', numeric: false },
      ],
      rows: steps.map(({ name, angleDeg }, at) => ({
        step: String(at + 1),
        name,
        angle: asEntered(angleDeg),
        state: made >= at + 1 ? 'bent' : made > at ? 'on the way' : 'flat',
      })),
    },
  }
}

/** What the colours stand for, of those that are drawn. */
export function listFoldedLegend(
  bodies: readonly ShapeBody[],
): readonly { readonly fill: keyof Palette; readonly words: string }[] {
  const drawn = new Set(bodies.map(({ role }) => role))
  return LEGEND.flatMap(({ roles, words }) =>
    roles.some((role) => drawn.has(role)) ? [{ fill: FILLS[roles[0] ?? 'rigid'], words }] : [],
  )
}

/** The colour that a body takes. */
export const fillOfShape = (role: ShapeRole): keyof Palette => FILLS[role]

/** `1 of 2 bends made, Hinge on the way.` */
export function describeFoldState(steps: readonly FoldStep[], made: number): string {
  if (made <= 0) return 'Flat.'
  const whole = Math.floor(made)
  const next = steps[whole]
  const done = whole >= steps.length ? 'Folded' : `${whole} of ${countOf(steps.length, 'bend')} made`
  return next !== undefined && made > whole ? `${done}, ${next.name} on the way.` : `${done}.`
}

/** The box as the checklist has it; halfway through the fold, the one of the picture, whose arcs are of short straight pieces. */
function describeBox({ bodies, steps, made, room }: FoldedState, unit: LengthUnit): string {
  const digits = (mm: number) => digitsOfResultLength(mm, 'mm', unit)
  const box = (sizes: readonly number[]) =>
    `${sizes.slice(0, -1).map(digits).join(' × ')} × ${withUnit(digits(sizes.at(-1) ?? 0), unit)}`
  if (made <= 0) return `It fills a box of ${box(sizesOf(bodies))}.`
  if (made < steps.length) return `It fills a box of about ${box(sizesOf(bodies))}.`
  const stated = room.flatMap(({ words, roomMm }) =>
    roomMm === null ? [] : [`${formatEnteredLength(roomMm, 'mm', unit)} ${words}`],
  )
  return `It fills a box of ${box(room.map(({ takenMm }) => takenMm))}.${stated.length === 0 ? '' : ` Its room: ${stated.join(', ')}.`}`
}

function sizesOf(bodies: readonly ShapeBody[]): readonly number[] {
  const points = bodies.flatMap(({ faces }) => faces.flatMap(({ corners }) => corners))
  return ([0, 1, 2] as const).map((axis) => {
    const [low, high] = points.reduce(
      ([least, most], point) => [Math.min(least, point[axis]), Math.max(most, point[axis])] as const,
      [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as readonly [number, number],
    )
    return high - low
  })
}

function doubledAreaOf(points: readonly SeenPoint[]): number {
  return points.reduce((sum, [x, y], at) => {
    const [u, v] = points[(at + 1) % points.length] ?? [x, y]
    return sum + x * v - u * y
  }, 0)
}

/** 1 for a face that looks at the light over the left shoulder of the eye, 0 for one that looks away from it. */
function lightOf(points: readonly SeenPoint[]): number {
  const [a, b, c] = normalOf(points)
  const [lx, ly, lz] = [-0.36, -0.8, -0.48]
  const sign = c > 0 ? -1 : 1
  return Math.max(0, sign * (a * lx + b * ly + c * lz))
}

/** On paper a colour of its own; on screen the browser mixes the theme's colours. */
function mix(colour: string, ink: string, inkPct: number): string {
  const pct = Math.round(inkPct)
  if (!colour.startsWith('#') || !ink.startsWith('#')) return `color-mix(in srgb, ${ink} ${pct}%, ${colour})`
  const part = (text: string, at: number) => Number.parseInt(text.slice(at, at + 2), 16)
  const hex = [1, 3, 5].map((at) => {
    const mixed = Math.round((part(colour, at) * (100 - pct) + part(ink, at) * pct) / 100)
    return mixed.toString(16).padStart(2, '0')
  })
  return `#${hex.join('')}`
}
