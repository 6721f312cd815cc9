import { type Design, parseDesign, type ReviewFacts } from '@/lib/engine'
import { evaluateItem, getItem, type ItemVerdict } from '@/lib/engine/catalogue'
import { makeCopper, makeFacts, makeFile } from '../artwork/fact-factory'
import { makeExampleDesign } from '../catalogue/example-design'
import { buildFigures } from './figures'

/** What a review knows where everything outside of the design went well. */
export const FACTS: ReviewFacts = {
  evaluatedOn: '2026-11-23',
  fabricatorsInvited: 1,
  openEngineeringQueries: 0,
  openMustChangeThreads: 0,
  daysSinceFabricatorLooked: 4,
  changesSinceFabricatorLooked: 0,
  buildableDeclarationStands: true,
  artworkFileCount: 9,
  artwork: null,
  capability: { comfortable: 9, stretch: 0, outside: 0, notStated: 0 },
  stock: { onShelf: 5, toOrder: 0, unknown: 0 },
  orderSlackDays: 12,
  partsPerPanel: 12,
  panelUtilisationFraction: 0.7,
  costOverCheapestRatio: 1,
  sheetLacks: { layers: [], bends: [], coverlay: [], stiffeners: [] },
}

/**
 * A starting construction filled in as far as a team fills it in: the example's brief, and one entry of each list of features, put where this
 * construction has a place for it.
 */
export function completeStart(design: Design): Design {
  const example = makeExampleDesign()
  const { zones, layers } = design.construction
  const flex = zones.find(({ kind }) => kind === 'flex')
  const board = zones.find(({ kind }) => kind === 'rigid') ?? zones[0]
  const finger = zones.find(({ kind }) => kind === 'finger')
  const copperIn = (zone: typeof flex) =>
    layers.find(({ id, kind }) => kind === 'conductor' && zone?.presence.some(({ layerId }) => layerId === id))?.id
  const flexLayerId = copperIn(flex) ?? 'none'
  const bendId = design.bends[0]?.id ?? 'none'
  const put = <T>(value: T): T =>
    JSON.parse(
      JSON.stringify(value)
        .replaceAll('"bendId":"hinge"', `"bendId":"${bendId}"`)
        .replaceAll('"layerId":"l2"', `"layerId":"${flexLayerId}"`)
        .replaceAll('"zoneId":"arm"', `"zoneId":"${flex?.id}"`)
        .replaceAll('"zoneId":"board"', `"zoneId":"${board?.id}"`)
        .replaceAll('"zoneId":"fingers"', `"zoneId":"${finger?.id ?? board?.id}"`),
    ) as T
  const { features } = design
  const filled = Object.fromEntries(
    Object.entries(example.features).map(([key, value]) => {
      const own = (features as Record<string, unknown>)[key]
      return [key, Array.isArray(own) && own.length > 0 ? own : put(value)]
    }),
  ) as Design['features']
  const conductors = layers.filter(({ kind }) => kind === 'conductor')
  const hasIn = (id: string | null, layerId: string | null) =>
    zones.find((zone) => zone.id === id)?.presence.some((presence) => presence.layerId === layerId)
  return {
    ...design,
    // How long leaves are decides more than their own items: strain, life and the rules for the radius wait for it.
    bends: design.bends.map((bend) => ({
      ...bend,
      leafLengths: bend.leafLengths ?? (bend.use === 'dynamic' ? null : 'equal-free-to-buckle'),
    })),
    brief: { ...example.brief, ...{ circuitType: design.brief.circuitType ?? example.brief.circuitType } },
    features: {
      ...filled,
      // Those of the example cross the bends of the example.
      conductors:
        features.conductors.length > 0
          ? features.conductors
          : filled.conductors.map((conductor) => ({
              ...conductor,
              crossings: design.bends
                .filter(({ zoneId }) => hasIn(zoneId, conductor.layerId))
                .flatMap(({ id }) => conductor.crossings.slice(0, 1).map((crossing) => ({ ...crossing, bendId: id }))),
            })),
      holes: filled.holes.map((hole) => ({
        ...hole,
        fromLayerId: conductors[0]?.id ?? null,
        toLayerId: conductors.at(-1)?.id ?? null,
      })),
      stiffeners: features.stiffeners,
      connectors: filled.connectors.map((connector) => {
        const widthMm = zones.find(({ id }) => id === connector.zoneId)?.widthMm ?? null
        return widthMm === null
          ? connector
          : {
              ...connector,
              endWidth: { ...connector.endWidth, partMm: widthMm, minMm: widthMm - 0.1, maxMm: widthMm + 0.1 },
            }
      }),
    },
    construction: {
      ...design.construction,
      zones: zones.map((zone) => ({
        ...zone,
        lengthMm: zone.lengthMm ?? 60,
        widthMm: zone.widthMm ?? 12,
        throughExpansionPpmPerC: 60,
        throughModulusGpa: 8,
        glassTransitionDegC: 140,
      })),
    },
  }
}

/** A file for each thing that the construction asks for. Their contents are compared by other tests: here the files are only there. */
function makeArtwork({ construction: { layers } }: Design): ReviewFacts['artwork'] {
  const count = (kind: Design['construction']['layers'][number]['kind']) =>
    layers.filter((layer) => layer.kind === kind).length
  const files = (role: NonNullable<Parameters<typeof makeFile>[1]>['role'], number: number) =>
    Array.from({ length: number }, (_, at) =>
      makeFile(`${role?.role} ${at + 1}.gbr`, role === undefined ? {} : { role }),
    )
  return makeFacts([
    ...makeCopper(count('conductor')),
    ...files({ role: 'profile' }, 1),
    ...files({ role: 'coverlay' }, count('coverlay-film')),
    ...files({ role: 'solder mask' }, count('solder-mask')),
    ...files({ role: 'stiffener' }, count('stiffener')),
    ...files({ role: 'holes' }, 1),
    ...files({ role: 'legend' }, 1),
  ])
}

export function judge(itemId: string, design: Design): ItemVerdict | 'refused' {
  const parsed = parseDesign(design)
  if (!parsed.ok) return 'refused'
  const facts = itemId === 'package-contents' ? { ...FACTS, artwork: makeArtwork(parsed.value) } : FACTS
  return evaluateItem(getItem(itemId), buildFigures(parsed.value, facts)).verdict
}
