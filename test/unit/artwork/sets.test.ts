import { zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { readSet } from '@/lib/artwork'
import { readFixture, toBytes } from './fixture'

const LAYER = toBytes('%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,1*%\nD10*\nX0Y0D03*\nX50000000Y30000000D03*\nM02*')
const withFunction = (value: string) => toBytes(`%TF.FileFunction,${value}*%\n${new TextDecoder().decode(LAYER)}`)

describe('roles', () => {
  const roleOf = (name: string, bytes: Uint8Array = LAYER) => readSet([{ name, bytes }]).files[0]?.role

  it('come from attributes before names', () => {
    expect(roleOf('mask.gbr', withFunction('Copper,L2,Inr'))).toMatchObject({
      role: 'copper',
      layerNumber: 2,
      side: 'inner',
      from: 'attribute',
    })
    expect(roleOf('x.gbr', withFunction('Profile,NP'))).toMatchObject({ role: 'profile' })
  })

  it('come from the name where the attribute says no more than another file, and the reason says both', () => {
    expect(roleOf('part-B_Stiffener.gbr', withFunction('Other,User'))).toMatchObject({
      role: 'stiffener',
      side: 'bottom',
      from: 'name',
      reason: 'its attribute says only “Other,User”, and its name “part-B_Stiffener.gbr” is usual for that',
    })
  })

  it.each([
    ['a.GTL', 'copper', 'top'],
    ['a.GBS', 'solder mask', 'bottom'],
    ['a.G3L', 'copper', 'inner'],
    ['a.GCT4', 'coverlay', 'top'],
    ['a-F_Cu.gbr', 'copper', 'top'],
    ['a-Edge_Cuts.gbr', 'profile', null],
    ['a.GD1', 'drill drawing', null],
  ])('%s is %s', (name, role, side) => expect(roleOf(name)).toMatchObject({ role, side }))

  it('give no layer’s number where the extension does not count all layers', () => {
    expect(['a.G3L', 'a.G1', 'a.GP1'].map((name) => roleOf(name)?.layerNumber)).toEqual([3, null, null])
  })

  it('are asked where nothing says', () => {
    expect(roleOf('data.gbr')).toMatchObject({ role: null, from: null, reason: expect.stringContaining('please say') })
  })

  it('come from a list of extensions, and from the job file', () => {
    const list = toBytes('Layer Extension     Layer Description\n.GM7     Bottom Coverlay\n')
    const { files } = readSet([
      { name: 'a.GM7', bytes: LAYER },
      { name: 'a.EXTREP', bytes: list },
      { name: 'skua-top.gbr', bytes: LAYER },
      { name: 'a.gbrjob', bytes: readFixture('job/example.gbrjob') },
    ])
    expect(files[0]?.role).toMatchObject({ role: 'coverlay', side: 'bottom', from: 'extension list' })
    expect(files.find(({ name }) => name === 'skua-top.gbr')?.role).toMatchObject({
      role: 'copper',
      layerNumber: 1,
      from: 'job file',
    })
  })

  it('a drill file without a scale is read by where the copper lies', () => {
    const drill = toBytes('M48\nMETRIC\nT1C0.5\n%\nT1\nX12345Y4567\nX40123Y28765\nM30\n')
    const { files } = readSet([
      { name: 'a.drl', bytes: drill },
      { name: 'a.gtl', bytes: LAYER },
    ])
    const reading = files.find(({ name }) => name === 'a.drl')?.reading
    expect(reading?.kind === 'drill' && [reading.zeros, reading.digits]).toEqual(['trailing kept', [3, 3]])
  })
})

describe('archives', () => {
  it('are unpacked, and what else is in them is named', () => {
    const { files, refused } = readSet([
      { name: 'a.zip', bytes: zipSync({ 'out/a.GTL': LAYER, 'readme.txt': toBytes('hello') }) },
    ])
    expect(files.map(({ name, reading }) => [name, reading.kind])).toEqual([
      ['out/a.GTL', 'gerber'],
      ['readme.txt', 'other'],
    ])
    expect(refused).toEqual([])
  })

  const reasonOf = (bytes: Uint8Array) => readSet([{ name: 'a.zip', bytes }]).refused[0]?.reason

  it('names that lead elsewhere, archives in archives and twice the same name are refused', () => {
    expect(reasonOf(zipSync({ '../a.gbr': LAYER }))).toContain('leads out of its folder')
    expect(reasonOf(zipSync({ 'C:\\a.gbr': LAYER }))).toContain('leads out of its folder')
    expect(reasonOf(zipSync({ 'in.zip': zipSync({ 'a.gbr': LAYER }) }))).toContain('archive in an archive')
    expect(reasonOf(zipSync({ 'a.gbr': LAYER, 'A.GBR': LAYER }))).toContain('another file of the set')
  })

  it('bombs, lies about sizes and damage are refused before or while they are unpacked', () => {
    expect(reasonOf(zipSync({ 'a.gbr': new Uint8Array(20_000_000) }))).toContain('times its size')
    const lying = zipSync({ 'a.gbr': new Uint8Array(900_000) })
    const view = new DataView(lying.buffer)
    const list = lying.length - 22 - 46 - 5
    expect(view.getUint32(list, true)).toBe(0x02014b50)
    view.setUint32(list + 24, 100, true)
    expect(reasonOf(lying)).toBe('it does not hold what the archive’s list says')
    expect(reasonOf(zipSync({ 'a.gbr': LAYER }).subarray(0, 40))).toContain('cut off')
  })

  // APPNOTE of the format, 4.4.1.4: a field of all ones says that its value stands in the ZIP64 record (from memory).
  it.each([
    ['the number of files', 10, 16, 'end'],
    ['the size of the list', 12, 32, 'end'],
    ['the place of the list', 16, 32, 'end'],
    ['the packed size of a file', 20, 32, 'list'],
    ['the size of a file', 24, 32, 'list'],
    ['the place of a file', 42, 32, 'list'],
  ] as const)('%s in the ZIP64 form is refused as that', (_, field, bits, where) => {
    const archive = zipSync({ 'a.gbr': LAYER })
    const end = archive.length - 22
    const at = field + (where === 'end' ? end : end - 46 - 5)
    archive.fill(0xff, at, at + bits / 8)
    expect(reasonOf(archive)).toContain('ZIP64')
    expect(readSet([{ name: 'a.zip', bytes: archive }]).files).toEqual([])
  })
})
