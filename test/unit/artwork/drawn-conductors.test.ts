import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { buildCopperStack, gatherFacts, type NamedFile, readSet } from '@/lib/artwork'
import { type Drawn, drawDrill, drawGerber } from './draw-set'

type Point = readonly [number, number]
const line = (from: Point, to: Point, net?: string): Drawn => ({
  stroke: [from, to],
  widthMm: 0.2,
  ...(net === undefined ? {} : { net }),
})
const land = (at: Point, net?: string): Drawn => ({ pad: at, sizeMm: 0.7, ...(net === undefined ? {} : { net }) })

function netsOf(files: readonly NamedFile[]) {
  const set = readSet(files)
  const { nets } = gatherFacts(set, () => '', buildCopperStack(set))
  if (nets === null) throw new Error('no net is named')
  return nets
}
const copper = (top: readonly Drawn[], bottom: readonly Drawn[] = []) => [
  drawGerber('top.gbr', 'Copper,L1,Top', top),
  drawGerber('bottom.gbr', 'Copper,L2,Bot', bottom),
]
const [a, b]: [Point, Point] = [
  [0, 0],
  [20, 0],
]
/** A flash that adds no copper to the end of a line. */
const dot = (at: Point, net?: string): Drawn => ({ pad: at, sizeMm: 0.2, ...(net === undefined ? {} : { net }) })
/** A conductor of 0.2 mm, drawn by its edges, a little past both ends. */
const strip = ([fromX, fromY]: Point, [toX, toY]: Point): Drawn => ({
  area: [
    [Math.min(fromX, toX) - 0.1, Math.min(fromY, toY) - 0.1],
    [Math.max(fromX, toX) + 0.1, Math.min(fromY, toY) - 0.1],
    [Math.max(fromX, toX) + 0.1, Math.max(fromY, toY) + 0.1],
    [Math.min(fromX, toX) - 0.1, Math.max(fromY, toY) + 0.1],
  ],
})
/** Something in a corner that names a net, so that there is a source. */
const elsewhere = land([0, 40], 'N')

describe('conductors that are drawn', () => {
  test.each<[string, NamedFile[], loose: number, unnamed: number]>([
    ['from land to land', copper([land(a, 'A'), line(a, b, 'A'), land(b, 'A')]), 0, 0],
    ['from land to land, of no net', copper([elsewhere, land(a), line(a, b), land(b)]), 0, 1],
    ['from a land to nowhere', copper([land(a, 'A'), line(a, b, 'A')]), 1, 0],
    ['from nowhere to nowhere, named by itself', copper([line(a, b, 'A')]), 1, 0],
    ['to a land of the layer below, with no hole', copper([land(a, 'A'), line(a, b, 'A')], [land(b, 'A')]), 1, 0],
    [
      'to a land of the layer below, through a plated hole',
      [
        ...copper([land(a, 'A'), line(a, b, 'A')], [land(b), line(b, [20, 20]), land([20, 20], 'A')]),
        drawDrill('part.drl', [b], 0.3),
      ],
      0,
      0,
    ],
    [
      'to a land of the layer below, through a hole without plating',
      [
        ...copper([land(a, 'A'), line(a, b, 'A')], [land(b), line(b, [20, 20]), land([20, 20], 'A')]),
        drawDrill('part.drl', [b], 0.3, {}, false),
      ],
      1,
      0,
    ],
    [
      'from a land into a plane',
      copper([
        land(a, 'A'),
        line(a, b, 'A'),
        {
          area: [
            [19, -5],
            [29, -5],
            [29, 5],
            [19, 5],
          ],
        },
      ]),
      0,
      0,
    ],
    [
      'from a land with a teardrop to nowhere',
      copper([
        land(a, 'A'),
        line(a, b, 'A'),
        {
          area: [
            [0, 0.3],
            [0, -0.3],
            [1, -0.1],
            [1, 0.1],
          ],
        },
      ]),
      1,
      0,
    ],
    [
      'between round flashes as wide as itself, which are no lands',
      copper([dot(a, 'A'), line(a, b, 'A'), dot(b, 'A')]),
      1,
      0,
    ],
    ['between a land and a flash as wide as itself', copper([land(a, 'A'), line(a, b, 'A'), dot(b, 'A')]), 1, 0],
    ['between round flashes wider than itself', copper([land(a, 'A'), line(a, b, 'A'), land(b, 'A')]), 0, 0],
    [
      'to a flash as wide as itself with a plated hole',
      [...copper([land(a, 'A'), line(a, b, 'A'), dot(b, 'A')]), drawDrill('part.drl', [b], 0.1)],
      0,
      0,
    ],
    ['that is drawn as an area, from land to land', copper([elsewhere, land(a), strip(a, b), land(b)]), 0, 1],
    ['that is drawn as an area, from a land to nowhere', copper([land(a, 'A'), strip(a, b)]), 1, 0],
    ['that is drawn as an area, from nowhere to nowhere', copper([elsewhere, strip(a, b)]), 1, 1],
    ['that is drawn as an area, round a corner', copper([elsewhere, strip(a, b), strip(b, [20, 20])]), 1, 1],
    ['of 3 mm, as letters are', copper([elsewhere, line(a, [3, 0])]), 0, 0],
    ['of many short strokes', copper([elsewhere, ...[0, 1, 2, 3, 4, 5].map((x) => line([x, 0], [x + 1, 0]))]), 1, 1],
  ])('%s', (_, files, loose, unnamed) => {
    const nets = netsOf(files)
    expect(nets.loose.count).toBe(loose)
    expect(nets.sources.map((source) => source.unnamed.count)).toEqual([unnamed])
    expect(nets.loose.first).toHaveLength(Math.min(1, loose))
  })

  test('of the demo all lead somewhere, and its electrodes no longer without their vias', () => {
    const names = ['pipit-l1.gbr', 'pipit-l2.gbr', 'pipit-drill-plated.drl']
    const read = (change: (text: string) => string) =>
      netsOf(
        names.map((name) => ({
          name,
          bytes: new TextEncoder().encode(change(readFileSync(`seed/artwork/${name}`, 'utf8'))),
        })),
      )
    const whole = read((text) => text)
    expect([
      whole.loose.count,
      whole.sources.map(({ opens, shorts, unnamed }) => [opens, shorts, unnamed.count]),
    ]).toEqual([0, [[[], [], 0]]])
    const undrilled = read((text) => text.replace('X20.000Y6.100\n', ''))
    expect(undrilled.sources.flatMap(({ opens }) => opens.map(({ net }) => net))).toEqual(['E1'])
  })
})
