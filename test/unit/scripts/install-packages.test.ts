import { describe, expect, it } from 'vitest'
import { isPackageMissing } from '../../../scripts/steps/install-packages.mjs'

const WANTED = {
  '': {},
  'node_modules/served': { version: '1.0.0' },
  'node_modules/other-system': { version: '1.0.0', optional: true },
  'node_modules/tested-with': { version: '1.0.0', dev: true },
  'node_modules/tested-or-optional': { version: '1.0.0', devOptional: true },
}
const served = { 'node_modules/served': { version: '1.0.0' } }
const tools = { 'node_modules/tested-with': { version: '1.0.0' } }

describe('packages', () => {
  it('that only tests use are wanted for tests alone', () => {
    expect(isPackageMissing(WANTED, served, false)).toBe(false)
    expect(isPackageMissing(WANTED, served, true)).toBe(true)
    const both = { 'node_modules/tested-or-optional': { version: '1.0.0' } }
    expect(isPackageMissing(WANTED, { ...served, ...tools, ...both }, true)).toBe(false)
  })

  it('that are absent, or there in another version, are installed anew', () => {
    expect(isPackageMissing(WANTED, {}, false)).toBe(true)
    expect(isPackageMissing(WANTED, { 'node_modules/served': { version: '1.0.1' } }, false)).toBe(true)
    expect(isPackageMissing(WANTED, { ...served, 'node_modules/tested-with': { version: '2.0.0' } }, false)).toBe(true)
  })
})
