import type { LeafSpan } from '@/lib/fold'
import { boundsOf, isInBox, locateInRegion } from '@/lib/geometry'
import { areasOf, toNm } from '@/lib/plan'
import { type Bend, callByName, type Design, type Plan } from '../design'
import type { BendResult, LeafResult, MissingInput, ZoneResult } from '../results'
import { inSentence } from '../units'

/** Leaves that are held together at both ends of an area, and follow its bends one above the other. */
export interface LeafRun {
  readonly zoneId: string
  readonly bendIds: readonly string[]
  /** From the top face down: by how much each leaf is longer than its path through the bends, folded whole. 0 for the one that is taut. */
  readonly slackMm: readonly number[]
}

/** Depth under the inside face of each bend at which the drawn length is kept, in um. */
export type ReferenceDepths = ReadonlyMap<string, number>

/** Directions of axes nearer than this are the same: a hundredth of a degree. Our choice. */
const SAME_DIRECTION = Math.PI / 180 / 100

/** Heights of a zone's leaves, from the top down; one where nothing parts them. Air at a face belongs to none. */
export function findLeafSpans({ layers }: ZoneResult, zoneTopMm: number): readonly LeafSpan[] {
  const spans: LeafSpan[] = []
  let isOpen = false
  for (const { kind, topDepthUm, nominalUm } of layers) {
    if (kind === 'unbonded-gap') {
      isOpen = false
      continue
    }
    if (nominalUm <= 0) continue
    const bottomMm = zoneTopMm - (topDepthUm + nominalUm) / 1000
    const last = spans.at(-1)
    if (isOpen && last !== undefined) spans[spans.length - 1] = { ...last, bottomMm }
    else spans.push({ topMm: zoneTopMm - topDepthUm / 1000, bottomMm })
    isOpen = true
  }
  return spans
}

/** What has to be stated of the lengths of leaves before they can be folded. */
export function listMissingLeafLengths(design: Design, bends: readonly BendResult[]): readonly MissingInput[] {
  return design.bends.flatMap((bend, index) => {
    if (leavesFromTop(bend, bends).length < 2) return []
    const name = callByName('bend', bend.name)
    if (bend.leafLengths === null)
      return [{ path: ['bends', index, 'leafLengths'], label: `lengths of the leaves of ${name}` }]
    return bend.leafLengths === 'stepped' && bend.leafStepMm === null
      ? [{ path: ['bends', index, 'leafStepMm'], label: `step of the leaves of ${name}` }]
      : []
  })
}

/**
 * Which leaf is taut in each run, and how much of each of the others is left over.
 *
 * Model    the plan draws the length of the leaf that is cut shortest; a stepped leaf is longer in proportion to the distance of its axis from the innermost one. Leaves lie about one
 *          centre in a bend, slide freely between the places where they are bonded, and bring those as near to each other as the leaf that has least to spare lets them. Bends of
 *          one area with parallel axes share what they have: what an outer leaf lacks in one bend it has to spare in one that turns the other way.
 * Errors   the shape in which a leaf that is too long buckles is not computed: it is placed on its path, and what is left over is named
 * Source   exact geometry of concentric arcs; the model is our choice
 */
export function findLeafRuns(
  design: Design,
  plan: Plan,
  bends: readonly BendResult[],
): { readonly runs: readonly LeafRun[]; readonly depths: ReferenceDepths } {
  const groups = new Map<string, Bend[]>()
  for (const bend of design.bends) {
    if (leavesFromTop(bend, bends).length < 2) continue
    const line = plan.bendLines.find(({ bendId }) => bendId === bend.id)
    if (line === undefined) continue
    const key = `${bend.zoneId} ${findArea(plan, line)} ${findDirection(groups, plan, line)}`
    groups.set(key, [...(groups.get(key) ?? []), bend])
  }
  const found = [...groups.values()].map((own) => measureRun(own, bends))
  return { runs: found.map(({ run }) => run), depths: new Map(found.flatMap(({ depths }) => depths)) }
}

function measureRun(own: readonly Bend[], bends: readonly BendResult[]) {
  const each = own.map((bend) => {
    const leaves = leavesFromTop(bend, bends)
    const angleRad = (bend.angleDeg * Math.PI) / 180
    const [inner, outer] = [
      leaves.find(({ leafIndex }) => leafIndex === 0),
      leaves.find(({ leafIndex }) => leafIndex === leaves.length - 1),
    ]
    const pitchUm = depthOf(outer) - depthOf(inner)
    const stepMm = bend.leafLengths === 'stepped' ? (bend.leafStepMm ?? 0) : 0
    return {
      bend,
      depthsUm: leaves.map(depthOf),
      neededMm: leaves.map((leaf) => (angleRad * depthOf(leaf)) / 1000),
      givenMm: leaves.map((leaf) => (pitchUm > 0 ? (stepMm * (depthOf(leaf) - depthOf(inner))) / pitchUm : 0)),
    }
  })
  const count = Math.min(...each.map(({ depthsUm }) => depthsUm.length))
  const sum = (pick: (of: (typeof each)[number]) => readonly number[], leaf: number) =>
    each.reduce((total, of) => total + (pick(of)[leaf] ?? 0), 0)
  const all = Array.from({ length: count }, (_, leaf) => leaf)
  const needed = all.map((leaf) => sum(({ neededMm }) => neededMm, leaf))
  const cut = all.map((leaf) => sum(({ givenMm }) => givenMm, leaf))
  const shortest = Math.min(...cut)
  const given = cut.map((mm) => mm - shortest)
  const lacking = all.map((leaf) => (needed[leaf] ?? 0) - (given[leaf] ?? 0))
  const taut = lacking.indexOf(Math.max(...lacking))
  const most = needed[taut] ?? 0
  // What the taut leaf has over the drawn length goes into its bends in proportion to what each needs.
  const share = most > 0 ? (lacking[taut] ?? 0) / most : 1
  return {
    run: {
      zoneId: own[0]?.zoneId ?? '',
      bendIds: own.map(({ id }) => id),
      slackMm: lacking.map((mm) => (lacking[taut] ?? 0) - mm),
    },
    depths: each.map(({ bend, depthsUm }) => [bend.id, (depthsUm[taut] ?? 0) * share] as const),
  }
}

/** The depth that developed lengths are counted at, so that one slack stands everywhere. */
const depthOf = (leaf: LeafResult | undefined): number => leaf?.formedAxisDepthUm ?? 0

/** The leaves of a bend from the top face down; innermost first is how results list them. */
function leavesFromTop(bend: Bend, bends: readonly BendResult[]): readonly LeafResult[] {
  const leaves = bends.find(({ bendId }) => bendId === bend.id)?.leaves ?? []
  return bend.insideFace === 'top' ? leaves : leaves.toReversed()
}

type BendLine = Plan['bendLines'][number]

function findArea(plan: Plan, { fromMm, toMm }: BendLine): number {
  const middle = toNm([(fromMm[0] + toMm[0]) / 2, (fromMm[1] + toMm[1]) / 2])
  const at = [Math.round(middle[0]), Math.round(middle[1])] as const
  return areasOf(plan).areas.findIndex(
    ({ region }) => isInBox(boundsOf(region.outer), at) && locateInRegion(region, at) !== 'outside',
  )
}

/** The bend that stands for this direction: the first whose axis is parallel. */
function findDirection(groups: ReadonlyMap<string, readonly Bend[]>, plan: Plan, line: BendLine): string {
  const known = [...groups.values()].flat().map(({ id }) => plan.bendLines.find(({ bendId }) => bendId === id))
  return known.find((other) => other !== undefined && isParallel(other, line))?.id ?? line.id
}

function isParallel(one: BendLine, other: BendLine): boolean {
  const [a, b] = [one, other].map(({ fromMm, toMm }) => [toMm[0] - fromMm[0], toMm[1] - fromMm[1]] as const)
  if (a === undefined || b === undefined) return false
  return Math.abs(a[0] * b[1] - a[1] * b[0]) <= SAME_DIRECTION * Math.hypot(...a) * Math.hypot(...b)
}

/** Below this nothing of the trade could tell. */
const NO_SLACK_MM = 0.001

export const hasSlack = (slackMm: number): boolean => slackMm > NO_SLACK_MM

/** What is left over of the leaves of each run: `Hinge: leaf 2 from the top is 0.314 mm longer than its path and buckles; its shape is not computed.` */
export function describeLeafRuns({ bends }: Design, runs: readonly LeafRun[]): readonly string[] {
  return runs.map(({ bendIds, slackMm }) => {
    const who = bends.flatMap(({ id, name }) => (bendIds.includes(id) ? [name] : [])).join(' and ')
    const over = slackMm.flatMap((mm, at) => (hasSlack(mm) ? [`leaf ${at + 1} by ${inSentence(mm, 'mm')}`] : []))
    return over.length === 0
      ? `${who}: every leaf is as long as its path.`
      : `${who}: longer than their paths are, from the top face, ${over.join(', ')}. They are shown on their paths; the shape in which they buckle is not computed.`
  })
}
