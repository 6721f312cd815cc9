// Written so that any Node that knows modules can read it: it exists to tell an old one apart.
const NEEDED_MAJOR = 20
const NEEDED_MINOR = 19

export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major > NEEDED_MAJOR || (major === NEEDED_MAJOR && minor >= NEEDED_MINOR)) return
  process.stderr.write(
    `Bendworthy needs Node ${NEEDED_MAJOR}.${NEEDED_MINOR} or newer; this is ${process.versions.node}.\n`,
  )
  process.exit(1)
}
