import { buildContext, type Design } from '@/lib/engine'
import { type LineStudy, listStudiedLines, type StudiedLine, studyLine } from '@/lib/engine/line-study'
import { makeExampleDesign } from '../catalogue/example-design'
import { impedanceValueExamples } from '../catalogue/examples/materials/impedance-value'

/** The example line of 45 um under a cover, alone or as a pair. */
export function makeLineDesign(kind: 'single' | 'pair'): Design {
  const design = makeExampleDesign()
  impedanceValueExamples[0]?.change?.(design)
  const [conductor] = design.features.conductors
  if (conductor === undefined) throw new Error('the example has no conductor')
  if (kind === 'pair') {
    Object.assign(conductor, { impedanceOhm: 80, spaceMm: 0.06, impedance: { ...conductor.impedance, kind } })
  }
  return design
}

export function studyAll(design: Design): readonly (readonly [StudiedLine, LineStudy])[] {
  return listStudiedLines(buildContext(design)).map((studied) => {
    const steps = studyLine(studied)
    let step = steps.next()
    while (step.done !== true) step = steps.next()
    if (step.value === null) throw new Error(`${studied.conductorName} has no solution`)
    return [studied, step.value]
  })
}
