import { expect, it } from 'vitest'
import { nameAddress } from '@/lib/server/request-address'

it('keeps no link’s secret and no query in the log', () => {
  expect(nameAddress('/invitation/s3cr3t-of-a-link')).toBe('/invitation/***')
  expect(nameAddress('/reset-password/s3cr3t?x=1')).toBe('/reset-password/***')
  expect(nameAddress('/confirm-address/s3cr3t/more')).toBe('/confirm-address/***')
  expect(nameAddress('https://review.example.org/api/keys?x=1')).toBe('/api/keys')
  expect(nameAddress('/?find=unreleased+name')).toBe('/')
  expect(nameAddress('/projects/p1/revisions/r1?page=2')).toBe('/projects/p1/revisions/r1')
})
