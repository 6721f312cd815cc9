import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { listGreetingLines } from '../../../scripts/steps/greeting.mjs'
import { rootFolder } from '../../../scripts/steps/places.mjs'

const plan = {
  publicUrl: 'http://127.0.0.1:3000',
  dataFolder: path.join(rootFolder, 'data'),
  signIns: [],
  setupCode: null,
}

describe('what is said once the server answers', () => {
  it('names address and data folder', () => {
    expect(listGreetingLines(plan)).toEqual([
      'Bendworthy is at http://127.0.0.1:3000 (data in ./data; Ctrl-C stops it)',
    ])
    expect(listGreetingLines({ ...plan, dataFolder: '/srv/bendworthy' })[0]).toContain('data in /srv/bendworthy;')
  })

  it('prints the set-up code only where somebody is to set it up', () => {
    expect(listGreetingLines(plan).join(' ')).not.toContain('code')
    const lines = listGreetingLines({ ...plan, setupCode: 'ABCD-EFGH-2345' })
    expect(lines.at(-1)).toContain('ABCD-EFGH-2345')
    expect(lines.at(-2)).toContain('create the first administrator')
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
