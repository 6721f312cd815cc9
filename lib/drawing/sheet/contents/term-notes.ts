import { BRIEF_FIELDS, BRIEF_TERMS, type Design, type FieldNode } from '@/lib/engine'
import { listStatedFields, type SheetWords } from './words'

type TermRecord = keyof typeof BRIEF_TERMS

interface Group {
  readonly id: string
  readonly title: string
  readonly record: TermRecord
  readonly fields: readonly string[]
}

/** Terms that belong on the drawing, those of one note together. Who measures and what was looked at is no matter of the drawing. */
const GROUPS: readonly Group[] = [
  {
    id: 'tolerance-values',
    title: 'Tolerances',
    record: 'tolerances',
    fields: Object.keys(BRIEF_TERMS.tolerances.shape),
  },
  { id: 'array', title: 'Array', record: 'array', fields: Object.keys(BRIEF_TERMS.array.shape) },
  {
    id: 'drying',
    title: 'Drying before soldering',
    record: 'assembly',
    fields: ['drying', 'bakeDegC', 'bakeHours', 'toSolderHours', 'dryingSetBy'],
  },
  {
    id: 'soldering-heat',
    title: 'Soldering',
    record: 'assembly',
    fields: ['solderPeakDegC', 'coverlayRatingDegC', 'carrier'],
  },
  { id: 'packing-terms', title: 'Packing', record: 'assembly', fields: ['packedAs', 'isDryPacked', 'storageMonths'] },
  {
    id: 'test-terms',
    title: 'Electrical test',
    record: 'acceptance',
    fields: ['testVoltageVolt', 'continuityOhm', 'isolationMegohm'],
  },
  {
    id: 'finish-terms',
    title: 'Surface finish',
    record: 'finishTerms',
    fields: ['standard', 'topMetalUm', 'nickelUm', 'palladiumUm'],
  },
  { id: 'flame-class', title: 'Flame class', record: 'acceptance', fields: ['flameClass'] },
  { id: 'marking', title: 'Marking', record: 'marking', fields: Object.keys(BRIEF_TERMS.marking.shape) },
  { id: 'bow-and-twist', title: 'Flatness', record: 'acceptance', fields: ['bowAndTwistPct'] },
  { id: 'rework-grade', title: 'Lands', record: 'acceptance', fields: ['solderingsOnCount', 'solderingsOffCount'] },
  {
    id: 'first-article',
    title: 'First article',
    record: 'acceptance',
    fields: ['firstArticleCount', 'measuredFlatBy', 'measuredFoldedBy', 'sectionsBy'],
  },
  {
    id: 'change-control',
    title: 'Changes',
    record: 'agreements',
    fields: ['materialChange', 'processChange', 'siteChange', 'panelChange'],
  },
  {
    id: 'substitutes',
    title: 'Replacement of materials',
    record: 'agreements',
    fields: ['copperSubstitute', 'filmSubstitute', 'adhesiveSubstitute', 'boardSubstitute'],
  },
  {
    id: 'substances',
    title: 'Substances',
    record: 'agreements',
    fields: ['isRestricted', 'isDeclared', 'isHalogenFree'],
  },
  {
    id: 'precedence',
    title: 'Where documents differ',
    record: 'agreements',
    fields: ['orderOrDrawing', 'drawingOrArtwork', 'drawingOrStandard'],
  },
  {
    id: 'cleanliness',
    title: 'Cleanliness',
    record: 'exposure',
    fields: ['ionicLimitUgPerCm2', 'cleaning', 'dryingDegC', 'dryingHours'],
  },
]

/** A note for each group of terms of which something is stated; what is not stated is asked, not written. */
export function makeTermNotes({ brief }: Design, words: SheetWords): { id: string; text: string }[] {
  return GROUPS.flatMap(({ id, title, record, fields }) => {
    const nodes: Readonly<Record<string, FieldNode>> = BRIEF_FIELDS[record].fields
    const chosen = Object.fromEntries(fields.flatMap((field) => (nodes[field] ? [[field, nodes[field]]] : [])))
    const stated = listStatedFields(brief[record], chosen, words, title)
    return stated.length === 0 ? [] : [{ id, text: `${title}: ${stated.join('; ')}.` }]
  })
}
