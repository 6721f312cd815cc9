import type { Design, Plan } from '@/lib/engine'
import { EMPTY_PLAN } from '@/lib/plan'

const box = (x0: number, y0: number, x1: number, y1: number): NonNullable<Plan['outline']> =>
  [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ].map(([x = 0, y = 0]) => ({ atMm: [x, y], viaMm: null }))

const across = (id: string, x: number) => ({
  id,
  name: id,
  nodes: box(x, 0, x, 12).slice(1, 3),
})

/** The example design as a strip of 140 x 12 mm: board, arm of 60 mm with three bends, fingers. */
export function drawPlan(design: Design): Plan {
  const plan: Plan = {
    ...structuredClone(EMPTY_PLAN),
    outline: box(0, 0, 140, 12),
    rollingDirectionDeg: 0,
    dividingLines: [across('board-edge', 40), across('finger-edge', 100)],
    areas: [
      { id: 'board', name: 'Board', zoneId: 'board', markMm: [20, 6] },
      { id: 'arm', name: 'Arm', zoneId: 'arm', markMm: [50, 6] },
      { id: 'fingers', name: 'Fingers', zoneId: 'fingers', markMm: [120, 6] },
    ],
    bendLines: [
      { id: 'hinge', bendId: 'hinge', fromMm: [55, 0], toMm: [55, 12] },
      { id: 'rocker', bendId: 'rocker', fromMm: [75.5, 0], toMm: [75.5, 12] },
      { id: 'fold', bendId: 'fold', fromMm: [93, 0], toMm: [93, 12] },
    ],
  }
  design.plan = plan
  for (const bend of design.bends) bend.distanceToRigidMm = null
  return plan
}

/** The same part in an array of two columns, with as many parts and the frame as are stated. */
export function drawArray(design: Design, different: Partial<NonNullable<Plan['array']>>): void {
  const { partCount, frameWidthMm } = design.brief.array
  drawPlan(design).array = {
    columns: 2,
    rows: (partCount ?? 2) / 2,
    columnStepMm: 150,
    rowStepMm: 20,
    frameMm: frameWidthMm,
    tabs: [],
    fiducials: [{ id: 'corner', atMm: [2, 2] }],
    ...different,
  }
}
