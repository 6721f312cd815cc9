import type { ArtworkNetsFacts } from '@/lib/artwork'
import type { EvaluationContext } from '../../../context'
import type { ArtworkSpot, Outcome } from '../../../results'
import { countOf, inSentence } from '../../../units'
import { DESIGN_PLACE } from '../../checks'
import { cannotTell, decide, makeNoneAllowed, makeSourceLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

/** A netlist of which fewer places than this lie on copper is of another part, or lies elsewhere. Our choice. */
const LEAST_ON_COPPER = 0.9

export const netlist = defineItem({
  id: 'netlist',
  section: 'fabrication',
  severity: 'major',
  question: 'Is a netlist given, and does the artwork agree with it?',
  titles: { meets: 'The copper agrees with the netlist', fails: 'Netlist and copper differ, or no netlist is given' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['artwork', 'construction.layers'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: ({ facts }) => {
    if ((facts.artworkFileCount ?? 0) === 0) {
      return [notComputed(['facts', 'artworkFileCount'], 'artwork', [DESIGN_PLACE])]
    }
    const { artwork = null } = facts
    if (artwork === null) return [notComputed(['facts', 'artwork'], 'what the artwork files say', [DESIGN_PLACE])]
    const copper = artwork.files.filter(({ role }) => role.role === 'copper')
    if (copper.length === 0) {
      return [
        cannotTell(
          'the netlist',
          { because: 'no file of the artwork is known to be copper', decidedBy: 'add the copper layers' },
          [DESIGN_PLACE],
        ),
      ]
    }
    if (artwork.nets === null) return [judgeAbsence(artwork)]
    const isWhole = artwork.files.every(
      ({ role, kind, errorCount }) =>
        errorCount === 0 || (role.role !== 'copper' && kind !== 'drill' && kind !== 'netlist'),
    )
    const { nets } = artwork
    return [...nets.sources.flatMap((source) => judgeSource(source, nets, isWhole)), ...judgeLoose(nets)]
  },
})

type Artwork = NonNullable<EvaluationContext['facts']['artwork']>

/** One that could not be read may be the netlist. */
function judgeAbsence({ files, refused }: Artwork): Outcome {
  const unread = [...files.filter(({ kind }) => kind === 'other' || kind === 'netlist'), ...refused].map(
    ({ name }) => name,
  )
  if (unread.length > 0) {
    return cannotTell(
      'the netlist',
      {
        because: `no file that was read names a net, and nobody has read ${unread.slice(0, 3).join(', ')}${unread.length > 3 ? ` and ${unread.length - 3} more` : ''}`,
        decidedBy: 'add the netlist in the IPC-D-356 format, or copper layers that name their nets',
      },
      [DESIGN_PLACE],
    )
  }
  return decide({
    value: 0,
    limit: makeSourceLimit({
      key: 'netlistsCount',
      value: 1,
      unit: 'count',
      sense: 'at-least',
      sourceKey: 'commonPractice',
    }),
    places: [DESIGN_PLACE],
    what: 'netlists in the artwork',
    equation: 'files read as a netlist, or copper layers that name their nets',
  })
}

type Source = ArtworkNetsFacts['sources'][number]

function judgeSource(source: Source, nets: ArtworkNetsFacts, isWhole: boolean): Outcome[] {
  const name = source.fileName ?? 'the nets that the copper layers name'
  const limit = makeNoneAllowed('netFaultsCount', 'commonPractice')
  if (source.onCopperCount < LEAST_ON_COPPER * source.placeCount) {
    return [
      cannotTell(
        name,
        {
          because: `${source.placeCount - source.onCopperCount} of ${source.placeCount} places lie on no copper: it is of another part, or lies elsewhere`,
          decidedBy: 'export artwork and netlist from one state of the layout, with one origin',
        },
        [DESIGN_PLACE],
      ),
    ]
  }
  // Holes that may join layers make no short less, but an open may be none.
  const areJoinsKnown = nets.unknownHoleCount === 0 && nets.unorderedReason === null && isWhole
  const outcomes: Outcome[] = []
  const places = (list: Source['opens'][number]['places']) =>
    list.map(({ name: place, atMm }) => `${place} at (${inSentence(atMm[0])}, ${inSentence(atMm[1])}) mm`).join(' and ')
  for (const { nets: shorted, places: at } of source.shorts) {
    outcomes.push(
      decide({
        value: 1,
        limit,
        places: [DESIGN_PLACE],
        what: `short in ${name}`,
        artworkAt: spotOf(at),
        equation: 'connected copper, also through plated holes',
        summary: `Short: ${shorted.join(', ')} are connected by copper, though ${name} keeps them apart: ${places(at)}.`,
      }),
    )
  }
  for (const { net, parts, places: at } of source.opens) {
    const text = `${net} is in ${parts} pieces: ${places(at)}`
    outcomes.push(
      areJoinsKnown
        ? decide({
            value: 1,
            limit,
            places: [DESIGN_PLACE],
            artworkAt: spotOf(at),
            what: `open in ${name}`,
            equation: 'connected copper, also through plated holes',
            summary: `Open: by ${name}, ${text}.`,
          })
        : cannotTell(
            `an open in ${name}`,
            {
              because: `${text}, but ${whyUnknown(nets)}`,
              decidedBy: 'say which holes are plated and which layer is which, and export broken files again',
            },
            [DESIGN_PLACE],
          ),
    )
  }
  const off = source.placeCount - source.onCopperCount
  if (off > 0 && source.firstOffCopper !== null) {
    outcomes.push(
      cannotTell(
        name,
        {
          because: `${countOf(off, 'place')} of ${source.placeCount} ${off === 1 ? 'lies' : 'lie'} on no copper, first ${places([source.firstOffCopper])}`,
          decidedBy: 'look at these places, and export artwork and netlist together',
        },
        [DESIGN_PLACE],
      ),
    )
  }
  const { count, first } = source.unnamed
  if (count > 0) {
    outcomes.push(
      cannotTell(
        name,
        {
          because: `${count === 1 ? 'one conductor' : `${count} conductors`} of the artwork ${count === 1 ? 'has' : 'have'} no place in it, first ${places(first)}`,
          decidedBy: 'export the netlist whole, or name the nets of all conductors',
        },
        [DESIGN_PLACE],
        { artworkAt: spotOf(first) },
      ),
    )
  }
  if (outcomes.length > 0) return outcomes
  return [
    decide({
      value: 0,
      limit,
      places: [DESIGN_PLACE],
      what: `opens and shorts by ${name}`,
      equation: 'connected copper, also through plated holes',
      remark: `${countOf(source.netCount, 'net')} at ${countOf(source.placeCount, 'place')} compared.`,
    }),
  ]
}

/** A conductor that ends nowhere is no open of a net that has one place alone. Aerials and plating ties end so on purpose: a person says. */
function judgeLoose({ loose: { count, first } }: ArtworkNetsFacts): Outcome[] {
  const [one] = first
  if (count === 0 || one === undefined) return []
  return [
    cannotTell(
      'what the conductors join',
      {
        because: `${count === 1 ? 'one conductor joins' : `${count} conductors join`} fewer than two lands, holes or planes, ${count === 1 ? '' : 'first '}in ${one.name} at (${inSentence(one.atMm[0])}, ${inSentence(one.atMm[1])}) mm`,
        decidedBy: 'say where it leads, or join it by a hole or a land',
      },
      [DESIGN_PLACE],
      { artworkAt: spotOf(first) },
    ),
  ]
}

/** Of the first place, in the coordinates of the files. */
function spotOf([first]: Source['opens'][number]['places']): ArtworkSpot | undefined {
  return first === undefined ? undefined : { frame: 'files', xMm: first.atMm[0], yMm: first.atMm[1] }
}

function whyUnknown({ unknownHoleCount, unorderedReason }: ArtworkNetsFacts): string {
  if (unknownHoleCount > 0)
    return `nobody says whether ${countOf(unknownHoleCount, 'hole')} ${unknownHoleCount === 1 ? 'is' : 'are'} plated`
  return unorderedReason ?? 'a file was not read whole'
}
