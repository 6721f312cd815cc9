import { describe, expect, test } from 'vitest'
import { listWrittenTwice } from '@/lib/engine/statements'
import {
  readAngles,
  readClasses,
  readCycles,
  readHottest,
  readLayerCounts,
  readLayerNumber,
  readRadii,
  readRevisions,
  readThicknesses,
  readTypes,
} from '@/lib/engine/statements/in-words'
import { makeExampleDesign } from '../catalogue/example-design'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

describe('facts in words', () => {
  test.each([
    [readRadii, 'Runs over a radius of 6 mm, tried at R 8 mm; 5,5 mm radius before', [6, 5.5, 8]],
    [readRadii, 'A bead, 1 mm wide, 40 mm long; R12 resistor, 3 mm high', []],
    [readRadii, 'radius of 6 cm', []],
    [readAngles, 'Folded by 180° and bent to 90 degrees', [180, 90]],
    [readAngles, 'Serves up to 70 °C; a 45° corner of the outline', []],
    [readCycles, 'At least 2 million cycles; 100,000 flex cycles; 50 000 cycles', [2e6, 1e5, 5e4]],
    [readCycles, 'life cycle cost of 3 parts', []],
    [readClasses, 'Class 3, and class-2 before', [3, 2]],
    [readClasses, 'first-class 3 mm film', []],
    [readTypes, 'A type 4 circuit', [4]],
    [readThicknesses, 'Foil 18 µm, film of 25um', [18, 25]],
    [readThicknesses, '0.5 mm laminate', []],
    [readHottest, 'From -20 to 70 °C', [70]],
    [readLayerCounts, 'Four-layer rigid-flex with 2 layers in the hinge', [4, 2]],
  ] as const)('%o in "%s"', (read, text, expected) => {
    expect(read(text)).toEqual(expected)
  })

  test.each([
    ['top_revA.gbr', ['A']],
    ['QI-2041 rev. B - drill.xnc', ['B']],
    ['Skua scanning head, revision B', ['B']],
    ['revolution-counter.gbr', []],
    ['reviewed.gbr', []],
    ['outline.rev2.gbr', ['2']],
  ])('revision in "%s"', (text, expected) => {
    expect(readRevisions(text)).toEqual(expected)
  })

  test.each([
    ['L3 flex', 3],
    ['l12', 12],
    ['Lower film', null],
    ['Level 2', null],
    ['L120 stiffener', null],
  ])('layer number of "%s"', (name, expected) => {
    expect(readLayerNumber(name)).toBe(expected)
  })
})

describe('what is written twice', () => {
  test('the demo designs contradict themselves nowhere, under their own revision', () => {
    for (const [name, revisionLabel] of [
      ['pipit-rev-a', 'A'],
      ['skua-rev-a', 'A'],
      ['skua-rev-b', 'B'],
    ] as const) {
      const pairs = listWrittenTwice(readDemoDesign(name), { revisionLabel })
      expect(pairs.length, name).toBeGreaterThan(3)
      expect(
        pairs.filter(({ agrees }) => !agrees).map(({ fact, one, other }) => `${fact}: ${one.says}, ${other.says}`),
        name,
      ).toEqual([])
    }
  })

  test('another revision under the same design is seen, and so are file names of another part', () => {
    const design = readDemoDesign('skua-rev-b')
    const differing = (papers: Parameters<typeof listWrittenTwice>[1]) =>
      listWrittenTwice(design, papers)
        .filter(({ agrees }) => !agrees)
        .map(({ fact }) => fact)
    expect(differing({ revisionLabel: 'C' })).toEqual(['Revision'])
    expect(differing({ artworkFileNames: ['QI-2041-L2.gbr', 'qi_2041_outline.gbr'] })).toEqual([])
    expect(differing({ artworkFileNames: ['QI-2040-L2.gbr'] })).toEqual(['Part number'])
    expect(differing({ artworkFileNames: ['QI-2041-L5.gbr'] })).toEqual(['Conductor layers'])
  })

  test('both places are named, each with where it stands', () => {
    const design = makeExampleDesign()
    for (const bend of design.bends) bend.note = 'Bent over a radius of 99 mm.'
    const pairs = listWrittenTwice(design, {}).filter(({ agrees }) => !agrees)
    expect(pairs).toHaveLength(design.bends.length)
    for (const { one, other } of pairs) {
      expect(one).toMatchObject({ where: `the bend's fields`, path: ['bends', expect.any(Number), 'insideRadiusMm'] })
      expect(other).toMatchObject({ says: '99 mm', path: ['bends', expect.any(Number), 'note'] })
    }
  })

  test('an empty design has nothing written twice', () => {
    const design = makeExampleDesign()
    const empty = {
      ...design,
      name: 'Part',
      bends: [],
      construction: { layers: [], zones: [] },
      features: { ...design.features, conductors: [], holes: [], stiffeners: [], components: [], outline: null },
      brief: { ...design.brief, purpose: '', layoutFreezeDate: null },
    }
    expect(listWrittenTwice(empty, {})).toEqual([])
  })
})
