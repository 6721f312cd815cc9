import { describe, expect, it, test } from 'vitest'
import { extentOfLayer, readDrill } from '@/lib/artwork'
import { readFixture, toBytes } from './fixture'

const errorsOf = ({ issues }: ReturnType<typeof readDrill>) => issues.filter(({ severity }) => severity === 'error')
const placesMm = ({ objects }: ReturnType<typeof readDrill>) =>
  Array.from({ length: objects.count }, (_, index) =>
    [...objects.numbers.subarray(6 * index, 6 * index + 2)].map((value) => value / 1e6),
  )

test('XNC: holes, slots, routed lines and arcs by centre and by radius, plating from attributes', () => {
  const reading = readDrill(readFixture('drill/xnc.drl'))
  expect(errorsOf(reading)).toEqual([])
  expect(reading.counts).toEqual({ hits: 2, slots: 1, routes: 3 })
  expect(reading.zeros).toBe('decimal')
  expect(reading.tools.map(({ plating, platingFrom }) => [plating, platingFrom])).toEqual([
    ['plated', 'the tool’s attribute'],
    ['plated', 'the file’s attribute'],
  ])
  // The half circle round (14, 2) reaches to x = 16, and the tool half a millimetre beyond.
  expect(extentOfLayer(reading.objects)?.map((value) => value / 1e6)).toEqual([
    -3.35,
    -0.5,
    22.5,
    expect.closeTo(4.5, 2),
  ])
})

test('leading zeros kept: digits count from the left; a repeat drills again; comments say what is plated', () => {
  const reading = readDrill(readFixture('drill/leading-kept.drl'))
  expect(placesMm(reading)).toEqual([
    [25.4, 50.8],
    [26.67, 50.8],
    ...[12.7, 15.24, 17.78, 20.32].map((x) => [x, -6.35]),
  ])
  expect(reading.tools.map(({ plating, hits }) => [plating, hits])).toEqual([
    ['not plated', 2],
    ['plated', 4],
  ])
  expect(reading.questions).toMatchObject([{ about: 'format', taken: '2.4 digits, usual for inch' }])
})

test('a pattern that is repeated is drilled at each place', () => {
  const reading = readDrill(readFixture('drill/pattern.drl'))
  expect(errorsOf(reading)).toEqual([])
  expect(placesMm(reading)).toEqual([
    [0, 0],
    [1, 0],
    [0, 2],
    [1, 2],
    [0, 4],
    [1, 4],
  ])
  expect(reading.counts.hits).toBe(6)
})

describe('what a file does not say', () => {
  it('is told by the look of its numbers, by where the circuit lies, or asked', () => {
    const alone = readDrill(readFixture('drill/not-stated.drl'))
    expect(alone.decisions).toContain('Trailing zeros are kept: numbers end with zeros and none begins with one.')
    expect(alone.questions.map(({ about }) => about)).toEqual(['format', 'plating'])
    const mm = (...values: number[]) => values.map((value) => value * 1e6) as [number, number, number, number]
    const placed = readDrill(readFixture('drill/not-stated.drl'), { circuitNm: mm(0, 0, 5, 8) })
    expect(placed.digits).toEqual([2, 5])
    expect(placed.questions.map(({ about }) => about)).toEqual(['plating'])
    expect(placed.decisions.join()).toContain('the only reading under which the holes lie in the circuit')
  })

  it('the unit is never guessed', () => {
    const text = 'M48\nT1C0.5\n%\nT1\nX1.0Y1.0\nM30\n'
    const silent = readDrill(toBytes(text))
    expect(silent.objects.count).toBe(0)
    expect(silent.questions[0]).toMatchObject({ about: 'unit', taken: null })
    expect(readDrill(toBytes(text), { unit: 'mm' }).objects.count).toBe(1)
  })

  it('nor which zeros are left out, where the numbers read either way', () => {
    const silent = readDrill(toBytes('M48\nMETRIC\nT1C0.5\n%\nT1\nX123Y456\nX1234Y45\nM30\n'))
    expect(silent.objects.count).toBe(0)
    expect(silent.questions[0]).toMatchObject({ about: 'zeros', taken: null })
  })

  it('names of files say what is plated when nothing else does', () => {
    const text = toBytes('M48\nMETRIC\nT1C0.5\n%\nT1\nX1.0Y1.0\nM30\n')
    const plating = (name: string) => readDrill(text, { name }).tools[0]?.plating
    expect([plating('a-NPTH.drl'), plating('a-PTH.drl'), plating('a-NonPlated.txt'), plating('depth.drl')]).toEqual([
      'not plated',
      'plated',
      'not plated',
      null,
    ])
  })
})

test('what is malformed or without end is told with its line, and the rest is read', () => {
  const text =
    'M48\nMETRIC,TZ,000.000\nT1C-1\nT2C0.5\n%\nX0Y0\nT9\nT2\nX1000Y1000\nX12;Y\nR999999999X0001\nG02X2000Y2000\nM97,TEXT\nX99999999999Y0\nX3000Y3000\n'
  const reading = readDrill(toBytes(text))
  expect(
    errorsOf(reading).map(({ line, reason }) => `${line} ${reason.replace(/more than \d+/, 'more than n')}`),
  ).toEqual([
    '3 “T1C-1”: no diameter of a tool',
    '6 a hole without a tool: left out',
    '7 tool T9 has no diameter',
    '10 “X12;Y” is not a command',
    '11 999999999 repeats reach beyond 2 m: left out',
    '12 an arc without a centre or radius that fits its ends: read as a straight cut',
    '13 holes in the form of letters (M97, M98) are not drawn',
    '14 “X99999999999Y0”: a coordinate beyond 2 m',
    '15 an arc without a centre or radius that fits its ends: read as a straight cut',
    '15 the file has no M30 at its end: it may have been cut off',
  ])
})

test('a thousand million repeats on the spot are refused', () => {
  const text = 'M48\nMETRIC,TZ,000.000\nT1C0.5\n%\nT1\nX1000Y1000\nR999999999X0\nM30\n'
  expect(errorsOf(readDrill(toBytes(text)))[0]?.reason).toContain('999999999 repeats would make more than')
})

test('lines that end with a return alone, and units that contradict each other', () => {
  const returns = readDrill(toBytes('M48\rMETRIC\rT1C0.5\r%\rT1\rX1.0Y1.0\rX2.0\rM30\r'))
  expect(errorsOf(returns)).toEqual([])
  expect(placesMm(returns)).toEqual([
    [1, 1],
    [2, 1],
  ])
  const contradicting = readDrill(toBytes('M48\nMETRIC\nT1C0.5\n%\nM72\nT1\nX1.0Y1.0\nM30\n'))
  expect(errorsOf(contradicting).map(({ line, reason }) => `${line} ${reason}`)).toEqual([
    '5 M72 after mm was stated: mm is kept',
  ])
})
