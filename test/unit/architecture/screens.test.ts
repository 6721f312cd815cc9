import { existsSync, readdirSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { rootFolder } from '../../../scripts/steps/places.mjs'
import { listScreens, NO_SCENE, SHOWN_ELSEWHERE } from '../../e2e/screens'

const PAGES = readdirSync(path.join(rootFolder, 'app'), { recursive: true, encoding: 'utf8' })
  .map((file) => `app/${file.split(path.sep).join('/')}`)
  .filter((file) => file.endsWith('/page.tsx'))

const segmentsOf = (text: string) => text.split('/').filter((segment) => segment !== '')

/** The page that an address leads to: a fixed folder before one that takes any value, as the framework chooses. */
function findPage(address: string): string | null {
  const wanted = segmentsOf(address.replace(/[?#].*$/, ''))
  const fits = PAGES.filter((page) => {
    // Folders in parentheses group pages and are no part of an address.
    const folders = segmentsOf(page)
      .slice(1, -1)
      .filter((folder) => !folder.startsWith('('))
    return (
      folders.length === wanted.length && folders.every((folder, at) => folder.startsWith('[') || folder === wanted[at])
    )
  })
  const countFree = (page: string) => page.split('[').length
  return fits.sort((a, b) => countFree(a) - countFree(b))[0] ?? null
}

describe('the list of screens that are checked for accessibility', () => {
  const screens = listScreens(NO_SCENE)

  it('holds every page under app, or names the test that visits it', () => {
    expect(PAGES.length).toBeGreaterThan(40)
    const visited = new Set(screens.map(({ path: address }) => findPage(address)))
    expect(PAGES.filter((page) => !visited.has(page) && SHOWN_ELSEWHERE[page] === undefined)).toEqual([])
    for (const [page, test] of Object.entries(SHOWN_ELSEWHERE)) {
      expect(PAGES, page).toContain(page)
      expect(existsSync(path.join(rootFolder, test)), test).toBe(true)
    }
  })

  it('leads each screen to a page, but for the one that shows what is not there', () => {
    expect(screens.filter(({ path: address }) => findPage(address) === null).map(({ name }) => name)).toEqual([])
    expect(new Set(screens.map(({ name }) => name)).size).toBe(screens.length)
  })
})
