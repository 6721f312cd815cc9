import { expect, it, vi } from 'vitest'

/** A fresh copy of modules, as each of the server's bundles holds one; what lives with the process they share. */
async function loadCopy() {
  vi.resetModules()
  const [jobs, errors, computations] = await Promise.all([
    import('@/lib/jobs/errors'),
    import('@/lib/data/store/errors'),
    import('@/lib/data/store/computations'),
  ])
  return { ...jobs, ...errors, ...computations }
}

const limits = { seconds: 10, memoryMib: 64 }

it('a computation that one copy asks for is made by another, which opened the database', async () => {
  const [opener, asker] = [await loadCopy(), await loadCopy()]
  expect(opener.ComputationNeededError).not.toBe(asker.ComputationNeededError)
  const memory = new asker.Computed<number>(3)
  const compute = vi.fn(async () => 42)
  expect(await opener.computing(() => memory.get('key', compute))).toBe(42)
  expect(compute).toHaveBeenCalledOnce()
})

it('errors of another copy are known, and no others', async () => {
  const [first, second] = [await loadCopy(), await loadCopy()]
  const limit: unknown = new first.JobLimitError('evaluation', 'time', limits)
  expect(limit instanceof second.JobLimitError).toBe(true)
  expect(limit instanceof second.JobStoppedError).toBe(false)
  expect((new first.JobStoppedError('remedies') as unknown) instanceof second.JobStoppedError).toBe(true)
  expect((new Error('JobLimitError') as unknown) instanceof second.JobLimitError).toBe(false)
  const refused = await second.outcomeOf(async () => first.refuseBusy('Try again.'))
  expect(refused).toEqual({ ok: false, refusal: { kind: 'busy', message: 'Try again.' } })
})
