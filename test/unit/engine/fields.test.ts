import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import {
  BEND_FIELDS,
  BRIEF_FIELDS,
  bendSchema,
  briefSchema,
  conductorLayerSchema,
  FEATURE_FIELDS,
  type FieldNode,
  featuresSchema,
  findFieldWords,
  getChoiceWord,
  LAYER_FIELDS,
  LAYER_KIND_FACTS,
  LAYER_KINDS,
  listChoices,
  MATERIAL_FIELDS,
  materialSchema,
  nameLayerKind,
  VERDICT_WORDS,
  ZONE_FIELDS,
  zoneSchema,
} from '@/lib/engine'

/** Ends of names that carry a unit, as the project's habits have them. */
const UNIT_OF_ENDING = [
  ['OhmMm2PerM', 'ohm-mm2-per-m'],
  ['GPerCm3', 'g-per-cm3'],
  ['UgPerCm2', 'ug-per-cm2'],
  ['PpmPerC', 'ppm-per-degC'],
  ['PerMinute', 'cycles-per-minute'],
  ['PerYear', 'parts-per-year'],
  ['Hours', 'hours'],
  ['Months', 'months'],
  ['Cycles', 'cycles'],
  ['DegC', 'degC'],
  ['Volt', 'volt'],
  ['Mhz', 'mhz'],
  ['Ps', 'ps'],
  ['Megohm', 'megohm'],
  ['Newton', 'newton'],
  ['Deg', 'deg'],
  ['Gpa', 'gpa'],
  ['Mpa', 'mpa'],
  ['Pct', 'pct'],
  ['Ohm', 'ohm'],
  ['Amp', 'amp'],
  ['Um', 'um'],
  ['Mm', 'mm'],
  ['N', 'newton'],
] as const

type Words = Readonly<Record<string, FieldNode>>

const ENTITIES: readonly [string, Readonly<Record<string, unknown>>, Words][] = [
  ['brief', briefSchema.shape, BRIEF_FIELDS],
  ['bend', bendSchema.shape, BEND_FIELDS],
  ['layer', conductorLayerSchema.shape, LAYER_FIELDS],
  ['zone', zoneSchema.shape, ZONE_FIELDS],
  ['features', featuresSchema.shape, FEATURE_FIELDS],
  ['material', materialSchema.shape, MATERIAL_FIELDS],
]

function listLeaves(words: Words): [string, FieldNode][] {
  return Object.entries(words).flatMap(([key, node]): [string, FieldNode][] => [
    [key, node],
    ...listLeaves(node.fields ?? {}),
    ...listLeaves(node.entry ?? {}),
  ])
}

describe('the dictionary of fields', () => {
  it.each(ENTITIES)('has an entry for every field of the %s, and no other', (_name, shape, words) => {
    expect(Object.keys(words).toSorted()).toEqual(Object.keys(shape).toSorted())
  })

  it.each(ENTITIES)(
    'gives each field of the %s the unit that its name carries, and a label',
    (_name, _shape, words) => {
      for (const [key, { label, unit }] of listLeaves(words)) {
        expect(label, key).toMatch(/\S/)
        expect(unit, key).toBe(UNIT_OF_ENDING.find(([ending]) => key.endsWith(ending))?.[1])
      }
    },
  )

  it('names a field by its place, nested ones by every step, entries of lists passed over', () => {
    expect(findFieldWords(['bends', 'hinge', 'insideRadiusMm'])).toMatchObject({
      label: 'inside radius',
      node: { unit: 'mm' },
    })
    expect(findFieldWords(['construction', 'layers', '3', 'plating', 'toleranceUm'], 2)).toMatchObject({
      label: 'plating tolerance',
      node: { unit: 'um' },
    })
    expect(findFieldWords(['construction', 'zones', 'end', 'presence', 'l1', 'hatch', 'pitchMm'], 2).label).toBe(
      'hatch pitch',
    )
    expect(findFieldWords(['materials', 'own', 'modulusGpa', 'spread', 'low'], 3)).toMatchObject({
      label: 'modulus spread low',
      node: { unit: 'gpa' },
    })
    expect(findFieldWords(['features', 'holes', 'h1', 'nearestBend', 'distanceMm'], 2).label).toBe(
      'nearest bend distance',
    )
    expect(findFieldWords(['bends', 'hinge', 'colour'])).toEqual({ label: '', node: null })
  })

  it('has one word for plating of lands and pads alone, and shows what a later version wrote as it is', () => {
    expect(getChoiceWord(LAYER_FIELDS.plating.fields.process, 'button')).toBe('pads only')
    expect(getChoiceWord(ZONE_FIELDS.presence.entry.platedCopper, 'pads-only')).toBe('pads only')
    expect(getChoiceWord(BEND_FIELDS.use, 'rolled-up')).toBe('rolled-up')
    expect(getChoiceWord(BEND_FIELDS.use, null)).toBe('not stated')
    expect(listChoices(BEND_FIELDS.insideFace)).toEqual([
      { value: 'top', label: 'top face' },
      { value: 'bottom', label: 'bottom face' },
    ])
  })
})

it('every kind of layer has its facts, and pickers list them all', () => {
  const kinds = [...LAYER_KINDS].toSorted()
  expect(kinds).toEqual(Object.keys(LAYER_FIELDS.kind.choices).toSorted())
  for (const kind of LAYER_KINDS) {
    expect(nameLayerKind(kind)).toMatch(/^[A-Z]/)
    expect(LAYER_KIND_FACTS[kind].materials.length > 0).toBe(kind !== 'unbonded-gap')
  }
  expect(nameLayerKind('paper')).toBe('paper')
})

it('a verdict has one wording, whatever shows it', () => {
  const words = Object.values(VERDICT_WORDS).map(({ word }) => word)
  expect(new Set(words).size).toBe(words.length)
  const sources = ['app', 'lib'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && !file.includes('generated'))
      .map((file) => ({ file: `${folder}/${file}`, text: readFileSync(path.join(folder, file), 'utf8') })),
  )
  const other = sources.filter(({ file, text }) => {
    const isRecord = file.endsWith('results/verdict-words.ts')
    return !isRecord && /'(to be judged|for judgment|needs judgment|Needs judgment|thin margin|Thin margin)'/.test(text)
  })
  expect(sources.length).toBeGreaterThan(500)
  expect(other.map(({ file }) => file)).toEqual([])
})
