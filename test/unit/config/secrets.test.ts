import { sign, verify } from 'node:crypto'
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { ensureSecrets } from '@/lib/config'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-secrets-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const modeOf = (...parts: string[]) => (statSync(path.join(folder, ...parts)).mode & 0o777).toString(8)

describe('secrets', () => {
  it('are made once and kept', () => {
    const first = ensureSecrets(folder)
    expect(ensureSecrets(folder)).toEqual(first)
    expect(first.sessionSecret.length).toBeGreaterThanOrEqual(64)
    expect(readdirSync(path.join(folder, 'secrets')).sort()).toEqual([
      'session-secret',
      'signing-key.pem',
      'verifying-key.pem',
    ])
  })

  it('differ between installations', () => {
    const other = mkdtempSync(path.join(tmpdir(), 'bendworthy-secrets-'))
    try {
      expect(ensureSecrets(other).sessionSecret).not.toBe(ensureSecrets(folder).sessionSecret)
      expect(ensureSecrets(other).signingKeyPem).not.toBe(ensureSecrets(folder).signingKeyPem)
    } finally {
      rmSync(other, { recursive: true, force: true })
    }
  })

  it('sign and verify with an Ed25519 key (RFC 8032)', () => {
    const { signingKeyPem, verifyingKeyPem } = ensureSecrets(folder)
    const text = Buffer.from('manifest')
    const signature = sign(null, text, signingKeyPem)
    expect(signature).toHaveLength(64)
    expect(verify(null, text, verifyingKeyPem, signature)).toBe(true)
    expect(verify(null, Buffer.from('another'), verifyingKeyPem, signature)).toBe(false)
  })

  it.skipIf(process.platform === 'win32')('are for their owner only, also in a folder that was open to others', () => {
    mkdirSync(path.join(folder, 'secrets'), { mode: 0o755 })
    ensureSecrets(folder)
    chmodSync(path.join(folder, 'secrets', 'session-secret'), 0o644)
    ensureSecrets(folder)
    expect(modeOf('secrets')).toBe('700')
    for (const name of readdirSync(path.join(folder, 'secrets'))) expect(modeOf('secrets', name), name).toBe('600')
  })

  it('that were damaged are named rather than replaced', () => {
    ensureSecrets(folder)
    writeFileSync(path.join(folder, 'secrets', 'signing-key.pem'), 'nonsense')
    expect(() => ensureSecrets(folder)).toThrow(/signing-key\.pem is not an Ed25519 private key/)
    rmSync(path.join(folder, 'secrets', 'signing-key.pem'))
    writeFileSync(path.join(folder, 'secrets', 'session-secret'), 'short')
    expect(() => ensureSecrets(folder)).toThrow(/session-secret is too short/)
  })
})
