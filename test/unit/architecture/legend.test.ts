import path from 'node:path'
import { expect, it } from 'vitest'
import { readSources } from './source-imports'

const SOURCES = new Map(readSources('app').map((source) => [source.file.replace(/\.tsx?$/, ''), source]))
const MARKS = 'app/_components/ui/verdict-mark'
const LEGEND = 'app/_components/review/mark-legend'

/** Everything of `app` that a file imports, and what that imports. */
function findReach(start: string): Set<string> {
  const reached = new Set<string>()
  const open = [start]
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const file = SOURCES.has(next) ? next : `${next}/index`
    if (reached.has(file)) continue
    reached.add(file)
    for (const { target, isTypeOnly } of SOURCES.get(file)?.imports ?? []) {
      if (target !== null && !isTypeOnly && target.startsWith('app/')) open.push(target)
    }
  }
  return reached
}

/** The page itself and the layouts around it. */
function listAround(page: string): string[] {
  const layouts: string[] = []
  for (let folder = path.posix.dirname(page); folder !== '.'; folder = path.posix.dirname(folder)) {
    if (SOURCES.has(`${folder}/layout`)) layouts.push(`${folder}/layout`)
  }
  return [page, ...layouts]
}

it('every page that shows marks of verdicts has the legend, itself or in the layout around it', () => {
  const pages = [...SOURCES.keys()].filter((file) => file.endsWith('/page'))
  const marked = pages.filter((page) => findReach(page).has(MARKS))
  // Those of a revision, of a project, and those that set two revisions side by side.
  expect(marked.length).toBeGreaterThanOrEqual(8)
  const without = marked.filter((page) => !listAround(page).some((file) => findReach(file).has(LEGEND)))
  expect(without).toEqual([])
})
