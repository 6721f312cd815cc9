import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { buildCopperStack, drawLayers, gatherFacts, measureOnPlan, readSet } from '@/lib/artwork'
import { writePicture } from '@/lib/artwork-picture'
import { evaluate, getOutcomeVerdict } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
import type { PackageContent } from '@/lib/package'
import { makeDocuments } from '@/lib/package/report'
import { makeArtworkCrops } from '@/lib/package/report/artwork-crops'
import { clipRing, isAlongFrame } from '@/lib/package/report/artwork-crops/clip-ring'
import { linePath } from '@/lib/package/report/artwork-crops/crop-paths'
import { listCrops } from '@/lib/package/report/artwork-crops/list-crops'
import { listItemStates } from '@/lib/review'
import { makeContent, makeSnapshot, readSeedDesign } from '../../integration/package/content-factory'
import { type Drawn, drawGerber } from '../artwork/draw-set'
import { readStructure, type StructureElement } from './pdf-structure'
import { readPdfPages } from './pdf-text'

const design = readSeedDesign('pipit-rev-a')
const ground = groundOf(design)
const [line] = design.plan?.bendLines ?? []
if (ground === null || line === undefined) throw new Error('the demo has no plan with a bend')
const [from, to] = [line.fromMm, line.toMm]
const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
const length = Math.hypot(dx, dy)
/** A place by its way along the axis (0 to 1) and its distance across it. */
const at = (share: number, acrossMm: number) =>
  [from[0] + dx * share - (dy / length) * acrossMm, from[1] + dy * share + (dx / length) * acrossMm] as const

/** A release of the demo's design with copper of our own on its first layer, its own profile and holes. */
function makeWith(top: readonly Drawn[]): PackageContent {
  const seedFile = (name: string) => ({ name, bytes: new Uint8Array(readFileSync(`seed/artwork/${name}`)) })
  const count = design.construction.layers.filter(({ kind }) => kind === 'conductor').length
  const sides = (index: number) => (index === 0 ? 'Top' : index === count - 1 ? 'Bot' : 'Inr')
  const set = readSet([
    ...Array.from({ length: count }, (_, index) =>
      drawGerber(`layer-${index + 1}.gbr`, `Copper,L${index + 1},${sides(index)}`, index === 0 ? top : []),
    ),
    ...['pipit-profile.gbr', 'pipit-drill-plated.drl', 'pipit-drill-unplated.drl'].map(seedFile),
  ])
  const stack = buildCopperStack(set)
  const onPlan = ground === null ? null : measureOnPlan(set, stack, ground)
  const results = evaluate(design, {
    facts: { artworkFileCount: set.files.length, artwork: gatherFacts(set, () => '', stack), onPlan },
  })
  const snapshot = makeSnapshot(design)
  const { evaluation } = snapshot
  if (evaluation === null) throw new Error('the snapshot has no results')
  const content = makeContent({ ...snapshot, evaluation: { ...evaluation, results } })
  const bytes = writePicture(drawLayers(set, stack))
  return { ...content, artworkPicture: { bytes, registration: onPlan?.registration ?? null } }
}

/** A conductor that ends in the middle of the bend, and one that goes through. */
const ENDING: readonly Drawn[] = [
  { stroke: [at(0.5, -6), at(0.5, 0)], widthMm: 0.2 },
  { stroke: [at(0.3, -6), at(0.3, 6)], widthMm: 0.2 },
]

interface Crop {
  readonly svg: string
  readonly alt: string
}

function findCrops(part: unknown): Crop[] {
  if (Array.isArray(part)) return part.flatMap(findCrops)
  if (typeof part !== 'object' || part === null) return []
  return 'svg' in part ? [part as Crop] : Object.values(part).flatMap(findCrops)
}

const textOf = (part: unknown): string => JSON.stringify(part)
const copperIn = (svg: string): string => /<path d="([^"]*)" fill-rule="evenodd" fill="#b0682f"/.exec(svg)?.[1] ?? ''

/** Area within closed paths, each border taken with its own sign. */
function areaOf(path: string): number {
  return path
    .split('Z')
    .filter((each) => each !== '')
    .reduce((sum, each) => {
      const points = each
        .split(/[ML]/)
        .slice(1)
        .map((point) => point.split(' ').map(Number))
      return (
        sum +
        points.reduce((twice, [x = 0, y = 0], index) => {
          const [nextX = 0, nextY = 0] = points[(index + 1) % points.length] ?? []
          return twice + x * nextY - nextX * y
        }, 0) /
          2
      )
    }, 0)
}

describe('crops of the artwork in the report', async () => {
  const content = makeWith(ENDING)
  const parts = makeArtworkCrops(content)
  const crops = findCrops(parts)
  const items = listCrops(listItemStates(content.snapshot))
  const ends = items.find(({ item }) => item.id === 'ends-in-bend')

  test('a conductor that ends in a bend is shown where it ends, with both values', () => {
    expect(ends?.shown.map(getOutcomeVerdict)).toEqual(['fails'])
    const [x, y] = at(0.5, 0)
    const spot = ends?.shown[0]?.artworkAt
    // The end of a round stroke is half its width beyond its last place.
    expect(Math.hypot((spot?.xMm ?? 0) - x, (spot?.yMm ?? 0) - y)).toBeLessThanOrEqual(0.11)
    const crop = crops.find(({ alt }) => alt.includes(ends?.shown[0]?.summary ?? '?'))
    expect(crop?.alt).toMatch(/Found .*limit/)
    expect(crop?.alt).toContain('layer-1.gbr')
    expect(areaOf(copperIn(crop?.svg ?? ''))).not.toBe(0)
    expect(crop?.svg).toContain('>2 mm</text>')
  })

  test('a conductor alone covers in its crop what it covers in the plane', () => {
    const widthMm = 0.2
    const alone = makeArtworkCrops(makeWith([{ stroke: [at(0.5, -6), at(0.5, 0)], widthMm }]))
    const crop = findCrops(alone).find(({ alt }) => alt.includes(ends?.shown[0]?.summary ?? '?'))
    const [, acrossMm = ''] = /([\d.]+) mm across/.exec(crop?.alt ?? '') ?? []
    const pxPerMm = 210 / Number(acrossMm)
    // It comes straight from a side of the frame to the middle: the bend's axis is drawn along x or y. Half of the round end lies beyond.
    const reachMm = (Math.abs(dx) > Math.abs(dy) ? 147 : 210) / 2 / pxPerMm
    const [x, y] = at(0.5, 0)
    const spot = ends?.shown[0]?.artworkAt
    const beyondMm = Math.hypot((spot?.xMm ?? 0) - x, (spot?.yMm ?? 0) - y)
    const areaMm2 = Math.abs(areaOf(copperIn(crop?.svg ?? ''))) / pxPerMm ** 2
    const wholeMm2 = reachMm * widthMm + (Math.PI * widthMm ** 2) / 8
    expect(beyondMm).toBeLessThanOrEqual(widthMm / 2 + 0.01)
    expect(Math.abs(areaMm2 - wholeMm2)).toBeLessThanOrEqual(beyondMm * widthMm + 0.01 * wholeMm2)
  })

  test('every crop has a mark in its middle, a bar with its length, and says what it shows', () => {
    expect(crops.length).toBe(items.reduce((sum, { shown }) => sum + shown.length, 0))
    for (const { svg, alt } of crops) {
      expect(svg).toContain('<circle cx="105" cy="73.5"')
      expect(svg).toMatch(/<text [^>]*>[\d.]+ (mm|µm)<\/text>/)
      expect(alt).toMatch(/^Place \d+, [a-z ]+\. .*across, the place in the middle/)
    }
  })

  test('twelve places of an item are drawn, the worst, and the rest is counted', () => {
    const [result] = content.snapshot.evaluation?.results.items.filter(({ itemId }) => itemId === 'ends-in-bend') ?? []
    const [failing] = (result?.outcomes ?? []).filter(({ artworkAt }) => artworkAt !== undefined)
    if (result === undefined || failing === undefined || failing.kind !== 'decided') throw new Error('no end was found')
    const many = Array.from({ length: 20 }, (_, index) => ({
      ...failing,
      margin: -index,
      summary: `end ${index}`,
    }))
    const states = listItemStates(content.snapshot).filter(({ item }) => item.id === 'ends-in-bend')
    const [listed] = listCrops(states.map((state) => ({ ...state, result: { ...result, outcomes: many } })))
    expect(listed?.shown.map(({ summary }) => summary)).toEqual(
      Array.from({ length: 12 }, (_, index) => `end ${19 - index}`),
    )
    expect(listed?.left).toEqual({ count: 8, notMetCount: 8 })
  })

  test('where the layers were never drawn, the report says so instead', () => {
    const without = makeArtworkCrops({ ...content, artworkPicture: null })
    expect(findCrops(without)).toEqual([])
    expect(textOf(without)).toContain('no crop is drawn')
  })

  test('a place on the plan is not drawn where the artwork lies on none', () => {
    const { artworkPicture } = content
    if (artworkPicture === null) throw new Error('no picture')
    const unplaced = makeArtworkCrops({ ...content, artworkPicture: { ...artworkPicture, registration: null } })
    expect(textOf(unplaced)).toContain('does not lie on the plan')
  })

  test('nothing is said of places where no outcome has one', () => {
    expect(makeArtworkCrops(makeContent())).toEqual([])
  })

  test('in the tagged report each is a figure with its words, and whatever is painted is marked', async () => {
    const files = await makeDocuments(content)
    const bytes = files.find(({ path }) => path === 'report.pdf')?.bytes ?? new Uint8Array()
    const { root, pages } = readStructure(bytes)
    const list = (element: StructureElement): StructureElement[] => [element, ...element.children.flatMap(list)]
    const figures = list(root).filter(({ type, alt }) => type === 'Figure' && alt.startsWith('Place '))
    expect(figures.length).toBe(crops.length)
    expect(figures.map(({ alt }) => alt)).toEqual(crops.map(({ alt }) => alt))
    expect([...pages.values()].flatMap(({ unmarked }) => unmarked)).toEqual([])
    // Lines break where the layout wants: letters alone are compared.
    const letters = readPdfPages(bytes).join('').replaceAll(/\s+/g, '')
    for (const { alt } of crops) expect(letters).toContain(alt.split('. ')[0]?.replaceAll(/\s+/g, ''))
  })
})

describe('rings cut by a frame', () => {
  const frame = { width: 10, height: 8 }
  const areaOfRing = (ring: readonly number[]) =>
    ring.reduce((sum, x, index) => {
      if (index % 2 === 1) return sum
      const next = (index + 2) % ring.length
      return sum + (x * (ring[next + 1] ?? 0) - (ring[next] ?? 0) * (ring[index + 1] ?? 0)) / 2
    }, 0)

  test.each([
    ['within', [1, 1, 5, 1, 5, 4, 1, 4], 12],
    ['over a corner', [-5, -5, 5, -5, 5, 4, -5, 4], 20],
    ['round the whole frame', [-5, -5, 25, -5, 25, 25, -5, 25], 80],
    ['outside', [11, 1, 15, 1, 15, 4, 11, 4], 0],
    // A comb whose two teeth reach in from above: two pieces of 2 by 3.
    ['in two pieces', [1, 9, 1, 5, 3, 5, 3, 9, 6, 9, 6, 5, 8, 5, 8, 9, 8, 12, 1, 12], 12],
  ])('%s: what is left has the area in closed form', (_, ring, area) => {
    expect(Math.abs(areaOfRing(clipRing(ring, frame)))).toBeCloseTo(area, 9)
  })

  test('edges along which the frame cut are no borders', () => {
    expect(isAlongFrame([0, 1, 0, 5], frame)).toBe(true)
    expect(isAlongFrame([0, 1, 4, 5], frame)).toBe(false)
    expect(linePath([clipRing([-5, 2, 5, 2, 5, 4, -5, 4], frame)], frame).match(/M/g)?.length).toBe(1)
    expect(linePath([clipRing([-5, -5, 25, -5, 25, 25, -5, 25], frame)], frame)).toBe('')
  })
})
