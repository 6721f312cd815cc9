import { createServer, request, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Readable } from 'node:stream'
import { afterAll, beforeAll, expect, it } from 'vitest'
import {
  type Actor,
  addArtwork,
  attachFile,
  editComment,
  findActor,
  getLiveStart,
  getRevision,
  listThreadReaders,
  NotFoundError,
  openSession,
  openThread,
  replyToThread,
  signOut,
} from '@/lib/data'
import { openLiveFeed } from '@/lib/server/live-feed'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

interface Message {
  readonly id: number
  readonly threadId: string
  readonly sentence: string
}

/** A page that listens over a connection of its own. */
interface Listener {
  readonly messages: readonly Message[]
  readonly until: (count: number) => Promise<void>
  /** As when a cable is pulled: no farewell. */
  readonly cut: () => void
  readonly ended: Promise<void>
}

describeOnBothDatabases('live arrival', () => {
  let team: Team
  let revisionId: string
  let server: Server
  const people = new Map<string, Actor>()

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
    for (const actor of [team.lead, team.fabricator, team.rivalFabricator]) people.set(actor.userId, actor)
    server = createServer(async (incoming, outgoing) => {
      const abort = new AbortController()
      outgoing.on('close', () => abort.abort())
      const headers = new Headers()
      const lastId = incoming.headers['last-event-id']
      if (typeof lastId === 'string') headers.set('last-event-id', lastId)
      const actor = people.get(String(incoming.headers['x-person']))
      if (actor === undefined) throw new Error('nobody asks')
      const asked = new Request(`http://localhost${incoming.url}`, { headers, signal: abort.signal })
      const longestMs = incoming.headers['x-longest'] === undefined ? 600_000 : Number(incoming.headers['x-longest'])
      const response = await openLiveFeed(actor, revisionId, asked, { pollMs: 25, longestMs })
      outgoing.writeHead(response.status, Object.fromEntries(response.headers))
      if (response.body === null) throw new Error('no body')
      Readable.fromWeb(response.body as never)
        .on('error', () => {})
        .pipe(outgoing)
    })
    await new Promise<void>((resolve) => {
      server.listen(0, '127.0.0.1', resolve)
    })
  }, 240_000)

  afterAll(async () => {
    server.closeAllConnections()
    await new Promise((resolve) => server.close(resolve))
  })

  function listen(actor: Actor, { after, lastId, longestMs }: { after?: number; lastId?: number; longestMs?: number }) {
    const { port } = server.address() as AddressInfo
    const messages: Message[] = []
    let arrived = () => {}
    const asked = request({
      host: '127.0.0.1',
      port,
      path: after === undefined ? '/' : `/?after=${after}`,
      headers: {
        'x-person': actor.userId,
        ...(lastId === undefined ? {} : { 'last-event-id': String(lastId) }),
        ...(longestMs === undefined ? {} : { 'x-longest': String(longestMs) }),
      },
    })
    let end = () => {}
    const ended = new Promise<void>((resolve) => {
      end = resolve
    })
    asked.on('error', () => end())
    asked.on('response', (response) => {
      expect(response.headers['content-type']).toContain('text/event-stream')
      let rest = ''
      response.setEncoding('utf8')
      response.on('error', () => end())
      response.on('close', () => end())
      response.on('data', (part: string) => {
        const blocks = (rest + part).split('\n\n')
        rest = blocks.pop() ?? ''
        for (const block of blocks) {
          const id = /^id: (\d+)$/m.exec(block)?.[1]
          const data = /^data: (.*)$/m.exec(block)?.[1]
          if (id !== undefined && data !== undefined) messages.push({ id: Number(id), ...JSON.parse(data) })
        }
        arrived()
      })
    })
    asked.end()
    const listener: Listener = {
      messages,
      until: (count) =>
        new Promise((resolve) => {
          arrived = () => {
            if (messages.length >= count) resolve()
          }
          arrived()
        }),
      cut: () => asked.destroy(),
      ended,
    }
    return listener
  }

  const open = (actor: Actor, title: string, companyId?: string) =>
    expectDone(
      openThread(actor, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'note',
        title,
        text: 'See here.',
        ...(companyId === undefined ? {} : { companyId }),
      }),
    )
  const reply = (actor: Actor, threadId: string, text: string) =>
    expectDone(replyToThread(actor, { threadId, text, isAnswer: false }))

  it('loses and repeats nothing when the connection is cut in the middle of a conversation', async () => {
    const start = await getLiveStart(team.lead, revisionId)
    const { threadId } = await open(team.member, 'Cut and taken up')
    const first = listen(team.lead, { after: start })
    for (let index = 0; index < 5; index += 1) await reply(team.member, threadId, `before ${index}`)
    await first.until(3)
    first.cut()
    await first.ended
    const seen = [...first.messages]
    for (let index = 0; index < 5; index += 1) await reply(team.member, threadId, `while away ${index}`)
    const second = listen(team.lead, { after: start, lastId: seen.at(-1)?.id ?? 0 })
    for (let index = 0; index < 5; index += 1) await reply(team.member, threadId, `after ${index}`)
    await second.until(16 - seen.length)
    await reply(team.member, threadId, 'the last')
    await second.until(17 - seen.length)
    second.cut()
    const ids = [...seen, ...second.messages].map(({ id }) => id)
    expect(ids).toHaveLength(17)
    expect(new Set(ids).size).toBe(17)
    expect(ids).toEqual(ids.toSorted((a, b) => a - b))
  })

  it('loses nothing when the server ends the connection, as it does to ask again who listens', async () => {
    const start = await getLiveStart(team.lead, revisionId)
    const { threadId } = await open(team.member, 'Ended by the server')
    const first = listen(team.lead, { after: start, longestMs: 60 })
    await first.ended
    await reply(team.member, threadId, 'in between')
    const second = listen(team.lead, { after: start, lastId: first.messages.at(-1)?.id ?? start })
    await second.until(2 - first.messages.length)
    second.cut()
    expect([...first.messages, ...second.messages].map(({ sentence }) => sentence)).toEqual([
      `${team.member.name} opened note "Ended by the server"`,
      `${team.member.name} replied to "Ended by the server"`,
    ])
  })

  it('arrives in order and whole from many who write at once', async () => {
    const start = await getLiveStart(team.lead, revisionId)
    const { threadId } = await open(team.member, 'All at once')
    const listener = listen(team.lead, { after: start })
    const writers = [team.lead, team.secondLead, team.member]
    await Promise.all(
      Array.from({ length: 12 }, (_, index) => reply(writers[index % 3] ?? team.lead, threadId, `${index}`)),
    )
    await listener.until(13)
    listener.cut()
    const ids = listener.messages.map(({ id }) => id)
    expect(ids).toEqual([...new Set(ids)].toSorted((a, b) => a - b))
    expect(ids).toHaveLength(13)
  })

  it('brings a fabricator what happens in their own threads and nothing of another’s or the team’s', async () => {
    const start = await getLiveStart(team.lead, revisionId)
    const own = listen(team.fabricator, { after: start })
    const rival = listen(team.rivalFabricator, { after: start })
    const inTeam = await open(team.member, 'For the team')
    const forRival = await open(team.rivalFabricator, 'Of the other')
    const forOwn = await open(team.lead, 'For both sides', team.companies.brackenfold)
    await reply(team.lead, inTeam.threadId, 'not for you')
    await reply(team.lead, forRival.threadId, 'nor this')
    const { commentId } = await reply(team.fabricator, forOwn.threadId, 'ours')
    const file = { fileName: 'sketch.txt', bytes: new TextEncoder().encode('a sketch') }
    await expectDone(attachFile(team.fabricator, { revisionId, target: { kind: 'comment', commentId }, ...file }))
    await expectDone(editComment(team.fabricator, { commentId, seenVersion: 1, text: 'ours, said better' }))
    await Promise.all([own.until(4), rival.until(2)])
    own.cut()
    rival.cut()
    expect(new Set(own.messages.map(({ threadId }) => threadId))).toEqual(new Set([forOwn.threadId]))
    expect(new Set(rival.messages.map(({ threadId }) => threadId))).toEqual(new Set([forRival.threadId]))
  })

  it('ends within seconds once its session is ended, and brings nothing of what came after; other sessions listen on', async () => {
    const visit = { sourceKey: 'a', isThisMachine: true, device: 'a test', known: null }
    const findHere = async (sessionId: string) => {
      const actor = await findActor(sessionId, visit)
      if (actor === null) throw new Error('no session')
      return actor
    }
    const [one, two] = [
      await openSession(team.member.userId, 'invitation', visit),
      await openSession(team.member.userId, 'invitation', visit),
    ]
    const start = await getLiveStart(team.member, revisionId)
    people.set('one', await findHere(one.sessionId))
    people.set('two', await findHere(two.sessionId))
    const ended = listen({ ...team.member, userId: 'one' }, { after: start })
    const kept = listen({ ...team.member, userId: 'two' }, { after: start })
    const { threadId } = await open(team.lead, 'Before the end of the session')
    await Promise.all([ended.until(1), kept.until(1)])
    await signOut(one.sessionId)
    const endedAt = performance.now()
    await ended.ended
    expect(performance.now() - endedAt).toBeLessThan(5_000)
    await reply(team.lead, threadId, 'after the end of the session')
    await kept.until(2)
    expect(ended.messages).toHaveLength(1)
    kept.cut()
  }, 60_000)

  it('is refused to somebody who does not see the revision', async () => {
    const asked = new Request('http://localhost/')
    await expect(openLiveFeed(team.outsider, revisionId, asked)).rejects.toThrow(NotFoundError)
  })

  it('offers for mention only who sees the thread, and no other fabricator’s people', async () => {
    const names = async (actor: Actor) => (await listThreadReaders(actor, revisionId)).map(({ id }) => id)
    expect(await names(team.fabricator)).toContain(team.lead.userId)
    expect(await names(team.fabricator)).not.toContain(team.rivalFabricator.userId)
    expect(await names(team.member)).toEqual(expect.arrayContaining([team.fabricator.userId, team.observer.userId]))
    expect(await names(team.member)).not.toContain(team.outsider.userId)
  })

  it('keeps a place on artwork with its thread, and refuses one on anything else', async () => {
    const bytes = new TextEncoder().encode('G04 top*\nM02*\n')
    const file = await expectDone(addArtwork(team.member, { revisionId, fileName: 'top.gbr', bytes }))
    const place = { xMm: 12.5, yMm: -3.25 }
    const { threadId } = await expectDone(
      openThread(team.member, {
        revisionId,
        anchor: { kind: 'artwork', id: file.id, place },
        kind: 'must-change',
        title: 'Neck of the track',
        text: 'Widen it here.',
      }),
    )
    const thread = (await getRevision(team.lead, revisionId)).threads.find(({ id }) => id === threadId)
    expect(thread).toMatchObject({ place, anchor: { label: 'top.gbr at x 12.5 mm, y -3.25 mm' } })
    const onNothing = openThread(team.member, {
      revisionId,
      anchor: { kind: 'artwork', id: 'no such file', place },
      kind: 'note',
      title: 'Nowhere',
      text: 'x',
    })
    expect(await expectRefused(onNothing)).toMatchObject({ kind: 'invalid' })
  })
})
