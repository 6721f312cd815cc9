import { readFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'

const ran = vi.hoisted((): string[][] => [])

vi.mock('node:fs', async (original) => ({
  ...(await original<object>()),
  existsSync: (file: string) => file === '/usr/bin/apt-get',
}))
vi.mock('../../../scripts/steps/run-program.mjs', async (original) => ({
  ...(await original<object>()),
  say: () => undefined,
  runQuietly: async (_title: string, program: string, args: string[]) => {
    ran.push([program, ...args])
  },
}))

describe('a missing browser', () => {
  const provide = async (options?: { mayInstallSystemPackages: boolean }) => {
    ran.length = 0
    vi.stubEnv('CHROMIUM_PATH', '')
    vi.spyOn(process, 'getuid').mockReturnValue(0)
    const { provideBrowser } = await import('../../../scripts/steps/find-browser.mjs')
    await expect(provideBrowser(options)).rejects.toThrow(/--install-system-packages/)
    return ran.map(([program]) => program)
  }

  it('is never installed as a package of the system unless the flag says so', async () => {
    expect(await provide()).toEqual([process.execPath])
    expect(await provide({ mayInstallSystemPackages: true })).toEqual(['apt-get', 'apt-get', process.execPath])
  })

  it('is installed so on the machine that decides about a change', () => {
    expect(readFileSync('.ci/run', 'utf8')).toMatch(/^exec npm test -- --install-system-packages$/m)
  })
})
