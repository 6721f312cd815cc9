import { afterEach, expect, it, vi } from 'vitest'
import { hashPassword, replacePasswordCost } from '@/lib/data/records/passwords'
import { readSources } from '../architecture/source-imports'

const costOf = async () => (await hashPassword('plover-sandpiper-42', 'known')).split('$').slice(0, 4).join('$')

afterEach(() => vi.unstubAllEnvs())

it('is the shipped one until a test lowers it, and again afterwards', async () => {
  // OWASP password storage cheat sheet (2023): scrypt with N = 2^17, r = 8, p = 1.
  expect(await costOf()).toBe('scrypt$17$8$1')
  const restore = replacePasswordCost(10)
  expect(await costOf()).toBe('scrypt$10$8$1')
  restore()
  expect(await costOf()).toBe('scrypt$17$8$1')
})

it('cannot be lowered in production, and nothing that is shipped tries', () => {
  vi.stubEnv('NODE_ENV', 'production')
  expect(() => replacePasswordCost(10)).toThrow(/production/)
  const callers = ['app', 'lib', 'seed']
    .flatMap((folder) => readSources(folder))
    .filter(({ code }) => code.includes('replacePasswordCost('))
  expect(callers.map(({ file }) => file)).toEqual(['lib/data/records/passwords.ts'])
})
