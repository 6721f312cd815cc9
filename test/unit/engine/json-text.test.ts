import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Design,
  MAX_BEND_LAYERS,
  makeBlankDesign,
  parseDesign,
  parseDesignBytes,
  parseDesignText,
} from '@/lib/engine'
import { decodeUtf8, findDuplicateKeys } from '@/lib/engine/design/json-text'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const TEXT = readFileSync('seed/designs/pipit-rev-a.json', 'utf8')
const bytesOf = (text: string) => new TextEncoder().encode(text)

describe('bytes of a design file', () => {
  test('UTF-8 is read, with or without a byte order mark', () => {
    expect(parseDesignBytes(bytesOf(TEXT))).toEqual(parseDesignText(TEXT))
    expect(parseDesignBytes(bytesOf(`\uFEFF${TEXT}`)).ok).toBe(true)
  })

  test.each([
    ['a lone continuation byte', [0x80]],
    ['Latin 1', [0xe9, 0x22]],
    ['a character that is cut short', [0xe2, 0x82]],
    ['an overlong form', [0xc0, 0xaf]],
    ['half of a surrogate pair', [0xed, 0xa0, 0x80]],
  ])('%s is refused with the position of the byte', (_, bad) => {
    const before = bytesOf('{"name":"ä€😀')
    const bytes = new Uint8Array([...before, ...bad])
    const parsed = parseDesignBytes(bytes)
    expect(parsed).toMatchObject({ ok: false, issues: [{ code: 'not-utf-8' }] })
    const position = Number(parsed.ok ? Number.NaN : /byte (\d+)/.exec(parsed.issues[0]?.message ?? '')?.[1])
    expect(position).toBe(before.length + 1)
  })

  test('any text comes back from its own bytes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(decodeUtf8(bytesOf(`x${text}`))).toBe(`x${text}`)
      }),
      { seed: 20_261_128, numRuns: 300 },
    )
  })
})

describe('keys that are given twice', () => {
  test('are refused with the path of each', () => {
    const twice = TEXT.replace('"angleDeg"', '"insideRadiusMm": 0.01, "angleDeg"')
    expect(parseDesignText(twice)).toEqual({
      ok: false,
      issues: [expect.objectContaining({ code: 'duplicate-key', path: ['bends', 0, 'insideRadiusMm'] })],
    })
  })

  test.each([
    ['{"a":1,"a":2}', [['a']]],
    [
      '{"a":{"b":1,"b":{}},"c":[0,{"d":1,"d":1}]}',
      [
        ['a', 'b'],
        ['c', 1, 'd'],
      ],
    ],
    ['{"a\\u0062":1,"ab":2}', [['ab']]],
    ['{"a":"{\\"a\\":1}","b":["a","a"],"c":{"a":1}}', []],
    ['[{"a":1},{"a":1}]', []],
    ['"a"', []],
  ])('%s', (text, paths) => {
    expect(findDuplicateKeys(text).map(({ path }) => path)).toEqual(paths)
  })

  test('no text that a program wrote from a value has any', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom(undefined, 2), (value, indent) => {
        expect(findDuplicateKeys(JSON.stringify(value, null, indent))).toEqual([])
      }),
      { seed: 20_261_128, numRuns: 500 },
    )
  })
})

describe('numbers and sizes', () => {
  test.each([
    ['1e-300', 'too-small'],
    ['5e-324', 'too-small'],
    ['1e400', 'invalid-type'],
  ])('an inside radius of %s is refused at its path', (number, code) => {
    const text = TEXT.replace(/"insideRadiusMm": [\d.]+/, `"insideRadiusMm": ${number}`).replace(
      /"radiusToleranceMm": [\d.]+/,
      '"radiusToleranceMm": 0',
    )
    const parsed = parseDesignText(text)
    expect(parsed).toMatchObject({ ok: false, issues: [{ code, path: ['bends', 0, 'insideRadiusMm'] }] })
  })

  test('a design whose evaluation would take minutes is refused, with the size and the bound', () => {
    const design = makeLarge(400, 500)
    expect(parseDesign(design)).toMatchObject({
      ok: false,
      issues: [{ code: 'too-large', path: ['bends'], message: expect.stringContaining(String(MAX_BEND_LAYERS)) }],
    })
    // A stack of 500 layers costs eight times what fifty bends of ten do.
    expect(parseDesign(makeLarge(2, 500)).ok).toBe(false)
    expect(parseDesign(makeLarge(1, 500)).ok).toBe(true)
    expect(parseDesign(makeLarge(400, 10)).ok).toBe(true)
  })
})

/** Bends through one zone of many films. */
function makeLarge(bendCount: number, layerCount: number): Design {
  const pipit = readDemoDesign('pipit-rev-a')
  const film = pipit.construction.layers.find(({ kind }) => kind === 'coverlay-film')
  const zone = pipit.construction.zones.find(({ kind }) => kind === 'flex')
  const [bend] = pipit.bends
  if (film === undefined || zone === undefined || bend === undefined) throw new Error('the demo design has changed')
  const layers = Array.from({ length: layerCount }, (_, at) => ({ ...film, id: `film-${at}`, name: `Film ${at}` }))
  const presence = layers.map(({ id }) => ({ layerId: id, coverageFraction: null, platedCopper: null, hatch: null }))
  return {
    ...makeBlankDesign('Large'),
    construction: { layers, zones: [{ ...zone, presence }] },
    bends: Array.from({ length: bendCount }, (_, at) => ({ ...bend, id: `bend-${at}`, name: `Bend ${at}` })),
  }
}
