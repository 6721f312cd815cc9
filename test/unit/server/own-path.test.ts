import { describe, expect, it } from 'vitest'
import { makeOwnPath } from '@/lib/inputs'

describe('an address to go on to', () => {
  it.each(['/', '/projects/1?x=1#a', '/verify-package', '/projects/a%2Fb', '/a//b'])(
    'inside the application is followed: %s',
    (path) => {
      expect(makeOwnPath(path)).toBe(path)
    },
  )

  it.each([
    ['/\thost.example/', 'a tab is dropped by the parser'],
    ['/\nhost.example', 'a line end too'],
    ['/\r/host.example', 'and a return'],
    ['/\t/host.example', 'between two slashes'],
    ['//host.example', 'without a scheme'],
    ['/\\host.example', 'a backslash is a slash'],
    ['\\\\host.example', 'two of them'],
    ['/.//host.example', 'a path that would be read as a host'],
    ['/a/..//host.example', 'and by way of a folder'],
    ['https://host.example/', 'whole'],
    ['https:host.example', 'a scheme alone'],
    ['javascript:alert(1)', 'no address of a page'],
    ['data:text/html,x', 'nor this'],
    ['http://this.invalid@host.example/', 'a name before the host'],
    [' //host.example', 'after a space'],
    ['/\u0000/host.example\u0000', 'with a NUL'],
    [['/a', '/b'], 'twice given'],
    [undefined, 'not given'],
  ])('elsewhere is never an address of ours: %j (%s)', (asked, _why) => {
    const path = makeOwnPath(asked)
    const base = 'https://review.example.org'
    // A single slash and a name is a page of ours that does not exist; nothing may lead to another host.
    if (path !== null) expect(new URL(path, base).origin).toBe(base)
    if (path !== null) expect(path).not.toMatch(/^\/\/|\\/)
  })

  it('is compared with the origin that is given', () => {
    expect(makeOwnPath('https://review.example.org/a', 'https://review.example.org')).toBe('/a')
    expect(makeOwnPath('https://review.example.org.evil.example/a', 'https://review.example.org')).toBeNull()
    expect(makeOwnPath('http://review.example.org/a', 'https://review.example.org')).toBeNull()
    expect(makeOwnPath('https://review.example.org:444/a', 'https://review.example.org')).toBeNull()
    expect(makeOwnPath('//host.example', 'https://review.example.org')).toBeNull()
    expect(makeOwnPath('/\t/host.example')).toBeNull()
    expect(makeOwnPath('/.//host.example')).toBeNull()
    expect(makeOwnPath('/\\host.example')).toBeNull()
  })
})
