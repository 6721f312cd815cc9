import type { Design } from '../design'
import { findMaterial } from '../design'
import { BRIEF_PLACE, DESIGN_PLACE, type Place, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import {
  readAngles,
  readClasses,
  readCycles,
  readHottest,
  readLayerCounts,
  readLayerNumber,
  readRadii,
  readRevisions,
  readSizesMm,
  readThicknesses,
  readTypes,
} from './in-words'
import type { Statement, WrittenTwice } from './statement'

/** What the review knows of the papers beside the design. */
export interface Papers {
  /** Label of the revision under review. */
  readonly revisionLabel?: string
  /** Names of the artwork files, as they were uploaded. */
  readonly artworkFileNames?: readonly string[]
}

/** Facts that a field of the design states, and a name, a note or the name of a file as well. */
export function compareWords(design: Design, papers: Papers): WrittenTwice[] {
  return [
    ...compareBendNotes(design),
    ...compareLayerNames(design),
    ...comparePurpose(design),
    ...comparePurposeCycles(design),
    ...compareRevisions(design, papers),
    ...compareFileNames(design, papers),
    ...compareFileSizes(design, papers),
  ]
}

interface Reading<T> {
  readonly fact: string
  readonly field: { readonly value: T; readonly statement: Statement }
  readonly texts: readonly {
    readonly where: string
    readonly values: readonly T[]
    readonly path?: Statement['path']
  }[]
  readonly write: (value: T) => string
  readonly places: readonly Place[]
}

/** A text that names the field's value among others agrees: it may tell of what was before. */
function compareReading<T>({ fact, field, texts, write, places }: Reading<T>): WrittenTwice[] {
  return texts
    .filter(({ values }) => values.length > 0)
    .map(({ where, values, path }) => ({
      fact,
      one: field.statement,
      other: { where, says: [...new Set(values.map(write))].join(' and '), ...(path === undefined ? {} : { path }) },
      agrees: values.includes(field.value),
      readFrom: 'words' as const,
      places,
    }))
}

function compareBendNotes({ bends }: Design): WrittenTwice[] {
  return bends.flatMap((bend, at) => {
    const places: Place[] = [placeOf('bend', bend)]
    const texts = (read: (text: string) => number[]) => [
      { where: 'its note', values: read(bend.note), path: ['bends', at, 'note'] },
      { where: 'its name', values: read(bend.name), path: ['bends', at, 'name'] },
    ]
    const where = `the bend's fields`
    const radius = bend.insideRadiusMm
    const found = [
      ...compareReading({
        fact: `Inside radius of ${bend.name}`,
        field: {
          value: radius,
          statement: { where, says: asEntered(radius, 'mm'), path: ['bends', at, 'insideRadiusMm'] },
        },
        texts: texts(readRadii),
        write: (value) => asEntered(value, 'mm'),
        places,
      }),
      ...compareReading({
        fact: `Angle of ${bend.name}`,
        field: {
          value: bend.angleDeg,
          statement: { where, says: asEntered(bend.angleDeg, 'deg'), path: ['bends', at, 'angleDeg'] },
        },
        texts: texts(readAngles),
        write: (value) => asEntered(value, 'deg'),
        places,
      }),
    ]
    const cycles = bend.requiredCycles
    if (cycles === null) return found
    return [
      ...found,
      ...compareReading({
        fact: `Required cycles of ${bend.name}`,
        field: {
          value: cycles,
          statement: { where, says: asEntered(cycles, 'cycles'), path: ['bends', at, 'requiredCycles'] },
        },
        texts: texts(readCycles),
        write: (value) => asEntered(value, 'cycles'),
        places,
      }),
    ]
  })
}

/** A conductor layer called L3 is the third from the top; a thickness in a layer's name is its own, or its material's. */
function compareLayerNames(design: Design): WrittenTwice[] {
  const { layers } = design.construction
  const conductors = layers.filter(({ kind }) => kind === 'conductor')
  return layers.flatMap((layer, at): WrittenTwice[] => {
    const places: Place[] = [placeOf('layer', layer)]
    const named = layer.kind === 'conductor' ? readLayerNumber(layer.name) : null
    const order = conductors.indexOf(layer) + 1
    const path = ['construction', 'layers', at, 'name']
    const numbers =
      named === null
        ? []
        : compareReading({
            fact: `Number of ${layer.name}`,
            field: { value: order, statement: { where: 'the order of the conductor layers', says: `L${order}` } },
            texts: [{ where: 'its name', values: [named], path }],
            write: (value) => `L${value}`,
            places,
          })
    if (layer.kind === 'unbonded-gap') return numbers
    const materialName = findMaterial(design, layer.materialId)?.name ?? ''
    return [
      ...numbers,
      ...compareReading({
        fact: `Thickness of ${layer.name}`,
        field: {
          value: layer.thicknessUm,
          statement: {
            where: `the layer's fields`,
            says: asEntered(layer.thicknessUm, 'um'),
            path: ['construction', 'layers', at, 'thicknessUm'],
          },
        },
        texts: [
          { where: 'its name', values: readThicknesses(layer.name), path },
          { where: `its material's name`, values: readThicknesses(materialName) },
        ],
        write: (value) => asEntered(value, 'um'),
        places,
      }),
    ]
  })
}

function comparePurpose({ brief, construction, name }: Design): WrittenTwice[] {
  const texts = (read: (text: string) => number[]) => [
    { where: 'the purpose', values: read(brief.purpose), path: ['brief', 'purpose'] },
    { where: `the design's name`, values: read(name), path: ['name'] },
  ]
  const found: WrittenTwice[] = []
  const compare = (
    fact: string,
    value: number | null,
    path: Statement['path'],
    read: (text: string) => number[],
    write: (value: number) => string,
  ) => {
    if (value === null) return
    found.push(
      ...compareReading({
        fact,
        field: {
          value,
          statement: { where: 'the brief', says: write(value), ...(path === undefined ? {} : { path }) },
        },
        texts: texts(read),
        write,
        places: [BRIEF_PLACE],
      }),
    )
  }
  const digitOf = (choice: string | null) => (choice === null ? null : Number(choice.at(-1)))
  compare('Class', digitOf(brief.performanceClass), ['brief', 'performanceClass'], readClasses, (n) => `class ${n}`)
  compare('Type', digitOf(brief.circuitType), ['brief', 'circuitType'], readTypes, (n) => `type ${n}`)
  compare('Highest operating temperature', brief.operatingMaxDegC, ['brief', 'operatingMaxDegC'], readHottest, (n) =>
    asEntered(n, 'degC'),
  )
  const layerCount = construction.layers.filter(({ kind }) => kind === 'conductor').length
  if (layerCount > 0) {
    found.push(
      ...compareReading({
        fact: 'Number of conductor layers',
        field: {
          value: layerCount,
          statement: { where: 'the construction', says: String(layerCount), path: ['construction', 'layers'] },
        },
        texts: texts(readLayerCounts),
        write: String,
        places: [BRIEF_PLACE],
      }),
    )
  }
  return found
}

function compareRevisions({ name }: Design, { revisionLabel, artworkFileNames = [] }: Papers): WrittenTwice[] {
  if (revisionLabel === undefined) return []
  return compareReading({
    fact: 'Revision',
    field: {
      value: revisionLabel.trim().toUpperCase(),
      statement: { where: 'the review', says: `revision ${revisionLabel}` },
    },
    texts: [
      { where: `the design's name`, values: readRevisions(name), path: ['name'] },
      ...artworkFileNames.map((file) => ({ where: `the name of ${file}`, values: readRevisions(file) })),
    ],
    write: (label) => `revision ${label}`,
    places: [DESIGN_PLACE],
  })
}

/** The purpose may name the cycles of any bend that moves. */
function comparePurposeCycles({ brief, bends }: Design): WrittenTwice[] {
  const wanted = bends.flatMap((bend, at) => (bend.requiredCycles === null ? [] : [{ bend, at }]))
  const [first] = wanted
  const named = readCycles(brief.purpose)
  if (first === undefined || named.length === 0) return []
  const stated = wanted.map(({ bend }) => bend.requiredCycles ?? 0)
  const write = (values: readonly number[]) =>
    [...new Set(values)].map((value) => asEntered(value, 'cycles')).join(' and ')
  return [
    {
      fact: 'Required cycles',
      one: {
        where: wanted.map(({ bend }) => bend.name).join(', '),
        says: write(stated),
        path: ['bends', first.at, 'requiredCycles'],
      },
      other: { where: 'the purpose', says: write(named), path: ['brief', 'purpose'] },
      agrees: named.some((value) => stated.includes(value)),
      readFrom: 'words',
      places: [BRIEF_PLACE, ...wanted.map(({ bend }) => placeOf('bend', bend))],
    },
  ]
}

/** A file's name rounds to whole millimetres. */
const ROUNDED_MM = 0.5

/** A size in the name of a file is that of the part, but where the name speaks of the panel. */
function compareFileSizes({ features }: Design, { artworkFileNames = [] }: Papers): WrittenTwice[] {
  const corners = features.outline?.verticesMm ?? []
  if (corners.length < 3) return []
  const spanMm = (values: readonly number[]) => Math.max(...values) - Math.min(...values)
  const sides = [spanMm(corners.map(([x]) => x)), spanMm(corners.map(([, y]) => y))]
  const [longMm, shortMm] = [Math.max(...sides), Math.min(...sides)]
  const write = (long: number, short: number) => `${inSentence(long, 'mm')} by ${inSentence(short, 'mm')}`
  return artworkFileNames
    .filter((file) => !/panel|array|frame|stencil/iu.test(file))
    .flatMap((file) =>
      readSizesMm(file).map(
        ([long, short]): WrittenTwice => ({
          fact: 'Size of the part',
          one: { where: 'the outline', says: write(longMm, shortMm), path: ['features', 'outline'] },
          other: { where: `the name of ${file}`, says: write(long, short) },
          agrees: Math.abs(long - longMm) <= ROUNDED_MM && Math.abs(short - shortMm) <= ROUNDED_MM,
          readFrom: 'words',
          places: [DESIGN_PLACE],
        }),
      ),
    )
}

/** The letters that a part number begins with, and the digits behind them, however they are parted. */
const PART_NUMBER = /^([A-Z]{2,})[\s._-]*(\d{2,})/iu

/** Digits behind the letters of this part number, wherever a text has them; none where the part number is of another form. */
export function readPartNumbers(
  text: string,
  partNumber: string,
): { readonly wanted: string; readonly named: string[] } {
  const [, letters, digits] = PART_NUMBER.exec(partNumber.trim()) ?? []
  if (letters === undefined || digits === undefined) return { wanted: '', named: [] }
  const pattern = new RegExp(String.raw`(?<![a-z])${letters}[\s._-]*(\d{2,})`, 'giu')
  return { wanted: digits, named: [...text.matchAll(pattern)].map((match) => match[1] ?? '') }
}

function compareFileNames({ brief, construction }: Design, { artworkFileNames = [] }: Papers): WrittenTwice[] {
  const [, letters = ''] = PART_NUMBER.exec(brief.partNumber.trim()) ?? []
  const found = artworkFileNames.flatMap((file) => {
    const { wanted, named } = readPartNumbers(file, brief.partNumber)
    return compareReading({
      fact: 'Part number',
      field: {
        value: wanted,
        statement: { where: 'the brief', says: brief.partNumber, path: ['brief', 'partNumber'] },
      },
      texts: [{ where: `the name of ${file}`, values: named }],
      write: (value) => `${letters} ${value}`,
      places: [BRIEF_PLACE],
    })
  })
  const layerCount = construction.layers.filter(({ kind }) => kind === 'conductor').length
  for (const file of layerCount === 0 ? [] : artworkFileNames) {
    const numbers = [...file.matchAll(/(?<![a-z0-9])L(\d{1,2})(?![a-z0-9])/giu)].map((match) => Number(match[1]))
    if (numbers.length === 0) continue
    found.push({
      fact: 'Conductor layers',
      one: { where: 'the construction', says: `L1 to L${layerCount}`, path: ['construction', 'layers'] },
      other: { where: `the name of ${file}`, says: numbers.map((number) => `L${number}`).join(' and ') },
      agrees: numbers.every((number) => number >= 1 && number <= layerCount),
      readFrom: 'words',
      places: [DESIGN_PLACE],
    })
  }
  return found
}
