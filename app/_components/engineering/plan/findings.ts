import { type Design, type DraftEvaluation, getShownVerdict } from '@/lib/engine'
import { capitalise } from '@/lib/engine/units'
import type { PointMm } from '@/lib/plan'
import type { DrawnRef, PlanListKey } from '@/lib/plan/edit'
import { findDrawn } from './places'
import type { MeasuredPlan } from './use-measured-plan'

export interface Finding {
  readonly key: string
  readonly verdict: ReturnType<typeof getShownVerdict>
  readonly summary: string
  /** Where to look; null where it has no place in the plan. */
  readonly atMm: PointMm | null
  readonly ref: DrawnRef | null
}

const ORDER = ['fails', 'cannot-tell', 'thin-margin'] as const

/** What the checklist finds of what is drawn, and of the plan as a whole, worst first, each at its place; what is met is not listed. */
export function listFindings(design: Design, evaluation: DraftEvaluation, measured: MeasuredPlan): Finding[] {
  const found: Finding[] = measured.problems.map(({ path, atMm, message }, index) => ({
    key: `problem ${index}`,
    verdict: 'fails',
    summary: `${capitalise(message)}.`,
    atMm,
    ref: refOf(design, path),
  }))
  const said = new Set(found.map(({ summary }) => summary))
  for (const { itemId, outcomes } of evaluation.items) {
    outcomes.forEach((outcome, index) => {
      const verdict = getShownVerdict(outcome)
      if (!ORDER.some((each) => each === verdict) || said.has(outcome.summary)) return
      const drawn = outcome.places.map((place) => findDrawn(design, place)).find((each) => each !== null) ?? null
      if (drawn === null && itemId !== 'plan-agreement') return
      found.push({
        key: `${itemId} ${index}`,
        verdict,
        summary: outcome.summary,
        atMm: drawn?.atMm ?? null,
        ref: drawn?.ref ?? null,
      })
    })
  }
  const rank = (finding: Finding) => (ORDER as readonly string[]).indexOf(finding.verdict)
  return found.sort((a, b) => rank(a) - rank(b))
}

function refOf(design: Design, path: readonly (string | number)[]): DrawnRef | null {
  const [list, index] = path
  if (typeof list !== 'string' || typeof index !== 'number' || design.plan === null) return null
  const entries: unknown = design.plan[list as PlanListKey]
  const entry = Array.isArray(entries) ? (entries[index] as { readonly id: string } | undefined) : undefined
  return entry === undefined ? null : { list: list as PlanListKey, id: entry.id }
}

export interface Pin {
  readonly atMm: PointMm
  /** Numbers of the findings at this place, from 1, as the list counts them. */
  readonly numbers: readonly number[]
  readonly verdict: Finding['verdict']
}

/** One pin to a place, however many findings it has; the worst gives it its colour. */
export function pinFindings(findings: readonly Finding[]): Pin[] {
  const pins = new Map<string, { atMm: PointMm; numbers: number[]; verdict: Finding['verdict'] }>()
  findings.forEach(({ atMm, verdict }, index) => {
    if (atMm === null) return
    const key = atMm.join(' ')
    const pin = pins.get(key)
    if (pin === undefined) pins.set(key, { atMm, numbers: [index + 1], verdict })
    else pin.numbers.push(index + 1)
  })
  return [...pins.values()]
}
