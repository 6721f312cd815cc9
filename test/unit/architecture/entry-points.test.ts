import { describe, expect, it } from 'vitest'
import { checkDataReads, checkRouteHandler, checkServerActions } from './entry-point-rules'
import { parseSource, readSources } from './source-imports'

const app = () => readSources('app')

describe('every way into the server', () => {
  it('that is a server action goes through the wrapper', () => {
    const files = app().filter(({ code }) => code.includes('use server'))
    expect(files.length).toBeGreaterThan(4)
    expect(files.flatMap(checkServerActions)).toEqual([])
  })

  it('that is a route handler goes through the wrapper', () => {
    const files = app().filter(({ file }) => /\/route\.tsx?$/.test(file))
    expect(files.length).toBeGreaterThan(4)
    expect(files.flatMap(checkRouteHandler)).toEqual([])
  })

  it('that is a page reads data for a person who is known', () => {
    expect(app().flatMap(checkDataReads)).toEqual([])
  })
})

it('a directive comes before all else: further down the bundler refuses it, and only a build would tell', () => {
  const late = ({ code }: { readonly code: string }) =>
    /^;?\(?['"]use (client|server)['"]/m.test(code.trimStart().replace(/^['"]use (client|server)['"]/, ''))
  expect(
    app()
      .filter(late)
      .map(({ file }) => file),
  ).toEqual([])
  expect(late({ code: "import { a } from 'b'\n;('use client')\n" })).toBe(true)
  expect(late({ code: "'use client'\nimport { a } from 'b'\n" })).toBe(false)
})

describe('the rules notice', () => {
  const action = (text: string) => checkServerActions(parseSource('app/x/actions.ts', text))
  const route = (text: string) => checkRouteHandler(parseSource('app/api/x/route.ts', text))
  const page = (text: string) => checkDataReads(parseSource('app/x/page.tsx', text))

  it('an action that is a plain function, an inline one, and a visitor’s act that is none of the two', () => {
    expect(action(`'use server'\nexport async function save() {}`)).toHaveLength(1)
    expect(action(`'use server'\nexport const save = async () => {}`)).toHaveLength(1)
    expect(action(`'use server'\nexport default action(schema, run)`)).toHaveLength(1)
    expect(action(`'use server'\nconst a = 1\nexport { a }`)).toHaveLength(1)
    expect(action(`export function Page() { async function save() { 'use server' } }`)).toHaveLength(1)
    expect(action(`'use server'\nexport const save = visitorAction(schema, data.saveDesign)`)).toHaveLength(1)
    expect(action(`'use server'\nexport const save = action(schema, data.saveDesign)`)).toEqual([])
  })

  it('a handler that is a plain function, and a visitor’s route that reads data', () => {
    expect(route(`export async function GET() { return new Response() }`)).toHaveLength(1)
    expect(route(`export const POST = async () => new Response()`)).toHaveLength(1)
    expect(route(`function f() {}\nexport { f as GET }`)).toHaveLength(1)
    expect(route(`import { x } from '@/lib/data'\nexport const GET = visitorRoute(async () => x())`)).toHaveLength(1)
    expect(route(`export const GET = route((actor) => x(actor))`)).toEqual([])
  })

  it('a page that reads without an actor', () => {
    const read = `import { getProject } from '@/lib/data'\nexport default function Page() { return getProject(fake, id) }`
    expect(page(read)).toHaveLength(1)
    const known = `const actor = await requireActor()\n${read}`
    expect(page(known)).toHaveLength(1)
    expect(page(known.replace('fake', 'actor'))).toEqual([])
    expect(page(`import { isWorkspaceEmpty } from '@/lib/data'\nisWorkspaceEmpty()`)).toEqual([])
    expect(page(`import { markAccountsAsDemo } from '@/lib/data'\nmarkAccountsAsDemo()`)).toHaveLength(1)
  })
})
