import { afterEach, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { confirmPassword } from '@/lib/data/acts/access/password-confirmation'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused, expectSignedIn } from '@/test/factories/act-results'
import { atFullPasswordCost, makeTeam, PASSWORD } from '@/test/factories/people'
import { VISIT_HERE, visitFrom, visitOnDeviceOf } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'

let restoreClock = () => {}
afterEach(() => restoreClock())

function setClock(time: string): void {
  restoreClock()
  restoreClock = replaceClock(() => new Date(time))
}

const right = (person: data.Actor) => ({ email: person.email, password: PASSWORD })
const wrong = (person: data.Actor) => ({ email: person.email, password: 'a wrong guess' })

describeOnBothDatabases('wrong passwords', () => {
  it('keeps a line of each that was refused, of an unknown address as well, and none that the limit turned away', async () => {
    const { admin, member } = await makeTeam()
    const before = (await data.listRefusedSignIns(admin)).length
    const unknown = { email: `nobody.${Date.now()}@example.org`, password: 'a wrong guess' }
    await data.authenticate(wrong(member), visitFrom('a quiet place'))
    await data.authenticate(unknown, visitFrom('a quiet place'))
    await expectDone(data.authenticate(right(member), visitFrom('a quiet place')))
    const lines = await data.listRefusedSignIns(admin)
    expect(lines.length - before).toBe(2)
    expect(lines.slice(0, 2).map(({ name, reason }) => [name, reason])).toEqual([
      [null, 'password'],
      [member.name, 'password'],
    ])
    for (let count = 0; count < 12; count++) await data.authenticate(wrong(member), visitFrom('a loud place'))
    expect((await data.listRefusedSignIns(admin)).length - before).toBe(2 + 8)
  })

  it('by a stranger end after eight from one source, also when they come together, until time passes', async () => {
    const { member } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const kinds: string[] = []
    for (let round = 0; round < 3; round += 1) {
      const guesses = Array.from({ length: 4 }, () => data.authenticate(wrong(member), visitFrom('stranger')))
      for (const outcome of await Promise.all(guesses)) kinds.push(outcome.ok ? 'in' : outcome.refusal.kind)
    }
    expect(kinds.filter((kind) => kind === 'invalid')).toHaveLength(8)
    expect(kinds.filter((kind) => kind === 'too-many')).toHaveLength(4)
    const refusal = await expectRefused(data.authenticate(right(member), visitFrom('stranger')))
    expect(refusal).toMatchObject({ kind: 'too-many', message: expect.stringMatching(/15 min/) })
    setClock('2027-03-01T08:16:00Z')
    await expectDone(data.authenticate(right(member), visitFrom('stranger')))
    expect(JSON.stringify(await db().signInAttempt.findMany())).not.toContain(member.email)
  }, 400_000)

  it.each([8, 50])(
    '%i of them lock a lead out neither of signing in on a device of theirs, nor of signing',
    async (count) => {
      const { lead } = await makeTeam()
      for (let index = 0; index < count; index += 1) {
        // From a handful of places, so that more than one limit is reached.
        await data.authenticate(wrong(lead), visitFrom(`stranger ${index % Math.ceil(count / 18)}`))
      }
      expect((await data.authenticate(right(lead), visitFrom('stranger 0'))).ok).toBe(false)
      const { sessionId } = await expectSignedIn(data.authenticate(right(lead), visitOnDeviceOf(lead.userId)))
      const actor = await data.findActor(sessionId, VISIT_HERE)
      if (actor === null) throw new Error('no session')
      expect(await confirmPassword(actor, PASSWORD, 'password')).toMatch(/^scrypt/)
      // Nor of signing in again from a place of their own.
      await expectDone(data.authenticate(right(lead), visitFrom('a new machine')))
      const told = await db().trailRecord.findMany({
        where: { action: 'attempts-limited', subjectId: lead.userId },
      })
      expect(told).toHaveLength(1)
    },
    400_000,
  )

  it('on a known device are counted there, wherever it is carried', async () => {
    const { lead } = await makeTeam()
    for (let index = 0; index < 8; index += 1) {
      await data.authenticate(wrong(lead), visitOnDeviceOf(lead.userId, `place ${index}`))
    }
    const carried = visitOnDeviceOf(lead.userId, 'elsewhere')
    expect(await expectRefused(data.authenticate(right(lead), carried))).toMatchObject({ kind: 'too-many' })
    // The note of a device names people: it is no pass for anybody else's account.
    const { lead: other } = await makeTeam()
    await data.authenticate(wrong(other), visitOnDeviceOf(lead.userId, 'thief'))
    const counted = await db().signInAttempt.findMany({ where: { sourceKey: 'thief' } })
    expect(counted).toMatchObject([{ deviceKey: null }])
  }, 400_000)

  it('while signed in are counted by session: one that was left open does not lock the others', async () => {
    const { lead } = await makeTeam()
    const open = async () => {
      const { sessionId } = await data.openSession(lead.userId, 'invitation', VISIT_HERE)
      const actor = await data.findActor(sessionId, VISIT_HERE)
      if (actor === null) throw new Error('no session')
      return actor
    }
    const [left, own] = [await open(), await open()]
    const change = (actor: data.Actor, currentPassword: string) =>
      data.changePassword(actor, { currentPassword, newPassword: 'godwit-curlew-dunlin' })
    for (let index = 0; index < 8; index += 1) await expectRefused(change(left, 'a wrong guess'))
    expect(await expectRefused(change(left, PASSWORD))).toMatchObject({ kind: 'too-many' })
    await expectDone(change(own, PASSWORD))
  }, 400_000)

  it('of one source over many addresses end after twenty of them, for a day', async () => {
    const { lead } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const ask = (address: string) =>
      data.authenticate({ email: address, password: 'Winter-2027-in' }, visitFrom('sprayer'))
    const kinds: string[] = []
    for (let hour = 0; hour < 23; hour += 1) {
      // One an hour: no window of minutes ever fills.
      setClock(new Date(Date.parse('2027-03-01T08:00:00Z') + hour * 3_600_000).toISOString())
      const outcome = await ask(`person.${hour}@quillmoor.example`)
      kinds.push(outcome.ok ? 'in' : outcome.refusal.kind)
    }
    expect(kinds.slice(0, 20)).toEqual(Array.from({ length: 20 }, () => 'invalid'))
    expect(kinds.slice(20)).toEqual(['too-many', 'too-many', 'too-many'])
    expect((await data.authenticate(right(lead), visitFrom('sprayer'))).ok).toBe(false)
    await expectDone(data.authenticate(right(lead), visitFrom('somebody else')))
  }, 400_000)
})

describeOnBothDatabases('a crowd at the door', () => {
  it('waits in a bounded queue: whom it cannot take is told at once, and an honest one is soon in', async () => {
    const { lead, member } = await makeTeam()
    const crowd = Array.from({ length: 24 }, (_, index) => async () => {
      const startedAt = performance.now()
      // Unknown addresses cost the full hash.
      const email = `person.${index % 4}@nowhere.example`
      const outcome = await data.authenticate({ email, password: 'x' }, visitFrom('crowd'))
      return { kind: outcome.ok ? 'in' : outcome.refusal.kind, ms: performance.now() - startedAt }
    })
    const time = async (visit: data.Visit, person: data.Actor) => {
      const startedAt = performance.now()
      await expectDone(data.authenticate(right(person), visit))
      return performance.now() - startedAt
    }
    const timeAll = () =>
      Promise.all([
        Promise.all(crowd.map((ask) => ask())),
        time(visitOnDeviceOf(lead.userId), lead),
        time(visitFrom('an honest place'), member),
      ])
    const [answers, known, strange] = await atFullPasswordCost(timeAll)
    const busy = answers.filter(({ kind }) => kind === 'busy')
    const hashed = answers.filter(({ kind }) => kind === 'invalid')
    expect(busy.length + hashed.length).toBe(24)
    // One at work and four waiting, from one source.
    expect(hashed.length).toBeGreaterThanOrEqual(5)
    expect(busy.length).toBeGreaterThanOrEqual(12)
    const perHash = Math.max(...hashed.map(({ ms }) => ms)) / hashed.length
    // A known device waits for no stranger; another one for those who came before, which are few.
    expect(known).toBeLessThan(strange)
    expect(strange).toBeLessThan(perHash * (hashed.length + 3))
    expect(Math.max(...busy.map(({ ms }) => ms))).toBeLessThan(Math.max(...hashed.map(({ ms }) => ms)))
  }, 400_000)
})
