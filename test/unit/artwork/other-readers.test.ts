import { describe, expect, it, test } from 'vitest'
import { readIpc2581, readJob, readNetlist } from '@/lib/artwork'
import { readFixture, toBytes } from './fixture'

const told = (issues: readonly { line: number; reason: string }[]) =>
  issues.map(({ line, reason }) => `${line} ${reason}`)

describe('job file', () => {
  it('gives size, stack and files; a field of the wrong kind is told and left out', () => {
    const { name, sizeMm, copperLayerCount, thicknessMm, files, layers, issues } = readJob(
      readFixture('job/example.gbrjob'),
    )
    expect({ name, sizeMm, copperLayerCount, thicknessMm }).toEqual({
      name: 'Skua',
      sizeMm: [40.5, 12],
      copperLayerCount: 2,
      thicknessMm: null,
    })
    expect(files).toEqual([{ path: 'skua-top.gbr', fileFunction: 'Copper,L1,Top', filePolarity: 'Positive' }])
    expect(layers.map(({ thicknessMm }) => thicknessMm)).toEqual([0.018, 0.05, 0.018])
    expect(told(issues)).toEqual([
      '9 FilesAttributes has an entry that is not an object',
      '7 BoardThickness is “"0.2 mm"” and not a number of 0 or more: left out',
    ])
  })

  it('that is cut off, or nested without end, is told', () => {
    expect(readJob(toBytes('{"GeneralSpecs": {\n"LayerNumber": 2')).issues[0]?.reason).toContain('not JSON')
    expect(readJob(toBytes('{"GeneralSpecs":'.repeat(200_000))).issues).toHaveLength(1)
    expect(readJob(toBytes('[]')).issues[0]?.reason).toContain('no object')
  })
})

describe('netlist', () => {
  it('gives points, conductors and outline with whole names of nets', () => {
    const { points, conductors, outlines, nets, issues } = readNetlist(readFixture('netlist/example.ipc'))
    expect(issues).toEqual([])
    expect(nets).toEqual(['GND', 'SENSE_LINE_WITH_A_LONG_NAME'])
    expect(points[0]).toMatchObject({
      net: 'GND',
      part: 'J1',
      pin: '1',
      xNm: 1e6,
      yNm: 2e6,
      holeNm: 200_000,
      isPlated: true,
      access: 0,
      widthNm: 500_000,
      rotationDeg: 90,
    })
    expect(points[1]).toMatchObject({ part: 'R7', pin: '2', xNm: -3.5e6, access: 1, holeNm: null, isPlated: null })
    expect(points[2]).toMatchObject({ net: '', holeNm: 3_200_000, isPlated: false })
    expect(conductors.map(({ layer, widthNm, pointsNm }) => [layer, widthNm, pointsNm])).toEqual([
      [1, 100_000, [0, 0, 5e6, 0, 5e6, 2.5e6]],
      [1, 100_000, [7e6, 0, 8e6, 0]],
    ])
    expect(outlines[0]?.pointsNm).toEqual([0, 0, 40e6, 0, 40e6, 12e6, 0, 12e6, 0, 0])
  })

  it('without a unit reads no coordinate', () => {
    const { points, issues } = readNetlist(toBytes('317GND              J1    -1     D0200PA00X+001000Y+002000\n999\n'))
    expect(points).toEqual([])
    expect(told(issues)).toEqual([
      '1 the netlist states no unit (P UNITS) before its first record: coordinates cannot be read',
    ])
  })
})

describe('IPC-2581', () => {
  it('gives layers, stack groups, outline, zones and bends', () => {
    const { revision, layers, stackGroups, outline, zones, bendAreas, issues } = readIpc2581(
      readFixture('ipc2581/example.xml'),
    )
    expect(revision).toBe('C')
    expect(layers.map(({ name, layerFunction, line }) => [name, layerFunction, line])).toEqual([
      ['L1', 'SIGNAL', 7],
      ['PI', 'DIELCORE', 8],
      ['L2', 'SIGNAL', 9],
    ])
    expect(stackGroups[0]).toMatchObject({ name: 'flex', thicknessNm: 86_000 })
    expect(outline.map(({ isCutout, arcs }) => [isCutout, arcs.length])).toEqual([
      [false, 1],
      [true, 0],
    ])
    expect(zones).toMatchObject([{ name: 'tail', attributes: { stackupGroupRef: 'flex' } }])
    expect(zones[0]?.loops).toHaveLength(1)
    expect(bendAreas).toMatchObject([
      {
        name: 'hinge',
        attributes: { innerSide: 'TOP', innerRadius: '2.5', innerAngle: '90' },
        bendLinesNm: [[15e6, 0, 15e6, 12e6]],
      },
    ])
    expect(told(issues)).toEqual(['15 the stack names “L3”, which is not a layer of the file'])
  })

  it('refuses a document type declaration, and says where a file is broken', () => {
    const bomb = '<?xml version="1.0"?>\n<!DOCTYPE a [<!ENTITY b "c">]>\n<IPC-2581 revision="C"><Ecad/></IPC-2581>'
    const refused = readIpc2581(toBytes(bomb))
    expect(refused.layers).toEqual([])
    expect(refused.issues[0]?.reason).toContain('document type declaration')
    expect(
      readIpc2581(toBytes('<IPC-2581 revision="B"><CadHeader units="FURLONG"/><a></b>')).issues.length,
    ).toBeGreaterThan(1)
    expect(told(readIpc2581(toBytes('')).issues)).toContain('1 there is no IPC-2581 element')
    expect(readIpc2581(toBytes(`<IPC-2581 revision="C">${'<a>'.repeat(50_000)}`)).issues[0]?.reason).toContain('deep')
  })
})

test('rotation of a mil netlist in radians, and of a metric one in degrees', () => {
  const read = (unit: string) =>
    readNetlist(
      toBytes(`P  UNITS ${unit}\n327A                R1    -1           A01X+010000Y+000000X0100Y0100R090\n999`),
    ).points[0]
  expect(read('SI')).toMatchObject({ xNm: 10e6, rotationDeg: 90 })
  expect(read('CUST 0')).toMatchObject({ xNm: 25.4e6, rotationDeg: 90 })
})
