// A mail server as a process of its own (RFC 5321). Takes its mood by message from the test, tells what it received.
import { SMTPServer } from 'smtp-server'

/** @typedef {{ kind: 'take' | 'later' | 'refuse-recipient' | 'cut', times: number }} Mood */

/** @type {Mood} */
let mood = { kind: 'take', times: 0 }

/**
 * The mood for this message, used up as it is applied.
 * @param {Mood['kind']} kind
 */
function takeMood(kind) {
  if (mood.kind !== kind || mood.times <= 0) return false
  mood = { ...mood, times: mood.times - 1 }
  return true
}

/**
 * @param {number} code
 * @param {string} text
 */
function reply(code, text) {
  return Object.assign(new Error(text), { responseCode: code })
}

const server = new SMTPServer({
  disabledCommands: ['AUTH', 'STARTTLS'],
  logger: false,
  onRcptTo(_address, _session, callback) {
    if (takeMood('refuse-recipient')) callback(reply(550, 'no such mailbox'))
    else callback()
  },
  onData(stream, session, callback) {
    /** @type {Buffer[]} */
    const parts = []
    stream.on('data', (part) => parts.push(part))
    stream.on('end', () => {
      if (takeMood('later')) {
        callback(reply(451, 'try again later'))
        return
      }
      process.send?.({
        kind: 'received',
        from: session.envelope.mailFrom === false ? '' : session.envelope.mailFrom.address,
        to: session.envelope.rcptTo.map(({ address }) => address),
        raw: Buffer.concat(parts).toString('utf8'),
      })
      // The message is taken, and the word for it never arrives.
      if (takeMood('cut')) for (const connection of server.connections) connection._socket.destroy()
      else callback()
    })
  },
})

server.on('error', () => {})
process.on('message', (message) => {
  mood = /** @type {Mood} */ (message)
  process.send?.({ kind: 'mood-set' })
})
process.on('disconnect', () => process.exit(0))
server.listen(0, '127.0.0.1', () => {
  const address = server.server.address()
  if (typeof address === 'object') process.send?.({ kind: 'listening', port: address?.port })
})
