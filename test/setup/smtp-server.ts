import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'

export interface ReceivedMail {
  readonly from: string
  readonly to: readonly string[]
  /** As it came over the wire. */
  readonly raw: string
}

export interface SmtpProcess {
  readonly url: string
  readonly received: readonly ReceivedMail[]
  /** How it treats the next messages: `cut` takes one and ends the connection without a reply. */
  readonly setMood: (kind: 'take' | 'later' | 'refuse-recipient' | 'cut', times?: number) => Promise<void>
  readonly forget: () => void
  readonly stop: () => Promise<void>
}

type Said =
  | { readonly kind: 'listening'; readonly port: number }
  | { readonly kind: 'mood-set' }
  | ({ readonly kind: 'received' } & ReceivedMail)

/** A mail server in a process of its own, on the loopback address. */
export async function startSmtpServer(): Promise<SmtpProcess> {
  const child: ChildProcess = fork(fileURLToPath(new URL('./smtp-program.mjs', import.meta.url)))
  const received: ReceivedMail[] = []
  child.on('message', (said: Said) => {
    if (said.kind === 'received') received.push({ from: said.from, to: said.to, raw: said.raw })
  })
  const port = await new Promise<number>((resolve, reject) => {
    child.on('message', (said: Said) => {
      if (said.kind === 'listening') resolve(said.port)
    })
    child.on('error', reject)
    child.on('exit', (code) => reject(new Error(`the mail server ended with ${code}`)))
  })
  return {
    url: `smtp://127.0.0.1:${port}`,
    received,
    setMood: async (kind, times = 1) => {
      const isSet = new Promise<void>((resolve) => {
        const listen = (said: Said) => {
          if (said.kind !== 'mood-set') return
          child.off('message', listen)
          resolve()
        }
        child.on('message', listen)
      })
      child.send({ kind, times })
      await isSet
    },
    forget: () => received.splice(0),
    stop: async () => {
      const isOver = once(child, 'exit')
      child.disconnect()
      await isOver
    },
  }
}
