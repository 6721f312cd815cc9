import 'server-only'

/** Who is asking, and the wrappers that every server action and route handler goes through. */
export { type ActionResult, action, joiningAction, visitorAction } from './action'
export { listDemoSignIns } from './demo-sign-ins'
export { refuseAtDoor } from './door'
export type { ServerRefusal } from './expected-errors'
export { openLiveFeed } from './live-feed'
export { makeNonce, makePagePolicy, NONCE_HEADER } from './page-policy'
export { route, visitorRoute } from './route'
export { getActor, getAuthOptions, type SignInNote } from './session'
export { streamed, uploadRoute, whole } from './upload'
export { getVisit } from './visit'
