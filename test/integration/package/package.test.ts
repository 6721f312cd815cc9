import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { JOB_KINDS } from '@/lib/jobs/kinds'
import { WorkerPool } from '@/lib/jobs/pool'
import { buildPackage, makeTrailFile, type PackageFile, readArchive, verifyPackage, writeArchive } from '@/lib/package'
import { hashSignedContent, sha256Hex } from '@/lib/review'
import { startSourceThread } from '../../setup/source-thread'
import { makeCheckpoints, makeContent, makeKeys, makeSnapshot, makeTrail } from './content-factory'

const JOB_PROGRAM = new URL('../../../lib/jobs/worker.ts', import.meta.url)
const keys = makeKeys()
const others = makeKeys()
let bytes: Uint8Array
let files: readonly PackageFile[]

beforeAll(async () => {
  bytes = await buildPackage(makeContent(), keys)
  const read = readArchive(bytes)
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('; '))
  files = read.value
}, 400_000)

const codes = (changed: Uint8Array, options = {}) => {
  const result = verifyPackage(changed, { isStrict: true, ...options })
  return result.ok ? [] : result.issues.map(({ code, path: place }) => `${code} ${place.join('/')}`.trim())
}

const textOf = (name: string) => new TextDecoder().decode(files.find((file) => file.path === name)?.bytes)

describe('a release package', () => {
  test('holds what the review promises, and verifies', () => {
    expect(files.map((file) => file.path)).toEqual([
      'README.txt',
      'SHA256SUMS',
      'SHA256SUMS.sig',
      'actions.json',
      'artwork/001-skua_outline.gbr',
      'artwork/002-skua_top-copper.gbr',
      'artwork/index.json',
      'checklist.json',
      'design.json',
      'drawing/sheet-1.svg',
      'drawing/sheet-2.svg',
      'drawing/sheet-3.svg',
      'drawing/sheet-4.svg',
      'drawing/sheet-5.svg',
      'drawing/sheet-6.svg',
      'drawing/sheet-7.svg',
      'drawing/sheets.pdf',
      'manifest.json',
      'manifest.sig',
      'meetings.json',
      'needs.json',
      'release.json',
      'report.pdf',
      'results.json',
      'schemas/actions.schema.json',
      'schemas/artwork-index.schema.json',
      'schemas/checklist.schema.json',
      'schemas/design.schema.json',
      'schemas/manifest.schema.json',
      'schemas/meetings.schema.json',
      'schemas/needs.schema.json',
      'schemas/release.schema.json',
      'schemas/results.schema.json',
      'schemas/signatures.schema.json',
      'schemas/threads.schema.json',
      'schemas/trail.schema.json',
      'signatures.json',
      'signed-content.json',
      'signed-parts/SHA256SUMS',
      'signed-parts/artwork.json',
      'signed-parts/design.json',
      'threads.json',
      'trail.json',
      'verifying-key.pem',
    ])
    expect(verifyPackage(bytes, { trustedKeyPem: keys.verifyingKeyPem })).toMatchObject({
      ok: true,
      value: {
        isKeyTrusted: true,
        signatureCount: 1,
        trailRecordCount: 4,
        manifest: { project: { name: 'Skua' }, revision: { label: 'B' }, edition: { kind: 'team' } },
      },
    })
  })

  test('the same content and key give the same bytes', async () => {
    const again = await buildPackage(makeContent(makeSnapshot()), keys)
    expect(Buffer.compare(bytes, again)).toBe(0)
  }, 400_000)

  test('two processes with the same content and key give the same bytes', async () => {
    const build = async () => {
      const program = ['--conditions=react-server', '--import', 'tsx', 'test/integration/package/building-program.ts']
      const options = { env: { ...process.env, BUILD_KEYS: JSON.stringify(keys) }, maxBuffer: 1_000_000 }
      return (await promisify(execFile)(process.execPath, program, options)).stdout
    }
    const [first, second] = await Promise.all([build(), build()])
    expect(first).toBe(second)
    expect(first).toBe(sha256Hex(bytes))
  }, 240_000)

  test('documents made in a thread are the same, its errors are handed on, and the next order is carried out', async () => {
    const pool = new WorkerPool(JOB_KINDS, (memoryMib) => startSourceThread(JOB_PROGRAM, memoryMib))
    const content = { ...makeContent(), artwork: [] }
    const undated = { ...content, release: { ...content.release, at: 'no date' } }
    const hashes = (made: readonly PackageFile[]) => made.map((file) => [file.path, sha256Hex(file.bytes)])
    try {
      const [made, refused] = await Promise.allSettled([
        pool.run('documents', { kind: 'package', content }),
        pool.run('documents', { kind: 'package', content: undated }),
      ])
      if (made.status === 'rejected') throw made.reason
      const expected = files.filter(({ path: name }) => name === 'report.pdf' || name.startsWith('drawing/'))
      expect(hashes(made.value)).toEqual(expect.arrayContaining(hashes(expected)))
      expect(made.value).toHaveLength(expected.length)
      expect(hashes(await pool.run('documents', { kind: 'package', content }))).toEqual(hashes(made.value))
      expect(refused.status).toBe('rejected')
      if (refused.status === 'fulfilled') return
      expect(refused.reason).toBeInstanceOf(RangeError)
      expect(String(refused.reason)).toBe('RangeError: Invalid time value')
    } finally {
      pool.close()
    }
  }, 240_000)

  test('its page of contents names every file or the folder that it lies in', () => {
    const contents = textOf('README.txt')
    for (const { path: name } of files) {
      if (name === 'README.txt') continue
      const folder = name.includes('/') ? name.slice(0, name.indexOf('/') + 1) : name
      expect(contents, name).toContain(folder)
    }
    const { files: listed } = JSON.parse(textOf('manifest.json'))
    expect(listed.map((file: { path: string }) => file.path)).toEqual(
      files.map(({ path: name }) => name).filter((name) => !/^(manifest\.(json|sig)|SHA256SUMS(\.sig)?)$/.test(name)),
    )
  })

  test('an edition of the catalogue stands in the report and in the data', async () => {
    const snapshot = makeSnapshot()
    const switchedOff = [{ itemId: 'tear-stop', question: 'Is a tear stopped?', reason: 'The outline is moulded in.' }]
    const template = { version: 3, contentHash: 'a'.repeat(64), switchedOff }
    const [standing] = snapshot.signatures
    if (standing === undefined) throw new Error('the snapshot is not signed')
    const edition = { ...snapshot, template }
    const signatures = [{ ...standing, contentHash: hashSignedContent(edition) }]
    const built = await buildPackage(makeContent({ ...edition, signatures }), keys)
    expect(codes(built)).toEqual([])
    const read = readArchive(built)
    if (!read.ok) throw new Error('the package cannot be read')
    const of = (name: string) => new TextDecoder().decode(read.value.find((file) => file.path === name)?.bytes)
    expect(JSON.parse(of('checklist.json')).template).toEqual(template)
    expect(JSON.parse(of('signed-content.json')).template).toEqual(template)
  }, 400_000)

  test('the time zone of the machine does not show', async () => {
    const before = process.env.TZ
    process.env.TZ = 'Pacific/Auckland'
    try {
      expect(Buffer.compare(bytes, await buildPackage(makeContent(), keys))).toBe(0)
    } finally {
      if (before === undefined) delete process.env.TZ
      else process.env.TZ = before
    }
  }, 400_000)

  test("a fabricator's edition names its company, and its signatures without the content that was withheld", async () => {
    const content = makeContent()
    const built = await buildPackage(
      {
        ...content,
        edition: { kind: 'fabricator', companyId: 'company-brackenfold', companyName: 'Brackenfold Circuits' },
        minutes: null,
        signedContent: null,
      },
      keys,
    )
    expect(verifyPackage(built)).toMatchObject({
      ok: true,
      value: { signatureCount: 1, manifest: { contentHash: null, edition: { companyName: 'Brackenfold Circuits' } } },
    })
    const read = readArchive(built)
    expect(read.ok && read.value.some((file) => file.path === 'signed-content.json')).toBe(false)
  }, 400_000)

  test('is read by other programs: the report is a PDF, the drawing an SVG, the design reads back', () => {
    expect(textOf('report.pdf').slice(0, 5)).toBe('%PDF-')
    expect(textOf('drawing/sheets.pdf').slice(0, 5)).toBe('%PDF-')
    expect(textOf('drawing/sheet-1.svg')).toContain('Layers from the top face')
    expect(textOf('drawing/sheet-2.svg')).toContain('Bend call-outs')
    expect(JSON.parse(textOf('design.json'))).toEqual(makeSnapshot().design)
    expect(JSON.parse(textOf('artwork/index.json')).files[1].fileName).toBe('skua_top copper.gbr')
  })

  test('artwork that is missing or is not what was recorded stops the build', async () => {
    const content = makeContent()
    await expect(buildPackage({ ...content, artwork: [] }, keys)).rejects.toThrow('the bytes of artwork')
    const swapped = content.artwork.map((file) => ({ ...file, bytes: new Uint8Array([1]) }))
    await expect(buildPackage({ ...content, artwork: swapped }, keys)).rejects.toThrow('does not have the content')
  }, 400_000)

  test('a revision in which nothing is decided still gives a whole package', async () => {
    const snapshot = makeSnapshot()
    const bare = {
      ...snapshot,
      evaluation: null,
      answers: [],
      waivers: [],
      threads: [],
      declarations: [],
      signatures: [],
      artwork: [],
      design: {
        ...snapshot.design,
        bends: [],
        construction: { layers: [], zones: [] },
      },
    }
    const built = await buildPackage({ ...makeContent(bare), artwork: [], trail: [] }, keys)
    expect(codes(built)).toEqual([])
  }, 400_000)
})

describe('tampering is caught and named', () => {
  const repack = (change: (file: PackageFile) => PackageFile[]) => writeArchive(files.flatMap(change))
  const flip = (source: Uint8Array) => {
    const copy = Uint8Array.from(source)
    copy[copy.length >> 1] = (copy[copy.length >> 1] ?? 0) ^ 1
    return copy
  }

  test('each file changed, with an archive that is well formed again', () => {
    for (const { path: name } of files) {
      const changed = repack((file) => [file.path === name ? { ...file, bytes: flip(file.bytes) } : file])
      const found = codes(changed)
      expect(found.length, name).toBeGreaterThan(0)
      const blamed = name === 'manifest.json' ? /manifest\.(json|sig)/ : new RegExp(name.replaceAll('.', '\\.'))
      expect(found.join(' '), name).toMatch(blamed)
    }
  })

  test('each file left out', () => {
    for (const { path: name } of files) {
      const changed = repack((file) => (file.path === name ? [] : [file]))
      expect(codes(changed), name).toContainEqual(`missing ${name}`)
    }
  })

  test('a file added, renamed or swapped with another', () => {
    const extra = [...files, { path: 'notes.txt', bytes: new Uint8Array([65]) }]
    expect(codes(writeArchive(extra))).toEqual(['extra notes.txt'])
    const renamed = repack((file) => [file.path === 'design.json' ? { ...file, path: 'design2.json' } : file])
    expect(codes(renamed)).toEqual(expect.arrayContaining(['missing design.json', 'extra design2.json']))
    const bytesOf = (name: string) => files.find((file) => file.path === name)?.bytes ?? new Uint8Array()
    const swapped = repack((file) => {
      if (file.path === 'threads.json') return [{ ...file, bytes: bytesOf('checklist.json') }]
      return [file.path === 'checklist.json' ? { ...file, bytes: bytesOf('threads.json') } : file]
    })
    expect(codes(swapped)).toEqual(expect.arrayContaining(['changed threads.json', 'changed checklist.json']))
  })

  test('any byte of the archive changed', () => {
    fc.assert(
      fc.property(fc.nat({ max: bytes.length - 1 }), fc.integer({ min: 1, max: 255 }), (at, mask) => {
        const changed = Uint8Array.from(bytes)
        changed[at] = (changed[at] ?? 0) ^ mask
        expect(codes(changed).length, `byte ${at}`).toBeGreaterThan(0)
      }),
      { seed: 1977, numRuns: 150 },
    )
  }, 400_000)

  test('every byte of every header and of the list of files changed', () => {
    // A small archive of the same form: each of its bytes is tried.
    const small = writeArchive(files.filter((file) => file.bytes.length < 500))
    const listed = (archive: Uint8Array) => {
      const read = readArchive(archive)
      return read.ok ? read.value.map((file) => [file.path, [...file.bytes]]) : null
    }
    expect(listed(small)).not.toBeNull()
    for (let at = 0; at < small.length; at += 1) {
      for (const mask of [1, 0x80]) {
        const changed = Uint8Array.from(small)
        changed[at] = (changed[at] ?? 0) ^ mask
        expect(listed(changed), `byte ${at}`).toBeNull()
      }
    }
  })

  test('cut off at any length, appended to, or something before it', () => {
    for (const share of [0, 0.001, 0.25, 0.5, 0.9, 0.999]) {
      expect(codes(bytes.subarray(0, Math.floor(bytes.length * share))).length).toBeGreaterThan(0)
    }
    expect(codes(bytes.subarray(0, bytes.length - 1))).toEqual(['truncated'])
    expect(codes(Buffer.concat([bytes, Buffer.from([0])]))).toEqual(['truncated'])
    expect(codes(Buffer.concat([Buffer.from([0]), bytes]))).toEqual(['not-a-zip'])
  })

  test('what is no package at all', () => {
    expect(codes(new Uint8Array())).toEqual(['not-a-zip'])
    expect(codes(new TextEncoder().encode('{"format":"bendworthy-design"}'.repeat(10)))).toEqual(['not-a-zip'])
    expect(codes(writeArchive([{ path: 'a.txt', bytes: new Uint8Array([1]) }]))).toEqual(['missing manifest.json'])
    expect(codes(writeArchive([{ path: 'manifest.json', bytes: new TextEncoder().encode('{}') }])).join()).toContain(
      'malformed manifest.json',
    )
  })

  test('a compressed archive is refused before anything is unpacked', () => {
    // Method 8 in the first header and in its list entry: what a compressing program would write.
    const changed = Uint8Array.from(bytes)
    changed[8] = 8
    expect(codes(changed)).toHaveLength(1)
    expect(codes(changed)[0]).toMatch(/^structure/)
  })

  test('signed again with another key: only a trusted key tells', async () => {
    const forged = await buildPackage(makeContent(), others)
    expect(codes(forged)).toEqual([])
    expect(codes(forged, { trustedKeyPem: keys.verifyingKeyPem })).toEqual([
      'wrong-key verifying-key.pem',
      'bad-signature manifest.sig',
      'bad-signature SHA256SUMS.sig',
    ])
    const result = verifyPackage(forged)
    expect(result.ok && result.value.isKeyTrusted).toBe(false)
  }, 400_000)

  test('a key that is not a public Ed25519 key is no ground for trust', () => {
    expect(codes(bytes, { trustedKeyPem: 'nonsense' })).toEqual(['bad-key'])
    expect(codes(bytes, { trustedKeyPem: keys.signingKeyPem })).toEqual(['bad-key'])
  })

  test('content that the signatures do not cover', async () => {
    const content = makeContent()
    const signatures = content.snapshot.signatures.map((signature) => ({ ...signature, contentHash: 'e'.repeat(64) }))
    const built = await buildPackage({ ...content, snapshot: { ...content.snapshot, signatures } }, keys)
    expect(codes(built)).toEqual(['other-content signatures.json'])
  }, 400_000)

  test('a design that is not the one that was signed', async () => {
    const content = makeContent()
    const other = makeSnapshot({ ...content.snapshot.design, name: 'Another design' })
    const built = await buildPackage(
      { ...content, snapshot: { ...other, signatures: content.snapshot.signatures } },
      keys,
    )
    expect(codes(built)).toEqual(['other-content design.json'])
  }, 400_000)

  test('a checkpoint of the trail that contradicts a record, or bears another signature', async () => {
    const content = makeContent()
    const good = makeCheckpoints(content.trail, keys)
    expect(codes(await buildPackage({ ...content, checkpoints: good }, keys))).toEqual([])
    const other = makeCheckpoints(content.trail, others)
    expect(codes(await buildPackage({ ...content, checkpoints: other }, keys))).toEqual(['trail trail.json'])
    const wrong = content.trail.map((record) => ({ ...record, hash: 'f'.repeat(64) }))
    expect(codes(await buildPackage({ ...content, checkpoints: makeCheckpoints(wrong, keys) }, keys))).toEqual([
      'trail trail.json',
    ])
  }, 400_000)

  test('a trail whose records do not fit', async () => {
    const content = makeContent()
    const trail = content.trail.map((record, index) => (index === 1 ? { ...record, action: 'nothing' } : record))
    expect(codes(await buildPackage({ ...content, trail }, keys))).toEqual(['trail trail.json'])
  }, 400_000)
})

describe('the commands', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-package-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  /** As people start it, which takes most of the time: once for each command. */
  const runAsPeople = (script: string, ...args: string[]) =>
    runProgram('--conditions=react-server', '--import', 'tsx', `lib/cli/${script}.ts`, ...args)
  const run = (script: string, ...args: string[]) =>
    runProgram('--conditions=react-server', path.join(inject('commandsFolder'), `${script}.mjs`), ...args)
  const runProgram = async (...command: string[]) => {
    try {
      const { stdout, stderr } = await promisify(execFile)(process.execPath, command)
      return { status: 0, output: stdout + stderr }
    } catch (error) {
      const failed = error as { code: number; stdout: string; stderr: string }
      return { status: failed.code, output: failed.stdout + failed.stderr }
    }
  }
  const save = (name: string, content: Uint8Array | string) => {
    const file = path.join(folder, name)
    writeFileSync(file, content)
    return file
  }

  test('package:verify says intact, not intact, or why it cannot tell', async () => {
    const good = save('good.zip', bytes)
    const key = save('key.pem', keys.verifyingKeyPem)
    const intact = await runAsPeople('package-verify', good, '--key', key)
    expect(intact.status, intact.output).toBe(0)
    expect(intact.output).toContain('Skua, revision B')
    expect(intact.output).toContain('signed with the trusted key')

    const changed = Uint8Array.from(bytes)
    changed[200] = (changed[200] ?? 0) ^ 1
    const damaged = await run('package-verify', save('damaged.zip', changed))
    expect(damaged.status).toBe(1)
    expect(damaged.output).toContain('README.txt')

    const absent = await run('package-verify', path.join(folder, 'absent.zip'))
    expect(absent.status).toBe(2)
    expect(absent.output).toContain('cannot be read')
    expect((await run('package-verify')).status).toBe(2)
  }, 400_000)

  test('trail:check reads an exported trail and names the record that does not fit', async () => {
    const { trail } = makeContent()
    const write = (name: string, records: typeof trail) => save(name, JSON.stringify(makeTrailFile(records, true)))
    const fits = await runAsPeople('trail-check', write('trail.json', trail))
    expect(fits.status, fits.output).toBe(0)
    expect(fits.output).toContain('4 records fit')
    const bent = trail.map((record) => (record.sequence === 4 ? { ...record, at: '2027-03-04T09:00:01.000Z' } : record))
    const fails = await run('trail-check', write('bent.json', bent))
    expect(fails.status).toBe(1)
    expect(fails.output).toContain('does not match at record 4')
    // Cut off at the end: the file's own checkpoint, or one of an earlier export, names what is missing.
    const records = makeTrail()
    const long = save('long.json', JSON.stringify(makeTrailFile(records, false, makeCheckpoints(records, keys))))
    const short = save('short.json', JSON.stringify(makeTrailFile(records.slice(0, 4), false)))
    expect((await run('trail-check', long, '--key', save('trail-key.pem', keys.verifyingKeyPem))).output).toContain(
      '1 checkpoint, the last of record 6',
    )
    const against = await run('trail-check', short, '--against', long)
    expect(against.status, against.output).toBe(1)
    expect(against.output).toContain('does not match at record 6')
    expect((await run('trail-check', short)).output).toContain('a missing end would not be noticed')
    const unreadable = await run('trail-check', save('text.json', 'not json'))
    expect(unreadable.status).toBe(2)
    expect(unreadable.output).toContain('not JSON')
  }, 400_000)
})
