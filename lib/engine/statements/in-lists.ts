import { callByName, type Design } from '../design'
import { BRIEF_FIELDS, FEATURE_FIELDS, getChoiceWord } from '../design/fields'
import { BRIEF_PLACE, DESIGN_PLACE, placeOf } from '../results'
import { asEntered } from '../units'
import type { WrittenTwice } from './statement'

/** Facts that a list of features states, and another list, a mark or the brief as well. */
export function compareLists(design: Design): WrittenTwice[] {
  return [
    ...compareBeads(design),
    ...compareCutting(design),
    ...comparePadLayers(design),
    ...comparePadHoles(design),
    ...compareLands(design),
    ...compareMounting(design),
    ...compareArray(design),
  ]
}

/** Two readings of one drawing differ by as much. Our choice. */
const READING_MM = 0.05

/** A bead beside a bend is one of the beads along the rigid edges. */
function compareBeads({ bends, features: { rigidEdges } }: Design): WrittenTwice[] {
  const { bead, beadWidthMm } = rigidEdges
  if (bead === null) return []
  return bends.flatMap((bend, at): WrittenTwice[] => {
    if (bend.strainReliefKind !== 'bead' || bend.strainReliefAtTransition === false) return []
    const places = [placeOf('bend', bend)]
    const there: WrittenTwice = {
      fact: `Bead beside ${bend.name}`,
      one: {
        where: `the bend's fields`,
        says: 'a bead relieves the strain',
        path: ['bends', at, 'strainReliefKind'],
      },
      other: {
        where: 'the rigid edges',
        says: bead === 'called-out' ? 'beads are called out' : 'beads are ruled out',
        path: ['features', 'rigidEdges', 'bead'],
      },
      agrees: bead === 'called-out',
      readFrom: 'fields',
      places,
    }
    const widthMm = bend.strainReliefWidthMm
    if (bead !== 'called-out' || widthMm === null || beadWidthMm === null) return [there]
    return [
      there,
      {
        fact: `Width of the bead beside ${bend.name}`,
        one: {
          where: `the bend's fields`,
          says: asEntered(widthMm, 'mm'),
          path: ['bends', at, 'strainReliefWidthMm'],
        },
        other: {
          where: 'the rigid edges',
          says: asEntered(beadWidthMm, 'mm'),
          path: ['features', 'rigidEdges', 'beadWidthMm'],
        },
        agrees: Math.abs(widthMm - beadWidthMm) <= READING_MM,
        readFrom: 'fields',
        places,
      },
    ]
  })
}

/** What the outline is cut with, by the names that the list of tools has for it. */
const TOOLS = { laser: 'laser', die: 'hard-die', rout: 'router', 'steel-rule': 'steel-rule-die' } as const

/** The outline is cut with the tool of the prototypes or with that of the series: while one is open, it may be that one. */
function compareCutting({ brief: { agreements }, features: { outlineCutBy } }: Design): WrittenTwice[] {
  const { prototypeTool, seriesTool } = agreements
  if (outlineCutBy === null || prototypeTool === null || seriesTool === null) return []
  const words = getChoiceWord(BRIEF_FIELDS.agreements.fields.seriesTool, seriesTool)
  const first = getChoiceWord(BRIEF_FIELDS.agreements.fields.prototypeTool, prototypeTool)
  const tool = TOOLS[outlineCutBy]
  return [
    {
      fact: 'How the outline is cut',
      one: {
        where: 'the features',
        says: getChoiceWord(FEATURE_FIELDS.outlineCutBy, outlineCutBy),
        path: ['features', 'outlineCutBy'],
      },
      other: {
        where: 'what is agreed with the fabricator',
        says: prototypeTool === seriesTool ? words : `${first} for prototypes and ${words} in series`,
        path: ['brief', 'agreements', 'seriesTool'],
      },
      agrees: tool === prototypeTool || tool === seriesTool,
      readFrom: 'fields',
      places: [DESIGN_PLACE],
    },
  ]
}

/** A pad lies in a zone that its layer goes through. */
function comparePadLayers({ features, construction }: Design): WrittenTwice[] {
  return features.pads.flatMap((pad, at): WrittenTwice[] => {
    const zoneAt = construction.zones.findIndex(({ id }) => id === pad.zoneId)
    const zone = construction.zones[zoneAt]
    const layer = construction.layers.find(({ id }) => id === pad.layerId)
    if (zone === undefined || layer === undefined) return []
    const isThere = zone.presence.some(({ layerId }) => layerId === layer.id)
    return [
      {
        fact: `Layer of ${pad.name}`,
        one: { where: 'the pad', says: `on ${layer.name}`, path: ['features', 'pads', at, 'layerId'] },
        other: {
          where: callByName('zone', zone.name),
          says: isThere ? `${layer.name} goes through` : `no ${layer.name}`,
          path: ['construction', 'zones', zoneAt, 'presence'],
        },
        agrees: isThere,
        readFrom: 'fields',
        places: [placeOf('pad', pad), placeOf('zone', zone)],
      },
    ]
  })
}

/** The plated hole of a pad stands in the list of holes, once somebody filled or marked that. */
function comparePadHoles({ features }: Design): WrittenTwice[] {
  const { holes, none, pads } = features
  if (holes.length === 0 && !none.includes('holes')) return []
  const hasPlated = holes.some(({ plated }) => plated !== false)
  return pads.flatMap((pad, at): WrittenTwice[] => {
    if (pad.hasPlatedHole !== true) return []
    return [
      {
        fact: `Plated hole of ${pad.name}`,
        one: { where: 'the pad', says: 'has a plated hole', path: ['features', 'pads', at, 'hasPlatedHole'] },
        other: {
          where: 'the list of holes',
          says: hasPlated ? 'plated holes are listed' : holes.length === 0 ? 'marked as none' : 'none is plated',
          path: ['features', 'holes'],
        },
        agrees: hasPlated,
        readFrom: 'fields',
        places: [placeOf('pad', pad)],
      },
    ]
  })
}

/** The land of a hole is no wider than the zone that it lies in: figures in micrometres are taken for millimetres now and then. */
function compareLands({ features, construction }: Design): WrittenTwice[] {
  return features.holes.flatMap((hole, at): WrittenTwice[] => {
    const zoneAt = construction.zones.findIndex(({ id }) => id === hole.zoneId)
    const zone = construction.zones[zoneAt]
    const field = hole.landMm === null ? 'drillMm' : 'landMm'
    const holeMm = hole[field]
    if (zone === undefined || holeMm === null) return []
    const sides = (['widthMm', 'lengthMm'] as const).flatMap((side) => {
      const mm = zone[side]
      return mm === null ? [] : [{ side, mm }]
    })
    const [narrowest] = sides.toSorted((a, b) => a.mm - b.mm)
    if (narrowest === undefined) return []
    return [
      {
        fact: `Size of ${hole.name}`,
        one: { where: 'the hole', says: asEntered(holeMm, 'mm'), path: ['features', 'holes', at, field] },
        other: {
          where: callByName('zone', zone.name),
          says: `${asEntered(narrowest.mm, 'mm')} in all`,
          path: ['construction', 'zones', zoneAt, narrowest.side],
        },
        agrees: holeMm <= narrowest.mm,
        readFrom: 'fields',
        places: [placeOf('hole', hole), placeOf('zone', zone)],
      },
    ]
  })
}

/** Parts that are mounted on the surface are soldered there, and are components. */
function compareMounting({ brief, features }: Design): WrittenTwice[] {
  if (brief.acceptance.hasSurfaceMountParts !== true) return []
  const one = {
    where: 'what is asked of flatness',
    says: 'there are surface-mount parts',
    path: ['brief', 'acceptance', 'hasSurfaceMountParts'],
  }
  const compare = (other: WrittenTwice['other'], agrees: boolean): WrittenTwice => ({
    fact: 'Surface-mount parts',
    one,
    other,
    agrees,
    readFrom: 'fields',
    places: [BRIEF_PLACE],
  })
  const count = features.components.length
  const listed = count > 0 || features.none.includes('components')
  const path = ['features', 'components']
  return [
    ...(listed
      ? [
          compare(
            { where: 'the list of components', says: count === 0 ? 'marked as none' : `${count} listed`, path },
            count > 0,
          ),
        ]
      : []),
    ...(brief.solderedAssembly === null
      ? []
      : [
          compare(
            {
              where: 'the brief',
              says: brief.solderedAssembly ? 'soldered' : 'nothing is soldered',
              path: ['brief', 'solderedAssembly'],
            },
            brief.solderedAssembly,
          ),
        ]),
  ]
}

/** Parts that come one by one have no array of several. */
function compareArray({ brief: { panelForm, array } }: Design): WrittenTwice[] {
  if (panelForm === null || panelForm === 'fabricator-decides' || array.partCount === null) return []
  return [
    {
      fact: 'Parts in an array',
      one: {
        where: 'the brief',
        says: getChoiceWord(BRIEF_FIELDS.panelForm, panelForm),
        path: ['brief', 'panelForm'],
      },
      other: { where: 'the array', says: asEntered(array.partCount, 'count'), path: ['brief', 'array', 'partCount'] },
      agrees: panelForm === 'assembly-arrays' || array.partCount === 1,
      readFrom: 'fields',
      places: [BRIEF_PLACE],
    },
  ]
}
