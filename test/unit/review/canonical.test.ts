import canonicalize from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { canonicalJson, hashJson, sha256Hex } from '@/lib/review'

describe('canonical JSON, examples of RFC 8785 (2020)', () => {
  test('section 3.2.2: literals, numbers and strings', () => {
    const input = JSON.parse(
      String.raw`{
        "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
        "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
        "literals": [null, true, false]
      }`,
    )
    expect(canonicalJson(input)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    )
  })

  test('section 3.2.3: keys sorted by UTF-16 code units', () => {
    const input = JSON.parse(
      String.raw`{
        "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh",
        "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
        "\u00f6": "Latin Small Letter O With Diaeresis"
      }`,
    )
    expect(Object.values(JSON.parse(canonicalJson(input)))).toHaveLength(7)
    const order = [...canonicalJson(input).matchAll(/:"([^"]+)"/g)].map((match) => match[1])
    expect(order).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ])
  })

  // Appendix B gives the number as its IEEE 754 bits beside the text that it must become.
  test.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('appendix B: %s is written %s', (bits, text) => {
    const view = new DataView(new ArrayBuffer(8))
    view.setBigUint64(0, BigInt(`0x${bits}`))
    expect(canonicalJson(view.getFloat64(0))).toBe(text)
  })

  test.each([
    ['NaN', Number.NaN],
    ['infinity', Number.POSITIVE_INFINITY],
    ['undefined', undefined],
    ['a lone surrogate', { name: '\ud83d' }],
    ['a lone surrogate after a backslash', ['\\\ude00']],
  ])('%s is refused', (_name, value) => {
    expect(() => canonicalJson(value)).toThrow(TypeError)
  })

  test('text that only looks like an escaped surrogate is kept', () => {
    expect(canonicalJson('\\ud83d')).toBe(String.raw`"\\ud83d"`)
  })

  test('the order of keys never matters and the text reads back as the value', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: 'grapheme' }), fc.jsonValue()), (value) => {
        const turned = Object.fromEntries(Object.entries(value).reverse())
        expect(hashJson(turned)).toBe(hashJson(value))
        expect(canonicalJson(JSON.parse(canonicalJson(value)))).toBe(canonicalJson(value))
      }),
      { seed: 8785, numRuns: 200 },
    )
  })
})

// FIPS 180-4 (2015) defines the function; the examples are those published with it by NIST.
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('SHA-256 of "%s", by Node.js and as in a browser', (text, hash) => {
  const expectHash = () => {
    expect(sha256Hex(text)).toBe(hash)
    expect(sha256Hex(new TextEncoder().encode(text))).toBe(hash)
  }
  expectHash()
  const withoutNode = vi.spyOn(process, 'getBuiltinModule').mockReturnValue(undefined as never)
  expectHash()
  expect(withoutNode).toHaveBeenCalledTimes(2)
  withoutNode.mockRestore()
})

describe('canonical JSON of any value', () => {
  // The package `canonicalize` is written by an author of RFC 8785 (2020).
  const keys = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.integer({ min: -2, max: 4_294_967_299 }).map(String),
    fc.constantFrom('__proto__', 'constructor', 'toString', '01', '1e3', ''),
  )
  const { value } = fc.letrec((tie) => ({
    value: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom(null, true, false, undefined),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.string({ unit: 'grapheme' }),
      fc.date({ noInvalidDate: true }),
      fc.array(tie('value')),
      fc.dictionary(keys, tie('value')),
    ),
  }))

  test('is what the package writes', () => {
    fc.assert(
      fc.property(value, (given) => {
        const wanted = canonicalize(given)
        if (wanted === undefined) expect(() => canonicalJson(given)).toThrow(TypeError)
        else expect(canonicalJson(given)).toBe(wanted)
      }),
      { numRuns: 2000 },
    )
  })

  test('sorts whole numbers among keys as text: "10" comes before "9", and the platform would turn them round', () => {
    expect(canonicalJson({ a: { 9: 1, 10: 2, b: [{ 2: 0, 1: 0 }] } })).toBe('{"a":{"10":2,"9":1,"b":[{"1":0,"2":0}]}}')
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses %s, however deep', (number) => {
    expect(() => canonicalJson({ a: [{ b: number }] })).toThrow('no canonical JSON')
  })
})
