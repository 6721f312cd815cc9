import {
  checkLoop,
  checkNodes,
  distanceBetweenEdgeSets,
  edgesOfLoop,
  type LoopIssue,
  locatePoint,
} from '@/lib/geometry'
import type { PlanNode } from './path-schema'
import type { Plan } from './plan-schema'
import { pathInNm } from './to-geometry'

/** One thing wrong with a plan, and where, from the plan's own root. */
export interface PlanIssue {
  readonly code: string
  readonly path: readonly (string | number)[]
  readonly message: string
}

/** All points of a plan together: what measuring it costs grows with them. */
const MAX_POINTS = 20_000
const MAX_HOLES = 20_000

/**
 * What makes a plan unreadable, beyond its schema: paths that are no paths, loops that cross themselves, names that stand twice. What is
 * merely unfinished (a dividing line that ends in the middle, an area without a zone) is no issue here: the review tells it.
 */
export function checkPlan(plan: Plan): PlanIssue[] {
  const issues: PlanIssue[] = []
  const add = (code: string, path: PlanIssue['path'], message: string) => issues.push({ code, path, message })
  checkSizes(plan, add)
  if (issues.length > 0) return issues
  checkIds(plan, add)
  const loop = (nodes: readonly PlanNode[], path: PlanIssue['path']) => {
    for (const issue of checkLoop(pathInNm(nodes))) addLoopIssue(issue, nodes, path, add)
  }
  const way = (nodes: readonly PlanNode[], path: PlanIssue['path']) => {
    for (const issue of checkNodes(pathInNm(nodes), false)) addLoopIssue(issue, nodes, path, add)
    if (nodes.at(-1)?.viaMm !== null)
      add('path', [...path, nodes.length - 1, 'viaMm'], 'an open path does not go on from its last point')
  }
  if (plan.outline !== null) loop(plan.outline, ['outline'])
  for (const list of ['cutOuts', 'stiffeners', 'coverlayOpenings', 'components'] as const) {
    plan[list].forEach(({ nodes }, index) => {
      loop(nodes, [list, index, 'nodes'])
    })
  }
  for (const list of ['slits', 'dividingLines', 'routes'] as const) {
    plan[list].forEach(({ nodes }, index) => {
      way(nodes, [list, index, 'nodes'])
    })
  }
  for (const list of ['bendLines', 'connectorEnds'] as const) {
    plan[list].forEach(({ fromMm, toMm }, index) => {
      if (isSame(fromMm, toMm)) add('path', [list, index, 'toMm'], 'begins and ends in one point')
    })
  }
  plan.holes.forEach(({ columns, rows, columnStepMm, rowStepMm }, index) => {
    for (const [count, step, key] of [
      [columns, columnStepMm, 'columnStepMm'],
      [rows, rowStepMm, 'rowStepMm'],
    ] as const) {
      if (count > 1 && (step === null || isSame(step, [0, 0]))) {
        add('pattern', ['holes', index, key], `${count} holes in a row need a step from each to the next`)
      }
    }
  })
  if (issues.length === 0) checkCutOuts(plan, add)
  return issues
}

type Add = (code: string, path: PlanIssue['path'], message: string) => void

const isSame = (a: readonly number[], b: readonly number[]) => a[0] === b[0] && a[1] === b[1]

function checkSizes(plan: Plan, add: Add): void {
  const lists = [
    plan.cutOuts,
    plan.slits,
    plan.dividingLines,
    plan.stiffeners,
    plan.coverlayOpenings,
    plan.components,
    plan.routes,
  ]
  const points = lists.flat().reduce((sum, { nodes }) => sum + nodes.length, plan.outline?.length ?? 0)
  if (points > MAX_POINTS) add('too-large', [], `${points} points in all; a plan has at most ${MAX_POINTS}`)
  const holes = plan.holes.reduce((sum, { columns, rows }) => sum + columns * rows, 0)
  if (holes > MAX_HOLES) add('too-large', ['holes'], `${holes} holes in all; a plan has at most ${MAX_HOLES}`)
}

function checkIds(plan: Plan, add: Add): void {
  for (const [key, list] of Object.entries({
    ...plan,
    tabs: plan.array?.tabs ?? [],
    fiducials: plan.array?.fiducials ?? [],
  })) {
    if (key === 'outline' || !Array.isArray(list)) continue
    const seen = new Set<string>()
    const path = key === 'tabs' || key === 'fiducials' ? ['array', key] : [key]
    ;(list as readonly Readonly<Record<string, unknown>>[]).forEach((entry, index) => {
      const id = String(entry.id)
      if (seen.has(id)) add('duplicate-id', [...path, index, 'id'], `"${id}" is used twice`)
      seen.add(id)
    })
  }
  const letters = new Set<string>()
  plan.datums.forEach(({ letter }, index) => {
    if (letters.has(letter)) add('duplicate-id', ['datums', index, 'letter'], `datum ${letter} stands twice`)
    letters.add(letter)
  })
}

/** A cut-out lies within the outline and apart from the others: two that meet are one, and an open one is part of the outline. */
function checkCutOuts(plan: Plan, add: Add): void {
  if (plan.outline === null) return
  const outline = edgesOfLoop(pathInNm(plan.outline))
  const cutOuts = plan.cutOuts.map(({ nodes }) => edgesOfLoop(pathInNm(nodes)))
  cutOuts.forEach((edges, index) => {
    const name = plan.cutOuts[index]?.name ?? ''
    const path = ['cutOuts', index, 'nodes']
    const start = edges[0]?.from
    if (start === undefined) return
    if (locatePoint(outline, start) !== 'inside' || distanceBetweenEdgeSets(edges, outline)?.distanceNm === 0) {
      add('cut-out', path, `cut-out "${name}" does not lie within the outline`)
    }
    cutOuts.slice(0, index).forEach((other, at) => {
      const first = other[0]?.from
      const meets =
        distanceBetweenEdgeSets(edges, other)?.distanceNm === 0 ||
        locatePoint(other, start) === 'inside' ||
        (first !== undefined && locatePoint(edges, first) === 'inside')
      if (meets) add('cut-out', path, `cut-out "${name}" meets cut-out "${plan.cutOuts[at]?.name}"`)
    })
  })
}

const describeAt = (nodes: readonly PlanNode[], at: number): string => {
  const [from, to] = [nodes[at], nodes[at + 1] ?? nodes[0]]
  return `from point ${at + 1} (${from?.atMm.join(', ')}) to (${to?.atMm.join(', ')})`
}

function addLoopIssue(
  { code, node, other }: LoopIssue,
  nodes: readonly PlanNode[],
  path: PlanIssue['path'],
  add: Add,
): void {
  const way = `the way ${describeAt(nodes, node)}`
  const at = [...path, other ?? node]
  switch (code) {
    case 'too-few':
      add('path', path, 'a closed path has at least 2 points')
      break
    case 'no-area':
      add('path', path, 'encloses nothing')
      break
    case 'no-length':
      add('path', at, `${way} has no length`)
      break
    case 'no-arc':
      add(
        'path',
        [...at, 'viaMm'],
        `${way} through (${nodes[node]?.viaMm?.join(', ')}) is not an arc: the three points lie in line`,
      )
      break
    case 'past-half':
      add('path', [...at, 'viaMm'], `${way} is more than a half circle: divide it`)
      break
    case 'meets':
      add('path', at, `${way} meets the way ${describeAt(nodes, other ?? node)}`)
      break
    case 'overlaps':
      add('path', at, `${way} runs along the way ${describeAt(nodes, other ?? node)}`)
  }
}
