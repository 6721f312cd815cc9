// A real OpenID Connect provider in a process of its own: node oidc-provider.mjs <port> <redirect address>
// Anyone who types a name at its sign-in page is that person. What stands before the @ is the subject; a name that begins with
// "unverified." has an address that the provider does not vouch for.
// @ts-expect-error the package has no declarations
import { Provider } from 'oidc-provider'

const [port, redirectUri] = process.argv.slice(2)
if (port === undefined || redirectUri === undefined) throw new Error('needs a port and a redirect address')

const provider = new Provider(`http://localhost:${port}`, {
  clients: [
    {
      client_id: 'review',
      client_secret: 'a secret of the tests, long enough',
      redirect_uris: [redirectUri],
      grant_types: ['authorization_code'],
      response_types: ['code'],
    },
  ],
  // Refuses a client that leaves out the proof (RFC 7636).
  pkce: { required: () => true },
  claims: { openid: ['sub'], email: ['email', 'email_verified'], profile: ['name'] },
  // The library puts claims into the ID token only where it is told so.
  conformIdTokenClaims: false,
  features: { devInteractions: { enabled: true } },
  cookies: { keys: ['a key of the tests'] },
  findAccount: (/** @type {unknown} */ _context, /** @type {string} */ id) => ({
    accountId: id,
    claims: () => ({
      sub: id,
      name: id,
      email: id.replace(/^(unverified|second)\./, ''),
      email_verified: !id.startsWith('unverified.'),
    }),
  }),
})
provider.listen(Number(port), '127.0.0.1', () => process.stdout.write('listening\n'))
