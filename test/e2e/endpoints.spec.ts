import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { ENDPOINTS, ENTRIES_OF_OTHERS, type Endpoint, VISITORS_ACTS, WALKERS, type WalkScene } from './endpoints'
import { expect, test } from './fixtures'
import { type HttpClient, openHttpClient } from './http-client'

/** Every page, route and act of the build, driven over HTTP: by everybody who differs in rights, and by somebody without an account. */

const readBuilt = (name: string): unknown => JSON.parse(readFileSync(`.next/${name}`, 'utf8'))
const routesSchema = z.record(z.string(), z.string())
const actsSchema = z.object({
  node: z.record(z.string(), z.object({ exportedName: z.string(), workers: z.record(z.string(), z.unknown()) })),
})

const NOWHERE = '00000000-0000-4000-8000-000000000000'
const FIXED_IDS: WalkScene = {
  kind: 'matrix',
  format: 'csv',
  version: '1',
  token: 'used-up',
  purpose: 'artwork',
  jobId: NOWHERE,
}

/** @throws where a part of the address has no id */
function fill(pattern: string, ids: WalkScene): string {
  return pattern.replaceAll(/\[(?:\.\.\.)?(\w+)\]/g, (_, name: string) => {
    const id = ids[name]
    if (id === undefined) throw new RangeError(`no id for ${name} of ${pattern}`)
    return encodeURIComponent(id)
  })
}

/** What an answer comes to for the person who asked. */
async function read(response: Response): Promise<string> {
  const { status } = response
  const to = response.headers.get('location') ?? ''
  if (status === 401 || (status === 307 && /\/sign-in(\?|$)/.test(to))) return 'sign in first'
  if (status === 307) return 'led on'
  if (status === 405) return 'no GET'
  // Events go on for as long as somebody listens.
  const isEndless = (response.headers.get('content-type') ?? '').startsWith('text/event-stream')
  const text = isEndless ? '' : await response.text()
  await response.body?.cancel().catch(() => undefined)
  if (status === 403 || status === 404 || text.includes('NEXT_HTTP_ERROR_FALLBACK;404')) return 'refused'
  return status === 200 ? 'sees it' : `${status} ${text.slice(0, 80)}`
}

function expectOf(pattern: string, { seenBy, visitor, answers }: Endpoint): Record<string, string> {
  const seen = answers === 'by leading on' ? 'led on' : 'sees it'
  const strange = pattern.startsWith('/invitation') ? 'refused' : 'sign in first'
  return Object.fromEntries([
    ['visitor', answers === 'to POST alone' ? 'no GET' : visitor === 'sees it too' ? 'sees it' : strange],
    ...WALKERS.map((who) => [who, answers === 'to POST alone' ? 'no GET' : seenBy.includes(who) ? seen : 'refused']),
  ])
}

test('each page and route answers those alone who may see it, and to no guess', async ({
  openAs,
  openAsVisitor,
  demo,
  server,
}) => {
  test.setTimeout(900_000)
  const clients = new Map<string, HttpClient>([
    ['visitor', await openHttpClient((await openAsVisitor()).context(), server)],
  ])
  for (const who of WALKERS) clients.set(who, await openHttpClient((await openAs(who)).context(), server))
  const onPipit: WalkScene = {
    ...FIXED_IDS,
    ...demo,
    projectId: demo.pipitId,
    revisionId: demo.pipitA,
    companyId: demo.brackenfoldId,
  }
  const onSkuaB: WalkScene = { ...onPipit, projectId: demo.skuaId, revisionId: demo.skuaB }
  const patterns = [...new Set(Object.values(routesSchema.parse(readBuilt('app-path-routes-manifest.json'))))].filter(
    (pattern) => !pattern.startsWith('/_') && !ENTRIES_OF_OTHERS.includes(pattern),
  )
  expect(patterns.toSorted(), 'what the build has, and what the table has').toEqual(Object.keys(ENDPOINTS).toSorted())

  const wrong: string[] = []
  const check = async (pattern: string, ids: WalkScene, endpoint: Endpoint, people: Iterable<string>) => {
    const address = fill(`${pattern}${endpoint.query ?? ''}`, ids)
    const expected = expectOf(pattern, endpoint)
    for (const who of people) {
      const client = clients.get(who)
      const said = client === undefined ? 'not asked' : await read(await client.get(address))
      if (said !== expected[who]) wrong.push(`${address}: ${who} ${said}, not ${expected[who]}`)
    }
  }
  let countOfGuesses = 0
  for (const [pattern, endpoint] of Object.entries(ENDPOINTS)) {
    const ids = endpoint.ids === 'of Skua B' ? onSkuaB : onPipit
    await check(pattern, ids, endpoint, clients.keys())
    if (!/\[\w+Id\]/.test(pattern) || endpoint.answers !== undefined) continue
    countOfGuesses += 1
    const guessed = Object.fromEntries(
      Object.entries(ids).map(([name, id]) => [name, name.endsWith('Id') ? NOWHERE : id]),
    )
    await check(pattern, guessed, { ...endpoint, seenBy: [] }, ['lead', 'admin'])
    // Revision A of Skua is not shared with Ostrel, which is in its project.
    if (!pattern.includes('[revisionId]') || endpoint.ids !== undefined) continue
    const onSkuaA = { ...ids, projectId: demo.skuaId, revisionId: demo.skuaA }
    await check(pattern, onSkuaA, { ...endpoint, seenBy: [] }, ['ostrel'])
  }
  expect(countOfGuesses).toBeGreaterThan(50)
  expect(wrong).toEqual([])
})

test('no act of the build is carried out for somebody without an account, but those that make one or mend one', async ({
  openAsVisitor,
  demo,
  server,
}) => {
  test.setTimeout(300_000)
  const visitor = await openHttpClient((await openAsVisitor()).context(), server)
  const ids = { ...FIXED_IDS, ...demo, projectId: demo.pipitId, revisionId: demo.pipitA, companyId: demo.brackenfoldId }
  const acts = Object.entries(actsSchema.parse(readBuilt('server/server-reference-manifest.json')).node)
  expect(acts.length).toBeGreaterThan(100)
  const answered: Record<string, string> = {}
  for (const [id, { exportedName, workers }] of acts) {
    const [place = ''] = Object.keys(workers)
    // A group of pages, in brackets, is no part of the address.
    const page = fill(
      place
        .replace(/^app/, '')
        .replace(/\/page$/, '')
        .replaceAll(/\/\([^)]*\)/g, ''),
      ids,
    )
    const answer = await visitor.send(id, page, {})
    answered[exportedName] = answer.ok ? 'carried out' : answer.refusal.kind
  }
  const expected = Object.fromEntries(
    Object.keys(answered).map((name) => [name, VISITORS_ACTS.includes(name) ? 'invalid' : 'signed-out']),
  )
  expect(answered).toEqual(expected)
  expect(Object.keys(answered)).toEqual(expect.arrayContaining([...VISITORS_ACTS]))
})

test('what is posted to a route is refused to strangers before it is read', async ({
  openAs,
  openAsVisitor,
  demo,
  server,
}) => {
  const post = async (who: 'visitor' | 'brackenfold', address: string) => {
    const page = who === 'visitor' ? await openAsVisitor() : await openAs(who)
    const cookie = (await page.context().cookies()).map(({ name, value }) => `${name}=${value}`).join('; ')
    const headers = { cookie, origin: server.address, 'content-type': 'application/json' }
    const response = await fetch(new URL(address, server.address), { method: 'POST', headers, body: '{}' })
    return response.status
  }
  const addresses = [
    `/api/revisions/${demo.pipitA}/remedies`,
    `/api/revisions/${demo.pipitA}/way-out`,
    `/api/jobs/${NOWHERE}/stop`,
    '/api/uploads/artwork',
    '/api/uploads/attachment',
  ]
  for (const address of addresses) {
    expect([address, await post('visitor', address)]).toEqual([address, 401])
    // Brackenfold is not in this project.
    const status = await post('brackenfold', address)
    expect([400, 403, 404], `${address}: ${status}`).toContain(status)
  }
})
