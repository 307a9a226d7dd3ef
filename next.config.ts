import type { NextConfig } from 'next';

const config: NextConfig = {
  output: 'standalone',
  // Lets two development servers work side by side, each with its own folder.
  distDir: process.env.NEXT_DIST_DIR || '.next',
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
  poweredByHeader: false,
  // Read by path when labels are printed: nothing imports them.
  outputFileTracingIncludes: { '/api/labels': ['./lib/server/labels/fonts/*.ttf'] },
  experimental: {
    // A spreadsheet has at most 25 MB and a logger's file 32; what is larger the import itself refuses in words.
    serverActions: { bodySizeLimit: '36mb' },
    // What passes through proxy.ts is cut off beyond this.
    proxyClientMaxBodySize: '36mb',
    authInterrupts: true,
  },
};

export default config;
