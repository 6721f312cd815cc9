import { centreBendLine, type Plan, stretchPlan, widenPlan } from '@/lib/plan'
import { drawDimensions } from '../assembly/drawn'
import type { Bend, Design } from '../design'
import { assessBend, type BendAssessment } from './assess'
import { carryOver } from './carry-over'
import { findStraightLeftMm } from './families/room'
import { findMovedFold, isBreak } from './moves'
import type { RemedyOptions } from './options'
import type { MovedItem } from './remedy'
import { describeSet, type Trial, toAssessOptions } from './trial'

/**
 * The design with the dimensions that its plan draws, and without the plan: a search tries a thousand designs on numbers, since measuring the plan
 * for each would take ten times as long. What it finds is judged on the plan before it is listed.
 */
export function takeOffPlan(design: Design): Design {
  return design.plan === null ? design : { ...drawDimensions(design).design, plan: null }
}

/**
 * A set that was found on numbers, on the design as it is drawn. Zones that got longer or wider are pulled apart in the plan. Its figures stay those of the drawn
 * dimensions until it is judged: `judge` measures the plan, so that what the plan alone can forbid (a band past its area, two bands that meet) is a need,
 * and `fold` looks at the folded part besides.
 *
 * @param searched  `takeOffPlan` of the design
 */
export function drawOnPlan(trial: Trial, basis: BendAssessment, searched: Design, options: RemedyOptions): Trial {
  const { design } = basis
  if (design.plan === null) return trial
  const edited = drawEdits(design, searched, trial.edited, basis.context.getLimit('bendToRigidMm').value)
  const judge = once(() => judgeOnPlan(trial, edited, basis, options))
  if (!isSeenOnPlan(searched, trial.edited)) {
    return { ...trial, edited, judged: 'on-plan', judge: () => judge()?.judge?.() ?? null }
  }
  return { ...trial, edited, judged: 'on-numbers', judge }
}

/**
 * The drawn design with what was changed of its numbers.
 *
 * @param searched  `takeOffPlan` of the design, which the changes were made to
 * @param straightMm  straight film that is left beside a bend where zones are pulled apart
 */
export function drawEdits(design: Design, searched: Design, changed: Design, straightMm: number): Design {
  if (design.plan === null) return changed
  const applied = carryOver<Design>(searched, changed, { ...design, plan: null })
  const plan = pullApart(design.plan, searched, changed, straightMm)
  // The plan stays the object that was measured: measures are known by it.
  if (plan === design.plan) return { ...applied, plan }
  return { ...share(design, stateAsDrawn({ ...applied, plan })), plan }
}

/** What leads is judged when it is found, and listed again at the end. */
function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | null = null
  return () => {
    known ??= { value: work() }
    return known.value
  }
}

function judgeOnPlan({ changes }: Trial, edited: Design, basis: BendAssessment, options: RemedyOptions): Trial | null {
  const assessment = assessBend(edited, basis.result.bendId, toAssessOptions(options), basis)
  if (assessment === null || assessment.state.allowablePct === null) return null
  const onPlan: Trial = { ...describeSet(basis, assessment, changes, options), judged: 'on-plan' }
  return { ...onPlan, judge: once(() => addFold(onPlan, findMovedFold(basis, assessment, options))) }
}

function addFold(trial: Trial, moved: readonly MovedItem[]): Trial {
  const findMoved = () => [...trial.findMoved(), ...moved]
  return { ...trial, findMoved, countBreaks: () => findMoved().filter(isBreak).length, judged: 'folded' }
}

/** Does an edit move what a plan is measured for: features, sizes of zones, arcs of bends? What only moves an axis by micrometres does not. */
function isSeenOnPlan(before: Design, after: Design): boolean {
  const sizes = ({ construction, bends }: Design) =>
    JSON.stringify([
      construction.zones.map(({ lengthMm, widthMm }) => [lengthMm, widthMm]),
      bends.map(({ insideRadiusMm, angleDeg, axisLengthMm }) => [insideRadiusMm, angleDeg, axisLengthMm]),
    ])
  return before.features !== after.features || sizes(before) !== sizes(after)
}

/** What was stated of a plan before it was pulled apart would contradict it now: the drawn dimensions are stated instead. */
const stateAsDrawn = (design: Design): Design => drawDimensions(design).design

/** What is drawn at a bend line: a zone that got wider or longer there, or its axis moved to the middle. */
interface Pull {
  readonly lineId: string
  readonly widerMm: number
  readonly longerMm: number
  readonly isMovedToMiddle: boolean
}

/**
 * A drawn zone gets its length and width where its first bend is drawn, and a bend that was moved to the middle of its zone is drawn there. A plan that cannot
 * simply be pulled apart there stays, and its dimensions decide.
 */
function pullApart(plan: Plan, before: Design, after: Design, straightMm: number): Plan {
  const pulls = after.construction.zones.flatMap((zone): Pull[] => {
    const was = before.construction.zones.find(({ id }) => id === zone.id)
    const bends = after.bends.filter(({ zoneId }) => zoneId === zone.id)
    const axis = plan.bendLines.find(({ bendId }) => bends.some(({ id }) => id === bendId))
    if (was === undefined || axis === undefined) return []
    const pull = {
      lineId: axis.id,
      widerMm: Math.max(0, growthOf(was.widthMm, zone.widthMm)),
      longerMm: Math.max(0, growthOf(was.lengthMm, zone.lengthMm)),
      isMovedToMiddle: bends.some((bend) => isMovedToMiddle(before, bend)),
    }
    return pull.widerMm > 0 || pull.longerMm > 0 || pull.isMovedToMiddle ? [pull] : []
  })
  return pulls.length === 0 ? plan : pullOnce(plan, pulls, straightMm)
}

const pulled = new WeakMap<Plan, Map<string, Plan>>()
/** Of one plan: a search pulls it apart in some dozen ways. */
const MOST_KEPT = 100

/** Many sets of changes pull a plan apart alike: it is drawn, and then measured, once. */
function pullOnce(plan: Plan, pulls: readonly Pull[], straightMm: number): Plan {
  const kept = pulled.get(plan) ?? new Map<string, Plan>()
  pulled.set(plan, kept)
  const key = JSON.stringify([pulls, straightMm])
  const found = kept.get(key) ?? pulls.reduce((drawn, pull) => drawPull(drawn, pull, straightMm), plan)
  if (kept.size >= MOST_KEPT) kept.clear()
  kept.set(key, found)
  return found
}

function drawPull(plan: Plan, { lineId, widerMm, longerMm, isMovedToMiddle }: Pull, straightMm: number): Plan {
  const findLine = (drawn: Plan) => drawn.bendLines.find(({ id }) => id === lineId)
  const axis = findLine(plan)
  const wider = widerMm > 0 && axis !== undefined ? (widenPlan(plan, axis, widerMm) ?? plan) : plan
  const line = findLine(wider)
  if (line === undefined) return wider
  if (longerMm > 0) return stretchPlan(wider, line, longerMm, straightMm) ?? wider
  return isMovedToMiddle ? (centreBendLine(wider, line.id, straightMm) ?? wider) : wider
}

const growthOf = (was: number | null, is: number | null): number => (was === null || is === null ? 0 : is - was)

/** More straight film is left beside it than where its axis stayed. */
function isMovedToMiddle({ bends }: Design, after: Bend): boolean {
  const was = bends.find(({ id }) => id === after.id)
  return (
    was !== undefined && (after.distanceToRigidMm ?? 0) > (findStraightLeftMm(was, after) ?? Number.POSITIVE_INFINITY)
  )
}

/** `after` with every part that equals its counterpart in `before` being that very part: the assembly and the needs look by identity. */
function share<T>(before: unknown, after: T): T {
  if (before === after || typeof before !== 'object' || typeof after !== 'object') return after
  if (before === null || after === null || Array.isArray(before) !== Array.isArray(after)) return after
  const counterpart = (key: string, value: unknown): unknown => {
    if (!Array.isArray(before) || !hasId(value)) return (before as Record<string, unknown>)[key]
    return before.find((each) => hasId(each) && each.id === value.id)
  }
  const entries = Object.entries(after).map(([key, value]) => [key, share(counterpart(key, value), value)] as const)
  const isSame =
    entries.length === Object.keys(before).length &&
    entries.every(([key, value]) => (before as Record<string, unknown>)[key] === value)
  if (isSame) return before as T
  return (Array.isArray(after) ? entries.map(([, value]) => value) : Object.fromEntries(entries)) as T
}

const hasId = (value: unknown): value is { readonly id: string } =>
  typeof value === 'object' && value !== null && 'id' in value
