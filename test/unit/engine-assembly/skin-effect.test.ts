import { expect, test } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import { makeExampleDesign } from '../catalogue/example-design'

const readCautions = (frequencyMhz: number | null): readonly string[] => {
  const design: Design = makeExampleDesign()
  for (const conductor of design.features.conductors) conductor.frequencyMhz = frequencyMhz
  return evaluate(design).conductors.flatMap(({ cautions }) => cautions)
}

// Skin depth of copper: 6.5 µm at 100 MHz, 65 µm at 1 MHz (handbook figures from memory; test/standards/conductors holds the relation).
test('a conductor thicker than two skin depths at its highest frequency says that direct-current figures are too low', () => {
  const [said] = readCautions(1000).filter((caution) => caution.includes('1000 MHz'))
  expect(said).toMatch(/keeps to some 2\.\d+ µm from each face.*higher at that frequency/)
})

test('one that is thinner, or of which no frequency is stated, says nothing of it', () => {
  for (const frequencyMhz of [1, null]) {
    expect(readCautions(frequencyMhz).some((caution) => caution.includes('from each face'))).toBe(false)
  }
})
