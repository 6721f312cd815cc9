import type { EvaluationContext } from '../context'
import { callByName, type Design, type MarkableList } from '../design'
import type { MissingInput } from '../results'

interface ListWords {
  /** Of one entry: `hole`. */
  readonly one: string
  readonly path: MissingInput['path']
  /** How many, for the words of a list that is filled. */
  readonly count: (design: Design) => number
  /** What in the rest of the design says that there is at least one, a clause; null where nothing does. */
  readonly findImplied: (context: EvaluationContext) => string | null
  /** Marks that leave room for none: without a bend nothing crosses one. */
  readonly ruledOutBy?: readonly MarkableList[]
}

const implyNothing = () => null

/** Every list that has to be filled or marked as empty, with what implies an entry. Common practice, no published source. */
export const LISTS: Readonly<Record<MarkableList, ListWords>> = {
  bends: {
    one: 'bend',
    path: ['bends'],
    count: ({ bends }) => bends.length,
    findImplied: implyNothing,
  },
  conductors: {
    one: 'conductor',
    path: ['features', 'conductors'],
    count: ({ features }) => features.conductors.length,
    findImplied: ({ design }) => {
      const layer = design.construction.layers.find(({ kind }) => kind === 'conductor')
      return layer === undefined ? null : `${callByName('layer', layer.name)} carries copper`
    },
  },
  crossings: {
    one: 'conductor across a bend',
    path: ['features', 'conductors'],
    count: ({ features }) => features.conductors.reduce((sum, { crossings }) => sum + crossings.length, 0),
    findImplied: findCopperInBend,
    ruledOutBy: ['bends', 'conductors'],
  },
  holes: {
    one: 'hole',
    path: ['features', 'holes'],
    count: ({ features }) => features.holes.length,
    findImplied: findPlatedLayers,
  },
  pads: {
    one: 'pad',
    path: ['features', 'pads'],
    count: ({ features }) => features.pads.length,
    findImplied: (context) => findSoldering(context) ?? findFinger(context),
  },
  outlineCorners: {
    one: 'inside corner',
    path: ['features', 'outlineCorners'],
    count: ({ features }) => features.outlineCorners.length,
    findImplied: implyNothing,
  },
  widthSteps: {
    one: 'width step',
    path: ['features', 'widthSteps'],
    count: ({ features }) => features.widthSteps.length,
    findImplied: implyNothing,
  },
  coverlayOpenings: {
    one: 'coverlay opening',
    path: ['features', 'coverlayOpenings'],
    count: ({ features }) => features.coverlayOpenings.length,
    findImplied: (context) =>
      context.design.construction.layers.some(({ kind }) => kind === 'coverlay-film') ? findFinger(context) : null,
  },
  slits: {
    one: 'slit or cut-out',
    path: ['features', 'slits'],
    count: ({ features }) => features.slits.length,
    findImplied: implyNothing,
  },
  registrations: {
    one: 'registration-critical pair',
    path: ['features', 'registrations'],
    count: ({ features }) => features.registrations.length,
    findImplied: implyNothing,
  },
  components: {
    one: 'component',
    path: ['features', 'components'],
    count: ({ features }) => features.components.length,
    findImplied: ({ design }) =>
      design.construction.layers.some(({ kind }) => kind === 'solder-mask') && design.brief.solderedAssembly === true
        ? 'the construction has a solder mask and the part is soldered'
        : null,
  },
}

/** Two plated conductor layers are joined by plated holes. A single plated layer may be plated for its contacts alone. */
function findPlatedLayers({ design }: EvaluationContext): string | null {
  const plated = design.construction.layers.filter(
    (layer) => layer.kind === 'conductor' && layer.plating.process !== 'none',
  )
  const [first, second] = plated
  return first === undefined || second === undefined ? null : `layers ${first.name} and ${second.name} are plated`
}

function findSoldering({ design }: EvaluationContext): string | null {
  return design.brief.solderedAssembly === true ? 'the part is soldered' : null
}

function findFinger({ design }: EvaluationContext): string | null {
  const finger = design.construction.zones.find(({ kind }) => kind === 'finger')
  return finger === undefined ? null : `${callByName('zone', finger.name)} is a connector end`
}

/** A layer of conductors with copper in the zone of a bend: the bend's axis runs across its zone, so something crosses it. */
function findCopperInBend({ design }: EvaluationContext): string | null {
  const { layers, zones } = design.construction
  for (const bend of design.bends) {
    for (const { layerId, coverageFraction } of zones.find(({ id }) => id === bend.zoneId)?.presence ?? []) {
      const layer = layers.find(({ id }) => id === layerId)
      if (layer?.kind !== 'conductor' || layer.role === 'plane') continue
      if ((coverageFraction ?? layer.coverageFraction) > 0)
        return `${callByName('layer', layer.name)} has copper in ${callByName('bend', bend.name)}`
    }
  }
  return null
}

/** What is known of a list: `filled`; `none`, said and not contradicted; or why nobody can tell, a clause. */
export type ListState = 'filled' | 'none' | { readonly because: string; readonly missing: MissingInput }

export function readListState(list: MarkableList, context: EvaluationContext): ListState {
  const { design } = context
  const { one, path, count, findImplied, ruledOutBy = [] } = LISTS[list]
  if (count(design) > 0) return 'filled'
  if (ruledOutBy.some((other) => readListState(other, context) === 'none')) return 'none'
  const isMarked = design.features.none.includes(list)
  const implied = findImplied(context)
  if (isMarked && implied === null) return 'none'
  return {
    because: isMarked
      ? `the list is marked as having no ${one}, but ${implied}`
      : `no ${one} is listed, and the list is not marked as empty${implied === null ? '' : `: ${implied}`}`,
    missing: { path, label: `a ${one}, or the mark that there is none` },
  }
}

/** Lists whose mark their own entries or the rest of the design contradict, in words: what is marked as having none, and what says otherwise. */
export function findContradictedMarks(context: EvaluationContext): readonly { list: MarkableList; because: string }[] {
  return context.design.features.none.flatMap((list) => {
    const { one, count } = LISTS[list]
    const listed = count(context.design)
    if (listed > 0) {
      return [
        {
          list,
          because: `the list is marked as having no ${one}, but ${listed} ${listed === 1 ? 'is' : 'are'} listed`,
        },
      ]
    }
    const state = readListState(list, context)
    return typeof state === 'string' ? [] : [{ list, because: state.because }]
  })
}
