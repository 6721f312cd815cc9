import { type Plan, stretchPlan } from '@/lib/plan'
import { drawDimensions } from '../assembly/drawn'
import type { Design } from '../design'
import { assessBend, type BendAssessment } from './assess'
import type { RemedyOptions } from './options'
import { applyDesignPatch, makePatch } from './patch'
import { describeSet, type Trial, toAssessOptions } from './trial'

/**
 * The design with the dimensions that its plan draws, and without the plan: a search tries a thousand designs on numbers, since measuring the plan
 * for each would take ten times as long. What it finds is judged on the plan before it is listed.
 */
export function takeOffPlan(design: Design): Design {
  return design.plan === null ? design : { ...drawDimensions(design).design, plan: null }
}

/**
 * A set that was found on numbers, made and judged on the design as it is drawn. Zones that got longer are pulled apart in the plan; what
 * the plan alone can forbid (a band past its area, two bands that meet) is a need from here on.
 *
 * @param searched  `takeOffPlan` of the design
 * @returns null where the bend cannot be assessed any more
 */
export function judgeOnPlan(
  trial: Trial,
  basis: BendAssessment,
  searched: Design,
  options: RemedyOptions,
): Trial | null {
  const { design, result } = basis
  if (design.plan === null) return trial
  const changed = applyDesignPatch({ ...design, plan: null }, makePatch(searched, trial.edited))
  const plan = lengthenPlan(design.plan, searched, trial.edited)
  const stated = plan === design.plan ? { ...changed, plan } : stateAsDrawn({ ...changed, plan })
  // The plan stays the object that was measured: measures are known by it.
  const edited = { ...share(design, stated), plan }
  const assessment = assessBend(edited, result.bendId, toAssessOptions(options), basis)
  if (assessment === null || assessment.state.allowablePct === null) return null
  return describeSet(basis, assessment, trial.changes, options)
}

/** What was stated of a plan before it was pulled apart would contradict it now: the drawn dimensions are stated instead. */
const stateAsDrawn = (design: Design): Design => drawDimensions(design).design

/** A drawn zone gets its length where its first bend is drawn. A plan that cannot simply be pulled apart there stays, and its length decides. */
function lengthenPlan(plan: Plan, before: Design, after: Design): Plan {
  let drawn = plan
  for (const zone of after.construction.zones) {
    const was = before.construction.zones.find(({ id }) => id === zone.id)?.lengthMm ?? null
    if (was === null || zone.lengthMm === null || zone.lengthMm <= was) continue
    const ids = new Set(after.bends.filter(({ zoneId }) => zoneId === zone.id).map(({ id }) => id))
    const axis = drawn.bendLines.find(({ bendId }) => ids.has(bendId))
    if (axis !== undefined) drawn = stretchPlan(drawn, axis, zone.lengthMm - was) ?? drawn
  }
  return drawn
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
