import { readFileSync } from 'node:fs'
import { expect } from 'vitest'
import { buildCopperStack, gatherFacts, measureOnPlan, type NamedFile, readSet } from '@/lib/artwork'
import { type ArtworkReviewFacts, type Design, type Evaluation, evaluate, parseDesign } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
import { type Drawn, drawGerber } from './draw-set'

type Point = readonly [number, number]

/** The demo's design of an island with three arms that bend; its plan, bends and layers are what the sets below are drawn for. */
function readPipit(): Design {
  const parsed = parseDesign(JSON.parse(readFileSync('seed/designs/pipit-rev-a.json', 'utf8')))
  if (!parsed.ok) throw new Error('the demo design cannot be read')
  return parsed.value
}
export const design = readPipit()
export const ground = groundOf(design)
const [line] = design.plan?.bendLines ?? []
const conductors = design.construction.layers.filter(({ kind }) => kind === 'conductor')

export const measure = (...drawn: Parameters<typeof readFacts>): Evaluation =>
  evaluate(design, { facts: readFacts(...drawn) })

/** Conductors across the first bend, square to its axis unless changed, on the design's layers; profile and holes as the demo has them. */
export function readFacts(
  top: readonly Drawn[],
  more: readonly Drawn[] = [],
  covers: readonly NamedFile[] = [],
  over: Design = design,
): ArtworkReviewFacts {
  const read = (name: string) => ({ name, bytes: new Uint8Array(readFileSync(`seed/artwork/${name}`)) })
  const count = conductors.length
  const set = readSet([
    ...Array.from({ length: count }, (_, at) =>
      drawGerber(
        `layer-${at + 1}.gbr`,
        `Copper,L${at + 1},${at === 0 ? 'Top' : at === count - 1 ? 'Bot' : 'Inr'}`,
        at === 0 ? top : at === 1 ? more : [],
      ),
    ),
    ...covers,
    read('pipit-profile.gbr'),
    read('pipit-drill-plated.drl'),
    read('pipit-drill-unplated.drl'),
  ])
  const plan = groundOf(over)
  if (plan === null) throw new Error('the demo has no plan')
  const stack = buildCopperStack(set)
  const artwork = gatherFacts(set, () => '', stack)
  const onPlan = measureOnPlan(set, stack, plan)
  expect(onPlan.unplacedReason).toBeNull()
  return { artworkFileCount: set.files.length, artwork, onPlan }
}

/** A place by its way along the axis (0 to 1) and its distance across it. */
export function at(share: number, acrossMm: number): Point {
  if (line === undefined) throw new Error('the demo has no bend line')
  const [from, to] = [line.fromMm, line.toMm]
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy)
  return [from[0] + dx * share - (dy / length) * acrossMm, from[1] + dy * share + (dx / length) * acrossMm]
}
export const straight: Drawn = { stroke: [at(0.5, -6), at(0.5, 6)], widthMm: 0.2 }

/** What an item says that was measured in the artwork. */
export const measuredBy = (evaluation: Evaluation, id: string) =>
  (evaluation.items.find(({ itemId }) => itemId === id)?.outcomes ?? []).flatMap((outcome) =>
    outcome.kind === 'decided' && outcome.summary.includes('Measured in') ? [outcome] : [],
  )
export const failures = (evaluation: Evaluation, id: string) =>
  measuredBy(evaluation, id).filter(({ verdict }) => verdict === 'fails')

/** Beside a place, along the axis. */
export function add([x, y]: Point, mm: number): Point {
  if (line === undefined) throw new Error('the demo has no bend line')
  const [dx, dy] = [line.toMm[0] - line.fromMm[0], line.toMm[1] - line.fromMm[1]]
  const length = Math.hypot(dx, dy)
  return [x + (dx / length) * mm, y + (dy / length) * mm]
}
