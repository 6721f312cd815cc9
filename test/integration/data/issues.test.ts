import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { beforeAll, expect, inject, it } from 'vitest'
import { getSecrets, replaceClock } from '@/lib/config'
import {
  createRevision,
  getDrawingFile,
  getPackageFile,
  getRevision,
  getSheetIdentity,
  getStatusListFile,
  listIssues,
  releaseRevision,
  takeOnAction,
  withdrawRevision,
} from '@/lib/data'
import { listIssuedBefore } from '@/lib/data/records/issued-before'
import type { RevisionRecord } from '@/lib/data/records/revision-record'
import { db } from '@/lib/data/store/client'
import type { ReleaseInput } from '@/lib/inputs'
import {
  judgeStatus,
  makeStatusList,
  type PackageFile,
  readArchive,
  readStatusList,
  type StatusEntry,
  verifyPackage,
} from '@/lib/package'
import { checkSignedParts } from '@/lib/package/verify-parts'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { addCompanyPeople, PASSWORD, type Team, type WholeTeam } from '@/test/factories/people'
import { bringTo, makeRevisionAt, readSeedDesign, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const textOf = (files: readonly PackageFile[], name: string): string => {
  const file = files.find((candidate) => candidate.path === name)
  if (file === undefined) throw new Error(`there is no ${name}`)
  return new TextDecoder().decode(file.bytes)
}

function unpack(bytes: Uint8Array): readonly PackageFile[] {
  const read = readArchive(bytes)
  if (!read.ok) throw new Error(read.issues[0]?.message)
  return read.value
}

describeOnBothDatabases('issues of a part', (current) => {
  let team: WholeTeam
  let first: string

  const release = async (revisionId: string, terms: Partial<ReleaseInput> = {}) => {
    const { version } = await getRevision(team.lead, revisionId)
    return releaseRevision(team.lead, {
      revisionId,
      seenVersion: version,
      purpose: 'prototypes',
      password: PASSWORD,
      ...terms,
    })
  }

  beforeAll(async () => {
    const start = await current().startFrom('awaiting-signature')
    team = await addCompanyPeople(start.team)
    first = start.revisionId
    await sign(team.lead, first)
  }, 240_000)

  it('is released on terms that hold together', async () => {
    const refused = async (terms: Partial<ReleaseInput>) => {
      const refusal = await expectRefused(release(first, terms))
      return refusal.kind === 'invalid' ? refusal.issues.map(({ path: [field] }) => field) : refusal.kind
    }
    expect(await refused({ isConditional: true })).toEqual(['quantityLimit'])
    expect(await refused({ quantityLimit: 50 })).toEqual(['isConditional'])
    expect(await refused({ isConditional: true, validUntil: '2020-01-31' })).toEqual(['validUntil'])
    expect(await db().release.count({ where: { revisionId: first } })).toBe(0)
  })

  it('gives each package a trail that ends with its own release, and proves the design in each edition', async () => {
    const terms = { isConditional: true, purpose: 'prototypes', quantityLimit: 50, changeNumber: 'C-7' } as const
    const { packageSha256 } = await expectDone(release(first, terms))
    expect(packageSha256).toMatch(/^[0-9a-f]{64}$/)
    for (const actor of [team.lead, team.fabricator]) {
      const { bytes, fileName } = await getPackageFile(actor, first)
      const verified = verifyPackage(bytes, { trustedKeyPem: getSecrets().verifyingKeyPem, isStrict: true })
      expect(verified.ok ? [] : verified.issues).toEqual([])
      const files = unpack(bytes)
      const trail = JSON.parse(textOf(files, 'trail.json'))
      const last = trail.records.at(-1)
      expect(last).toMatchObject({ action: 'revision-released', details: { isConditional: true, changeNumber: 'C-7' } })
      expect(trail.checkpoints.at(-1)).toMatchObject({ sequence: last.sequence, hash: last.hash })
      expect(JSON.parse(textOf(files, 'release.json'))).toMatchObject({
        statusAtRelease: 'released conditionally',
        quantityLimit: 50,
        replaces: null,
        approvers: [{ name: team.lead.name, capacity: 'lead engineer' }],
      })
      expect(fileName).toMatch(/-\d{4}-\d\d-\d\d-package\.zip$/)
      proveWithGeneralTools(files)
    }
    const { bytes } = await getPackageFile(team.fabricator, first)
    const other = unpack(bytes).map((file) =>
      file.path === 'signed-parts/design.json' ? { ...file, bytes: new TextEncoder().encode('{}') } : file,
    )
    const hashes = JSON.parse(textOf(other, 'signatures.json')).signatures.map(
      ({ contentHash }: { contentHash: string }) => contentHash,
    )
    const found = (files: readonly PackageFile[]) =>
      checkSignedParts(new Map(files.map((file) => [file.path, file])), hashes).map(({ file }) => file)
    expect(found(unpack(bytes))).toEqual([])
    expect(found(other)).toEqual(['signed-parts/design.json', 'design.json'])
  })

  /** GNU coreutils alone: the design that is packed is a part of the list whose hash the trail recorded with the signature. */
  function proveWithGeneralTools(files: readonly PackageFile[]): void {
    const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-parts-'))
    try {
      for (const { path: name, bytes } of files.filter((file) => file.path.startsWith('signed-parts/'))) {
        writeFileSync(path.join(folder, path.basename(name)), bytes)
      }
      const run = (command: string) => execFileSync('sh', ['-c', command], { cwd: folder, encoding: 'utf8' })
      expect(run('sha256sum --check --ignore-missing SHA256SUMS').trim().split('\n')).toEqual([
        'artwork.json: OK',
        'design.json: OK',
      ])
      const [root] = run('sha256sum SHA256SUMS').split(' ')
      const trail = JSON.parse(textOf(files, 'trail.json'))
      const signed = trail.records.findLast((record: { action: string }) => record.action === 'revision-signed')
      expect(signed.details.partsRoot).toBe(root)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  }

  it('keeps who fetched which package', async () => {
    const [issue] = await listIssues(team.lead, team.projectId)
    expect(issue).toMatchObject({ status: 'released', terms: { quantityLimit: 50 }, replaces: null })
    const receipts = issue?.editions.flatMap((edition) => edition.receipts.map(({ name }) => [edition.name, name]))
    expect(receipts).toContainEqual(['the team', team.lead.name])
    expect(receipts?.map(([, name]) => name)).toContain(team.fabricator.name)
    const [own] = await listIssues(team.rivalFabricator, team.projectId)
    expect(own?.editions.map((edition) => edition.receipts)).toEqual([[]])
    expect(JSON.stringify(own)).not.toContain(team.fabricator.name)
  })

  it('says so once it is superseded: by the list, in the download, in the register', async () => {
    const before = new TextDecoder().decode((await getStatusListFile(team.fabricator)).bytes)
    const original = (await getPackageFile(team.fabricator, first)).bytes
    const second = await makeRevisionAt(team, 'awaiting-signature')
    await sign(team.lead, second)
    expect((await expectRefused(release(second))).kind).toBe('invalid')
    await expectDone(release(second, { reason: 'The arm was too short.', purpose: 'series' }))
    const { verifyingKeyPem, signingKeyPem } = getSecrets()
    const list = (text: string) => {
      const read = readStatusList(text, verifyingKeyPem)
      if (!read.ok) throw new Error(read.issues[0]?.message)
      return read.value
    }
    const now = new Date()
    const after = new TextDecoder().decode((await getStatusListFile(team.fabricator)).bytes)
    expect(judgeStatus(first, list(after), now, '2027-01-01T00:00:00Z').word).toBe('superseded')
    expect(judgeStatus(second, list(after), now, '2027-01-01T00:00:00Z').word).toBe('in force')
    // An old list, no list and a list that does not name it are never good news.
    const later = new Date(now.getTime() + 40 * 86_400_000)
    expect(judgeStatus(first, list(before), later, '2027-01-01T00:00:00Z')).toMatchObject({ word: 'unknown' })
    expect(judgeStatus(first, null, now, '2027-01-01T00:00:00Z').sentence).toContain('status unknown as of')
    expect(judgeStatus('another', list(after), now, '2027-01-01T00:00:00Z').word).toBe('unknown')
    // A list that somebody changed, or signed with a key of their own, is refused.
    expect(readStatusList(after.replace('"superseded"', '"released"'), verifyingKeyPem).ok).toBe(false)
    const forged = makeStatusList({ workspace: 'x', issuedAt: now, entries: [] }, { signingKeyPem, verifyingKeyPem })
    expect(readStatusList(JSON.stringify({ ...forged, workspace: 'y' }), verifyingKeyPem).ok).toBe(false)

    const fetched = await getPackageFile(team.fabricator, first)
    expect(fetched.fileName).toMatch(/^OBSOLETE-/)
    const files = unpack(fetched.bytes)
    expect(textOf(files, 'OBSOLETE.txt')).toContain('SUPERSEDED')
    const inner = files.find((file) => file.path === 'original-package.zip')
    expect(Buffer.compare(inner?.bytes ?? new Uint8Array(), original)).toBe(0)
    const report = textOf(files, 'OBSOLETE-report.pdf')
    const pages = [...report.matchAll(/\/Type \/Page\n/g)].length
    expect([...report.matchAll(/\/Subtype \/Stamp/g)].length * 2).toBe(pages)
    expect(list(textOf(files, 'status.json')).entries).toMatchObject([{ revisionId: first, status: 'superseded' }])
    expect(
      (await listIssues(team.lead, team.projectId)).map(({ status, replaces }) => [status, replaces !== null]),
    ).toEqual([
      ['released', true],
      ['superseded', false],
    ])
    // The drawing lists what led to it, in the package as on the page, and an older one nothing that came later.
    const revisionsOf = async (id: string) => (await getSheetIdentity(team.fabricator, id)).revisions
    const { label: firstLabel } = await getRevision(team.lead, first)
    const { label: secondLabel } = await getRevision(team.lead, second)
    const day = expect.stringMatching(/^\d{4}-\d\d-\d\d$/)
    const entry = { releasedBy: team.lead.name, issuedOn: day }
    expect(await revisionsOf(first)).toEqual([{ ...entry, label: firstLabel, change: 'C-7' }])
    expect(await revisionsOf(second)).toEqual([
      { ...entry, label: firstLabel, change: 'C-7' },
      { ...entry, label: secondLabel, change: 'The arm was too short.' },
    ])
    const drawn = textOf(unpack((await getPackageFile(team.fabricator, second)).bytes), 'drawing/sheet-1.svg')
    expect(drawn).toContain('The arm was too short.')
    const page = await getDrawingFile(team.lead, second, { format: 'svg', sheet: '1' })
    expect(new TextDecoder().decode(page.bytes)).toBe(drawn)
    // A company that the earlier one was not shared with learns its label and day alone.
    const { projectId } = await db().revision.findUniqueOrThrow({ where: { id: second } })
    const shares = [{ companyId: 'a company that joined later' }] as unknown as RevisionRecord['shares']
    expect(await listIssuedBefore(db(), { id: second, projectId, shares }, first)).toEqual([
      { label: firstLabel, change: '', releasedBy: '', issuedOn: day },
    ])
    // With the one in force withdrawn, the obsolete one does not become good again.
    const { version } = await getRevision(team.lead, second)
    await expectDone(
      withdrawRevision(team.lead, {
        revisionId: second,
        seenVersion: version,
        password: PASSWORD,
        reason: 'Cracked in use.',
      }),
    )
    expect((await getPackageFile(team.fabricator, first)).fileName).toMatch(/^OBSOLETE-/)
    expect((await getPackageFile(team.lead, second)).fileName).toMatch(/^OBSOLETE-/)
    await expect(getPackageFile(team.fabricator, second)).rejects.toThrow('no such package')
  })

  it('tells by command, offline, what became of a package', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-status-'))
    try {
      const place = (name: string) => path.join(folder, name)
      const inner = unpack((await getPackageFile(team.lead, first)).bytes).find(
        (f) => f.path === 'original-package.zip',
      )
      writeFileSync(place('package.zip'), inner?.bytes ?? new Uint8Array())
      writeFileSync(place('status.json'), (await getStatusListFile(team.lead)).bytes)
      const run = (...args: string[]) => {
        try {
          const program = [path.join(inject('commandsFolder'), 'package-verify.mjs'), ...args]
          return { status: 0, output: execFileSync(process.execPath, program, { encoding: 'utf8' }) }
        } catch (error) {
          const failed = error as { status: number; stdout: string; stderr: string }
          return { status: failed.status, output: failed.stdout + failed.stderr }
        }
      }
      const plain = run(place('package.zip'))
      expect(plain, plain.output).toMatchObject({ status: 0 })
      expect(plain.output).toContain('status unknown as of')
      const told = run(place('package.zip'), '--status', place('status.json'))
      expect(told, told.output).toMatchObject({ status: 3 })
      expect(told.output).toContain('SUPERSEDED')
      // A list that was to be renewed long ago vouches for nobody, and what was obsolete then stays so.
      const { verifyingKeyPem, signingKeyPem } = getSecrets()
      const known: StatusEntry[] = JSON.parse(readFileSync(place('status.json'), 'utf8')).entries
      const makeOld = (status: 'released' | 'superseded') => {
        const [entry] = known.filter((one) => one.revisionId === first)
        if (entry === undefined) throw new Error('the list does not name the revision')
        const issuedAt = new Date(Date.now() - 60 * 86_400_000)
        const entries = [{ ...entry, status, supersededBy: status === 'released' ? null : entry.supersededBy }]
        return makeStatusList({ workspace: 'Quillmoor', issuedAt, entries }, { signingKeyPem, verifyingKeyPem })
      }
      writeFileSync(place('old.json'), JSON.stringify(makeOld('released')))
      const old = run(place('package.zip'), '--status', place('old.json'))
      expect(old, old.output).toMatchObject({ status: 0 })
      expect(old.output).toMatch(/status unknown as of .*the status list is of .*was to be renewed by/)
      writeFileSync(place('old.json'), JSON.stringify(makeOld('superseded')))
      expect(run(place('package.zip'), '--status', place('old.json')).output).toContain('SUPERSEDED')
      writeFileSync(place('status.json'), '{}')
      expect(run(place('package.zip'), '--status', place('status.json')).status).toBe(2)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })

  it('does not reach further than a day that was set', async () => {
    const third = await makeRevisionAt(team, 'awaiting-signature')
    const day = new Date(Date.now() + 10 * 86_400_000).toISOString().slice(0, 10)
    const due = { due: 'before-series', dueOn: '' } as const
    const what = { text: 'Look at the first lot', ownerId: team.member.userId, ...due }
    await expectDone(takeOnAction(team.lead, { revisionId: third, origin: { kind: 'revision', id: '' }, ...what }))
    await sign(team.lead, third)
    await expectDone(release(third, { isConditional: true, validUntil: day, reason: 'Another try.' }))
    const [issue] = await listIssues(team.lead, team.projectId)
    expect(issue).toMatchObject({ isExpired: false, openActionCount: 1 })
    const restore = replaceClock(() => new Date(Date.now() + 20 * 86_400_000))
    try {
      expect((await listIssues(team.lead, team.projectId))[0]?.isExpired).toBe(true)
      const { fileName, bytes } = await getPackageFile(team.lead, third)
      expect(fileName).toMatch(/^OBSOLETE-/)
      expect(textOf(unpack(bytes), 'OBSOLETE.txt')).toContain('EXPIRED')
    } finally {
      restore()
    }
  })

  it('leaves the issues of another part as they are, whatever is released, replaced or withdrawn', async () => {
    const own = await current().startFrom('released')
    const other = await makeOfPart(own.team, 'QI-4410')
    await sign(own.team.lead, other)
    const act = async (revisionId: string, move: 'release' | 'withdraw') => {
      const { version: seenVersion } = await getRevision(own.team.lead, revisionId)
      const input = { revisionId, seenVersion, password: PASSWORD, reason: 'A test of parts.' }
      if (move === 'withdraw') return expectDone(withdrawRevision(own.team.lead, input))
      return expectDone(releaseRevision(own.team.lead, { ...input, purpose: 'prototypes' as const }))
    }
    const stagesOf = async (...ids: readonly string[]) =>
      Promise.all(ids.map(async (id) => (await getRevision(own.team.lead, id)).stage))
    const statusesOf = async (...ids: readonly string[]) => {
      const list = JSON.parse(new TextDecoder().decode((await getStatusListFile(own.team.lead)).bytes))
      return ids.map((id) => list.entries.find((entry: StatusEntry) => entry.revisionId === id)?.status)
    }
    await act(other, 'release')
    expect(await stagesOf(own.revisionId, other)).toEqual(['released', 'released'])
    const later = await makeRevisionAt(own.team, 'awaiting-signature')
    await sign(own.team.lead, later)
    await act(later, 'release')
    expect(await stagesOf(own.revisionId, other, later)).toEqual(['superseded', 'released', 'released'])
    await act(later, 'withdraw')
    expect(await statusesOf(own.revisionId, other, later)).toEqual(['superseded', 'released', 'withdrawn'])
    expect((await getPackageFile(own.team.lead, other)).fileName).not.toMatch(/^OBSOLETE-/)
    await act(other, 'withdraw')
    expect(await statusesOf(own.revisionId, other, later)).toEqual(['superseded', 'withdrawn', 'withdrawn'])
  }, 400_000)
})

/** A revision that awaits its signature, of the demo design under another part number. */
async function makeOfPart(team: Team, partNumber: string): Promise<string> {
  const design = JSON.parse(readSeedDesign('pipit-rev-a'))
  const designText = JSON.stringify({ ...design, brief: { ...design.brief, partNumber } })
  const origin = { kind: 'import' as const, designText }
  const made = await expectDone(createRevision(team.member, { projectId: team.projectId, label: 'A', origin }))
  for (const stage of ['early-review', 'fabricator-review', 'awaiting-signature'] as const) {
    await bringTo(stage, team, made.revisionId)
  }
  return made.revisionId
}
