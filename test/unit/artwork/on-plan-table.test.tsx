import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { ArtworkOnPlan } from '@/app/_components/review/artwork-on-plan'
import { buildCopperStack, gatherFacts, measureOnPlan, type PlanGround, readSet } from '@/lib/artwork'
import { type Drawn, drawDrill, drawGerber } from './draw-set'

const NM = 1e6
const square = [0, 0, 20 * NM, 0, 20 * NM, 10 * NM, 0, 10 * NM]
const ground: PlanGround = {
  basis: 'plan',
  part: [square],
  zones: [{ zoneId: 'film', isFinger: false, isRigid: false, rings: [square] }],
  bands: [
    {
      basis: 'band',
      lineId: 'line',
      bendId: 'hinge',
      fromNm: [10 * NM, 0],
      toNm: [10 * NM, 10 * NM],
      widthNm: 2 * NM,
      rings: [[9 * NM, 0, 11 * NM, 0, 11 * NM, 10 * NM, 9 * NM, 10 * NM]],
    },
  ],
  holes: [],
}
const border: Drawn[] = [
  {
    stroke: [
      [0, 0],
      [20, 0],
    ],
    widthMm: 0.1,
  },
  {
    stroke: [
      [20, 0],
      [20, 10],
    ],
    widthMm: 0.1,
  },
  {
    stroke: [
      [20, 10],
      [0, 10],
    ],
    widthMm: 0.1,
  },
  {
    stroke: [
      [0, 10],
      [0, 0],
    ],
    widthMm: 0.1,
  },
]

test('the artwork page shows each figure with its place, and bends and zones by their names', () => {
  const set = readSet([
    drawGerber('top.gbr', 'Copper,L1,Top', [
      {
        stroke: [
          [2, 5],
          [10, 5],
        ],
        widthMm: 0.2,
        net: 'A',
      },
      {
        stroke: [
          [10, 5],
          [18, 6],
        ],
        widthMm: 0.2,
        net: 'A',
      },
      { pad: [4, 8], sizeMm: 0.6 },
    ]),
    drawGerber('profile.gbr', 'Profile,NP', border),
    drawDrill('plated.drl', [[4, 8]], 0.3),
  ])
  const stack = buildCopperStack(set)
  const page = renderToStaticMarkup(
    <ArtworkOnPlan
      facts={gatherFacts(set, () => '', stack)}
      onPlan={measureOnPlan(set, stack, ground)}
      names={{ zones: new Map([['film', 'Film']]), bends: new Map([['hinge', 'Hinge']]) }}
    />,
  ).replaceAll(/<[^>]+>/g, ' ')
  for (const words of [
    'Film 1.',
    '0.2 at (6, 5)',
    '0.1495 at (4, 8)',
    '1 net at 2 places, of which 2 lie on copper; 0 opens, 0 shorts.',
    'Hinge',
    '1 change of direction, first at (10, 5)',
    'at most 0 mm apart',
  ])
    expect(page.replaceAll(/\s+/g, ' ')).toContain(words)
})
