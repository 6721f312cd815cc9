import type { Design } from '@/lib/engine'
import { CATALOGUE, evaluateItem } from '@/lib/engine/catalogue'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { readDemoDesign } from '../engine-assembly/demo-design-files'
import { completeStart, FACTS } from './complete-start'
import { buildFigures } from './figures'
import { makeFull } from './full-example'
import { makeOneBend } from './one-bend'

/** Designs that between them state nearly every field: what is changed in them field by field must be noticed. */
export const ATTACKED_DESIGNS: readonly (readonly [name: string, design: Design])[] = [
  ['the example in full', makeFull()],
  ['skua-rev-b', readDemoDesign('skua-rev-b')],
  ['pipit-rev-a', readDemoDesign('pipit-rev-a')],
  ...listStartingConstructions()
    .filter(({ id }) => id === 'double-sided' || id === 'four-layer-inner-flex')
    .map(({ id, makeDesign }) => [id, completeStart(makeDesign('Trial'))] as const),
  [
    'bends with states and loads',
    makeOneBend({
      requiredCycles: 1000,
      bends: [
        { insideRadiusMm: 6, flexesFromRadiusMm: 12, foldedToRadiusMm: 3, pullN: 2, twistDeg: 8, twistLengthMm: 30 },
        { insideRadiusMm: 8, flexesFromAngleDeg: 40, foldedToRadiusMm: 5, pullN: 1, twistDeg: 5, twistLengthMm: 40 },
      ],
    }),
  ],
]

export const CHECKED_ITEMS = CATALOGUE.filter(({ check }) => check !== null)

/** What each of `CHECKED_ITEMS` says of a design, verdicts, figures and words. */
export function listSayings(design: Design): readonly string[] {
  const figures = buildFigures(design, FACTS)
  return CHECKED_ITEMS.map((item) => JSON.stringify(evaluateItem(item, figures)))
}
