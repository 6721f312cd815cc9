import type { Design } from '@/lib/engine'
import { addUnbondedLeaf } from '../changes'
import type { ItemExample } from '../item-example'
import { drawStrip, STRIP_AXES, stepLeaves } from './folded-clearance'

function giveRoom(design: Design, alongXMm: number | null, heightMm: number | null): void {
  drawStrip(design, 10, STRIP_AXES)
  if (design.plan !== null) design.plan.housing = { heldAreaId: 'a-board', alongXMm, alongYMm: 12.5, heightMm }
}

export const foldedEnvelopeExamples: readonly ItemExample[] = [
  { name: 'nothing drawn', expect: 'not-applicable' },
  { name: 'room to spare on every side', change: (d) => giveRoom(d, 60, 60), expect: 'meets' },
  { name: 'a room lower than the arm folds', change: (d) => giveRoom(d, 60, 2), expect: 'fails' },
  { name: 'a room of which one side is not known', change: (d) => giveRoom(d, 60, null), expect: 'not-computed' },
  {
    name: 'a side that is too small counts, whatever else is not known',
    change: (d) => giveRoom(d, 5, null),
    expect: 'fails',
  },
  {
    name: 'leaves cut alike, of which one buckles off its path',
    change: (d) => {
      giveRoom(d, 60, 60)
      addUnbondedLeaf(d, 50)
      for (const bend of d.bends) bend.leafLengths = 'equal'
    },
    expect: 'cannot-tell',
  },
  {
    name: 'leaves stepped as their bends need',
    change: (d) => {
      giveRoom(d, 60, 60)
      addUnbondedLeaf(d, 50)
      stepLeaves(d)
    },
    expect: 'meets',
  },
]

/** A strip with one quarter turn down, and its finger end 90 mm along it. */
export function aimEnd(
  design: Design,
  byMm: number,
  pointsTo: [number, number, number],
  withinMm: number | null,
): void {
  design.bends = design.bends.filter(({ id }) => id === 'hinge')
  for (const { crossings } of design.features.conductors) crossings.length = 0
  drawStrip(design, 10, STRIP_AXES.slice(0, 1))
  const [bend] = design.bends
  const [connector] = design.features.connectors
  if (design.plan === null || bend === undefined || connector === undefined) return
  bend.angleDeg = 180
  bend.insideRadiusMm = 2
  bend.radiusToleranceMm = 0.1
  bend.insideFace = 'bottom'
  design.plan.housing = { heldAreaId: 'a-board', alongXMm: null, alongYMm: null, heightMm: null }
  design.plan.connectorEnds = [
    {
      id: 'end',
      connectorId: connector.id,
      fromMm: [90, 0],
      toMm: [90, 12],
      insertionDepthMm: null,
      contactCount: null,
      firstContactMm: null,
      contactStepMm: null,
      contactLengthMm: null,
      platedLengthMm: null,
      // Half a turn about 32 mm brings the end back to 64 - 90 mm along x, whatever the radius.
      target: { atMm: [-26 + byMm, 6, 0], pointsTo, topFaces: [0, 0, -1], withinMm, withinDeg: 2 },
    },
  ]
}

/** Off the way back under the board, in its plane. */
const turnedBy = (deg: number): [number, number, number] => [
  -Math.cos((deg * Math.PI) / 180),
  Math.sin((deg * Math.PI) / 180),
  0,
]

/** The end lies below the board by the height of the fold: any target within that of it is met by a wide tolerance. */
const WIDE_MM = 12

export const connectorTargetsExamples: readonly ItemExample[] = [
  { name: 'nothing drawn', expect: 'not-applicable' },
  {
    name: 'an end that points back under the board',
    change: (d) => aimEnd(d, 0, [-1, 0, 0], WIDE_MM),
    expect: 'meets',
  },
  {
    name: 'an end that points away from its connector',
    change: (d) => aimEnd(d, 0, [1, 0, 0], WIDE_MM),
    expect: 'fails',
  },
  { name: 'a connector half a metre off', change: (d) => aimEnd(d, 500, [-1, 0, 0], WIDE_MM), expect: 'fails' },
  { name: 'how far it may be off is not known', change: (d) => aimEnd(d, 0, [-1, 0, 0], null), expect: 'not-computed' },
  {
    name: 'a connector half a metre off fails, whatever is not known of its target',
    change: (d) => aimEnd(d, 500, [-1, 0, 0], null),
    expect: 'fails',
  },
  {
    // 4.64 mm over the tolerances.
    name: 'an end that may be off its target by a little more than it is',
    change: (d) => aimEnd(d, 0, [-1, 0, 0], 4.7),
    expect: 'meets',
  },
  {
    name: 'an end that may be off by as much as it is at nominal',
    change: (d) => aimEnd(d, 0, [-1, 0, 0], 4.35),
    expect: 'thin-margin',
  },
  {
    name: 'an end that may be off by less than it is at nominal',
    change: (d) => aimEnd(d, 0, [-1, 0, 0], 4.25),
    expect: 'fails',
  },
  {
    // 1.9 of 2 degrees.
    name: 'an end that is turned by a little less than it may be',
    change: (d) => aimEnd(d, 0, turnedBy(1.9), WIDE_MM),
    expect: 'meets',
  },
  {
    name: 'an end that is turned by a little more',
    change: (d) => aimEnd(d, 0, turnedBy(2.1), WIDE_MM),
    expect: 'fails',
  },
  {
    name: 'how far it may be turned is not known',
    change: (d) => {
      aimEnd(d, 0, [-1, 0, 0], WIDE_MM)
      for (const { target } of d.plan?.connectorEnds ?? []) if (target !== null) target.withinDeg = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a second end of which nobody stated the target',
    change: (d) => {
      aimEnd(d, 0, [-1, 0, 0], WIDE_MM)
      const [end] = d.plan?.connectorEnds ?? []
      const [connector] = d.features.connectors
      if (end === undefined || connector === undefined) return
      d.features.connectors.push({ ...structuredClone(connector), id: 'second', name: 'Second socket' })
      d.plan?.connectorEnds.push({ ...structuredClone(end), id: 'second-end', connectorId: 'second', target: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a target that nobody has stated',
    change: (d) => {
      aimEnd(d, 0, [-1, 0, 0], WIDE_MM)
      for (const end of d.plan?.connectorEnds ?? []) end.target = null
    },
    expect: 'not-computed',
  },
  {
    name: 'an edge within the part, which is no end of it',
    change: (d) => {
      aimEnd(d, 0, [-1, 0, 0], WIDE_MM)
      for (const end of d.plan?.connectorEnds ?? []) Object.assign(end, { fromMm: [85, 0], toMm: [85, 12] })
    },
    expect: 'cannot-tell',
  },
]
