import { BEND_FIELDS, type Bend, type Design, getChoiceWord } from '@/lib/engine'
import { nameBends } from './bends'
import type { SheetColumn, SheetResults, SheetTable } from './model'
import type { SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

/** Ways of the leaves through one bend, from the top face down, in mm along the surface of each that keeps its length. */
interface LeafWays {
  readonly bend: Bend
  readonly mm: readonly number[]
}

/**
 * How long each unbonded leaf is in its bends, and by how much it is longer than the shortest: what leaves are cut to so that none buckles or pulls. The difference
 * of two leaves is the angle times the distance of their axes. Where a zone has several bends, their ways add up, leaf by leaf. Null without such leaves.
 */
export function makeLeafLengthTable(
  design: Design,
  results: SheetResults | null,
  words: SheetWords,
): SheetTable | null {
  const ways = design.bends.flatMap((bend): LeafWays[] => {
    const leaves = results?.bends.find(({ bendId }) => bendId === bend.id)?.leaves ?? []
    if (leaves.length < 2) return []
    const fromInside = leaves.toSorted((one, other) => one.leafIndex - other.leafIndex)
    const fromTop = bend.insideFace === 'top' ? fromInside : fromInside.toReversed()
    return [{ bend, mm: fromTop.map(({ developedLengthMm }) => developedLengthMm) }]
  })
  if (ways.length === 0) return null
  const names = nameBends(design)
  const mm = words.planUnit
  const rows = ways.flatMap(({ bend, mm: lengths }) =>
    makeRows(bend.id, names.get(bend.id) ?? '', lengths, describeStated(bend, words), words),
  )
  const zoneIds = [...new Set(ways.map(({ bend }) => bend.zoneId))]
  const sums = zoneIds.flatMap((zoneId) => {
    const own = ways.filter(({ bend }) => bend.zoneId === zoneId)
    const [first] = own
    if (first === undefined || own.length < 2) return []
    const lengths = first.mm.map((_, leaf) => own.reduce((sum, each) => sum + (each.mm[leaf] ?? 0), 0))
    const who = own.map(({ bend }) => names.get(bend.id) ?? '').join(' + ')
    return makeRows(`zone-${zoneId}`, `${words.zone(zoneId)}: ${who}`, lengths, '–', words)
  })
  return {
    kind: 'table',
    id: 'leaf-lengths',
    title: 'Unbonded leaves: lengths in their bends, at nominal thickness',
    keyColumnCount: 2,
    columns: [
      column('Bend', 24, 1),
      column('Leaf, from the top face', 20, 0, true),
      column(`Length in the bend, ${mm}`, 24, 0, true),
      column(`Longer than the shortest, ${mm}`, 26, 0, true),
      column(`Slack if all are cut as the longest, ${mm}`, 32, 0, true),
      column(`${BEND_FIELDS.leafLengths.label}, as stated`, 36, 1),
    ],
    rows: [...rows, ...sums],
  }
}

function makeRows(id: string, who: string, lengths: readonly number[], stated: string, words: SheetWords) {
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)]
  return lengths.map((lengthMm, leaf) => ({
    id: `${id}-${leaf + 1}`,
    cells: [
      who,
      String(leaf + 1),
      words.planComputed(lengthMm),
      words.planComputed(lengthMm - least),
      words.planComputed(most - lengthMm),
      stated,
    ],
  }))
}

function describeStated({ leafLengths, leafStepMm }: Bend, words: SheetWords): string {
  const how = getChoiceWord(BEND_FIELDS.leafLengths, leafLengths)
  return leafLengths === 'stepped' ? `${how}, outermost longer by ${words.plan(leafStepMm)} ${words.planUnit}` : how
}
