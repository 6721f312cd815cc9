// Run by stopping.test.ts in a process of its own: a server that streams, watched and ended as the application's is.
import { createServer } from 'node:http'
import { markConnections } from '@/lib/server/connection'
import { followRequest } from '@/lib/server/request-log'
import { getStopSignal, stopInGoodOrder } from '@/lib/server/stopping'

markConnections(followRequest)
stopInGoodOrder()
const server = createServer((request, response) => {
  if (request.url !== '/stream') {
    response.end('done')
    return
  }
  response.writeHead(200, { 'content-type': 'text/event-stream' })
  response.write(': here\n\n')
  getStopSignal().addEventListener('abort', () => response.end())
})
// As the framework does: no further request, and the end once all connections have gone.
process.on('SIGTERM', () => server.close(() => process.exit(0)))
server.listen(0, '127.0.0.1', () => {
  const address = server.address()
  process.send?.(typeof address === 'object' ? address?.port : null)
})
