import type { EvaluationContext } from '../context'
import type { Design, MarkableList } from '../design'
import type { MissingInput } from '../results'

interface ListWords {
  /** Of one entry: `hole`. */
  readonly one: string
  readonly path: MissingInput['path']
  readonly isFilled: (design: Design) => boolean
  /** What in the rest of the design says that there is at least one, a clause; null where nothing does. */
  readonly findImplied: (context: EvaluationContext) => string | null
}

const implyNothing = () => null

/** Every list that has to be filled or marked as empty, with what implies an entry. Common practice, no published source. */
export const LISTS: Readonly<Record<MarkableList, ListWords>> = {
  bends: {
    one: 'bend',
    path: ['bends'],
    isFilled: ({ bends }) => bends.length > 0,
    findImplied: implyNothing,
  },
  conductors: {
    one: 'conductor',
    path: ['features', 'conductors'],
    isFilled: ({ features }) => features.conductors.length > 0,
    findImplied: ({ design }) => {
      const layer = design.construction.layers.find(({ kind }) => kind === 'conductor')
      return layer === undefined ? null : `layer ${layer.name} carries copper`
    },
  },
  crossings: {
    one: 'conductor across a bend',
    path: ['features', 'conductors'],
    isFilled: ({ features }) => features.conductors.some(({ crossings }) => crossings.length > 0),
    findImplied: implyNothing,
  },
  holes: {
    one: 'hole',
    path: ['features', 'holes'],
    isFilled: ({ features }) => features.holes.length > 0,
    findImplied: findPlatedLayers,
  },
  pads: {
    one: 'pad',
    path: ['features', 'pads'],
    isFilled: ({ features }) => features.pads.length > 0,
    findImplied: (context) => findSoldering(context) ?? findFinger(context),
  },
  outlineCorners: {
    one: 'inside corner',
    path: ['features', 'outlineCorners'],
    isFilled: ({ features }) => features.outlineCorners.length > 0,
    findImplied: implyNothing,
  },
  widthSteps: {
    one: 'width step',
    path: ['features', 'widthSteps'],
    isFilled: ({ features }) => features.widthSteps.length > 0,
    findImplied: implyNothing,
  },
  coverlayOpenings: {
    one: 'coverlay opening',
    path: ['features', 'coverlayOpenings'],
    isFilled: ({ features }) => features.coverlayOpenings.length > 0,
    findImplied: (context) =>
      context.design.construction.layers.some(({ kind }) => kind === 'coverlay-film') ? findFinger(context) : null,
  },
  slits: {
    one: 'slit or cut-out',
    path: ['features', 'slits'],
    isFilled: ({ features }) => features.slits.length > 0,
    findImplied: implyNothing,
  },
  registrations: {
    one: 'registration-critical pair',
    path: ['features', 'registrations'],
    isFilled: ({ features }) => features.registrations.length > 0,
    findImplied: implyNothing,
  },
  components: {
    one: 'component',
    path: ['features', 'components'],
    isFilled: ({ features }) => features.components.length > 0,
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
  return finger === undefined ? null : `zone ${finger.name} is a connector end`
}

/** What is known of a list: `filled`; `none`, said and not contradicted; or why nobody can tell, a clause. */
export type ListState = 'filled' | 'none' | { readonly because: string; readonly missing: MissingInput }

export function readListState(list: MarkableList, context: EvaluationContext): ListState {
  const { design } = context
  const { one, path, isFilled, findImplied } = LISTS[list]
  if (isFilled(design)) return 'filled'
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

/** Lists whose mark the rest of the design contradicts, in words: what is marked as having none, and what says otherwise. */
export function findContradictedMarks(context: EvaluationContext): readonly { list: MarkableList; because: string }[] {
  return context.design.features.none.flatMap((list) => {
    const state = readListState(list, context)
    return typeof state === 'string' ? [] : [{ list, because: state.because }]
  })
}
