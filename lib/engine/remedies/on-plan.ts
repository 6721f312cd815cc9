import { centreBendLine, type Plan, stretchPlan, widenPlan } from '@/lib/plan'
import { drawDimensions } from '../assembly/drawn'
import type { Bend, Design } from '../design'
import { assessBend, type BendAssessment } from './assess'
import { findStraightLeftMm } from './families/room'
import { findMovedFold, isBreak } from './moves'
import type { RemedyOptions } from './options'
import { applyDesignPatch, makePatch } from './patch'
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
  const judge = () => judgeOnPlan(trial, edited, basis, options)
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
  const applied = applyDesignPatch({ ...design, plan: null }, makePatch(searched, changed))
  const plan = pullApart(design.plan, searched, changed, straightMm)
  const stated = plan === design.plan ? { ...applied, plan } : stateAsDrawn({ ...applied, plan })
  // The plan stays the object that was measured: measures are known by it.
  return { ...share(design, stated), plan }
}

function judgeOnPlan({ changes }: Trial, edited: Design, basis: BendAssessment, options: RemedyOptions): Trial | null {
  const assessment = assessBend(edited, basis.result.bendId, toAssessOptions(options), basis)
  if (assessment === null || assessment.state.allowablePct === null) return null
  const onPlan: Trial = { ...describeSet(basis, assessment, changes, options), judged: 'on-plan' }
  return { ...onPlan, judge: () => addFold(onPlan, findMovedFold(basis, assessment, options)) }
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

/**
 * A drawn zone gets its length and width where its first bend is drawn, and a bend that was moved to the middle of its zone is drawn there. A plan that cannot
 * simply be pulled apart there stays, and its dimensions decide.
 */
function pullApart(plan: Plan, before: Design, after: Design, straightMm: number): Plan {
  let drawn = plan
  for (const zone of after.construction.zones) {
    const was = before.construction.zones.find(({ id }) => id === zone.id)
    const bends = after.bends.filter(({ zoneId }) => zoneId === zone.id)
    const axis = drawn.bendLines.find(({ bendId }) => bends.some(({ id }) => id === bendId))
    if (was === undefined || axis === undefined) continue
    const [longerMm, widerMm] = [growthOf(was.lengthMm, zone.lengthMm), growthOf(was.widthMm, zone.widthMm)]
    if (widerMm > 0) drawn = widenPlan(drawn, axis, widerMm) ?? drawn
    const line = drawn.bendLines.find(({ id }) => id === axis.id) ?? axis
    if (longerMm > 0) drawn = stretchPlan(drawn, line, longerMm, straightMm) ?? drawn
    else if (bends.some((bend) => isMovedToMiddle(before, bend))) {
      drawn = centreBendLine(drawn, line.id, straightMm) ?? drawn
    }
  }
  return drawn
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
