// @ts-check

const isDevelopment = process.env.NODE_ENV === 'development'

/** Files of the build: a worker is bound by the policy of its own file. Pages get theirs in proxy.ts, with a nonce. */
const buildFilePolicy = [
  "default-src 'none'",
  `script-src 'self'${isDevelopment ? " 'unsafe-eval'" : ''}`,
  "connect-src 'self'",
  "frame-ancestors 'none'",
].join('; ')

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  // Pictures are drawn here, as SVG; nothing is scaled, and the route that would do it answers nobody.
  images: { unoptimized: true },
  // These find files of their own beside their code, or are compiled.
  serverExternalPackages: [
    'better-sqlite3',
    'pg',
    'pg-boss',
    '@prisma/client',
    '@prisma/adapter-better-sqlite3',
    '@prisma/adapter-pg',
    'fontkit',
    'pdfmake',
    'linkedom',
    'nodemailer',
    'prom-client',
  ],
  // `npm run check` checks the types of the whole project, tests included; a test in the making must not stop `npm start`.
  typescript: { ignoreBuildErrors: true },
  turbopack: { root: import.meta.dirname },
  experimental: {
    // As in lib/server/door.ts, which says it in words before anything is read; files come by the upload routes.
    serverActions: { bodySizeLimit: '1mb' },
    proxyClientMaxBodySize: '1mb',
  },
  headers: async () => [
    {
      source: '/:path*',
      headers: [
        { key: 'X-Content-Type-Options', value: 'nosniff' },
        { key: 'Referrer-Policy', value: 'same-origin' },
        { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
      ],
    },
    { source: '/_next/static/:path*', headers: [{ key: 'Content-Security-Policy', value: buildFilePolicy }] },
  ],
}

export default config
