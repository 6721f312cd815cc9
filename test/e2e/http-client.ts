import type { BrowserContext } from '@playwright/test'
import type * as actions from '@/app/_components/review/actions'
import type { ServerUnderTest } from './server-under-test'

/** What the server answers to an act that was sent without its form. */
export type Answer = Awaited<ReturnType<(typeof actions)[keyof typeof actions]>>

export interface HttpClient {
  /**
   * Sends an act as a program would that has read the page's scripts: the id of the act and its arguments, nothing else.
   * @param page  that holds the act
   */
  readonly act: (name: string, page: string, input: object) => Promise<Answer>
  /** The same, where the id of the act is known. */
  readonly send: (id: string, page: string, input: object) => Promise<Answer>
  readonly get: (url: string) => Promise<Response>
}

/** Of a browser only the cookie is used. */
export async function openHttpClient(context: BrowserContext, { address }: ServerUnderTest): Promise<HttpClient> {
  const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ')
  const get = (url: string) => fetch(new URL(url, address), { headers: { cookie }, redirect: 'manual' })
  const ids = new Map<string, string>()

  async function findId(name: string, page: string): Promise<string> {
    if (!ids.has(name)) await readScripts(page)
    const id = ids.get(name)
    if (id === undefined) throw new Error(`no script of ${page} knows the act ${name}`)
    return id
  }

  /** In the scripts each act stands with its id and, at the end, its name. */
  async function readScripts(page: string): Promise<void> {
    const html = await (await get(page)).text()
    const scripts = new Set([...html.matchAll(/\/_next\/static\/[^"'\\\s]+?\.js/g)].map(([url]) => url))
    for (const url of scripts) {
      const text = await (await get(url)).text()
      for (const [, id = '', name = ''] of text.matchAll(/createServerReference\)\("(\w+)",[^;]*?,"(\w+)"\)/g)) {
        ids.set(name, id)
      }
    }
  }

  async function send(id: string, page: string, input: object): Promise<Answer> {
    const response = await fetch(new URL(page, address), {
      method: 'POST',
      headers: {
        cookie,
        origin: address,
        accept: 'text/x-component',
        'content-type': 'text/plain;charset=UTF-8',
        'next-action': id,
      },
      body: JSON.stringify([input]),
    })
    const text = await response.text()
    const row = text.split('\n').find((line) => line.startsWith('1:'))
    if (row === undefined) throw new Error(`${id} on ${page}: ${response.status} ${text.slice(0, 300)}`)
    return JSON.parse(row.slice(2))
  }

  return { get, send, act: async (name, page, input) => send(await findId(name, page), page, input) }
}
