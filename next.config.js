// @ts-check

const isDevelopment = process.env.NODE_ENV === 'development'

/**
 * Everything comes from this server. Inline styles and scripts are the framework's own; workers are built as blobs or
 * files of this origin. Only the development server evaluates text as code.
 */
const contentSecurityPolicy = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${isDevelopment ? " 'unsafe-eval'" : ''}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ')

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  // These find files of their own beside their code, or are compiled.
  serverExternalPackages: [
    'better-sqlite3',
    'pg',
    '@prisma/client',
    '@prisma/adapter-better-sqlite3',
    '@prisma/adapter-pg',
    'pdfmake',
    'linkedom',
    'nodemailer',
  ],
  // `npm run check` checks the types of the whole project, tests included; a test in the making must not stop `npm start`.
  typescript: { ignoreBuildErrors: true },
  turbopack: { root: import.meta.dirname },
  experimental: {
    // Above the largest file that an action reads, so that too large a one is refused by name and not cut off.
    serverActions: { bodySizeLimit: '30mb' },
    proxyClientMaxBodySize: '30mb',
  },
  headers: async () => [
    {
      source: '/:path*',
      headers: [
        { key: 'Content-Security-Policy', value: contentSecurityPolicy },
        { key: 'X-Content-Type-Options', value: 'nosniff' },
        { key: 'Referrer-Policy', value: 'same-origin' },
        { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
      ],
    },
  ],
}

export default config
