import { describe, expect, it } from 'vitest'
import { checkFloors } from './floor-rules'
import {
  checkAppImports,
  checkLibImports,
  checkPurity,
  checkServerOnly,
  PURE_FOLDERS,
  SERVER_FOLDERS,
} from './import-rules'
import { parseSource, readSources } from './source-imports'

describe('imports point one way', () => {
  it('within lib, through the index of each folder', () => {
    const sources = readSources('lib')
    expect(sources.length).toBeGreaterThan(20)
    expect(sources.flatMap(checkLibImports)).toEqual([])
  })

  it('within lib/data, from a floor to those below it', () => {
    const sources = readSources('lib/data')
    expect(sources.length).toBeGreaterThan(100)
    expect(sources.flatMap(checkFloors)).toEqual([])
  })

  it('from app to lib, with server code kept from client components', () => {
    expect(readSources('app').flatMap(checkAppImports)).toEqual([])
  })

  it('with a directive first in its file, where alone it is one', () => {
    const misplaced = readSources('app').filter(({ code }) => {
      const [first = ''] = code.trimStart().split('\n')
      return /^\W*['"]use (client|server)['"]\W*$/m.test(code) && !/^['"]use (client|server)['"]/.test(first)
    })
    expect(misplaced.map(({ file }) => file)).toEqual([])
  })

  it.each(PURE_FOLDERS)('and lib/%s runs anywhere', (folder) => {
    expect(readSources(`lib/${folder}`).flatMap(checkPurity)).toEqual([])
  })

  it.each(SERVER_FOLDERS)('and lib/%s is marked as for the server only', (folder) => {
    expect(readSources(`lib/${folder}`).flatMap(checkServerOnly)).toEqual([])
  })
})

describe('the rules notice', () => {
  const lib = (file: string, text: string) => checkLibImports(parseSource(file, text))

  it('an import against the arrows, however it is written', () => {
    const forms = [
      `import { db } from '@/lib/data'`,
      `import {\n  db,\n} from '@/lib/data'`,
      `export { db } from '../../data'`,
      `import '@/lib/data'`,
      `const { db } = await import('@/lib/data')`,
      `import type { Row } from '@/lib/data'`,
    ]
    for (const text of forms) {
      expect(lib('lib/engine/bending/strain.ts', text), text).toEqual([
        expect.stringContaining('lib/engine may not import lib/data'),
      ])
    }
  })

  it('an import of a folder’s insides, of app, of Prisma, and a folder without a rule', () => {
    expect(lib('lib/review/path.ts', `import { a } from '@/lib/engine/index'`)).toEqual([
      expect.stringContaining('not its insides'),
    ])
    expect(lib('lib/review/path.ts', `import { a } from '@/app/page'`)).toEqual([
      expect.stringContaining('outside lib'),
    ])
    expect(lib('lib/review/path.ts', `import { a } from '@prisma/client'`)).toEqual([expect.stringContaining('Prisma')])
    expect(lib('lib/novelty/a.ts', '')).toEqual([expect.stringContaining('not in the import table')])
  })

  it('but not an import that is allowed, nor one in a comment', () => {
    expect(lib('lib/engine/a.ts', `import type { Polygon } from '@/lib/geometry'`)).toEqual([])
    expect(lib('lib/engine/a.ts', `// import { db } from '@/lib/data'\n/* import '@/lib/data' */`)).toEqual([])
    expect(lib('lib/data/a.ts', `import { evaluate } from '@/lib/engine'`)).toEqual([])
  })

  it('in lib/data an import of a floor above, of the door, and a file on no floor', () => {
    const data = (file: string, text: string) => checkFloors(parseSource(file, text))
    expect(data('lib/data/records/a.ts', `import { write } from '../consequences/write'`)).toEqual([
      expect.stringContaining('records may not import consequences'),
    ])
    expect(data('lib/data/reads/a.ts', `import type { A } from '@/lib/data/acts/review/answers'`)).toEqual([
      expect.stringContaining('reads may not import acts'),
    ])
    expect(data('lib/data/acts/a.ts', `import { a } from '@/lib/data'`)).toEqual([expect.stringContaining('the door')])
    expect(data('lib/data/a.ts', '')).toEqual([expect.stringContaining('on no floor')])
    expect(data('lib/data/acts/review/a.ts', `import { read } from '../../reads/read'`)).toEqual([])
  })

  it('clock, chance, system and framework in a pure folder', () => {
    const impure = [
      `import { readFileSync } from 'node:fs'`,
      `import { useState } from 'react'`,
      `import { headers } from 'next/headers'`,
      'const at = Date.now()',
      'const at = new Date()',
      'const draw = Math.random()',
      'const mode = process.env.MODE',
    ]
    for (const text of impure) expect(checkPurity(parseSource('lib/engine/a.ts', text)), text).toHaveLength(1)
    expect(
      checkPurity(parseSource('lib/engine/a.ts', 'const at = new Date(2026, 1)\n// Math.random is not used')),
    ).toEqual([])
  })

  it('server code in a client component, unless only its types are used', () => {
    const client = (text: string) => checkAppImports(parseSource('app/a.tsx', `'use client'\n${text}`))
    expect(client(`import { db } from '@/lib/data'`)).toEqual([expect.stringContaining('pure folders only')])
    expect(client(`import { type A, type B } from '@/lib/data'`)).toEqual([])
  })

  it('a server file without its mark', () => {
    const server = (text: string) => checkServerOnly(parseSource('lib/data/a.ts', text))
    expect(server('export const a = 1')).toHaveLength(1)
    expect(server(`import 'server-only'\nexport const a = 1`)).toEqual([])
    expect(server('export type A = string')).toEqual([])
  })
})
