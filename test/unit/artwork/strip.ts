import {
  buildCopperStack,
  measureOnPlan,
  type NamedFile,
  type OnPlanFacts,
  type PlanGround,
  readSet,
} from '@/lib/artwork'
import { type Drawn, drawDrill, drawGerber, type Writing } from './draw-set'
import { turned } from './turned'

type Point = readonly [number, number]

const NM = 1e6

/** 60 x 12 mm with a notch at one corner, so that it lies in one way alone: rigid up to x = 15, then film, then a connector end from x = 50. A bend of 3 mm across it at x = 30. */
const OUTLINE: readonly Point[] = [
  [0, 0],
  [60, 0],
  [60, 9],
  [57, 9],
  [57, 12],
  [0, 12],
]
const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

/** The same part, turned as a whole with its plan. */
function groundAt(deg: number): PlanGround {
  const move = turned(deg, false, [0, 0])
  const at = ([x, y]: Point): Point => {
    const [mx, my] = move([x, y])
    return [Math.round(mx * NM), Math.round(my * NM)]
  }
  const ring = (corners: readonly Point[]) => corners.flatMap((corner) => [...at(corner)])
  return {
    basis: 'the plan',
    part: [ring(OUTLINE)],
    zones: [
      { zoneId: 'board', isFinger: false, isRigid: true, rings: [ring(box(0, 0, 15, 12))] },
      { zoneId: 'film', isFinger: false, isRigid: false, rings: [ring(box(15, 0, 50, 12))] },
      {
        zoneId: 'end',
        isFinger: true,
        isRigid: false,
        rings: [
          ring([
            [50, 0],
            [60, 0],
            [60, 9],
            [57, 9],
            [57, 12],
            [50, 12],
          ]),
        ],
      },
    ],
    bands: [
      {
        basis: 'the band',
        lineId: 'line',
        bendId: 'bend',
        fromNm: at([30, 0]),
        toNm: at([30, 12]),
        widthNm: 3 * NM,
        rings: [ring(box(28.5, 0, 31.5, 12))],
      },
    ],
    holes: [],
  }
}

export interface StripLayers {
  readonly top?: readonly Drawn[]
  readonly bottom?: readonly Drawn[]
  readonly cover?: readonly Drawn[]
  readonly stiffener?: readonly Drawn[]
  readonly holes?: readonly Point[]
}

/** @param deg  by which plan and artwork are turned together, beside how the artwork alone is written */
export function measureStrip(
  { top = [], bottom = [], cover = [], stiffener = [], holes = [[3, 6]] }: StripLayers,
  writing: Writing = {},
  deg = 0,
): OnPlanFacts {
  const whole = turned(deg, false, [0, 0])
  const own = writing.move ?? ((point: Point) => point)
  const moved: Writing = { ...writing, move: (point) => own(whole(point)) }
  const border = OUTLINE.map((from, at): Drawn => {
    const to = OUTLINE[(at + 1) % OUTLINE.length] as Point
    return { stroke: [from, to], widthMm: 0.1 }
  })
  const files: NamedFile[] = [
    drawGerber('top.gbr', 'Copper,L1,Top', top, moved),
    drawGerber('bottom.gbr', 'Copper,L2,Bot', bottom, moved),
    drawGerber('profile.gbr', 'Profile,NP', border, moved),
    drawDrill('plated.drl', holes, 0.3, moved),
    ...(cover.length === 0 ? [] : [drawGerber('part-coverlay-top.gbr', 'Other,User', cover, moved)]),
    ...(stiffener.length === 0 ? [] : [drawGerber('part-stiffener-bottom.gbr', 'Other,User', stiffener, moved)]),
  ]
  const set = readSet(files)
  return measureOnPlan(set, buildCopperStack(set), groundAt(deg))
}
