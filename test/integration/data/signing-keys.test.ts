import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, it } from 'vitest'
import { checkPackage } from '@/app/verify-package/check-package'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { judgeStatus, readStatusList, verifyPackage } from '@/lib/package'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { PASSWORD } from '@/test/factories/people'
import { makeReleasedRevision, makeRevisionAt, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { runPackageVerify } from './commands'

describeOnBothDatabases('the signing keys of an installation', (current) => {
  it('change, and what was signed before stays verifiable by the register, offline and on the page alike', async () => {
    const { team, revisionId } = await current().startFrom('released')
    const fetchPackage = async (id: string) => (await data.getPackageFile(team.lead, id)).bytes
    const archive = await fetchPackage(revisionId)
    const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-keys-'))
    const check = async (bytes: Uint8Array) => {
      const trust = await data.getPackageTrust(team.admin)
      const page = await checkPackage({ fileName: 'p.zip', bytes: new Uint8Array(bytes) }, trust, () =>
        Promise.resolve(null),
      )
      const files = { package: path.join(folder, 'p.zip'), keys: path.join(folder, 'keys.json') }
      writeFileSync(files.package, bytes)
      writeFileSync(files.keys, (await data.getKeyRegisterFile(team.admin)).bytes)
      const command = await runPackageVerify(current(), [files.package, '--keys', files.keys])
      // One verdict, wherever it is asked for.
      expect(command.status === 0, command.output).toBe(page.ok)
      return { page, output: command.output }
    }
    const rotate = (change: object) =>
      data.rotateSigningKey(team.admin, { reason: 'yearly change', compromisedOn: '', password: PASSWORD, ...change })
    try {
      expect((await check(archive)).output).toContain('in use since')
      const [original] = (await data.getKeyRegister(team.admin)).keys
      expect(await expectRefused(rotate({ password: 'plover' }))).toMatchObject({ issues: [{ path: ['password'] }] })
      expect(await expectRefused(rotate({ compromisedOn: '2999-01-01' }))).toMatchObject({ kind: 'invalid' })
      const { fingerprint } = await expectDone(rotate({}))
      const { keys } = await data.getKeyRegister(team.admin)
      expect(keys.map((key) => [key.fingerprint, key.retiredAt === null])).toEqual([
        [original?.fingerprint, false],
        [fingerprint, true],
      ])

      const retired = await check(archive)
      expect(retired.output).toContain('retired: in use from')
      expect(retired.page).toMatchObject({ value: { key: expect.stringContaining('yearly change') } })
      // By the key in use alone, or without any, it is what it always was.
      expect(verifyPackage(archive, { trustedKeyPem: keys[1]?.verifyingKeyPem ?? '' }).ok).toBe(false)
      expect(verifyPackage(archive).ok).toBe(true)

      const text = new TextDecoder().decode((await data.getStatusListFile(team.lead)).bytes)
      const list = readStatusList(text, keys[1]?.verifyingKeyPem ?? '')
      if (!list.ok) throw new Error('the status list does not bear the new key')
      expect(judgeStatus(revisionId, list.value, new Date(), '').word).toBe('in force')
      expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()

      const later = await fetchPackage(await makeReleasedRevision(team, 'a test of keys'))
      expect((await check(later)).page).toMatchObject({ value: { keyFingerprint: fingerprint } })

      const report = (change: object) =>
        data.reportKeyCompromised(team.admin, {
          fingerprint: original?.fingerprint ?? '',
          compromisedOn: new Date().toISOString().slice(0, 10),
          reason: 'a disk was lost',
          password: PASSWORD,
          ...change,
        })
      expect(await expectRefused(report({ fingerprint }))).toMatchObject({ issues: [{ code: 'in-use' }] })
      await expectDone(report({}))
      expect(await expectRefused(report({}))).toMatchObject({ issues: [{ code: 'later' }] })
      const doubted = await check(archive)
      expect(doubted.page.ok).toBe(false)
      expect(doubted.output).toContain('key-compromised')
      // What the other key signed is not in doubt, and the trail stands.
      expect((await check(later)).page.ok).toBe(true)
      expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  }, 400_000)

  it('sign nothing at a moment before they were in use', async () => {
    const { team } = await current().startFrom('released')
    const rotation = { reason: 'yearly change', compromisedOn: '', password: PASSWORD }
    await expectDone(data.rotateSigningKey(team.admin, rotation))
    const revisionId = await makeRevisionAt(team, 'awaiting-signature')
    await sign(team.lead, revisionId)
    const { version: seenVersion } = await data.getRevision(team.lead, revisionId)
    const order = {
      revisionId,
      seenVersion,
      purpose: 'prototypes',
      reason: 'a test of clocks',
      password: PASSWORD,
    } as const
    const restore = replaceClock(() => new Date(Date.now() - 3 * 3_600_000))
    try {
      const refusal = await expectRefused(data.releaseRevision(team.lead, order))
      expect(refusal.message).toMatch(/clock reads .* and the signing key is in use since/)
    } finally {
      restore()
    }
    expect((await data.getRevision(team.lead, revisionId)).stage).toBe('awaiting-signature')
    await expectDone(data.releaseRevision(team.lead, order))
    const { bytes } = await data.getPackageFile(team.lead, revisionId)
    const trust = await data.getPackageTrust(team.admin)
    const page = await checkPackage({ fileName: 'p.zip', bytes: new Uint8Array(bytes) }, trust, async () => null)
    expect(page.ok).toBe(true)
  }, 400_000)

  it('count for what was released while the clock was ahead, also after the key was changed by a clock set right', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const restore = replaceClock(() => new Date(Date.now() + 5 * 3_600_000))
    try {
      await sign(team.lead, revisionId)
      const { version: seenVersion } = await data.getRevision(team.lead, revisionId)
      await expectDone(
        data.releaseRevision(team.lead, { revisionId, seenVersion, purpose: 'prototypes', password: PASSWORD }),
      )
    } finally {
      restore()
    }
    const rotation = { reason: 'yearly change', compromisedOn: '', password: PASSWORD }
    await expectDone(data.rotateSigningKey(team.admin, rotation))
    const { bytes } = await data.getPackageFile(team.lead, revisionId)
    const trust = await data.getPackageTrust(team.admin)
    const page = await checkPackage({ fileName: 'p.zip', bytes: new Uint8Array(bytes) }, trust, async () => null)
    expect(page).toMatchObject({ ok: true, value: { key: expect.stringContaining('retired') } })
    expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
    const { keys } = await data.getKeyRegister(team.admin)
    expect(keys.map(({ retiredAt }) => retiredAt !== null && retiredAt > new Date().toISOString())).toEqual([
      true,
      false,
    ])
  }, 400_000)
})
