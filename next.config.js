/** @type {import('next').NextConfig} */
export default {
  typedRoutes: true,
  poweredByHeader: false,
  agentRules: false,
  serverExternalPackages: ['pdfkit'],
  experimental: { serverActions: { bodySizeLimit: '12mb' } },
}
