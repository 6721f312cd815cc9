import {
  type Cut,
  readClasses,
  readCuts,
  readLayerCounts,
  readNamedThicknesses,
  readNoteNumbers,
  readPartsPerPanel,
  readRadii,
  readSavingsPct,
  readTypes,
} from '@/lib/engine/statements'
import { asEntered } from '@/lib/engine/units'
import type { ReviewSnapshot } from '../snapshot'
import type { Remark } from './remarks'

/** Something that words may state, and what the program knows of it. */
export interface ComparedFact {
  readonly fact: string
  /** What a remark says, in words for each value, and whether it agrees; empty where it says nothing of this. */
  readonly read: (remark: Remark) => readonly { readonly says: string; readonly agrees: boolean }[]
  /** What stands against it. */
  readonly against: string
}

/** Facts of which the program knows something; what is not computed or not stated is held against nothing. */
export function listFacts(snapshot: ReviewSnapshot): ComparedFact[] {
  const { bends, construction, brief, features } = snapshot.design
  const radii = bends.map(({ insideRadiusMm }) => insideRadiusMm)
  const thicknesses = construction.layers.flatMap((layer) => ('thicknessUm' in layer ? [layer.thicknessUm] : []))
  const layerCount = construction.layers.filter(({ kind }) => kind === 'conductor').length
  const digitOf = (choice: string | null) => (choice === null ? null : Number(choice.at(-1)))
  return [
    ...listComputed(snapshot),
    numbers('Inside radius of a bend', radii, readRadii, (mm) => asEntered(mm, 'mm'), 'the bends'),
    numbers('Thickness of a layer', thicknesses, readNamedThicknesses, (um) => asEntered(um, 'um'), 'the layers'),
    numbers('Number of conductor layers', [layerCount], readLayerCounts, String, 'the construction'),
    numbers('Class', [digitOf(brief.performanceClass)], readClasses, (n) => `class ${n}`, 'the brief'),
    numbers('Type', [digitOf(brief.circuitType)], readTypes, (n) => `type ${n}`, 'the brief'),
    cuts('How the outline is cut', features.outlineCutBy === null ? [] : [features.outlineCutBy], /\boutline\b/iu),
    cuts(
      'How openings of the coverlay are made',
      features.coverlayOpenings.flatMap(({ method }) => method ?? []),
      /\bopenings?\b/iu,
    ),
    NOTES,
  ].filter((fact) => fact !== null)
}

const NOTES: ComparedFact = {
  fact: 'Note of the drawing',
  read: ({ text }) => readNoteNumbers(text).map((number) => ({ says: `note ${number}`, agrees: false })),
  against: 'notes are renumbered whenever the design says more or less: name the note instead',
}

/** Nothing to hold it against where no value is known. */
function numbers(
  fact: string,
  known: readonly (number | null)[],
  read: (text: string) => number[],
  write: (value: number) => string,
  where: string,
): ComparedFact | null {
  const values = [...new Set(known.filter((value) => value !== null))]
  if (values.length === 0 || values.includes(0)) return null
  return {
    fact,
    read: ({ text }) => {
      const said = [...new Set(read(text))]
      // A text that names a value that is there, among others, tells of what was before or instead.
      return said.some((value) => values.includes(value))
        ? []
        : said.map((value) => ({ says: write(value), agrees: false }))
    },
    against: `${values.map(write).join(', ')} in ${where}`,
  }
}

/** What a fabricator calls punching, the drawing calls a die. */
const SAME_CUTS: Partial<Record<Cut, readonly string[]>> = {
  punch: ['punch', 'die', 'steel-rule'],
  die: ['die', 'punch'],
}

function cuts(fact: string, known: readonly string[], thing: RegExp): ComparedFact | null {
  if (known.length === 0) return null
  return {
    fact,
    read: ({ text }) => {
      const said = readCuts(text, thing)
      const agrees = said.some((cut) => (SAME_CUTS[cut] ?? [cut]).some((word) => known.includes(word)))
      return agrees ? [] : said.map((says) => ({ says, agrees: false }))
    },
    against: `${[...new Set(known)].join(', ')} in the features`,
  }
}

/** What the recorded results came to. */
function listComputed({ evaluation }: ReviewSnapshot): ComparedFact[] {
  const outcomes = (itemId: string) =>
    evaluation?.results.items
      .find((item) => item.itemId === itemId)
      ?.outcomes.filter(({ kind }) => kind === 'decided') ?? []
  const facts: ComparedFact[] = []
  // The sentence of the result is where the count stands in it.
  const counts = outcomes('parts-per-panel').flatMap(({ summary }) => readPartsPerPanel(summary))
  if (counts.length > 0) {
    facts.push({
      fact: 'Parts per panel',
      read: ({ text }) =>
        readPartsPerPanel(text).map((count) => ({ says: `${count}`, agrees: counts.includes(count) })),
      against: `${counts.join(', ')} in the results`,
    })
  }
  const [ratio] = outcomes('construction-cost').flatMap((outcome) =>
    outcome.kind === 'decided' ? [outcome.value.value] : [],
  )
  if (ratio !== undefined && ratio > 0) {
    const savingPct = Math.max(0, (1 - 1 / ratio) * 100)
    facts.push({
      fact: 'Cost against the cheapest alternative',
      read: ({ text, itemId }) =>
        itemId !== 'construction-cost'
          ? []
          : readSavingsPct(text).map((pct) => ({ says: `${pct} % less`, agrees: Math.abs(pct - savingPct) <= 1 })),
      against:
        savingPct === 0
          ? 'no alternative costs less, by the results'
          : `${Math.round(savingPct)} % less, by the results`,
    })
  }
  return facts
}
