import { existsSync } from 'node:fs'
import { expect, it } from 'vitest'
import { OWN_PROCESS } from '../../own-process.mjs'
import { readSources } from './source-imports'

/** What one file would leave behind in the modules or settings of the next. */
const LEAVES_BEHIND = [
  /\bvi\.(mock|doMock|hoisted|resetModules|stubEnv)\(/,
  /^\s*process\.env\.(BENDWORTHY_|HOST|PORT|NEXTAUTH)\w* =/m,
]

it('integration tests that replace a module or a setting have a process of their own, and no others', () => {
  const tests = readSources('test/integration').filter(({ file }) => /\.test\.tsx?$/.test(file))
  expect(tests.length).toBeGreaterThan(50)
  const found = tests.filter(({ code }) => LEAVES_BEHIND.some((pattern) => pattern.test(code))).map(({ file }) => file)
  expect(found.sort()).toEqual([...OWN_PROCESS].sort())
  for (const file of OWN_PROCESS) expect(existsSync(file), file).toBe(true)
})
