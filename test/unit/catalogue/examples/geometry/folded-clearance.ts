import { type Design, evaluateDraft } from '@/lib/engine'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { addUnbondedLeaf } from '../changes'
import type { ItemExample } from '../item-example'

type Point = [number, number]

const line = (x: number): Plan['dividingLines'][number]['nodes'] => [
  { atMm: [x, 0] as Point, viaMm: null },
  { atMm: [x, 12] as Point, viaMm: null },
]

/** A strip 12 mm wide: board to 20 mm, arm to 80 mm, then the fingers; the axes of its three bends on the arm. */
export function drawStrip(
  design: Design,
  fingersMm: number,
  axesMm: readonly (readonly [bendId: string, x: number])[],
): void {
  const endMm = 80 + fingersMm
  design.plan = {
    ...EMPTY_PLAN,
    outline: [
      [0, 0],
      [endMm, 0],
      [endMm, 12],
      [0, 12],
    ].map(([x = 0, y = 0]) => ({ atMm: [x, y] as Point, viaMm: null })),
    dividingLines: [20, 80].map((x, index) => ({ id: `edge-${index}`, name: `Edge ${index + 1}`, nodes: line(x) })),
    areas: [
      { id: 'a-board', name: 'Board', zoneId: 'board', markMm: [10, 6] },
      { id: 'a-arm', name: 'Arm', zoneId: 'arm', markMm: [50, 6] },
      { id: 'a-fingers', name: 'Fingers', zoneId: 'fingers', markMm: [endMm - 1, 6] },
    ],
    bendLines: axesMm.map(([bendId, x]) => ({ id: `axis-${bendId}`, bendId, fromMm: [x, 0], toMm: [x, 12] })),
  }
}

/** From edge to edge of the middle third of the arm. */
function cutWindow(design: Design, fromMm: number, toMm: number): void {
  const corners: Point[] = [
    [fromMm, 5],
    [toMm, 5],
    [toMm, 8],
    [fromMm, 8],
  ]
  if (design.plan === null) return
  design.plan.cutOuts = [{ id: 'window', name: 'Window', nodes: corners.map((atMm) => ({ atMm, viaMm: null })) }]
  for (const area of design.plan.areas) area.markMm = [area.markMm[0], 2]
}

/** Leaves as long as their paths, by the lengths that the engine reports of them: what a designer would copy from the bend's page. */
export function stepLeaves(design: Design): void {
  // Of a copy: what was once derived of a design is kept with it.
  const { bends } = evaluateDraft(structuredClone(design))
  for (const bend of design.bends) {
    const leaves = bends.find(({ bendId }) => bendId === bend.id)?.leaves ?? []
    bend.leafLengths = 'stepped'
    bend.leafStepMm = (leaves.at(-1)?.developedLengthMm ?? 0) - (leaves[0]?.developedLengthMm ?? 0)
  }
}

export const STRIP_AXES = [
  ['hinge', 32],
  ['rocker', 54],
  ['fold', 70],
] as const

export const foldedClearanceExamples: readonly ItemExample[] = [
  { name: 'nothing drawn', expect: 'not-applicable' },
  {
    name: 'three quarter turns round, the finger end 6 mm below the board',
    change: (d) => drawStrip(d, 10, STRIP_AXES),
    expect: 'meets',
  },
  {
    name: 'a finger end so long that it comes up through the board',
    change: (d) => drawStrip(d, 26, STRIP_AXES),
    expect: 'fails',
  },
  {
    name: 'two bends whose bands overlap',
    change: (d) =>
      drawStrip(d, 10, [
        ['hinge', 32],
        ['rocker', 40],
        ['fold', 70],
      ]),
    expect: 'fails',
  },
  {
    name: 'a window in the arm under a bend: both strips beside it bend as one',
    change: (d) => {
      drawStrip(d, 10, STRIP_AXES)
      cutWindow(d, 28, 36)
    },
    expect: 'meets',
  },
  {
    name: 'a ring round a window, of which one side alone is bent: it would have to tear',
    change: (d) => {
      drawStrip(d, 10, STRIP_AXES.slice(0, 2))
      cutWindow(d, 22, 78)
      d.plan?.bendLines.push({ id: 'axis-fold', bendId: 'fold', fromMm: [70, 0], toMm: [70, 5] })
    },
    expect: 'fails',
  },
  {
    name: 'leaves that are not bonded, and nobody said how long they are',
    change: (d) => {
      drawStrip(d, 10, STRIP_AXES)
      addUnbondedLeaf(d, 50)
    },
    expect: 'not-computed',
  },
  {
    name: 'leaves cut alike, of which one buckles off its path',
    change: (d) => {
      drawStrip(d, 10, STRIP_AXES)
      addUnbondedLeaf(d, 50)
      for (const bend of d.bends) bend.leafLengths = 'equal'
    },
    expect: 'cannot-tell',
  },
  {
    name: 'leaves stepped as their bends need',
    change: (d) => {
      drawStrip(d, 10, STRIP_AXES)
      addUnbondedLeaf(d, 50)
      stepLeaves(d)
    },
    expect: 'meets',
  },
  {
    name: 'a bend whose axis is not drawn',
    change: (d) => drawStrip(d, 10, STRIP_AXES.slice(1)),
    expect: 'not-computed',
  },
]
