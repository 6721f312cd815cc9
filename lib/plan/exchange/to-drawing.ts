import { type Piece, type WrittenDrawing, writeDxf } from '@/lib/drawing-files'
import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import { pathData } from '../picture/path-data'
import { PLAN_ROLES, type PlanRole } from './roles'

interface RoleShapes {
  readonly role: (typeof PLAN_ROLES)[number]
  readonly ways: readonly { readonly nodes: readonly PlanNode[]; readonly isClosed: boolean }[]
  readonly circles: readonly { readonly middle: PointMm; readonly radius: number }[]
}

/** Finished diameter by id of a hole's feature; a hole without one cannot be drawn as a circle. */
export type HoleDiameters = ReadonlyMap<string, number | null>

/** Every place of a hole or pattern. */
export function placesOfHole({
  atMm: [x, y],
  columns,
  rows,
  columnStepMm,
  rowStepMm,
}: Plan['holes'][number]): PointMm[] {
  const [cx, cy] = columnStepMm ?? [0, 0]
  const [rx, ry] = rowStepMm ?? [0, 0]
  return Array.from({ length: rows * columns }, (_, at): PointMm => {
    const [column, row] = [at % columns, Math.floor(at / columns)]
    return [x + column * cx + row * rx, y + column * cy + row * ry]
  })
}

function shapesOf(plan: Plan, diameters: HoleDiameters): RoleShapes[] {
  const closed = (nodes: readonly PlanNode[]) => ({ nodes, isClosed: true })
  const open = (nodes: readonly PlanNode[]) => ({ nodes, isClosed: false })
  const ways: Record<PlanRole, RoleShapes['ways']> = {
    outline: plan.outline === null ? [] : [closed(plan.outline)],
    cutOuts: plan.cutOuts.map(({ nodes }) => closed(nodes)),
    dividingLines: plan.dividingLines.map(({ nodes }) => open(nodes)),
    bendLines: plan.bendLines.map(({ fromMm, toMm }) =>
      open([
        { atMm: fromMm, viaMm: null },
        { atMm: toMm, viaMm: null },
      ]),
    ),
    stiffeners: plan.stiffeners.map(({ nodes }) => closed(nodes)),
    holes: [],
    coverlayOpenings: plan.coverlayOpenings.map(({ nodes }) => closed(nodes)),
    components: plan.components.map(({ nodes }) => closed(nodes)),
    slits: plan.slits.map(({ nodes }) => open(nodes)),
  }
  const circles = plan.holes.flatMap((hole) => {
    const diameter = diameters.get(hole.holeId)
    return diameter == null ? [] : placesOfHole(hole).map((middle) => ({ middle, radius: diameter / 2 }))
  })
  return PLAN_ROLES.map((role) => ({
    role,
    ways: ways[role.key],
    circles: role.key === 'holes' ? circles : [],
  })).filter((shapes) => shapes.ways.length + shapes.circles.length > 0)
}

/** The shapes of a plan as a DXF in mm, a layer for each role. What has no shape of its own (marks of areas, notes, dimensions) is not in it. */
export function planAsDxf(plan: Plan, diameters: HoleDiameters): string {
  const shapes = shapesOf(plan, diameters)
  const drawing: WrittenDrawing = {
    layers: shapes.map(({ role }) => ({ name: role.layer, colour: role.colour })),
    strokes: shapes.flatMap(({ role, ways }) =>
      ways.map(({ nodes, isClosed }) => ({ layer: role.layer, isClosed, pieces: piecesOf(nodes, isClosed) })),
    ),
    circles: shapes.flatMap(({ role, circles }) => circles.map((circle) => ({ layer: role.layer, ...circle }))),
  }
  return writeDxf(drawing)
}

function piecesOf(nodes: readonly PlanNode[], isClosed: boolean): Piece[] {
  return nodes.flatMap(({ atMm, viaMm }, at) => {
    const next = nodes[at + 1] ?? (isClosed ? nodes[0] : undefined)
    return next === undefined ? [] : [{ from: atMm, via: viaMm, to: next.atMm }]
  })
}

/** The same as an SVG of true size, a group for each role. */
export function planAsSvg(plan: Plan, diameters: HoleDiameters): string {
  const shapes = shapesOf(plan, diameters)
  const [minX, minY, maxX, maxY] = boundsOfShapes(shapes)
  const margin = 2
  const [left, top] = [round(minX - margin), round(-maxY - margin)]
  const [width, height] = [round(maxX - minX + 2 * margin), round(maxY - minY + 2 * margin)]
  const groups = shapes.map(({ role, ways, circles }) =>
    [
      `  <g id="${role.layer}">`,
      ...ways.map(({ nodes, isClosed }) => `    <path d="${pathData(nodes, isClosed)}"/>`),
      ...circles.map(
        ({ middle, radius }) => `    <circle cx="${round(middle[0])}" cy="${round(-middle[1])}" r="${round(radius)}"/>`,
      ),
      '  </g>',
    ].join('\n'),
  )
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${left} ${top} ${width} ${height}" fill="none" stroke="#000" stroke-width="0.1">`,
    ...groups,
    '</svg>',
    '',
  ].join('\n')
}

const round = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0

/** Ends and through-points with an arc's height to spare. */
function boundsOfShapes(shapes: readonly RoleShapes[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity]
  const take = ([x, y]: PointMm, by: number) => {
    box[0] = Math.min(box[0], x - by)
    box[1] = Math.min(box[1], y - by)
    box[2] = Math.max(box[2], x + by)
    box[3] = Math.max(box[3], y + by)
  }
  for (const { ways, circles } of shapes) {
    for (const { nodes, isClosed } of ways) {
      for (const { from, via, to } of piecesOf(nodes, isClosed)) {
        take([from[0], from[1]], 0)
        take([to[0], to[1]], 0)
        if (via !== null) take([via[0], via[1]], Math.hypot(to[0] - from[0], to[1] - from[1]) / 2)
      }
    }
    for (const { middle, radius } of circles) take(middle, radius)
  }
  return box[0] <= box[2] ? box : [0, 0, 1, 1]
}
