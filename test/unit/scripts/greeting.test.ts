import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { listGreetingLines } from '../../../scripts/steps/greeting.mjs'
import { rootFolder } from '../../../scripts/steps/places.mjs'

const plan = {
  publicUrl: 'http://127.0.0.1:3000',
  dataFolder: path.join(rootFolder, 'data'),
  signIns: [],
  isEmpty: false,
  isLoopback: true,
}

describe('what is said once the server answers', () => {
  it('names address and data folder', () => {
    expect(listGreetingLines(plan)).toEqual([
      'Bendworthy is at http://127.0.0.1:3000 (data in ./data; Ctrl-C stops it)',
    ])
    expect(listGreetingLines({ ...plan, dataFolder: '/srv/bendworthy' })[0]).toContain('data in /srv/bendworthy;')
  })

  it('sends to the set-up page only where that page lets somebody in', () => {
    expect(listGreetingLines({ ...plan, isEmpty: true }).at(-1)).toContain('open the address on this machine')
    const beyond = listGreetingLines({ ...plan, isEmpty: true, isLoopback: false }).join(' ')
    expect(beyond).not.toContain('open the address')
    expect(beyond).toContain('npm start -- --empty')
  })

  it('lists demo sign-ins in columns', () => {
    const signIns = [
      { email: 'a@example.org', password: 'plover', name: 'Imke Dahl', role: 'lead' },
      { email: 'long@example.org', password: 'x', name: 'Bo', role: 'member' },
    ]
    const [, head, first, second] = listGreetingLines({ ...plan, signIns })
    expect(head).toContain('this machine only')
    expect(first?.indexOf('plover')).toBe(second?.indexOf('x', 20))
  })
})
