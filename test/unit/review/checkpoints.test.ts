import { generateKeyPairSync } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import {
  type CheckpointedTrail,
  checkTrailWithCheckpoints,
  hashCheckpoint,
  makeCheckpoint,
  type TrailCheckpoint,
} from '@/lib/package'
import { chainRecord, type TrailRecord } from '@/lib/review'

function makeKeys() {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519')
  return {
    signing: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    verifying: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
  }
}

const keys = makeKeys()
const AT = '2027-03-01T09:00:00.000Z'

function makeRecords(count: number, action = 'design-saved'): TrailRecord[] {
  const records: TrailRecord[] = []
  for (let step = 0; step < count; step += 1) {
    records.push(
      chainRecord(records.at(-1) ?? null, {
        at: AT,
        actor: { userId: 'user-1', name: 'Mara Tolland' },
        action,
        subject: { kind: 'revision', id: 'r', projectId: 'p', revisionId: 'r', companyId: null },
        details: { step },
      }),
    )
  }
  return records
}

function makeCheckpoints(records: readonly TrailRecord[], sequences: readonly number[], key = keys): TrailCheckpoint[] {
  const checkpoints: TrailCheckpoint[] = []
  for (const sequence of sequences) {
    const last = checkpoints.at(-1)
    const unsigned = {
      sequence,
      hash: records[sequence - 1]?.hash ?? '',
      trailId: records[0]?.hash ?? '',
      at: AT,
      previousHash: last === undefined ? '' : hashCheckpoint(last),
    }
    checkpoints.push(makeCheckpoint(unsigned, key.signing))
  }
  return checkpoints
}

const records = makeRecords(8)
const checkpoints = makeCheckpoints(records, [1, 4, 8])
const whole: CheckpointedTrail = {
  records,
  isExtract: false,
  checkpoints,
  others: checkpoints,
  verifyingKeyPem: keys.verifying,
}
const check = (change: Partial<CheckpointedTrail>) => checkTrailWithCheckpoints({ ...whole, ...change })
const faultOf = (change: Partial<CheckpointedTrail>) => {
  const found = check(change)
  return found.ok ? null : `${found.fault.sequence} ${found.fault.code}`
}

describe('a trail with checkpoints', () => {
  test('fits, also with none at all and as an extract', () => {
    expect(check({}).ok).toBe(true)
    expect(check({ checkpoints: [], others: [] }).ok).toBe(true)
    expect(check({ records: [], checkpoints: [], others: [] }).ok).toBe(true)
    const extract = records.filter(({ sequence }) => sequence !== 4)
    expect(check({ records: extract, isExtract: true, checkpoints: checkpoints.slice(-1), others: [] }).ok).toBe(true)
  })

  test('a tail that was cut off is named by its first missing record', () => {
    for (let kept = 0; kept < 8; kept += 1) {
      expect(faultOf({ records: records.slice(0, kept) })).toBe(`${kept + 1} head`)
    }
    const found = check({ records: records.slice(0, 5) })
    expect(found.ok ? '' : found.fault.reason).toContain('records 6 to 8 were cut off')
  })

  test('a tail that was cut off together with its checkpoints shows by those kept elsewhere', () => {
    const cut = { records: records.slice(0, 5), checkpoints: checkpoints.slice(0, 2) }
    expect(faultOf(cut)).toBe('6 head')
    expect(faultOf({ ...cut, others: [] })).toBeNull()
  })

  test('a trail that was rewritten, with every hash right, shows at the first checkpoint', () => {
    expect(faultOf({ records: makeRecords(8, 'nothing') })).toBe('1 head')
    const from = 5
    const rest: TrailRecord[] = records.slice(0, from)
    while (rest.length < 8) {
      const next = records[rest.length]
      if (next !== undefined) rest.push(chainRecord(rest.at(-1) ?? null, { ...next, action: 'other' }))
    }
    expect(faultOf({ records: rest })).toBe('8 head')
  })

  test('every column of a checkpoint is covered by its signature', () => {
    const tampers: ((checkpoint: TrailCheckpoint) => TrailCheckpoint)[] = [
      (c) => ({ ...c, sequence: c.sequence + 1 }),
      (c) => ({ ...c, hash: 'f'.repeat(64) }),
      (c) => ({ ...c, trailId: 'f'.repeat(64) }),
      (c) => ({ ...c, at: '2027-03-01T09:00:00.001Z' }),
      (c) => ({ ...c, previousHash: 'f'.repeat(64) }),
      (c) => ({
        ...c,
        signature: `A${c.signature.slice(1)}` === c.signature ? `B${c.signature.slice(1)}` : `A${c.signature.slice(1)}`,
      }),
    ]
    for (const tamper of tampers) {
      for (let at = 0; at < checkpoints.length; at += 1) {
        const changed = checkpoints.map((checkpoint, index) => (index === at ? tamper(checkpoint) : checkpoint))
        expect(faultOf({ checkpoints: changed })).toMatch(/checkpoint$/)
        expect(faultOf({ others: changed })).toMatch(/checkpoint$/)
      }
    }
  })

  test('a checkpoint that is taken out, at either end or between, and one of another key', () => {
    for (let at = 0; at < checkpoints.length; at += 1) {
      expect(faultOf({ checkpoints: checkpoints.filter((_, index) => index !== at) })).toMatch(/checkpoint$/)
    }
    expect(faultOf({ checkpoints: [] })).toMatch(/checkpoint$/)
    expect(faultOf({ checkpoints: makeCheckpoints(records, [1, 4, 8], makeKeys()) })).toBe('1 checkpoint')
  })

  test('those of another trail are passed over, and a fault of the chain speaks first', () => {
    const other = makeCheckpoints(makeRecords(3, 'elsewhere'), [3])
    expect(check({ others: [...checkpoints, ...other] }).ok).toBe(true)
    const bent = records.map((record) => (record.sequence === 2 ? { ...record, action: 'x' } : record))
    expect(faultOf({ records: bent.slice(0, 6) })).toBe('2 hash')
  })

  test('a key that is none is an error, not a pass', () => {
    expect(() => check({ verifyingKeyPem: 'nonsense' })).toThrow('not an Ed25519 public key')
  })
})
