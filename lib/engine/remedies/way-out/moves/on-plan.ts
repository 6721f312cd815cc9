import {
  lengthenStiffener,
  offsetRoutes,
  type Plan,
  type PointMm,
  refilletCorners,
  squareRoutes,
  wholePoint,
} from '@/lib/plan'
import { drawDimensions } from '../../../assembly/drawn'
import type { Design } from '../../../design'
import { inSentence } from '../../../units'
import type { Judged } from '../judge'
import { type Move, type Mover, placeId, roundUp, shortfallOf } from './move'

/** What was stated of a plan would contradict it once it is changed: the drawn dimensions are stated instead. */
export const withPlan = (design: Design, plan: Plan): Design => drawDimensions({ ...design, plan }).design

const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  list.find((entry) => entry.id === id)?.name ?? id

/** Larger arcs at the corners of the outline. */
export const refillet: Mover = function* (failure, { design }) {
  const id = placeId(failure, 'corner')
  if (design.plan === null || id === null) return
  // Arcs are drawn to the nanometre: a little more than the limit, as people would write it.
  const radiusMm = roundUp(failure.outcome.limit.value * 1.01, 0.05)
  const plan = refilletCorners(design.plan, id, radiusMm)
  if (plan === null) return
  yield {
    id: `refillet:${id}`,
    title: 'Larger corner radius',
    detail: `${nameOf(design.features.outlineCorners, id)}: ${inSentence(failure.outcome.value.value, 'mm')} to ${inSentence(radiusMm, 'mm')}`,
    relaxes: null,
    cautions: [],
    design: withPlan(design, plan),
  }
}

/** A conductor square to the axis through the whole band. */
export const squareCrossing: Mover = function* (failure, { design, context }) {
  const [conductorId, bendId] = [placeId(failure, 'conductor'), placeId(failure, 'bend')]
  if (design.plan === null || conductorId === null || bendId === null) return
  const band = context.drawing.measures?.bands.find((each) => each.bendId === bendId)
  if (band?.widthMm == null) return
  const plan = squareRoutes(design.plan, conductorId, bendId, band.widthMm)
  if (plan === null) return
  yield {
    id: `square:${conductorId}:${bendId}`,
    title: 'Conductor square to the bend',
    detail: `${nameOf(design.features.conductors, conductorId)} through ${nameOf(design.bends, bendId)}: ${inSentence(failure.outcome.value.value, 'deg')} to ${inSentence(90, 'deg')} to the axis`,
    relaxes: null,
    cautions: ['The layout has to follow: routes in plan are coarse.'],
    design: withPlan(design, plan),
  }
}

/** Sideways shifts that are tried beyond the least, mm. Our choice. */
const EXTRA_MM = [0, 0.5, 1, 1.5, 2, 3, 4]

/** One of two conductors that lie over each other moves beside the other. */
export const stagger: Mover = function* (failure, { design }) {
  const ids = failure.outcome.places.flatMap(({ kind, id }) => (kind === 'conductor' ? [id] : []))
  if (failure.item.id !== 'layer-stagger' || ids.length !== 2) return
  const width = (id: string) => design.features.conductors.find((each) => each.id === id)?.widthMm ?? 0
  const needed = ids.reduce((sum, id) => sum + width(id) / 2, 0)
  yield* moveApart(design, [ids[1] ?? '', ids[0] ?? ''], needed)
}

/** The last named first: it is the one that is more often free to move. */
export function* moveApart(design: Design, conductorIds: readonly string[], neededMm: number): Generator<Move> {
  if (design.plan === null) return
  for (const extraMm of EXTRA_MM) {
    for (const conductorId of conductorIds) {
      for (const side of [1, -1]) {
        const byMm = roundUp(neededMm + extraMm, 0.05) * side
        const plan = offsetRoutes(design.plan, conductorId, byMm)
        if (plan === null) continue
        yield {
          id: `offset:${conductorId}`,
          title: 'Conductors side by side',
          detail: `${nameOf(design.features.conductors, conductorId)} moved ${inSentence(Math.abs(byMm), 'mm')} sideways`,
          relaxes: null,
          cautions: ['The layout has to follow: routes in plan are coarse.'],
          design: withPlan(design, plan),
        }
      }
    }
  }
}

/** A stiffener that reaches as far under the coverlay as its limit asks for. */
export const lengthen: Mover = function* (failure, { design }) {
  const id = placeId(failure, 'stiffener')
  if (design.plan === null || id === null || failure.item.id !== 'stiffener-overlap') return
  const byMm = roundUp(shortfallOf(failure), 0.05)
  const plan = lengthenStiffener(design.plan, id, byMm)
  if (plan === null) return
  yield {
    id: `lengthen:${id}`,
    title: 'Longer stiffener',
    detail: `${nameOf(design.features.stiffeners, id)}: ${inSentence(byMm, 'mm')} further under the coverlay`,
    relaxes: null,
    cautions: ['Straight film between the stiffener and the bend gets shorter by as much.'],
    design: withPlan(design, plan),
  }
}

interface Placed {
  readonly list: 'holes' | 'coverlayOpenings' | 'components'
  readonly place: string
  readonly title: string
  /** What moves: a place on the part that somebody else may have set. */
  readonly relaxes: (name: string) => string | null
}

const PLACED: readonly Placed[] = [
  { list: 'holes', place: 'hole', title: 'Holes moved', relaxes: () => null },
  { list: 'coverlayOpenings', place: 'coverlay-opening', title: 'Coverlay opening moved', relaxes: () => null },
  { list: 'components', place: 'component', title: 'Component moved', relaxes: (name) => `place of ${name}` },
]

/** Beyond what is lacking, mm. Our choice. */
const SHIFTS_MM = [0, 0.25, 0.5, 1, 2, 3, 4, 6, 8, 10, 12, 15, 18, 21, 24]
const MARGIN_STEP_MM = 0.05

/** What lies too near a bend or a rigid edge moves away from it, each drawn pattern by itself. */
export const moveAway: Mover = function* (failure, judged) {
  const { design } = judged
  const { plan } = design
  if (plan === null || failure.outcome.limit.unit !== 'mm' || failure.outcome.limit.sense !== 'at-least') return
  for (const placed of PLACED) {
    const id = placeId(failure, placed.place)
    if (id === null) continue
    const moved = moveEach(plan, placed.list, id, judged)
    if (moved === null) continue
    const name = nameOf(design.features[placed.list], id)
    yield {
      id: `move:${id}`,
      title: placed.title,
      detail: `${name}: ${moved.shifts.join(' and ')}`,
      relaxes: placed.relaxes(name),
      cautions: ['Conductors that end there have to follow.'],
      design: withPlan(design, moved.plan),
    }
  }
}

const ID_FIELDS = { holes: 'holeId', coverlayOpenings: 'openingId', components: 'componentId' } as const

/** Each pattern of a kind that lies too near by itself moves by the least shift that clears it. */
function moveEach(
  plan: Plan,
  list: Placed['list'],
  featureId: string,
  judged: Judged,
): { readonly plan: Plan; readonly shifts: readonly string[] } | null {
  const own = plan[list].filter((entry) => (entry as unknown as Record<string, unknown>)[ID_FIELDS[list]] === featureId)
  let drawn = plan
  const shifts: string[] = []
  for (const entry of own) {
    const alone = (shifted: (typeof own)[number]): Plan => ({
      ...plan,
      [list]: plan[list].flatMap((each) => {
        if (each === entry) return [shifted]
        return own.includes(each as never) ? [] : [each]
      }),
    })
    if (isClear(alone(entry), list, featureId, judged)) continue
    const found = findShift(entry, list, plan, (shifted) => isClear(alone(shifted), list, featureId, judged))
    if (found === null) return null
    drawn = {
      ...drawn,
      [list]: (drawn[list] as unknown[]).map((each) => (each === entry ? found.entry : each)),
    } as Plan
    shifts.push(found.words)
  }
  return shifts.length === 0 ? null : { plan: drawn, shifts }
}

type Entry = Plan['holes'][number] | Plan['coverlayOpenings'][number] | Plan['components'][number]

function findShift(entry: Entry, _list: Placed['list'], plan: Plan, isClearOf: (entry: Entry) => boolean) {
  const directions = listDirections(plan)
  for (const shiftMm of SHIFTS_MM.flatMap((mm) => [mm + MARGIN_STEP_MM, mm + 3 * MARGIN_STEP_MM])) {
    for (const [x, y] of directions) {
      const shifted = shift(entry, [x * shiftMm, y * shiftMm])
      if (shifted === null || !isClearOf(shifted)) continue
      return { entry: shifted, words: `${inSentence(shiftMm, 'mm')} ${nameDirection([x, y])}` }
    }
  }
  return null
}

/** Square to the axes of the bends: away from a band is the shortest way out of it. */
function listDirections(plan: Plan): readonly PointMm[] {
  const found = new Map<string, PointMm>()
  for (const { fromMm, toMm } of plan.bendLines) {
    const length = Math.hypot(toMm[0] - fromMm[0], toMm[1] - fromMm[1])
    if (length === 0) continue
    const normal: PointMm = [-(toMm[1] - fromMm[1]) / length, (toMm[0] - fromMm[0]) / length]
    for (const side of [1, -1]) {
      const direction: PointMm = [normal[0] * side, normal[1] * side]
      found.set(direction.map((each) => Math.round(each * 1000)).join(), direction)
    }
  }
  return [...found.values()]
}

function nameDirection([x, y]: PointMm): string {
  if (Math.abs(x) > 0.999) return x > 0 ? 'along x' : 'against x'
  if (Math.abs(y) > 0.999) return y > 0 ? 'along y' : 'against y'
  return 'square to the bend'
}

function shift(entry: Entry, [dx, dy]: PointMm): Entry | null {
  const move = ([x, y]: PointMm) => wholePoint([x + dx, y + dy])
  if ('atMm' in entry) {
    const atMm = move(entry.atMm)
    return atMm === null ? null : { ...entry, atMm }
  }
  const nodes = entry.nodes.map(({ atMm, viaMm }) => ({ atMm: move(atMm), viaMm: viaMm === null ? null : move(viaMm) }))
  if (nodes.some(({ atMm, viaMm }, at) => atMm === null || (viaMm === null && entry.nodes[at]?.viaMm !== null)))
    return null
  return { ...entry, nodes: nodes as typeof entry.nodes }
}

/** Each limit of the distance to a bend: an opening leaves the straight film beside it plain, too. */
const NEAR_BEND = {
  holes: ['holeToBendMm'],
  coverlayOpenings: ['openingToBendMm', 'bendToRigidMm'],
  components: ['componentToBendMm'],
} as const

/** Far enough from bends and from rigid edges, and still on the part. */
function isClear(plan: Plan, list: Placed['list'], featureId: string, { design, context }: Judged): boolean {
  const drawing = drawDimensions({ ...design, plan })
  const entry = drawing.design.features[list].find(({ id }) => id === featureId)
  const placed = drawing.measures?.placed[list].find(({ id }) => id === featureId)
  if (entry === undefined || placed === undefined || !placed.isOnPart) return false
  const bendMm = placed.nearestBend?.distanceMm ?? Number.POSITIVE_INFINITY
  const transitionMm =
    list === 'coverlayOpenings' ? Number.POSITIVE_INFINITY : (placed.transitionMm ?? Number.POSITIVE_INFINITY)
  return (
    NEAR_BEND[list].every((key) => bendMm >= context.getLimit(key).value) &&
    transitionMm >= context.getLimit('transitionStripMm').value
  )
}
