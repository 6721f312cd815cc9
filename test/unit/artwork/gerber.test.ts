import { describe, expect, it, test } from 'vitest'
import { attributeOf, extentOfLayer, readGerber, shapeOfLayer } from '@/lib/artwork'
import { readFixture, toBytes } from './fixture'

const errorsOf = (reading: ReturnType<typeof readGerber>) =>
  reading.issues.filter(({ severity }) => severity === 'error')
const inMm = (extent: readonly number[] | null) => extent?.map((value) => value / 1e6)
/** Half the area of a disc within y of its middle line. */
const strip = (y: number, radius: number) =>
  (y / 2) * Math.sqrt(radius ** 2 - y ** 2) + (radius ** 2 / 2) * Math.asin(y / radius)
const INCH2 = 25.4 ** 2
const R = 0.025

describe('areas of examples agree with closed forms', () => {
  const cases: readonly (readonly [file: string, areaMm2: number])[] = [
    ['macro-arithmetic', 8 - Math.PI * 0.25 ** 2 + 4 + 0.5],
    [
      'macro-moire-thermal',
      Math.PI * (2 ** 2 - 1) - 8 * (strip(0.25, 2) - strip(0.25, 1)) + 1 + Math.PI * 2.75 + (3 * Math.sqrt(3)) / 2,
    ],
    ['block-aperture', 5 * (4 + Math.PI / 4)],
    ['step-repeat', 12 * (4 - Math.PI / 4)],
    ['region-arcs', 100 + 21 * Math.PI],
    ['clear-polarity', 100 - 2 * Math.PI],
    ['quadrants', 2 * ((Math.PI / 2) * 5 * 0.5 + Math.PI * 0.25 ** 2)],
    ['inch', 25.4 * 1.016 + Math.PI * 0.508 ** 2],
    ['deprecated', INCH2 * (2 * 0.02 + 0.1 + Math.PI * R ** 2 - R ** 2 + (Math.PI * R ** 2) / 4)],
  ]
  test.each(cases)('%s', (file, areaMm2) => {
    const reading = readGerber(readFixture(`gerber/${file}.gbr`))
    expect(errorsOf(reading)).toEqual([])
    expect(Math.abs(shapeOfLayer(reading.objects).areaMm2 / areaMm2 - 1)).toBeLessThan(5e-4)
  })
})

test('a block that is mirrored, turned and enlarged lies where the standard puts it', () => {
  const { objects } = readGerber(readFixture('gerber/block-aperture.gbr'))
  expect(inMm(extentOfLayer(objects))).toEqual([-7, -44, 7, 3.5])
})

test('parameters of the whole image, trailing zeros left out and a repeated operation are followed and noted', () => {
  const { objects, issues, unit } = readGerber(readFixture('gerber/deprecated.gbr'))
  expect(unit).toBe('inch')
  expect(inMm(extentOfLayer(objects))?.map((value) => Number((value / 25.4).toFixed(6)))).toEqual([
    -2.1, 0.45, 0.1, 3.525,
  ])
  expect(issues.map(({ reason }) => reason)).toEqual(
    expect.arrayContaining([
      expect.stringContaining('trailing zeros'),
      expect.stringContaining('repeat the last one'),
      expect.stringContaining('MI'),
      expect.stringContaining('M0 at the end'),
    ]),
  )
})

describe('attributes', () => {
  it.each(['attributes', 'attributes-in-comments'])('of file, aperture and object come along: %s', (file) => {
    const { objects, fileAttributes } = readGerber(readFixture(`gerber/${file}.gbr`))
    expect(Object.fromEntries(fileAttributes)).toEqual({
      '.FileFunction': 'Copper,L2,Inr',
      '.FilePolarity': 'Positive',
      '.Part': 'Single',
    })
    expect(attributeOf(objects, 0, '.N')).toEqual(['SENSE+'])
    expect(attributeOf(objects, 0, '.P')).toEqual(['J1', '3'])
    expect(attributeOf(objects, 0, '.AperFunction')).toEqual(['ComponentPad'])
    expect(attributeOf(objects, 1, '.P')).toBeNull()
    expect(attributeOf(objects, 1, '.AperFunction')).toBeNull()
    expect(attributeOf(objects, 1, '.N')).toEqual(['SENSE+'])
    expect(attributeOf(objects, 2, '.N')).toBeNull()
    expect(attributeOf(objects, 2, '.C')).toEqual(['R7'])
    expect(attributeOf(objects, 2, '.CRot')).toEqual(['90'])
  })
})

describe('what is malformed is told with its line, and the rest is read', () => {
  it('each in its own way', () => {
    const reading = readGerber(readFixture('gerber/malformed.gbr'))
    expect(errorsOf(reading).map(({ line, reason }) => `${line} ${reason}`)).toEqual([
      '4 aperture D10 is of “Q”, which is neither a standard aperture nor a macro that was defined before',
      '5 aperture D11: a circle needs a diameter of 0 or more',
      '7 “XX12” is not a statement of the format',
      '8 aperture D13 is not defined',
      '11 “X12Q4D01” is not a command',
      '12 there is no G99: passed over',
      '13 “X9999999999Y0D03”: a coordinate beyond 2 m',
      '14 a region ends that did not begin',
      '15 “LSx”: not followed',
      '19 aperture D14: “1,1,$1+,0,0” in macro “BAD” is not a primitive: its numbers cannot be worked out',
      '20 two commands without a * between them',
      '22 the file has no M02 at its end: it may have been cut off',
    ])
    expect(reading.objects.count).toBe(4)
  })

  it('without a unit or format nothing is guessed: it asks', () => {
    const text = '%FSLAX46Y46*%\n%ADD10C,1*%\nD10*\nX0Y0D03*\nM02*'
    const silent = readGerber(toBytes(text))
    expect(silent.objects.count).toBe(0)
    expect(silent.questions).toMatchObject([{ about: 'unit', taken: null }])
    const answered = readGerber(toBytes(text), { unit: 'mm' })
    expect(answered.objects.count).toBe(1)
    expect(answered.questions).toEqual([])
    const bare = readGerber(toBytes('%MOMM*%\n%ADD10C,1*%\nD10*\nX10Y0D03*\nM02*'))
    expect(bare.questions).toMatchObject([{ about: 'format' }])
    expect(bare.objects.count).toBe(0)
  })

  it('nothing at all is no layer', () => {
    expect(errorsOf(readGerber(new Uint8Array()))).toHaveLength(1)
    expect(errorsOf(readGerber(toBytes('hello')))[0]?.reason).toContain('is not a command')
  })
})

describe('what would never end is refused with its reason', () => {
  const HEAD = '%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,1*%\nD10*\n'
  const reasons = (text: string) => errorsOf(readGerber(toBytes(text))).map(({ reason }) => reason)

  it('a thousand million repeats', () => {
    expect(reasons(`${HEAD}%SRX40000Y40000I1J1*%\nX0Y0D03*\n%SR*%\nM02*`)).toEqual([
      expect.stringContaining('40000 by 40000 repeats of 1 objects would make more than'),
    ])
  })

  it('blocks that double their content forty times', () => {
    let text = `${HEAD}%ABD11*%\nX0Y0D03*\n%AB*%\n`
    for (let code = 12; code < 52; code += 1) text += `%ABD${code}*%\nD${code - 1}*\nX0Y0D03*\nX0Y0D03*\n%AB*%\n`
    expect(reasons(`${text}D51*\nX0Y0D03*\nM02*`)[0]).toContain('would make more than')
  })

  it('blocks in blocks without end', () => {
    expect(reasons(HEAD + '%ABD20*%\n'.repeat(5000))[0]).toContain('blocks stand in blocks')
  })

  it('a macro of a million statements, and one whose brackets never close', () => {
    expect(reasons(`${HEAD}%AMBIG*\n${'1,1,1,0,0*\n'.repeat(1_000_000)}%\nM02*`)[0]).toContain(
      'more than 10000 statements',
    )
    expect(reasons(`${HEAD}%AMDEEP*\n1,1,${'('.repeat(100_000)},0,0*%\n%ADD11DEEP*%\nM02*`)[0]).toContain(
      'cannot be worked out',
    )
  })

  it('macros used so often that they would cost more than the file', () => {
    let text = `${HEAD}%AMWIDE*\n${'1,1,1,0,0*\n'.repeat(5000)}%\n`
    for (let code = 11; code < 1000; code += 1) text += `%ADD${code}WIDE*%\n`
    expect(reasons(`${text}M02*`)[0]).toContain('take more work')
  })
})

describe('arcs', () => {
  const draw = (body: string) => readGerber(toBytes(`%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0*%\nD10*\n${body}\nM02*`))

  it('keep their ends and move the centre where the radii differ, and say by how much', () => {
    const { objects, issues } = draw('G75*\nX1000000Y0D02*\nG03*\nX0Y1200000I-1000000J0D01*')
    expect([...objects.numbers.subarray(0, 4)]).toEqual([1_000_000, 0, 0, 1_200_000])
    const [x = 0, y = 0] = [objects.numbers[4], objects.numbers[5]]
    expect(Math.abs(Math.hypot(1e6 - x, y) - Math.hypot(x, 1.2e6 - y))).toBeLessThan(2)
    expect(issues.map(({ reason }) => reason)).toContain(
      'the radii at both ends of an arc differ by 200 µm: its centre was moved',
    )
  })

  it('bulge beyond their ends, and the extent says so', () => {
    expect(inMm(extentOfLayer(draw('G75*\nX1000000Y0D02*\nG03*\nX-1000000Y0I-1000000J0D01*').objects))).toEqual([
      -1, 0, 1, 1,
    ])
    expect(inMm(extentOfLayer(draw('G75*\nX1000000Y0D02*\nG02*\nX-1000000Y0I-1000000J0D01*').objects))).toEqual([
      -1, -1, 1, 0,
    ])
  })
})

test('how a layer is cut into tiles, and where it lies, changes nothing of its area', () => {
  for (const file of ['clear-polarity', 'block-aperture', 'quadrants']) {
    const { objects } = readGerber(readFixture(`gerber/${file}.gbr`))
    const whole = shapeOfLayer(objects, { mostPointsInTile: 1e6 })
    const cut = shapeOfLayer(objects, { mostPointsInTile: 40 })
    expect(cut.tiles.length).toBeGreaterThan(whole.tiles.length)
    expect(Math.abs(cut.areaMm2 / whole.areaMm2 - 1), file).toBeLessThan(1e-6)
  }
})

test('many objects on one spot cover what one does, and what takes itself away leaves nothing', () => {
  const area = (body: string) =>
    shapeOfLayer(readGerber(toBytes(`%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,1*%\nD10*\n${body}\nM02*`)).objects).areaMm2
  const disc = area('X0Y0D03*')
  expect(disc).toBeCloseTo(Math.PI / 4, 3)
  expect(area('X0Y0D03*\n'.repeat(4000))).toBeCloseTo(disc, 6)
  expect(area('X0Y0D03*\n%LPC*%\nX0Y0D03*')).toBe(0)
  expect(area('G75*\nG03*\nX100000Y0D02*\nX100000Y0I-100000J0D01*')).toBeCloseTo(Math.PI * 0.6 ** 2, 2)
})

test('a layer that is moved far away, turned or mirrored covers the same', () => {
  const text = new TextDecoder().decode(readFixture('gerber/region-arcs.gbr'))
  const area = (layer: string) => shapeOfLayer(readGerber(toBytes(layer)).objects).areaMm2
  for (const change of ['%OFA1900B-1900*%', '%MIA1B0*%', '%MIA1B1*%', '%IR90*%', '%IR270*%', '%ASAYBX*%'])
    expect(area(text.replace('%MOMM*%', `%MOMM*%\n${change}`)), change).toBeCloseTo(area(text), 6)
})
