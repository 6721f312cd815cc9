import { HAZARD_ABOVE_VOLT } from '../conductors'
import type { EvaluationContext } from '../context'
import { type Bend, FLAT_ZONE_KINDS, type Layer, listStiffeners, type MarkableList, type Zone } from '../design'
import type { MissingInput, ZoneResult } from '../results'
import { readListState } from './listed'

/** What a design must contain for an item to make sense, and what to say when it does not. */
export const NEEDS = {
  zones: { absent: 'the design has no zones yet', isMet: (c) => c.zones.length > 0 },
  plan: { absent: 'nobody has drawn the part in plan', isMet: (c) => c.design.plan !== null },
  bends: { list: 'bends', absent: 'the design has no bend', isMet: (c) => c.design.bends.length > 0 },
  'bend-lines': {
    absent: 'no axis of a bend is drawn in plan',
    isMet: (c) => (c.design.plan?.bendLines.length ?? 0) > 0,
  },
  'drawn-ends': {
    absent: 'no contact end is drawn in plan',
    isMet: (c) => (c.design.plan?.connectorEnds.length ?? 0) > 0,
  },
  'dynamic-bends': { list: 'bends', absent: 'every bend is stated to stand still in service', isMet: hasDynamicBend },
  'still-bends': {
    absent: 'a bend moves, and its rolling direction is asked by itself',
    isMet: (c) => !hasDynamicBend(c),
  },
  'several-dynamic-bends': {
    list: 'bends',
    absent: 'fewer than two dynamic bends act on the part',
    isMet: (c) => c.design.bends.filter(mayBeDynamic).length > 1,
  },
  'flex-zones': { absent: 'the design has no flex zone', isMet: (c) => hasZone(c, (zone) => zone.kind === 'flex') },
  'rigid-zones': {
    absent: 'the design has no rigid zone',
    isMet: (c) => hasZone(c, (zone) => zone.kind === 'rigid'),
  },
  'flat-zones': {
    absent: 'the design has no rigid, stiffened or finger zone',
    isMet: (c) => hasZone(c, (zone) => FLAT_ZONE_KINDS.has(zone.kind)),
  },
  'finger-zones': {
    absent: 'the design has no finger zone',
    isMet: (c) => hasZone(c, (zone) => zone.kind === 'finger'),
  },
  'stated-thickness': {
    absent: 'no zone has a stated thickness',
    isMet: (c) => hasZone(c, (zone) => zone.statedThicknessUm !== null),
  },
  transitions: {
    absent: 'the part has no rigid or stiffened zone beside a flex zone',
    isMet: (c) =>
      hasZone(c, (zone) => zone.kind === 'flex') &&
      hasZone(c, (zone) => zone.kind === 'rigid' || zone.kind === 'stiffened'),
  },
  // While nobody has said of which class the part is, the stricter of two items that share a question asks, and waits for the class.
  'class-three': {
    absent: 'the part is not of class 3',
    isMet: ({ design }) => design.brief.performanceClass === null || design.brief.performanceClass === 'class-3',
  },
  'below-class-three': {
    absent: 'the part is of class 3, or of no stated class, where an item of its own asks this',
    isMet: ({ design }) => design.brief.performanceClass !== null && design.brief.performanceClass !== 'class-3',
  },
  'several-bends': {
    list: 'bends',
    absent: 'the design has fewer than two bends',
    isMet: (c) => c.design.bends.length > 1,
  },
  'moving-edges': {
    list: 'bends',
    absent: 'no bend moves near the edge of a rigid or stiffened zone',
    isMet: (c) => c.design.bends.some(movesNearEdge),
  },
  'still-edges': {
    list: 'bends',
    absent: 'a bend moves near an edge, where an item of its own asks this',
    isMet: (c) => !c.design.bends.some(movesNearEdge) && typeof readListState('bends', c) === 'string',
  },
  'one-bend': {
    list: 'bends',
    absent: 'the design has several bends, of which an item of its own asks this',
    isMet: (c) => c.design.bends.length === 1,
  },
  edges: {
    absent: 'the part has no rigid or stiffened zone beside a flex zone, and no stiffener',
    isMet: (c) =>
      listStiffeners(c.design).length > 0 ||
      (hasZone(c, (zone) => zone.kind === 'flex') &&
        hasZone(c, (zone) => zone.kind === 'rigid' || zone.kind === 'stiffened')),
  },
  conductors: {
    list: 'conductors',
    absent: 'no conductor is listed',
    isMet: (c) => c.design.features.conductors.length > 0,
  },
  'hazardous-voltages': {
    list: 'conductors',
    absent: 'every listed conductor is stated to carry no hazardous voltage',
    isMet: (c) =>
      c.design.features.conductors.some(({ voltageVolt }) => voltageVolt === null || voltageVolt > HAZARD_ABOVE_VOLT),
  },
  crossings: {
    list: 'crossings',
    absent: 'no conductor is listed as crossing a bend',
    isMet: (c) => c.design.features.conductors.some((conductor) => conductor.crossings.length > 0),
  },
  holes: { list: 'holes', absent: 'no hole is listed', isMet: (c) => c.design.features.holes.length > 0 },
  'plated-holes': {
    list: 'holes',
    absent: 'no plated hole is listed',
    // A hole of which nobody has said whether it is plated counts: it is asked.
    isMet: (c) => c.design.features.holes.some((hole) => hole.plated !== false),
  },
  pads: { list: 'pads', absent: 'no pad is listed', isMet: (c) => c.design.features.pads.length > 0 },
  'unsupported-pads': {
    list: 'pads',
    absent: 'every listed pad has a plated hole',
    isMet: (c) => c.design.features.pads.some((pad) => pad.hasPlatedHole !== true),
  },
  corners: {
    list: 'outlineCorners',
    absent: 'no inside corner is listed',
    isMet: (c) => c.design.features.outlineCorners.length > 0,
  },
  'width-steps': {
    list: 'widthSteps',
    absent: 'no width step is listed',
    isMet: (c) => c.design.features.widthSteps.length > 0,
  },
  openings: {
    list: 'coverlayOpenings',
    absent: 'no coverlay opening is listed',
    isMet: (c) => c.design.features.coverlayOpenings.length > 0,
  },
  stiffeners: { absent: 'the part has no stiffener', isMet: (c) => listStiffeners(c.design).length > 0 },
  slits: { list: 'slits', absent: 'no slit or cut-out is listed', isMet: (c) => c.design.features.slits.length > 0 },
  components: {
    list: 'components',
    absent: 'no component is listed',
    isMet: (c) => c.design.features.components.length > 0,
  },
  coverlay: {
    absent: 'the construction has no coverlay',
    isMet: (c) => hasLayer(c, (layer) => layer.kind === 'coverlay-film'),
  },
  'conductor-layers': {
    absent: 'the construction has no conductor layer',
    isMet: (c) => hasLayer(c, (layer) => layer.kind === 'conductor'),
  },
  'several-conductor-layers': {
    absent: 'the construction has fewer than two conductor layers',
    isMet: (c) => c.design.construction.layers.filter((layer) => layer.kind === 'conductor').length > 1,
  },
  'rolled-annealed-foil': {
    absent: 'no layer is made of rolled-annealed foil',
    isMet: (c) =>
      hasLayer(
        c,
        (layer) => layer.kind === 'conductor' && c.findMaterial(layer.materialId)?.foil?.type === 'rolled-annealed',
      ),
  },
  layers: { absent: 'the construction has no layer yet', isMet: (c) => c.design.construction.layers.length > 0 },
  'electrical-test': {
    absent: 'no electrical test is asked for',
    isMet: (c) => c.design.brief.electricalTest !== false,
  },
  'flat-areas': {
    absent: 'the part has no rigid or stiffened zone',
    isMet: (c) => hasZone(c, ({ kind }) => kind === 'rigid' || kind === 'stiffened'),
  },
  'contact-ends': {
    absent: 'the construction has no finger zone, and no connector end is entered',
    isMet: (c) => hasZone(c, (zone) => zone.kind === 'finger') || c.design.features.connectors.length > 0,
  },
  'controlled-impedance': {
    list: 'conductors',
    absent: 'no listed conductor has a stated impedance',
    isMet: (c) => c.design.features.conductors.some(({ impedanceOhm }) => impedanceOhm !== null),
  },
  // A bend whose use nobody stated may stand: the item then asks for its use.
  'standing-bends': {
    list: 'bends',
    absent: 'every bend is stated to move in service',
    isMet: (c) => c.design.bends.some(({ use }) => use !== 'dynamic'),
  },
  shields: {
    absent: 'the construction has no shield film',
    isMet: (c) => hasLayer(c, ({ kind }) => kind === 'shield-film'),
  },
  prepreg: {
    absent: 'the construction has no prepreg',
    isMet: (c) => hasLayer(c, ({ kind }) => kind === 'no-flow-prepreg'),
  },
  // Nobody has said yet in which form parts come: the item then asks for it.
  arrays: {
    absent: 'the parts do not come in arrays of the team’s own',
    isMet: (c) => c.design.brief.panelForm === null || c.design.brief.panelForm === 'assembly-arrays',
  },
  registrations: {
    list: 'registrations',
    absent: 'no pair of features depends on registration',
    isMet: (c) => c.design.features.registrations.length > 0,
  },
  soldering: {
    absent: 'the part is not soldered',
    isMet: (c) => c.design.brief.solderedAssembly !== false,
  },
} as const satisfies Record<string, Need>

interface Need {
  readonly absent: string
  /** The list that it looks at: while that is empty and not marked as empty, nobody can say that the need is not met. */
  readonly list?: MarkableList
  readonly isMet: (context: EvaluationContext) => boolean
}

export type NeedKey = keyof typeof NEEDS

/** Why an item does not apply, or why nobody can tell whether it does; null where it applies. */
export type UnmetNeed =
  | { readonly kind: 'absent'; readonly because: string }
  | { readonly kind: 'unknown'; readonly because: string; readonly missing: MissingInput }

/**
 * The first need that the design certainly lacks; else the first of which nobody can tell. An empty list is no statement: only what somebody
 * marked as having none, or what the construction rules out, makes an item inapplicable.
 */
export function findUnmetNeed(needs: readonly NeedKey[], context: EvaluationContext): UnmetNeed | null {
  let unknown: UnmetNeed | null = null
  for (const key of needs) {
    const need: Need = NEEDS[key]
    if (need.isMet(context)) continue
    const found = readUnmet(need, context)
    if (found.kind === 'absent') return found
    unknown ??= found
  }
  return unknown
}

function readUnmet({ list, absent }: Need, context: EvaluationContext): UnmetNeed {
  const { layers, zones } = context.design.construction
  if (layers.length === 0 || zones.length === 0) {
    const what = layers.length === 0 ? 'layers' : 'zones'
    return {
      kind: 'unknown',
      because: `the construction has no ${what} yet`,
      missing: { path: ['construction', what], label: `${what} of the construction` },
    }
  }
  const state = list === undefined ? 'none' : readListState(list, context)
  // A filled list that holds none of the wanted kind says so by itself.
  return typeof state === 'string' ? { kind: 'absent', because: absent } : { kind: 'unknown', ...state }
}

function hasDynamicBend(context: EvaluationContext): boolean {
  return context.design.bends.some(mayBeDynamic)
}

/** A bend whose use nobody stated may move: what is asked of dynamic bends is then not computed, never inapplicable. */
function mayBeDynamic({ use }: Bend): boolean {
  return use === 'dynamic' || use === null
}

/** Film beside a moving bend moves with it: as far from its edge. Our choice, four times what straight film beside a bend is asked to be. */
const MOVES_WITHIN_MM = 10

/** While nobody knows how far the edge is, it may be near. */
export function movesNearEdge(bend: Bend): boolean {
  return mayBeDynamic(bend) && (bend.distanceToRigidMm === null || bend.distanceToRigidMm <= MOVES_WITHIN_MM)
}

function hasZone(context: EvaluationContext, matches: (zone: Zone) => boolean): boolean {
  return context.design.construction.zones.some(matches)
}

function hasLayer(context: EvaluationContext, matches: (layer: Layer) => boolean): boolean {
  return context.design.construction.layers.some(matches)
}

/** Does the layer have copper in its zone? A conductor layer whose coverage is 0 there is absent. */
export function hasCopper({ kind, coverageFraction }: ZoneResult['layers'][number]): boolean {
  return kind === 'conductor' && coverageFraction !== 0
}

/** Conductor layers that have copper in a zone, in the order of its layers. */
export function listConductorLayers(zone: ZoneResult | null): ZoneResult['layers'] {
  return zone === null ? [] : zone.layers.filter(hasCopper)
}
