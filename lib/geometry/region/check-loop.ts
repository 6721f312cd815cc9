import {
  type Box,
  crossEdges,
  edgesOfLoop,
  isAtMostHalf,
  isSamePoint,
  type LineOrArc,
  type Loop,
  looseBox,
  type Meeting,
  makeArc,
  signedAreaOf,
} from '../path'

/** Why nodes are no simple loop. `node` and `other` count from 0; an edge has the number of the node that it starts at. */
export interface LoopIssue {
  readonly code: 'too-few' | 'no-length' | 'no-arc' | 'past-half' | 'meets' | 'overlaps' | 'no-area'
  readonly node: number
  readonly other?: number
}

/** Nodes without an edge of their own: the way from each to the next must be a line with length or an arc up to a half circle. */
export function checkNodes(nodes: Loop, isClosed: boolean): LoopIssue[] {
  const issues: LoopIssue[] = []
  const last = isClosed ? nodes.length : nodes.length - 1
  for (let at = 0; at < last; at += 1) {
    const [node, next] = [nodes[at], nodes[at + 1] ?? nodes[0]]
    if (node === undefined || next === undefined) continue
    if (isSamePoint(node.at, next.at)) issues.push({ code: 'no-length', node: at })
    else if (node.via !== null) {
      const arc = makeArc(node.at, node.via, next.at)
      if (arc === null) issues.push({ code: 'no-arc', node: at })
      else if (!isAtMostHalf(arc)) issues.push({ code: 'past-half', node: at })
    }
  }
  return issues
}

/** Every reason why nodes are no loop that encloses an area without meeting itself; at most MOST_ISSUES of them. */
export function checkLoop(loop: Loop): LoopIssue[] {
  // Two nodes enclose an area where an arc joins them.
  if (loop.length < 2) return [{ code: 'too-few', node: 0 }]
  const issues = checkNodes(loop, true)
  if (issues.length > 0) return issues.slice(0, MOST_ISSUES)
  const edges = edgesOfLoop(loop)
  const found = findMeetings(edges)
  if (found.length > 0) return found
  return Math.abs(signedAreaOf(edges)) < 1 ? [{ code: 'no-area', node: 0 }] : []
}

const MOST_ISSUES = 20

/** Edges of a loop that meet elsewhere than at the node between them. Swept from left to right, so that only those that share a stretch are compared. */
function findMeetings(edges: readonly LineOrArc[]): LoopIssue[] {
  const issues: LoopIssue[] = []
  const count = edges.length
  for (const [first, second] of pairsWithSharedBox(edges)) {
    const [a, b] = [edges[first], edges[second]]
    if (a === undefined || b === undefined) continue
    const isNext = second === first + 1
    const isRound = first === 0 && second === count - 1
    const meetings = crossEdges(a, b).filter((meeting) => !isShared(meeting, isNext, isRound))
    const [meeting] = meetings
    if (meeting === undefined) continue
    issues.push({
      code: meetings.some(({ kind }) => kind === 'overlap') ? 'overlaps' : 'meets',
      node: first,
      other: second,
    })
    if (issues.length >= MOST_ISSUES) break
  }
  return issues
}

/** Neighbours meet in the node between them, and may do so. */
function isShared({ kind, onFirst, onSecond }: Meeting, isNext: boolean, isRound: boolean): boolean {
  if (kind === 'overlap') return false
  return (isNext && onFirst === 1 && onSecond === 0) || (isRound && onFirst === 0 && onSecond === 1)
}

/** Pairs of edges whose boxes overlap, each once, the lower number first. */
export function pairsWithSharedBox(edges: readonly LineOrArc[]): (readonly [number, number])[] {
  const boxes: (Box & { readonly at: number })[] = edges.map((edge, at) => ({ ...looseBox(edge), at }))
  boxes.sort((one, other) => one.minX - other.minX || one.at - other.at)
  const pairs: (readonly [number, number])[] = []
  for (let one = 0; one < boxes.length; one += 1) {
    const a = boxes[one]
    if (a === undefined) break
    for (let other = one + 1; other < boxes.length; other += 1) {
      const b = boxes[other]
      if (b === undefined || b.minX > a.maxX) break
      if (b.minY > a.maxY || a.minY > b.maxY) continue
      pairs.push(a.at < b.at ? [a.at, b.at] : [b.at, a.at])
    }
  }
  return pairs.sort((one, other) => one[0] - other[0] || one[1] - other[1])
}
