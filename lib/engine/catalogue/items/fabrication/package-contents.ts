import type { ArtworkFacts, ArtworkFileFacts } from '@/lib/artwork'
import { filesFor, listNames, unknownFiles } from '../../../artwork-check'
import type { EvaluationContext } from '../../../context'
import { callByName, type Layer } from '../../../design'
import type { Outcome, Place } from '../../../results'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { cannotTell, decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'

type Role = NonNullable<ArtworkFileFacts['role']['role']>

/** Something that a shop needs before it can begin, and what of it is there. */
interface Need {
  /** In the middle of a sentence: `the outline`. */
  readonly what: string
  readonly isThere: boolean
  /** Why what is there may be too little, a clause; null where it is plain. */
  readonly doubt?: string | null
  readonly places: readonly Place[]
}

export const packageContents = defineItem({
  id: 'package-contents',
  section: 'fabrication',
  severity: 'blocking',
  question: 'Does the package hold each file and table that a shop needs to begin?',
  titles: { meets: 'Each file that a shop needs is there', fails: 'A file that a shop needs is missing' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'artwork',
    'plan',
    'bends.*.zoneId',
    'features.holes',
    'features.none',
    'brief.marking.method',
    'brief.marking.partNumber',
    'brief.marking.lotOrDate',
    'brief.marking.flameMark',
    'construction.layers',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const { facts } = context
    if ((facts.artworkFileCount ?? 0) === 0) {
      return [notComputed(['facts', 'artworkFileCount'], 'artwork', [DESIGN_PLACE])]
    }
    const { artwork = null } = facts
    if (artwork === null) return [notComputed(['facts', 'artwork'], 'what the artwork files say', [DESIGN_PLACE])]
    const holes = readListState('holes', context)
    const openList: Outcome[] =
      typeof holes === 'string'
        ? []
        : [
            {
              kind: 'not-computed',
              missing: [holes.missing],
              places: [DESIGN_PLACE],
              summary: `Not computed: ${holes.because}.`,
              rests: 'typed',
            },
          ]
    return [...judge(listNeeds(context, artwork, holes === 'filled'), artwork), ...openList]
  },
})

/** What the construction asks for. The stack is in the drawing sheet that goes with every package (`layer-table`), a netlist is an item of its own. */
function listNeeds(context: EvaluationContext, artwork: ArtworkFacts, hasHoles: boolean): Need[] {
  const { layers } = context.design.construction
  const ofKind = (kind: Layer['kind']) => layers.filter((layer) => layer.kind === kind)
  const isThere = (...roles: readonly Role[]) => filesFor(artwork, ...roles).length > 0
  return [
    { what: 'the outline', isThere: isThere('profile'), places: [DESIGN_PLACE] },
    ...listCopper(ofKind('conductor'), artwork),
    ...listCovers(ofKind('coverlay-film'), 'coverlay', filesFor(artwork, 'coverlay').length),
    ...listCovers(ofKind('solder-mask'), 'solder mask', filesFor(artwork, 'solder mask').length),
    ...ofKind('stiffener').map(
      (layer): Need => ({
        what: `where ${callByName('stiffener', layer.name)} lies`,
        isThere: isThere('stiffener') || isStiffenerDrawn(context, layer.id),
        places: [placeOf('layer', layer)],
      }),
    ),
    ...(hasHoles ? [{ what: 'the holes', isThere: isThere('holes'), places: [DESIGN_PLACE] }] : []),
    ...(hasInkMark(context) ? [{ what: 'the legend', isThere: isThere('legend'), places: [DESIGN_PLACE] }] : []),
    ...context.design.bends.map(
      (bend): Need => ({
        what: `where ${callByName('bend', bend.name)} lies`,
        isThere: context.design.plan?.bendLines.some(({ bendId }) => bendId === bend.id) === true,
        places: [placeOf('bend', bend)],
      }),
    ),
  ]
}

/** Where every file of copper says which layer it is, each layer has its own; else they are counted. */
function listCopper(layers: readonly Layer[], artwork: ArtworkFacts): Need[] {
  const files = filesFor(artwork, 'copper')
  const numbers = new Set(files.map(({ role }) => role.layerNumber))
  const isNumbered = files.length > 0 && !numbers.has(null)
  return layers.map((layer, at) => ({
    what: `the copper of ${layer.name}`,
    isThere: isNumbered ? numbers.has(at + 1) : at < files.length,
    doubt:
      !isNumbered && files.length > 0 && files.length < layers.length
        ? `${countFiles(files.length)} of copper for ${layers.length} conductor layers, and not each says which layer it is`
        : null,
    places: [placeOf('layer', layer)],
  }))
}

/** A cover without openings may come without a file of its own: fewer files than covers are a question, none is a gap. */
function listCovers(layers: readonly Layer[], what: 'coverlay' | 'solder mask', fileCount: number): Need[] {
  if (layers.length === 0) return []
  return [
    {
      what: `the openings of ${layers.map(({ name }) => name).join(', ')}`,
      isThere: fileCount >= layers.length,
      doubt:
        fileCount > 0 && fileCount < layers.length
          ? `${countFiles(fileCount)} of ${what} for ${layers.length} layers of it`
          : null,
      places: layers.map((layer) => placeOf('layer', layer)),
    },
  ]
}

const countFiles = (count: number): string => (count === 1 ? 'there is one file' : `there are ${count} files`)

function isStiffenerDrawn({ design }: EvaluationContext, layerId: string): boolean {
  const places = design.features.stiffeners.filter((each) => each.layerId === layerId).map(({ id }) => id)
  return design.plan?.stiffeners.some(({ stiffenerId }) => places.includes(stiffenerId)) === true
}

function hasInkMark({ design }: EvaluationContext): boolean {
  const { method, partNumber, lotOrDate, flameMark } = design.brief.marking
  return method === 'ink' && [partNumber, lotOrDate, flameMark].includes('on-part')
}

/** What is missing may lie in a file that nobody knows, or that holds a whole part: then nobody can tell. */
function judge(needs: readonly Need[], artwork: ArtworkFacts): Outcome[] {
  const missing = needs.filter(({ isThere }) => !isThere)
  const whole = artwork.files.filter(({ kind }) => kind === 'ipc2581')
  const unknown = [...unknownFiles(artwork), ...whole]
  const drawings = filesFor(artwork, 'drawing', 'mechanical')
  const outcomes = missing.map(({ what, doubt = null, places }): Outcome => {
    const isForDrawing = what.startsWith('where ')
    const mayHold = isForDrawing ? [...unknown, ...drawings] : unknown
    const because =
      doubt ?? (mayHold.length === 0 ? null : `no file is known to show it, and ${listNames(mayHold)} may`)
    if (because === null) return lack(what, places)
    return cannotTell(what, { because, decidedBy: 'add the file, or say which file shows it' }, places)
  })
  if (missing.length > 0) return outcomes
  const found = decide({
    value: 0,
    limit: makeNoneAllowed('packageFilesMissingCount', 'commonPractice'),
    places: [DESIGN_PLACE],
    what: 'files that a shop needs and that are missing',
    equation: 'roles of the files against the construction',
    isTyped: artwork.files.some(({ role }) => role.from === 'person'),
    remark: `There: ${needs.map(({ what }) => what).join('; ')}. What they show is compared elsewhere.`,
  })
  return [found]
}

function lack(what: string, places: readonly Place[]): Outcome {
  return {
    ...decide({
      value: 1,
      limit: makeNoneAllowed('packageFilesMissingCount', 'commonPractice'),
      places,
      what,
      equation: 'roles of the files against the construction',
    }),
    summary: `No file shows ${what}.`,
  }
}
