import type { Design } from '../../design'
import { assessBend } from '../assess'
import { RANKED_FAMILIES } from '../families'
import type { RemedyOptions } from '../options'
import type { RemedyFamily } from '../remedy'
import type { Candidate } from '../subject'
import { makeSubject, toAssessOptions } from '../trial'
import { type Failure, hasNewUnknown, type Judge, type Judged, listNewFailures, missOf } from './judge'

/** Items of which the remedies of a bend speak: what lies beside a bend is moved afterwards, when its band is known. */
const OF_SECTION: ReadonlySet<string> = new Set([
  'plating-in-bend',
  'conductor-layers-in-bend',
  'bend-strain',
  'fatigue-life',
  'damage-sum',
  'copper-yield',
  'film-strain',
  'radius-rules',
  'neutral-axis',
  'unbonded-leaves',
  'plane-in-bend',
  'foil-type',
  'bend-fit',
  'straight-film',
  'leaf-pull',
])

/** What is moved or entered afterwards is no reason against a change of the section. */
const MENDED_LATER: ReadonlySet<string> = new Set([
  'layer-stagger',
  'crossing-angle',
  'hole-to-bend',
  'opening-to-bend',
  'component-to-bend',
  'transition-strip',
  'transition-strip-class-three',
  'copper-encapsulation',
  'finger-thickness',
  'fitted-thickness',
  'stated-thickness',
  'conductor-width',
  'conductor-space',
  'layer-names',
])

/** A set of more changes is another design. Our choice. */
const MOST_CHANGES = 8
/** Nearest sets that a further change is tried on: our choice, it keeps the search to some thousand designs. */
const MOST_CONTINUED = 4

/** What a change asks of others than the designer of the circuit. */
const RELAXED_BY: Partial<Readonly<Record<RemedyFamily, string>>> = {
  'larger-radius': 'Inside radius that the assembly sets',
  'split-bend': 'One bend where the assembly has one',
  'longer-zone': 'Length of the flexible zone',
  'wider-zone': 'Width of the flexible zone',
  'sheet-tolerance': 'Tolerance of the sheets: the fabricator has to agree',
  'radius-tolerance': 'Tolerance of the radius: the assembly has to hold it',
  'less-pull': 'Pull on the bend',
  'less-twist': 'Twist of the bend',
  'longer-twist': 'Length over which the bend twists',
  'opposite-copper-removed': 'Copper opposite the conductors',
}

export interface BendChange {
  readonly candidate: Candidate
  readonly bendId: string
  readonly itemIds: readonly string[]
  readonly relaxes: string | null
}

interface Node {
  readonly judged: Judged
  readonly changes: readonly BendChange[]
  readonly left: readonly Failure[]
  readonly relaxedCount: number
  readonly missSum: number
}

const isOfSection = ({ item }: Failure): boolean => OF_SECTION.has(item.id)

function describeNode(judged: Judged, changes: readonly BendChange[]): Node {
  const left = judged.failures.filter(isOfSection)
  return {
    judged,
    changes,
    left,
    relaxedCount: changes.filter(({ relaxes }) => relaxes !== null).length,
    missSum: left.reduce((sum, { outcome }) => sum + Math.log(missOf(outcome)), 0),
  }
}

/**
 * Changes of the sections of bends, one after another, that clear what fails there: at each step the changes of the remedies' families that leave the fewest
 * failures, and of those the ones that miss least. It is no full search: a smaller set may exist.
 *
 * @param judged  of a design without its plan
 * @returns the best set; draw steps until it is done, `next(true)` stops it
 */
export function* clearBends(
  judged: Judged,
  judge: Judge,
  options: RemedyOptions,
  onTried: () => void,
): Generator<number, { readonly design: Design; readonly changes: readonly BendChange[] }, boolean | undefined> {
  const start = describeNode(judged, [])
  let best = start
  let nodes: readonly Node[] = [start]
  const seen = new Set<string>()
  for (let depth = 1; depth <= MOST_CHANGES && best.left.length > 0; depth += 1) {
    const children: Node[] = []
    for (const [at, node] of nodes.entries()) {
      for (const pending of proposeAll(node, options)) {
        if ((yield (depth - 1 + at / nodes.length) / MOST_CHANGES) === true) return finish(best)
        const key = [...node.changes.map(keyOfChange), `${pending.bendId} ${pending.candidate.id}`].sort().join('+')
        if (seen.has(key)) continue
        seen.add(key)
        onTried()
        const child = take(node, pending, judged, judge)
        if (child !== null) children.push(child)
      }
    }
    children.sort(compareNodes)
    nodes = children.slice(0, MOST_CONTINUED)
    const [nearest] = nodes
    if (nearest === undefined) break
    if (compareNodes(nearest, best) < 0) best = nearest
  }
  return finish(prune(best, start, judged, judge, options))
}

/** Changes that the later ones made needless are left out again: the rest is made afresh without each. */
function prune(best: Node, start: Node, judged: Judged, judge: Judge, options: RemedyOptions): Node {
  let kept = best
  for (const change of best.changes) {
    let node: Node | null = start
    for (const { bendId, candidate } of kept.changes.filter((each) => keyOfChange(each) !== keyOfChange(change))) {
      if (node === null) break
      const again: PendingChange | undefined = [...proposeAll(node, options)].find(
        (each) => each.bendId === bendId && each.candidate.id === candidate.id,
      )
      node = again === undefined ? null : take(node, again, judged, judge)
    }
    if (node !== null && node.changes.length < kept.changes.length && node.left.length <= kept.left.length) kept = node
  }
  return kept
}

const keyOfChange = ({ bendId, candidate }: BendChange): string => `${bendId} ${candidate.id}`

const finish = ({ judged: { design }, changes }: Node) => ({ design, changes })

interface PendingChange {
  readonly bendId: string
  readonly candidate: Candidate
}

function* proposeAll({ judged, changes, left }: Node, options: RemedyOptions): Generator<PendingChange> {
  const bendIds = new Set(
    left.flatMap(({ outcome }) => outcome.places.flatMap(({ kind, id }) => (kind === 'bend' ? [id] : []))),
  )
  const touched = new Set(
    changes.flatMap(({ bendId, candidate }) => candidate.touches.map((key) => `${bendId} ${key}`)),
  )
  for (const bendId of bendIds) {
    const assessment = assessBend(judged.design, bendId, toAssessOptions(options))
    const subject = assessment === null ? null : makeSubject(assessment, options)
    if (subject === null) continue
    for (const { family, propose } of RANKED_FAMILIES) {
      if ((options.leftOutFamilies ?? []).includes(family)) continue
      for (const candidate of propose(subject)) {
        if (candidate.forbiddenBy.length > 0) continue
        if (candidate.touches.some((key) => touched.has(`${bendId} ${key}`))) continue
        yield { bendId, candidate }
      }
    }
  }
}

/** Null where the change breaks what nothing mends afterwards, or hides what was known. */
function take(node: Node, { bendId, candidate }: PendingChange, start: Judged, judge: Judge): Node | null {
  const judged = judge(candidate.edited, node.judged)
  const broken = listNewFailures(start, judged).filter(
    ({ item }) => !OF_SECTION.has(item.id) && !MENDED_LATER.has(item.id),
  )
  if (broken.length > listBroken(node, start).length || hasNewUnknown(node.judged, judged)) return null
  const cleared = new Set(judged.failures.map(({ key }) => key))
  const itemIds = [...new Set(node.left.filter(({ key }) => !cleared.has(key)).map(({ item }) => item.id))]
  const need = RELAXED_BY[candidate.family] ?? null
  const relaxes = need === null ? null : `${need}. ${candidate.detail}`
  return describeNode(judged, [...node.changes, { candidate, bendId, itemIds, relaxes }])
}

const listBroken = ({ judged }: Node, start: Judged): readonly Failure[] =>
  listNewFailures(start, judged).filter(({ item }) => !OF_SECTION.has(item.id) && !MENDED_LATER.has(item.id))

/** Fewest failures, then nearest, then fewest needs given up, then fewest changes. */
function compareNodes(a: Node, b: Node): number {
  return (
    a.left.length - b.left.length ||
    a.missSum - b.missSum ||
    a.relaxedCount - b.relaxedCount ||
    a.changes.length - b.changes.length
  )
}
