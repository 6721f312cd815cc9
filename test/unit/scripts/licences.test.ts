import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { listLicences, writeLicencePage } from '@/scripts/steps/list-licences.mjs'

it('lists each package that is shipped with a licence that was looked at', () => {
  const licences = listLicences()
  expect(licences.length).toBeGreaterThan(100)
  expect(licences.filter(({ isAllowed }) => !isAllowed)).toEqual([])
  expect(licences).toContainEqual({ name: 'prom-client', version: '15.1.3', licence: 'Apache-2.0', isAllowed: true })
})

it('stands in docs/licences.md as the lock file has it: npm run licences', () => {
  expect(readFileSync(path.join('docs', 'licences.md'), 'utf8')).toBe(writeLicencePage())
})
