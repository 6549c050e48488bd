/** @type {import('next').NextConfig} */
export default {
  typedRoutes: true,
  poweredByHeader: false,
  agentRules: false,
  // npm test checks types, tests and demo data included; a start need not.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: ['pdfkit'],
  experimental: { serverActions: { bodySizeLimit: '12mb' } },
}
