import { describe, expect, test } from 'vitest'
import { compareArtwork } from '@/lib/engine/artwork-check'
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
  readSizesMm,
  readThicknesses,
  readTypes,
} from '@/lib/engine/statements/in-words'
import { makeFacts, makeFile } from '../artwork/fact-factory'
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
    [
      readSizesMm,
      'outline 60x20mm, before 20.5 mm x 61,5 mm',
      [
        [60, 20],
        [61.5, 20.5],
      ],
    ],
    [readSizesMm, 'array of 4 x 2 parts, 3x2 mmol', []],
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
      features: {
        ...design.features,
        conductors: [],
        holes: [],
        pads: [],
        coverlayOpenings: [],
        stiffeners: [],
        components: [],
        outline: null,
        outlineCutBy: null,
      },
      brief: {
        ...design.brief,
        purpose: '',
        layoutFreezeDate: null,
        panelForm: null,
        acceptance: { ...design.brief.acceptance, hasSurfaceMountParts: null },
      },
    }
    expect(listWrittenTwice(empty, {})).toEqual([])
  })
})

describe('facts of the lists, each contradiction with both places', () => {
  type Design = ReturnType<typeof makeExampleDesign>
  const differing = (change: (design: Design) => void, artworkFileNames: readonly string[] = []) => {
    const design = readDemoDesign('skua-rev-b')
    change(design)
    return listWrittenTwice(design, { artworkFileNames })
      .filter(({ agrees }) => !agrees)
      .map(({ fact, one, other }) => [fact, one.where, one.says, other.where, other.says])
  }
  const first = <T>([value]: readonly T[]): T => {
    if (value === undefined) throw new RangeError('the list is empty')
    return value
  }

  test.each([
    [
      'a bead beside each bend, and beads ruled out',
      (d: Design) => {
        d.features.rigidEdges.bead = 'ruled-out'
      },
      say('Bead beside', `the bend's fields`, 'a bead relieves the strain', 'the rigid edges', 'beads are ruled out'),
    ],
    [
      'beads of two widths',
      (d: Design) => {
        d.features.rigidEdges.beadWidthMm = 2
      },
      say('Width of the bead beside', `the bend's fields`, '1 mm', 'the rigid edges', '2 mm'),
    ],
    [
      'an outline that is routed, by a laser',
      (d: Design) => {
        d.features.outlineCutBy = 'rout'
      },
      say('How the outline is cut', 'the features', 'routing', 'what is agreed with the fabricator', 'laser'),
    ],
    [
      'a pad on a layer that its zone lacks',
      (d: Design) => {
        first(d.features.pads).zoneId = 'hinge'
        first(d.features.pads).layerId = 'l4'
      },
      say('Layer of', 'the pad', 'on L4', 'zone', 'no L4'),
    ],
    [
      'a pad with a plated hole, and no holes by the mark',
      (d: Design) => {
        d.features.holes = []
        d.features.none.push('holes')
        first(d.features.pads).hasPlatedHole = true
      },
      say('Plated hole of', 'the pad', 'has a plated hole', 'the list of holes', 'marked as none'),
    ],
    [
      'surface-mount parts, and no components by the mark',
      (d: Design) => {
        d.brief.acceptance.hasSurfaceMountParts = true
        d.features.components = []
        d.features.none.push('components')
      },
      say(
        'Surface-mount parts',
        'what is asked of flatness',
        'there are surface-mount parts',
        'the list of components',
        'marked as none',
      ),
    ],
    [
      'a corner of a radius that no such part can have',
      (d: Design) => {
        for (const corner of d.features.outlineCorners) corner.insideRadiusMm = 500
      },
      say('Inside radius of', 'its own field', '500 mm', '', ''),
    ],
    [
      'a strip between openings that is wider than the part twice over',
      (d: Design) => {
        for (const opening of d.features.coverlayOpenings) opening.webMm = 500
      },
      say('Strip to the next opening of', 'its own field', '500 mm', '', ''),
    ],
    [
      'copper as far from the outline as in no such part',
      (d: Design) => {
        d.features.copperToOutlineMm = 500
      },
      say('Distance of copper from the outline', 'the features', '500 mm', '', ''),
    ],
    [
      'letters larger than the part',
      (d: Design) => {
        d.brief.marking.letterHeightMm = 500
      },
      say('Height of the letters', 'the brief', '500 mm', '', ''),
    ],
    [
      'plating that nearly fills the drill',
      (d: Design) => {
        for (const hole of d.features.holes) {
          hole.plated = true
          hole.drillMm = 0.3
          hole.wallPlatingUm = 140
        }
      },
      say('Plating of', 'its own field', '140 µm', 'its drill', '0.3 mm'),
    ],
    [
      'a bend whose axis is shorter than its film is thick',
      (d: Design) => {
        for (const bend of d.bends) bend.axisLengthMm = 0.001
      },
      say('Width of', 'the length of its axis', '0.001 mm', '', 'of layers to bend'),
    ],
    [
      'coverlay on the rim of a land that is wider than any rim',
      (d: Design) => {
        for (const pad of d.features.pads) pad.coverlayCaptureMm = 5
      },
      say('Overlap of the coverlay on the rim of', 'its own field', '5 mm', 'lands as they are made', 'less than 3 mm'),
    ],
    [
      'a relief of a slit that is wider than the part',
      (d: Design) => {
        d.features.slits.push({ id: 'slit', name: 'Slit', endReliefDiameterMm: 130, widthMm: 0.2, tearStop: null })
      },
      say('Relief of', 'its own field', '130 mm', '', ''),
    ],
    [
      'a conductor that is shorter than the bends that it crosses',
      (d: Design) => {
        for (const conductor of d.features.conductors) conductor.lengthMm = 0.1
      },
      say('Length of', 'its own field', '0.1 mm', '', 'arcs of at least'),
    ],
    [
      'an axis of less than half of the zone that it runs across',
      (d: Design) => {
        for (const bend of d.bends) bend.axisLengthMm = 1
      },
      say('Length of the axis of', `the bend's fields`, '1 mm', 'zone', 'of width'),
    ],
    [
      'conductors wider than the axis of the bend that they cross',
      (d: Design) => {
        for (const conductor of d.features.conductors) conductor.widthMm = 18.1
      },
      say('Conductors across', 'their own fields', 'take at least', `the bend's fields`, 'an axis of'),
    ],
    [
      'a neighbour further away than the bend is wide',
      (d: Design) => {
        for (const conductor of d.features.conductors) conductor.spaceMm = 18
      },
      say('Space beside', 'its own fields', 'with the space to its neighbour', `the bend's fields`, 'an axis of'),
    ],
    [
      'hardly any copper where listed conductors cross',
      (d: Design) => {
        for (const { presence } of d.construction.zones)
          for (const each of presence) if (each.coverageFraction !== null) each.coverageFraction = 0.001
        for (const layer of d.construction.layers) if (layer.kind === 'conductor') layer.coverageFraction = 0.001
      },
      say('Copper of', 'the conductors that cross it', 'at least', 'zone', '0.1 %'),
    ],
    [
      'a conductor with more copper than the part has room for',
      (d: Design) => {
        for (const conductor of d.features.conductors) conductor.lengthMm = 50_000
      },
      say('Area of', 'its own fields', 'mm² with its spaces', 'the outline', 'mm² in all'),
    ],
    [
      'a land with a ring of more than 5 mm',
      (d: Design) => {
        for (const hole of d.features.holes) hole.landMm = (hole.drillMm ?? 0) + 10.1
      },
      say('Land of', 'its own field', 'mm', 'its drill', 'at most 5 mm wide'),
    ],
    [
      'copper as far from both edges as half of the part',
      (d: Design) => {
        d.features.copperToOutlineMm = 60
      },
      say('Room for copper', 'the features', '60 mm clear of each edge', 'the outline', 'across'),
    ],
    [
      'an opening that covers 3 mm of its land all round',
      (d: Design) => {
        for (const opening of d.features.coverlayOpenings) Object.assign(opening, { openingMm: 1, landMm: 7 })
      },
      say('Land in', 'its own field', '7 mm', 'its opening', 'less than 3 mm over a rim'),
    ],
    [
      'a stiffener whose hole is smaller than the drill',
      (d: Design) => {
        for (const hole of d.features.holes) Object.assign(hole, { drillMm: 1, stiffenerHoleMm: 0.9 })
      },
      say('Hole of the stiffener at', 'its own field', '0.9 mm', 'its drill', '1 mm'),
    ],
    [
      'a slit wider than the part',
      (d: Design) => {
        d.features.slits.push({ id: 'slit', name: 'Slit', endReliefDiameterMm: 1, widthMm: 130, tearStop: null })
      },
      say('Width of Slit', 'its own field', '130 mm', 'the outline', 'across'),
    ],
    [
      'a taper longer than any way within the part',
      (d: Design) => {
        for (const step of d.features.widthSteps) step.taperLengthMm = 900
      },
      say('Taper of', 'its own field', '900 mm', 'the outline', 'no way within it longer than'),
    ],
    [
      'single parts in an array of four',
      (d: Design) => {
        d.brief.panelForm = 'single-parts'
      },
      say('Parts in an array', 'the brief', 'single parts', 'the array', '4'),
    ],
    [
      'other cycles in the purpose than at any bend',
      (d: Design) => {
        d.brief.purpose = 'Moves for 7 million cycles.'
      },
      say('Required cycles', '', '', 'the purpose', '7'),
    ],
  ] as const)('%s', (_, change, [fact, ...said]) => {
    const found = differing(change).filter(([name]) => name?.startsWith(fact))
    expect(found.length).toBeGreaterThan(0)
    for (const pair of found) for (const [at, part] of said.entries()) expect(pair[at + 1]).toContain(part)
  })

  test.each([
    ['a hole', (d: Design) => Object.assign(first(d.features.holes), { transitionDistanceMm: 5000 }), 1],
    ['a component', (d: Design) => Object.assign(first(d.features.components), { transitionDistanceMm: 5000 }), 1],
    [
      'a pad',
      (d: Design) => Object.assign(first(d.features.pads), { nearestBend: { bendId: 'fold', distanceMm: 5000 } }),
      1,
    ],
    [
      'a hole of a part without an outline',
      (d: Design) => {
        first(d.features.holes).transitionDistanceMm = 5000
        d.features.outline = null
      },
      1,
    ],
    ['a hole within the part', (d: Design) => Object.assign(first(d.features.holes), { transitionDistanceMm: 40 }), 0],
    [
      'a hole of a part whose size is not known',
      (d: Design) => {
        first(d.features.holes).transitionDistanceMm = 5000
        first(d.construction.zones).lengthMm = null
        d.features.outline = null
      },
      0,
    ],
  ])('%s is held against the size of the part', (_, change, count) => {
    const found = differing(change).filter(([fact]) => fact?.startsWith('Distance of'))
    expect(found).toHaveLength(count)
    for (const [, , one, , other] of found)
      expect([one, other]).toEqual([
        '5000 mm',
        expect.stringMatching(/(mm over all|no way within it longer than [0-9.]+ mm)$/),
      ])
  })

  test('an outline, where it is drawn, is the size of the part', () => {
    const found = differing((d) => {
      // Half of the way round, by hand: 3 and 4.
      d.features.outline = {
        verticesMm: [
          [0, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ],
        rollingDirection: 'either',
      }
      for (const hole of d.features.holes) hole.transitionDistanceMm = 7.01
      for (const component of d.features.components) component.transitionDistanceMm = null
    }).filter(([fact]) => fact?.endsWith('from the transition'))
    expect(found.length).toBeGreaterThan(0)
    for (const pair of found)
      expect(pair.slice(2)).toEqual(['7.01 mm', 'the outline', 'no way within it longer than 7 mm'])
  })

  test('an arc shorter than the film is thick bends nothing; the same angle on a large drum does', () => {
    const bendBy = (angleDeg: number, insideRadiusMm: number) =>
      differing((d) => {
        for (const bend of d.bends) Object.assign(bend, { angleDeg, insideRadiusMm, radiusToleranceMm: 0 })
      }).filter(([fact]) => fact?.startsWith('Arc of'))
    expect(bendBy(0.01, 5).length).toBeGreaterThan(0)
    expect(bendBy(0.9, 900)).toEqual([])
    expect(bendBy(1, 0.1)).toEqual([])
  })

  const silent = (change: (design: Design) => void, fact: string) =>
    expect(differing(change).filter(([said]) => said?.startsWith(fact))).toEqual([])

  test('copper that just fits is no contradiction', () => {
    silent((d) => {
      for (const hole of d.features.holes) hole.landMm = (hole.drillMm ?? 0) + 10
    }, 'Land of')
    silent((d) => {
      for (const opening of d.features.coverlayOpenings) Object.assign(opening, { openingMm: 1, landMm: 6.9 })
    }, 'Land in')
    silent((d) => {
      for (const hole of d.features.holes) Object.assign(hole, { drillMm: 1, stiffenerHoleMm: 1 })
    }, 'Hole of the stiffener')
    // A stiffener that closes the hole.
    silent((d) => {
      for (const hole of d.features.holes) Object.assign(hole, { drillMm: 1, stiffenerHoleMm: 0 })
    }, 'Hole of the stiffener')
  })

  test('a strip of copper over the whole width and length of a part fits, space and all', () => {
    const area = (lengthMm: number) =>
      differing((d) => {
        d.features.outline = {
          verticesMm: [
            [0, 0],
            [100, 0],
            [100, 12],
            [0, 12],
          ],
          rollingDirection: 'either',
        }
        for (const conductor of d.features.conductors) Object.assign(conductor, { lengthMm, widthMm: 12, spaceMm: 0.2 })
      }).filter(([fact]) => fact?.startsWith('Area of'))
    expect(area(100)).toEqual([])
    // (100 · 12 + (224 · 0.2) / 2 + π 0.2² / 4) / 12.2, by hand: 100.2 mm.
    expect(area(100.19)).toEqual([])
    expect(area(100.21).length).toBeGreaterThan(0)
  })

  test('while one of two tools is open, the other may be the one that cuts', () => {
    const open = (d: Design) => {
      d.features.outlineCutBy = 'rout'
      d.brief.agreements.seriesTool = null
    }
    expect(differing(open)).toEqual([])
  })

  test('a size in the name of a file is that of the part, not of the panel', () => {
    const draw = (d: Design) => {
      d.features.outline = {
        verticesMm: [
          [0, 0],
          [160, 0],
          [160, 40],
          [0, 40],
        ],
        rollingDirection: 'either',
      }
    }
    expect(differing(draw, ['outline-160x40mm.gbr', 'panel-300x200mm.gbr', '40 x 160 mm.dxf'])).toEqual([])
    expect(differing(draw, ['outline-150x40mm.gbr'])).toEqual([
      ['Size of the part', 'the outline', '160 mm by 40 mm', 'the name of outline-150x40mm.gbr', '150 mm by 40 mm'],
    ])
  })

  test('the project that artwork names is the part of the brief', () => {
    const compare = (name: string) =>
      compareArtwork({
        design: readDemoDesign('skua-rev-b'),
        drawnPart: null,
        zones: [],
        artwork: makeFacts([makeFile('top.gbr', { project: { name, mark: null, revision: null } })]),
        onPlan: null,
        ground: null,
      }).pairs.filter(({ fact }) => fact === 'Part number')
    expect(compare('QI-2041 head')).toMatchObject([{ agrees: true }])
    expect(compare('QI_2040')).toMatchObject([
      { agrees: false, one: { where: 'top.gbr', says: 'project QI_2040' }, other: { where: 'the brief' } },
    ])
    expect(compare('scanning head')).toEqual([])
  })
})

/** The fact as it begins, then both places with what each says, in parts. */
function say(fact: string, ...said: readonly string[]): readonly [string, ...string[]] {
  return [fact, ...said]
}
