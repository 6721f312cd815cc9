import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { runEvaluateCommand } from '@/lib/cli/evaluate-command'
import { type Design, type Evaluation, MAX_DESIGN_CHARACTERS } from '@/lib/engine'

const TIMEOUT_MS = 60_000
let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evaluate-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function run(...options: string[]) {
  const { status, text, problem } = runEvaluateCommand(options, '2026-11-23')
  return { status, stdout: text, stderr: problem }
}

function writeDesign(name: string, change: (design: Design) => void): string {
  const design = JSON.parse(readFileSync('seed/designs/pipit-rev-a.json', 'utf8')) as Design
  change(design)
  const file = join(folder, name)
  writeFileSync(file, JSON.stringify(design))
  return file
}

describe('evaluate command', () => {
  test('a design that meets everything ends with 0 and a report with aligned columns', () => {
    const { status, stdout } = run('seed/designs/pipit-rev-a.json', '--on', '2026-11-23')
    expect(status).toBe(0)
    const lines = stdout.split('\n')
    expect(lines[0]).toBe('Pipit chest patch, revision A')
    const rule = lines.findIndex((line) => line.startsWith('----'))
    const ends = [...(lines[rule] ?? '').matchAll(/-(?= |$)/g)].map(({ index }) => index)
    // Thickness, a right-aligned column, ends where its rule ends.
    expect(lines[rule + 2]?.slice(0, (ends[3] ?? 0) + 1)).toMatch(/132\.9$/)
    expect(stdout).toContain('Bend round the housing')
    expect(stdout).toContain('qualify by test')
  })

  test.each(['2027-02-30', '2027-13-01', '2026-2-3', 'tomorrow', '2025-02-29'])('--on %s is no calendar day', (day) => {
    const { status, stderr } = run('seed/designs/pipit-rev-a.json', '--on', day)
    expect(status).toBe(2)
    expect(stderr).toContain(`--on: "${day}" is not a calendar day`)
  })

  test('a file that is not UTF-8 is refused with the position of the byte', () => {
    const file = join(folder, 'latin.json')
    writeFileSync(file, Buffer.from('{"name":"Pi\xe9zo"}', 'latin1'))
    expect(run(file)).toMatchObject({ status: 2, stderr: expect.stringContaining('byte 12') })
  })

  test('a key that is given twice is refused with its path', () => {
    const file = join(folder, 'twice.json')
    writeFileSync(
      file,
      readFileSync('seed/designs/pipit-rev-a.json', 'utf8').replace('"brief"', '"name": "Other", "brief"'),
    )
    expect(run(file)).toMatchObject({ status: 2, stderr: expect.stringContaining('name: is given twice') })
  })

  test('a design with a concern ends with 1 and says which', () => {
    const { status, stdout } = run('seed/designs/skua-rev-a.json')
    expect(status).toBe(1)
    expect(stdout).toMatch(/FAILS\s+bend-strain/)
  })

  test('a design that lacks an input is not all met', () => {
    const file = writeDesign('no-use.json', (design) => {
      for (const bend of design.bends) bend.use = null
    })
    const { status, stdout } = run(file)
    expect(status).toBe(1)
    expect(stdout).toContain('Missing: use of bend Bend round the housing')
  })

  test('--json gives the results that the engine gives', () => {
    const { status, stdout } = run('seed/designs/skua-rev-b.json', '--json')
    expect(status).toBe(1)
    const evaluation = JSON.parse(stdout) as Evaluation
    expect(evaluation.engineVersion).toMatch(/^\d+\.\d+\.\d+$/)
    expect(evaluation.bends.map(({ bendId }) => bendId)).toEqual(['hinge', 'fold'])
  })

  test('--schema prints the JSON Schema', () => {
    const { status, stdout } = run('--schema')
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      required: expect.arrayContaining(['construction', 'bends']),
    })
  })

  test('every bad field is named by its path, and nothing is printed as a result', () => {
    const file = writeDesign('bad.json', (design) => {
      const [layer] = design.construction.layers
      const [bend] = design.bends
      if (layer === undefined || bend === undefined) throw new Error('the design lost its parts')
      layer.thicknessUm = -12
      bend.insideRadiusMm = 0
    })
    const { status, stdout, stderr } = run(file)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toContain('construction.layers[0].thicknessUm: must be greater than 0 um')
    expect(stderr).toContain('bends[0].insideRadiusMm: must be greater than 0 mm')
    expect(stderr).toContain('3 problems')
  })

  test.each([
    [
      'an unknown material',
      (design: Design) => Object.assign(design.construction.layers[0] ?? {}, { materialId: 'unobtainium' }),
      'no material "unobtainium"',
    ],
    [
      'a layer in no zone',
      (design: Design) => {
        for (const zone of design.construction.zones) zone.presence.splice(0, 1)
      },
      'is in no zone',
    ],
    [
      'a bend in a rigid zone',
      (design: Design) => Object.assign(design.bends[0] ?? {}, { zoneId: 'electronics' }),
      'bends belong in flex zones',
    ],
  ])('%s is refused with its reason', (name, change, reason) => {
    const { status, stderr } = run(writeDesign(`${name}.json`, change))
    expect(status).toBe(2)
    expect(stderr).toContain(reason)
  })

  test('files that are no design documents are refused with a plain reason', () => {
    const zip = join(folder, 'renamed.json')
    writeFileSync(zip, zipSync({ 'design.json': new TextEncoder().encode('{}') }))
    const large = join(folder, 'large.json')
    writeFileSync(large, `{"name": "${'x'.repeat(5_000_000)}"}`)
    const text = join(folder, 'text.json')
    writeFileSync(text, 'not json')
    for (const [file, reason] of [
      [zip, 'ZIP archive'],
      [large, `at most ${MAX_DESIGN_CHARACTERS}`],
      [text, 'not JSON'],
      [join(folder, 'absent.json'), 'no such file'],
      [folder, 'is a folder'],
    ] as const) {
      const { status, stdout, stderr } = run(file)
      expect({ file, status, stdout }).toEqual({ file, status: 2, stdout: '' })
      expect(stderr).toContain(reason)
    }
  })

  test('wrong arguments end with 2 and the usage', () => {
    expect(run()).toMatchObject({ status: 2, stderr: expect.stringContaining('npm run evaluate') })
    expect(run('--frobnicate')).toMatchObject({ status: 2, stderr: expect.stringContaining('--frobnicate') })
    expect(run('seed/designs/pipit-rev-a.json', '--on', '2026-13-45')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('2026-13-45'),
    })
    expect(run('--help')).toMatchObject({ status: 0, stdout: expect.stringContaining('Exit status') })
  })

  test('profiles are laid over the catalogue: the strictest of several, each named with what it changes', () => {
    const file = 'seed/designs/skua-rev-b.json'
    const plain = run(file).stdout
    const space = run(file, '--profile', 'aerospace-space').stdout
    expect(plain).not.toContain('profiles:')
    expect(plain).not.toContain('because of profile')
    expect(space).toContain('profiles: Aerospace and space')
    expect(space.replaceAll(/\s+/g, ' ')).toContain('because of profile Aerospace and space')
    expect(space).toContain('profile-fields')
    const both = run(file, '--profile', 'consumer-folded-once', '--profile', 'aerospace-space', '--json')
    const other = run(file, '--profile', 'aerospace-space', '--profile', 'consumer-folded-once', '--json')
    expect(both.stdout).toBe(other.stdout)
    expect(JSON.parse(both.stdout).profiles).toHaveLength(2)
    expect(run(file, '--profile', 'toy')).toMatchObject({ status: 2, stderr: expect.stringContaining('"toy"') })
  })

  test('as a program it prints to the right stream and sets the exit status', { timeout: TIMEOUT_MS }, () => {
    const start = (...options: string[]) =>
      spawnSync(process.execPath, ['--import', 'tsx', '--conditions=react-server', 'lib/cli/evaluate.ts', ...options], {
        encoding: 'utf8',
        maxBuffer: 50_000_000,
      })
    const concern = start('seed/designs/skua-rev-a.json')
    expect(concern).toMatchObject({ status: 1, stderr: '' })
    expect(concern.stdout).toContain('Skua scanning head, revision A')
    const absent = start(join(folder, 'absent.json'))
    expect(absent).toMatchObject({ status: 2, stdout: '' })
    expect(absent.stderr).toContain('no such file')
  })
})
