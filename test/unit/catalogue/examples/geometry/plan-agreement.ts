import type { Design } from '@/lib/engine'
import { drawArray, drawPlan } from '../../drawn-plan'
import { getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const planAgreementExamples: readonly ItemExample[] = [
  { name: 'not drawn', expect: 'not-applicable' },
  {
    name: 'drawn as stated',
    change: (d) => {
      drawPlan(d)
    },
    expect: 'meets',
  },
  {
    name: 'an arm of 60 mm that is stated to have 70',
    change: (d) => {
      drawPlan(d)
      getZone(d, 'arm').lengthMm = 70
    },
    expect: 'fails',
  },
  {
    name: 'a dividing line that parts nothing',
    change: (d) => {
      const plan = drawPlan(d)
      plan.dividingLines.push({
        id: 'short',
        name: 'Short',
        nodes: [
          { atMm: [60, 0], viaMm: null },
          { atMm: [60, 5], viaMm: null },
        ],
      })
    },
    expect: 'fails',
  },
  {
    name: 'a zone of 400 x 90 mm in an outline of 96 x 16 mm',
    change: (d) => {
      const plan = drawPlan(d)
      plan.outline = [
        [0, 0],
        [96, 0],
        [96, 16],
        [0, 16],
      ].map(([x = 0, y = 0]) => ({ atMm: [x, y], viaMm: null }))
      plan.dividingLines = []
      plan.areas = []
      plan.bendLines = []
      Object.assign(getZone(d, 'arm'), { lengthMm: 400, widthMm: 90 })
    },
    expect: 'fails',
  },
  {
    name: 'an array that is drawn as it is stated',
    change: (d) => drawArray(d, {}),
    expect: 'meets',
  },
  {
    name: 'an array that is drawn without the fiducials that are stated',
    change: (d) => drawArray(d, { fiducials: [] }),
    expect: 'fails',
  },
  {
    name: 'an array that is drawn with fiducials, and stated to have none',
    change: (d) => {
      drawArray(d, {})
      d.brief.array.fiducials = false
    },
    expect: 'fails',
  },
  {
    name: 'an array of more parts than are stated',
    change: (d) => drawArray(d, { columns: 3 }),
    expect: 'fails',
  },
  {
    name: 'routes of 6 mm across a bend of 12 mm, in a section that has half of it in copper',
    change: (d) => drawRoutes(d, 6, 0.5),
    expect: 'meets',
  },
  {
    name: 'the same routes, in a section of which 40 % is copper',
    change: (d) => drawRoutes(d, 6, 0.4),
    expect: 'fails',
  },
]

/** One route along the arm, through all of its bends. */
function drawRoutes(design: Design, widthMm: number, coverageFraction: number): void {
  const plan = drawPlan(design)
  const [conductor] = design.features.conductors
  if (conductor === undefined) throw new Error('the example has no conductor')
  plan.routes = [
    {
      id: 'along',
      conductorId: conductor.id,
      layerId: null,
      widthMm,
      nodes: [
        { atMm: [42, 6], viaMm: null },
        { atMm: [98, 6], viaMm: null },
      ],
    },
  ]
  for (const layer of design.construction.layers) {
    if (layer.kind === 'conductor') layer.coverageFraction = coverageFraction
  }
}
